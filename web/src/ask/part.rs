//! One part of the build as a card: pick it, see it, alter it.

use super::field::inputs_of;
use crate::chart::plain;
use crate::component::{HOLDS, Options, button, choice, fold};
use crate::dom::{Node, el, live, said};
use crate::state::{App, Model};
use crate::text::{page, words};
use pitchline_core::{Slot, Unit};

/// The card of a slot.
pub(super) fn card(app: App, slot: Slot) -> Node {
    let label = move || {
        let count = app.found().map_or(1.0, |found| found.build.count(slot));
        let name = words::slot(slot);
        if count > 1.0 { format!("{name} ×{}", plain(count, 0)) } else { name.into() }
    };
    let altered = move || if app.read(|model| model.altered(slot)) { "altered" } else { "" }.into();
    let there = move || if app.read(|model| model.is_unfilled(slot)) { "" } else { "there" }.into();
    let inside = move || {
        // A part that is not there has no figures.
        let there = !app.peek(|model| model.is_unfilled(slot));
        let figures = || fold("figures", "Figures", move || figures(app, slot));
        there.then(|| figures().attr(HOLDS, slot.key())).into()
    };
    let back = move || {
        app.peek(|model| model.altered(slot))
            .then(|| {
                el("p")
                    .class("altered")
                    .with(el("span").class("badge").with("altered by you"))
                    .with(button("Put back", move || app.restore(slot)))
            })
            .into()
    };
    el("section")
        .class("card")
        .with(choice(
            format!("pick-{}", slot.key()),
            label,
            move || app.read(|model| offered(model, slot)),
            move |id| app.pick(slot, id),
        ))
        .with(el("p").class("facts").with(said(move || app.read(|model| facts(model, slot)))))
        .with(live(altered, back))
        .with(live(there, inside))
        .into()
}

/// What the kit offers, and what is on the board.
fn offered(model: &Model, slot: Slot) -> Options {
    let record = model.record(slot);
    let offered = model.loaded.catalog.offered(&model.draft.kit, slot);
    let mut list: Vec<_> = offered.iter().map(|p| (p.id.clone(), p.name.clone())).collect();
    if model.is_unfilled(slot) {
        list.insert(0, (String::new(), page::PICK_ONE.into()));
        return Options { list, chosen: String::new() };
    }
    if !list.iter().any(|(id, _)| *id == record.id) {
        let name = if record.name.is_empty() { "Typed in" } else { &record.name };
        list.push((record.id.clone(), name.into()));
    }
    Options { list, chosen: record.id.clone() }
}

/// Notes, source and every input, for one part at a time.
fn figures(app: App, slot: Slot) -> Node {
    let note = move |text: fn(&Model, Slot) -> String| {
        el("p").class("help").with(said(move || app.read(|model| text(model, slot)))).into()
    };
    Node::from(vec![
        note(|model, slot| model.record(slot).notes.clone()),
        note(|model, slot| match model.record(slot).source.as_str() {
            "" => String::new(),
            source => format!("Source: {source}"),
        }),
        el("div").class("fields").with(inputs_of(app, slot, &[])).into(),
    ])
}

/// What matters of a part at a glance.
fn facts(model: &Model, slot: Slot) -> String {
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
    let (style, record) = (model.style, model.record(slot));
    let value = |key: &str| {
        let index = slot.kind().field_index(key)?;
        Some((record.value(index)?, slot.kind().fields().get(index)?.unit))
    };
    let say = |key: &&str| {
        let (value, unit) = value(key)?;
        let text = style.quantity(value, unit, 3);
        Some(match *key {
            "series" => format!("{text} in series"),
            "parallel" => format!("{text} in parallel"),
            "protection_a" => format!("{text} at most"),
            "speed_cap_km_h" => format!("up to {text}"),
            "current_percent" => format!("{text} of the current"),
            "battery_current_a" => format!("{text} from the pack, each"),
            "motor_current_a" => format!("{text} to each motor"),
            _ => text,
        })
    };
    let mut said: Vec<String> = keys.iter().filter_map(say).collect();
    said.extend(value("mass_kg").map(|(mass, unit)| style.quantity(mass, unit, 2)));
    said.extend(value("price").map(|(price, _)| {
        let currency = &model.loaded.catalog.currency;
        format!("{currency}\u{a0}{}", style.value(price, Unit::Money, 3))
    }));
    said.join(" · ")
}
