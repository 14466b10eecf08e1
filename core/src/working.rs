//! Laws as data, and the steps that an answer took through them.
//!
//! A [`Law`] is a formula with its symbols, units and source, and the function
//! that evaluates it. [`Working::apply`] runs that function and, when asked to,
//! keeps the inputs and the result. The step shown is therefore the step taken.

use crate::bounds::Unit;
use crate::source::Source;
use alloc::vec::Vec;

/// A formula of `N` inputs.
#[derive(Clone, Copy)]
pub struct Law<const N: usize> {
    /// Its name, as plain words.
    pub name: &'static str,
    /// Symbol of the result.
    pub symbol: &'static str,
    /// The formula's right-hand side in the symbols of `inputs`.
    pub formula: &'static str,
    /// Symbol and unit of each input, in order.
    pub inputs: [(&'static str, Unit); N],
    /// Unit of the result.
    pub unit: Unit,
    /// Where it comes from.
    pub source: &'static Source,
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

/// One step of a working: a law with the values put in and the result.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The law's name.
    pub name: &'static str,
    /// Symbol of the result.
    pub symbol: &'static str,
    /// The formula.
    pub formula: &'static str,
    /// Symbol, value and unit of each input.
    pub inputs: Vec<(&'static str, f64, Unit)>,
    /// The result.
    pub result: f64,
    /// Unit of the result.
    pub unit: Unit,
    /// Where the formula comes from.
    pub source: &'static Source,
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

    /// Evaluates `law`, keeping the step when switched on.
    #[inline(always)]
    pub fn apply<const N: usize>(&mut self, law: &'static Law<N>, inputs: [f64; N]) -> f64 {
        let result = law.of(inputs);
        if self.on {
            self.keep(law, &inputs, result);
        }
        result
    }

    #[cold]
    #[inline(never)]
    fn keep<const N: usize>(&mut self, law: &'static Law<N>, values: &[f64], result: f64) {
        self.steps.push(Step {
            name: law.name,
            symbol: law.symbol,
            formula: law.formula,
            inputs: law.inputs.iter().zip(values).map(|((s, u), v)| (*s, *v, *u)).collect(),
            result,
            unit: law.unit,
            source: law.source,
        });
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
