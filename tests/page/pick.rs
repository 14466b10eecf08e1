//! Picking: a kit, parts from the lists, a pairing of the gear map.

use pitchline_core::catalog::read_build;
use pitchline_core::{Draft, Slot};
use pitchline_tests::browser::{Fault, Outcome, Page, Size};
use pitchline_web::text::Units;
use serde_json::Value;

use crate::strip::{assert_answers, nominal, strip};
use crate::visit::{Visit, demo, drawn, kit_for, open_build, pick, put, see, unfold};

/// The glass over the gear map.
pub(crate) const MAP: &str = "Arrow keys move between the pairings. Enter uses the current one.";

fn picks(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    let first = catalog.draft("kittiwake");
    assert_answers(page, &first)?;
    let mut seen = vec![strip(page)?];
    page.screenshot(&format!("page-first-{size:?}"))?;

    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    let mut draft = kit_for(&catalog, "gannet", &first);
    assert_answers(page, &draft)?;
    seen.push(strip(page)?);
    let picks = [(Slot::Wheel, 2), (Slot::WheelPulley, 1), (Slot::MotorPulley, 2), (Slot::Pack, 1)];
    for (slot, place) in picks {
        pick(page, &catalog, &mut draft, slot, place)?;
        assert_answers(page, &draft)?;
        seen.push(strip(page)?);
    }
    seen.dedup();
    // Every pick was one that matters, so every strip is another.
    assert_eq!(seen.len(), 2 + picks.len(), "{seen:#?}");

    // What the page keeps is what was picked, to the last digit.
    assert_eq!(visit.stored("current")?["wheel"]["id"], draft.record(Slot::Wheel).id);
    for _ in picks {
        page.by_role("button", "Undo –")?.click()?;
    }
    assert_answers(page, &kit_for(&catalog, "gannet", &first))?;
    visit.end()
}

#[test]
fn picks_change_the_answers_on_a_phone() -> Outcome {
    picks(Size::Phone)
}

#[test]
fn picks_change_the_answers_on_a_desktop() -> Outcome {
    picks(Size::Desktop)
}

/// The figure in a cell of the gear map, and the cell's place on the glass.
#[track_caller]
fn cell(page: &Page, last: bool) -> Outcome<(String, f64, f64)> {
    let script = "const figure = document.querySelector('.gear-map figure');
        const glass = figure.querySelector('.chart-glass').getBoundingClientRect();
        const texts = [...figure.querySelectorAll('text.c-value')];
        const text = texts.at(arguments[0] ? -1 : 0), r = text.getBoundingClientRect();
        return [text.textContent, (r.x + r.width / 2 - glass.x) / glass.width,
          (r.y + r.height / 2 - glass.y) / glass.height]";
    let found = page.eval(script, &[last.into()])?;
    let part = |index: usize| found.get(index).and_then(Value::as_f64).unwrap_or(f64::NAN);
    let text = found.get(0).and_then(Value::as_str).unwrap_or_default();
    Ok((text.to_owned(), part(1), part(2)))
}

/// Opens the map of pairings, and waits until it is drawn.
#[track_caller]
pub(crate) fn pairings(page: &Page) -> Outcome {
    see(page, "How fast?")?;
    unfold(page, "Which pulleys and wheels?")?;
    page.by_css(".gear-map .c-cell")?;
    drawn(page)
}

/// The teeth that stand on the board, by what the fold of the map says: motor pulley, wheel pulley.
#[track_caller]
fn teeth_now(page: &Page) -> Outcome<(String, String)> {
    let script = "const hints = [...document.querySelectorAll('.fold-hint')];
        return hints.map((hint) => hint.textContent).find((text) => text.endsWith('teeth now'))";
    let text = page.eval(script, &[])?;
    let text = text.as_str().unwrap_or_default();
    let mut numbers =
        text.split([' ', '/']).filter(|word| word.parse::<u8>().is_ok()).map(str::to_owned);
    Ok((numbers.next().unwrap_or_default(), numbers.next().unwrap_or_default()))
}

/// What is said of the pairing to take.
#[track_caller]
fn suggested(page: &Page) -> Outcome<String> {
    page.by_css(".suggested p")?.text()
}

/// The teeth that stand on the board, by the lists: motor pulley, wheel pulley.
#[track_caller]
pub(crate) fn picked_teeth(page: &Page) -> Outcome<(String, String)> {
    let teeth = |label: &str| -> Outcome<String> {
        let id = page.by_label(label)?;
        let script = "return arguments[0].selectedOptions[0].text.split(' ')[0]";
        let text = page.eval(script, &[id.json()])?;
        Ok(text.as_str().unwrap_or_default().to_owned())
    };
    Ok((teeth("Motor pulley ×2")?, teeth("Wheel pulley ×2")?))
}

/// The draft with the pulleys of these teeth; by teeth, since the lists show no ids.
pub(crate) fn paired(draft: &Draft, teeth: &(String, String)) -> Draft {
    let mut draft = draft.clone();
    let catalog = demo();
    put(&mut draft, &catalog, Slot::MotorPulley, &format!("m10-{}", teeth.0));
    put(&mut draft, &catalog, Slot::WheelPulley, &format!("w{}", teeth.1));
    draft
}

fn taps(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    let gannet = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    pairings(page)?;
    let mut adopted = vec![teeth_now(page)?];
    for last in [true, false] {
        let (figure, across, down) = cell(page, last)?;
        let glass = page.by_role("application", MAP)?;
        if size == Size::Phone {
            glass.tap(across, down)?;
        } else {
            glass.hover(across, down)?;
            glass.click_at(across, down)?;
        }
        let before = adopted.clone();
        page.wait_for("another pairing is on the board", |page| {
            Ok(!before.contains(&teeth_now(page)?))
        })?;
        let teeth = teeth_now(page)?;
        drawn(page)?;
        // The strip's band is that of what the cell said.
        let likely = nominal(&paired(&gannet, &teeth), Units::Metric);
        assert!(likely[0].starts_with(&format!("{figure} ")), "{figure}, then {likely:?}");
        // A chosen cell stands out, and the readout names the pairing.
        let readout = page.by_css(".gear-map .chart-readout")?.text()?;
        let wanted = format!("{}/{}\u{a0}teeth: ", teeth.0, teeth.1);
        if !readout.starts_with(&wanted) {
            return Err(Fault::new(format!("the readout says {readout:?}, not {wanted:?}")));
        }
        adopted.push(teeth);
    }
    page.screenshot(&format!("page-gear-map-{size:?}"))?;
    // The first cell is on the board now, so in each view it says what the strip's bands are about.
    let last = adopted.last().expect("two were adopted");
    let likely = nominal(&paired(&gannet, last), Units::Metric);
    for (view, tile) in [("Steepest hill at 10\u{a0}km/h", 1), ("Distance at 22\u{a0}km/h", 2)] {
        page.by_label("Show")?.choose(view)?;
        page.wait_for(view, |page| {
            Ok(likely[tile].starts_with(&format!("{} ", cell(page, false)?.0)))
        })?;
    }
    // What the fold said is what the lists have, and what the answers are for.
    let last = last.clone();
    open_build(page)?;
    assert_eq!(picked_teeth(page)?, last);
    see(page, "Overview")?;
    assert_answers(page, &paired(&gannet, &last))?;
    visit.end()
}

#[test]
fn a_tap_on_the_gear_map_adopts_a_pairing() -> Outcome {
    taps(Size::Phone)
}

#[test]
fn a_click_on_the_gear_map_adopts_a_pairing() -> Outcome {
    taps(Size::Desktop)
}

/// The stranger's wish: 95 kg, a 12 % street, 35 km/h. The caption names a
/// pairing and a button puts it on the board.
#[test]
fn the_best_pairing_for_the_wishes_is_one_tap() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    open_build(page)?;
    page.by_label("Your weight")?.fill("95")?;
    page.by_label("Cruising speed")?.fill("35")?;
    page.by_label("Your hill")?.fill("12")?;
    let before = strip(page)?;
    // Below the wishes is a way to all pulleys, and what is suggested comes first.
    page.by_css(".fields + p > .lead-to")?.click()?;
    page.wait_until("return document.activeElement.id === 'suggested'")?;
    page.by_css(".gear-map .c-cell")?;
    drawn(page)?;
    let caption = page.by_css(".gear-map figcaption")?.text()?;
    let said = suggested(page)?;
    let numbers: Vec<&str> =
        said.split(|c: char| !c.is_ascii_digit()).filter(|n| !n.is_empty()).collect();
    assert!(caption.contains("hold 35\u{a0}km/h up your 12\u{a0}% hill"), "{caption}");
    assert!(said.contains("It holds 35\u{a0}km/h up your 12\u{a0}% hill."), "{said}");
    // It breaks nothing that was whole, or says what.
    assert!(!said.contains("It doesn't fit"), "{said}");
    page.by_role("button", "Use this pairing")?.click()?;
    page.wait_for("it is on the board", |page| {
        Ok(suggested(page)?.starts_with("You already have the best one: "))
    })?;
    let after = suggested(page)?;
    let pairing = |said: &str| {
        said.split_once(": ")
            .map(|(_, rest)| rest.split(". ").next().unwrap_or_default().to_owned())
    };
    assert_eq!(pairing(&after), pairing(&said), "what was best stays best");
    assert!(
        !page
            .eval("return document.body.innerText.includes('Use this pairing')", &[])?
            .as_bool()
            .unwrap_or(true)
    );
    open_build(page)?;
    let (motor, driven) = picked_teeth(page)?;
    let head = format!(
        "Suggested: motor pulley with {motor}\u{a0}teeth, wheel pulley with {driven}\u{a0}teeth, on "
    );
    assert!(said.starts_with(&head), "{said} does not begin with {head}");
    assert_ne!(strip(page)?, before);
    // What it promises is what the build that is kept then goes.
    let kept = read_build(&visit.stored("current")?).expect("a build").0;
    assert_answers(page, &kept)?;
    let likely = nominal(&kept, Units::Metric);
    let distance = likely[2].split(' ').next().unwrap_or_default().to_owned();
    assert!(numbers.contains(&distance.as_str()), "{distance} is not in {said}");
    visit.end()
}
