//! The board, its three answers, what needs attention, and every question with its answer in a line.

use super::attention::{Attention, Overloaded, TooSteep};
use super::board::Board;
use super::differs::{Differs, Since};
use super::summary::Summary;
use super::tiles::Tiles;
use crate::app::{see, use_app};
use crate::question::lead_to_part;
use crate::question::registry::{Group, QUESTIONS, Question};
use crate::text::page;
use leptos::prelude::*;
use pitchline_core::Slot;

/// The first view.
#[component]
pub(super) fn Overview() -> impl IntoView {
    let group = |group: Group| {
        let of = QUESTIONS.iter().filter(|question| question.group == group);
        let heading = format!("group-{group:?}").to_ascii_lowercase();
        view! {
            <section aria-labelledby=heading.clone()>
                <h2 id=heading.clone()>{group.title()}</h2>
                <ul>{of.map(entry).collect_view()}</ul>
            </section>
        }
    };
    view! {
        <Board on_pick=Callback::new(picked) />
        <Summary />
        <Tiles />
        <Since />
        <Attention />
        <TooSteep />
        <Overloaded />
        <Differs />
        <nav class="list" aria-label=page::QUESTIONS>
            {Group::ALL.map(group).collect_view()}
        </nav>
    }
}

/// Leads to the part that was tapped. Whoever taps the cells means the pack, and theirs is the next list.
fn picked(slot: Slot) {
    lead_to_part(if slot == Slot::Cell { Slot::Pack } else { slot });
}

fn entry(question: &'static Question) -> impl IntoView {
    let app = use_app();
    let line = Memo::new(move |_| (question.line)(app));
    view! {
        <li>
            <a href=see::lead(question.id)>
                <strong>{question.title}</strong>
                " "
                <span class:alert=move || line.with(|line| line.alert)>
                    {move || line.with(|line| line.text.clone())}
                </span>
            </a>
        </li>
    }
}
