//! The answers read out.

use crate::app::use_app;
use leptos::prelude::*;

/// For who does not see the strip: its answers, once an edit and its bands have
/// settled and they are others than before.
#[component]
pub(super) fn Aloud() -> impl IntoView {
    let app = use_app();
    view! {
        <p class="aloud" role="status">
            {move || app.heard()}
        </p>
    }
}
