//! Charging against the equations of the cell taken a second at a time, without any of the core's
//! steps: the documented form (see `Shape`), explicit, the current from the voltage that is held.

use pitchline_core::physics::Chemistry;
use pitchline_core::{Build, ChargeEnd, Draft, Drive, Slot};

/// Length of a step of the reference, s.
const STEP_S: f64 = 1.0;

/// Hours and end charge of a charge of one cell of a build until the current has tapered off.
fn a_second_at_a_time(build: &Build, from: f64) -> (f64, f64) {
    let (pack, cell, charger) = (&build.pack, &build.cell, &build.charger);
    let class: Chemistry = cell.chemistry;
    let (shape, cell_c) = (class.shape(), build.charge_air_c());
    let (fade, growth) = class.fade(pack.cycles);
    let rated = cell.resistance_10s_ohm * growth;
    let (r, lag) = (rated * class.resistance_factor(cell_c), rated * class.lag_factor(cell_c));
    let ohmic = r * shape.r0_share + pack.joints_ohm * pack.parallel / pack.series;
    let coulomb = 3600.0 * cell.capacity_ah * fade;
    let most_a = (charger.current_a / pack.parallel).min(cell.max_charge_a);
    let hold_v = (charger.full_v / pack.series).min(class.full_v());
    let taper_a = 0.05 * cell.capacity_ah * fade;
    let knee = class.ocv_v(shape.top_from);
    let (mut z, mut quick, mut slow, mut time_s) = (from, 0.0, 0.0, 0.0);
    loop {
        let low = z + lag * (shape.lag1_per_v * quick + shape.lag2_per_v * slow);
        let top = z + lag * shape.top_lag_per_v * quick;
        let mut behind_v = class.ocv_v(low.min(shape.top_from));
        if top > shape.top_from {
            behind_v += class.ocv_v(top) - knee;
        }
        behind_v += r * (shape.r1_share * quick + shape.r2_share * slow);
        let amps = ((hold_v - behind_v) / ohmic).min(most_a).max(0.0);
        if amps <= taper_a || time_s > 400_000.0 {
            return (time_s / 3600.0, z);
        }
        z += amps * STEP_S / coulomb;
        quick += (amps - quick) * STEP_S / shape.tau1_s;
        slow += (amps - slow) * STEP_S / shape.tau2_s;
        time_s += STEP_S;
    }
}

/// A board whose charger ends by its taper: of a class, at a temperature.
fn board(changes: &[(Slot, &str, f64)]) -> Build {
    let mut draft = Draft::typical();
    for (slot, key, value) in changes {
        draft.set(*slot, key, *value);
    }
    Build::check(&draft).expect("in range")
}

/// By how much time, as a share, and end charge differ.
fn off(build: &Build, from: f64) -> [f64; 2] {
    let found = Drive::new(build).charge(from, 1.0).expect("it charges");
    assert_ne!(found.end, ChargeEnd::Time);
    let (hours, end) = a_second_at_a_time(build, from);
    [found.time_s / 3600.0 / hours - 1.0, found.end_charge - end]
}

/// Lithium iron phosphate, whose voltage is flat and then steep, from 20 % to full.
#[test]
fn lfp_charges_as_long_as_a_second_at_a_time() {
    for air_c in [0.0, 5.0, 10.0, 25.0, 40.0] {
        let build = board(&[
            (Slot::Cell, "chemistry", 2.0),
            (Slot::Cell, "capacity_ah", 3.0),
            (Slot::Cell, "resistance_10s_mohm", 20.0),
            (Slot::Cell, "full_v", 3.6),
            (Slot::Pack, "series", 12.0),
            (Slot::Pack, "parallel", 4.0),
            (Slot::Charger, "full_v", 43.2),
            (Slot::Charger, "current_a", 4.0),
            (Slot::Place, "air_c", air_c),
        ]);
        let [time, end] = off(&build, 0.2);
        assert!(time.abs() < 0.01 && end.abs() < 0.01, "{air_c} °C: {time} {end}");
    }
}

/// 200 boards of LFP and 60 each of the others, drawn by a linear congruence (Numerical Recipes'
/// constants, from memory).
#[test]
fn any_board_charges_as_long_as_a_second_at_a_time() {
    let mut seed = 0x5eed_u64;
    let mut draw = |low: f64, high: f64| {
        seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223) % (1 << 32);
        low + (high - low) * seed as f64 / 4_294_967_296.0
    };
    let mut worst = [0.0_f64; 2];
    for (class, full_v, count) in [(2.0, 3.6, 200), (0.0, 4.2, 60), (1.0, 4.2, 60)] {
        for _ in 0..count {
            let (series, parallel) = (draw(6.0, 20.0).floor(), draw(1.0, 8.0).floor());
            let capacity_ah = draw(1.5, 6.0);
            let build = board(&[
                (Slot::Cell, "chemistry", class),
                (Slot::Cell, "capacity_ah", capacity_ah),
                (Slot::Cell, "resistance_10s_mohm", draw(15.0, 90.0) / capacity_ah),
                (Slot::Cell, "max_charge_a", capacity_ah),
                (Slot::Cell, "full_v", full_v),
                (Slot::Pack, "series", series),
                (Slot::Pack, "parallel", parallel),
                (Slot::Pack, "joints_mohm", draw(1.0, 60.0)),
                (Slot::Pack, "cycles", draw(0.0, 500.0).floor()),
                (Slot::Charger, "full_v", series * full_v),
                (Slot::Charger, "current_a", draw(0.15, 1.0) * parallel * capacity_ah),
                (Slot::Place, "air_c", draw(0.0, 40.0)),
            ]);
            let found = off(&build, draw(0.0, 0.8));
            let within = found[0].abs() < 0.02 && found[1].abs() < 0.01;
            assert!(within, "class {class}: {found:?} {build:?}");
            worst = [worst[0].max(found[0].abs()), worst[1].max(found[1].abs())];
        }
    }
    println!("worst of 320 boards: time {:.4}, end charge {:.4}", worst[0], worst[1]);
}
