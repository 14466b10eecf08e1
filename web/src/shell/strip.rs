//! The answers that stay in view.

use crate::app::{App, Banded, Place, use_app};
use crate::component::AnswerView;
use crate::platform;
use crate::question::{AMISS, MISFITS, Say, lead_to, lead_to_part, say};
use crate::text::{self, answer, page};
use leptos::prelude::*;
use pitchline_core::fit::Severity;

/// Three answers that stay in view, each leading to its question, and under
/// them what stands in the way, leading to where it is told.
#[component]
pub(super) fn Strip() -> impl IntoView {
    let app = use_app();
    let tile = |to: &'static str, says: Say| {
        let answer = say(app, says);
        view! {
            <button type="button" class="tile" on:click=move |_| platform::go_to(to)>
                <AnswerView answer />
            </button>
        }
    };
    let note = |says: fn(App) -> String, act: fn(App)| {
        view! {
            <button type="button" class="strip-note" on:click=move |_| act(app)>
                {move || says(app)}
            </button>
        }
    };
    let tiles = [
        tile("fast", |app, found, style| {
            let band = app.sure(Banded::Speed).about(found.answers.speed.flat_full.speed_m_s);
            answer::top_speed(&found.answers, band, style)
        }),
        tile("steep", |app, found, style| {
            let band = app.sure(Banded::Hill).about(found.answers.climb.slow.grade);
            answer::slow_hill(&found.answers, band, style)
        }),
        tile("far", |app, found, style| {
            let reach = &found.answers.distance.cruise;
            let band = app.sure(Banded::Distance).about(reach.distance_m);
            answer::cruise_distance(&found.answers, band, style)
        }),
    ];
    view! {
        <nav class="strip" class:waits=move || app.waits() aria-label="Answers">
            {tiles.collect_view()}
            {note(missing, lead_to_missing)}
            {note(misfits, lead_to_misfits)}
            {note(waits, lead_to_fault)}
        </nav>
    }
}

/// The first part that is missing; nothing where all are there.
fn missing(app: App) -> String {
    app.draft(|draft| draft.unfilled().first().map_or_else(String::new, text::pick_another))
}

fn lead_to_missing(app: App) {
    if let Some(slot) = app.peek(|draft| draft.unfilled().first().map(|unfilled| unfilled.slot)) {
        lead_to_part(slot);
    }
}

/// How many things do not fit by their size; tracked.
fn by_size(app: App) -> usize {
    app.fit().map_or(0, |fit| fit.together.count(Severity::DoesNotFit))
}

/// How many parts do not go together; nothing where all do.
fn misfits(app: App) -> String {
    match app.found().map_or(0, |found| found.notices.len()) + by_size(app) {
        0 => String::new(),
        1 => "1 thing does not fit".into(),
        n => format!("{n} things do not fit"),
    }
}

fn lead_to_misfits(app: App) {
    platform::go_to(if untrack(|| by_size(app)) > 0 { AMISS } else { MISFITS });
}

/// What is wrong with the first faulty field; nothing where none is.
fn waits(app: App) -> String {
    let waits = |(_, fault): (Place, &str)| format!("{} {fault}.", page::WAITS);
    app.typed(|typed| typed.fault().map_or_else(String::new, waits))
}

fn lead_to_fault(app: App) {
    if let Some(place) = untrack(|| app.typed(|typed| typed.fault().map(|fault| fault.0))) {
        lead_to(place);
    }
}
