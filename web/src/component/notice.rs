//! Things to be told: what does not fit, and cautions.

use leptos::prelude::*;

/// Something that needs mending, by icon and words.
#[component]
pub fn Notice(text: String) -> impl IntoView {
    view! {
        <p class="notice">
            <span class="notice-icon" aria-hidden="true">"!"</span>
            {text}
        </p>
    }
}

/// A caution, where the action is.
#[component]
pub fn Caution(text: &'static str) -> impl IntoView {
    view! { <p class="caution">{text}</p> }
}
