//! Charging, and the cell in time under it: closed forms on a straight
//! open-circuit line, reference runs, and what the trade expects.

use crate::board::drive;
use crate::check::{Check, check, holds};
use pitchline_core::physics::cell::{CellInTime, CellState, Decay, OpenCircuit};
use pitchline_core::physics::charging::{CellCharger, charge_cell};
use pitchline_core::physics::{Chemistry, Shape};
use pitchline_core::{Build, Charge, ChargeEnd, ChargeLimit, Draft, Slot, explain_charge};

const EXPONENTIALS: &str = "closed form: two exponentials, check value by SciPy";
const LINEAR: &str = "closed form: constant current, then I exp(-t / tau), tau = R Q / (dV/dz)";
const CHEN: &str = "Chen2020 run by PyBaMM 26.10.1.1, tests/fixture/cells";
const PRACTICE: &str = "common practice, no source: within 15 %";
const BY_HAND: &str = "worked out by hand";

/// An open circuit on a straight line.
struct Line {
    empty_v: f64,
    full_v: f64,
}

impl OpenCircuit for Line {
    fn ocv_v(&self, charge: f64) -> f64 {
        self.empty_v + (self.full_v - self.empty_v) * charge
    }

    fn docv_dz(&self, _charge: f64) -> f64 {
        self.full_v - self.empty_v
    }
}

const OHMIC: Shape = Shape {
    r0_share: 1.0,
    r1_share: 0.0,
    r2_share: 0.0,
    tau1_s: 15.0,
    tau2_s: 180.0,
    lag1_per_v: 0.0,
    lag2_per_v: 0.0,
    top_from: 1.0,
    top_lag_per_v: 0.0,
};

/// A cell without lag on a line.
fn plant(empty_v: f64, full_v: f64, shape: Shape, resistance_ohm: f64) -> CellInTime<Line> {
    let open = Line { empty_v, full_v };
    CellInTime { open, shape, resistance_ohm, lag_ohm: 0.0, joint_ohm: 0.0, capacity_ah: 5.0 }
}

fn pulse() -> Vec<Check> {
    // OCV 3.75 V, 20 mOhm, 10 mOhm with 15 s, 15 mOhm with 180 s; 10 A.
    let shape = Shape { r0_share: 20.0, r1_share: 10.0, r2_share: 15.0, ..OHMIC };
    let cell = plant(3.75, 3.75, shape, 1e-3);
    let mut checks = Vec::new();
    for (seconds, volts) in
        [(1.0, 3.542_719_68), (10.0, 3.493_235_63), (60.0, 3.409_311_26), (300.0, 3.328_331_34)]
    {
        // In one step and in many: filters are exact at any length.
        for steps in [1, 7] {
            let decay = Decay::new(&cell.shape, seconds / f64::from(steps));
            let mut state = CellState::rested(0.5);
            let mut mean = 0.0;
            for _ in 0..steps {
                let source = cell.source(&state, &decay, 10.0);
                mean += (source.open_v - 10.0 * source.resistance_ohm) / f64::from(steps);
                state = cell.after(&state, &decay, 10.0);
            }
            let name = format!("two filters after {seconds} s in {steps}");
            checks.push(check(name, cell.volts(&state, 10.0), volts, 1e-8, EXPONENTIALS));
            // Mean of the same exponentials.
            let drop = |ohm: f64, tau: f64| {
                let x: f64 = seconds / tau;
                10.0 * ohm * (1.0 - (1.0 - (-x).exp()) / x)
            };
            let want = 3.75 - 0.2 - drop(0.010, 15.0) - drop(0.015, 180.0);
            let name = format!("mean volts over {seconds} s in {steps}");
            checks.push(check(name, mean, want, 1e-9, "closed form: integral of the exponentials"));
        }
    }
    checks
}

fn line() -> Vec<Check> {
    let cell = plant(3.3, 4.2, OHMIC, 0.040);
    let charger = CellCharger {
        current_a: 2.5,
        hold_v: 4.2,
        taper_a: 0.25,
        target: 1.0,
        until_s: f64::INFINITY,
    };
    let mut last = 0.0;
    let mut ordered = true;
    let found = charge_cell(&cell, 0.0, &charger, |moment| {
        ordered &= moment.time_s >= last;
        last = moment.time_s;
    });
    let ah = |share: f64| 5.0 * share;
    // 2.5 A against 3.3 V to 4.2 V and 0.1 V of sag: joules by integral.
    let first_wh = 2.5 * (6400.0 / 3600.0) * (0.5 * (3.4 + 4.2));
    let then_wh = 4.2 * 0.5;
    // After 7000 s: 600 s of the fall.
    let until = CellCharger { until_s: 7000.0, ..charger };
    let by_then = charge_cell(&cell, 0.0, &until, |_| {});
    let left = 2.5 * (-600.0_f64 / 800.0).exp();
    vec![
        check("line: time at constant current", found.hold.time_s, 6400.0, 6.4, LINEAR),
        check("line: whole time", found.end.time_s, 8_242.068_074, 8.2, LINEAR),
        check("line: charge at constant current", ah(found.hold.charge), 4.444_444, 0.004, LINEAR),
        check("line: charge at the end", ah(found.end.charge), 4.944_444, 0.005, LINEAR),
        check("line: energy", found.energy_wh, first_wh + then_wh, 0.018, LINEAR),
        check("line: current after 7000 s", by_then.end.current_a, left, 0.002, LINEAR),
        check("line: time after 7000 s", by_then.end.time_s, 7000.0, 1e-6, BY_HAND),
        holds("line: tapered", found.tapered && !by_then.tapered, BY_HAND),
        holds("line: told in order", ordered && (last - found.end.time_s).abs() < 1e-9, BY_HAND),
    ]
}

/// A pack of one cell's kind without joints, with a charger.
fn pack(series: f64, parallel: f64, charger_a: f64, changes: &[(Slot, &str, f64)]) -> Draft {
    let mut draft = Draft::typical();
    for (slot, key, value) in [
        (Slot::Pack, "series", series),
        (Slot::Pack, "parallel", parallel),
        (Slot::Pack, "joints_mohm", 0.0),
        (Slot::Charger, "full_v", 4.2 * series),
        (Slot::Charger, "current_a", charger_a),
        (Slot::Place, "air_c", 25.0),
    ]
    .iter()
    .chain(changes)
    {
        draft.set(*slot, key, *value);
    }
    draft
}

fn charge(draft: &Draft, from: f64, to: f64) -> Charge {
    drive(draft).charge(from, to).expect("charger and pack belong together")
}

fn reference() -> Vec<Check> {
    let cell = Chemistry::Energy.reference_cell();
    let mut checks = Vec::new();
    // Time at constant current, whole time, Wh in.
    for (amps, first, whole, wh) in
        [(2.5, 6355.31, 8808.73, 19.546_853), (5.0, 2548.26, 6035.89, 19.998_434)]
    {
        let draft = pack(
            3.0,
            1.0,
            amps,
            &[
                (Slot::Cell, "capacity_ah", cell.capacity_ah),
                (Slot::Cell, "resistance_10s_mohm", 1000.0 * cell.resistance_ohm),
                (Slot::Cell, "max_charge_a", 20.0),
            ],
        );
        let found = charge(&draft, 0.0, 1.0);
        let name = |what: &str| format!("{amps} A into the reference cell: {what}");
        checks.extend([
            check(name("whole time"), found.time_s, whole, 0.05 * whole, CHEN),
            check(name("constant current"), found.constant_current_s, first, 0.05 * first, CHEN),
            check(name("energy"), found.pack_wh / 3.0, wh, 0.02 * wh, CHEN),
            holds(name("ends by itself"), found.end == ChargeEnd::Taper, CHEN),
        ]);
    }
    checks
}

fn practice() -> Vec<Check> {
    let mut checks = Vec::new();
    for (amps, hours) in [(3.0, 3.5), (5.0, 2.0)] {
        let draft = pack(10.0, 3.0, amps, &[]);
        let got = charge(&draft, 0.0, 1.0).time_s / 3600.0;
        let name = format!("9 Ah by {amps} A");
        checks.push(holds(name, (got / hours - 1.0).abs() < 0.15, PRACTICE));
    }
    checks
}

fn bill() -> Vec<Check> {
    let price = (Slot::Place, "energy_price_kwh", 0.40);
    let changes = [price, (Slot::Charger, "efficiency_percent", 80.0)];
    let draft = pack(10.0, 3.0, 6.0, &changes);
    let found = charge(&draft, 0.2, 0.6);
    // 3 cells in parallel that take 3 A each allow the charger's 6 A.
    let slow = charge(&pack(10.0, 3.0, 6.0, &[(Slot::Cell, "max_charge_a", 1.0)]), 0.2, 0.6);
    let build = Build::check(&draft).expect("in range");
    let steps = explain_charge(&build, 0.2, 0.6).expect("it charges");
    let cost = found.cost.unwrap_or_default();
    vec![
        // Below the hold only: 3.6 Ah at 6 A.
        check("0.4 of 9 Ah at 6 A", found.time_s, 2160.0, 2160.0 * 1e-9, BY_HAND),
        check("wall energy", found.wall_wh, found.pack_wh / 0.8, 1e-9, BY_HAND),
        check("cost", cost, 0.40 * found.wall_wh / 1000.0, 1e-12, BY_HAND),
        check("cells that take 3 A together", slow.time_s, 4320.0, 1e-5, BY_HAND),
        holds("the charger sets it", found.limit == ChargeLimit::Charger, BY_HAND),
        holds("the cells set it", slow.limit == ChargeLimit::Cells, BY_HAND),
        holds("it ends at the target", found.end == ChargeEnd::Target, BY_HAND),
        holds(
            "the working ends at the cost",
            steps.last().is_some_and(|step| step.result == cost),
            BY_HAND,
        ),
    ]
}

pub(crate) fn checks() -> Vec<Check> {
    [pulse(), line(), reference(), practice(), bill()].concat()
}
