//! Laws as data, and the steps that an answer took through them.
//!
//! A [`Law`] is a formula with its symbols, units and source, and the function
//! that evaluates it. [`Working::apply`] runs that function and, when asked to,
//! keeps the inputs and the result. The step shown is therefore the step taken.

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
}

/// A formula of `N` inputs, and the function that evaluates it.
#[derive(Clone, Copy)]
pub struct Law<const N: usize> {
    /// The formula in words.
    pub formula: Formula,
    /// Symbol and unit of each input, in order.
    pub inputs: [(&'static str, Unit); N],
    /// The function itself.
    pub eval: fn([f64; N]) -> f64,
}

impl<const N: usize> Law<N> {
    /// The result for these inputs.
    #[must_use]
    #[inline(always)]
    pub fn of(&self, inputs: [f64; N]) -> f64 {
        (self.eval)(inputs)
    }
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
    // On the page a call is a kilobyte smaller, all in all, than a copy at each place.
    #[cfg_attr(target_arch = "wasm32", inline(never))]
    #[cfg_attr(not(target_arch = "wasm32"), inline(always))]
    pub fn apply<const N: usize>(&mut self, law: &'static Law<N>, inputs: [f64; N]) -> f64 {
        let result = law.of(inputs);
        if self.on {
            self.keep(&law.formula, &law.inputs, &inputs, result);
        }
        result
    }

    #[cold]
    #[inline(never)]
    fn keep(
        &mut self,
        formula: &'static Formula,
        symbols: &'static [(&'static str, Unit)],
        values: &[f64],
        result: f64,
    ) {
        let same = |step: &Step| core::ptr::eq(step.formula, formula) && step.result == result;
        if !self.steps.iter().any(same) {
            let inputs = symbols.iter().zip(values).map(|((s, u), v)| (*s, *v, *u)).collect();
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
