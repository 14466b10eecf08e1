//! An input of the build as a component, by slot and place.

use crate::browser;
use crate::component::{Done, Options, Shown, choice, number_field};
use crate::dom::Node;
use crate::state::{App, Place};
use crate::text::{self, words};
use pitchline_core::{Field, Slot, Unit};
use std::rc::Rc;

/// The input of a slot with that key; nothing where there is none.
pub fn input_of(app: App, slot: Slot, key: &str) -> Node {
    let index = slot.kind().field_index(key);
    let field = index.and_then(|index| Some((index, slot.kind().fields().get(index)?)));
    field.map(|(index, field)| input(app, (slot, index), field)).into()
}

/// The same number once more, where it is needed beside others: with an id of
/// its own, which begins as given, and with its own label.
pub fn input_as(app: App, slot: Slot, key: &str, place: &'static str, label: &'static str) -> Node {
    let index = slot.kind().field_index(key);
    let field = index.and_then(|index| Some((index, slot.kind().fields().get(index)?)));
    field
        .map(|(index, field)| {
            let id = format!("{place}-{}", id((slot, index), field));
            number(app, (slot, index), field, id, label)
        })
        .into()
}

/// Every input of a slot whose key is not among `but`.
pub(super) fn inputs_of(app: App, slot: Slot, but: &[&str]) -> Node {
    let fields = slot.kind().fields().iter().enumerate();
    fields
        .filter(|(_, field)| !but.contains(&field.key))
        .map(|(index, field)| input(app, (slot, index), field))
        .collect()
}

fn id((slot, _): Place, field: &Field) -> String {
    format!("{}-{}", slot.key(), field.key)
}

/// Leads to an input, through the folds that hide it.
pub fn lead_to(place: Place) {
    if let Some(field) = place.0.kind().fields().get(place.1) {
        browser::reveal(place.0.key(), id(place, field));
    }
}

/// Leads to the list that a slot's part is picked from.
pub fn lead_to_part(slot: Slot) {
    browser::reveal(slot.key(), format!("pick-{}", slot.key()));
}

fn number(app: App, place: Place, field: &'static Field, id: String, label: &'static str) -> Node {
    let shown = move || shown(app, place, field);
    let done = move |done| match done {
        Done::Typed(text) => app.type_in(place, text),
        Done::Left => app.leave(place),
        Done::Stepped(steps) => app.step(place, steps),
    };
    number_field(id, label, text::help(field.key), Rc::new(shown), Rc::new(done))
}

fn input(app: App, place: Place, field: &'static Field) -> Node {
    let id = id(place, field);
    if field.choices.is_empty() {
        return number(app, place, field, id, text::label(place.0.kind(), field.key));
    }
    let options = move || {
        let value = app.read(|model| model.record(place.0).value(place.1));
        let named = |name: &&str| ((*name).into(), words::choice(name).into());
        Options {
            list: field.choices.iter().map(named).collect(),
            chosen: field.choice_name(value.unwrap_or(field.typical)).into(),
        }
    };
    let label = move || text::label(place.0.kind(), field.key).into();
    choice(id, label, options, move |name| app.choose(place, name))
}

fn shown(app: App, place: Place, field: &Field) -> Shown {
    app.read(|model| {
        let value = model.record(place.0).value(place.1);
        let assumed = model.draft.assumed(place.0, place.1).filter(|_| value.is_none());
        let written = value.or(assumed);
        let written = || written.map_or_else(String::new, |v| model.style.input(v, field.unit));
        let entry = model.typed.get(place);
        Shown {
            text: entry.map_or_else(written, |entry| entry.text.clone()),
            unit: match field.unit {
                Unit::Money => model.loaded.catalog.currency.clone(),
                unit => model.style.units.shown(unit).symbol.into(),
            },
            fault: entry.and_then(|entry| entry.fault.clone()),
            remark: if assumed.is_some() && place.0.holds_part() { "assumed" } else { "" },
        }
    })
}
