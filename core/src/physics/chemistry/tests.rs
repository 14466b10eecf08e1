//! The open-circuit tables against their published sets, and laws that hold for
//! any figures. `tests/physics/cell.rs` holds the cell in time to whole runs.

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

#[test]
fn what_is_less_sure_is_told_and_wider() {
    use super::Basis::{CommonPractice, Extrapolated, PublishedModel};
    for (class, celsius, basis) in [
        (Chemistry::Energy, 0.0, PublishedModel),
        (Chemistry::Energy, -10.0, PublishedModel),
        (Chemistry::Energy, -15.0, Extrapolated),
        (Chemistry::Power, -15.0, Extrapolated),
        (Chemistry::Lfp, 20.0, PublishedModel),
        (Chemistry::Lfp, 10.0, CommonPractice),
    ] {
        assert_eq!(class.basis(celsius), basis, "{class:?} at {celsius} °C");
    }
    for class in Chemistry::ALL {
        let mut last = class.resistance_spread(-80.0);
        assert!((last - 0.6).abs() < 1e-12);
        for celsius in -40..=40 {
            let now = class.resistance_spread(f64::from(celsius));
            assert!(now <= last && now >= 0.2, "{class:?} at {celsius} °C: {now}");
            last = now;
        }
        assert!((last - 0.2).abs() < 1e-12);
        assert!(class.resistance_spread(f64::NAN).is_finite());
    }
    assert!(Chemistry::Lfp.resistance_spread(-10.0) > Chemistry::Energy.resistance_spread(-10.0));
}
