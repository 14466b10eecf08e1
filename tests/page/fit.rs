//! Does it go together? A belt for what was measured, a riser against wheel
//! bite, a pack and its box, and the nearest part that would fit.

use crate::visit::Visit;
use pitchline_tests::browser::{Fault, Key, Outcome, Page, Size};

/// The words of the question, once they say what is wanted.
#[track_caller]
fn said(page: &Page, wanted: &str) -> Outcome<String> {
    let words = || -> Outcome<String> { page.by_css("#fit")?.text() };
    page.wait_for(wanted, |_| Ok(words()?.contains(wanted)))?;
    words()
}

/// Opens the figures of a part and types into one of them.
fn alter(page: &Page, slot: &str, field: &str, value: &str) -> Outcome {
    let script = "const input = document.getElementById(arguments[0]);
        if (input) return true;
        for (const fold of document.querySelectorAll('#on-it details.more')) fold.open = true;
        return false";
    page.eval(script, &[field.into()])?;
    let open = "const card = document.getElementById(arguments[0])?.closest('section.card');
        if (!card) return false;
        card.querySelector('details.figures').open = true;
        return !!document.getElementById(arguments[1])";
    page.wait_for("the part's figures", |page| {
        Ok(page.eval(open, &[slot.into(), field.into()])?.as_bool().unwrap_or(false))
    })?;
    page.by_css(&format!("#{field}"))?.fill(value)?;
    page.press(Key::Tab)
}

/// 71 mm between the axles and 16 and 44 teeth take 60 teeth, 300 mm, at 71.499 mm.
/// Source: open-belt length, Shigley and Budynas, eq. 17-1 and 17-2, solved by bisection.
fn belt(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    page.by_label("Motor pulley ×2")?.choose("16 teeth, 8 mm")?;
    page.by_label("Wheel pulley ×2")?.choose("44 teeth, spoked")?;
    said(page, "The mount slides")?;
    page.by_css("#bench-measured_centre_mm")?.fill("71")?;
    let words = said(page, "The nearest has 60\u{a0}teeth")?;
    assert!(
        words.contains(
            "300.0\u{a0}mm: the axles stand 0.5\u{a0}mm farther apart with it, at 71.5\u{a0}mm"
        ),
        "{words}"
    );
    // The other way round: that belt goes with these pulleys.
    page.by_css("#bench-belt_in_hand_teeth")?.fill("60")?;
    let words = said(page, "The belt in hand wants 71.5\u{a0}mm")?;
    assert!(words.contains("16 with 44 (71.5\u{a0}mm)"), "{words}");
    page.screenshot(&format!("page-fit-belt-{size:?}"))?;
    visit.end()
}

#[test]
fn a_measured_distance_finds_its_belt_on_a_phone() -> Outcome {
    belt(Size::Phone)
}

#[test]
fn a_measured_distance_finds_its_belt_on_a_desktop() -> Outcome {
    belt(Size::Desktop)
}

/// The number before "mm" that follows some words.
fn millimetres(words: &str, after: &str) -> Outcome<f64> {
    let rest =
        words.split_once(after).ok_or_else(|| Fault::new(format!("no {after:?}: {words}")))?;
    let number = rest.1.split('\u{a0}').next().unwrap_or_default();
    number.trim().parse().map_err(|e| Fault::new(format!("{number:?}: {e}")))
}

#[test]
fn a_wheel_that_bites_is_cured_by_the_riser_that_is_told() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    assert!(!said(page, "Lean and turn")?.contains("Wheel bite:"));
    alter(page, "pick-wheel", "wheel-diameter_mm", "140")?;
    let words = said(page, "Wheel bite:")?;
    let riser = millimetres(&words, "A riser of ")?;
    page.screenshot("page-fit-bite-Phone")?;
    // Two millimetres less than told does not do, one more does: it was rounded.
    alter(page, "pick-deck", "deck-riser_mm", &format!("{:.0}", riser - 2.0))?;
    said(page, "Wheel bite:")?;
    alter(page, "pick-deck", "deck-riser_mm", &format!("{:.0}", riser + 1.0))?;
    page.wait_for("no more bite", |page| {
        Ok(!page.by_css("#fit")?.text()?.contains("Wheel bite:"))
    })?;
    visit.end()
}

#[test]
fn a_pack_that_does_not_go_in_says_by_how_much() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    assert!(!said(page, "Cells in the box")?.contains("does not go in the box"));
    let mut over = Vec::new();
    for length in ["150", "140", "130"] {
        alter(page, "pick-deck", "deck-box_length_mm", length)?;
        page.wait_for("the drawing of that box", |page| {
            Ok(page.by_css("#fit")?.text()?.contains(&format!("{length}.0")))
        })?;
        let words = said(page, "The pack does not go in the box: ")?;
        assert!(words.contains("\u{a0}mm too long"), "{words}");
        over.push(millimetres(&words, "The pack does not go in the box: ")?);
    }
    // By hand: eight upright cells of 18 mm, 1 mm between them and 4 mm of lining are 155 mm.
    assert_eq!(over, [5.0, 15.0, 25.0]);
    page.screenshot("page-fit-box-Desktop")?;
    visit.end()
}

#[test]
fn the_nearest_part_that_fits_is_one_tap_away() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    said(page, "Shafts, bores, cores, plugs and volts agree.")?;
    alter(page, "pick-charger", "charger-full_v", "50.4")?;
    said(page, "a wrong charger can set a pack on fire")?;
    let take = page.by_css("#fit [role=status] button")?;
    assert!(take.text()?.starts_with("Take "), "{}", take.text()?);
    take.click()?;
    said(page, "Shafts, bores, cores, plugs and volts agree.")?;
    visit.end()
}

/// Each drawing has a name, a table, and a cursor that visits its dimensions.
#[test]
fn drawings_can_be_read_without_seeing_them() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    said(page, "Lean and turn")?;
    let figures = page.eval(
        "return [...document.querySelectorAll('#fit figure')].map((figure) => [
            figure.querySelector('svg.chart-svg').getAttribute('aria-label'),
            figure.querySelector('summary').textContent,
            figure.querySelector('.chart-glass').getAttribute('aria-label')])",
        &[],
    )?;
    let list = figures.as_array().cloned().unwrap_or_default();
    assert_eq!(list.len(), 4, "{figures}");
    for one in &list {
        assert!(one[0].as_str().is_some_and(|name| name.len() > 20), "{one}");
        assert_eq!(one[1], "Dimensions");
        assert_eq!(one[2], "Arrow keys visit the dimensions");
    }
    page.eval("document.querySelector('#fit .chart-glass').focus()", &[])?;
    page.press(Key::Right)?;
    page.wait_for("a dimension is read", |page| {
        Ok(page.by_css("#fit .chart-readout")?.text()?.starts_with("Between the axles: "))
    })?;
    page.set_print(true)?;
    page.screenshot_whole("page-fit-print-Phone")?;
    visit.end()
}
