//! One part of the build as a card: pick it, see it, alter it.

use crate::app::{App, Fit, see, use_app};
use crate::chart::plain;
use crate::component::{Choice, Fold, Notice as Told, Options};
use crate::question::{Input, Inputs, fit_hint};
use crate::text::fit::{self as said, Grade};
use crate::text::{self, Style, page, setup, words};
use leptos::prelude::*;
use pitchline_core::{Kind, Notice, Record, Slot, Unit};

/// Value of the entry for a part of the reader's own.
const OWN: &str = " own";

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
    let altered = Memo::new(move |_| app.altered(slot) && !app.is_own(slot));
    // A part that is not there has no figures.
    let there = Memo::new(move |_| !app.is_unfilled(slot));
    let own = Memo::new(move |_| app.is_own(slot));
    let facts = move || facts(&app.record(slot), slot, app.style(), &app.catalog().currency);
    let picked = move |id: String| {
        if id == OWN {
            app.use_own(slot, setup::my_own(words::slot(slot)));
        } else {
            app.pick(slot, &id);
        }
    };
    let figures = move || {
        there.get().then(|| match own.get() {
            true => view! { <Own of=slot /> }.into_any(),
            false => view! {
                <Fold class="figures" title=setup::FIGURES holds=slot.key()>
                    <Figures of=slot />
                </Fold>
            }
            .into_any(),
        })
    };
    // What could hurt someone stands beside the part to change, too.
    let danger = move || {
        let style = app.style();
        let notices = app.found().map_or_else(Vec::new, |found| found.notices.clone());
        let here = |notice: &Notice| {
            notice.slots()[0] == slot && Grade::of_notice(notice) == Grade::Unsafe
        };
        let told = notices.iter().filter(|notice| here(notice));
        let word = Grade::Unsafe.word();
        told.map(|told| view! { <Told word text=text::notice(told, style) /> }).collect_view()
    };
    view! {
        <section class="card">
            <Choice id=format!("pick-{}", slot.key()) label options picked />
            {danger}
            <p class="facts">{facts}</p>
            {room(slot)}
            {figures}
            // Below the fields, which stay under the finger when it comes.
            <Show when=move || altered.get()>
                <p class="altered">
                    <span class="badge">{setup::ALTERED}</span>
                    <button type="button" on:click=move |_| app.restore(slot)>
                        {setup::PUT_BACK}
                    </button>
                </p>
            </Show>
        </section>
    }
}

/// Whether a part that often doesn't fit does, where it is picked; leads to the whole answer.
fn room(slot: Slot) -> Option<impl IntoView> {
    let says: fn(&Fit, Style) -> String = match slot {
        Slot::Wheel | Slot::Deck => |fit, style| {
            words::capital(&said::lean(&fit.together.lean, fit.build.deck.riser_m, style))
        },
        Slot::Pack => |fit, style| words::capital(&said::cells(&fit.together.cells, style)),
        _ => return None,
    };
    let text = fit_hint(says);
    // A link without words is none.
    let link = move || {
        let text = text.get();
        (!text.is_empty()).then(|| view! { <a href=see::lead("fit")>{text}</a> })
    };
    Some(view! { <p class="facts fits">{link}</p> })
}

/// What the kit offers, what is on the board, and a part of the reader's own.
fn offered(app: App, slot: Slot) -> Options {
    let mut list: Vec<(String, String)> =
        app.offered(slot).into_iter().map(|part| (part.id, part.name)).collect();
    let chosen = if app.is_unfilled(slot) {
        list.insert(0, (String::new(), page::PICK_ONE.into()));
        String::new()
    } else {
        let Record { id, name, .. } = app.record(slot);
        if !list.iter().any(|(other, _)| *other == id) {
            let name = if name.is_empty() { setup::TYPED_IN.into() } else { name };
            list.push((id.clone(), name));
        }
        id
    };
    if slot.kind() != Kind::Mode && !app.is_own(slot) {
        list.push((OWN.into(), setup::OWN.into()));
    }
    Options { list, chosen }
}

/// A part of the reader's own: the few figures that matter first, the rest folded away.
#[component]
fn Own(of: Slot) -> impl IntoView {
    let (glance, needed) = matter(of);
    let first: Vec<&'static str> = glance.iter().chain(needed).copied().collect();
    let rest = first.clone();
    let inputs = first.into_iter().map(|key| view! { <Input of=of key=key /> }).collect_view();
    view! {
        <div class="fields">{inputs}</div>
        <Fold class="figures" title=setup::MORE_FIGURES holds=of.key()>
            <div class="fields">
                <Inputs of=of but=rest.clone() />
            </div>
        </Fold>
    }
}

/// Notes, source and every input, for one part at a time.
#[component]
fn Figures(of: Slot) -> impl IntoView {
    let slot = of;
    let app = use_app();
    let source = move || match app.record(slot).source {
        source if source.is_empty() => source,
        source => setup::source(&source),
    };
    view! {
        <p class="help">{move || app.record(slot).notes}</p>
        <p class="help">{source}</p>
        <div class="fields">
            <Inputs of=slot />
        </div>
    }
}

/// Keys of the figures that tell a part at a glance, and of those that a part of the reader's own
/// needs beside them.
fn matter(slot: Slot) -> (&'static [&'static str], &'static [&'static str]) {
    match slot {
        Slot::Pack => (&["series", "parallel", "protection_a"], &[]),
        Slot::Cell => (&["capacity_ah", "max_discharge_a"], &["chemistry", "resistance_10s_mohm"]),
        Slot::Motor => (&["kv_rpm_per_v", "max_current_a"], &["resistance_ll_mohm"]),
        Slot::Controller => (&["motor_current_a", "battery_current_a"], &[]),
        Slot::MotorPulley | Slot::WheelPulley => (&["teeth"], &[]),
        Slot::Belt => (&["width_mm"], &["teeth"]),
        Slot::Wheel => (&["diameter_mm"], &[]),
        Slot::Charger => (&["full_v", "current_a"], &[]),
        Slot::Deck => (&["wheelbase_mm"], &["box_length_mm", "box_width_mm", "box_height_mm"]),
        Slot::Truck => (&[], &["hanger_width_mm", "axle_mm"]),
        Slot::ModeLow | Slot::ModeMid | Slot::ModeHigh => {
            (&["current_percent", "speed_cap_km_h"], &[])
        }
        _ => (&[], &[]),
    }
}

/// What matters of a part at a glance.
fn facts(record: &Record, slot: Slot, style: Style, currency: &str) -> String {
    let value = |key: &str| {
        let index = slot.kind().field_index(key)?;
        Some((record.value(index)?, slot.kind().fields().get(index)?.unit))
    };
    let say = |key: &&str| {
        let (value, unit) = value(key)?;
        Some(setup::at_a_glance(key, style.quantity(value, unit, 3)))
    };
    let mut said: Vec<String> = matter(slot).0.iter().filter_map(say).collect();
    said.extend(value("mass_kg").map(|(mass, unit)| style.quantity(mass, unit, 2)));
    said.extend(
        value("price")
            .map(|(price, _)| format!("{currency}\u{a0}{}", style.value(price, Unit::Money, 3))),
    );
    said.join(" · ")
}
