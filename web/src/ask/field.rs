//! An input of the build as a component, by slot and place.

use super::app;
use crate::component::{Choice, NumberField, Options, choice, number_field};
use crate::state::Place;
use crate::text::{self, words};
use leptos::prelude::*;
use pitchline_core::{Field, Need, Slot};

/// The input of a slot with that key; nothing where there is none.
pub(super) fn input_of(slot: Slot, key: &str) -> Option<AnyView> {
    let index = slot.kind().field_index(key)?;
    slot.kind().fields().get(index).map(|field| input((slot, index), field))
}

/// Every input of a slot whose key is not among `but`.
pub(super) fn inputs_of(slot: Slot, but: &[&str]) -> Vec<AnyView> {
    let fields = slot.kind().fields().iter().enumerate();
    fields
        .filter(|(_, field)| !but.contains(&field.key))
        .map(|(index, field)| input((slot, index), field))
        .collect()
}

fn input(place: Place, field: &'static Field) -> AnyView {
    let id = format!("{}-{}", place.0.key(), field.key);
    if field.choices.is_empty() { number(place, field, id) } else { named(place, field, id) }
}

fn number(place: Place, field: &'static Field, id: String) -> AnyView {
    let app = app();
    let (slot, index) = place;
    let value = Memo::new(move |_| app.draft.with(|draft| draft.record(slot).value(index)));
    let entry = Memo::new(move |_| app.typed.with(|typed| typed.get(&place).cloned()));
    let shown = move || {
        let style = app.style.get();
        let value = value.get().or((field.need == Need::Assumed).then_some(field.typical));
        value.map_or_else(String::new, |value| style.input(value, field.unit))
    };
    let unit = Signal::derive(move || app.units().shown(field.unit).symbol);
    number_field(NumberField {
        id,
        label: text::label(field.key),
        help: text::help(field.key),
        unit,
        text: Signal::derive(move || entry.get().map_or_else(shown, |entry| entry.text)),
        fault: Signal::derive(move || entry.get().and_then(|entry| entry.fault)),
        remark: Signal::derive(move || {
            let assumed = slot.holds_part() && value.get().is_none();
            if assumed && field.need == Need::Assumed { "assumed" } else { "" }
        }),
        on_input: Callback::new(move |text| app.type_in(place, text)),
        on_leave: Callback::new(move |()| app.leave(place)),
        on_step: Callback::new(move |steps| app.step(place, steps)),
    })
}

fn named(place: Place, field: &'static Field, id: String) -> AnyView {
    let app = app();
    let (slot, index) = place;
    let options = Signal::derive(move || {
        let value = app.draft.with(|draft| draft.record(slot).value(index));
        let list = field.choices.iter().map(|name| ((*name).into(), words::choice(name).into()));
        Options {
            list: list.collect(),
            chosen: field.choice_name(value.unwrap_or(field.typical)).into(),
        }
    });
    choice(Choice {
        id,
        label: Signal::stored(text::label(field.key).to_string()),
        options,
        on_pick: Callback::new(move |name: String| app.choose(place, &name)),
    })
}
