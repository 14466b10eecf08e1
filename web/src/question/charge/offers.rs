//! Every charger on offer, side by side.

use super::Now;
use super::found::{Found, Offer};
use crate::app::{App, use_app};
use crate::text::{Style, charge as words, duration};
use leptos::prelude::*;
use pitchline_core::{Slot, Unit};

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
    let heads = words::chargers_heads(found.build.ride.charge_to);
    let head = |text: String| view! { <th scope="col">{text}</th> };
    let row = |offer: &Offer| row(app, offer, style, &currency);
    let caption = words::chargers_caption(found.build.ride.charge_from);
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
        "" => words::TYPED_IN,
        name => name,
    };
    let does = &offer.does;
    let act = match (offer.here, does.fit.is_for_the_pack()) {
        (true, _) => view! { <span class="remark">{words::ON_BOARD}</span> }.into_any(),
        (false, true) => {
            let (label, id) = (words::use_part(name), offer.part.id.clone());
            let take = move |_| app.pick(Slot::Charger, &id);
            view! { <button type="button" aria-label=label on:click=take>{words::USE}</button> }
                .into_any()
        }
        (false, false) => ().into_any(),
    };
    let time = |seconds: Option<f64>| seconds.map_or_else(|| "–".into(), duration);
    let price = |price| format!("{currency}\u{a0}{}", style.value(price, Unit::Money, 3));
    let cells = [
        time(does.full_s),
        time(does.enough_s),
        words::fits(does.fit, style),
        words::amps(does.current_a, style),
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
