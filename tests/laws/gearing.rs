//! More teeth on the wheel: when that pushes harder, and when it slows.

use crate::board::{Board, any_board};
use crate::cases;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{BeltOffers, Convention, Drive, Limit, Mode, Sag, Slot, Supply, belt_fit};
use proptest::prelude::*;
use std::f64::consts::PI;

const FULL: Mode = Mode { current_share: 1.0, speed_cap_m_s: None };
/// 2 km/h.
const CRAWL: f64 = 2.0 / 3.6;

fn with_more_teeth(board: &Board, more: u32) -> Board {
    let teeth = board.value(Slot::WheelPulley, "teeth");
    board.with(Slot::WheelPulley, "teeth", teeth + f64::from(more))
}

fn full(drive: &Drive) -> Supply {
    drive.supply(1.0, Sag::Burst)
}

/// Motor speed, rad/s.
fn omega(drive: &Drive, speed: f64) -> f64 {
    let b = &drive.build;
    b.wheel_pulley.teeth / b.motor_pulley.teeth * speed / b.wheel.radius_m()
}

/// The largest share of the motor's unloaded speed that `speed` may be.
fn share_of_unloaded(drive: &Drive, speed: f64) -> f64 {
    let b = &drive.build;
    let volts = b.controller.max_duty * full(drive).open_v;
    omega(drive, speed) / (volts * b.motor.kv_rpm_per_v * PI / 30.0)
}

/// Whether the belt holds back with fewer teeth in mesh, for which its maker
/// takes from its rating: then a larger wheel pulley may well push less.
fn meshes_less(few: &Drive, many: &Drive, limit: Limit) -> bool {
    let rated = |drive: &Drive| {
        let offers = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };
        belt_fit(drive, &offers).load.rated_n
    };
    limit == Limit::Belt && rated(many) < rated(few)
}

/// Whether the voltage or the electrical speed is what holds back.
fn is_speed_side(limit: Limit) -> bool {
    matches!(limit, Limit::Voltage | Limit::ElectricalSpeed)
}

proptest! {
    #![proptest_config(cases(400))]

    /// Without iron loss the push of a given motor current grows with the
    /// ratio, a belt or a tyre at its limit needs less from the motor, and a
    /// given battery power loses less in copper: nothing speaks against teeth
    /// but the motor's speed. Iron loss is left out because its drag grows with
    /// the square of the ratio; the next law has it.
    #[test]
    fn at_a_crawl_more_teeth_never_push_less(board in any_board(), more in 1..40_u32) {
        let board = board.with(Slot::Motor, "no_load_a", 0.0);
        let (few, many) = (board.drive(), with_more_teeth(&board, more).drive());
        let before = few.push(&full(&few), &FULL, CRAWL, Slope::FLAT);
        let after = many.push(&full(&many), &FULL, CRAWL, Slope::FLAT);
        prop_assume!(!is_speed_side(after.limit) && !meshes_less(&few, &many, after.limit));
        let slack = 1e-9 * before.force_n.abs();
        prop_assert!(after.force_n >= before.force_n - slack, "{before:?} {after:?}");
    }

    /// With iron loss, where a motor current binds: the push is
    /// `i (k I − T0 h) − i² T0 (1 − h) v / (r w0)`, which still grows at ratio
    /// `i` while the current's torque is at least `T0 (h + 2 (1 − h) w / w0)`.
    #[test]
    fn at_a_crawl_more_teeth_push_more_where_motor_current_binds(
        board in any_board(),
        more in 1..40_u32,
    ) {
        let (few, many) = (board.drive(), with_more_teeth(&board, more).drive());
        prop_assume!(many.build.wheel_pulley.teeth > few.build.wheel_pulley.teeth);
        let before = few.push(&full(&few), &FULL, CRAWL, Slope::FLAT);
        let after = many.push(&full(&many), &FULL, CRAWL, Slope::FLAT);
        let motor_side = |limit| {
            matches!(limit, Limit::ControllerMotorCurrent | Limit::MotorCurrent)
        };
        prop_assume!(motor_side(before.limit) && motor_side(after.limit));
        let (m, per_amp) = (few.build.motor, match few.build.controller.convention {
            Convention::PeakPhase => 0.75_f64.sqrt(),
            Convention::Direct => 1.0,
        });
        let turning = omega(&many, CRAWL) / (m.no_load_rpm * PI / 30.0);
        let rising = m.hysteresis_share + 2.0 * (1.0 - m.hysteresis_share) * turning;
        prop_assume!(per_amp * after.motor_current_a > m.no_load_a * rising);
        prop_assert!(after.force_n > before.force_n, "{before:?} {after:?}");
    }
}

proptest! {
    #![proptest_config(cases(120))]

    /// Where the electrical speed binds, road speed goes as the inverse of the
    /// ratio. Where voltage binds, the push at one road speed goes with the
    /// motor's power, which falls with motor speed once beyond its peak. For a
    /// bare resistance the peak lies at half of the unloaded speed; sag that
    /// grows faster than current moves it up, to two thirds where all of it
    /// grows with the square. From three quarters on it is behind.
    #[test]
    fn more_teeth_are_never_faster_where_the_motor_runs_out_of_speed(
        board in any_board(),
        more in 1..40_u32,
    ) {
        let (few, many) = (board.drive(), with_more_teeth(&board, more).drive());
        let before = few.top_speed(&full(&few), &FULL, Slope::FLAT);
        prop_assume!(is_speed_side(before.limit) && before.speed_m_s > 0.0);
        let beyond = share_of_unloaded(&few, before.speed_m_s) > 0.75;
        prop_assume!(before.limit == Limit::ElectricalSpeed || beyond);
        let after = many.top_speed(&full(&many), &FULL, Slope::FLAT);
        prop_assert!(after.speed_m_s <= before.speed_m_s + 1e-9, "{before:?} {after:?}");
        if before.limit == Limit::ElectricalSpeed {
            let teeth = few.build.wheel_pulley.teeth / many.build.wheel_pulley.teeth;
            let most = before.speed_m_s * teeth;
            prop_assert!(after.speed_m_s <= most * (1.0 + 1e-9), "{before:?} {after:?}");
        }
    }

    /// Where power, current, belt or grip sets the top speed, more teeth only
    /// help, as at a crawl and for the same reasons (no iron loss), until the
    /// motor runs out of speed.
    #[test]
    fn more_teeth_are_never_slower_while_the_motor_has_speed_to_spare(
        board in any_board(),
        more in 1..40_u32,
    ) {
        let board = board.with(Slot::Motor, "no_load_a", 0.0);
        let (few, many) = (board.drive(), with_more_teeth(&board, more).drive());
        let before = few.top_speed(&full(&few), &FULL, Slope::FLAT);
        prop_assume!(!is_speed_side(before.limit) && before.speed_m_s > 0.0);
        let after = many.top_speed(&full(&many), &FULL, Slope::FLAT);
        prop_assume!(!is_speed_side(after.limit) && !meshes_less(&few, &many, after.limit));
        prop_assert!(after.speed_m_s >= before.speed_m_s - 1e-9, "{before:?} {after:?}");
    }
}
