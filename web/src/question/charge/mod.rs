//! How long on the charger?
//!
//! Where a charger is not to be used, it says why, and no time.

mod curve;
mod found;
mod offers;
mod said;
mod times;

#[cfg(test)]
mod laws;

use super::registry::Line;
use super::{ALONG_CURVE, Draws, Input, Sure, sketch};
use crate::app::{App, Banded, use_app};
use crate::chart::Figure;
use crate::component::{Caution, Fold, Notice};
use crate::text::page;
use found::Found;
use leptos::prelude::*;
use offers::Offers;
use pitchline_core::{Charging, Slot};
use std::sync::Arc;
use times::Times;

/// The charges of now.
type Now = Memo<Option<Arc<Found>>>;

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    let Some(found) = Found::now(app) else { return Line::default() };
    match said::warnings(&found, app.style()).into_iter().next() {
        Some(text) => Line { text, alert: true },
        None => {
            let answer = said::full(&found, &said::With::now(app), app.style());
            Line::plain(format!("{} {} to full", answer.figure, answer.unit))
        }
    }
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let found: Now = Memo::new_with_compare(move |_| Found::now(app).map(Arc::new), |_, _| true);
    let warnings = Memo::new(move |_| {
        let style = app.style();
        found.get().map(|found| said::warnings(&found, style)).unwrap_or_default()
    });
    let warned = move || {
        let notice = |text| view! { <Notice text /> };
        warnings.get().into_iter().map(notice).collect_view()
    };
    // What is there only while the board's charger may be used.
    let may = Memo::new(move |_| found.get().is_some_and(|found| found.charges.is_ok()));
    let times = move || may.get().then(|| view! { <Times found /> });
    let curves = move || may.get().then(|| view! { <Curves found /> });
    view! {
        <div role="status">{warned}</div>
        {times}
        <div class="fields">
                <Input of=Slot::Ride key="charge_from_percent" />
                <Input of=Slot::Ride key="charge_to_percent" />
                <Input of=Slot::Ride key="charge_time_h" />
                <Input of=Slot::Place key="charge_air_c" />
                <Input of=Slot::Place key="energy_price_kwh" />
        </div>
        <Caution text=page::CAUTION_CHARGE />
        {curves}
        <Fold class="evidence" title="Which charger">
            <Offers found />
        </Fold>
    }
    .into_any()
}

/// Charge and current over time, and how sure the time is.
#[component]
fn Curves(found: Now) -> impl IntoView {
    let drawn =
        |draws: &'static Draws<Charging>| sketch(move || found.get()?.charges.clone().ok(), draws);
    view! {
        <Figure sketch=drawn(&curve::CHARGE) hint=ALONG_CURVE />
        <Figure sketch=drawn(&curve::CURRENT) hint=ALONG_CURVE />
        <Sure of=Banded::Charge />
    }
}
