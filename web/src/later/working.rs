//! The working of a headline: formula, values put in, result, source.

use crate::dom::{Node, el, live};
use crate::state::App;
use crate::text::{Style, page};
use pitchline_core::source::Standing;
use pitchline_core::{Headline, Step, Unit, explain};

/// Its steps, one under the other.
pub(super) fn steps(app: App, which: Headline) -> Node {
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
    list(app, first, steps)
}

/// Steps one under the other, after a word about them.
pub(super) fn list(app: App, first: &'static str, steps: impl Fn() -> Vec<Step> + 'static) -> Node {
    let steps = move || {
        // The working is in SI, as its formulas are.
        let style = Style { comma: app.style().comma, ..Style::default() };
        steps().iter().map(|one| step(one, style)).collect()
    };
    let steps = el("ol").class("steps").with(live(move || app.key(), steps));
    Node::from(vec![el("p").class("help").with(first).into(), steps.into()])
}

fn step(step: &Step, style: Style) -> Node {
    let value = |value: f64, unit: Unit| style.quantity(value, unit, 4);
    let input = |(symbol, v, unit): &(&str, f64, Unit)| format!("{symbol} = {}", value(*v, *unit));
    let inputs: Vec<String> = step.inputs.iter().map(input).collect();
    let formula = step.formula;
    let standing = match formula.source.standing {
        Standing::Published | Standing::CommonPractice => "",
        Standing::Derived => " (derived)",
        Standing::Entered => " (as entered)",
    };
    let result =
        format!("{}: {} = {}", formula.name, formula.symbol, value(step.result, formula.unit));
    el("li")
        .with(el("p").class("step-result").with(result))
        .with(el("p").class("step-formula").with(format!("{} = {}", formula.symbol, formula.text)))
        .with(el("p").class("step-inputs").with(inputs.join(", ")))
        .with(el("p").class("step-source").with(format!("{}{standing}", formula.source.title)))
        .into()
}
