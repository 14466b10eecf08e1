//! A way through the page, and how its views are looked at.

use std::fs;

use pitchline_tests::browser::{Fault, Outcome, Page};
use pitchline_tests::root;
use serde_json::Value;

use super::entries::Entries;
use crate::visit::{Site, Visit, see, views, wait_begun, wait_living};

/// What is on the page as it is, by name; see there.
const MEET: &str = concat!(include_str!("look.js"), include_str!("meet.js"));

/// Whether the page has come to rest.
const STILL: &str = concat!(include_str!("look.js"), include_str!("still.js"));

/// Opens what is folded away in the part of the page that the argument selects, folds in folds too;
/// says whether anything was. What a fold holds is made a moment after that.
const UNFOLD: &str = "const part = document.querySelector(arguments[0]);
    for (let any = false; ; any = true) {
      const folds = [...part.querySelectorAll('details:not([open])')];
      if (!folds.length) return any;
      for (const fold of folds) fold.open = true;
      await new Promise((done) => setTimeout(done, 30));
    }";

/// Closes the groups of the build again, so that an edit has less to bring up to date.
const FOLD: &str =
    "for (const fold of document.querySelectorAll('aside details[open]')) fold.open = false";

/// Whether all is kept for offline use, and said to be.
const KEPT: &str = "return document.documentElement.dataset.offline === 'ready'";

/// Presses a key at every picture in sight; says whether there is any. Home moves its cursor to the
/// first stop, Escape takes it away.
const KEY: &str = "const cursors = document.querySelectorAll('main [role=\"application\"]');
    for (const e of cursors) {
      e.dispatchEvent(new KeyboardEvent('keydown', { key: arguments[0], bubbles: true, cancelable: true }));
    }
    return cursors.length > 0";

/// The view that is the build, by the name of its place.
const BUILD: (&str, &str) = ("Build", "What's on it?");

/// What is in sight at once, moving or not: the view, or the build beside it.
#[track_caller]
pub(super) fn glance(page: &Page, view: &str) -> Outcome<Entries> {
    let part = if view == BUILD.0 { vec![BUILD.1.into()] } else { Vec::new() };
    Entries::from_page(page.eval(MEET, &part)?)
}

/// What is in a view with everything unfolded, once it is still.
#[track_caller]
pub(super) fn look(page: &Page, view: &str) -> Outcome<Entries> {
    see(page, view)?;
    let part = if view == BUILD.0 { "aside" } else { "main" };
    still(page, part)?;
    let found = if view == BUILD.0 { glance(page, view)? } else { read(page, view)? };
    if view == BUILD.0 {
        page.eval(FOLD, &[])?;
    }
    Ok(found)
}

/// What is in sight, without and with a cursor in each picture: what it reads takes the place of others.
fn read(page: &Page, view: &str) -> Outcome<Entries> {
    let mut found = glance(page, view)?;
    if page.eval(KEY, &["Home".into()])? == true {
        found.add(&glance(page, view)?);
        page.eval(KEY, &["Escape".into()])?;
    }
    Ok(found)
}

/// Unfolds that part of the page, and waits until all that comes of it is there.
#[track_caller]
fn still(page: &Page, part: &str) -> Outcome {
    page.eval(UNFOLD, &[part.into()])?;
    for _ in 0..8 {
        if page.eval(STILL, &[])? == true && page.eval(UNFOLD, &[part.into()])? == false {
            return Ok(());
        }
    }
    Err(Fault::new(format!("the page does not come to rest at {:?}", page.url()?)))
}

/// The page in front, and all that was met so far.
pub(super) struct Tour {
    pub(super) visit: Visit,
    pub(super) found: Entries,
}

impl Tour {
    pub(super) fn page(&self) -> &Page {
        &self.visit.page
    }

    /// What is in sight just now.
    #[track_caller]
    pub(super) fn glance(&mut self) -> Outcome {
        self.found.add(&glance(&self.visit.page, "")?);
        Ok(())
    }

    /// What is in sight once it is still.
    #[track_caller]
    pub(super) fn rest(&mut self) -> Outcome {
        still(&self.visit.page, "main")?;
        self.found.add(&read(&self.visit.page, "")?);
        Ok(())
    }

    /// Goes to views and looks at each.
    #[track_caller]
    pub(super) fn see(&mut self, views: &[&str]) -> Outcome {
        for view in views {
            self.found.add(&look(&self.visit.page, view)?);
        }
        Ok(())
    }

    /// Every view that there is a way to, and the build.
    #[track_caller]
    pub(super) fn see_all(&mut self) -> Outcome {
        let all = views(self.page())?;
        self.see(&all.iter().map(String::as_str).chain(["Build"]).collect::<Vec<_>>())
    }

    /// Goes to a view, waits until these words are there, and looks.
    #[track_caller]
    pub(super) fn see_said(&mut self, view: &str, words: &[&str]) -> Outcome {
        see(self.page(), view)?;
        self.page().wait_for(&words.join("; "), |page| {
            page.eval(UNFOLD, &["main".into()])?;
            let text = page.text()?;
            Ok(words.iter().all(|words| text.contains(words)))
        })?;
        self.see(&[view])
    }

    /// Unfolds the build, so that its inputs can be used.
    #[track_caller]
    pub(super) fn open_build(&self) -> Outcome {
        see(self.page(), BUILD.0)?;
        still(self.page(), "aside")
    }

    /// Opens a link in the page that is open; it leads to the overview.
    #[track_caller]
    pub(super) fn link(&mut self, link: &str) -> Outcome {
        self.page().eval("location.hash = arguments[0]", &[format!("v=1&{link}").into()])?;
        Ok(())
    }

    /// Picks every option of a list of the view in sight, one after the other.
    #[track_caller]
    pub(super) fn pick_all(&mut self, label: &str) -> Outcome {
        let list = self.page().by_label(label)?.json();
        let options =
            self.page().eval("return [...arguments[0].options].map((o) => o.text)", &[list])?;
        for option in options.as_array().into_iter().flatten().filter_map(Value::as_str) {
            self.page().by_label(label)?.choose(option)?;
            self.rest()?;
        }
        Ok(())
    }

    #[track_caller]
    pub(super) fn press(&mut self, name: &str) -> Outcome {
        self.page().by_role("button", name)?.click()
    }

    /// What is read out, once something that begins so is.
    #[track_caller]
    pub(super) fn hear(&mut self, begins: &str) -> Outcome {
        self.page().wait_for(begins, |page| {
            let script = "return [...document.querySelectorAll('[role=\"status\"]')]
                .some((e) => e.textContent.startsWith(arguments[0]))";
            Ok(page.eval(script, &[begins.into()])? == true)
        })?;
        let heard = self.page().eval(MEET, &["".into(), true.into()])?;
        self.found.add(&Entries::from_page(heard)?);
        Ok(())
    }

    /// The region of that name alone.
    #[track_caller]
    pub(super) fn part(&mut self, region: &str) -> Outcome {
        let part = self.page().eval(MEET, &[region.into()])?;
        self.found.add(&Entries::from_page(part)?);
        Ok(())
    }

    /// The page with this catalogue, from its start: what a first visit asks, and these views after it,
    /// the first of which has these words.
    #[track_caller]
    pub(super) fn catalogue(&mut self, text: &str, views: &[&str], words: &str) -> Outcome {
        let site = Site::with_catalogue(text)?;
        let server = site.serve("/")?;
        self.page().goto(&server.url())?;
        wait_begun(self.page())?;
        self.glance()?;
        wait_living(self.page())?;
        self.kept()?;
        if let [first, rest @ ..] = views {
            self.see_said(first, &[words])?;
            self.see(rest)?;
        }
        Ok(())
    }

    /// Waits until all is kept for offline use.
    #[track_caller]
    pub(super) fn kept(&self) -> Outcome {
        self.page().wait_until(KEPT)
    }
}

/// The text of a fixture.
pub(super) fn fixture(name: &str) -> Outcome<String> {
    Ok(fs::read_to_string(root().join("tests/fixture").join(name))?)
}
