//! Things to be told: what does not fit, and cautions.

use crate::text::page::{self, Warning};
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
