//! In a garage without a signal.

use std::fs;
use std::time::Duration;

use pitchline_core::Slot;
use pitchline_site::Fault;
use pitchline_tests::browser::{Browser, Outcome, Page, Size};

use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, pick, see, wait_living};

/// It is said at the head of every view, and in full among the rest.
#[track_caller]
fn assert_ready(page: &Page) -> Outcome {
    page.wait_until("return document.documentElement.dataset.offline === 'ready'")?;
    page.by_text("Ready offline")?;
    see(page, "More")?;
    page.by_text("Ready offline: the page now works without a signal.")?;
    see(page, "Overview")
}

fn works_without_signal(size: Size) -> Outcome {
    let mut visit = Visit::at(size)?;
    assert_ready(&visit.page)?;
    visit.server.stop();
    visit.reload()?;
    let page = &visit.page;
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    assert_answers(page, &draft)?;
    pick(page, &catalog, &mut draft, Slot::Wheel, 2)?;
    assert_answers(page, &draft)?;
    page.by_css("#rider-mass_kg")?.fill("101")?;
    draft.set(Slot::Rider, "mass_kg", 101.0);
    assert_answers(page, &draft)?;
    visit.reload()?;
    assert_answers(&visit.page, &draft)?;
    visit.page.screenshot(&format!("page-offline-{size:?}"))?;
    visit.end_but(&["catalogue.json", "sw.js"])
}

#[test]
fn a_phone_without_signal() -> Outcome {
    works_without_signal(Size::Phone)
}

#[test]
fn a_desktop_without_signal() -> Outcome {
    works_without_signal(Size::Desktop)
}

/// Where it does not get ready for offline use, it says why.
fn says(file: &str, fault: impl FnOnce(&Site) -> Outcome<Fault>, said: &str) -> Outcome<Visit> {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    visit.server.set_fault(file, fault(&visit.site)?);
    visit.page.goto(&visit.server.url())?;
    wait_living(&visit.page)?;
    assert_answers(&visit.page, &demo().draft("kittiwake"))?;
    see(&visit.page, "More")?;
    visit.page.wait_until(&format!(
        "return document.getElementById('offline-state').textContent.startsWith({said:?})"
    ))?;
    Ok(visit)
}

/// Scripts that a host puts into every page are the usual reason.
#[test]
fn an_altered_page_is_named() -> Outcome {
    let altered = |site: &Site| {
        let html = fs::read_to_string(site.path().join("index.html"))?;
        Ok(Fault::Body(html.replace("</body>", "<!-- hosted with love --></body>").into_bytes()))
    };
    let said = "Not ready for offline use. index.html isn't the file that was built";
    says("", altered, said)?.end_but(&["sw.js"])
}

#[test]
fn a_file_that_is_missing_offline_is_named() -> Outcome {
    let said = "Not ready for offline use. icon-512.png: the host responded with 404.";
    says("icon-512.png", |_| Ok(Fault::Missing), said)?.end_but(&["icon-512.png", "sw.js"])
}

/// It goes on, and is ready in the end.
#[test]
fn a_slow_file_is_named() -> Outcome {
    let slow = |_: &Site| Ok(Fault::Delay(Duration::from_secs(20)));
    let visit = says(
        "icon-512.png",
        slow,
        "Not ready for offline use yet. Still waiting for icon-512.png.",
    )?;
    assert_ready(&visit.page)?;
    visit.end()
}

#[test]
fn a_hanging_worker_is_named() -> Outcome {
    let hangs = |_: &Site| Ok(Fault::Delay(Duration::from_secs(60)));
    says("sw.js", hangs, "Not ready for offline use yet. Still waiting for sw.js.")?.end()
}

#[test]
fn a_missing_worker_is_told() -> Outcome {
    says("sw.js", |_| Ok(Fault::Missing), "Not ready for offline use. The browser says:")?
        .end_but(&["sw.js", "404"])
}
