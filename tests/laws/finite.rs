//! Whatever a checked board holds, every answer is a number.

use crate::board::{any_board, any_sag};
use crate::cases;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{
    Build, GearCell, Headline, Limit, Mode, Reach, Sag, Slot, Steepest, answers, explain, gear_map,
    notices,
};
use proptest::prelude::*;
use proptest::test_runner::Config;
use serde_json::Value;

/// Where a value that is not a number hides, if anywhere: JSON has no word for
/// it and says null, and nothing in an answer is optional.
pub(crate) fn null_in(value: &Value, path: &str) -> Option<String> {
    match value {
        Value::Null => Some(path.to_owned()),
        Value::Array(list) => {
            list.iter().enumerate().find_map(|(i, v)| null_in(v, &format!("{path}/{i}")))
        }
        Value::Object(map) => map.iter().find_map(|(k, v)| null_in(v, &format!("{path}/{k}"))),
        _ => None,
    }
}

#[test]
fn a_null_is_found() {
    let value = serde_json::json!({ "a": [1.0, { "b": f64::NAN }] });
    assert_eq!(null_in(&value, "").as_deref(), Some("/a/1/b"));
    assert_eq!(null_in(&serde_json::json!({ "a": [1.0, "x"] }), ""), None);
}

fn steps_are_numbers(build: &Build) -> Result<(), TestCaseError> {
    for headline in Headline::ALL {
        let steps = explain(build, headline);
        prop_assert!(!steps.is_empty());
        for step in steps {
            prop_assert!(step.result.is_finite(), "{headline:?}: {step:?}");
            let inputs_are = step.inputs.iter().all(|(_, value, _)| value.is_finite());
            prop_assert!(inputs_are, "{headline:?}: {step:?}");
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn every_answer_is_a_number(board in any_board()) {
        let build = board.build();
        let found = answers(&build);
        let value = serde_json::to_value(&found).expect("answers have a JSON form");
        prop_assert_eq!(null_in(&value, ""), None);
        prop_assert!(found.distance.cruise.distance_m >= 0.0);
        prop_assert!(found.speed.flat_full.speed_m_s >= 0.0);
        // What a board is told about must not fail either.
        let _ = notices(&board.0, &build);
    }

    #[test]
    fn every_step_of_every_working_is_a_number(board in any_board()) {
        steps_are_numbers(&board.build())?;
    }

    #[test]
    fn every_pairing_is_a_number(one in any_board(), other in any_board()) {
        let (one, other) = (one.build(), other.build());
        let cells = gear_map(
            &one,
            &[one.motor_pulley, other.motor_pulley],
            &[one.wheel_pulley, other.wheel_pulley],
            &[one.wheel, other.wheel],
        );
        prop_assert_eq!(cells.len(), 8);
        for GearCell { top_speed_m_s, grade, .. } in cells {
            prop_assert!(top_speed_m_s.is_finite() && top_speed_m_s >= 0.0);
            prop_assert!(grade.is_finite());
        }
    }

    /// The page may ask the drive about any speed, slope, charge and mode.
    #[test]
    fn every_question_to_a_drive_is_answered_with_numbers(
        board in any_board(),
        speed in prop_oneof![Just(0.0), 0.0..=100.0_f64],
        grade in -1.0..=1.0_f64,
        charge in prop_oneof![Just(0.0), Just(1.0), 0.0..=1.0_f64],
        sag in any_sag(),
        mode in 0..3_usize,
    ) {
        let drive = board.drive();
        let slope = Slope::of_grade(grade);
        let supply = drive.supply(charge, sag);
        let mode: Mode = drive.build.modes[mode];
        let push = drive.push(&supply, &mode, speed, slope);
        prop_assert!(push.force_n.is_finite() && push.motor_current_a.is_finite(), "{push:?}");
        prop_assert!(push.motor_current_a >= 0.0, "{push:?}");
        prop_assert!(drive.load_n(speed, slope).is_finite());
        let top = drive.top_speed(&supply, &mode, slope);
        prop_assert!(top.speed_m_s.is_finite() && top.speed_m_s >= 0.0, "{top:?}");
        let Steepest { grade, .. } = drive.steepest(&supply, speed);
        prop_assert!(grade.is_finite());
        let Reach { distance_m, end_charge, .. } = drive.reach(speed);
        prop_assert!(distance_m.is_finite() && distance_m >= 0.0);
        prop_assert!((0.0..=1.0).contains(&end_charge));
        if let Some(point) = drive.hold(&supply, speed, slope) {
            let value = serde_json::to_value(point).expect("a point has a JSON form");
            prop_assert_eq!(null_in(&value, ""), None);
        }
    }
}

proptest! {
    // Few boards get there.
    #![proptest_config(Config { max_global_rejects: 6000, ..cases(40) })]

    /// Power is drawn up to the very most that the pack's resistance lets
    /// through only where every guard stands lower than half of the voltage.
    #[test]
    fn a_pack_at_its_most_power_is_answered_with_numbers(
        board in any_board(),
        chemistry in 0..2_u8,
        cut_off in 2.0..=2.08_f64,
        cell_mohm in 20.0..=300.0_f64,
    ) {
        let mut board = board;
        for (slot, key, value) in [
            (Slot::Cell, "chemistry", f64::from(chemistry)),
            (Slot::Cell, "resistance_10s_mohm", cell_mohm),
            (Slot::Cell, "max_discharge_a", 1000.0),
            (Slot::Pack, "cut_off_v", cut_off),
            (Slot::Pack, "protection_a", 1000.0),
            (Slot::Controller, "cutback_start_v", 2.0),
            (Slot::Controller, "cutback_end_v", 2.0),
            (Slot::Controller, "battery_current_a", 500.0),
            (Slot::Controller, "motor_current_a", 1000.0),
            (Slot::Motor, "max_current_a", 1000.0),
        ] {
            board = board.with(slot, key, value);
        }
        let build = board.build();
        let drive = board.drive();
        // The answer's own top speed, found without all the others: most boards are passed over.
        let full = drive.supply(1.0, Sag::Burst);
        let mode = Mode { current_share: 1.0, speed_cap_m_s: None };
        let top = drive.top_speed(&full, &mode, Slope::FLAT);
        prop_assume!(top.limit == Limit::PackPower && top.speed_m_s > 0.0);
        let value = serde_json::to_value(answers(&build)).expect("answers have a JSON form");
        prop_assert_eq!(null_in(&value, ""), None);
        if let Some(point) = drive.hold(&full, top.speed_m_s, Slope::FLAT) {
            let value = serde_json::to_value(point).expect("a point has a JSON form");
            prop_assert_eq!(null_in(&value, ""), None);
        }
        steps_are_numbers(&build)?;
    }
}

/// Every input at its least and at its most, one after the other: the corners
/// that random boards seldom reach.
#[test]
fn every_end_of_every_range_is_answered_with_numbers() {
    for slot in Slot::ALL {
        for field in slot.kind().fields() {
            for end in [field.min, field.max] {
                let mut draft = pitchline_core::Draft::typical();
                draft.set(*slot, field.key, end);
                let build = Build::check(&draft).expect("the ends are allowed");
                let value =
                    serde_json::to_value(answers(&build)).expect("answers have a JSON form");
                assert_eq!(null_in(&value, ""), None, "{}.{} = {end}", slot.key(), field.key);
            }
        }
    }
}
