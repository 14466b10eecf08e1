//! How throttle and brake feel, and what the charge gauge should say.

use super::Now;
use super::modes::named;
use crate::app::{Found, use_app};
use crate::chart::{Grid, Table};
use crate::text::{Style, settings as words};
use leptos::prelude::*;
use pitchline_core::{gauge, mode_settings, settings};

/// Full throttle and full brake in the strong mode.
pub(super) fn hint(found: &Found, style: Style) -> String {
    let set = settings(&found.draft, &found.build);
    let modes = mode_settings(&found.draft, &found.build, &set);
    modes.first().map_or_else(String::new, |strong| words::feel_hint(strong, style))
}

/// Acceleration by lever, for each mode, and of the brakes.
#[component]
pub(super) fn Feel(now: Now) -> impl IntoView {
    let app = use_app();
    let grid = move || {
        now.get().map(|set| {
            let style = app.style();
            let modes = named(&set);
            let push = modes
                .iter()
                .map(|(name, mode)| words::feel_row(name.clone(), mode.push_m_s2, style));
            // The brakes are the same in every mode but that of the first ride.
            let [first, .., last] = modes.as_slice() else { return None };
            let brakes = [first, last]
                .map(|(name, mode)| words::feel_row(words::brakes(name), mode.brake_m_s2, style));
            let table = Table {
                label: String::new(),
                caption: words::FEEL.into(),
                heads: words::feel_heads(),
                rows: push.chain(brakes).collect(),
            };
            Some(view! { <Grid table /> })
        })
    };
    view! {
        <p class="help">{words::FEEL_HELP}</p>
        <div class="chart">{grid}</div>
    }
}

/// Half charge in a few words.
pub(super) fn gauge_hint(found: &Found, style: Style) -> String {
    words::gauge_hint(&gauge(&found.build), style)
}

/// Resting voltage by charge.
#[component]
pub(super) fn GaugeCard() -> impl IntoView {
    let app = use_app();
    let grid = move || {
        app.found().map(|found| {
            let rows = words::gauge_rows(&gauge(&found.build), app.style());
            let table = Table::alone(words::GAUGE, &words::GAUGE_HEADS, rows);
            view! { <Grid table /> }
        })
    };
    view! {
        <div class="chart">{grid}</div>
        <p class="help">{words::GAUGE_HELP}</p>
        <p class="help">{move || app.made()}</p>
    }
}
