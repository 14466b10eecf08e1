//! What stands in the way of the answers is told where they are, and leads to
//! where it is mended.

use pitchline_core::{Build, Draft, Slot, notices};
use pitchline_tests::browser::{Browser, Key, Outcome, Page, Size};
use serde_json::Value;

use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, link, open_build, put, see};

/// Whether what has the focus, with its label, is seen whole above the bar of views; and its id.
const SEEN: &str = "
    const e = document.activeElement, whole = e.closest('.field') ?? e;
    const bar = document.querySelector('.bar')?.checkVisibility()
        ? document.querySelector('.bar').getBoundingClientRect().top : innerHeight;
    const [label, at] = [whole.getBoundingClientRect(), e.getBoundingClientRect()];
    return [e.id, label.top >= 0 && at.bottom <= Math.min(innerHeight, bar)]";

#[track_caller]
fn wait_seen(page: &Page, id: &str) -> Outcome {
    let wanted = serde_json::json!([id, true]);
    page.wait_for(&format!("{id} in sight"), |page| Ok(page.eval(SEEN, &[])? == wanted))
}

/// What needs attention, by the overview.
#[track_caller]
fn notes(page: &Page) -> Outcome<Vec<String>> {
    page.all_by_css("main .attention")?.iter().map(|note| note.text()).collect()
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
    page.by_role("link", "Check 1 thing")?.focus()?;
    page.press(Key::Enter)?;
    page.by_text("don't match: motor \"")?;
    page.screenshot(&format!("page-misfit-led-{size:?}"))?;
    // The nearest that fits the shaft, where it is said.
    page.by_css("main [role=status] button")?.click()?;
    see(page, "Overview")?;
    page.wait_for("nothing is left to tell", |page| Ok(notes(page)?.is_empty()))?;

    visit.open(&link("kit=kittiwake&motor_pulley=m10-17&charger=spring-54"))?;
    put(&mut draft, &catalog, Slot::Charger, "spring-54");
    page.by_role("link", &format!("Check {} things", count(&draft)))?.click()?;
    // What could burn stands first.
    page.by_text("the wrong charger can set a pack on fire")?;
    let words = page.by_css("main")?.text()?;
    let at = |what: &str| words.find(what).unwrap_or(usize::MAX);
    assert!(at("set a pack on fire") < at("Motor and motor pulley don't match"), "{words}");
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

/// What the overview says while a field is faulty.
const WAITS: &str = "Showing results for your last valid value.";

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
        open_build(page)?;
        let figures =
            "for (const fold of document.querySelectorAll('details:not([open])')) fold.open = true;
            return !!document.getElementById(arguments[0])";
        page.wait_for(id, |page| Ok(page.eval(figures, &[id.into()])? == Value::Bool(true)))?;
        page.by_css(&format!("#{id}"))?.fill("x")?;
        see(page, "Overview")?;
        // The outer ones; what they hold is gone then, the inner ones too.
        let close = "for (const fold of document.querySelectorAll('details:not(details details)')) fold.open = false";
        page.eval(close, &[])?;
        page.wait_until(&format!("return !document.getElementById('{id}')"))?;
        page.by_role("button", WAITS)?.click()?;
        wait_seen(page, id)?;
        // Only what was in the way was opened; the rider's group begins open.
        let open =
            "return [...document.querySelectorAll('details[open]:not(.group:has(#rider-mass_kg))')]
            .every((fold) => fold.contains(document.activeElement))";
        assert_eq!(page.eval(open, &[])?, Value::Bool(true), "{id}");
        let field = page.focused()?;
        assert_eq!(field.value()?, "x");
        assert_eq!(field.attribute("aria-invalid")?.as_deref(), Some("true"));
        page.screenshot(&format!("page-fault-led-{id}-{size:?}"))?;
        field.fill(valid)?;
        see(page, "Overview")?;
        page.wait_for("it is mended", |page| Ok(notes(page)?.is_empty()))?;
    }
    // One that is open already, past a misfit that is told as well.
    visit.open(&link("kit=kittiwake&motor_pulley=m10-17"))?;
    page.by_role("link", "Check 1 thing")?;
    open_build(page)?;
    page.by_label("Your weight")?.fill("1999")?;
    see(page, "Overview")?;
    page.wait_for("both are told", |page| Ok(notes(page)?.len() == 2))?;
    page.by_role("button", WAITS)?.click()?;
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
