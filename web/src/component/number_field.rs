//! A number with its unit, a step down and a step up.

use crate::text::page;
use leptos::{ev, prelude::*};

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

/// Steps that a click or a key takes; with Shift ten times as many.
fn steps(by: f64, shift: bool) -> Done {
    Done::Stepped(if shift { 10.0 * by } else { by })
}

/// The field. Its text is only ever rewritten when it is left.
#[component]
pub fn NumberField(
    id: String,
    label: &'static str,
    help: &'static str,
    #[prop(into)] shown: Signal<Shown>,
    #[prop(into)] done: Callback<Done>,
) -> impl IntoView {
    // A field that goes with its fold is left once more, after it is gone.
    let told = move |what| _ = done.try_run(what);
    let fault_id = format!("{id}-fault");
    let help_id = format!("{id}-help");
    let fault = Memo::new(move |_| shown.with(|shown| shown.fault.clone()));
    let described = {
        let (fault_id, help_id) = (fault_id.clone(), help_id.clone());
        move || {
            let ids = [fault.get().map(|_| &*fault_id), (!help.is_empty()).then_some(&*help_id)];
            let ids: Vec<&str> = ids.into_iter().flatten().collect();
            (!ids.is_empty()).then(|| ids.join(" "))
        }
    };
    let step = |by: f64, sign: &'static str, word: &'static str| {
        let stepped = move |e: ev::MouseEvent| told(steps(by, e.shift_key()));
        view! {
            <button
                type="button"
                class="step"
                aria-label=format!("{label}: {word}")
                on:click=stepped
            >
                {sign}
            </button>
        }
    };
    let keyed = move |e: ev::KeyboardEvent| {
        if e.ctrl_key() || e.alt_key() || e.meta_key() {
            return;
        }
        let by = match e.key().as_str() {
            "ArrowUp" => 1.0,
            "ArrowDown" => -1.0,
            "Enter" => return told(Done::Left),
            _ => return,
        };
        e.prevent_default();
        told(steps(by, e.shift_key()));
    };
    view! {
        <div class="field">
            <label for=id.clone()>
                {label} <span class="remark">{move || shown.with(|shown| shown.remark)}</span>
            </label>
            <div class="field-row">
                {step(-1.0, "−", page::LESS)}
                <div class="field-box">
                    <input
                        id=id
                        type="text"
                        inputmode="decimal"
                        autocomplete="off"
                        aria-invalid=move || fault.get().map(|_| "true")
                        aria-describedby=described
                        prop:value=move || shown.with(|shown| shown.text.clone())
                        on:input=move |e| told(Done::Typed(event_target_value(&e)))
                        // So that typing replaces it.
                        on:focus:target=move |e| e.target().select()
                        on:blur=move |_| told(Done::Left)
                        on:keydown=keyed
                    />
                    <span class="unit">{move || shown.with(|shown| shown.unit.clone())}</span>
                </div>
                {step(1.0, "+", page::GREATER)}
            </div>
            {move || {
                let id = fault_id.clone();
                fault.get().map(|fault| view! { <p class="fault" id=id>{fault}</p> })
            }}
            {(!help.is_empty()).then(|| view! { <p class="help" id=help_id>{help}</p> })}
        </div>
    }
}
