//! One part of the build as a card: pick it, see it, alter it.

use crate::app::{App, use_app};
use crate::chart::plain;
use crate::component::{Choice, Fold, Options};
use crate::question::Inputs;
use crate::text::{Style, page, words};
use leptos::prelude::*;
use pitchline_core::{Record, Slot, Unit};

/// The card of a slot.
#[component]
pub(super) fn Card(of: Slot) -> impl IntoView {
    let slot = of;
    let app = use_app();
    let label = Signal::derive(move || {
        let count = app.found().map_or(1.0, |found| found.build.count(slot));
        let name = words::slot(slot);
        if count > 1.0 { format!("{name} ×{}", plain(count, 0)) } else { name.into() }
    });
    let options = Memo::new(move |_| offered(app, slot));
    let altered = Memo::new(move |_| app.altered(slot));
    // A part that is not there has no figures.
    let there = Memo::new(move |_| !app.is_unfilled(slot));
    let facts = move || facts(&app.record(slot), slot, app.style(), &app.catalog().currency);
    view! {
        <section class="card">
            <Choice
                id=format!("pick-{}", slot.key())
                label
                options
                picked=move |id: String| app.pick(slot, &id)
            />
            <p class="facts">{facts}</p>
            <Show when=move || altered.get()>
                <p class="altered">
                    <span class="badge">"altered by you"</span>
                    <button type="button" on:click=move |_| app.restore(slot)>
                        "Put back"
                    </button>
                </p>
            </Show>
            <Show when=move || there.get()>
                <Fold class="figures" title="Figures" holds=slot.key()>
                    <Figures of=slot />
                </Fold>
            </Show>
        </section>
    }
}

/// What the kit offers, and what is on the board.
fn offered(app: App, slot: Slot) -> Options {
    let mut list: Vec<(String, String)> =
        app.offered(slot).into_iter().map(|part| (part.id, part.name)).collect();
    if app.is_unfilled(slot) {
        list.insert(0, (String::new(), page::PICK_ONE.into()));
        return Options { list, chosen: String::new() };
    }
    let Record { id, name, .. } = app.record(slot);
    if !list.iter().any(|(other, _)| *other == id) {
        list.push((id.clone(), if name.is_empty() { "Typed in".into() } else { name }));
    }
    Options { list, chosen: id }
}

/// Notes, source and every input, for one part at a time.
#[component]
fn Figures(of: Slot) -> impl IntoView {
    let slot = of;
    let app = use_app();
    let source = move || match app.record(slot).source {
        source if source.is_empty() => source,
        source => format!("Source: {source}"),
    };
    view! {
        <p class="help">{move || app.record(slot).notes}</p>
        <p class="help">{source}</p>
        <div class="fields">
            <Inputs of=slot />
        </div>
    }
}

/// What matters of a part at a glance.
fn facts(record: &Record, slot: Slot, style: Style, currency: &str) -> String {
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
    said.extend(
        value("price")
            .map(|(price, _)| format!("{currency}\u{a0}{}", style.value(price, Unit::Money, 3))),
    );
    said.join(" · ")
}
