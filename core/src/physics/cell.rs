//! A cell in time: charge, two filtered currents, and the surfaces that run
//! ahead of the charge. The form stands at [`Shape`].

use super::{Chemistry, Shape};
use crate::math::{exp, share};

/// An open-circuit voltage over charge.
pub trait OpenCircuit {
    /// Volts at a charge between 0 and 1, held at the ends beyond.
    fn ocv_v(&self, charge: f64) -> f64;
    /// Their slope, V for the whole charge.
    fn docv_dz(&self, charge: f64) -> f64;
    /// Volts and their slope.
    fn ocv_and_slope(&self, charge: f64) -> (f64, f64) {
        (self.ocv_v(charge), self.docv_dz(charge))
    }
}

impl OpenCircuit for Chemistry {
    fn ocv_v(&self, charge: f64) -> f64 {
        Chemistry::ocv_v(*self, charge)
    }

    fn docv_dz(&self, charge: f64) -> f64 {
        Chemistry::docv_dz(*self, charge)
    }

    fn ocv_and_slope(&self, charge: f64) -> (f64, f64) {
        Chemistry::ocv_and_slope(*self, charge)
    }
}

impl Shape {
    /// The open-circuit voltage, V, at the charge of the two surfaces: `low` up to the knee, `top`
    /// for what the voltage rises above it.
    #[must_use]
    pub fn surface_v<O: OpenCircuit>(&self, open: &O, low: f64, top: f64) -> f64 {
        let knee = self.top_from;
        let below = open.ocv_v(low.min(knee));
        if top > knee { below + open.ocv_v(top) - open.ocv_v(knee) } else { below }
    }
}

/// What does not change while a cell is charged or ridden at one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CellInTime<O = Chemistry> {
    /// Its open-circuit voltage.
    pub open: O,
    /// The make-up of its resistance.
    pub shape: Shape,
    /// What the shares of the shape are shares of, ohm.
    pub resistance_ohm: f64,
    /// What the lag's shares are shares of, ohm.
    pub lag_ohm: f64,
    /// A resistance outside the cell that its current passes, ohm.
    pub joint_ohm: f64,
    /// Capacity, Ah.
    pub capacity_ah: f64,
}

/// A cell at one moment; currents count discharge as positive.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CellState {
    /// Charge, as a share.
    pub charge: f64,
    /// Current through the quick filter, A.
    pub quick_a: f64,
    /// Current through the slow filter, A.
    pub slow_a: f64,
}

impl CellState {
    /// At rest for long, at a charge, a share from 0 to 1.
    #[must_use]
    pub const fn rested(charge: f64) -> Self {
        Self { charge, quick_a: 0.0, slow_a: 0.0 }
    }
}

/// How far the two filters get in a step: what is left of a difference at its
/// end, and on average over it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Decay {
    /// Length of the step, s.
    pub step_s: f64,
    quick: f64,
    slow: f64,
    quick_mean: f64,
    slow_mean: f64,
}

impl Decay {
    /// For a step; one of no length at all leaves everything.
    #[must_use]
    pub fn new(shape: &Shape, step_s: f64) -> Self {
        let [quick, quick_mean] = left(step_s, shape.tau1_s);
        let [slow, slow_mean] = left(step_s, shape.tau2_s);
        Self { step_s, quick, slow, quick_mean, slow_mean }
    }
}

/// Share of a difference that is left after a step, and on average over it.
pub(crate) fn left(step_s: f64, tau_s: f64) -> [f64; 2] {
    let x = step_s / tau_s;
    let end = exp(-x);
    // Below a thousandth the series is exact and the quotient is not.
    let mean = if x < 1e-3 { 1.0 - x * (0.5 - x / 6.0) } else { (1.0 - end) / x };
    [end, mean]
}

/// A cell as seen over a step: mean volts are `open_v − resistance_ohm · I`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CellSource {
    /// Mean volts without current.
    pub open_v: f64,
    /// Fall of the mean volts with the step's current, ohm.
    pub resistance_ohm: f64,
}

impl<O: OpenCircuit> CellInTime<O> {
    /// Volts at this moment under a current.
    #[must_use]
    pub fn volts(&self, state: &CellState, current_a: f64) -> f64 {
        self.behind_v(state) - self.ohmic_ohm() * current_a
    }

    /// Volts behind the part of the resistance that is there at once.
    #[must_use]
    pub fn behind_v(&self, state: &CellState) -> f64 {
        let s = &self.shape;
        let [low, top] = self.ahead(state.quick_a, state.slow_a);
        s.surface_v(&self.open, state.charge - low, state.charge - top)
            - self.resistance_ohm * (s.r1_share * state.quick_a + s.r2_share * state.slow_a)
    }

    /// [`behind_v`](Self::behind_v), and its slopes over charge, quick and slow filter.
    pub(super) fn behind_and_slopes(&self, state: &CellState) -> (f64, [f64; 3]) {
        let (s, ohm) = (&self.shape, self.resistance_ohm);
        let [low, top] = self.ahead(state.quick_a, state.slow_a);
        let (low, top) = (state.charge - low, state.charge - top);
        // Beyond its ends the voltage is held, as either part is at the knee.
        let (mut open_v, slope) = self.open.ocv_and_slope(low.min(s.top_from));
        let low_slope = if low > 0.0 && low < s.top_from { slope } else { 0.0 };
        let mut top_slope = 0.0;
        if top > s.top_from {
            let (top_v, slope) = self.open.ocv_and_slope(top);
            open_v += top_v - self.open.ocv_v(s.top_from);
            top_slope = if top < 1.0 { slope } else { 0.0 };
        }
        let of_quick = self.lag_ohm * (s.lag1_per_v * low_slope + s.top_lag_per_v * top_slope);
        let of_slow = self.lag_ohm * s.lag2_per_v * low_slope;
        let behind_v = open_v - ohm * (s.r1_share * state.quick_a + s.r2_share * state.slow_a);
        let slopes =
            [low_slope + top_slope, -of_quick - ohm * s.r1_share, -of_slow - ohm * s.r2_share];
        (behind_v, slopes)
    }

    /// How far the two surfaces run ahead of the charge at filtered currents:
    /// that of the curve below the knee, and that above.
    fn ahead(&self, quick_a: f64, slow_a: f64) -> [f64; 2] {
        let s = &self.shape;
        [
            self.lag_ohm * (s.lag1_per_v * quick_a + s.lag2_per_v * slow_a),
            self.lag_ohm * s.top_lag_per_v * quick_a,
        ]
    }

    /// The part of the resistance that is there at once, ohm.
    #[must_use]
    pub fn ohmic_ohm(&self) -> f64 {
        self.resistance_ohm * self.shape.r0_share + self.joint_ohm
    }

    /// The cell over a step of constant current. Filters and charge are exact;
    /// the open-circuit voltage is a tangent at the current that is `expected_a`.
    #[must_use]
    pub fn source(&self, state: &CellState, decay: &Decay, expected_a: f64) -> CellSource {
        let s = &self.shape;
        let (quick, slow) = (decay.quick_mean, decay.slow_mean);
        // Mean currents of the filters: what is left, and what the current adds.
        let (quick_a, slow_a) = (state.quick_a * quick, state.slow_a * slow);
        let (quick_on, slow_on) = (1.0 - quick, 1.0 - slow);
        let taken = decay.step_s / (7200.0 * self.capacity_ah);
        let [low_left, top_left] = self.ahead(quick_a, slow_a);
        let [low_on, top_on] = self.ahead(quick_on, slow_on);
        let (low_on, top_on) = (low_on + taken, top_on + taken);
        let low = state.charge - low_left - low_on * expected_a;
        let top = state.charge - top_left - top_on * expected_a;
        // Beyond its ends the voltage is held, as either part is at the knee.
        let (mut open_v, slope) = self.open.ocv_and_slope(low.min(s.top_from));
        let mut fall = if low > 0.0 && low < s.top_from { slope * low_on } else { 0.0 };
        if top > s.top_from {
            let (top_v, slope) = self.open.ocv_and_slope(top);
            open_v += top_v - self.open.ocv_v(s.top_from);
            fall += if top < 1.0 { slope * top_on } else { 0.0 };
        }
        CellSource {
            open_v: open_v + fall * expected_a
                - self.resistance_ohm * (s.r1_share * quick_a + s.r2_share * slow_a),
            resistance_ohm: fall
                + self.ohmic_ohm()
                + self.resistance_ohm * (s.r1_share * quick_on + s.r2_share * slow_on),
        }
    }

    /// The cell after a step of constant current: exact. The charge stays
    /// within 0 and 1.
    #[must_use]
    pub fn after(&self, state: &CellState, decay: &Decay, current_a: f64) -> CellState {
        let charge = state.charge - current_a * decay.step_s / (3600.0 * self.capacity_ah);
        CellState {
            charge: share(charge),
            quick_a: current_a + (state.quick_a - current_a) * decay.quick,
            slow_a: current_a + (state.slow_a - current_a) * decay.slow,
        }
    }
}
