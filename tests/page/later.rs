//! The piece that follows once the page is usable: it comes by itself, and the page does without
//! it until then.

use std::time::Duration;

use pitchline_site::Fault;
use pitchline_tests::browser::{Browser, Outcome, Page, Size};

use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, wait_living};

/// Opens the first working, and gives what it shows.
#[track_caller]
fn open_working(page: &Page) -> Outcome {
    page.by_css("details.working > summary")?.click()
}

/// Waits for steps of a working, each with a result and its formula.
#[track_caller]
fn wait_steps(page: &Page) -> Outcome {
    page.wait_until(
        "const steps = document.querySelectorAll('details.working .steps > li');
         return steps.length > 3
           && [...steps].every((step) => step.querySelector('.step-result').textContent.includes(' = '))",
    )
}

#[test]
fn the_page_is_usable_before_the_later_piece_is_there() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    let later = visit.site.file("_later.wasm")?;
    visit.server.set_fault(&later, Fault::Delay(Duration::from_secs(3)));
    page.goto(&visit.server.url())?;
    wait_living(page)?;
    page.by_role("button", "Gannet")?.click()?;
    open_working(page)?;
    page.by_text("Loading…")?;
    page.screenshot("page-later-loading-Phone")?;
    wait_steps(page)?;
    assert!(!page.text()?.contains("Loading…"));
    visit.end()
}

#[test]
fn a_lost_later_piece_is_told_and_can_be_asked_for_again() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Desktop))?;
    let page = &visit.page;
    let later = visit.site.file("_later.wasm")?;
    visit.server.set_fault(&later, Fault::Missing);
    page.goto(&visit.server.url())?;
    wait_living(page)?;
    open_working(page)?;
    page.by_text("This part did not arrive; all else works. If it fails again, reload the page.")?;
    page.assert_accessible()?;
    page.screenshot("page-later-lost-Desktop")?;
    // All else works, and so does a second try that fails.
    let catalog = demo();
    page.by_css(".working[open] .late button")?.click()?;
    page.wait_until("return document.documentElement.dataset.later === 'failed'")?;
    page.by_role("button", "Gannet")?.click()?;
    page.wait_until("return location.hash.includes('kit=gannet')")?;
    page.by_role("button", "Kittiwake")?.click()?;
    assert_answers(page, &catalog.draft("kittiwake"))?;
    visit.server.mend();
    page.by_css(".working[open] .late button")?.click()?;
    wait_steps(page)?;
    visit.end_but(&["_later.wasm"])
}

#[test]
fn the_later_piece_is_there_without_a_signal() -> Outcome {
    let mut visit = Visit::at(Size::Phone)?;
    visit.server.stop();
    visit.reload()?;
    open_working(&visit.page)?;
    wait_steps(&visit.page)?;
    visit.end_but(&["catalogue.json", "sw.js"])
}
