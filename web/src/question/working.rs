//! The working of an answer: formula, values put in, result, source.

use crate::app::{App, use_app};
use crate::component::{Fold, Steps, Written};
use crate::text::{Style, page};
use leptos::prelude::*;
use pitchline_core::{Headline, Step, Unit, explain};

/// The working of a headline, folded away.
#[component]
pub fn Working(which: Headline, #[prop(into)] title: Signal<String>) -> impl IntoView {
    let app = use_app();
    let first = match which {
        Headline::TopSpeed
        | Headline::TopSpeedLow
        | Headline::TopSpeedOnGrade
        | Headline::TopSpeedLowMode
        | Headline::TopSpeedMidMode
        | Headline::TopSpeedHighMode => page::SEARCHED,
        _ => page::STEPPED,
    };
    let steps = move || app.found().map(|found| explain(&found.build, which)).unwrap_or_default();
    view! { <WorkingSteps title first steps /> }
}

/// Any working, folded away; `first` is a word about it.
#[component]
pub fn WorkingSteps(
    /// Of what.
    #[prop(into)]
    title: Signal<String>,
    first: &'static str,
    steps: impl Fn() -> Vec<Step> + Clone + Send + Sync + 'static,
) -> impl IntoView {
    let app = use_app();
    view! {
        <Fold class="working" title>
            {
                let steps = steps.clone();
                view! { <Steps first steps=Signal::derive(move || written(app, &steps())) /> }
            }
        </Fold>
    }
}

fn written(app: App, steps: &[Step]) -> Vec<Written> {
    // The working is in SI, as its formulas are.
    let style = Style { comma: app.style().comma, ..Style::default() };
    steps.iter().map(|step| in_words(step, style)).collect()
}

fn in_words(step: &Step, style: Style) -> Written {
    let value = |value: f64, unit: Unit| style.quantity(value, unit, 4);
    let input = |(symbol, v, unit): &(&str, f64, Unit)| format!("{symbol} = {}", value(*v, *unit));
    let inputs: Vec<String> = step.inputs.iter().map(input).collect();
    let formula = step.formula;
    Written {
        result: format!(
            "{}: {} = {}",
            formula.name,
            formula.symbol,
            value(step.result, formula.unit)
        ),
        formula: format!("{} = {}", formula.symbol, formula.text),
        inputs: inputs.join(", "),
        source: page::source(formula.source.title, formula.source.standing),
    }
}
