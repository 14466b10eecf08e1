//! The first-order motor: a published data set, a case that comes out in round
//! numbers, and both current conventions.

use crate::board::{board, stiff};
use crate::check::{Check, check, holds};
use pitchline_core::physics::motor::{
    IronTorque, MotorCurrent, MotorVoltageDirect, MotorVoltagePeak, TorqueConstantDirect,
    TorqueConstantPeak,
};
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Drive, Limit, Mode, Slot};
use std::f64::consts::PI;

const DATA_SET: &str = "Drela 2007 first-order model with the constants of a published 6 V motor \
    data set (0.31 ohm, 0.77 A, 2760 rpm/V), evaluated in Python";
const ROUND: &str = "Drela 2007: eta = (1 - sqrt(I0 R / V))^2 = 0.81 for 0.1 ohm, 1 A, 10 V";
const TORQUE: &str = "algebra: 60 / 2 pi, and √3/2 of it for a peak phase ampere";
const DROP: &str = "algebra: √3 I w_e L, 40 A at 40 000 erpm across 20 uH";
const PHASE: &str = "phase quantities: √3 |(R_ph I + w_e λ, w_e L I)| with λ from Kv, in Python";
const SHARES: &str = "by hand: a loss shared between a constant and a rising part";

const KV: f64 = 2760.0;
const OHM: f64 = 0.31;
const NO_LOAD: f64 = 0.77;

/// Rpm at 6 V: current A, torque N m, shaft W, input W.
const AT_SPEED: [(f64, f64, f64, f64, f64); 3] = [
    (5000.0, 13.510_986, 0.044_082, 23.081_497, 81.065_919),
    (10_000.0, 7.667_134, 0.023_863, 24.989_617, 46.002_805),
    (15_000.0, 1.823_282, 0.003_644, 5.724_358, 10.939_691),
];

fn rad_s(rpm: f64) -> f64 {
    rpm * PI / 30.0
}

/// Torque on the shaft at a current, N m: what [`MotorCurrent`] is asked to invert.
fn current_for(torque: f64, omega: f64) -> f64 {
    // All of the loss at any speed, as in the data set.
    let iron =
        IronTorque { kv: KV, no_load: NO_LOAD, share: 1.0, omega, at: rad_s(10_000.0) }.value();
    MotorCurrent { torque, iron, constant: TorqueConstantDirect { kv: KV }.value() }.value()
}

fn volts(rpm: f64, current: f64) -> f64 {
    MotorVoltageDirect { omega: rad_s(rpm), kv: KV, current, resistance: OHM }.value()
}

fn data_set(list: &mut Vec<Check>) {
    let mut put = |name: &str, got, want, within| {
        list.push(check(format!("6 V motor: {name}"), got, want, within, DATA_SET));
    };
    put("torque for each ampere", TorqueConstantDirect { kv: KV }.value(), 0.003_459_89, 5e-9);
    put("volts at no load", volts(15_901.188, NO_LOAD), 6.0, 1e-6);
    put("volts at stall", volts(0.0, 19.354_839), 6.0, 1e-6);
    put("current at stall torque", current_for(0.064_301_50, 0.0), 19.354_839, 3e-6);
    put("volts at best efficiency", volts(13_256.982_18, 3.860_469_6), 6.0, 1e-7);
    let best = rad_s(13_256.982_18);
    put("current at best efficiency", current_for(0.010_692_685, best), 3.860_469_6, 2e-7);
    put("best efficiency", 0.010_692_685 * best / (6.0 * 3.860_469_6), 0.640_868_14, 5e-8);
    // At half of the stall current and half of the no-load current.
    let rpm = KV * (6.0 - OHM * 10.062_419_4);
    let most = 26.768_207_8 / rad_s(rpm);
    put("current at most power", current_for(most, rad_s(rpm)), 10.062_419_4, 1e-6);
    for (rpm, amp, torque, shaft, input) in AT_SPEED {
        put(&format!("volts at {rpm} rpm"), volts(rpm, amp), 6.0, 1e-6);
        let from_shaft = current_for(shaft / rad_s(rpm), rad_s(rpm));
        put(&format!("current at {rpm} rpm"), from_shaft, amp, 2e-6);
        let from_torque = current_for(torque, rad_s(rpm));
        // Torque is printed to 1e-6 N m: 1.5e-4 A.
        put(&format!("current for {torque} N m"), from_torque, amp, 1.5e-4);
        put(&format!("input at {rpm} rpm"), 6.0 * from_shaft, input, 2e-5);
    }
}

/// 570 rpm/V, 0.1 ohm, 1 A at any speed, 10 V, alone on the reference board.
fn round_numbers() -> Drive {
    board(&[
        (Slot::Motor, "kv_rpm_per_v", 570.0),
        (Slot::Motor, "resistance_ll_mohm", 100.0),
        (Slot::Motor, "no_load_a", 1.0),
        (Slot::Motor, "hysteresis_percent", 100.0),
        (Slot::Truck, "motor_count", 1.0),
    ])
}

pub(crate) fn checks() -> Vec<Check> {
    let mut list = Vec::new();
    data_set(&mut list);

    let drive = round_numbers();
    let full = Mode { current_share: 1.0, speed_cap_m_s: None };
    // Road speed at a motor current, from the volts left for the back-EMF.
    let road = |amp: f64| rad_s(570.0 * (10.0 - 0.1 * amp)) * 0.048 / 2.5;
    for (name, amp, watt) in [("best efficiency", 10.0, 81.0), ("most power", 50.5, 245.025)] {
        let v = road(amp);
        let push = drive.push(&stiff(10.0), &full, v, Slope::FLAT);
        list.push(check(format!("{name}: current"), push.motor_current_a, amp, 1e-7, ROUND));
        list.push(check(format!("{name}: shaft power"), push.force_n * v, watt, 1e-6, ROUND));
        list.push(holds(format!("{name}: volts bind"), push.limit == Limit::Voltage, ROUND));
    }
    let idle = drive.push(&stiff(10.0), &full, rad_s(5643.0) * 0.048 / 2.5, Slope::FLAT);
    list.push(check("no push at 5643 rpm", idle.force_n, 0.0, 1e-6, ROUND));
    list.push(check("no-load current at 5643 rpm", idle.motor_current_a, 1.0, 1e-7, ROUND));

    for kv in [50.0, 170.0, 190.0, 570.0] {
        let (direct, peak) =
            (TorqueConstantDirect { kv }.value(), TorqueConstantPeak { kv }.value());
        list.push(check(format!("direct ampere at {kv}"), direct * kv, 9.549_297, 5e-7, TORQUE));
        list.push(check(format!("peak ampere at {kv}"), peak * kv, 8.269_933, 5e-7, TORQUE));
        list.push(check(format!("their ratio at {kv}"), peak / direct, 0.866_025_4, 5e-8, TORQUE));
    }

    let inductive = MotorVoltagePeak {
        omega: rad_s(40_000.0 / 7.0),
        kv: 1e12,
        current: 40.0,
        resistance: 0.0,
        pairs: 7.0,
        inductance: 20e-6,
    }
    .value();
    list.push(check("volts across an inductance", inductive, 5.804_157, 1e-6, DROP));
    // Operating points of the second program; see `chain`.
    for (omega, amp, want) in [
        (6.0 / 0.048 * 44.0 / 15.0, 13.982_025_237, 24.117_249_024),
        (9.0 / 0.048 * 44.0 / 15.0, 11.782_186_241, 35.678_630_727),
        (4.0 / 0.048 * 44.0 / 15.0, 0.0, 15.561_816_658),
    ] {
        let got = MotorVoltagePeak {
            omega,
            kv: 150.0,
            current: amp,
            resistance: 0.050 * 1.1965,
            pairs: 7.0,
            inductance: 25e-6,
        }
        .value();
        list.push(check(format!("volts at {omega} rad/s"), got, want, 1e-8, PHASE));
    }

    // Constant share 0.3: 0.3 at rest, 0.65 at half speed, 1 at the speed of
    // measurement whatever the share.
    let whole = TorqueConstantDirect { kv: 190.0 }.value() * 1.2;
    for (share, speed, part) in
        [(0.3, 0.0, 0.3), (0.3, 0.5, 0.65), (0.3, 1.0, 1.0), (0.9, 1.0, 1.0), (0.0, 2.0, 2.0)]
    {
        let iron =
            IronTorque { kv: 190.0, no_load: 1.2, share, omega: 500.0 * speed, at: 500.0 }.value();
        let name = format!("iron loss, share {share}, speed {speed}");
        list.push(check(name, iron / whole, part, 1e-12, SHARES));
    }
    list
}
