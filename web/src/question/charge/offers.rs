//! Every charger on offer, side by side.

use super::Now;
use super::found::{Found, Offer};
use crate::app::{App, use_app};
use crate::chart::{Grid, Table};
use crate::text::{Style, charge as words, duration, setup};
use leptos::prelude::*;
use pitchline_core::{Slot, Unit};

/// The table of them, with what takes one.
#[component]
pub(super) fn Offers(found: Now) -> impl IntoView {
    let app = use_app();
    let grid = move || {
        found.get().map(|found| {
            let table = table(&found, &app.catalog().currency, app.style());
            let beside = Callback::new(move |row| {
                found.offers.get(row).map(|offer| beside(app, offer)).into_any()
            });
            view! { <Grid table beside /> }
        })
    };
    view! { <div class="chart">{grid}</div> }
}

fn table(found: &Found, currency: &str, style: Style) -> Table {
    let time = |seconds: Option<f64>| seconds.map_or_else(|| "–".into(), duration);
    let price = |price| format!("{currency}\u{a0}{}", style.value(price, Unit::Money, 3));
    let row = |offer: &Offer| {
        let does = &offer.does;
        vec![
            name(offer).into(),
            time(does.full_s),
            time(does.enough_s),
            words::fits(does.fit, style),
            words::amps(does.current_a, style),
            does.price.map_or_else(|| "–".into(), price),
        ]
    };
    Table {
        label: String::new(),
        caption: words::chargers_caption(found.build.ride.charge_from),
        heads: words::chargers_heads(found.build.ride.charge_to).into(),
        rows: found.offers.iter().map(row).collect(),
    }
}

fn name(offer: &Offer) -> &str {
    match offer.part.name.as_str() {
        "" => words::TYPED_IN,
        name => name,
    }
}

/// What stands beside its name: that it is on the board, or the button that takes it.
fn beside(app: App, offer: &Offer) -> AnyView {
    match (offer.here, offer.does.fit.is_for_the_pack()) {
        (true, _) => view! { <span class="remark">{words::ON_BOARD}</span> }.into_any(),
        (false, true) => {
            let (label, id) = (setup::take(name(offer), false), offer.part.id.clone());
            let take = move |_| app.pick(Slot::Charger, &id);
            view! { <button type="button" aria-label=label on:click=take>{words::USE}</button> }
                .into_any()
        }
        (false, false) => ().into_any(),
    }
}
