//! A question with its heading.

use leptos::prelude::*;

/// One question with its heading.
#[component]
pub fn Section(id: &'static str, title: &'static str, children: Children) -> impl IntoView {
    let heading = format!("{id}-title");
    view! {
        // Not a stop of its own, but a place to go on from.
        <section class="question" id=id tabindex="-1" aria-labelledby=heading.clone()>
            <h2 id=heading.clone()>{title}</h2>
            {children()}
        </section>
    }
}
