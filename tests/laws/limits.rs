//! A limit made tighter never makes the board push harder, and the limit that
//! is named is the one that binds.

use crate::board::{Board, End, any_board, any_sag, any_speed};
use crate::cases;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Limit, Mode, Slot};
use proptest::prelude::*;

/// Every input that holds the push back, and the end of its range that holds hardest.
const LIMITS: [(Slot, &str, End); 13] = [
    (Slot::Controller, "motor_current_a", End::Least),
    (Slot::Controller, "battery_current_a", End::Least),
    (Slot::Controller, "erpm_limit", End::Least),
    (Slot::Controller, "max_duty_percent", End::Least),
    (Slot::Controller, "cutback_start_v", End::Most),
    (Slot::Controller, "cutback_end_v", End::Most),
    (Slot::Motor, "max_current_a", End::Least),
    (Slot::Pack, "protection_a", End::Least),
    (Slot::Pack, "cut_off_v", End::Most),
    (Slot::Cell, "max_discharge_a", End::Least),
    (Slot::Belt, "rating_n_per_mm", End::Least),
    (Slot::Belt, "width_mm", End::Least),
    (Slot::Place, "grip_percent", End::Least),
];

/// What to tighten to feel the limit named; none where no single input is it.
fn felt_by(limit: Limit) -> Option<(Slot, &'static str, End)> {
    let key = match limit {
        Limit::ControllerMotorCurrent => "motor_current_a",
        Limit::MotorCurrent => "max_current_a",
        Limit::ControllerBatteryCurrent => "battery_current_a",
        Limit::PackProtection => "protection_a",
        Limit::CellRating => "max_discharge_a",
        Limit::Cutback => "cutback_end_v",
        Limit::CutOff => "cut_off_v",
        Limit::Voltage => "max_duty_percent",
        Limit::Belt => "rating_n_per_mm",
        Limit::Grip => "grip_percent",
        Limit::PackPower | Limit::ElectricalSpeed | Limit::ModeSpeed | Limit::Empty => return None,
        // Of rides in time only.
        Limit::ControllerHot
        | Limit::WindingHot
        | Limit::BrakeCurrent
        | Limit::RegenCurrent
        | Limit::OverVoltage
        | Limit::Crawl => return None,
    };
    LIMITS.into_iter().find(|(_, of, _)| *of == key)
}

/// Where voltage binds the current is found to 1e-9 A, and each root may err
/// to its own side: a few billionths of the push of one ampere.
fn slack(board: &Board) -> f64 {
    let b = board.build();
    let ratio = b.wheel_pulley.teeth / b.motor_pulley.teeth;
    4e-9 * 9.55 / b.motor.kv_rpm_per_v * ratio * b.truck.motor_count / b.wheel.radius_m()
}

proptest! {
    #![proptest_config(cases(400))]

    #[test]
    fn a_tighter_limit_never_gives_more_push(
        board in any_board(),
        speed in any_speed(),
        grade in -0.4..=0.4_f64,
        charge in 0.0..=1.0_f64,
        sag in any_sag(),
        share in 0.05..=1.0_f64,
        by in 0.0..=1.0_f64,
    ) {
        let slope = Slope::of_grade(grade);
        let push = |board: &Board, share: f64| {
            let drive = board.drive();
            let mode = Mode { current_share: share, speed_cap_m_s: None };
            drive.push(&drive.supply(charge, sag), &mode, speed, slope)
        };
        let before = push(&board, share);
        let slack = slack(&board);
        for (slot, key, end) in LIMITS {
            let after = push(&board.toward(slot, key, end, by), share);
            prop_assert!(after.force_n <= before.force_n + slack, "{key}: {before:?} {after:?}");
        }
        let after = push(&board, share * (1.0 - 0.9 * by));
        prop_assert!(after.force_n <= before.force_n + slack, "mode: {before:?} {after:?}");
    }

    /// Every limit holds at once at the greatest push, with the sag that it
    /// causes itself: what is promised can be held.
    #[test]
    fn the_greatest_push_keeps_every_limit(
        board in any_board(),
        charge in 0.05..=1.0_f64,
        sag in any_sag(),
        grade in 0.0..=0.3_f64,
    ) {
        let full = Mode { current_share: 1.0, speed_cap_m_s: None };
        let drive = board.drive();
        let (supply, slope) = (drive.supply(charge, sag), Slope::of_grade(grade));
        let top = drive.top_speed(&supply, &full, slope);
        prop_assume!(top.speed_m_s > 0.0);
        // A hair slower: at the very limit rounding decides.
        let speed = top.speed_m_s * (1.0 - 1e-9) - 1e-9;
        // A board that wind carries, or whose pack is below its cutback, still
        // draws what its controllers idle on: no limit is about that.
        prop_assume!(drive.push(&supply, &full, speed, slope).motor_current_a > 0.0);
        let point = drive.hold(&supply, speed, slope);
        prop_assert!(point.is_some(), "{top:?} cannot be held");
        let point = point.unwrap_or_default();
        let b = &drive.build;
        let (n, s) = (b.truck.motor_count, b.pack.series);
        let sagged = point.bus_v;
        let span = (b.controller.cutback_start_v - b.controller.cutback_end_v).max(0.01);
        let left = (sagged / s - b.controller.cutback_end_v) / span;
        let turning = b.wheel_pulley.teeth / b.motor_pulley.teeth * speed / b.wheel.radius_m();
        let pull = 2.0 * std::f64::consts::PI * point.shaft_n_m
            / (b.motor_pulley.teeth * b.belt.pitch_m);
        for (name, is, most) in [
            ("motor", point.motor_current_a, b.motor.max_current_a),
            ("controller", point.motor_current_a, b.controller.motor_current_a),
            ("battery", point.pack_current_a, n * b.controller.battery_current_a),
            ("cutback", point.pack_current_a, n * b.controller.battery_current_a * left),
            ("protection", point.pack_current_a, b.pack.protection_a),
            ("cells", point.pack_current_a, b.pack.parallel * b.cell.max_discharge_a),
            ("cut-off", b.pack.cut_off_v * s, sagged),
            ("voltage", point.motor_v, b.controller.max_duty * sagged),
            ("belt", pull, b.belt.rating_n_per_m * b.belt.width_m),
            (
                "erpm",
                turning * b.motor.pole_pairs * 30.0 / std::f64::consts::PI,
                b.controller.erpm_limit,
            ),
        ] {
            prop_assert!(is <= most + 1e-6 * most.abs(), "{name}: {is} > {most}, {top:?} {point:?}");
        }
    }

    #[test]
    fn the_limit_named_is_felt(
        board in any_board(),
        speed in 0.05..=12.0_f64,
        charge in 0.0..=1.0_f64,
        sag in any_sag(),
    ) {
        let full = Mode { current_share: 1.0, speed_cap_m_s: None };
        let push = |board: &Board| {
            let drive = board.drive();
            drive.push(&drive.supply(charge, sag), &full, speed, Slope::FLAT)
        };
        let before = push(&board);
        let felt = felt_by(before.limit);
        // A motor that has no current left cannot have less.
        prop_assume!(before.motor_current_a > 1e-3 && felt.is_some());
        let (slot, key, end) = felt.unwrap_or(LIMITS[0]);
        let tighter = board.toward(slot, key, end, 0.02);
        prop_assume!(tighter.value(slot, key) != board.value(slot, key));
        let after = push(&tighter);
        let less = before.motor_current_a - after.motor_current_a;
        prop_assert!(less > 1e-7, "{key}: {before:?} {after:?}");
    }
}

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn a_tighter_limit_never_gives_more_speed(
        board in any_board(),
        which in 0..LIMITS.len(),
        by in 0.0..=1.0_f64,
    ) {
        let full = Mode { current_share: 1.0, speed_cap_m_s: None };
        let top = |board: &Board| {
            let drive = board.drive();
            drive.top_speed(&drive.supply(1.0, pitchline_core::Sag::Burst), &full, Slope::FLAT)
        };
        let (slot, key, end) = LIMITS[which];
        // A narrower belt that was not weighed is also a lighter one.
        let board = board.with(Slot::Belt, "mass_kg", 0.02);
        let (before, after) = (top(&board), top(&board.toward(slot, key, end, by)));
        // Each is found to 1e-10 m/s.
        prop_assert!(after.speed_m_s <= before.speed_m_s + 1e-9, "{key}: {before:?} {after:?}");
    }
}
