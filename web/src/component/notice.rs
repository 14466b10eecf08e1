//! Things to be told: what does not fit, and cautions.

use crate::text::page::{self, Warning};
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

/// A caution, where the action is: what everyone must read, and the rest behind "More".
#[component]
pub fn Caution(text: Warning) -> impl IntoView {
    view! {
        <details class="caution">
            <summary>
                <span class="caution-icon" aria-hidden="true">"!"</span>
                <span>{text.short} " " <span class="caution-more">{page::MORE}</span></span>
            </summary>
            <p>{text.more}</p>
        </details>
    }
}
