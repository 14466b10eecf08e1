//! What stands in the way of the answers is told where they are, and leads to
//! where it is mended.

use pitchline_core::{Build, Draft, Slot, notices};
use pitchline_tests::browser::{Browser, Key, Outcome, Page, Size};

use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, put};

/// Whether what has the focus, with its label, is seen whole between the strip
/// and the foot of the window; and its id.
const SEEN: &str = "
    const e = document.activeElement, whole = e.closest('.field') ?? e;
    const strip = document.querySelector('.strip').getBoundingClientRect();
    const [label, at] = [whole.getBoundingClientRect(), e.getBoundingClientRect()];
    return [e.id, label.top >= strip.bottom && at.bottom <= innerHeight]";

#[track_caller]
fn wait_seen(page: &Page, id: &str) -> Outcome {
    let wanted = serde_json::json!([id, true]);
    page.wait_for(&format!("{id} in sight"), |page| Ok(page.eval(SEEN, &[])? == wanted))
}

/// What the strip says beyond the answers.
#[track_caller]
fn notes(page: &Page) -> Outcome<Vec<String>> {
    page.all_by_css(".strip-note")?.iter().map(|note| note.text()).collect()
}

#[track_caller]
fn count(draft: &Draft) -> usize {
    notices(draft, &Build::check(draft).expect("a valid draft")).len()
}

fn misfits(size: Size) -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(size))?;
    let page = &visit.page;
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    visit.open("#v=1&kit=kittiwake")?;
    assert_answers(page, &draft)?;
    assert_eq!(notes(page)?, Vec::<String>::new());

    visit.open("#v=1&kit=kittiwake&motor_pulley=m10-16")?;
    put(&mut draft, &catalog, Slot::MotorPulley, "m10-16");
    assert_eq!(count(&draft), 1);
    page.by_role("button", "1 thing does not fit")?.focus()?;
    page.press(Key::Enter)?;
    wait_seen(page, "misfits")?;
    assert!(page.focused()?.text()?.contains("do not fit: one has"));
    page.screenshot(&format!("page-misfit-led-{size:?}"))?;
    page.by_label("Motor pulley ×2")?.choose("14 teeth, 8 mm")?;
    page.wait_for("nothing is left to tell", |page| Ok(notes(page)?.is_empty()))?;

    visit.open("#v=1&kit=kittiwake&motor_pulley=m10-16&charger=spring-50")?;
    put(&mut draft, &catalog, Slot::Charger, "spring-50");
    let said = format!("{} things do not fit", count(&draft));
    page.by_role("button", &said)?.click()?;
    wait_seen(page, "misfits")?;
    visit.end()
}

#[test]
fn what_does_not_fit_is_in_view_on_a_phone() -> Outcome {
    misfits(Size::Phone)
}

#[test]
fn what_does_not_fit_is_in_view_on_a_desktop() -> Outcome {
    misfits(Size::Desktop)
}
