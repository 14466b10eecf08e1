//! One answer, large, with what it means and what binds.

use crate::text::Answer;
use crate::text::change::Change;
use leptos::prelude::*;

/// Letters of the longest figure that is shown in full size.
const LONG: usize = 9;

/// An answer. It is made of spans, since it may stand in a button.
#[component]
pub fn AnswerView(
    #[prop(into)] answer: Signal<Answer>,
    /// What the last edit has changed in it.
    #[prop(optional, into)]
    change: Signal<Option<Change>>,
) -> impl IntoView {
    // Words may break, a number may not.
    let words = move || answer.with(|a| a.figure.starts_with(|c: char| c.is_ascii_alphabetic()));
    // A band of times is longer than a figure.
    let long = move || answer.with(|a| a.figure.chars().count() > LONG);
    view! {
        <span class="headline">
            <span class="headline-name">{move || answer.with(|a| a.name.clone())}</span>
            <span class="headline-figure">
                <strong class:words=words class:long=long>{move || answer.with(|a| a.figure.clone())}</strong>
                " "
                <span>{move || answer.with(|a| a.unit)}</span>
            </span>
            {move || change.get().map(changed)}
            <span class="headline-limit">{move || answer.with(|a| a.limit.clone())}</span>
        </span>
    }
}

/// The sign and the arrow are for the eye; for the ear it is a word.
fn changed(Change { shown, spoken, more }: Change) -> impl IntoView {
    let arrow = more.map(|more| if more { "▲\u{a0}" } else { "▼\u{a0}" });
    view! {
        <span class="headline-change">
            <span aria-hidden="true">{arrow} {shown}</span>
            <span class="aloud">{spoken}</span>
        </span>
    }
}

/// The answer of a view, the largest thing in it.
#[component]
pub fn Lead(
    #[prop(into)] waits: Signal<bool>,
    #[prop(into)] answer: Signal<Answer>,
    #[prop(optional, into)] change: Signal<Option<Change>>,
) -> impl IntoView {
    view! {
        <div class="lead" class:waits=waits>
            <AnswerView answer change />
        </div>
    }
}

/// Answers in a row, greyed while they are for the value before.
#[component]
pub fn SideBySide(#[prop(into)] waits: Signal<bool>, children: Children) -> impl IntoView {
    view! { <div class="answers" class:waits=waits>{children()}</div> }
}
