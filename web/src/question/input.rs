//! An input of the build, by slot and key.

use crate::app::{App, Place, use_app};
use crate::component::{Choice, Done, NumberField, Options, Shown};
use crate::platform;
use crate::text::{self, words};
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

/// Leads to an input, through the folds that hide it.
pub fn lead_to(place: Place) {
    if let Some(field) = place.0.kind().fields().get(place.1) {
        platform::reveal(place.0.key(), id(place, field));
    }
}

/// Leads to the list that a slot's part is picked from.
pub fn lead_to_part(slot: Slot) {
    platform::reveal(slot.key(), format!("pick-{}", slot.key()));
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
    view! { <Choice id label options picked /> }.into_any()
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
    let written =
        || value.or(assumed).map_or_else(String::new, |value| style.input(value, field.unit));
    let (text, fault) = app.typed(|typed| match typed.get(place) {
        Some(entry) => (entry.text.clone(), entry.fault.clone()),
        None => (written(), None),
    });
    Shown {
        text,
        unit: match field.unit {
            Unit::Money => app.catalog().currency.clone(),
            unit => style.units.shown(unit).symbol.into(),
        },
        fault,
        remark: if assumed.is_some() && place.0.holds_part() { "assumed" } else { "" },
    }
}
