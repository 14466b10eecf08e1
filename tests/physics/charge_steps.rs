//! Charging against the equations of the cell taken a quarter of a second at a time, without any of
//! the core's steps: the documented form (see `Shape`), explicit, the current from the voltage that is held.

use pitchline_core::physics::cell::CellInTime;
use pitchline_core::physics::charging::{CellCharger, charge_cell};
use pitchline_core::physics::{Chemistry, Shape};
use pitchline_core::{Build, ChargeEnd, Draft, Drive, Slot};

/// Length of a step of the reference, s.
const STEP_S: f64 = 0.25;

/// Seconds and end charge of a charge of a cell until its current has tapered off.
fn in_short_steps(cell: &CellInTime, charger: &CellCharger, from: f64) -> (f64, f64) {
    let (shape, lag, r) = (&cell.shape, cell.lag_ohm, cell.resistance_ohm);
    let ohmic = r * shape.r0_share + cell.joint_ohm;
    let coulomb = 3600.0 * cell.capacity_ah;
    let knee = cell.open.ocv_v(shape.top_from);
    let (mut z, mut quick, mut slow, mut time_s) = (from, 0.0, 0.0, 0.0);
    loop {
        let low = z + lag * (shape.lag1_per_v * quick + shape.lag2_per_v * slow);
        let top = z + lag * shape.top_lag_per_v * quick;
        let mut behind_v = cell.open.ocv_v(low.min(shape.top_from));
        if top > shape.top_from {
            behind_v += cell.open.ocv_v(top) - knee;
        }
        behind_v += r * (shape.r1_share * quick + shape.r2_share * slow);
        let amps = ((charger.hold_v - behind_v) / ohmic).min(charger.current_a).max(0.0);
        if amps <= charger.taper_a || time_s > 400_000.0 {
            return (time_s, z);
        }
        z += amps * STEP_S / coulomb;
        quick += (amps - quick) * STEP_S / shape.tau1_s;
        slow += (amps - slow) * STEP_S / shape.tau2_s;
        time_s += STEP_S;
    }
}

/// One cell of a build with its share of the joints, and its charger, from the documentation.
fn cell_of(build: &Build) -> (CellInTime, CellCharger) {
    let (pack, cell) = (&build.pack, &build.cell);
    let (class, cell_c) = (cell.chemistry, build.charge_air_c());
    let (fade, growth) = class.fade(pack.cycles);
    let rated = cell.resistance_10s_ohm * growth;
    let capacity_ah = cell.capacity_ah * fade;
    let charger = CellCharger {
        current_a: (build.charger.current_a / pack.parallel).min(cell.max_charge_a),
        hold_v: (build.charger.full_v / pack.series).min(class.full_v()),
        taper_a: 0.05 * capacity_ah,
        target: 1.0,
        until_s: f64::INFINITY,
    };
    let in_time = CellInTime {
        open: class,
        shape: class.shape(),
        resistance_ohm: rated * class.resistance_factor(cell_c),
        lag_ohm: rated * class.lag_factor(cell_c),
        joint_ohm: pack.joints_ohm * pack.parallel / pack.series,
        capacity_ah,
    };
    (in_time, charger)
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
    let (cell, charger) = cell_of(build);
    let (seconds, end) = in_short_steps(&cell, &charger, from);
    [found.time_s / seconds - 1.0, found.end_charge - end]
}

/// Random numbers by a linear congruence (Numerical Recipes' constants, from memory).
struct Draw(u64);

impl Draw {
    fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_mul(1_664_525).wrapping_add(1_013_904_223) % (1 << 32);
        low + (high - low) * self.0 as f64 / 4_294_967_296.0
    }
}

/// A cell that lags far: LFP with one surface, which the whole steep end is read at. `growth` is
/// that of its resistance in the cold, 2.4 at 0 °C; the lag grows with its square.
///
/// A step of constant current rings here: a current that is too high lifts the volts that the next
/// one is found from.
fn far_lagging(growth: f64, joint_ohm: f64, capacity_ah: f64) -> CellInTime {
    let shape = Shape {
        r0_share: 0.99,
        r1_share: 0.0,
        r2_share: 0.2,
        tau1_s: 12.0,
        tau2_s: 445.0,
        lag1_per_v: 0.0,
        lag2_per_v: 2.5,
        top_from: 1.0,
        top_lag_per_v: 0.0,
    };
    let resistance_ohm = 0.06 / capacity_ah * growth;
    let lag_ohm = resistance_ohm * growth;
    CellInTime { open: Chemistry::Lfp, shape, resistance_ohm, lag_ohm, joint_ohm, capacity_ah }
}

#[test]
fn cells_that_lag_far_charge_as_long_as_in_short_steps() {
    let mut draw = Draw(7);
    // 12 in series and 4 in parallel of 3 Ah, 4 A, at 25, 10 and 0 °C; then 200 others.
    let own = [1.0, 1.6, 2.4].map(|growth| (far_lagging(growth, 0.0, 3.0), 1.0, 0.2));
    let others = (0..200).map(|_| {
        let capacity_ah = draw.between(1.5, 6.0);
        let joint_ohm = draw.between(0.0, 0.06) / capacity_ah;
        let cell = far_lagging(draw.between(0.8, 3.6), joint_ohm, capacity_ah);
        (cell, capacity_ah * draw.between(0.12, 1.0), draw.between(0.0, 0.8))
    });
    let mut worst = 0.0_f64;
    for (cell, current_a, from) in own.into_iter().chain(others.collect::<Vec<_>>()) {
        let charger = CellCharger {
            current_a,
            hold_v: 3.6,
            taper_a: 0.05 * cell.capacity_ah,
            target: 1.0,
            until_s: f64::INFINITY,
        };
        let found = charge_cell(&cell, from, &charger, |_| {});
        let (seconds, end) = in_short_steps(&cell, &charger, from);
        let off = [found.end.time_s / seconds - 1.0, found.end.charge - end];
        worst = worst.max(off[0].abs());
        let within = off[0].abs() < 0.01 && off[1].abs() < 0.01;
        assert!(within, "{off:?}: {current_a} A from {from} into {cell:?}");
    }
    println!("worst of 203 that lag far: time {worst:.4}");
}

/// Lithium iron phosphate, whose voltage is flat and then steep, from 20 % to full.
#[test]
fn lfp_charges_as_long_as_in_short_steps() {
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

/// 200 boards of LFP and 60 each of the others.
#[test]
fn any_board_charges_as_long_as_in_short_steps() {
    let mut draws = Draw(0x5eed);
    let mut draw = |low: f64, high: f64| draws.between(low, high);
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
            let within = found[0].abs() < 0.01 && found[1].abs() < 0.01;
            assert!(within, "class {class}: {found:?} {build:?}");
            worst = [worst[0].max(found[0].abs()), worst[1].max(found[1].abs())];
        }
    }
    println!("worst of 320 boards: time {:.4}, end charge {:.4}", worst[0], worst[1]);
}
