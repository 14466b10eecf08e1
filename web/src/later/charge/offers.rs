//! Every charger on offer, side by side.

use super::found::{Found, Offer};
use super::said::amps;
use crate::component::button;
use crate::dom::{Node, el, live};
use crate::state::{App, Kept};
use crate::text::{Style, duration, percent};
use pitchline_core::{ChargeRefusal, ChargerOffer, Slot, Unit};

pub(super) fn offers(found: &Kept<Found>) -> Node {
    let (found, app) = (found.clone(), found.app);
    let view = move || found.get().map_or(Node::None, |found| table(app, &found));
    Node::from(vec![
        el("h3").with("Which charger").into(),
        el("div").class("chart").with(live(move || app.key(), view)).into(),
    ])
}

fn table(app: App, found: &Found) -> Node {
    let (style, currency) = (app.style(), app.catalog().currency.clone());
    let heads = [
        "Charger".into(),
        "To full".into(),
        format!("To {}", percent(found.build.ride.charge_to)),
        "Fits".into(),
        "Current".into(),
        "Price".into(),
    ];
    let head = |text: String| Node::from(el("th").attr("scope", "col").with(text));
    let row = |offer: &Offer| row(app, offer, style, &currency);
    let caption = format!("Chargers on offer, from {}", percent(found.build.ride.charge_from));
    el("div")
        .class("chart-table")
        .attr("role", "region")
        .attr("tabindex", "0")
        .attr("aria-label", caption.clone())
        .with(
            el("table")
                .with(el("caption").with(el("span").with(caption)))
                .with(
                    el("thead").with(el("tr").with(heads.into_iter().map(head).collect::<Node>())),
                )
                .with(el("tbody").with(found.offers.iter().map(row).collect::<Node>())),
        )
        .into()
}

fn row(app: App, offer: &Offer, style: Style, currency: &str) -> Node {
    let name = match offer.part.name.as_str() {
        "" => "Typed in",
        name => name,
    };
    let does = &offer.does;
    let act: Node = match (offer.here, does.fit.is_for_the_pack()) {
        (true, _) => el("span").class("remark").with("on\u{a0}the\u{a0}board").into(),
        (false, true) => {
            let id = offer.part.id.clone();
            button("Take", move || app.pick(Slot::Charger, &id))
                .attr("aria-label", format!("Take {name}"))
                .into()
        }
        (false, false) => Node::None,
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
    let cell = |text: String| Node::from(el("td").with(text));
    el("tr")
        .with(el("th").attr("scope", "row").with(name.to_string()).with(" ").with(act))
        .with(cells.into_iter().map(cell).collect::<Node>())
        .into()
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
