//! Laws as data, and the steps that an answer took through them.
//!
//! A [`Law`] is a struct of its inputs by name, with a formula in words and the
//! function that evaluates it. [`Working::apply`] runs that function and, when
//! asked to, keeps the inputs and the result. The step shown is therefore the
//! step taken.

use crate::bounds::Unit;
use crate::source::Source;
use alloc::vec::Vec;

/// A formula in words.
#[derive(Clone, Copy, Debug)]
pub struct Formula {
    /// Its name, as plain words.
    pub name: &'static str,
    /// Symbol of the result.
    pub symbol: &'static str,
    /// The right-hand side in the symbols of the inputs.
    pub text: &'static str,
    /// Unit of the result.
    pub unit: Unit,
    /// Where it comes from.
    pub source: &'static Source,
    /// Symbol and unit of each input, in order.
    pub inputs: &'static [(&'static str, Unit)],
}

/// A formula, and the function that evaluates it from the values of its inputs.
#[derive(Clone, Copy)]
pub struct Definition<V> {
    /// The formula in words.
    pub formula: Formula,
    /// The function itself, from the values in the order of [`Formula::inputs`].
    pub eval: fn(V) -> f64,
}

/// A formula with its inputs filled in, each by its name.
///
/// ```
/// use pitchline_core::physics::road_load::WheelPower;
/// use pitchline_core::{Law, Working};
///
/// let power = WheelPower { force: 20.0, speed: 5.0 };
/// assert_eq!(power.value(), 100.0);
///
/// let mut w = Working::on();
/// assert_eq!(w.apply(power), 100.0);
/// assert_eq!(w.steps()[0].formula.symbol, WheelPower::definition().formula.symbol);
/// ```
pub trait Law: Copy {
    /// As many numbers as there are inputs.
    type Values: AsRef<[f64]> + AsMut<[f64]> + Copy + Default + 'static;

    /// The formula and its function.
    fn definition() -> &'static Definition<Self::Values>;

    /// The inputs, in the order of [`Formula::inputs`].
    fn values(self) -> Self::Values;

    /// The result, without a way through a table of functions: laws are most of what a ride does.
    fn result(self) -> f64;
}

/// One step of a working: a formula with the values put in and the result.
#[derive(Clone, Debug)]
pub struct Step {
    /// The formula.
    pub formula: &'static Formula,
    /// Symbol, value and unit of each input.
    pub inputs: Vec<(&'static str, f64, Unit)>,
    /// The result, in the formula's unit.
    pub result: f64,
}

/// Runs laws, and keeps their steps when switched on.
#[derive(Clone, Debug, Default)]
pub struct Working {
    on: bool,
    steps: Vec<Step>,
}

impl Working {
    /// Keeps nothing.
    #[must_use]
    pub const fn off() -> Self {
        Self { on: false, steps: Vec::new() }
    }

    /// Keeps every step.
    #[must_use]
    pub const fn on() -> Self {
        Self { on: true, steps: Vec::new() }
    }

    /// Whether steps are kept.
    #[must_use]
    pub const fn is_on(&self) -> bool {
        self.on
    }

    /// Evaluates `law`, keeping the step when switched on; the same step again
    /// is kept once.
    #[inline(always)]
    pub fn apply<L: Law>(&mut self, law: L) -> f64 {
        let result = law.result();
        if self.on {
            self.keep(&L::definition().formula, law.values().as_ref(), result);
        }
        result
    }

    #[cold]
    #[inline(never)]
    fn keep(&mut self, formula: &'static Formula, values: &[f64], result: f64) {
        let same = |step: &Step| core::ptr::eq(step.formula, formula) && step.result == result;
        if !self.steps.iter().any(same) {
            let inputs =
                formula.inputs.iter().zip(values).map(|((s, u), v)| (*s, *v, *u)).collect();
            self.steps.push(Step { formula, inputs, result });
        }
    }

    /// The steps kept so far, in the order they were taken.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// The steps kept, without the rest.
    #[must_use]
    pub fn into_steps(self) -> Vec<Step> {
        self.steps
    }
}
