//! Every charger on offer, side by side.

use super::Now;
use super::found::{Found, Offer};
use super::said::amps;
use crate::app::{App, use_app};
use crate::chart::{Grid, Table};
use crate::text::{Style, duration, percent};
use leptos::prelude::*;
use pitchline_core::{ChargeRefusal, ChargerOffer, Slot, Unit};

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
    view! {
        <h3>"Which charger"</h3>
        <div class="chart">{grid}</div>
    }
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
            why(does, style),
            amps(does.current_a, style),
            does.price.map_or_else(|| "–".into(), price),
        ]
    };
    let enough = format!("To {}", percent(found.build.ride.charge_to));
    Table {
        label: String::new(),
        caption: format!("Chargers on offer, from {}", percent(found.build.ride.charge_from)),
        heads: ["Charger", "To full", &enough, "Fits", "Current", "Price"].map(String::from).into(),
        rows: found.offers.iter().map(row).collect(),
    }
}

fn name(offer: &Offer) -> &str {
    match offer.part.name.as_str() {
        "" => "Typed in",
        name => name,
    }
}

/// What stands beside its name: that it is on the board, or the button that takes it.
fn beside(app: App, offer: &Offer) -> AnyView {
    match (offer.here, offer.does.fit.is_for_the_pack()) {
        (true, _) => view! { <span class="remark">"on\u{a0}the\u{a0}board"</span> }.into_any(),
        (false, true) => {
            let (label, id) = (format!("Take {}", name(offer)), offer.part.id.clone());
            let take = move |_| app.pick(Slot::Charger, &id);
            view! { <button type="button" aria-label=label on:click=take>"Take"</button> }
                .into_any()
        }
        (false, false) => ().into_any(),
    }
}

/// Whether it fits, or why not, in a few words.
fn why(does: &ChargerOffer, style: Style) -> String {
    let volts = |v| style.quantity(v, Unit::Volt, 3);
    match (does.fit.refusal, does.fit.too_strong) {
        (Some(ChargeRefusal::WrongVolts { charger_v, pack_v, .. }), _) => {
            format!("no: {}, not {}", volts(charger_v), volts(pack_v))
        }
        (Some(ChargeRefusal::WrongPlug), _) => "no: another plug".into(),
        (_, Some(strong)) => format!("no: the cells take {}", amps(strong.cells_a, style)),
        (Some(ChargeRefusal::TooCold { .. }), None) => "too cold now".into(),
        (None, None) => "yes".into(),
    }
}
