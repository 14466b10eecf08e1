//! Sprints, braking and long climbs where they have a closed form.

use crate::board::board;
use crate::check::{Check, check, holds};
use crate::ride::fixture_board;
use pitchline_core::physics::heat::{Settled, settled};
use pitchline_core::physics::motion::{StoppingDistance, moved};
use pitchline_core::ride::{BrakeCase, Course, Goal, Leg, Manner, Ridden, Steps, Until};
use pitchline_core::{Build, Drive, Limit, Slot};

const TANH: &str = "closed form: v = vt tanh(t / tau), with the mass of what turns";
const LOG: &str = "closed form: s = m / 2 c2 ln((A + c2 v0^2) / (A + c2 v1^2))";
const SQUARE: &str = "closed form: v^2 / 2a, check values 6.88932981, 4.40917108, 15.43209877 m";
const BALANCE: &str = "closed form: the feedback's own steady temperature, solved the other way";
const CUTBACK: &str = "closed form: road load, push, heat and cutback solved together";
const BY_HAND: &str = "by hand, from the definition";

const C0: f64 = 10.591_182;
const C2: f64 = 0.336_875;
/// Push for each ampere of the reference board: 60 / (2 pi 170), 2.5 / 0.048, two motors.
const N_PER_A: f64 = 0.056_172_332_8 * 2.5 / 0.048 * 2.0;
/// 90 kg, four wheels of 0.28 kg as discs, two rotors of 0.45 · 0.75 kg at 30 mm.
const FELT: f64 = 90.0 + 2.0 * 0.28 + 2.0 * 0.45 * 0.75 * 9e-4 * (2.5 / 0.048) * (2.5 / 0.048);

/// The reference board with volts to spare and a push or brake of so many newtons.
fn strong(push_n: f64, brake_n: f64) -> Drive {
    board(&[
        (Slot::Pack, "series", 20.0),
        (Slot::Pack, "mass_kg", 5.0),
        (Slot::Controller, "max_bus_v", 150.0),
        (Slot::Controller, "motor_current_a", push_n / N_PER_A),
        (Slot::Controller, "brake_current_a", brake_n / N_PER_A),
        (Slot::Controller, "regen_current_a", 500.0),
    ])
}

fn sprints() -> Vec<Check> {
    let drive = strong(80.0, 0.0);
    let (vt, tau) = (((80.0 - C0) / C2).sqrt(), FELT / (C2 * (80.0 - C0)).sqrt());
    let mut checks = Vec::new();
    for km_h in [10.0, 20.0, 30.0] {
        let speed: f64 = km_h / 3.6;
        let time = tau * (speed / vt).atanh();
        let way = FELT / C2 * (time / tau).cosh().ln();
        let got = drive.sprint(Goal::Speed(speed), 0.0, 0.5);
        checks.push(check(format!("80 N to {km_h} km/h"), got.time_s, time, 1e-3 * time, TANH));
        checks.push(check(
            format!("80 N to {km_h} km/h: way"),
            got.distance_m,
            way,
            1e-3 * way,
            TANH,
        ));
        let got = drive.sprint(Goal::Distance(way), 0.0, 0.5);
        checks.push(check(format!("80 N over {way:.1} m"), got.time_s, time, 1e-3 * time, TANH));
        checks.push(check(
            format!("80 N over {way:.1} m: speed"),
            got.speed_m_s,
            speed,
            1e-3 * speed,
            TANH,
        ));
        checks.push(holds(
            format!("80 N to {km_h} km/h is the motor current limit's"),
            got.limit == Limit::ControllerMotorCurrent && got.reached,
            BY_HAND,
        ));
    }
    let never = drive.sprint(Goal::Speed(vt + 1.0), 0.0, 0.5);
    checks.push(holds("80 N never reach more than vt", !never.reached, TANH));
    checks.push(check("80 N end near vt", never.speed_m_s, vt, 0.03 * vt, TANH));
    checks
}

fn braking() -> Vec<Check> {
    let mut checks = Vec::new();
    for (km_h, rate, metres) in
        [(25.0, 3.5, 6.889_329_81), (20.0, 3.5, 4.409_171_08), (40.0, 4.0, 15.432_098_77)]
    {
        let got = StoppingDistance { speed: km_h / 3.6, rate }.value();
        checks.push(check(format!("{km_h} km/h at {rate} m/s²"), got, metres, 1e-8, SQUARE));
    }
    let drive = strong(80.0, 150.0);
    let case = |km_h: f64| BrakeCase {
        speed_m_s: km_h / 3.6,
        grade: 0.0,
        charge: 0.5,
        wet: false,
        motors: 2.0,
    };
    let crawl: f64 = 5.0 / 3.6;
    for km_h in [20.0, 30.0] {
        let (a, v): (f64, f64) = (150.0 + C0, km_h / 3.6);
        let got = drive.braking(case(km_h));
        let way = FELT / (2.0 * C2) * ((a + C2 * v * v) / (a + C2 * crawl * crawl)).ln();
        let name = |what| format!("150 N from {km_h} km/h: {what}");
        checks.push(check(name("way to 5 km/h"), got.slowing_m, way, 1e-3 * way, LOG));
        checks.push(check(name("reaction"), got.reaction_m, v, 1e-12, BY_HAND));
        let first = (a + C2 * v * v) / FELT;
        checks.push(check(name("deceleration"), got.first_m_s2, first, 1e-6, BY_HAND));
        checks.push(holds(name("limit"), got.limit == Limit::BrakeCurrent && got.stops, BY_HAND));
        // Motors off: rolling and air alone.
        let off = drive.braking(BrakeCase { motors: 0.0, ..case(km_h) });
        let way = FELT / (2.0 * C2) * ((C0 + C2 * v * v) / C0).ln();
        let got = off.slowing_m + off.rolling_m;
        checks.push(check(name("motors off"), got, way, 1e-3 * way, LOG));
    }
    let full = drive.braking(BrakeCase { charge: 1.0, ..case(20.0) });
    checks.push(holds(
        "a full pack takes less",
        // 1.2 % of 84 V over a resistance: far above what 150 N bring at 20 km/h.
        full.first_m_s2 > 0.0 && full.limit != Limit::RegenCurrent,
        BY_HAND,
    ));
    checks
}

fn for_ever() -> Vec<Check> {
    let mut checks = Vec::new();
    let build = Build::check(&fixture_board()).expect("in range");
    let drive = Drive::new(&build);
    for km_h in [5.0, 15.0, 25.0] {
        let speed = km_h / 3.6;
        let amps = drive.continuous_a(speed);
        // 16 and 36 teeth on 47.5 mm; k_T0 I_0 (1/2 + 1/2 w / w0) w of iron and bearings.
        let omega = 2.25 * speed / 0.0475;
        let w0 = 5000.0 * std::f64::consts::PI / 30.0;
        let iron = 30.0 / (std::f64::consts::PI * 190.0) * 1.2 * (0.5 + 0.5 * omega / w0) * omega;
        let outer = 1.6 / (1.0 + 0.12 * speed);
        let cold = 0.75 * 0.060 * amps * amps;
        let got = match settled(cold, 0.5 + outer, 20.0 + iron * outer) {
            Settled::At(celsius) => celsius,
            Settled::Never => f64::NAN,
        };
        let name = format!("continuous current at {km_h} km/h");
        checks.push(check(name, got, 120.0, 1e-6, BALANCE));
    }
    // A pack without end, so that only warmth may end a climb.
    let mut draft = fixture_board();
    for (slot, key, value) in [
        (Slot::Cell, "capacity_ah", 200.0),
        (Slot::Cell, "resistance_10s_mohm", 0.4),
        (Slot::Controller, "heat_sink_k_per_w", 0.1),
        (Slot::Ride, "start_charge_percent", 60.0),
    ] {
        draft.set(slot, key, value);
    }
    let drive = Drive::new(&Build::check(&draft).expect("in range"));
    let held = drive.steepest_for_ever(4.0);
    checks.push(holds("the windings set the hill", held.limit == Limit::WindingHot, BY_HAND));
    let more = drive.long_climb(1.1 * held.grade, 4.0);
    checks.push(holds("a tenth more ends hot", more.limit == Limit::WindingHot, BY_HAND));
    let less = drive.long_climb(0.97 * held.grade, 4.0);
    checks.push(holds("a little less ends with the pack", less.limit == Limit::Empty, BY_HAND));
    checks.push(check("and near the limit", less.winding_c, 117.0, 3.0, BALANCE));
    checks
}

/// Flat out on the flat for two hours, held back by windings that warm through 8 K/W.
fn flat_out(start_c: f64, end_c: f64, steps: Steps) -> Ridden {
    let drive = board(&[
        (Slot::Pack, "series", 20.0),
        (Slot::Pack, "mass_kg", 5.0),
        (Slot::Cell, "capacity_ah", 200.0),
        (Slot::Cell, "resistance_10s_mohm", 0.4),
        (Slot::Controller, "max_bus_v", 150.0),
        (Slot::Controller, "motor_current_a", 80.0 / N_PER_A),
        (Slot::Controller, "motor_cutback_start_c", start_c),
        (Slot::Controller, "motor_cutback_end_c", end_c),
        (Slot::Motor, "winding_k_per_w", 5.0),
        (Slot::Motor, "case_k_per_w", 3.0),
    ]);
    let leg = Leg { length_m: 1e9, grade: 0.0, cruise_m_s: 16.0, rest_s: None };
    let manner = Manner { acceleration_m_s2: 1.0, braking_m_s2: 1.0 };
    drive.ride(Course::Legs(&[leg]), manner, Until::time(7200.0), 0.6, steps)
}

/// Where a cutback for hot windings comes to rest: road load, push, heat and cutback at once, by
/// halving. The winding temperature, °C, and the speed, m/s.
fn held_by_windings(start_c: f64, end_c: f64) -> (f64, f64) {
    let (mut low, mut high) = (start_c, end_c);
    for _ in 0..60 {
        let at = 0.5 * (low + high);
        let amps = 80.0 / N_PER_A * (end_c - at) / (end_c - start_c);
        let speed = ((N_PER_A * amps - C0) / C2).max(0.0).sqrt();
        // 80 mΩ and 15 °C of the reference board, in the direct convention.
        let copper = 0.080 * (1.0 + 0.003_93 * (at - 20.0)) * amps * amps;
        let there = 15.0 + copper * (5.0 + 3.0 / (1.0 + 0.12 * speed));
        if there > at {
            low = at
        } else {
            high = at
        }
        if high - low < 1e-9 {
            return (at, speed);
        }
    }
    (f64::NAN, f64::NAN)
}

fn hot_windings() -> Vec<Check> {
    let mut checks = Vec::new();
    for (start_c, end_c) in [(40.0, 80.0), (50.0, 60.0), (50.0, 51.0)] {
        let (celsius, speed) = held_by_windings(start_c, end_c);
        let got = flat_out(start_c, end_c, Steps::USUAL);
        let name = |what| format!("held back from {start_c} to {end_c} °C: {what}");
        let last = got.moments.last().map_or([f64::NAN; 2], |m| [m.winding_c, m.speed_m_s]);
        checks.push(check(name("windings"), last[0], celsius, 0.05, CUTBACK));
        checks.push(check(name("speed"), last[1], speed, 2e-3 * speed, CUTBACK));
        let most = got.hottest.winding_c;
        checks.push(holds(name("never past its end"), most < end_c, BY_HAND));
        let finer = flat_out(start_c, end_c, Steps::USUAL.halved());
        let way = finer.distance_m;
        checks.push(check(name("half the step"), got.distance_m, way, 1e-3 * way, BY_HAND));
    }
    checks
}

/// Held at the electrical limit: the speed that it counts, and the current of the load there.
fn counted() -> Vec<Check> {
    let drive = board(&[
        (Slot::Pack, "series", 20.0),
        (Slot::Pack, "mass_kg", 5.0),
        (Slot::Controller, "max_bus_v", 150.0),
        (Slot::Controller, "motor_current_a", 80.0 / N_PER_A),
        (Slot::Controller, "erpm_limit", 20_000.0),
    ]);
    let leg = Leg { length_m: 1e9, grade: 0.0, cruise_m_s: 16.0, rest_s: None };
    let manner = Manner { acceleration_m_s2: 1.0, braking_m_s2: 1.0 };
    let legs = [leg];
    let until = Until::time(300.0);
    let got = drive.ride(Course::Legs(&legs), manner, until, 0.9, Steps::USUAL);
    let speed = 20_000.0 / 7.0 * std::f64::consts::PI / 30.0 / 2.5 * 0.048;
    let amps = (C0 + C2 * speed * speed) / N_PER_A;
    let mut checks = vec![
        check("electrical limit: highest speed", got.top_m_s, speed, 1e-9 * speed, BY_HAND),
        holds(
            "electrical limit: named",
            got.not_held.is_some_and(|met| met.limit == Limit::ElectricalSpeed),
            BY_HAND,
        ),
    ];
    for moment in got.moments.iter().filter(|m| m.time_s > 60.0) {
        let name = format!("electrical limit: current after {:.0} s", moment.time_s);
        checks.push(check(name, moment.motor_a, amps, 1e-6 * amps, BY_HAND));
    }
    checks
}

pub(crate) fn checks() -> Vec<Check> {
    [sprints(), braking(), for_ever(), hot_windings(), counted()].concat()
}

/// A brake that grips harder below a speed: 90 kg lose 190 N over 0.05 s, 0.1056 m/s, as from
/// there on the mean speed is one at which it does. By hand.
#[test]
fn a_brake_that_grips_harder_when_slower_goes_on_slowing() {
    let net = |v: f64| if v < 2.735 { -190.0 } else { -85.0 };
    let found = moved(90.0, 2.75, 0.05, net);
    let wanted = 2.75 - 0.05 * 190.0 / 90.0;
    assert!((found.speed_m_s - wanted).abs() < 1e-7, "{found:?}");
    assert_eq!(found.time_s, 0.05);
    // And to rest: from 0.08 m/s in 90 · 0.08 / 190 s.
    let found = moved(90.0, 0.08, 0.05, net);
    assert_eq!(found.speed_m_s, 0.0);
    assert!((found.time_s - 90.0 * 0.08 / 190.0).abs() < 1e-9, "{found:?}");
}
