//! A number with its unit, a step down and a step up.

use leptos::html;
use leptos::prelude::*;
use leptos::{ev, prelude::AnyView};

/// What a number field shows and whom it tells.
pub struct NumberField {
    /// Id of the input, unique on the page.
    pub id: String,
    /// What it is.
    pub label: &'static str,
    /// A line of help; may be empty.
    pub help: &'static str,
    /// Unit behind the number.
    pub unit: Signal<&'static str>,
    /// The text in it.
    pub text: Signal<String>,
    /// What is wrong with it.
    pub fault: Signal<Option<String>>,
    /// A remark such as "assumed".
    pub remark: Signal<&'static str>,
    /// Told of every keystroke.
    pub on_input: Callback<String>,
    /// Told when it is left.
    pub on_leave: Callback<()>,
    /// Told of steps.
    pub on_step: Callback<f64>,
}

/// Draws the field. Its text is only ever rewritten when it is left.
pub fn number_field(field: NumberField) -> AnyView {
    let NumberField { id, label, help, unit, text, fault, remark, on_input, on_leave, on_step } =
        field;
    let (fault_id, help_id) = (format!("{id}-fault"), format!("{id}-help"));
    let described = {
        let (fault_id, help_id) = (fault_id.clone(), help_id.clone());
        move || match (fault.get().is_some(), help.is_empty()) {
            (true, false) => Some(format!("{fault_id} {help_id}")),
            (true, true) => Some(fault_id.clone()),
            (false, false) => Some(help_id.clone()),
            (false, true) => None,
        }
    };
    let step = move |by: f64, sign: &'static str, word: &'static str| {
        html::button()
            .r#type("button")
            .class("step")
            .attr("aria-label", format!("{label}: {word}"))
            .on(ev::click, move |e| {
                let size = if e.shift_key() { 10.0 } else { 1.0 };
                on_step.run(by * size);
            })
            .child(sign)
            .into_any()
    };
    let input = html::input()
        .id(id.clone())
        .r#type("text")
        .attr("inputmode", "decimal")
        .attr("autocomplete", "off")
        .attr("aria-invalid", move || fault.get().is_some().then_some("true"))
        .attr("aria-describedby", described)
        .prop("value", move || text.get())
        .on(ev::input, move |e| on_input.run(event_target_value(&e)))
        .on(ev::blur, move |_| on_leave.run(()))
        .on(ev::keydown, move |e| {
            let by = match e.key().as_str() {
                "ArrowUp" => 1.0,
                "ArrowDown" => -1.0,
                "Enter" => return on_leave.run(()),
                _ => return,
            };
            e.prevent_default();
            on_step.run(if e.shift_key() { 10.0 * by } else { by });
        });
    let shown_unit = html::span().class("unit").child(move || unit.get());
    html::div()
        .class("field")
        .child((
            html::label()
                .r#for(id)
                .child((label, html::span().class("remark").child(move || remark.get())))
                .into_any(),
            html::div()
                .class("field-row")
                .child((
                    step(-1.0, "−", "less"),
                    html::div().class("field-box").child((input, shown_unit)).into_any(),
                    step(1.0, "+", "more"),
                ))
                .into_any(),
            html::p()
                .class("fault")
                .id(fault_id)
                .attr("hidden", move || fault.get().is_none())
                .child(move || fault.get().unwrap_or_default())
                .into_any(),
            (!help.is_empty()).then(|| html::p().class("help").id(help_id).child(help)).into_any(),
        ))
        .into_any()
}
