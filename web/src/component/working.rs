//! The working of an answer: formula, values put in, result, source.

use leptos::prelude::*;

/// A step of a working, in words.
#[derive(Clone, Debug, PartialEq)]
pub struct Written {
    /// What comes out.
    pub result: String,
    /// The formula.
    pub formula: String,
    /// What was put in.
    pub inputs: String,
    /// Where it is from.
    pub source: String,
}

/// Steps one under the other, after a word about them.
#[component]
pub fn Steps(first: &'static str, #[prop(into)] steps: Signal<Vec<Written>>) -> impl IntoView {
    let step = |step: Written| {
        view! {
            <li>
                <p class="step-result">{step.result}</p>
                <p class="step-formula">{step.formula}</p>
                <p class="step-inputs">{step.inputs}</p>
                <p class="step-source">{step.source}</p>
            </li>
        }
    };
    view! {
        <p class="help">{first}</p>
        <ol class="steps">{move || steps.get().into_iter().map(step).collect_view()}</ol>
    }
}
