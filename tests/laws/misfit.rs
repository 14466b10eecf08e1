//! What does not fit: told once, with its sizes, and with cures that cure.

use crate::board::{Board, any_board, likely_board};
use crate::cases;
use crate::finite::null_in;
use pitchline_core::fit::{
    Between, Cure, Misfit, MisfitKind, Severity, Together, box_plan, clearances, deck_fit, lean,
    together,
};
use pitchline_core::physics::frame::TIGHT_M;
use pitchline_core::{Belt, BeltOffers, BeltOnBoard, Slot};
use proptest::prelude::*;
use serde_json::to_value;

fn with_belts(board: &Board, belts: &[Belt]) -> Together {
    let offers = BeltOffers { belts, motor_pulleys: &[], wheel_pulleys: &[] };
    together(&board.0, &board.drive(), &offers)
}

fn found(board: &Board) -> Together {
    with_belts(board, &[])
}

/// Belts of the board's own pitch and width, each so many teeth longer than the last.
fn belts(board: &Board, each: usize) -> Vec<Belt> {
    let own = board.build().belt;
    let belt = |teeth: u32| Belt { teeth: Some(f64::from(teeth)), ..own };
    (20..=400).step_by(each).map(belt).collect()
}

fn is_bite(misfit: &Misfit) -> bool {
    matches!(misfit.kind, MisfitKind::WheelBite { .. })
}

fn is_length(misfit: &Misfit) -> bool {
    matches!(misfit.kind, MisfitKind::BeltTooShort { .. } | MisfitKind::BeltOutOfSlot { .. })
}

fn is_pack(misfit: &Misfit) -> bool {
    matches!(misfit.kind, MisfitKind::PackInBox { .. }) && misfit.severity == Severity::DoesNotFit
}

/// The room between two parts where it is told of.
fn told_room(found: &Together, between: Between) -> Option<f64> {
    found.misfits.iter().find_map(|misfit| match misfit.kind {
        MisfitKind::Clearance { between: told, room_m } if told == between => Some(room_m),
        _ => None,
    })
}

/// Which question a misfit is of, in the order in which they are told.
fn rank(misfit: &Misfit) -> usize {
    match misfit.kind {
        MisfitKind::BeltTooShort { .. } | MisfitKind::BeltOutOfSlot { .. } => 0,
        MisfitKind::BeltOverload { .. } => 1,
        MisfitKind::Clearance { between, .. } => {
            2 + Between::ALL.iter().position(|other| *other == between).expect("it is listed")
        }
        MisfitKind::BoxDrags { .. } | MisfitKind::BoxStrikes { .. } => 20,
        MisfitKind::PackInBox { .. } => 21,
        MisfitKind::WheelBite { .. } | MisfitKind::NearWheelBite { .. } => 22,
    }
}

proptest! {
    #![proptest_config(cases(60))]

    /// Told in order, each once, with numbers and with something to do about it; every key named
    /// is one of its slot's.
    #[test]
    fn each_misfit_is_told_once_with_its_cures(board in any_board()) {
        let found = found(&board);
        let ranks: Vec<_> = found.misfits.iter().map(rank).collect();
        prop_assert!(ranks.windows(2).all(|pair| pair[0] < pair[1]), "{ranks:?}");
        for misfit in &found.misfits {
            prop_assert!(!misfit.cures.is_empty(), "{misfit:?}");
            let value = to_value(misfit).expect("a misfit has a JSON form");
            prop_assert_eq!(null_in(&value, ""), None, "{:?}", misfit);
            for cure in &misfit.cures {
                if let Cure::Change(slot, key) = cure {
                    prop_assert!(slot.kind().field_index(key).is_some(), "{cure:?}");
                }
            }
        }
        let all = found.count(Severity::DoesNotFit) + found.count(Severity::Tight);
        prop_assert_eq!(all, found.misfits.len());
    }

    /// None is left out and none is made up: each answer of the question tells whether its
    /// misfit is listed.
    #[test]
    fn what_the_answers_say_is_what_is_told(board in any_board()) {
        let found = found(&board);
        let told = |is: fn(&Misfit) -> bool| found.misfits.iter().any(is);
        let (draft, build) = (&board.0, board.build());
        prop_assert_eq!(told(is_bite), lean(draft, &build).bites);
        prop_assert_eq!(told(is_pack), !box_plan(draft, &build).fits);
        let out = match found.belt.on_board {
            BeltOnBoard::NoTeeth => false,
            BeltOnBoard::TooShort => true,
            BeltOnBoard::Taut(belt) => !belt.in_slot,
        };
        prop_assert_eq!(told(is_length), out);
        for clearance in clearances(draft, &build, found.centre_m) {
            let (between, room_m) = (clearance.between, clearance.room_m);
            let own = !matches!(between, Between::BeltRoad | Between::MotorMotor);
            let want = (own && room_m < TIGHT_M).then_some(room_m);
            prop_assert_eq!(told_room(&found, between), want, "{:?}", between);
            // What is not told itself is told by what has less room.
            let with_less = match between {
                Between::BeltRoad => Between::PulleyRoad,
                Between::MotorMotor => Between::Hanger,
                _ => continue,
            };
            prop_assert!(room_m >= 0.0 || told_room(&found, with_less).is_some_and(|r| r < 0.0));
        }
        let deck = deck_fit(draft, &build);
        let low = |misfit: &&Misfit| matches!(
            misfit.kind, MisfitKind::BoxDrags { .. } | MisfitKind::BoxStrikes { .. }
        );
        let low = found.misfits.iter().find(low).map(|misfit| misfit.severity);
        let want = match deck.road_m.min(deck.bump_road_m) {
            least if least < 0.0 => Some(Severity::DoesNotFit),
            least if least < TIGHT_M => Some(Severity::Tight),
            _ => None,
        };
        prop_assert_eq!(low, want, "{:?}", deck);
    }
}

proptest! {
    #![proptest_config(cases(40))]

    /// The riser told by wheel bite, a hair more, ends it.
    #[test]
    fn the_riser_told_ends_wheel_bite(board in likely_board()) {
        let board = board.with(Slot::Deck, "width_mm", 300.0);
        let before = found(&board);
        let Some(bite) = before.misfits.iter().find(|misfit| is_bite(misfit)) else {
            return Err(TestCaseError::reject("no wheel bite"));
        };
        let MisfitKind::WheelBite { riser_m, .. } = bite.kind else { unreachable!() };
        prop_assert_eq!(bite.cures[0], Cure::Change(Slot::Deck, "riser_mm"));
        let riser_mm = 1000.0 * riser_m + 1e-6;
        prop_assume!((-60.0..=60.0).contains(&riser_mm));
        let after = found(&board.with(Slot::Deck, "riser_mm", riser_mm));
        prop_assert!(!after.misfits.iter().any(is_bite), "{:?}", after.misfits);
    }

    /// The box length told takes the pack, and a millimetre less does not.
    #[test]
    fn the_box_length_told_takes_the_pack(board in likely_board()) {
        let before = found(&board);
        let length_m = before.misfits.iter().filter(|misfit| is_pack(misfit)).find_map(|misfit| {
            match misfit.kind {
                MisfitKind::PackInBox { length_for_m, .. } => length_for_m,
                _ => None,
            }
        });
        prop_assume!(length_m.is_some());
        let length_mm = 1000.0 * length_m.unwrap_or_default();
        prop_assume!(length_mm < 1399.0);
        let pack_in = |length_mm: f64| {
            let after = found(&board.with(Slot::Deck, "box_length_mm", length_mm));
            !after.misfits.iter().any(is_pack)
        };
        prop_assert!(pack_in(length_mm + 1e-6));
        prop_assert!(!pack_in(length_mm - 1.0));
    }

    /// The belt told, put on the board, ends the misfit of its length; where none is told, no belt
    /// on offer would.
    #[test]
    fn the_belt_told_fits(board in likely_board(), teeth in 20..=400_u32, each in 1..=60_usize) {
        let board = board.with(Slot::Belt, "teeth", f64::from(teeth));
        let belts = belts(&board, each);
        let before = with_belts(&board, &belts);
        let Some(wrong) = before.misfits.iter().find(|misfit| is_length(misfit)) else {
            return Err(TestCaseError::reject("the belt fits"));
        };
        let fits = |belt: &Belt| {
            let teeth = belt.teeth.expect("each has teeth");
            let after = with_belts(&board.with(Slot::Belt, "teeth", teeth), &belts);
            !after.misfits.iter().any(is_length)
        };
        match wrong.cures[0] {
            Cure::Belt(place) => prop_assert!(fits(&belts[place]), "{wrong:?}"),
            _ => prop_assert!(!belts.iter().any(fits), "{wrong:?}"),
        }
    }

    /// What a part is too narrow, too short or too low by, put right, ends the misfit: hanger,
    /// axle and riser move as much as is missing.
    #[test]
    fn the_room_told_is_what_is_missing(board in any_board()) {
        let before = found(&board);
        for (between, slot, key) in [
            (Between::Hanger, Slot::Truck, "hanger_width_mm"),
            (Between::Axle, Slot::Truck, "axle_mm"),
            (Between::MotorDeck, Slot::Deck, "riser_mm"),
        ] {
            let Some(room_m) = told_room(&before, between).filter(|room| *room < 0.0) else {
                continue;
            };
            let first = before.misfits.iter().find(|misfit| matches!(
                misfit.kind, MisfitKind::Clearance { between: told, .. } if told == between
            ));
            let cure = Cure::Change(slot, key);
            prop_assert_eq!(first.map(|misfit| misfit.cures[0]), Some(cure));
            let value = board.value(slot, key) - 1000.0 * room_m;
            let at = |value: f64| {
                let after = found(&board.with(slot, key, value));
                told_room(&after, between).is_some_and(|room| room < 0.0)
            };
            if value < crate::board::field(slot, key).max - 1e-3 {
                prop_assert!(!at(value + 1e-6), "{between:?}");
                prop_assert!(at(value - 1e-3), "{between:?}");
            }
        }
    }
}
