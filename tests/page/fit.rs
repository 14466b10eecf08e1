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

/// 76.4 mm from shaft to axle and 17 and 38 teeth take 59 teeth, 295 mm, at 76.928 mm.
/// Source: open-belt length, Shigley and Budynas, eq. 17-1 and 17-2, solved by bisection.
fn belt(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    said(page, "The mount slides")?;
    page.by_label("Teeth of the motor pulley")?.fill("17")?;
    page.by_label("Teeth of the wheel pulley")?.fill("38")?;
    page.by_label("Motor shaft to axle, measured")?.fill("76.4")?;
    let words = said(page, "The nearest is Towline 12, 295 mm: 59\u{a0}teeth, 295\u{a0}mm.")?;
    assert!(words.contains("On pulleys of 17 and 38\u{a0}teeth that takes a belt"), "{words}");
    assert!(
        words.contains(
            "shaft and axle stand 0.5\u{a0}mm farther apart than measured, at 76.9\u{a0}mm"
        ),
        "{words}"
    );
    // The other way round: that belt goes with these pulleys.
    page.by_label("Teeth of a belt in hand")?.fill("59")?;
    let words = said(page, "the belt in hand wants 76.9\u{a0}mm")?;
    assert!(words.contains("17 with 38 (76.9\u{a0}mm)"), "{words}");
    page.screenshot(&format!("page-fit-belt-{size:?}"))?;
    // The belt on the board is too long for that; the one told is a tap away.
    let misses = "The belt on the board wants 89.7\u{a0}mm from motor shaft to wheel axle";
    assert!(words.contains(misses), "{words}");
    take(page, "Take Towline 12, 295 mm")?;
    page.wait_for("the belt fits", |page| Ok(!fit(page)?.contains("The belt on the board wants")))?;
    assert!(fit(page)?.contains("Belt of 59\u{a0}teeth, 295\u{a0}mm"));
    visit.end()
}

/// 200 mm take 538.9 mm, by the exact length; none on offer is longer than 320 mm.
#[test]
fn a_measured_distance_that_no_belt_is_near_offers_none() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    said(page, "The mount slides")?;
    page.by_label("Teeth of the wheel pulley")?.fill("38")?;
    page.by_label("Motor shaft to axle, measured")?.fill("200")?;
    let words = said(page, "538.9\u{a0}mm long: 107 or 108\u{a0}teeth of 5\u{a0}mm.")?;
    assert!(words.contains("None on offer comes near"), "{words}");
    assert!(!words.contains("The nearest is"), "{words}");
    visit.end()
}

/// All words of the question.
#[track_caller]
fn fit(page: &Page) -> Outcome<String> {
    page.by_css("#fit")?.text()
}

/// Taps the first button of that name in the question.
#[track_caller]
fn take(page: &Page, name: &str) -> Outcome {
    let buttons = page.all_by_css("#fit button")?;
    for button in buttons {
        if button.text()? == name {
            return button.click();
        }
    }
    Err(Fault::new(format!("no button {name:?}")))
}

/// What the strip says beyond the answers.
#[track_caller]
fn notes(page: &Page) -> Outcome<Vec<String>> {
    page.all_by_css(".strip-note")?.iter().map(|note| note.text()).collect()
}

/// What does not fit by its size is counted in the strip, which leads to where it is told.
fn misfit(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    said(page, "Belt, motors, deck, box and tyres clear each other")?;
    assert_eq!(notes(page)?, Vec::<String>::new());
    // A belt for 46 teeth goes round 38 at more than the mount's 84 mm.
    page.by_label("Wheel pulley ×2")?.choose("38 teeth, spoked")?;
    page.by_role("button", "1 thing does not fit")?.focus()?;
    page.press(Key::Enter)?;
    page.wait_for("the list", |page| {
        Ok(page.focused()?.text()?.contains("The belt on the board wants"))
    })?;
    page.screenshot(&format!("page-fit-led-{size:?}"))?;
    alter(page, "pick-wheel", "wheel-diameter_mm", "140")?;
    page.by_role("button", "2 things do not fit")?;
    take(page, "Take Towline 12, 295 mm")?;
    page.by_role("button", "1 thing does not fit")?;
    take(page, "Go to: Riser")?;
    page.wait_for("the riser", |page| {
        Ok(page.eval("return document.activeElement.id", &[])? == "deck-riser_mm")
    })?;
    page.focused()?.fill("60")?;
    page.wait_for("nothing is left to tell", |page| Ok(notes(page)?.is_empty()))?;
    visit.end()
}

#[test]
fn what_does_not_fit_by_size_is_in_the_strip_on_a_phone() -> Outcome {
    misfit(Size::Phone)
}

#[test]
fn what_does_not_fit_by_size_is_in_the_strip_on_a_desktop() -> Outcome {
    misfit(Size::Desktop)
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
    // That is a caution: no all-clear, and nothing for the strip.
    let words = said(page, "Deck to tyre, at full lean: tight, ")?;
    assert!(!words.contains("tyres clear each other"), "{words}");
    page.wait_for("the strip is empty", |page| Ok(notes(page)?.is_empty()))?;
    visit.end()
}

#[test]
fn a_pack_that_does_not_go_in_says_by_how_much() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    assert!(!said(page, "Cells in the box")?.contains("does not go in the box"));
    let mut over = Vec::new();
    for length in ["290", "285", "280"] {
        alter(page, "pick-deck", "deck-box_length_mm", length)?;
        page.wait_for("the answer to that box", |page| {
            Ok(fit(page)?.contains(&format!("This one has {length}\u{a0}mm")))
        })?;
        let words = said(page, "The pack does not go in the box: ")?;
        assert!(words.contains("\u{a0}mm too long"), "{words}");
        // Never as a length below nothing; a minus alone is a button.
        let below = |part: &str| part.starts_with(|c: char| c.is_ascii_digit());
        assert!(!words.split('−').skip(1).any(below), "{words}");
        over.push(millimetres(&words, "The pack does not go in the box: ")?);
    }
    // By hand: nine cells of 21 mm, 1 mm between them, cables 20, controller 75 and lining 4
    // are 296 mm.
    assert_eq!(over, [6.0, 11.0, 16.0]);
    page.screenshot("page-fit-box-Desktop")?;
    assert!(fit(page)?.contains("A box 296\u{a0}mm long inside"), "{}", fit(page)?);
    alter(page, "pick-deck", "deck-box_length_mm", "295")?;
    said(page, "This one has 295\u{a0}mm")?;
    said(page, "The pack does not go in the box: ")?;
    alter(page, "pick-deck", "deck-box_length_mm", "296")?;
    page.wait_for("it goes in", |page| Ok(!fit(page)?.contains("does not go in the box")))?;
    // By hand: 160 inside and two walls of 3 on a deck of 150.
    said(page, "The box is 166\u{a0}mm wide outside, 16\u{a0}mm more than the deck")?;
    visit.end()
}

#[test]
fn the_nearest_part_that_fits_is_one_tap_away() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    said(page, "Shafts, bores, cores, plugs and volts agree.")?;
    alter(page, "pick-charger", "charger-full_v", "54.6")?;
    said(page, "a wrong charger can set a pack on fire")?;
    let button = page.by_css("#fit [role=status] button")?;
    assert!(button.text()?.starts_with("Take "), "{}", button.text()?);
    button.click()?;
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
        Ok(page.by_css("#fit .chart-readout")?.text()?.starts_with("Motor shaft to wheel axle: "))
    })?;
    page.set_print(true)?;
    page.screenshot_whole("page-fit-print-Phone")?;
    visit.end()
}
