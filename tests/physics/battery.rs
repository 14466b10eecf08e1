//! The pack as a source: what a constant power draws from it.

use crate::board::board;
use crate::check::{Check, check, halve, holds};
use pitchline_core::physics::battery::{
    BusVoltage, GreatestPackPower, MeanPackCurrent, NameplateEnergy, OpenCircuitVoltage,
    PackCapacity, PackCurrent, PackResistance, RideDistance,
};
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Drive, Supply};

const SAG: &str = "smaller root of P = I (V - I R), in Python";
const EXACT: &str = "by hand: 36 V behind 0.09 ohm gives 2000 W at 200/3 A and 30 V";
const MOST: &str = "by hand: V^2 / 4R";
const COUNT: &str = "by hand: cells in series add volts, cells in parallel add ampere-hours";

/// Open volts, ohm, watts: ampere, volts.
const DRAWN: [([f64; 3], f64, f64); 4] = [
    ([44.4, 0.072, 1500.0], 35.870_287_93, 41.817_339_27),
    ([44.4, 0.072, 3000.0], 77.242_922_94, 38.838_509_55),
    ([36.0, 0.09, 2000.0], 200.0 / 3.0, 30.0),
    ([50.4, 0.06, 4000.0], 88.739_780_03, 45.075_613_20),
];

/// Watts that the reference board takes from a source at a speed on the flat:
/// volts times ampere of a source too stiff to sag.
fn watts(drive: &Drive, speed: f64) -> f64 {
    let stiff = Supply { open_v: 100.0, resistance_ohm: 0.0, lead_ohm: 0.0 };
    let point = drive.hold(&stiff, speed, Slope::FLAT);
    point.map_or(f64::NAN, |point| 100.0 * point.pack_current_a)
}

pub(crate) fn checks() -> Vec<Check> {
    let drive = board(&[]);
    let mut list = Vec::new();
    for ([open, ohm, watt], ampere, volt) in DRAWN {
        let source = if open == 36.0 { EXACT } else { SAG };
        let current = PackCurrent { open, resistance: ohm, power: watt }.value();
        list.push(check(format!("current at {watt} W"), current, ampere, 1e-8, source));
        let bus = BusVoltage { open, current, resistance: ohm }.value();
        list.push(check(format!("voltage at {watt} W"), bus, volt, 1e-8, source));
        // A whole board at the speed that takes this power, on this source.
        let speed = halve(1.0, 40.0, |v| watts(&drive, v) - watt);
        let supply = Supply { open_v: open, resistance_ohm: ohm, lead_ohm: 0.0 };
        let point = drive.hold(&supply, speed, Slope::FLAT).unwrap_or_default();
        let name = format!("current of a board at {watt} W");
        list.push(check(name, point.pack_current_a, ampere, 2e-8, source));
        list.push(check(
            format!("voltage of a board at {watt} W"),
            point.bus_v,
            volt,
            1e-8,
            source,
        ));
        let heat = ampere * ampere * ohm;
        list.push(check(format!("heat in cells at {watt} W"), point.cells_w, heat, 2e-6, source));
    }
    for (open, ohm, most) in [(36.0, 0.09, 3600.0), (44.4, 0.072, 6845.0), (50.4, 0.06, 10_584.0)] {
        let got = GreatestPackPower { open, resistance: ohm }.value();
        list.push(check(format!("most from {open} V"), got, most, 1e-9, MOST));
        // At the most power half of the voltage is left.
        let bus = BusVoltage {
            open,
            current: PackCurrent { open, resistance: ohm, power: most * (1.0 - 1e-14) }.value(),
            resistance: ohm,
        }
        .value();
        list.push(check(format!("half of {open} V at the most"), bus, open / 2.0, 1e-5, MOST));
        let beyond = PackCurrent { open, resistance: ohm, power: most * 1.000_001 }.value();
        list.push(holds(format!("no current beyond {most} W"), beyond.is_nan(), MOST));
        // A board is refused a hair above, and served a hair below.
        let supply = Supply { open_v: open, resistance_ohm: ohm, lead_ohm: 0.0 };
        let limit = halve(1.0, 60.0, |v| watts(&drive, v) - most);
        let at = |v: f64| drive.hold(&supply, v, Slope::FLAT).is_some();
        list.push(holds(format!("a board below {most} W"), at(limit * (1.0 - 1e-9)), MOST));
        list.push(holds(format!("no board above {most} W"), !at(limit * (1.0 + 1e-9)), MOST));
    }
    list.extend([
        check(
            "ten in series",
            OpenCircuitVoltage { series: 10.0, cell: 3.7 }.value(),
            37.0,
            1e-12,
            COUNT,
        ),
        // 10 × 24 mΩ / 3 and 12 mΩ of leads.
        check(
            "ten by three",
            PackResistance { series: 10.0, parallel: 3.0, cell: 0.024, leads: 0.012 }.value(),
            0.092,
            1e-15,
            COUNT,
        ),
        check(
            "three in parallel",
            PackCapacity { parallel: 3.0, cell: 5.0, cold: 0.9, age: 0.8 }.value(),
            10.8,
            1e-12,
            COUNT,
        ),
        check(
            "nameplate",
            NameplateEnergy { series: 12.0, parallel: 4.0, cell: 5.0, nominal: 3.6 }.value(),
            864.0,
            1e-9,
            COUNT,
        ),
        // 8 of 10 Ah in 24 minutes are 20 A; at 25 km/h those are 10 km.
        check(
            "mean current",
            MeanPackCurrent { capacity: 10.0, start: 1.0, end: 0.2, time: 1440.0 }.value(),
            20.0,
            1e-12,
            COUNT,
        ),
        check(
            "distance",
            RideDistance { speed: 25.0 / 3.6, time: 1440.0 }.value(),
            10_000.0,
            1e-8,
            COUNT,
        ),
    ]);
    list
}
