//! A cell that a charger holds at a voltage: its state by implicit steps.
//!
//! The current that holds the voltage follows from the state, `I = (V_hold − V_behind) / R_0`, so
//! the state has an ordinary differential equation. Where the open-circuit voltage is steep it is
//! stiff: an explicit step, or one of a constant current, rings there.

use super::cell::{CellInTime, CellState, OpenCircuit};
use crate::math::{abs, share};

/// Of charge and both filters.
type Triple = [f64; 3];

/// `a + f · b`.
fn plus(a: Triple, f: f64, b: Triple) -> Triple {
    let ([a, b, c], [x, y, z]) = (a, b);
    [a + f * x, b + f * y, c + f * z]
}

fn dot(a: Triple, b: Triple) -> f64 {
    let ([a, b, c], [x, y, z]) = (a, b);
    a * x + b * y + c * z
}

/// A cell at a moment at which the voltage is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Held {
    /// Its charge and filters.
    state: Triple,
    /// Their change, 1/s.
    rate: Triple,
    /// Change of the charging current with each of them.
    slope: Triple,
    /// The charging current, A; negative where the cell has more than the volts held.
    pub(super) current_a: f64,
    /// Its change, A/s.
    fall_a_s: f64,
}

impl Held {
    /// Charge, as a share.
    pub(super) const fn charge(&self) -> f64 {
        let [charge, ..] = self.state;
        charge
    }
}

/// Charge and current on the way from one moment to the next: cubics through both ends with their
/// slopes there.
#[derive(Clone, Copy, Debug)]
pub(super) struct Between<'a> {
    pub(super) from: &'a Held,
    pub(super) to: &'a Held,
    pub(super) step_s: f64,
}

impl Between<'_> {
    /// Charge at a part of the step.
    pub(super) fn charge(&self, part: f64) -> f64 {
        let ([a, ..], [b, ..]) = (self.from.rate, self.to.rate);
        cubic(part, [self.from.charge(), self.to.charge()], [a * self.step_s, b * self.step_s])
    }

    /// Charging current at a part of the step, A.
    pub(super) fn current_a(&self, part: f64) -> f64 {
        let slopes = [self.from.fall_a_s * self.step_s, self.to.fall_a_s * self.step_s];
        cubic(part, [self.from.current_a, self.to.current_a], slopes)
    }
}

/// The cubic with two ends and two slopes (Hermite), at a part of the way.
fn cubic(t: f64, [a, b]: [f64; 2], [slope_a, slope_b]: [f64; 2]) -> f64 {
    let u = 1.0 - t;
    u * u * ((1.0 + 2.0 * t) * a + t * slope_a) + t * t * ((1.0 + 2.0 * u) * b - u * slope_b)
}

/// Share of the charge, and of the current, that a step may be off by.
const ERROR_CHARGE: f64 = 1e-5;
const ERROR_CURRENT: f64 = 2e-3;

/// A cell and the volts at which it is held.
#[derive(Clone, Copy, Debug)]
pub(super) struct Holding<'a, O> {
    pub(super) cell: &'a CellInTime<O>,
    pub(super) hold_v: f64,
}

impl<O: OpenCircuit> Holding<'_, O> {
    /// The cell in a state.
    pub(super) fn at(&self, state: &CellState) -> Held {
        self.held([state.charge, state.quick_a, state.slow_a])
    }

    fn held(&self, state: Triple) -> Held {
        let [charge, quick_a, slow_a] = state;
        let (behind_v, [of_charge, of_quick, of_slow]) =
            self.cell.behind_and_slopes(&CellState { charge, quick_a, slow_a });
        let over = -1.0 / self.ohmic();
        let current_a = (behind_v - self.hold_v) * over;
        let slope = [of_charge * over, of_quick * over, of_slow * over];
        let rate = self.rate(state, current_a);
        Held { state, rate, slope, current_a, fall_a_s: dot(slope, rate) }
    }

    fn ohmic(&self) -> f64 {
        self.cell.ohmic_ohm().max(1e-9)
    }

    /// Change of a state under a charging current, 1/s; the filters count discharge as positive.
    fn rate(&self, [_, quick_a, slow_a]: Triple, current_a: f64) -> Triple {
        let shape = &self.cell.shape;
        [
            current_a / (3600.0 * self.cell.capacity_ah),
            (-current_a - quick_a) / shape.tau1_s,
            (-current_a - slow_a) / shape.tau2_s,
        ]
    }

    fn rate_at(&self, state: Triple) -> Triple {
        let [charge, quick_a, slow_a] = state;
        let behind_v = self.cell.behind_v(&CellState { charge, quick_a, slow_a });
        self.rate(state, (self.hold_v - behind_v) / self.ohmic())
    }

    /// A step, and its error: 1 is as much as may be.
    ///
    /// RODAS3 of third order, stiffly accurate and L-stable, with an embedded error of second
    /// order: four stages with one Jacobian, which is a rank-one matrix and a diagonal, so that
    /// each stage is solved in closed form (Sherman and Morrison).
    ///
    /// Source: Sandu et al., Atmos. Environ. 31 (1997) 3459-3472, coefficients from memory;
    /// `its_error_falls_with_the_cube_of_the_step` holds the order.
    pub(super) fn step(&self, from: &Held, step_s: f64) -> (Held, f64) {
        let (shape, per_s) = (&self.cell.shape, 1.0 / step_s);
        // (diagonal − push slopeᵀ) k = right side.
        let push = self.rate([0.0; 3], 1.0);
        let diagonal =
            [2.0 * per_s, 2.0 * per_s + 1.0 / shape.tau1_s, 2.0 * per_s + 1.0 / shape.tau2_s];
        let divided = |[x, y, z]: Triple| {
            let [a, b, c] = diagonal;
            [x / a, y / b, z / c]
        };
        let pushed = divided(push);
        // At least 1: more charge never takes more current.
        let bulk = 1.0 - dot(from.slope, pushed);
        let solved = |right: Triple| {
            let alone = divided(right);
            plus(alone, dot(from.slope, alone) / bulk, pushed)
        };
        let one = solved(from.rate);
        let two = solved(plus(from.rate, 4.0 * per_s, one));
        let at = plus(from.state, 2.0, one);
        let carried = plus(plus([0.0; 3], per_s, one), -per_s, two);
        let three = solved(plus(self.rate_at(at), 1.0, carried));
        let at = plus(at, 1.0, three);
        let carried = plus(carried, -8.0 / 3.0 * per_s, three);
        let four = solved(plus(self.rate_at(at), 1.0, carried));
        let [charge, quick_a, slow_a] = plus(at, 1.0, four);
        let to = self.held([share(charge), quick_a, slow_a]);
        let [charge_off, ..] = four;
        let current_off = dot(to.slope, four) / from.current_a;
        let error = abs(charge_off) / ERROR_CHARGE + abs(current_off) / ERROR_CURRENT;
        (to, if error.is_finite() { error } else { f64::INFINITY })
    }
}

#[cfg(test)]
mod tests {
    use super::{Between, Held, Holding};
    use crate::math::abs;
    use crate::physics::cell::{CellInTime, CellState, OpenCircuit};
    use crate::physics::{Chemistry, Shape};

    fn cell(lag2_per_v: f64) -> CellInTime {
        let shape = Shape { lag2_per_v, ..Chemistry::Energy.shape() };
        let open = Chemistry::Energy;
        CellInTime {
            open,
            shape,
            resistance_ohm: 0.03,
            lag_ohm: 0.03,
            joint_ohm: 0.01,
            capacity_ah: 5.0,
        }
    }

    /// After some steps of one length from a state near full.
    fn after(cell: &CellInTime, steps: u32, step_s: f64) -> Held {
        let holding = Holding { cell, hold_v: 4.2 };
        let begin = CellState { charge: 0.9, quick_a: -2.0, slow_a: -1.8 };
        (0..steps).fold(holding.at(&begin), |held, _| holding.step(&held, step_s).0)
    }

    /// Three steps of twice the length differ by eight times as much (within the table's own
    /// corners of the slope's slope).
    #[test]
    fn its_error_falls_with_the_cube_of_the_step() {
        let cell = cell(0.3);
        let at = |steps: u32| after(&cell, steps, 240.0 / f64::from(steps)).current_a;
        let (coarse, half, fine) = (at(24), at(48), at(3072));
        let ratio = (coarse - fine) / (half - fine);
        assert!(ratio > 5.0 && ratio < 14.0, "{ratio}: {coarse} {half} {fine}");
    }

    /// As steep as the end of a table, and straight.
    struct Line;

    impl OpenCircuit for Line {
        fn ocv_v(&self, charge: f64) -> f64 {
            3.6 + 30.0 * (charge - 0.9)
        }

        fn docv_dz(&self, _charge: f64) -> f64 {
            30.0
        }
    }

    /// A step of days neither rings nor grows: next to nothing is left of the current.
    #[test]
    fn a_long_step_ends_at_rest() {
        for lag_ohm in [0.0, 0.03, 0.3] {
            let CellInTime { shape, resistance_ohm, joint_ohm, capacity_ah, .. } = cell(2.5);
            let cell =
                CellInTime { open: Line, shape, resistance_ohm, lag_ohm, joint_ohm, capacity_ah };
            let holding = Holding { cell: &cell, hold_v: 3.6 };
            let begin = holding.at(&CellState::rested(0.89));
            let (held, _) = holding.step(&begin, 1e6);
            assert!(begin.current_a > 5.0, "{begin:?}");
            assert!(abs(held.current_a) < 1e-3 * begin.current_a, "{held:?}");
            assert!(abs(held.charge() - 0.9) < 0.1 * 0.01, "{held:?}");
        }
    }

    /// Amid a step its cubics are what two halves of it come to.
    #[test]
    fn amid_a_step_it_is_where_half_of_it_ends() {
        let cell = cell(0.3);
        let (from, to, amid) = (after(&cell, 0, 8.0), after(&cell, 1, 8.0), after(&cell, 4, 1.0));
        let way = Between { from: &from, to: &to, step_s: 8.0 };
        assert!(abs(way.current_a(0.5) / amid.current_a - 1.0) < 2e-3, "{way:?} {amid:?}");
        assert!(abs(way.charge(0.5) - amid.charge()) < 1e-6, "{way:?} {amid:?}");
        assert_eq!((way.charge(1.0), way.current_a(1.0)), (to.charge(), to.current_a));
    }
}
