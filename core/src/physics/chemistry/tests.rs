//! Against the reference runs of `tests/fixture/cells` (model outputs from the
//! published parameter sets named there), and laws that hold for any figures.

use std::vec::Vec;

use super::{Chemistry, tables};
use crate::math::exp;

/// Rows of the 401-point tables: Chen2020, Ecker2015, Prada2013.
const CHARGES: [f64; 28] = [
    0.0025, 0.0075, 0.0125, 0.02, 0.0275, 0.04, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5,
    0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 0.96, 0.98, 0.985, 0.99,
];
const CHEN: [f64; 28] = [
    2.559751, 2.665074, 2.754044, 2.862492, 2.947214, 3.050397, 3.295907, 3.433895, 3.485189,
    3.528563, 3.581446, 3.629048, 3.667007, 3.705397, 3.750874, 3.798348, 3.840577, 3.889587,
    3.947906, 3.994304, 4.042080, 4.080912, 4.096656, 4.123553, 4.135071, 4.164486, 4.172930,
    4.181703,
];
const ECKER: [f64; 28] = [
    2.658747, 2.825954, 2.924911, 3.034361, 3.120497, 3.229448, 3.458570, 3.527676, 3.586986,
    3.656547, 3.709373, 3.742991, 3.770015, 3.780542, 3.787250, 3.797871, 3.815455, 3.841673,
    3.882251, 3.940010, 3.986843, 4.030440, 4.078896, 4.135292, 4.147616, 4.173241, 4.179834,
    4.186494,
];
const PRADA: [f64; 28] = [
    2.074301, 2.206633, 2.319908, 2.460021, 2.571093, 2.707735, 2.978092, 3.108029, 3.168489,
    3.185703, 3.205821, 3.232364, 3.252499, 3.262144, 3.266030, 3.267765, 3.268822, 3.269957,
    3.274028, 3.292575, 3.309691, 3.313180, 3.314167, 3.316387, 3.319306, 3.350173, 3.374297,
    3.415021,
];

#[test]
fn open_circuit_matches_the_published_tables() {
    for (class, table) in
        [(Chemistry::Energy, CHEN), (Chemistry::Power, ECKER), (Chemistry::Lfp, PRADA)]
    {
        for (z, v) in CHARGES.iter().zip(table) {
            let got = class.ocv_v(*z);
            assert!((got - v).abs() < 0.15e-3, "{class:?} at {z}: {got} against {v}");
        }
        // Volts at the ends of the three sets.
        let ends = if class == Chemistry::Lfp { (2.0, 3.6) } else { (2.5, 4.2) };
        assert_eq!((class.ocv_v(0.0), class.ocv_v(1.0)), ends);
        assert_eq!((class.floor_v(), class.full_v()), ends);
    }
}

#[test]
fn open_circuit_is_monotone_and_held_at_its_ends() {
    for class in Chemistry::ALL {
        let mut last = class.ocv_v(0.0);
        for k in 1..=20_000 {
            let v = class.ocv_v(f64::from(k) / 20_000.0);
            assert!(v > last, "{class:?} falls at step {k}");
            last = v;
        }
        assert_eq!(class.ocv_v(-3.0), class.floor_v());
        assert_eq!(class.ocv_v(7.0), class.full_v());
        assert_eq!(class.ocv_v(f64::NAN), class.floor_v());
        assert_eq!(class.ocv_v(f64::INFINITY), class.full_v());
    }
}

#[test]
fn slope_is_the_derivative_and_continuous() {
    for (class, knots) in [
        (Chemistry::Energy, tables::ENERGY_OCV),
        (Chemistry::Power, tables::POWER_OCV),
        (Chemistry::Lfp, tables::LFP_OCV),
    ] {
        let h = 1e-7;
        for k in 1..2000 {
            let z = f64::from(k) / 2000.0;
            let quotient = (class.ocv_v(z + h) - class.ocv_v(z - h)) / (2.0 * h);
            let slope = class.docv_dz(z);
            // Across a knot the quotient mixes two curvatures, at most some 1e4 V.
            assert!((slope - quotient).abs() < 1e-4 + 1e4 * h, "{class:?} at {z}");
        }
        for knot in &knots[1..knots.len() - 1] {
            let (left, right) =
                (class.docv_dz(knot.charge - 1e-9), class.docv_dz(knot.charge + 1e-9));
            assert!((left - right).abs() < 1e-4, "{class:?} kinks at {}", knot.charge);
        }
        for pair in knots.windows(2) {
            let chord = (pair[1].volts - pair[0].volts) / (pair[1].charge - pair[0].charge);
            for knot in pair {
                assert!(knot.slope >= 0.0 && knot.slope <= 3.0 * chord, "at {}", knot.charge);
            }
        }
    }
}

/// A reference cell of a class in time, at a temperature.
struct Bench {
    class: Chemistry,
    r: f64,
    lag: f64,
    capacity_ah: f64,
    charge: f64,
    j1: f64,
    j2: f64,
    dt: f64,
}

#[derive(Clone, Copy)]
enum Load {
    Amps(f64),
    Watts(f64),
}

impl Bench {
    fn new(class: Chemistry, celsius: f64, charge: f64) -> Self {
        let cell = class.reference_cell();
        Self {
            class,
            r: cell.resistance_ohm * class.resistance_factor(celsius),
            lag: cell.resistance_ohm * class.lag_factor(celsius),
            capacity_ah: cell.capacity_ah * class.capacity_factor(celsius),
            charge,
            j1: 0.0,
            j2: 0.0,
            dt: 1.0,
        }
    }

    /// Volts behind the part of the resistance that is there at once, and that part.
    fn source(&self) -> (f64, f64) {
        let s = self.class.shape();
        let surface = self.charge - self.lag * (s.lag1_per_v * self.j1 + s.lag2_per_v * self.j2);
        let behind = self.r * (s.r1_share * self.j1 + s.r2_share * self.j2);
        (self.class.ocv_v(surface) - behind, self.r * s.r0_share)
    }

    fn step(&mut self, amps: f64) {
        let s = self.class.shape();
        self.j1 += (amps - self.j1) * (1.0 - exp(-self.dt / s.tau1_s));
        self.j2 += (amps - self.j2) * (1.0 - exp(-self.dt / s.tau2_s));
        self.charge -= amps * self.dt / 3600.0 / self.capacity_ah;
    }

    /// Wh delivered down to a voltage.
    fn discharge(mut self, load: Load, end_v: f64) -> f64 {
        let mut joule = 0.0;
        loop {
            let (v, r0) = self.source();
            let amps = match load {
                Load::Amps(a) => a,
                Load::Watts(p) => 2.0 * p / (v + (v * v - 4.0 * r0 * p).max(0.0).sqrt()),
            };
            if v - r0 * amps <= end_v {
                return joule / 3600.0;
            }
            joule += (v - r0 * amps) * amps * self.dt;
            self.step(amps);
        }
    }

    /// Seconds of a charge, constant current then constant voltage.
    fn charge_s(mut self, amps: f64, full_v: f64, end_a: f64) -> f64 {
        let mut seconds = 0.0;
        loop {
            let (v, r0) = self.source();
            let now = amps.min((full_v - v) / r0);
            if now <= end_a {
                return seconds;
            }
            self.step(-now);
            seconds += self.dt;
        }
    }
}

fn off(got: f64, reference: f64) -> f64 {
    (got / reference - 1.0).abs()
}

/// Load, end in volts, Wh of the reference, and what may be missed: 2 % up to
/// 1C and 20 W, 3 % above.
fn discharges() -> Vec<(Chemistry, Load, f64, f64, f64)> {
    use Load::{Amps, Watts};
    let energy = [
        (Amps(1.0), 2.5, 18.781413, 0.02),
        (Amps(2.5), 2.5, 18.266960, 0.02),
        (Amps(5.0), 2.5, 17.505093, 0.02),
        (Amps(10.0), 2.5, 15.871956, 0.03),
        (Amps(5.0), 3.0, 16.509876, 0.02),
        (Amps(10.0), 3.0, 13.816837, 0.03),
        (Watts(5.0), 2.5, 18.593665, 0.02),
        (Watts(10.0), 2.5, 18.084309, 0.02),
        (Watts(20.0), 2.5, 17.100235, 0.02),
        (Watts(30.0), 2.5, 15.764145, 0.03),
    ];
    let lfp = [
        (Amps(0.46), 2.0, 7.070475, 0.02),
        (Amps(2.3), 2.0, 6.016940, 0.02),
        (Amps(4.6), 2.0, 4.876234, 0.03),
    ];
    let power = [(Amps(0.03125), 2.5, 0.641089, 0.02), (Amps(0.15625), 2.5, 0.629101, 0.02)];
    let mut all = Vec::new();
    for (class, runs) in [
        (Chemistry::Energy, &energy[..]),
        (Chemistry::Lfp, &lfp[..]),
        (Chemistry::Power, &power[..]),
    ] {
        all.extend(runs.iter().map(|&(load, end, wh, miss)| (class, load, end, wh, miss)));
    }
    all
}

#[test]
fn one_set_of_figures_gives_every_reference_discharge() {
    for (class, load, end_v, wh, miss) in discharges() {
        let got = Bench::new(class, 25.0, 1.0).discharge(load, end_v);
        assert!(off(got, wh) < miss, "{class:?} {got} against {wh} Wh");
    }
}

/// Wh of a steady discharge in the settled form.
fn settled_wh(class: Chemistry, load: Load, end_v: f64, celsius: f64) -> f64 {
    let (s, cell) = (class.shape(), class.reference_cell());
    let r = cell.resistance_ohm * class.resistance_factor(celsius);
    let (steps, mut wh) = (20_000, 0.0);
    for k in 0..steps {
        let z = 1.0 - f64::from(k) / f64::from(steps);
        let growth = s.empty_gain * class.lag_factor(celsius) * exp(-z / s.empty_scale);
        let whole = r * (s.r0_share + s.r1_share + s.r2_share * (1.0 + growth));
        let v = class.ocv_v(z);
        let amps = match load {
            Load::Amps(a) => a,
            Load::Watts(p) => 2.0 * p / (v + (v * v - 4.0 * whole * p).max(0.0).sqrt()),
        };
        if v - whole * amps < end_v {
            break;
        }
        wh += (v - whole * amps) * cell.capacity_ah / f64::from(steps);
    }
    wh
}

#[test]
fn settled_form_gives_the_same_energies() {
    for (class, load, end_v, wh, miss) in discharges() {
        let got = settled_wh(class, load, end_v, 25.0);
        assert!(off(got, wh) < miss, "{class:?} {got} against {wh} Wh");
    }
}

#[test]
fn charge_takes_as_long_as_the_reference() {
    // Chen2020 from empty to 4.2 V and 0.25 A, at 0.5C and 1C.
    for (amps, seconds) in [(2.5, 8808.73), (5.0, 6035.89)] {
        let got = Bench::new(Chemistry::Energy, 25.0, 0.0).charge_s(amps, 4.2, 0.25);
        assert!(off(got, seconds) < 0.05, "{got} against {seconds} s");
    }
}

#[test]
fn pulses_end_where_the_reference_does() {
    // Chen2020, 10 A for 10 s: charge before, volts at the end.
    for (charge, volts) in
        [(0.1, 2.974075), (0.2, 3.238169), (0.5, 3.510525), (0.8, 3.795149), (0.9, 3.870938)]
    {
        let mut bench = Bench::new(Chemistry::Energy, 25.0, charge);
        for _ in 0..10 {
            bench.step(10.0);
        }
        let (v, r0) = bench.source();
        let got = v - 10.0 * r0;
        assert!((got - volts).abs() < 0.020, "at {charge}: {got} against {volts} V");
    }
}

#[test]
fn a_cell_shows_the_ten_second_resistance_it_was_given() {
    for class in Chemistry::ALL {
        let s = class.shape();
        let slope = class.docv_dz(0.5);
        let shown = s.r0_share
            + (s.r1_share + s.lag1_per_v * slope) * (1.0 - exp(-10.0 / s.tau1_s))
            + (s.r2_share + s.lag2_per_v * slope) * (1.0 - exp(-10.0 / s.tau2_s));
        assert!((shown - 1.0).abs() < 1e-4, "{class:?} shows {shown}");
    }
}

#[test]
fn energy_follows_temperature() {
    // ORegan2022, 0.5C and 0.2C: Wh at 0, 10 and 40 degC over that at 25 degC.
    for (amps, at_25, rest) in [
        (2.5, 17.0400, [(0.0, 15.1610), (10.0, 16.4184), (40.0, 17.3526)]),
        (1.0, 17.7032, [(0.0, 17.2265), (10.0, 17.4694), (40.0, 17.8405)]),
    ] {
        let class = Chemistry::Energy;
        let in_time = |c| Bench::new(class, c, 1.0).discharge(Load::Amps(amps), 2.5);
        let settled = |c| settled_wh(class, Load::Amps(amps), 2.5, c);
        for (celsius, wh) in rest {
            let got = in_time(celsius) / in_time(25.0);
            assert!(off(got, wh / at_25) < 0.03, "{amps} A at {celsius}: {got}");
            let got = settled(celsius) / settled(25.0);
            assert!(off(got, wh / at_25) < 0.03, "{amps} A settled at {celsius}: {got}");
        }
    }
    // Ecker2015, 1C: 0 degC over 25 degC.
    let in_time = |c| Bench::new(Chemistry::Power, c, 1.0).discharge(Load::Amps(0.15625), 2.5);
    assert!(off(in_time(0.0) / in_time(25.0), 0.584255 / 0.629101) < 0.03);
}

#[test]
fn cold_never_helps() {
    for class in Chemistry::ALL {
        assert!((class.resistance_factor(25.0) - 1.0).abs() < 1e-12);
        assert!((class.lag_factor(25.0) - 1.0).abs() < 1e-12);
        assert_eq!(class.capacity_factor(25.0), 1.0);
        let mut last = (f64::INFINITY, f64::INFINITY, 0.0);
        for k in -300..=600 {
            let c = f64::from(k) / 10.0;
            let now = (class.resistance_factor(c), class.lag_factor(c), class.capacity_factor(c));
            assert!(now.0 < last.0 && now.1 < last.1 && now.2 >= last.2, "at {c}");
            assert!(now.0 > 0.2 && now.0 < 20.0 && now.2 <= 1.02, "at {c}");
            last = now;
        }
        for (beyond, end) in [(-273.15, -30.0), (f64::NEG_INFINITY, -30.0), (1e9, 60.0)] {
            assert_eq!(class.resistance_factor(beyond), class.resistance_factor(end));
        }
        assert!(class.resistance_factor(f64::NAN).is_finite());
    }
}

#[test]
fn age_only_takes() {
    for class in Chemistry::ALL {
        assert_eq!(class.fade(0.0), (1.0, 1.0));
        assert_eq!(class.fade(-5.0), (1.0, 1.0));
        let mut last = class.fade(0.0);
        for k in 1..=1000 {
            let now = class.fade(f64::from(k));
            assert!(now.0 < last.0 && now.1 > last.1, "{class:?} at {k}");
            assert!(last.0 - now.0 < 1e-3 && now.1 - last.1 < 1e-2, "{class:?} jumps at {k}");
            last = now;
        }
        assert_eq!(class.fade(5000.0), last);
        assert!(last.0 > 0.5 && last.1 < 2.5);
    }
}

#[test]
fn volts_are_in_order() {
    for class in Chemistry::ALL {
        assert!(class.floor_v() < class.cut_off_v() && class.cut_off_v() < class.full_v());
    }
}
