//! A visit: a copy of the built site on a server, and a browser that opened it.

use std::fs;
use std::path::Path;

use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, MODEL, Slot};
use pitchline_site::{Options, Server, serve};
use pitchline_tests::browser::{Browser, Fault, Outcome, Page, Size};
use pitchline_tests::dist;
use serde_json::Value;
use tempfile::TempDir;

/// The built site in a folder of its own, so that a maker's file can be put
/// into it and a build that runs meanwhile does no harm.
pub(crate) struct Site(TempDir);

/// A link that was made by this version of the model, from what stands behind that.
pub(crate) fn link(rest: &str) -> String {
    format!("#v=1&model={MODEL}&{rest}")
}

impl Site {
    pub(crate) fn new() -> Outcome<Self> {
        let folder = tempfile::Builder::new().prefix("pitchline-page-").tempdir()?;
        for entry in fs::read_dir(dist())? {
            let entry = entry?;
            if entry.file_type()?.is_file() {
                fs::copy(entry.path(), folder.path().join(entry.file_name()))?;
            }
        }
        Ok(Self(folder))
    }

    /// The site with this text as the maker's catalogue.
    pub(crate) fn with_catalogue(text: &str) -> Outcome<Self> {
        let site = Self::new()?;
        fs::write(site.path().join("catalogue.json"), text)?;
        Ok(site)
    }

    pub(crate) fn path(&self) -> &Path {
        self.0.path()
    }

    /// The name of the page's own file that ends so.
    pub(crate) fn file(&self, ending: &str) -> Outcome<String> {
        for entry in fs::read_dir(self.path())? {
            let name = entry?.file_name().to_string_lossy().into_owned();
            if name.ends_with(ending) && !name.starts_with("pitchline-api") {
                return Ok(name);
            }
        }
        Err(Fault::new(format!("no file of the site ends in {ending}")))
    }

    pub(crate) fn serve(&self, prefix: &str) -> Outcome<Server> {
        Ok(serve(Options { prefix: prefix.to_owned(), ..Options::new(self.path()) })?)
    }
}

pub(crate) struct Visit {
    pub(crate) page: Page,
    pub(crate) server: Server,
    pub(crate) site: Site,
}

impl Visit {
    /// Opens the site as it is published.
    #[track_caller]
    pub(crate) fn at(size: Size) -> Outcome<Self> {
        Self::of(Site::new()?, Browser::new(size))
    }

    /// Opens this site with this browser.
    #[track_caller]
    pub(crate) fn of(site: Site, browser: Browser) -> Outcome<Self> {
        let visit = Self::before(site, browser)?;
        visit.open("")?;
        Ok(visit)
    }

    /// Server and browser, and nothing opened yet.
    #[track_caller]
    pub(crate) fn before(site: Site, browser: Browser) -> Outcome<Self> {
        Ok(Self { server: site.serve("/")?, page: browser.start()?, site })
    }

    /// Opens the site with this behind its address, and waits until it lives
    /// and has said what it has to say of offline use. By way of an empty page,
    /// since another fragment alone loads nothing.
    #[track_caller]
    pub(crate) fn open(&self, tail: &str) -> Outcome {
        self.page.goto("about:blank")?;
        self.page.goto(&format!("{}{tail}", self.server.url()))?;
        wait_living(&self.page)?;
        self.page.wait_until("return document.documentElement.dataset.offline === 'ready'")
    }

    /// Loads the page anew, once the address has caught up with the last edit.
    #[track_caller]
    pub(crate) fn reload(&self) -> Outcome {
        self.page.eval("await new Promise((done) => setTimeout(done, 400))", &[])?;
        self.page.reload()?;
        wait_living(&self.page)
    }

    /// What the page keeps under this key.
    #[track_caller]
    pub(crate) fn stored(&self, key: &str) -> Outcome<Value> {
        let script = "return localStorage.getItem('pitchline:' + new URL('.', location).pathname + ':' + arguments[0])";
        match self.page.eval(script, &[key.into()])? {
            Value::String(text) => Ok(serde_json::from_str(&text).unwrap_or(Value::String(text))),
            _ => Err(Fault::new(format!("nothing is kept under {key}"))),
        }
    }

    /// Ends the visit: nothing broke, the console stayed quiet, and nobody but
    /// the own host was asked for anything.
    #[track_caller]
    pub(crate) fn end(self) -> Outcome {
        self.end_but(&[])
    }

    /// The same where some lines of the console are expected.
    #[track_caller]
    pub(crate) fn end_but(self, expected: &[&str]) -> Outcome {
        self.page.assert_quiet_but(expected)?;
        self.page.close_own(&self.server.url())
    }
}

/// Waits until all work is done and every drawing follows it, those out of sight too.
#[track_caller]
pub(crate) fn drawn(page: &Page) -> Outcome {
    page.wait_until(
        "return !document.querySelector('figure[aria-busy]')
           && [...document.querySelectorAll('.busy')].every((line) => !line.textContent)",
    )
}

/// Waits until the calculator has taken the place of the first screen. Whoever comes for the first
/// time is asked which kit it is, and says the first.
#[track_caller]
pub(crate) fn wait_living(page: &Page) -> Outcome {
    wait_begun(page)?;
    page.eval("document.querySelector('.first button')?.click()", &[])?;
    page.wait_until("return !document.querySelector('.first')")
}

/// Waits until the calculator has taken the place of the first screen.
#[track_caller]
pub(crate) fn wait_begun(page: &Page) -> Outcome {
    page.wait_until(
        "return document.documentElement.dataset.app === 'broken'
           || document.querySelector('#view-title')",
    )?;
    let broken = page.eval("return document.querySelector('.recovery pre')?.textContent", &[])?;
    match broken.as_str() {
        Some(report) => Err(Fault::new(format!("the page does not run:\n{report}"))),
        None => Ok(()),
    }
}

/// Goes to a view by the links of the page, as a person does, and waits until it is there:
/// "Overview", "Build", "Share", "More", "Catalogue check", or a question by its name. Where the build
/// stands beside every view there is no way to it, and none is needed.
#[track_caller]
pub(crate) fn see(page: &Page, view: &str) -> Outcome {
    let narrow = page.eval("return !document.querySelector('aside')", &[])? == Value::Bool(true);
    if view == "Build" && !narrow {
        return Ok(());
    }
    let bar = ["Overview", "Build", "Share", "More"];
    let link = match view {
        "Catalogue check" => {
            see(page, "More")?;
            "Check this catalogue"
        }
        question if narrow && !bar.contains(&question) => {
            see(page, "Overview")?;
            question
        }
        _ => view,
    };
    page.by_role("link", link)?.click()?;
    let title = if view == "Build" { "What's on it?" } else { view };
    let mut shown = Value::Null;
    let waited = page.wait_for(&format!("the view {view}"), |page| {
        shown = page.eval("return document.querySelector('#view-title')?.textContent", &[])?;
        Ok(shown == title)
    });
    waited.map_err(|fault| {
        let _ = page.screenshot("page-lost-on-the-way");
        Fault::new(format!("{fault}\n  {shown} is in sight, by {:?}", page.url()))
    })
}

/// Opens a fold of the view in sight by its title, as a person does, unless it is open.
#[track_caller]
pub(crate) fn unfold(page: &Page, title: &str) -> Outcome {
    let script = "const titles = [...document.querySelectorAll('main .fold-title')];
        return titles.find((e) => e.textContent === arguments[0])?.closest('details').open ?? null";
    let open = || page.eval(script, &[title.into()]);
    page.wait_for(&format!("the fold {title:?}"), |_| Ok(!open()?.is_null()))?;
    if open()? == Value::Bool(true) {
        return Ok(());
    }
    for fold in page.all_by_css("main .fold-title")? {
        if fold.text()? == title {
            fold.click()?;
        }
    }
    page.wait_for(&format!("{title:?} is open"), |_| Ok(open()? == Value::Bool(true)))
}

/// Every view there is a way to, by name, the overview first and in sight.
#[track_caller]
pub(crate) fn views(page: &Page) -> Outcome<Vec<String>> {
    see(page, "Overview")?;
    let script =
        "return [...document.querySelectorAll('nav.list a strong')].map((e) => e.textContent)";
    let questions: Vec<String> =
        serde_json::from_value(page.eval(script, &[])?).unwrap_or_default();
    if questions.len() < 5 {
        return Err(Fault::new(format!("hardly a question is listed: {questions:?}")));
    }
    let beside = page.eval("return !!document.querySelector('aside')", &[])? == Value::Bool(true);
    let first = if beside { vec!["Overview"] } else { vec!["Overview", "Build"] };
    let all = first.into_iter().map(str::to_owned).chain(questions);
    Ok(all.chain(["Share", "More", "Catalogue check"].map(str::to_owned)).collect())
}

/// Fails with everything that was found wrong, or not at all.
#[track_caller]
pub(crate) fn assert_none(found: &[String]) -> Outcome {
    if found.is_empty() {
        return Ok(());
    }
    Err(Fault::new(format!("{}:\n  {}", found.len(), found.join("\n  "))))
}

/// Goes to what is on the board, with every group of it open.
#[track_caller]
pub(crate) fn open_build(page: &Page) -> Outcome {
    see(page, "Build")?;
    page.wait_until(
        "const shut = [...document.querySelectorAll('details.group:not([open])')];
         for (const group of shut) group.open = true;
         return !shut.length && document.getElementById('pick-mode_high')",
    )
}

/// The demo catalogue as published.
pub(crate) fn demo() -> Catalog {
    read(&fs::read_to_string(dist().join("demo.json")).expect("dist has the demo"))
}

/// A catalogue from its text; its faults are not of interest here.
pub(crate) fn read(text: &str) -> Catalog {
    Catalog::read(text).expect("a catalogue in JSON").0
}

/// Puts a part of the catalogue into a draft, as the page's lists do.
pub(crate) fn put(draft: &mut Draft, catalog: &Catalog, slot: Slot, id: &str) {
    let part = catalog.part(slot.kind(), id);
    draft.set_record(slot, part.unwrap_or_else(|| panic!("no {id}")).clone());
    if slot == Slot::Pack {
        catalog.follow_pack(draft);
    }
}

/// Picks from a list of the page what the draft's kit has on offer for a slot, and puts
/// it into the draft too. The place counts from the part that the kit comes with, 0.
pub(crate) fn pick(
    page: &Page,
    catalog: &Catalog,
    draft: &mut Draft,
    slot: Slot,
    place: usize,
) -> Outcome {
    let label = match slot {
        Slot::Wheel => "Wheel ×4",
        Slot::WheelPulley => "Wheel pulley ×2",
        Slot::MotorPulley => "Motor pulley ×2",
        Slot::Pack => "Battery pack",
        _ => return Err(Fault::new(format!("no list for {}", slot.key()))),
    };
    let (id, name) = {
        let part = catalog.offered(&draft.kit, slot)[place];
        (part.id.clone(), part.name.clone())
    };
    open_build(page)?;
    page.by_label(label)?.choose(&name)?;
    put(draft, catalog, slot, &id);
    Ok(())
}

/// The kit with the rider, the place and the wishes of another draft, as the
/// page's kit buttons give it.
pub(crate) fn kit_for(catalog: &Catalog, kit: &str, before: &Draft) -> Draft {
    let mut draft = catalog.draft(kit);
    for slot in [Slot::Rider, Slot::Place, Slot::Ride] {
        draft.set_record(slot, before.record(slot).clone());
    }
    draft
}
