//! What's on it? The kit, its parts, the rider and the place.

use super::field::{input_of, inputs_of};
use super::part::card;
use super::{app, question};
use crate::component::{caution, fold};
use crate::text::{self, page};
use leptos::ev;
use leptos::html;
use leptos::prelude::*;
use pitchline_core::{Slot, Unit, totals};

/// What is changed most stands first.
const FIRST: [Slot; 4] = [Slot::Wheel, Slot::WheelPulley, Slot::MotorPulley, Slot::Pack];
/// The rest of the board.
const REST: [Slot; 7] =
    [Slot::Motor, Slot::Controller, Slot::Belt, Slot::Truck, Slot::Deck, Slot::Charger, Slot::Cell];
const MODES: [Slot; 3] = [Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh];
/// Inputs of rider and place that everyone should see.
const OPEN: [(Slot, &str); 6] = [
    (Slot::Rider, "mass_kg"),
    (Slot::Rider, "posture"),
    (Slot::Ride, "cruise_km_h"),
    (Slot::Ride, "grade_percent"),
    (Slot::Place, "surface"),
    (Slot::Place, "air_c"),
];

pub(super) fn on_it() -> AnyView {
    let app = app();
    let cards = |slots: &'static [Slot]| slots.iter().map(|slot| card(*slot)).collect::<Vec<_>>();
    let open = OPEN.iter().filter_map(|(slot, key)| input_of(*slot, key)).collect::<Vec<_>>();
    let told = move || {
        let style = app.style.get();
        app.notices
            .get()
            .iter()
            .map(|notice| crate::component::notice(text::notice(notice, style)))
            .collect::<Vec<_>>()
    };
    let inside = html::div()
        .child((
            kits(),
            html::h3().child("You and your ride").into_any(),
            html::div().class("fields").child(open).into_any(),
            fold("more", "More about rider, place and ride", || {
                let but = |slot: Slot| {
                    let keys = OPEN.iter().filter(|(s, _)| *s == slot).map(|(_, key)| *key);
                    inputs_of(slot, &keys.collect::<Vec<_>>())
                };
                let slots = [Slot::Rider, Slot::Place, Slot::Ride];
                let fields = slots.into_iter().flat_map(but).collect::<Vec<_>>();
                html::div().class("fields").child(fields).into_any()
            }),
            html::h3().child("Parts").into_any(),
            html::div().attr("role", "status").child(told).into_any(),
            html::div().class("cards").child(cards(&FIRST)).into_any(),
            caution(page::CAUTION_BELT),
            fold("more", "The rest of the board", move || {
                html::div().class("cards").child(cards(&REST)).into_any()
            }),
            fold("more", "Ride modes", move || {
                html::div().class("cards").child(cards(&MODES)).into_any()
            }),
            sums(),
        ))
        .into_any();
    question("on-it", page::ON_IT, inside)
}

fn kits() -> AnyView {
    let app = app();
    let chosen = Memo::new(move |_| app.draft.with(|draft| draft.kit.clone()));
    let buttons = move || {
        let catalog = app.catalog();
        let button = |kit: &pitchline_core::catalog::Kit| {
            let (id, picked) = (kit.id.clone(), kit.id.clone());
            html::button()
                .r#type("button")
                .class("kit")
                .attr("aria-pressed", move || if chosen.get() == id { "true" } else { "false" })
                .on(ev::click, move |_| app.start_from(&picked))
                .child((
                    html::strong().child(kit.name.clone()),
                    html::span().child(kit.notes.clone()),
                ))
                .into_any()
        };
        catalog.kits.iter().map(button).collect::<Vec<_>>()
    };
    html::div()
        .class("kits")
        .role("group")
        .attr("aria-label", "Start from a kit")
        .child(buttons)
        .into_any()
}

/// Mass, energy and cost adding up.
fn sums() -> AnyView {
    let app = app();
    let said = move || {
        let style = app.style.get();
        app.build.with(|build| {
            let totals = totals(build.as_ref()?);
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
                if totals.unpriced > 0 {
                    text.push_str(&format!(", {} parts without a price", totals.unpriced));
                }
                rows.push(("Parts and charger", text));
            }
            let row = |(name, value): (&'static str, String)| {
                html::div().child((html::dt().child(name), html::dd().child(value))).into_any()
            };
            Some(rows.into_iter().map(row).collect::<Vec<_>>())
        })
    };
    html::dl().class("sums").child(said).into_any()
}
