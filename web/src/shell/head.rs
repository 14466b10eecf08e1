//! The head of the page.

use crate::app::use_app;
use crate::text::{Units, page};
use leptos::prelude::*;

/// The head: whose page it is, and in which units.
#[component]
pub(super) fn Head() -> impl IntoView {
    let app = use_app();
    let offline = move || if app.offline() == "ready" { page::OFFLINE } else { "" };
    let unit = |units: Units, words: &'static str| {
        view! {
            <button
                type="button"
                aria-pressed=move || (app.units() == units).to_string()
                on:click=move |_| app.set_units(units)
            >
                {words}
            </button>
        }
    };
    view! {
        <header class="top">
            <div>
                <h1>"Pitchline"</h1>
                <p class="maker">{move || app.catalog().maker.clone()}</p>
                <p class="tagline">{page::TAGLINE}</p>
                // Said once, by appearing: nothing is covered and nothing has to be closed.
                <p class="tagline" role="status">
                    {offline}
                </p>
            </div>
            <div class="units" role="group" aria-label="Units">
                {unit(Units::Metric, "km, kg")} {unit(Units::Imperial, "mi, lb")}
            </div>
        </header>
    }
}
