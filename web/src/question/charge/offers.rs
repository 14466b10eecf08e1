//! Every charger on offer, side by side.

use super::Now;
use super::found::{Found, Offer};
use super::said::amps;
use crate::app::{App, use_app};
use crate::text::{Style, duration, percent};
use leptos::prelude::*;
use pitchline_core::{ChargeRefusal, ChargerOffer, Slot, Unit};

/// The table of them, with what takes one.
#[component]
pub(super) fn Offers(found: Now) -> impl IntoView {
    let app = use_app();
    let table = move || found.get().map(|found| table(app, &found));
    view! {
        <div class="chart">{table}</div>
    }
}

fn table(app: App, found: &Found) -> impl IntoView + use<> {
    let (style, currency) = (app.style(), app.catalog().currency.clone());
    let enough = format!("To {}", percent(found.build.ride.charge_to));
    let heads = ["Charger", "To full", &enough, "Fits", "Current", "Price"];
    let head = |text: &str| view! { <th scope="col">{text.to_string()}</th> };
    let row = |offer: &Offer| row(app, offer, style, &currency);
    let caption = format!("Chargers on offer, from {}", percent(found.build.ride.charge_from));
    let label = caption.clone();
    view! {
        <div class="chart-table" role="region" tabindex="0" aria-label=label>
            <table>
                <caption><span>{caption}</span></caption>
                <thead>
                    <tr>{heads.map(head).collect_view()}</tr>
                </thead>
                <tbody>{found.offers.iter().map(row).collect_view()}</tbody>
            </table>
        </div>
    }
}

fn row(app: App, offer: &Offer, style: Style, currency: &str) -> impl IntoView + use<> {
    let name = match offer.part.name.as_str() {
        "" => "Typed in",
        name => name,
    };
    let does = &offer.does;
    let act = match (offer.here, does.fit.is_for_the_pack()) {
        (true, _) => view! { <span class="remark">"on\u{a0}the\u{a0}board"</span> }.into_any(),
        (false, true) => {
            let (label, id) = (format!("Take {name}"), offer.part.id.clone());
            let take = move |_| app.pick(Slot::Charger, &id);
            view! { <button type="button" aria-label=label on:click=take>"Take"</button> }
                .into_any()
        }
        (false, false) => ().into_any(),
    };
    let time = |seconds: Option<f64>| seconds.map_or_else(|| "–".into(), duration);
    let price = |price| format!("{currency}\u{a0}{}", style.value(price, Unit::Money, 3));
    let cells = [
        time(does.full_s),
        time(does.enough_s),
        why(does, style),
        amps(does.current_a, style),
        does.price.map_or_else(|| "–".into(), price),
    ];
    let cell = |text: String| view! { <td>{text}</td> };
    view! {
        <tr>
            <th scope="row">{name.to_string()} " " {act}</th>
            {cells.map(cell).collect_view()}
        </tr>
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
