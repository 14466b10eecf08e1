//! Things to be told: what does not fit, and cautions.

use crate::text::page;
use leptos::prelude::*;

/// Something that needs mending, by icon and words.
#[component]
pub fn Notice(
    text: String,
    /// How bad it is, in a word.
    #[prop(optional)]
    word: &'static str,
) -> impl IntoView {
    let word = (!word.is_empty()).then(|| view! { <strong>{word} ". "</strong> });
    view! {
        <p class="notice">
            <span class="notice-icon" aria-hidden="true">"!"</span>
            <span>{word} {text}</span>
        </p>
    }
}

/// A caution, where the action is: one short line, the rest of it folded away.
#[component]
pub fn Caution(text: &'static str, #[prop(optional)] more: &'static str) -> impl IntoView {
    let more = (!more.is_empty()).then(|| {
        view! {
            <details class="caution-more">
                <summary>{page::REST}</summary>
                <p>{more}</p>
            </details>
        }
    });
    view! {
        <div class="caution">
            <p>{text}</p>
            {more}
        </div>
    }
}
