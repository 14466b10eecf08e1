//! The working of a headline: formula, values put in, result, source.

use super::app;
use crate::component::fold;
use crate::text::Style;
use leptos::html;
use leptos::prelude::*;
use pitchline_core::source::Standing;
use pitchline_core::{Headline, Step, Unit, explain};

/// The working, folded away.
pub(super) fn working(which: Headline) -> AnyView {
    let app = app();
    fold("working", "Working", move || {
        let steps = move || {
            // The working is in SI, as its formulas are.
            let style = Style { comma: app.style.get().comma, ..Style::default() };
            app.build.with(|build| {
                let steps = build.as_ref().map(|build| explain(build, which));
                steps.into_iter().flatten().map(|s| step(&s, style)).collect::<Vec<_>>()
            })
        };
        html::ol().class("steps").child(steps).into_any()
    })
}

fn step(step: &Step, style: Style) -> AnyView {
    let value = |value: f64, unit: Unit| style.quantity(value, unit, 4);
    let inputs: Vec<String> = step
        .inputs
        .iter()
        .map(|(symbol, v, unit)| format!("{symbol} = {}", value(*v, *unit)))
        .collect();
    let standing = match step.source.standing {
        Standing::Published | Standing::CommonPractice => "",
        Standing::Derived => " (derived)",
        Standing::Entered => " (as entered)",
    };
    html::li()
        .child((
            html::p()
                .class("step-result")
                .child(format!(
                    "{}: {} = {}",
                    step.name,
                    step.symbol,
                    value(step.result, step.unit)
                ))
                .into_any(),
            html::p()
                .class("step-formula")
                .child(format!("{} = {}", step.symbol, step.formula))
                .into_any(),
            html::p().class("step-inputs").child(inputs.join(", ")).into_any(),
            html::p()
                .class("step-source")
                .child(format!("{}{standing}", step.source.title))
                .into_any(),
        ))
        .into_any()
}
