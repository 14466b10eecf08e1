//! Units, paper, and all that is said about the page.

use super::about::About;
use crate::app::use_app;
use crate::platform;
use crate::text::{Units, shell};
use leptos::prelude::*;

/// The view of all else.
#[component]
pub(super) fn More() -> impl IntoView {
    let app = use_app();
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
        <section aria-labelledby="units-title">
            <h2 id="units-title">{shell::UNITS}</h2>
            <div class="row" role="group" aria-labelledby="units-title">
                {unit(Units::Metric, "km, kg")} {unit(Units::Imperial, "mi, lb")}
            </div>
        </section>
        <section aria-labelledby="print-title">
            <h2 id="print-title">{shell::PRINT}</h2>
            <button type="button" on:click=|_| platform::print()>
                {shell::PRINT_BUILD}
            </button>
        </section>
        <About />
    }
}
