//! In a garage without a signal.

use pitchline_core::Slot;
use pitchline_tests::browser::{Outcome, Size};

use crate::strip::assert_answers;
use crate::visit::{Visit, demo, pick};

fn works_without_signal(size: Size) -> Outcome {
    let mut visit = Visit::at(size)?;
    visit.page.wait_until("return document.documentElement.dataset.offline === 'ready'")?;
    visit.page.by_text("Ready offline: it works without a signal from now on.")?;
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
