//! The piece that follows once the page is usable: it comes by itself, and the page does without
//! it until then.

use std::time::Duration;

use pitchline_site::Fault;
use pitchline_tests::browser::{Browser, Outcome, Page, Size};

use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, drawn, wait_living};

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

/// What is in sight follows at once, what is not once the reader rests; nothing stays behind.
#[test]
fn a_drawing_out_of_sight_follows_when_the_reader_rests() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    page.by_css("#fit figure")?;
    drawn(page)?;
    // The captions of all drawings just after an edit, and once there was a rest.
    let script = "const said = () => [...document.querySelectorAll('figure')].map(
            (figure) => [figure.querySelector('svg').getAttribute('aria-label'),
                         figure.querySelector('figcaption').textContent,
                         figure.hasAttribute('aria-busy')]);
        document.querySelectorAll('figure')[0].scrollIntoView();
        await new Promise((then) => setTimeout(then, 300));
        const input = document.getElementById('ride-cruise_km_h'), before = said();
        input.value = '31';
        input.dispatchEvent(new Event('input', { bubbles: true }));
        await new Promise((then) => queueMicrotask(() => setTimeout(then, 0)));
        return [before, said()];";
    let found = page.eval(script, &[])?;
    let at = |n: usize, figure: usize| found[n][figure].clone();
    let last = found[0].as_array().map_or(0, Vec::len) - 1;
    assert!(last > 5, "{found}");
    // The first names the cruising speed, and is in sight.
    assert_ne!(at(0, 0), at(1, 0));
    assert!(at(1, 0)[1].as_str().is_some_and(|said| said.contains("31")), "{found}");
    let behind = |n: usize| found[n].as_array().into_iter().flatten().filter(|f| f[2] == true);
    assert_eq!(behind(0).count(), 0);
    assert!(behind(1).count() > 0, "all drawn at once: {found}");
    drawn(page)?;
    let script = "return [...document.querySelectorAll('figure')].filter(
        (f) => f.querySelector('svg').getAttribute('aria-label')
            !== f.querySelector('figcaption').textContent).length";
    assert_eq!(page.eval(script, &[])?, 0);
    // The band over speed takes its samples first.
    page.wait_for("the distance follows", |page| {
        Ok(page.by_css("#far figcaption")?.text()?.contains("31"))
    })?;
    visit.end()
}
