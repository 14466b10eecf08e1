//! Typing: marks, slips, and that nothing typed is lost.

use pitchline_core::Slot;
use pitchline_tests::browser::{Fault, Key, Outcome, Page, Size};

use crate::strip::{assert_answers, strip};
use crate::units::open_figures;
use crate::visit::{Visit, demo, kit_for, open_build, pick, put, see, views};

/// What stands beside a field that is faulty, by the field's own word.
#[track_caller]
fn fault(page: &Page, id: &str) -> Outcome<Option<String>> {
    let script = "const field = document.getElementById(arguments[0]);
        if (field.getAttribute('aria-invalid') !== 'true') return null;
        const said = field.getAttribute('aria-describedby').split(' ').map((id) => document.getElementById(id));
        if (!said.every((e) => e && e.checkVisibility())) return 'described by nothing';
        return said.find((e) => e.matches('.fault'))?.textContent ?? 'invalid without a word'";
    Ok(page.eval(script, &[id.into()])?.as_str().map(str::to_owned))
}

/// Whether every large figure is greyed, or none; one way or the other it must be all.
#[track_caller]
fn greyed(page: &Page) -> Outcome<bool> {
    // Rides are greyed too for as long as they are worked out anew.
    page.wait_until("return !document.querySelector('.ridden.waits')")?;
    let script = "return [...document.querySelectorAll('.headline-figure')].map((e) => {
        const waits = !!e.closest('.waits'), style = getComputedStyle(e);
        return waits === (style.opacity < 1 || style.color !== getComputedStyle(document.body).color)
          ? waits : 'class without a look';
      })";
    let found = page.eval(script, &[])?;
    let list = found.as_array().cloned().unwrap_or_default();
    match list.first().and_then(serde_json::Value::as_bool) {
        Some(waits) if list.iter().all(|one| one == waits) => Ok(waits),
        _ => Err(Fault::new(format!("some are greyed and some are not: {found}"))),
    }
}

fn slips(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    see(page, "Build")?;
    assert_answers(page, &draft)?;
    assert!(!greyed(page)?);

    // A view that comes anew brings a field of its own.
    let field = || page.by_css("#rider-mass_kg");
    let mass = field()?;
    mass.fill("82,5")?;
    draft.set(Slot::Rider, "mass_kg", 82.5);
    assert_answers(page, &draft)?;
    assert_eq!(mass.value()?, "82,5", "text is not rewritten under the fingers");
    page.press(Key::Tab)?;
    assert_eq!(mass.value()?, "82.5");

    let before = strip(page)?;
    // Where each answer stands, across: it must not jump when a word is added.
    let places = "return [...document.querySelectorAll('a.tile')].map((e) => {
        const r = e.getBoundingClientRect();
        return [Math.round(r.left), Math.round(r.width)];
      })";
    let stood = page.eval(places, &[])?;
    // 20 to 180 kg is in range, and so would be 135 on the way to 1350.
    mass.fill("1350")?;
    let name = mass.name()?;
    let said = format!("{name}: enter a value from 20 to 180\u{a0}kg");
    let said = said.as_str();
    page.wait_for("the fault is told", |page| {
        Ok(fault(page, "rider-mass_kg")?.as_deref() == Some(said))
    })?;
    assert_eq!(strip(page)?, before, "the answers before stay");
    assert!(greyed(page)?);
    assert_eq!(page.eval(places, &[])?, stood, "the answers jump aside");
    page.press(Key::Tab)?;
    assert_eq!(mass.value()?, "1350");
    assert_eq!(fault(page, "rider-mass_kg")?.as_deref(), Some(said));
    page.screenshot(&format!("page-error-{size:?}"))?;

    // In every view the answers are greyed and say why, and what was typed waits for who comes back.
    for view in views(page)? {
        see(page, &view)?;
        if ["Build", "Share", "More", "Catalogue check"].contains(&view.as_str()) {
            continue;
        }
        assert!(greyed(page)?, "{view} is not greyed");
        page.by_text("Showing results for your last valid value.")?;
    }

    // Neither another part, another kit nor other units take it away.
    pick(page, &catalog, &mut draft, Slot::Wheel, 2)?;
    see(page, "More")?;
    page.by_role("button", "mi, lb")?.click()?;
    see(page, "Build")?;
    assert_eq!(
        (field()?.value()?.as_str(), fault(page, "rider-mass_kg")?.is_some()),
        ("1350", true)
    );
    see(page, "More")?;
    page.by_role("button", "km, kg")?.click()?;
    see(page, "Overview")?;
    assert_answers(page, &draft)?;
    see(page, "Build")?;
    page.by_role("button", "Gannet")?.click()?;
    draft = kit_for(&catalog, "gannet", &draft);
    assert_answers(page, &draft)?;
    let mass = field()?;
    assert_eq!(mass.value()?, "1350");
    assert_eq!(fault(page, "rider-mass_kg")?.as_deref(), Some(said));

    mass.fill("95")?;
    draft.set(Slot::Rider, "mass_kg", 95.0);
    assert_answers(page, &draft)?;
    assert_eq!(fault(page, "rider-mass_kg")?, None);
    assert!(!greyed(page)?);

    for (text, said) in [
        ("", "enter a value"),
        ("heavy", "enter a number from 20 to 180\u{a0}kg"),
        ("1.2.3", "enter a number from 20 to 180\u{a0}kg"),
        ("1e2", "enter a number from 20 to 180\u{a0}kg"),
        ("19.9", "enter a value from 20 to 180\u{a0}kg"),
    ] {
        mass.fill(text)?;
        let said = format!("{name}: {said}");
        let said = said.as_str();
        page.wait_for(said, |page| Ok(fault(page, "rider-mass_kg")?.as_deref() == Some(said)))?;
    }
    mass.fill("\u{a0}9 5,0 ")?;
    assert_answers(page, &draft)?;
    assert_eq!(fault(page, "rider-mass_kg")?, None);
    visit.end()
}

#[test]
fn slips_are_told_and_mended_on_a_phone() -> Outcome {
    slips(Size::Phone)
}

#[test]
fn slips_are_told_and_mended_on_a_desktop() -> Outcome {
    slips(Size::Desktop)
}

/// What was altered in one part outlives the pick of another, and a pick in
/// its own slot can be taken back.
#[test]
fn altered_parts_outlive_picks() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    open_build(page)?;
    open_figures(page, Slot::Wheel)?;
    open_figures(page, Slot::WheelPulley)?;
    page.by_css("#wheel-diameter_mm")?.fill("93")?;
    draft.set(Slot::Wheel, "diameter_mm", 93.0);
    page.by_css("#wheel_pulley-teeth")?.fill("40.5")?;
    page.wait_for("teeth are whole", |page| {
        let said = fault(page, "wheel_pulley-teeth")?.unwrap_or_default();
        Ok(said.starts_with("Teeth: enter a whole number"))
    })?;
    page.by_css("#wheel_pulley-teeth")?.fill("43")?;
    draft.set(Slot::WheelPulley, "teeth", 43.0);
    assert_answers(page, &draft)?;
    pick(page, &catalog, &mut draft, Slot::MotorPulley, 2)?;
    assert_answers(page, &draft)?;
    see(page, "More")?;
    page.by_role("button", "mi, lb")?.click()?;
    page.by_role("button", "km, kg")?.click()?;
    see(page, "Overview")?;
    assert_eq!(page.by_css("#wheel-diameter_mm")?.value()?, "93");

    // Its own slot: the catalogue's part stands there, and "undo" brings back ours.
    let mut other = draft.clone();
    pick(page, &catalog, &mut other, Slot::Wheel, 1)?;
    assert_answers(page, &other)?;
    page.by_css(".undo")?.click()?;
    assert_answers(page, &draft)?;
    assert_eq!(page.by_css("#wheel-diameter_mm")?.value()?, "93");
    assert_eq!(page.all_by_css(".badge")?.len(), 2);

    // Steps: by button, by key, ten at once, held at the limit.
    let teeth = page.by_css("#wheel_pulley-teeth")?;
    page.by_role("button", "Teeth: more")?.click()?;
    assert_eq!(teeth.value()?, "44");
    teeth.focus()?;
    page.press(Key::Up)?;
    page.chord(&[Key::Shift, Key::Up])?;
    assert_eq!(teeth.value()?, "55");
    for _ in 0..5 {
        page.chord(&[Key::Shift, Key::Down])?;
    }
    assert_eq!(teeth.value()?, "12");
    draft.set(Slot::WheelPulley, "teeth", 12.0);
    assert_answers(page, &draft)?;
    page.by_css(".card:has(#pick-wheel_pulley) .altered button")?.click()?;
    put(&mut draft, &catalog, Slot::WheelPulley, "w46");
    assert_answers(page, &draft)?;
    visit.end()
}
