//! What's on it? The kit, its parts, the rider and the place.

mod part;
mod totals;

use crate::app::use_app;
use crate::component::{Caution, Fold, Notice};
use crate::question::{ELSEWHERE, Input, Inputs, MISFITS};
use crate::text::{self, page};
use leptos::prelude::*;
use part::Card;
use pitchline_core::Slot;
use pitchline_core::catalog::Kit;
use totals::Totals;

/// What is changed most stands first.
const FIRST: &[Slot] = &[Slot::Wheel, Slot::WheelPulley, Slot::MotorPulley, Slot::Pack];
/// The rest of the board.
const REST: &[Slot] = &[
    Slot::Motor,
    Slot::Controller,
    Slot::Belt,
    Slot::Truck,
    Slot::Deck,
    Slot::Charger,
    Slot::Cell,
];
const MODES: &[Slot] = &[Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh];
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

/// The question.
#[component]
pub fn Setup() -> impl IntoView {
    let app = use_app();
    let open = OPEN.map(|(slot, key)| view! { <Input of=slot key=key /> }).collect_view();
    let told = move || {
        let style = app.style();
        let notices = app.found().map_or_else(Vec::new, |found| found.notices.clone());
        let told = notices.iter().map(|told| text::notice(told, style));
        let all: Vec<String> = app.missing().into_iter().chain(told).collect();
        all.into_iter().map(|text| view! { <Notice text /> }).collect_view()
    };
    view! {
        <p class="help">{move || app.catalog().notes.clone()}</p>
        <h3>"You and your ride"</h3>
        <div class="fields">{open}</div>
        <Fold class="more" title="More about rider, place and ride" holds=keys(&ABOUT)>
            <div class="fields">{ABOUT.map(others).collect_view()}</div>
        </Fold>
        <h3>"Parts"</h3>
        // Not a stop of its own; the strip leads here.
        <div id=MISFITS role="status" tabindex="-1">
            {told}
        </div>
        <Cards slots=FIRST />
        <Caution text=page::CAUTION_BELT />
        <Fold class="more" title="The rest of the board" holds=keys(REST)>
            <Cards slots=REST />
        </Fold>
        <Fold class="more" title="Ride modes" holds=keys(MODES)>
            <Cards slots=MODES />
        </Fold>
        <Totals />
    }
}

/// What a fold of these slots says that it holds.
fn keys(slots: &[Slot]) -> String {
    slots.iter().map(|slot| slot.key()).collect::<Vec<_>>().join(" ")
}

#[component]
fn Cards(slots: &'static [Slot]) -> impl IntoView {
    let cards = slots.iter().copied().map(|slot| view! { <Card of=slot /> }).collect_view();
    view! { <div class="cards">{cards}</div> }
}

/// The inputs of rider, place or ride that stand nowhere else.
fn others(slot: Slot) -> impl IntoView {
    let elsewhere = ELSEWHERE.iter().map(|(at, key, _)| (at, key));
    let shown = OPEN.iter().map(|(at, key)| (at, key)).chain(elsewhere);
    let but: Vec<&str> = shown.filter(|(at, _)| **at == slot).map(|(_, key)| *key).collect();
    view! { <Inputs of=slot but=but /> }
}

/// The kits to start from.
#[component]
pub fn Kits() -> impl IntoView {
    let app = use_app();
    let one = move |kit: Kit| {
        let (id, picked) = (kit.id.clone(), kit.id);
        let chosen = move || app.draft(|draft| draft.kit == id).to_string();
        view! {
            <button
                type="button"
                class="kit"
                aria-pressed=chosen
                on:click=move |_| app.start_from(&picked)
            >
                <strong>{kit.name}</strong>
                <span>{kit.notes}</span>
            </button>
        }
    };
    view! {
        <div class="kits" role="group" aria-label="Start from a kit">
            <For
                each=move || app.catalog().kits.clone()
                key=|kit| kit.id.clone()
                children=one
            />
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A slot that no card shows could not be changed. What is measured at the bench stands under
    /// the question that it is for.
    #[test]
    fn every_slot_but_the_bench_is_shown_once() {
        let mut shown: Vec<Slot> =
            [FIRST, REST, MODES, &ABOUT].into_iter().flatten().copied().collect();
        shown.sort_by_key(|slot| Slot::ALL.iter().position(|other| other == slot));
        let all: Vec<Slot> =
            Slot::ALL.iter().copied().filter(|slot| *slot != Slot::Bench).collect();
        assert_eq!(shown, all);
    }
}
