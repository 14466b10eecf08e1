//! What needs attention, each with the way to its cure.

use crate::app::{App, Place, see, use_app};
use crate::question::{lead_to, lead_to_part};
use crate::text::{self, page};
use leptos::prelude::*;
use pitchline_core::fit::Severity;

/// What stands in the way of the answers, worst first.
#[component]
pub(super) fn Attention() -> impl IntoView {
    let app = use_app();
    let misfits = Memo::new(move |_| misfits(app));
    let fit = move || {
        misfits.with(|says| !says.is_empty()).then(|| {
            view! {
                <a class="attention" href=see::lead("fit")>
                    {misfits}
                </a>
            }
        })
    };
    view! {
        <div class="attentions">
            {note(app, missing, lead_to_missing)} {fit} <Waits />
        </div>
    }
}

/// What the answers wait for: they are greyed in every view.
#[component]
pub(super) fn Waits() -> impl IntoView {
    note(use_app(), waits, lead_to_fault)
}

/// Says something, if there is something to say, and leads to its cure.
fn note(app: App, says: fn(App) -> String, act: fn(App)) -> impl IntoView {
    let says = Memo::new(move |_| says(app));
    move || {
        (says.with(|says| !says.is_empty())).then(|| {
            view! {
                <button type="button" class="attention" on:click=move |_| act(app)>
                    {says}
                </button>
            }
        })
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

/// How many parts do not go together; nothing where all do.
fn misfits(app: App) -> String {
    let by_size = app.fit().map_or(0, |fit| fit.together.count(Severity::DoesNotFit));
    match app.found().map_or(0, |found| found.notices.len()) + by_size {
        0 => String::new(),
        1 => "1 thing doesn't fit".into(),
        n => format!("{n} things don't fit"),
    }
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
