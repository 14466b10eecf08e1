//! A whole board with every loss at once, against a second program.
//!
//! That program (Python, written apart from the core) works in phase
//! quantities: `λ = 60 / (2π √3 p Kv)`, torque `3/2 p λ i_q`, copper
//! `3/2 R_phase i_q²`, `v_q = R_phase i_q + p ω λ`, `v_d = −p ω L i_q`,
//! `√(v_q² + v_d²) ≤ D V_bus / √3`, switching `k V_bus i_q`, and finds every
//! root by bisection: the bus voltage from `V_bus (V − V_bus) / R = P(V_bus)`.

use crate::board::{drive, reference, weigh};
use crate::check::{Check, check, holds};
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Drive, Limit, Mode, Slot, Supply};

const SECOND: &str = "second program: phase quantities and bisection, see the head of the file";

const FULL: Mode = Mode { current_share: 1.0, speed_cap_m_s: None };

fn source(open_v: f64) -> Supply {
    Supply { open_v, resistance_ohm: 0.1, lead_ohm: 0.02 }
}

/// 95 kg at 500 m and 25 °C, into 10.8 km/h of wind, with every loss.
fn lossy(convention: f64) -> Drive {
    let mut draft = reference();
    for (slot, key, value) in [
        (Slot::Wheel, "rolling_smooth", 0.014),
        (Slot::Rider, "drag_area_m2", 0.6),
        (Slot::Place, "air_c", 25.0),
        (Slot::Place, "altitude_m", 500.0),
        (Slot::Place, "headwind_km_h", 10.8),
        (Slot::MotorPulley, "teeth", 15.0),
        (Slot::WheelPulley, "teeth", 44.0),
        (Slot::Belt, "efficiency_percent", 92.0),
        (Slot::Motor, "kv_rpm_per_v", 150.0),
        (Slot::Motor, "resistance_ll_mohm", 50.0),
        (Slot::Motor, "inductance_uh", 25.0),
        (Slot::Motor, "no_load_a", 1.5),
        (Slot::Motor, "no_load_rpm", 4500.0),
        (Slot::Motor, "hysteresis_percent", 40.0),
        (Slot::Controller, "convention", convention),
        (Slot::Controller, "motor_current_a", 55.0),
        (Slot::Controller, "battery_current_a", 18.0),
        (Slot::Controller, "max_duty_percent", 95.0),
        (Slot::Controller, "switch_mohm", 1.5),
        (Slot::Controller, "switching_percent", 0.6),
        (Slot::Controller, "idle_w", 0.8),
        (Slot::Ride, "winding_c", 70.0),
    ] {
        draft.set(slot, key, value);
    }
    weigh(&mut draft, 95.0);
    drive(&draft)
}

/// Names of the watts below.
const WATTS: [&str; 11] = [
    "chemistry",
    "cells",
    "leads",
    "controller",
    "copper",
    "iron",
    "belt",
    "rolling",
    "air",
    "slope",
    "brake",
];

/// An operating point: volts of the source, speed, grade; motor A, pack A,
/// bus V, motor V, shaft N m; and the watts named above.
type Row = ([f64; 3], [f64; 5], [f64; 11]);

const POINTS: [Row; 5] = [
    (
        [40.0, 6.0, 0.04],
        [13.982_025_237, 15.386_366_426, 38.461_363_357, 24.117_249_024, 0.688_090_946],
        [
            615.454_657_1,
            18.939_221_7,
            4.734_805_4,
            8.932_949_7,
            17.543_414_7,
            60.704_238_6,
            40.368_002_2,
            78.194_536_4,
            162.624_527_3,
            223.412_961_1,
            0.0,
        ],
    ),
    (
        [40.0, 9.0, 0.0],
        [11.782_186_241, 19.296_077_541, 38.070_392_246, 35.678_630_727, 0.544_516_805],
        [
            771.843_101_7,
            29.787_088_7,
            7.446_772_2,
            7.607_319_0,
            12.457_351_9,
            115.576_084_3,
            47.917_478_8,
            117.385_600_5,
            433.665_406_2,
            0.0,
            0.0,
        ],
    ),
    (
        // Downhill: the motors' drag holds part of it, the brakes the rest.
        [40.0, 4.0, -0.08],
        [0.0, 0.040_004_001, 39.995_999_600, 15.561_816_658, -0.067_918_067],
        [
            1.600_160_0,
            0.000_128_0,
            0.000_032_0,
            1.600_000_0,
            0.0,
            33.204_388_3,
            2.887_338_1,
            52.005_226_7,
            65.585_200_3,
            -297.172_724_0,
            143.490_570_6,
        ],
    ),
    (
        [40.0, 3.0, -0.01],
        [3.641_347_734, 1.964_651_412, 39.803_534_859, 11.861_746_676, 0.140_270_176],
        [
            78.586_056_5,
            0.308_788_4,
            0.077_197_1,
            3.398_929_5,
            1.189_866_6,
            22.178_877_1,
            4.114_591_8,
            39.126_577_2,
            36.138_783_9,
            -27.947_555_2,
            0.0,
        ],
    ),
    (
        [28.0, 6.0, 0.02],
        [10.981_927_077, 17.543_149_529, 26.245_685_047, 23.942_827_951, 0.522_686_865],
        [
            491.208_186_8,
            24.620_967_6,
            6.155_241_9,
            5.601_450_6,
            10.822_586_8,
            60.704_238_6,
            30.664_296_1,
            78.241_420_3,
            162.624_527_3,
            111.773_457_5,
            0.0,
        ],
    ),
];

/// Convention, volts, speed, force N, motor A, limit.
const PUSHES: [(f64, f64, f64, f64, f64, Limit); 11] = [
    (0.0, 40.0, 1.0, 335.835_744_063, 55.0, Limit::ControllerMotorCurrent),
    (0.0, 40.0, 7.0, 151.906_787_546, 26.139_722_239, Limit::ControllerBatteryCurrent),
    (0.0, 40.0, 10.0, -14.945_570_827, 0.0, Limit::Voltage),
    (0.0, 28.0, 4.0, 173.545_405_352, 29.225_859_056, Limit::ControllerBatteryCurrent),
    (0.0, 28.0, 5.8, 107.784_609_909, 18.860_815_305, Limit::Voltage),
    (0.0, 28.0, 6.2, 62.737_561_421, 11.648_351_763, Limit::Voltage),
    (0.0, 28.0, 6.6, 17.202_052_540, 4.357_096_497, Limit::Voltage),
    (0.0, 28.0, 7.5, -12.477_804_478, 0.0, Limit::Voltage),
    (1.0, 28.0, 5.0, 141.572_011_597, 20.960_516_367, Limit::ControllerBatteryCurrent),
    (1.0, 28.0, 5.9, 98.541_863_378, 15.054_448_068, Limit::Voltage),
    (1.0, 28.0, 6.3, 52.186_533_212, 8.625_510_581, Limit::Voltage),
];

pub(crate) fn checks() -> Vec<Check> {
    let peak = lossy(0.0);
    let direct = lossy(1.0);
    let mut list = Vec::new();
    for ([volt, speed, grade], state, watts) in POINTS {
        let held = peak.hold(&source(volt), speed, Slope::of_grade(grade)).unwrap_or_default();
        let case = format!("{volt} V, {speed} m/s, {grade}");
        let got =
            [held.motor_current_a, held.pack_current_a, held.bus_v, held.motor_v, held.shaft_n_m];
        let names = ["motor current", "pack current", "bus voltage", "motor voltage", "torque"];
        for ((name, got), want) in names.into_iter().zip(got).zip(state) {
            list.push(check(format!("{name} at {case}"), got, want, 2e-9, SECOND));
        }
        let got = std::iter::once(held.chemical_w).chain(held.sinks_w());
        for ((name, got), want) in WATTS.into_iter().zip(got).zip(watts) {
            list.push(check(format!("{name} at {case}"), got, want, 1e-7, SECOND));
        }
    }
    for (convention, volt, speed, newton, ampere, limit) in PUSHES {
        let drive = if convention == 0.0 { &peak } else { &direct };
        let push = drive.push(&source(volt), &FULL, speed, Slope::FLAT);
        let case = format!("{volt} V, {speed} m/s, convention {convention}");
        list.push(check(format!("push at {case}"), push.force_n, newton, 1e-7, SECOND));
        list.push(check(
            format!("its current at {case}"),
            push.motor_current_a,
            ampere,
            2e-9,
            SECOND,
        ));
        list.push(holds(format!("its limit at {case}"), push.limit == limit, SECOND));
    }
    for (drive, volt, grade, top) in [
        (&peak, 40.0, 0.0, 9.110_079_235),
        (&peak, 40.0, 0.08, 8.195_864_014),
        (&peak, 28.0, 0.0, 6.378_676_748),
        (&direct, 28.0, 0.0, 6.383_466_490),
    ] {
        let found = drive.top_speed(&source(volt), &FULL, Slope::of_grade(grade));
        let name = format!("top speed {top} on {volt} V");
        list.push(check(name, found.speed_m_s, top, 2e-9, SECOND));
    }
    for (km_h, grade) in [(10.0, 0.345_941_679_6), (20.0, 0.165_521_973_4)] {
        let found = peak.steepest(&source(40.0), km_h / 3.6);
        list.push(check(format!("hill at {km_h} km/h"), found.grade, grade, 2e-9, SECOND));
    }
    list
}
