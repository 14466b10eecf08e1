//! The head of the page.

use crate::app::{see, use_app};
use crate::text::page;
use leptos::prelude::*;

/// The head: whose page it is, the way back, and undo.
#[component]
pub(super) fn Head() -> impl IntoView {
    let app = use_app();
    let offline = move || if app.offline() == "ready" { page::OFFLINE } else { "" };
    view! {
        <header class="top">
            <a class="brand" href=see::lead("")>
                <strong>"Pitchline"</strong>
                " "
                <span class="maker">{move || app.catalog().maker.clone()}</span>
            </a>
            // Said once, by appearing: nothing is covered and nothing has to be closed.
            <p class="tagline" role="status">
                {offline}
            </p>
            <button type="button" class="undo" aria-label="Undo" on:click=move |_| app.undo()>
                "↶"
            </button>
        </header>
    }
}
