//! What's on it? The kit, its parts, the rider and the place.

mod part;
mod totals;

use crate::app::{App, is_own, use_app};
use crate::component::{Caution, Fold, Notice, keyed};
use crate::question::{ELSEWHERE, Input, Inputs, LeadToGears, LeadToWires, MISFITS};
use crate::text::{self, page, setup};
use leptos::prelude::*;
use part::Card;
use pitchline_core::catalog::Kit;
use pitchline_core::{Draft, Kind, Slot, Unit};
use totals::Totals;

/// Parts that are looked for together.
struct Group {
    title: &'static str,
    slots: &'static [Slot],
}

const GROUPS: [Group; 5] = [
    Group {
        title: setup::DRIVE,
        slots: &[Slot::Motor, Slot::MotorPulley, Slot::WheelPulley, Slot::Belt],
    },
    Group { title: setup::WHEELS, slots: &[Slot::Wheel, Slot::Truck] },
    Group { title: setup::PACK, slots: &[Slot::Pack, Slot::Cell, Slot::Charger] },
    Group { title: setup::DECK, slots: &[Slot::Deck] },
    Group {
        title: setup::CONTROLLER,
        slots: &[Slot::Controller, Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh],
    },
];
/// Rider, place and ride.
const ABOUT: [Slot; 3] = [Slot::Rider, Slot::Place, Slot::Ride];
/// Inputs of rider and place that everyone should see.
const OPEN: [(Slot, &str); 6] = [
    (Slot::Rider, "mass_kg"),
    (Slot::Ride, "cruise_km_h"),
    (Slot::Ride, "grade_percent"),
    (Slot::Place, "air_c"),
    (Slot::Rider, "posture"),
    (Slot::Place, "surface"),
];

/// What is on the board, who rides it and where.
#[component]
pub fn Setup() -> impl IntoView {
    let app = use_app();
    let told = move || {
        let style = app.style();
        let notices = app.found().map_or_else(Vec::new, |found| found.notices.clone());
        let told = notices.iter().map(|told| text::notice(told, style));
        let all: Vec<String> = app.missing().into_iter().chain(told).collect();
        all.into_iter().map(|text| view! { <Notice text /> }).collect_view()
    };
    view! {
        <Kits />
        // Not a stop of its own; what needs attention leads here.
        <div id=MISFITS role="status" tabindex="-1">
            {told}
        </div>
        <div class="groups">
            <Fold
                class="group"
                title=setup::RIDER
                hint=hint(rider)
                holds=keys(&ABOUT)
                begins_open=true
            >
                <Riding />
            </Fold>
            {GROUPS.iter().map(group).collect_view()}
        </div>
        <Totals />
    }
}

/// Says what a closed group holds.
fn hint(say: impl Fn(App) -> String + Send + Sync + 'static) -> Signal<String> {
    let app = use_app();
    Signal::derive(move || say(app))
}

/// The rider and the ride in a line.
fn rider(app: App) -> String {
    let style = app.style();
    let value = |slot: Slot, key, unit| {
        app.draft(|draft| draft.value(slot, key)).map(|value| style.quantity(value, unit, 2))
    };
    let all = [
        value(Slot::Rider, "mass_kg", Unit::Kilogram),
        value(Slot::Ride, "cruise_km_h", Unit::KilometrePerHour),
        value(Slot::Ride, "grade_percent", Unit::Percent),
    ];
    all.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// Names of the parts in some slots.
fn names(app: App, slots: &[Slot]) -> String {
    let parts = slots.iter().filter(|slot| slot.kind() != Kind::Mode);
    let names = parts.map(|slot| app.record(*slot).name).filter(|name| !name.is_empty());
    names.collect::<Vec<_>>().join(" · ")
}

fn group(group: &'static Group) -> impl IntoView {
    let Group { title, slots } = group;
    let cards = |slots: &'static [Slot]| {
        slots.iter().copied().map(|slot| view! { <Card of=slot /> }).collect_view()
    };
    view! {
        <Fold class="group" title=*title hint=hint(|app| names(app, slots)) holds=keys(slots)>
            {slots.contains(&Slot::MotorPulley).then(|| view! { <LeadToGears /> })}
            {slots.contains(&Slot::Pack).then(|| view! { <LeadToWires /> })}
            <div class="cards">{cards(slots)}</div>
            {slots.contains(&Slot::Belt).then(|| view! { <Caution text=page::CAUTION_BELT /> })}
        </Fold>
    }
}

/// Rider, ride and place: what everyone should see, and the rest folded away.
#[component]
fn Riding() -> impl IntoView {
    let open = OPEN.map(|(slot, key)| view! { <Input of=slot key=key /> }).collect_view();
    view! {
        <div class="fields">{open}</div>
        // Who has said how they ride asks which pulleys that takes.
        <LeadToGears />
        <Fold class="more" title=setup::MORE_RIDER holds=keys(&ABOUT)>
            <div class="fields">{ABOUT.map(others).collect_view()}</div>
        </Fold>
    }
}

/// What a fold of these slots says that it holds.
fn keys(slots: &[Slot]) -> String {
    slots.iter().map(|slot| slot.key()).collect::<Vec<_>>().join(" ")
}

/// The inputs of rider, place or ride that stand nowhere else.
fn others(slot: Slot) -> impl IntoView {
    let elsewhere = ELSEWHERE.iter().map(|(at, key, _)| (at, key));
    let shown = OPEN.iter().map(|(at, key)| (at, key)).chain(elsewhere);
    let but: Vec<&str> = shown.filter(|(at, _)| **at == slot).map(|(_, key)| *key).collect();
    view! { <Inputs of=slot but=but /> }
}

/// The kit that the board is of; none where every part is the reader's own.
fn kit_of(draft: &Draft) -> String {
    if is_own(draft) { String::new() } else { draft.kit.clone() }
}

/// The kits to start from, and what the maker says of the chosen one.
#[component]
fn Kits() -> impl IntoView {
    let app = use_app();
    let chosen = Memo::new(move |_| app.draft(kit_of));
    let notes = Memo::new(move |_| {
        let catalog = app.catalog();
        catalog.kit(&chosen.get()).map(|kit| kit.notes.clone()).unwrap_or_default()
    });
    let one = move |kit: Kit| {
        let (id, picked) = (kit.id.clone(), kit.id);
        let pressed = move || chosen.with(|chosen| *chosen == id).to_string();
        view! {
            <button
                type="button"
                class="kit"
                aria-pressed=pressed
                on:click=move |_| app.start_from(&picked)
            >
                <strong>{kit.name}</strong>
            </button>
        }
        .into_any()
    };
    view! {
        <div class="kits" role="group" aria-label=setup::KITS>
            {keyed(move || app.catalog().kits.clone(), |kit| kit.id.clone(), one)}
        </div>
        {move || notes.with(|notes| (!notes.is_empty()).then(|| view! { <p class="help">{notes.clone()}</p> }))}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A slot that no card shows could not be changed. What is measured at the bench stands under
    /// the question that it is for.
    #[test]
    fn every_slot_but_the_bench_is_shown_once() {
        let parts = GROUPS.iter().flat_map(|group| group.slots);
        let mut shown: Vec<Slot> = parts.chain(&ABOUT).copied().collect();
        shown.sort_by_key(|slot| Slot::ALL.iter().position(|other| other == slot));
        let all: Vec<Slot> =
            Slot::ALL.iter().copied().filter(|slot| *slot != Slot::Bench).collect();
        assert_eq!(shown, all);
    }
}
