//! One part of the build as a card: pick it, see it, alter it.

use super::app;
use super::field::inputs_of;
use crate::component::{Choice, Options, choice, fold};
use crate::text::{Style, words};
use leptos::ev;
use leptos::html;
use leptos::prelude::*;
use pitchline_core::{Record, Slot, Unit};

/// The card of a slot.
pub(super) fn card(slot: Slot) -> AnyView {
    let app = app();
    let options = Signal::derive(move || {
        let catalog = app.catalog();
        app.draft.with(|draft| {
            let record = draft.record(slot);
            let offered = catalog.offered(&draft.kit, slot);
            let mut list: Vec<_> =
                offered.iter().map(|part| (part.id.clone(), part.name.clone())).collect();
            if !list.iter().any(|(id, _)| *id == record.id) {
                let name = if record.name.is_empty() { "Typed in" } else { &record.name };
                list.push((record.id.clone(), name.into()));
            }
            Options { list, chosen: record.id.clone() }
        })
    });
    let count = Memo::new(move |_| app.build.with(|build| build.map_or(1.0, |b| b.count(slot))));
    let label = Signal::derive(move || {
        let count = count.get();
        let name = words::slot(slot);
        if count > 1.0 { format!("{name} ×{count}") } else { name.to_string() }
    });
    let facts = move || {
        let style = app.style.get();
        let currency = app.catalog().currency.clone();
        app.draft.with(|draft| facts(slot, draft.record(slot), style, &currency))
    };
    let altered = Memo::new(move |_| app.altered(slot));
    let back = move || {
        altered.get().then(|| {
            html::p()
                .class("altered")
                .child((
                    html::span().class("badge").child("altered by you"),
                    html::button()
                        .r#type("button")
                        .on(ev::click, move |_| app.restore(slot))
                        .child("Put back"),
                ))
                .into_any()
        })
    };
    html::section()
        .class("card")
        .child((
            choice(Choice {
                id: format!("pick-{}", slot.key()),
                label,
                options,
                on_pick: Callback::new(move |id: String| app.pick(slot, &id)),
            }),
            html::p().class("facts").child(facts).into_any(),
            back,
            fold("figures", "Figures", move || {
                let notes = app.draft.with_untracked(|draft| {
                    let record = draft.record(slot);
                    let texts = [record.notes.clone(), source_line(record)];
                    texts.into_iter().filter(|t| !t.is_empty()).collect::<Vec<_>>()
                });
                let notes = notes.into_iter().map(|text| html::p().class("help").child(text));
                html::div()
                    .child((
                        notes.collect::<Vec<_>>(),
                        html::div().class("fields").child(inputs_of(slot, &[])).into_any(),
                    ))
                    .into_any()
            }),
        ))
        .into_any()
}

fn source_line(record: &Record) -> String {
    if record.source.is_empty() { String::new() } else { format!("Source: {}", record.source) }
}

/// What matters of a part at a glance.
fn facts(slot: Slot, record: &Record, style: Style, currency: &str) -> String {
    let keys: &[&str] = match slot {
        Slot::Pack => &["series", "parallel", "protection_a"],
        Slot::Cell => &["capacity_ah", "max_discharge_a"],
        Slot::Motor => &["kv_rpm_per_v", "max_current_a"],
        Slot::Controller => &["motor_current_a", "battery_current_a"],
        Slot::MotorPulley | Slot::WheelPulley => &["teeth"],
        Slot::Belt => &["width_mm"],
        Slot::Wheel => &["diameter_mm"],
        Slot::Charger => &["full_v", "current_a"],
        Slot::Deck => &["wheelbase_mm"],
        Slot::ModeLow | Slot::ModeMid | Slot::ModeHigh => &["current_percent", "speed_cap_km_h"],
        _ => &[],
    };
    let fields = slot.kind().fields();
    let value = |key: &str| {
        let index = slot.kind().field_index(key)?;
        Some((record.value(index)?, fields.get(index)?.unit))
    };
    let mut said: Vec<String> = keys
        .iter()
        .filter_map(|key| {
            let (value, unit) = value(key)?;
            let text = style.quantity(value, unit, 3);
            Some(match *key {
                "series" => format!("{text} in series"),
                "parallel" => format!("{text} in parallel"),
                "speed_cap_km_h" => format!("up to {text}"),
                "current_percent" => format!("{text} of the current"),
                "battery_current_a" => format!("{text} from the pack"),
                "motor_current_a" => format!("{text} to each motor"),
                _ => text,
            })
        })
        .collect();
    if let Some((mass, unit)) = value("mass_kg").filter(|_| slot.holds_part()) {
        said.push(style.quantity(mass, unit, 2));
    }
    if let Some((price, _)) = value("price") {
        said.push(format!("{currency}\u{a0}{}", style.quantity(price, Unit::Money, 3)));
    }
    said.join(" · ")
}
