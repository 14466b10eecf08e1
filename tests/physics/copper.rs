//! Copper: resistance against temperature, and the heat of a current in it.

use crate::board::{board, stiff};
use crate::check::{Check, check};
use pitchline_core::physics::motor::{
    COPPER_PER_K, CopperLoss, TorqueConstantDirect, TorqueConstantPeak, WarmResistance,
};
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Convention, Slot};

const HANDBOOK: &str = "Industrial Power Engineering and Applications Handbook, table 30.1: \
    3.93e-3 per kelvin at 20 °C (IEC 60028)";
const RULE: &str = "IEC 60034 rule (235 + t) / (235 + t0), from memory";
const SINE: &str = "algebra: three phases of half the line-to-line resistance carry I/√2 each";
const SAME: &str = "algebra: one torque heats the same copper alike in both conventions";

/// Temperature °C, resistance over that at 20 °C.
const WARM: [(f64, f64); 7] = [
    (20.0, 1.0),
    (40.0, 1.0786),
    (60.0, 1.1572),
    (80.0, 1.2358),
    (100.0, 1.3144),
    (120.0, 1.3930),
    (150.0, 1.5109),
];

/// Temperature °C, resistance over that at 25 °C.
const FROM_25: [(f64, f64); 3] = [(80.0, 1.211_538), (100.0, 1.288_462), (120.0, 1.365_385)];

/// Peak phase ampere, milliohm between two wires.
const CURRENTS: [(f64, f64); 4] = [(10.0, 100.0), (25.0, 60.0), (40.0, 45.0), (60.0, 38.0)];

fn loss(convention: Convention, current: f64, resistance: f64) -> f64 {
    CopperLoss { factor: convention.copper_factor(), current, resistance }.value()
}

pub(crate) fn checks() -> Vec<Check> {
    let mut list = vec![check("temperature coefficient", COPPER_PER_K, 3.93e-3, 0.0, HANDBOOK)];
    for (celsius, ratio) in WARM {
        let got = WarmResistance { cold: 1.0, celsius }.value();
        list.push(check(format!("copper at {celsius} °C"), got, ratio, 1e-12, HANDBOOK));
        // Through a board: copper heat at one torque grows as the resistance does.
        let heat = |winding: f64| {
            let drive = board(&[(Slot::Ride, "winding_c", winding)]);
            drive.hold(&stiff(40.0), 6.0, Slope::FLAT).map_or(f64::NAN, |point| point.copper_w)
        };
        let name = format!("copper heat of a board at {celsius} °C");
        list.push(check(name, heat(celsius) / heat(20.0), ratio, 1e-9, HANDBOOK));
    }
    for (celsius, ratio) in FROM_25 {
        let got = WarmResistance { cold: 1.0, celsius }.value()
            / WarmResistance { cold: 1.0, celsius: 25.0 }.value();
        // 234.5 would be the same straight line; 235 is its rounding.
        list.push(check(format!("copper at {celsius} °C from 25 °C"), got, ratio, 1e-3, RULE));
    }
    for (peak, milliohm) in CURRENTS {
        let line = 1e-3 * milliohm;
        let effective = peak / 2.0_f64.sqrt();
        let want = 3.0 * effective * effective * line / 2.0;
        let name = format!("heat of {peak} A peak in {milliohm} mΩ");
        list.push(check(name, loss(Convention::PeakPhase, peak, line), want, 1e-9, SINE));
        let direct = peak * TorqueConstantPeak { kv: 190.0 }.value()
            / TorqueConstantDirect { kv: 190.0 }.value();
        let name = format!("heat of the torque of {peak} A peak in {milliohm} mΩ");
        list.push(check(name, loss(Convention::Direct, direct, line), want, 1e-9, SAME));
    }
    list
}
