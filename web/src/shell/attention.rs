//! What needs attention, each with the way to its cure.

use crate::app::{App, Place, see, use_app};
use crate::platform;
use crate::question::hill::own_hill;
use crate::question::limits::overloaded;
use crate::question::{fit, lead_to, lead_to_part};
use crate::text::fit::Grade;
use crate::text::{self, page, shell};
use leptos::prelude::*;

/// What stands in the way of the answers, worst first.
#[component]
pub(super) fn Attention() -> impl IntoView {
    let app = use_app();
    let concerns = Memo::new(move |_| fit::concerns(app));
    let fit = move || {
        let list = concerns.get();
        let title = shell::check(list.len());
        let one = |(grade, text): (Grade, String)| {
            let shape = grade_class(grade);
            view! {
                <span class=shape>
                    <span class="notice-icon" aria-hidden="true">"!"</span>
                    <span>
                        <strong>{grade.word()}</strong>
                        ": "
                        {text}
                    </span>
                </span>
            }
        };
        (!list.is_empty()).then(|| {
            let more = list.len().saturating_sub(MOST);
            let more = (more > 0).then(|| view! { <span>{shell::and_more(more)}</span> });
            view! {
                <a class="attention" href=see::lead("fit")>
                    <strong>{title}</strong>
                    {list.into_iter().take(MOST).map(one).collect_view()}
                    {more}
                </a>
            }
        })
    };
    view! {
        <div class="attentions" role="status">
            {note(app, missing, lead_to_missing)} {fit} <Waits />
        </div>
    }
}

/// So many are told one by one; all of them stand where it leads to.
const MOST: usize = 3;

const fn grade_class(grade: Grade) -> &'static str {
    match grade {
        Grade::Unsafe => "concern unsafe",
        Grade::DoesNotFit | Grade::Check => "concern",
        Grade::Tight => "concern tight",
    }
}

/// What the answers wait for: they are greyed in every view.
#[component]
pub(super) fn Waits() -> impl IntoView {
    note(use_app(), waits, lead_to_fault)
}

/// The rider's own hill, where it is too much for the board.
#[component]
pub(super) fn TooSteep() -> impl IntoView {
    note(
        use_app(),
        |app| own_hill(app).unwrap_or_default(),
        |_| platform::follow(&see::lead("steep")),
    )
}

/// Ratings that are exceeded.
#[component]
pub(super) fn Overloaded() -> impl IntoView {
    note(use_app(), overloaded, |_| platform::follow(&see::lead("limits")))
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

/// What is wrong with the first faulty field; nothing where none is.
fn waits(app: App) -> String {
    // Some end in a full stop of their own.
    let waits =
        |(_, fault): (Place, &str)| format!("{} {}.", page::WAITS, fault.trim_end_matches('.'));
    app.typed(|typed| typed.fault().map_or_else(String::new, waits))
}

fn lead_to_fault(app: App) {
    if let Some(place) = untrack(|| app.typed(|typed| typed.fault().map(|fault| fault.0))) {
        lead_to(place);
    }
}
