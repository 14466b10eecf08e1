//! How far some work is.

use crate::app::Task;
use leptos::prelude::*;

/// A line that says how far some work is; empty once it is done.
#[component]
pub fn TaskLine(task: Task) -> impl IntoView {
    view! { <p class="help busy">{move || task.said()}</p> }
}
