//! What stands in the way of the answers is told where they are, and leads to
//! where it is mended.

use pitchline_core::{Build, Draft, Slot, notices};
use pitchline_tests::browser::{Browser, Key, Outcome, Page, Size};
use serde_json::Value;

use crate::legible::open_folds;
use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, link, put};

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
    visit.open(&link("kit=kittiwake"))?;
    assert_answers(page, &draft)?;
    assert_eq!(notes(page)?, Vec::<String>::new());

    visit.open(&link("kit=kittiwake&motor_pulley=m10-17"))?;
    put(&mut draft, &catalog, Slot::MotorPulley, "m10-17");
    assert_eq!(count(&draft), 1);
    page.by_role("button", "1 thing does not fit")?.focus()?;
    page.press(Key::Enter)?;
    wait_seen(page, "misfits")?;
    assert!(page.focused()?.text()?.contains("do not fit: one has"));
    page.screenshot(&format!("page-misfit-led-{size:?}"))?;
    page.by_label("Motor pulley ×2")?.choose("13 teeth, 8 mm")?;
    page.wait_for("nothing is left to tell", |page| Ok(notes(page)?.is_empty()))?;

    visit.open(&link("kit=kittiwake&motor_pulley=m10-17&charger=spring-54"))?;
    put(&mut draft, &catalog, Slot::Charger, "spring-54");
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

fn folded(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    // One fold, another, and two within each other.
    for (id, valid) in [
        ("wheel-diameter_mm", "93"),
        ("rider-drag_area_m2", "0.4"),
        ("motor-kv_rpm_per_v", "170"),
        ("mode_high-current_percent", "90"),
    ] {
        open_folds(page)?;
        page.by_css(&format!("#{id}"))?.fill("x")?;
        page.by_text("Answers are for the value before.")?;
        // The outer ones; what they hold is gone then, the inner ones too.
        let close = "for (const fold of document.querySelectorAll('details:not(details details)')) fold.open = false";
        page.eval(close, &[])?;
        page.wait_until(&format!("return !document.getElementById('{id}')"))?;
        page.eval("scrollTo(0, document.body.scrollHeight)", &[])?;
        page.by_role("button", "Answers are for the value before.")?.click()?;
        wait_seen(page, id)?;
        // Only what was in the way was opened.
        let open = "return [...document.querySelectorAll('details[open]')]
            .every((fold) => fold.contains(document.activeElement))";
        assert_eq!(page.eval(open, &[])?, Value::Bool(true), "{id}");
        let field = page.focused()?;
        assert_eq!(field.value()?, "x");
        assert_eq!(field.attribute("aria-invalid")?.as_deref(), Some("true"));
        page.screenshot(&format!("page-fault-led-{id}-{size:?}"))?;
        field.fill(valid)?;
        page.wait_for("it is mended", |page| Ok(notes(page)?.is_empty()))?;
    }
    // One that is open already, past a misfit that is told as well.
    page.by_label("Your weight")?.fill("1999")?;
    let mixed = link("kit=kittiwake&motor_pulley=m10-17");
    page.eval("location.hash = arguments[0]", &[mixed.into()])?;
    page.by_role("button", "1 thing does not fit")?;
    page.by_label("Your weight")?.fill("1999")?;
    page.wait_for("both are told", |page| Ok(notes(page)?.len() == 2))?;
    page.eval("scrollTo(0, document.body.scrollHeight)", &[])?;
    page.by_role("button", "Answers are for the value before.")?.click()?;
    wait_seen(page, "rider-mass_kg")?;
    page.screenshot(&format!("page-both-led-{size:?}"))?;
    visit.end()
}

#[test]
fn a_folded_fault_is_led_to_on_a_phone() -> Outcome {
    folded(Size::Phone)
}

#[test]
fn a_folded_fault_is_led_to_on_a_desktop() -> Outcome {
    folded(Size::Desktop)
}
