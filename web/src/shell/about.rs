//! How far to trust it, where data stay, and what version this is.

use crate::app::{see, use_app};
use crate::platform;
use crate::text::{page, shell};
use leptos::prelude::*;

/// About the page.
#[component]
pub(super) fn About() -> impl IntoView {
    let app = use_app();
    let offline = move || page::offline(&app.offline(), &platform::offline_why());
    let catalogue = move || {
        let catalog = app.catalog();
        shell::parts(&catalog.maker, &catalog.version, &catalog.notes)
    };
    view! {
        <section class="block" aria-labelledby="about-title">
            <h2 id="about-title">{shell::TRUST}</h2>
            <p>{page::TRUST}</p>
            <p>{page::PRIVATE}</p>
            {platform::embedded().then(|| view! { <p>{page::FRAMED}</p> })}
            <p id="offline-state">{offline}</p>
            <p>{catalogue}</p>
            <p>
                <a class="button" href=see::lead("catalogue")>
                    {shell::CHECK_CATALOGUE}
                </a>
            </p>
            <p>{shell::NAME_AND_VERSION}</p>
        </section>
    }
}
