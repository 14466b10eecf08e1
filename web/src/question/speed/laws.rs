//! The suggested pairing breaks nothing, climbs best where it is said to, and everything on offer
//! is counted.

use super::gear_map::{finding, left_out, suggestion};
use super::offer::{Offer, job};
use crate::app::{Fit, Found};
use crate::text::Style;
use pitchline_core::catalog::Catalog;
use pitchline_core::{Build, Draft, Record, Slot, answers};
use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;

fn demo() -> Catalog {
    Catalog::read(include_str!("../../../catalog/catalogue.json")).expect("the demo is JSON").0
}

fn fit(draft: &Draft, catalog: &Catalog) -> Fit {
    let offered = |slot: Slot| -> Vec<Record> {
        catalog.offered(&draft.kit, slot).into_iter().cloned().collect()
    };
    let build = Build::check(draft).expect("in range");
    Fit::of(draft.clone(), build, [Slot::Belt, Slot::MotorPulley, Slot::WheelPulley].map(offered))
}

/// What is on offer for a board, worked out to its end.
fn offer(draft: &Draft, catalog: &Catalog) -> Offer {
    let found = Arc::new(Found::new(draft.clone(), 1).expect("in range"));
    let last = Rc::new(RefCell::new(None));
    let done = {
        let last = last.clone();
        move |offer| *last.borrow_mut() = Some(offer)
    };
    let mut job = job(found, Arc::new(fit(draft, catalog)), catalog, done);
    while job() < 1.0 {}
    drop(job);
    last.take().expect("it ends")
}

/// A kit with a rider's wishes.
fn wish(catalog: &Catalog, kit: &str, cruise_km_h: f64, grade: f64) -> Draft {
    let mut draft = catalog.draft(kit);
    draft.set(Slot::Ride, "cruise_km_h", cruise_km_h);
    draft.set(Slot::Ride, "grade_percent", grade);
    draft
}

#[test]
fn what_is_suggested_breaks_nothing_or_says_what() {
    let catalog = demo();
    let (mut suggested, mut told) = (0, [0; 2]);
    for kit in ["kittiwake", "gannet"] {
        for (cruise, grade) in [(22.0, 8.0), (35.0, 12.0), (15.0, 20.0), (50.0, 2.0)] {
            let draft = wish(&catalog, kit, cruise, grade);
            let before = fit(&draft, &catalog).together.misfits;
            let offer = offer(&draft, &catalog);
            let Some(best) = &offer.best else { continue };
            let said = suggestion(&offer, best, Style::default());
            let best_here = offer.better().is_none();
            // As the answer of the board itself has it.
            let held = answers(&Build::check(&draft).expect("in range")).speed.on_grade;
            let holds = held.speed_m_s >= cruise / 3.6;
            assert_eq!(said.contains("Your pairing holds that too"), holds && !best_here, "{said}");
            assert_eq!(said.contains("Your pairing doesn't hold that"), !holds, "{said}");
            told[usize::from(holds)] += 1;
            let mut after = draft.clone();
            for (slot, id) in offer.better().unwrap_or_default() {
                let part = catalog.part(slot.kind(), &id).expect("on offer");
                after.set_record(slot, part.clone());
            }
            let after = fit(&after, &catalog).together.misfits;
            let worse = after.len() > before.len();
            assert_eq!(worse, said.contains("fits") && said.contains(" buy."), "{kit}: {said}");
            assert!(!worse, "the demo has a pairing for it that goes together: {said}");
            suggested += 1;
        }
    }
    assert!(suggested >= 4, "{suggested}");
    assert!(told.iter().all(|count| *count > 0), "both were met: {told:?}");
}

/// Of all that go about as far, none that climbs steeper fits: tried here one by one, each with
/// every belt on offer.
#[test]
fn what_climbs_best_climbs_best_of_what_fits() {
    let catalog = demo();
    let draft = wish(&catalog, "kittiwake", 22.0, 8.0);
    let before = fit(&draft, &catalog).together.misfits.len();
    let offer = offer(&draft, &catalog);
    let best = offer.best.as_ref().expect("some pairing holds it");
    assert!(best.alike.is_some_and(|alike| alike > 1), "several go about as far");
    let farthest = offer.met().map(|cell| cell.distance_m).fold(0.0, f64::max);
    for cell in offer.met().filter(|c| c.distance_m >= 0.97 * farthest) {
        if cell.grade <= best.cell.grade {
            continue;
        }
        let mut other = draft.clone();
        for (slot, list, place) in [
            (Slot::Wheel, &offer.wheels.list, cell.wheel),
            (Slot::WheelPulley, &offer.wheel_pulleys.list, cell.wheel_pulley),
            (Slot::MotorPulley, &offer.motor_pulleys.list, cell.motor_pulley),
        ] {
            other.set_record(slot, list[place].clone());
        }
        let belts = catalog.offered("kittiwake", Slot::Belt);
        let least = belts.into_iter().map(|belt| {
            other.set_record(Slot::Belt, belt.clone());
            fit(&other, &catalog).together.misfits.len()
        });
        assert!(least.min() > Some(before), "{cell:?} climbs steeper and fits");
    }
}

/// The demo with so many motor pulleys more, and a board of no kit, which may have any of them.
fn many(more: usize) -> (Catalog, Draft) {
    let pulley = |n: usize| {
        let teeth = 10 + n % 30;
        format!(r#"{{ "id": "x{n}", "name": "Extra {n}", "teeth": {teeth} }},"#)
    };
    let list: String = (0..more).map(pulley).collect();
    let text = include_str!("../../../catalog/catalogue.json");
    let head = r#""motor_pulleys": ["#;
    let text = text.replace(head, &format!("{head}{list}"));
    let (catalog, faults) = Catalog::read(&text).expect("JSON");
    assert!(faults.is_empty(), "{faults:?}");
    let mut draft = wish(&catalog, "kittiwake", 22.0, 8.0);
    draft.kit = String::new();
    (catalog, draft)
}

#[test]
fn all_on_offer_are_counted_and_what_is_left_out_is_said() {
    let style = Style::default();
    for more in [0, 12, 40] {
        let (catalog, draft) = many(more);
        let offer = offer(&draft, &catalog);
        let [wheels, driven, motors] = [Slot::Wheel, Slot::WheelPulley, Slot::MotorPulley]
            .map(|slot| catalog.offered("", slot).len());
        assert_eq!(offer.cells.len(), wheels * driven * motors.min(20), "{more}");
        let left = left_out(&offer);
        if motors <= 20 {
            assert_eq!(left, "");
        } else {
            let wanted = format!(
                "The map shows the 20 motor pulleys closest in size to yours, of {motors} available."
            );
            assert_eq!(left, wanted);
        }
        let said = finding(&offer, style);
        assert!(said.ends_with(" hold 22\u{a0}km/h up your 8\u{a0}% hill."), "{said}");
    }
}

/// A wheel without a name is told by its size.
#[test]
fn a_wheel_without_a_name_is_no_gap_in_a_sentence() {
    let catalog = demo();
    let mut draft = wish(&catalog, "kittiwake", 22.0, 8.0);
    let mut wheel = draft.record(Slot::Wheel).clone();
    (wheel.id, wheel.name) = ("own".into(), String::new());
    draft.set_record(Slot::Wheel, wheel);
    draft.set(Slot::Wheel, "diameter_mm", 105.0);
    // As if it alone were on offer.
    draft.kit = "none".into();
    let mut offer = offer(&draft, &catalog);
    let place = offer.wheels.here;
    if let Some(best) = &mut offer.best {
        best.cell.wheel = place;
    }
    let best = offer.best.as_ref().expect("some pairing holds it");
    let said = suggestion(&offer, best, Style::default());
    assert!(said.contains(" on 105\u{a0}mm wheels. "), "{said}");
}
