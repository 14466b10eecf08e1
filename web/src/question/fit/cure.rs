//! What mends a misfit: a button that takes another part, or leads to what to change.

use crate::app::{Place, use_app};
use crate::question::{lead_to, lead_to_part};
use crate::text::{self, fit as said, setup, words};
use leptos::prelude::*;
use pitchline_core::{Draft, Record, Slot};

/// A button's words and what it does.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Mend {
    words: String,
    act: Act,
}

#[derive(Clone, Debug, PartialEq)]
enum Act {
    /// Leads to an input.
    Input(Place),
    /// Leads to the list of parts.
    Part(Slot),
    /// Puts the part of that id on the board.
    Take(Slot, String),
}

impl Mend {
    /// Leads to an input; none where there is no such input.
    pub(super) fn change(slot: Slot, key: &str) -> Option<Self> {
        let place = (slot, slot.kind().field_index(key)?);
        let words = said::change(text::label(slot.kind(), key));
        Some(Self { words, act: Act::Input(place) })
    }

    /// Leads to the list that a slot's part is picked from.
    pub(super) fn pick(slot: Slot) -> Self {
        Self { words: said::pick(words::slot(slot)), act: Act::Part(slot) }
    }

    /// Puts a part on the board, or back as it was where the board has it with other values.
    pub(super) fn take(slot: Slot, part: &Record, draft: &Draft) -> Self {
        let back = draft.record(slot).id == part.id;
        Self { words: setup::take(&part.name, back), act: Act::Take(slot, part.id.clone()) }
    }
}

/// Its button.
#[component]
pub(super) fn Mending(mend: Mend) -> impl IntoView {
    let app = use_app();
    let Mend { words, act } = mend;
    let clicked = move |_| match &act {
        Act::Input(place) => lead_to(*place),
        Act::Part(slot) => lead_to_part(*slot),
        Act::Take(slot, id) => app.pick(*slot, id),
    };
    view! { <button type="button" on:click=clicked>{words}</button> }
}
