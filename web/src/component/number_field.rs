//! A number with its unit, a step down and a step up.

use crate::dom::{Node, el, live, said};
use std::rc::Rc;

/// What a number field shows now.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shown {
    /// The text in it.
    pub text: String,
    /// Unit behind the number.
    pub unit: String,
    /// What is wrong with it.
    pub fault: Option<String>,
    /// A remark such as "assumed"; may be empty.
    pub remark: &'static str,
}

/// What someone did to a number field.
#[derive(Clone, Debug, PartialEq)]
pub enum Done {
    /// Typed; this is the whole text.
    Typed(String),
    /// Left it.
    Left,
    /// Stepped up or down.
    Stepped(f64),
}

/// Draws the field. Its text is only ever rewritten when it is left.
pub fn number_field(
    id: String,
    label: &'static str,
    help: &'static str,
    shown: Rc<dyn Fn() -> Shown>,
    done: Rc<dyn Fn(Done)>,
) -> Node {
    let fault_id = format!("{id}-fault");
    let help_id = format!("{id}-help");
    let described = {
        let (shown, fault_id, help_id) = (shown.clone(), fault_id.clone(), help_id.clone());
        move || match (shown().fault.is_some(), help.is_empty()) {
            (true, false) => Some(format!("{fault_id} {help_id}")),
            (true, true) => Some(fault_id.clone()),
            (false, false) => Some(help_id.clone()),
            (false, true) => None,
        }
    };
    let step = |by: f64, sign: &'static str, word: &'static str| {
        let done = done.clone();
        el("button")
            .attr("type", "button")
            .class("step")
            .attr("aria-label", format!("{label}: {word}"))
            .on("click", move |e| done(Done::Stepped(if e.shift() { 10.0 * by } else { by })))
            .with(sign)
    };
    let (typed, left, keyed) = (done.clone(), done.clone(), done.clone());
    let (text, unit, invalid, remark) =
        (shown.clone(), shown.clone(), shown.clone(), shown.clone());
    let input = el("input")
        .attr("id", id.clone())
        .attr("type", "text")
        .attr("inputmode", "decimal")
        .attr("autocomplete", "off")
        .follow("aria-invalid", move || invalid().fault.map(|_| "true".into()))
        .follow("aria-describedby", described)
        .value(move || text().text)
        .on("input", move |e| typed(Done::Typed(e.value())))
        .on("focus", |e| e.select())
        .on("blur", move |_| left(Done::Left))
        .on("keydown", move |e| {
            let by = match e.key().as_str() {
                "ArrowUp" => 1.0,
                "ArrowDown" => -1.0,
                "Enter" => return keyed(Done::Left),
                _ => return,
            };
            e.prevent();
            keyed(Done::Stepped(if e.shift() { 10.0 * by } else { by }));
        });
    let key = move || shown().fault.unwrap_or_default();
    let fault = {
        let key = key.clone();
        move || {
            let fault = key();
            let said = (!fault.is_empty())
                .then(|| el("p").class("fault").attr("id", fault_id.clone()).with(fault));
            said.into()
        }
    };
    el("div")
        .class("field")
        .with(
            el("label")
                .attr("for", id)
                .with(label)
                .with(el("span").class("remark").with(said(move || remark().remark.into()))),
        )
        .with(
            el("div")
                .class("field-row")
                .with(step(-1.0, "−", "less"))
                .with(
                    el("div")
                        .class("field-box")
                        .with(input)
                        .with(el("span").class("unit").with(said(move || unit().unit))),
                )
                .with(step(1.0, "+", "more")),
        )
        .with(live(key, fault))
        .with((!help.is_empty()).then(|| el("p").class("help").attr("id", help_id).with(help)))
        .into()
}
