//! The standard atmosphere, and dry air at other temperatures.

use crate::board::reference;
use crate::check::{Check, check};
use pitchline_core::physics::air::{AirDensity, AirPressure, G};
use pitchline_core::{Build, Drive, Slot};

const CLOSED: &str = "ICAO Doc 7488 closed form with its printed constants, computed in Python";
const LIBRARY: &str = "ambiance 1.3.1, an implementation of ICAO Doc 7488 in Python";
const LAYER: &str = "US Standard Atmosphere 1976, base pressure of its second layer";
const EXPONENT: &str = "US Standard Atmosphere 1976, printed exponent 5.255876";
const PRINTED: &str = "ICAO Doc 7488 printed table, from memory";
const GAS: &str = "ideal gas law with R 287.05287, computed in Python";
const GRAVITY: &str = "ISO 80000-3, standard acceleration of free fall";

/// Geopotential altitude m, pressure Pa, density kg/m³.
const ATMOSPHERE: [(f64, f64, f64); 7] = [
    (0.0, 101_325.00, 1.225_000),
    (500.0, 95_460.84, 1.167_269),
    (1000.0, 89_874.56, 1.111_643),
    (1500.0, 84_555.99, 1.058_067),
    (2000.0, 79_495.20, 1.006_490),
    (2500.0, 74_682.52, 0.956_859),
    (3000.0, 70_108.53, 0.909_122),
];

/// Geometric altitude m, density kg/m³.
const GEOMETRIC: [(f64, f64); 6] = [
    (500.0, 1.167_273),
    (1000.0, 1.111_660),
    (1500.0, 1.058_104),
    (2000.0, 1.006_554),
    (2500.0, 0.956_954),
    (3000.0, 0.909_254),
];

/// Altitude m, density kg/m³ to the four places of print.
const TABLE: [(f64, f64); 4] =
    [(0.0, 1.2250), (1000.0, 1.1116), (2000.0, 1.0065), (3000.0, 0.9091)];

/// Temperature °C, density of dry air at 101 325 Pa.
const DRY: [(f64, f64); 9] = [
    (-10.0, 1.341_379),
    (0.0, 1.292_271),
    (10.0, 1.246_632),
    (15.0, 1.225_000),
    (20.0, 1.204_106),
    (25.0, 1.183_913),
    (30.0, 1.164_386),
    (35.0, 1.145_493),
    (40.0, 1.127_203),
];

/// Temperature of the standard atmosphere, °C.
fn standard_c(geopotential_m: f64) -> f64 {
    15.0 - 0.0065 * geopotential_m
}

fn density(geopotential_m: f64) -> f64 {
    AirDensity {
        pressure: AirPressure { altitude: geopotential_m }.value(),
        celsius: standard_c(geopotential_m),
    }
    .value()
}

pub(crate) fn checks() -> Vec<Check> {
    let mut list = vec![
        check(
            "pressure at 11 km",
            AirPressure { altitude: 11_000.0 }.value(),
            22_632.10,
            0.1,
            LAYER,
        ),
        check(
            "exponent of the pressure",
            (AirPressure { altitude: 4000.0 }.value() / 101_325.0).ln()
                / (1.0 - 0.0065 * 4000.0 / 288.15_f64).ln(),
            5.255_876,
            5e-6,
            EXPONENT,
        ),
        check("gravity", G, 9.806_65, 0.0, GRAVITY),
    ];
    for (h, pressure, rho) in ATMOSPHERE {
        list.push(check(
            format!("pressure at {h} m"),
            AirPressure { altitude: h }.value(),
            pressure,
            0.005,
            CLOSED,
        ));
        list.push(check(format!("density at {h} m"), density(h), rho, 5e-7, CLOSED));
    }
    for (z, rho) in GEOMETRIC {
        // Geopotential from geometric altitude with the standard's own radius.
        let geopotential = 6_356_766.0 * z / (6_356_766.0 + z);
        let name = format!("density {z} m above the sea by tape measure");
        list.push(check(name, density(geopotential), rho, 5e-7, LIBRARY));
    }
    for (h, rho) in TABLE {
        list.push(check(format!("printed density at {h} m"), density(h), rho, 5.1e-5, PRINTED));
    }
    for (celsius, rho) in DRY {
        let name = format!("dry air at {celsius} °C");
        list.push(check(name, AirDensity { pressure: 101_325.0, celsius }.value(), rho, 5e-7, GAS));
        // The same through a whole board: its air resistance is ½ ρ CdA v².
        let mut draft = reference();
        draft.set(Slot::Place, "air_c", celsius);
        let build = Build::check(&draft).expect("in range");
        let drive = Drive::new(&build);
        let flat = pitchline_core::physics::road_load::Slope::FLAT;
        let air = drive.load_n(10.0, flat) - drive.load_n(0.0, flat);
        let name = format!("air resistance of a board at {celsius} °C");
        list.push(check(name, air, 0.5 * rho * 0.55 * 100.0, 2e-5, GAS));
    }
    list
}
