//! Copper wire: every gauge that the pack may name, and the volts it costs.

use crate::board::board;
use crate::check::{Check, check};
use pitchline_core::physics::battery::BusVoltage;
use pitchline_core::physics::wire::{WireDiameter, WireResistance};
use pitchline_core::{Sag, Slot};

const TABLE: &str = "wire table of Floyd, Electric Circuit Fundamentals, 2nd ed., at 20 °C";
const WARM: &str = "a published wire chart's 65 °C column, whose cold column is the 20 °C table";
const EXAMPLE: &str = "ASTM B258 diameter, IEC 60028 resistivity 1/58 and 0.00393/K, in Python";

/// Gauge, diameter in inches, ohm for 1000 feet at 20 °C.
const GAUGES: [(f64, f64, f64); 21] = [
    (4.0, 0.204_31, 0.2485),
    (5.0, 0.181_94, 0.3133),
    (6.0, 0.162_02, 0.3951),
    (7.0, 0.144_28, 0.4982),
    (8.0, 0.128_49, 0.6282),
    (9.0, 0.114_43, 0.7921),
    (10.0, 0.101_89, 0.9989),
    (11.0, 0.090_74, 1.26),
    (12.0, 0.0808, 1.588),
    (13.0, 0.071_96, 2.003),
    (14.0, 0.064_08, 2.525),
    (15.0, 0.057_07, 3.184),
    (16.0, 0.050_82, 4.016),
    (17.0, 0.045_26, 5.064),
    (18.0, 0.0403, 6.385),
    (19.0, 0.035_89, 8.051),
    (20.0, 0.031_96, 10.15),
    (21.0, 0.028_46, 12.8),
    (22.0, 0.025_35, 16.14),
    (23.0, 0.022_57, 20.36),
    (24.0, 0.0201, 25.67),
];

/// Gauge, ohm for 1000 feet at 65 °C.
const AT_65: [(f64, f64); 6] =
    [(4.0, 0.2924), (8.0, 0.7390), (10.0, 1.175), (12.0, 1.868), (14.0, 2.970), (16.0, 4.725)];

/// Gauge, metres there and back, ampere, °C: milliohm, volts, watts.
const EXAMPLES: [([f64; 4], [f64; 3]); 3] = [
    ([10.0, 0.8, 40.0, 60.0], [3.033_817, 0.121_353, 4.854_107]),
    ([12.0, 0.6, 30.0, 50.0], [3.495_097, 0.104_853, 3.145_587]),
    ([8.0, 1.0, 60.0, 70.0], [2.465_980, 0.147_959, 8.877_527]),
];

pub(crate) fn checks() -> Vec<Check> {
    let mut list = Vec::new();
    for (gauge, inch, ohm) in GAUGES {
        let diameter = WireDiameter { gauge }.value();
        let want = 25.4 * inch;
        list.push(check(format!("diameter of {gauge}"), diameter, want, 1e-3 * want, TABLE));
        let got = WireResistance { length: 304.8, diameter, celsius: 20.0 }.value();
        list.push(check(format!("1000 ft of {gauge}"), got, ohm, 1e-3 * ohm, TABLE));
    }
    for (gauge, ohm) in AT_65 {
        let got = WireResistance {
            length: 304.8,
            diameter: WireDiameter { gauge }.value(),
            celsius: 65.0,
        }
        .value();
        list.push(check(format!("1000 ft of {gauge} at 65 °C"), got, ohm, 1e-3 * ohm, WARM));
    }
    for ([gauge, metre, ampere, celsius], [milliohm, volt, watt]) in EXAMPLES {
        let ohm =
            WireResistance { length: metre, diameter: WireDiameter { gauge }.value(), celsius }
                .value();
        let lost = 40.0 - BusVoltage { open: 40.0, current: ampere, resistance: ohm }.value();
        list.push(check(format!("{metre} m of {gauge}"), 1e3 * ohm, milliohm, 1e-6, EXAMPLE));
        list.push(check(format!("volts lost in {gauge}"), lost, volt, 1e-6, EXAMPLE));
        list.push(check(format!("heat in {gauge}"), lost * ampere, watt, 2e-6, EXAMPLE));
    }
    // The second example through a whole board, whose wires are as warm as the air.
    let drive = board(&[
        (Slot::Pack, "wire_awg", 12.0),
        (Slot::Pack, "wire_m", 0.6),
        (Slot::Pack, "joints_mohm", 5.0),
        (Slot::Place, "air_c", 50.0),
    ]);
    let leads = 1e3 * drive.supply(0.5, Sag::Burst).lead_ohm;
    list.push(check("leads and joints of a board", leads, 8.495_097, 1e-6, EXAMPLE));
    list
}
