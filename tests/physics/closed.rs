//! Whole boards on which one thing alone binds, so that the answer has a closed
//! form; the figures were worked out apart, from the formula in each source.

use crate::board::{board, stiff};
use crate::check::{Check, check, holds};
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Limit, Mode, Slot};

const HILL: &str = "grade = tan(asin((T i eta n / r - air) / (m g sqrt(1 + Crr^2))) - atan Crr), \
    in Python";
const VOLTS: &str = "positive root of c2 v^2 + B v + c0 - A = 0 where the push is A - B v, \
    in Python";
const COUNTED: &str = "by hand: erpm / p / 60 turns of 2 pi 48 mm over the ratio";
const POWER: &str = "roots of c2 v^3 + c0 v = P by scipy 1.17.1, for the reference load";
const RATED: &str = "by hand: belt pull at the wheel pulley's pitch radius over the wheel's";
const AXLE: &str = "moments about the front axle: mu W / 2 / (1 - mu h / L), in Python";
const CAP: &str = "the cap as entered";

const FULL: Mode = Mode { current_share: 1.0, speed_cap_m_s: None };

fn hills(list: &mut Vec<Check>) {
    // Convention, belt %, motors, km/h: push N, grade.
    for (convention, belt, motors, km_h, newton, grade) in [
        (1.0, 100.0, 2.0, 2.0, 175.538_540_174_9, 0.190_339_116_6),
        (1.0, 90.0, 2.0, 10.0, 157.984_686_157_4, 0.166_477_366_9),
        (1.0, 95.0, 1.0, 20.0, 83.380_806_583_1, 0.070_899_112_6),
        (0.0, 95.0, 2.0, 10.0, 144.419_793_378_0, 0.150_494_583_9),
    ] {
        let drive = board(&[
            (Slot::Controller, "convention", convention),
            (Slot::Controller, "motor_current_a", 30.0),
            (Slot::Belt, "efficiency_percent", belt),
            (Slot::Truck, "motor_count", motors),
        ]);
        let v = km_h / 3.6;
        let push = drive.push(&stiff(80.0), &FULL, v, Slope::FLAT);
        let found = drive.steepest(&stiff(80.0), v);
        let case = format!("30 A, {motors} motors, {km_h} km/h, convention {convention}");
        list.push(check(format!("push by {case}"), push.force_n, newton, 1e-8, HILL));
        list.push(check(format!("hill by {case}"), found.grade, grade, 1e-9, HILL));
        let binds = found.limit == Limit::ControllerMotorCurrent;
        list.push(holds(format!("limit by {case}"), binds, HILL));
    }
}

fn top_speeds(list: &mut Vec<Check>) {
    // Kv, mΩ, volts, duty %, teeth, wheel mm, motors, belt %: top speed m/s.
    for ([kv, ohm, volt, duty, small, large, wheel, motors, belt], top) in [
        ([170.0, 80.0, 36.0, 95.0, 16.0, 40.0, 100.0, 2.0, 93.0], 11.415_910_461_6),
        ([100.0, 40.0, 42.0, 100.0, 16.0, 36.0, 100.0, 1.0, 95.0], 9.299_413_956_6),
        ([190.0, 60.0, 30.0, 90.0, 15.0, 60.0, 151.0, 2.0, 90.0], 9.683_347_598_6),
    ] {
        let drive = board(&[
            (Slot::Motor, "kv_rpm_per_v", kv),
            (Slot::Motor, "resistance_ll_mohm", ohm),
            (Slot::Controller, "max_duty_percent", duty),
            (Slot::MotorPulley, "teeth", small),
            (Slot::WheelPulley, "teeth", large),
            (Slot::Wheel, "diameter_mm", wheel),
            (Slot::Truck, "motor_count", motors),
            (Slot::Belt, "efficiency_percent", belt),
        ]);
        let found = drive.top_speed(&stiff(volt), &FULL, Slope::FLAT);
        list.push(check(format!("top speed on {volt} V"), found.speed_m_s, top, 1e-8, VOLTS));
        list.push(holds(format!("{volt} V bind"), found.limit == Limit::Voltage, VOLTS));
    }
    // 7 pole pairs: 42 000 erpm are 100 turns a second, 40 of the wheel.
    let drive = board(&[(Slot::Controller, "erpm_limit", 42_000.0)]);
    let found = drive.top_speed(&stiff(90.0), &FULL, Slope::FLAT);
    let want = 40.0 * 2.0 * std::f64::consts::PI * 0.048;
    list.push(check("top speed at 42 000 erpm", found.speed_m_s, want, 1e-9, COUNTED));
    list.push(holds("erpm bind", found.limit == Limit::ElectricalSpeed, COUNTED));

    for (at, share) in [(0.999, 1.0), (1.001, 0.0)] {
        let push = drive.push(&stiff(90.0), &FULL, at * want, Slope::FLAT);
        let on = f64::from(u8::from(push.motor_current_a > 0.0));
        let name = format!("current at {at} of 42 000 erpm");
        list.push(check(name, on, share, 0.0, COUNTED));
    }

    let cap = Mode { current_share: 1.0, speed_cap_m_s: Some(5.0) };
    let found = drive.top_speed(&stiff(90.0), &cap, Slope::FLAT);
    list.push(check("top speed under a cap", found.speed_m_s, 5.0, 0.0, CAP));
    list.push(holds("the cap binds", found.limit == Limit::ModeSpeed, CAP));

    for (watt, speed) in [
        (200.0, 7.168_216_78),
        (400.0, 9.602_691_04),
        (800.0, 12.557_032_70),
        (1500.0, 15.814_895_09),
    ] {
        // The limit gives each motor's idle draw and copper loss on top: 0.1 W,
        // and I² R at the force that the published speed takes.
        let force = watt / speed;
        let ampere = force * 0.048 / 2.5 / 2.0 * (100.0 * std::f64::consts::PI / 30.0);
        let each = watt / 2.0 + 0.1 + ampere * ampere * 1e-3;
        let drive = board(&[
            (Slot::Motor, "kv_rpm_per_v", 100.0),
            (Slot::Motor, "resistance_ll_mohm", 1.0),
            (Slot::Controller, "battery_current_a", each / 100.0),
        ]);
        let found = drive.top_speed(&stiff(100.0), &FULL, Slope::FLAT);
        let name = format!("top speed at {watt} W");
        list.push(check(name, found.speed_m_s, speed, 1e-6, POWER));
        let binds = found.limit == Limit::ControllerBatteryCurrent;
        list.push(holds(format!("{watt} W bind"), binds, POWER));
    }
}

pub(crate) fn checks() -> Vec<Check> {
    let mut list = Vec::new();
    hills(&mut list);
    top_speeds(&mut list);

    let push =
        |changes: &[(Slot, &str, f64)]| board(changes).push(&stiff(80.0), &FULL, 1.0, Slope::FLAT);
    let belt = push(&[
        (Slot::Belt, "rating_n_per_mm", 30.0),
        (Slot::Belt, "width_mm", 12.0),
        (Slot::Belt, "efficiency_percent", 95.0),
        (Slot::Motor, "no_load_a", 2.0),
    ]);
    list.push(check("push of 360 N belts", belt.force_n, 453.591_587_811_9, 1e-8, RATED));
    list.push(holds("the belt binds", belt.limit == Limit::Belt, RATED));

    // 30 % grip, mass 0.3 m high on a wheelbase of 0.9 m.
    for (motors, newton) in [(2.0, 147.099_75), (1.0, 69.678_828_947_4)] {
        let grip = push(&[
            (Slot::Place, "grip_percent", 30.0),
            (Slot::Rider, "centre_height_mm", 300.0),
            (Slot::Deck, "wheelbase_mm", 900.0),
            (Slot::Truck, "motor_count", motors),
            (Slot::Motor, "no_load_a", 2.0),
        ]);
        let name = format!("push of {motors} wheels at the edge of grip");
        list.push(check(name, grip.force_n, newton, 1e-8, AXLE));
        list.push(holds(format!("the grip of {motors} binds"), grip.limit == Limit::Grip, AXLE));
    }
    list
}
