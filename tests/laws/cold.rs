//! A cell in the cold, kept at one temperature throughout.

use crate::cases;
use pitchline_core::physics::Chemistry;
use pitchline_core::physics::cell::{CellInTime, CellState, Decay};
use proptest::prelude::*;

/// Wh of the reference cell of a class, from full down to a voltage.
fn wh(class: Chemistry, celsius: f64, rate: f64, stop_v: f64) -> f64 {
    let reference = class.reference_cell();
    let cell = CellInTime {
        open: class,
        shape: class.shape(),
        resistance_ohm: reference.resistance_ohm * class.resistance_factor(celsius),
        lag_ohm: reference.resistance_ohm * class.lag_factor(celsius),
        joint_ohm: 0.0,
        capacity_ah: reference.capacity_ah * class.capacity_factor(celsius),
    };
    let amps = rate * reference.capacity_ah;
    let decay = Decay::new(&cell.shape, 2.0 / rate);
    let (mut state, mut wh) = (CellState::rested(1.0), 0.0);
    loop {
        let source = cell.source(&state, &decay, amps);
        let volts = source.open_v - source.resistance_ohm * amps;
        // The step in which it falls below counts in part, lest steps show.
        let end_v = cell.volts(&cell.after(&state, &decay, amps), amps);
        let step_wh = volts * amps * decay.step_s / 3600.0;
        if end_v <= stop_v {
            let begin_v = cell.volts(&state, amps);
            return wh + step_wh * ((begin_v - stop_v) / (begin_v - end_v)).clamp(0.0, 1.0);
        }
        wh += step_wh;
        state = cell.after(&state, &decay, amps);
    }
}

fn class() -> impl Strategy<Value = Chemistry> {
    prop::sample::select(Chemistry::ALL.to_vec())
}

proptest! {
    #![proptest_config(cases(400))]

    #[test]
    fn a_colder_cell_never_delivers_more(
        class in class(), cold in -20.0..40.0_f64, by in 0.0..60.0_f64, rate in 0.1..2.0_f64,
        stop_v in 2.5..3.0_f64,
    ) {
        let warm = (cold + by).min(40.0);
        let (less, more) = (wh(class, cold, rate, stop_v), wh(class, warm, rate, stop_v));
        prop_assert!(less <= more * (1.0 + 1e-9), "{less} Wh at {cold}, {more} Wh at {warm}");
    }
}

/// Nothing collapses: above −15 °C and up to 0.5C, from one kelvin to the next
/// goes at most 3 % of what the cell delivers at 25 °C; 4.5 % if it stops at
/// 3 V, which a cold cell comes to under its load alone.
#[test]
fn cold_takes_little_by_little() {
    for class in Chemistry::ALL {
        for rate in [0.1, 0.2, 0.3, 0.4, 0.5] {
            for (stop_v, most) in [(2.5, 0.03), (2.8, 0.03), (3.0, 0.045)] {
                let at = |celsius: i32| wh(class, f64::from(celsius), rate, stop_v);
                let (whole, mut last) = (at(25), at(-15));
                for celsius in -14..=40 {
                    let now = at(celsius);
                    let gained = (now - last) / whole;
                    assert!(
                        gained < most,
                        "{class:?} at {rate}C to {stop_v} V: {gained} from {celsius} °C down by one"
                    );
                    last = now;
                }
            }
        }
    }
}
