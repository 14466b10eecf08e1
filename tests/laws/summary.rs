//! A build at a glance says what the questions say, to the last digit.

use crate::board::{Board, End, any_board, likely_board};
use crate::cases;
use crate::finite::null_in;
use pitchline_core::fit::{Severity, together};
use pitchline_core::ride::BrakeCase;
use pitchline_core::{Belt, BeltOffers, Limit, SLOW_M_S, Slot, answers, summary};
use proptest::prelude::*;
use serde_json::to_value;

proptest! {
    #![proptest_config(cases(40))]

    #[test]
    fn a_glance_is_what_the_questions_say(board in any_board()) {
        let build = board.build();
        let (found, full) = (summary(&board.0, &build), answers(&build));
        prop_assert_eq!(found.top_speed, full.speed.flat_full);
        prop_assert_eq!(found.slow, full.climb.slow);
        prop_assert_eq!(found.slow_low, full.climb.slow_low);
        prop_assert_eq!(found.cruise, board.drive().reach(build.ride.cruise_m_s));
        // The question also follows how far it limps; all else is one ride.
        let limped = pitchline_core::Reach { limp_m: 0.0, ..full.distance.cruise };
        prop_assert_eq!(found.cruise, limped);
        let belts: Vec<_> =
            (20..=400).map(|n| Belt { teeth: Some(f64::from(n)), ..build.belt }).collect();
        let offers = BeltOffers { belts: &belts, motor_pulleys: &[], wheel_pulleys: &[] };
        let whole = together(&board.0, &board.drive(), &offers);
        prop_assert_eq!(found.does_not_fit, whole.count(Severity::DoesNotFit));
        prop_assert_eq!(found.tight, whole.count(Severity::Tight));
        let grade = build.ride.grade;
        let (up, low) = (full.climb.slow.grade, full.climb.slow_low.grade);
        prop_assert_eq!(found.street.climbs(), up >= grade && low >= grade);
        let descent = board.drive().descent(grade, SLOW_M_S, 1.0);
        prop_assert_eq!(found.street.descent, descent);
        prop_assert_eq!(null_in(&to_value(found).expect("it has a JSON form"), ""), None);
    }
}

proptest! {
    #![proptest_config(cases(150))]

    /// Braking from that speed on that hill starts with a deceleration just where it is held, with
    /// the same limit. The pack resists more over ten seconds than over a twentieth of one, so
    /// where it is the limit, what is held still brakes, but not the other way round.
    #[test]
    fn a_descent_that_is_held_is_one_that_brakes(
        board in any_board(), grade in 0.0..=0.6_f64, charge in 0.0..=1.0_f64,
    ) {
        let drive = board.drive();
        let motors = board.value(Slot::Truck, "motor_count");
        let found = drive.descent(grade, SLOW_M_S, charge);
        let first = drive.braking(BrakeCase {
            speed_m_s: SLOW_M_S, grade: -grade, charge, wet: false, motors,
        });
        prop_assert!(found.brake_n >= 0.0 && found.needed_n >= 0.0);
        let by_pack = |limit| matches!(limit, Limit::OverVoltage | Limit::RegenCurrent);
        if by_pack(found.limit) || by_pack(first.limit) {
            if found.limit == Limit::OverVoltage && found.held {
                prop_assert!(first.first_m_s2 >= -1e-9, "{found:?} {first:?}");
            }
        } else {
            prop_assert_eq!(found.limit, first.limit);
            prop_assert_eq!(found.held, first.first_m_s2 >= 0.0, "{:?} {:?}", found, first);
        }
    }

    /// A steeper hill asks for more and leaves less weight on the driven wheels.
    #[test]
    fn a_steeper_hill_is_never_held_where_a_gentler_one_is_not(
        board in any_board(), grade in 0.0..=0.6_f64, share in 0.0..=1.0_f64,
    ) {
        let drive = board.drive();
        let (gentle, steep) = (
            drive.descent(share * grade, SLOW_M_S, 1.0),
            drive.descent(grade, SLOW_M_S, 1.0),
        );
        prop_assert!(gentle.held || !steep.held, "{gentle:?} {steep:?}");
    }

    #[test]
    fn a_controller_that_may_return_more_never_brakes_less(
        board in likely_board(), share in 0.0..=1.0_f64,
    ) {
        let more = board.toward(Slot::Controller, "regen_current_a", End::Most, share);
        let of = |board: &Board| board.drive().descent(0.1, SLOW_M_S, 1.0);
        prop_assert!(of(&more).brake_n >= of(&board).brake_n - 1e-9);
    }
}
