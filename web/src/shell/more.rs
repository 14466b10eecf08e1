//! Units, colours, paper, and all that is said about the page.

use super::about::About;
use crate::app::{Theme, use_app};
use crate::platform;
use crate::text::{Units, shell};
use leptos::prelude::*;

/// The view of all else.
#[component]
pub(super) fn More() -> impl IntoView {
    let app = use_app();
    let unit = |units: Units, words: &'static str| {
        choice(words, move || app.units() == units, move || app.set_units(units))
    };
    let theme = |theme: Theme, words: &'static str| {
        choice(words, move || app.theme() == theme, move || app.set_theme(theme))
    };
    view! {
        <section class="block" aria-labelledby="units-title">
            <h2 id="units-title">{shell::UNITS}</h2>
            <div class="row" role="group" aria-labelledby="units-title">
                {unit(Units::Metric, shell::METRIC)} {unit(Units::Imperial, shell::IMPERIAL)}
            </div>
        </section>
        <section class="block" aria-labelledby="theme-title">
            <h2 id="theme-title">{shell::THEME}</h2>
            <div class="row" role="group" aria-labelledby="theme-title">
                {theme(Theme::Device, shell::DEVICE)} {theme(Theme::Light, shell::LIGHT)}
                {theme(Theme::Dark, shell::DARK)}
            </div>
        </section>
        <section class="block" aria-labelledby="print-title">
            <h2 id="print-title">{shell::PRINT}</h2>
            <button type="button" on:click=|_| platform::print()>
                {shell::PRINT_BUILD}
            </button>
        </section>
        <About />
    }
}

/// A button that is down while its choice is the one in force.
fn choice(
    words: &'static str,
    chosen: impl Fn() -> bool + Send + Sync + 'static,
    choose: impl Fn() + 'static,
) -> AnyView {
    view! {
        <button
            type="button"
            aria-pressed=move || chosen().to_string()
            on:click=move |_| choose()
        >
            {words}
        </button>
    }
    .into_any()
}
