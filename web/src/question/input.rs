//! An input of the build, by slot and key.

use crate::app::{App, Place, see, use_app};
use crate::component::{Choice, Done, NumberField, Options, Shown};
use crate::platform;
use crate::text::{self, page, words};
use leptos::prelude::*;
use pitchline_core::{Field, Slot, Unit};

/// The input of a slot with that key; nothing where there is none.
#[component]
pub fn Input(of: Slot, key: &'static str) -> impl IntoView {
    let app = use_app();
    find(of, key).map(|(place, field)| input(app, place, field))
}

/// The same number once more, where it is needed beside others: with an id of
/// its own, which begins as given, and with its own label.
#[component]
pub fn InputAs(
    of: Slot,
    key: &'static str,
    place: &'static str,
    label: &'static str,
) -> impl IntoView {
    let app = use_app();
    find(of, key)
        .map(|(at, field)| number(app, at, field, format!("{place}-{}", id(at, field)), label))
}

/// Every input of a slot whose key is not among `but`.
#[component]
pub fn Inputs(of: Slot, #[prop(optional)] but: Vec<&'static str>) -> impl IntoView {
    let app = use_app();
    let fields = of.kind().fields().iter().enumerate();
    fields
        .filter(|(_, field)| !but.contains(&field.key))
        .map(|(index, field)| input(app, (of, index), field))
        .collect_view()
}

fn find(slot: Slot, key: &str) -> Option<(Place, &'static Field)> {
    let index = slot.kind().field_index(key)?;
    Some(((slot, index), slot.kind().fields().get(index)?))
}

fn id((slot, _): Place, field: &Field) -> String {
    format!("{}-{}", slot.key(), field.key)
}

/// Inputs that stand in the view that they are for, by its key. All others stand with the build.
pub const ELSEWHERE: [(Slot, &str, &str); 11] = [
    (Slot::Ride, "start_charge_percent", "far"),
    (Slot::Place, "charge_air_c", "charge"),
    (Slot::Ride, "charge_from_percent", "charge"),
    (Slot::Ride, "charge_to_percent", "charge"),
    (Slot::Ride, "charge_time_h", "charge"),
    (Slot::Place, "energy_price_kwh", "charge"),
    (Slot::Ride, "outing", "far"),
    (Slot::Ride, "stops_per_km", "far"),
    (Slot::Ride, "rest_s", "far"),
    (Slot::Ride, "acceleration_m_s2", "far"),
    (Slot::Ride, "climb_m_per_km", "far"),
];

/// Key of the view of what is on the board, where it does not stand beside every other.
const BUILD: &str = "build";

/// Leads to an input, to its view and through the folds that hide it.
pub fn lead_to(place: Place) {
    let Some(field) = place.0.kind().fields().get(place.1) else { return };
    let elsewhere = ELSEWHERE.iter().find(|(slot, key, _)| *slot == place.0 && *key == field.key);
    let view = if place.0 == Slot::Bench { "fit" } else { elsewhere.map_or(BUILD, |at| at.2) };
    platform::reveal(place.0.key(), id(place, field), see::lead(view));
}

/// Leads to the list that a slot's part is picked from.
pub fn lead_to_part(slot: Slot) {
    platform::reveal(slot.key(), format!("pick-{}", slot.key()), see::lead(BUILD));
}

/// The fold with every pairing of pulleys and wheel, by what it holds.
pub const GEARS: &str = "gears";
/// Id of what is suggested there.
pub const SUGGESTED: &str = "suggested";

/// The fold with fuse and wires, by what it holds and by the id of that.
pub const WIRES: &str = "wires";

/// Leads to the comparison of all pulleys and wheels.
#[component]
pub fn LeadToGears() -> impl IntoView {
    lead_to_fold(GEARS, SUGGESTED, "fast", page::GEARS)
}

/// Leads to fuse and wires.
#[component]
pub fn LeadToWires() -> impl IntoView {
    lead_to_fold(WIRES, WIRES, "limits", page::WIRES)
}

fn lead_to_fold(
    holds: &'static str,
    id: &'static str,
    view: &'static str,
    text: &'static str,
) -> AnyView {
    let go = move |_| platform::reveal(holds, id.into(), see::lead(view));
    view! {
        <p>
            <button type="button" class="lead-to" on:click=go>
                {text}
            </button>
        </p>
    }
    .into_any()
}

fn input(app: App, place: Place, field: &'static Field) -> AnyView {
    let id = id(place, field);
    let label = text::label(place.0.kind(), field.key);
    if field.choices.is_empty() {
        return number(app, place, field, id, label);
    }
    let options = Memo::new(move |_| {
        let value = app.draft(|draft| draft.record(place.0).value(place.1));
        let named = |name: &&str| ((*name).into(), words::choice(name).into());
        Options {
            list: field.choices.iter().map(named).collect(),
            chosen: field.choice_name(value.unwrap_or(field.typical)).into(),
        }
    });
    let picked = move |name: String| app.choose(place, &name);
    view! { <Choice id label options picked help=text::help(field.key) /> }.into_any()
}

fn number(
    app: App,
    place: Place,
    field: &'static Field,
    id: String,
    label: &'static str,
) -> AnyView {
    let shown = Memo::new(move |_| shown(app, place, field));
    let done = move |done| match done {
        Done::Typed(text) => app.type_in(place, text),
        Done::Left => app.leave(place),
        Done::Stepped(steps) => app.step(place, steps),
    };
    view! { <NumberField id label help=text::help(field.key) shown done /> }.into_any()
}

fn shown(app: App, place: Place, field: &Field) -> Shown {
    let style = app.style();
    let (value, assumed) = app.draft(|draft| {
        let value = draft.record(place.0).value(place.1);
        (value, draft.assumed(place.0, place.1).filter(|_| value.is_none()))
    });
    let unit = style.units.field(place.0.kind(), field);
    let written = || value.or(assumed).map_or_else(String::new, |value| style.input(value, unit));
    let (text, fault) = app.typed(|typed| match typed.get(place) {
        Some(entry) => (entry.text.clone(), entry.fault.clone()),
        None => (written(), None),
    });
    Shown {
        text,
        unit: match field.unit {
            Unit::Money => app.catalog().currency.clone(),
            _ => unit.symbol.into(),
        },
        fault,
        remark: if assumed.is_some() && place.0.holds_part() { page::ASSUMED } else { "" },
    }
}
