//! What's on it? The kit, its parts, the rider and the place.

use super::field::{input_of, inputs_of};
use super::part::card;
use super::question;
use crate::component::{HOLDS, button, caution, fold, notice};
use crate::dom::{Node, el, live, said};
use crate::state::{App, Model};
use crate::text::{self, page};
use pitchline_core::catalog::Kit;
use pitchline_core::{Slot, Unit, totals};

/// What is changed most stands first.
const FIRST: [Slot; 4] = [Slot::Wheel, Slot::WheelPulley, Slot::MotorPulley, Slot::Pack];
/// The rest of the board.
const REST: [Slot; 7] =
    [Slot::Motor, Slot::Controller, Slot::Belt, Slot::Truck, Slot::Deck, Slot::Charger, Slot::Cell];
const MODES: [Slot; 3] = [Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh];
/// Rider, place and ride.
const ABOUT: [Slot; 3] = [Slot::Rider, Slot::Place, Slot::Ride];
/// What the folds say that they hold; written out, since joining costs bytes.
const REST_KEYS: &str = "motor controller belt truck deck charger cell";
const MODE_KEYS: &str = "mode_low mode_mid mode_high";
const ABOUT_KEYS: &str = "rider place ride";
/// Inputs of rider and place that everyone should see.
const OPEN: [(Slot, &str); 6] = [
    (Slot::Rider, "mass_kg"),
    (Slot::Ride, "cruise_km_h"),
    (Slot::Ride, "grade_percent"),
    (Slot::Place, "air_c"),
    (Slot::Rider, "posture"),
    (Slot::Place, "surface"),
];

/// Inputs that stand under the question that they are for.
const ELSEWHERE: [(Slot, &str); 11] = [
    (Slot::Ride, "start_charge_percent"),
    (Slot::Place, "charge_air_c"),
    (Slot::Ride, "charge_from_percent"),
    (Slot::Ride, "charge_to_percent"),
    (Slot::Ride, "charge_time_h"),
    (Slot::Place, "energy_price_kwh"),
    (Slot::Ride, "outing"),
    (Slot::Ride, "stops_per_km"),
    (Slot::Ride, "rest_s"),
    (Slot::Ride, "acceleration_m_s2"),
    (Slot::Ride, "climb_m_per_km"),
];

/// Id of what does not fit.
pub(super) const MISFITS: &str = "misfits";

pub(super) fn on_it(app: App) -> Node {
    let open = OPEN.iter().map(|(slot, key)| input_of(app, *slot, key)).collect::<Node>();
    let told = move || {
        let style = app.style();
        let notices = app.found().map_or_else(Vec::new, |found| found.notices.clone());
        let missing = app.read(Model::missing);
        let told = notices.iter().map(|told| text::notice(told, style));
        missing.into_iter().chain(told).map(notice).collect()
    };
    let key = move || app.read(|model| model.missing().concat()) + &app.key();
    let inside = vec![
        kits(app),
        el("p").class("help").with(said(move || app.catalog().notes.clone())).into(),
        el("h3").with("You and your ride").into(),
        el("div").class("fields").with(open).into(),
        fold("more", "More about rider, place and ride", move || others(app))
            .attr(HOLDS, ABOUT_KEYS)
            .into(),
        el("h3").with("Parts").into(),
        el("div")
            .attr("id", MISFITS)
            .attr("role", "status")
            // Not a stop of its own; the strip leads here.
            .attr("tabindex", "-1")
            .with(live(key, told))
            .into(),
        cards(app, &FIRST),
        caution(page::CAUTION_BELT),
        fold("more", "The rest of the board", move || cards(app, &REST))
            .attr(HOLDS, REST_KEYS)
            .into(),
        fold("more", "Ride modes", move || cards(app, &MODES)).attr(HOLDS, MODE_KEYS).into(),
        el("dl").class("sums").with(live(move || app.key(), move || sums(app))).into(),
    ];
    question("on-it", page::ON_IT, inside)
}

fn cards(app: App, slots: &'static [Slot]) -> Node {
    let cards = slots.iter().map(|slot| card(app, *slot)).collect::<Node>();
    el("div").class("cards").with(cards).into()
}

/// The inputs of rider, place and ride that stand nowhere else.
fn others(app: App) -> Node {
    let rest = |slot: Slot| {
        let shown = OPEN.iter().chain(&ELSEWHERE).filter(|(s, _)| *s == slot);
        inputs_of(app, slot, &shown.map(|(_, key)| *key).collect::<Vec<_>>())
    };
    el("div").class("fields").with(ABOUT.into_iter().map(rest).collect::<Node>()).into()
}

fn kits(app: App) -> Node {
    let one = move |kit: &Kit| {
        let (id, picked) = (kit.id.clone(), kit.id.clone());
        button("", move || app.start_from(&picked))
            .class("kit")
            .pressed(move || app.read(|model| model.draft.kit == id))
            .with(el("strong").with(kit.name.clone()))
            .with(el("span").with(kit.notes.clone()))
            .into()
    };
    let key = move || app.catalog().kits.iter().map(|kit| kit.id.clone() + " ").collect();
    let view = move || app.catalog().kits.iter().map(one).collect();
    el("div")
        .class("kits")
        .attr("role", "group")
        .attr("aria-label", "Start from a kit")
        .with(live(key, view))
        .into()
}

/// Mass, energy and cost adding up.
fn sums(app: App) -> Node {
    let Some(found) = app.found() else { return Node::None };
    let (style, totals) = (app.style(), totals(&found.build));
    let kg = |mass| style.quantity(mass, Unit::Kilogram, 3);
    let mut rows = vec![
        ("Board", kg(totals.board_mass_kg)),
        ("With rider and bag", kg(totals.total_mass_kg)),
        ("Pack on its label", style.quantity(totals.nameplate_wh, Unit::WattHour, 3)),
        ("Gear ratio", style.fixed(totals.gear_ratio, 2)),
    ];
    if totals.price > 0.0 {
        let currency = app.catalog().currency.clone();
        let mut text = format!("{currency}\u{a0}{}", style.fixed(totals.price, 0));
        match totals.unpriced {
            0 => {}
            1 => text.push_str(", one part without a price"),
            n => text.push_str(&format!(", {n} parts without a price")),
        }
        rows.push(("Parts and charger", text));
    }
    let row = |(name, value): (&'static str, String)| {
        el("div").with(el("dt").with(name)).with(el("dd").with(value)).into()
    };
    rows.into_iter().map(row).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Else a fault within would be told without a way to it.
    #[test]
    fn folds_name_the_slots_they_hold() {
        let folds = [(&REST[..], REST_KEYS), (&MODES, MODE_KEYS), (&ABOUT, ABOUT_KEYS)];
        for (slots, keys) in folds {
            let held: Vec<&str> = slots.iter().map(|slot| slot.key()).collect();
            assert_eq!(held.join(" "), keys);
        }
    }
}
