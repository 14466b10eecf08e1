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

/// A caution, where the action is: one short line, and the rest behind "More" where there is any.
#[component]
pub fn Caution(text: &'static str, #[prop(optional)] more: &'static str) -> impl IntoView {
    let more = (!more.is_empty()).then(|| {
        view! {
            <details class="more">
                <summary>"More"</summary>
                <p>{more}</p>
            </details>
        }
    });
    view! { <div class="caution"><p>{text}</p>{more}</div> }
}
