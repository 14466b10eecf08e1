//! Fuse and wires: what flows, and what to fit.

use crate::app::{Found, use_app};
use crate::chart::{Grid, Table};
use crate::component::Caution;
use crate::question::{WIRES, lead_to};
use crate::text::{Style, limits as words, page, wires as said};
use leptos::prelude::*;
use pitchline_core::{Rating, wiring};

/// Fuse and leads in a few words.
pub(super) fn hint(found: &Found, style: Style) -> String {
    said::hint(&wiring(&found.draft, &found.build), style)
}

/// Fuse, leads, and what flows.
#[component]
pub(super) fn Wires() -> impl IntoView {
    let app = use_app();
    let found = Memo::new(move |_| {
        app.found().map(|found| (wiring(&found.draft, &found.build), found.draft.clone()))
    });
    let grid = move || {
        found.get().map(|(wiring, _)| {
            let rows = said::rows(&wiring, app.style());
            let table = Table::alone(said::CAPTION, &said::HEADS, rows);
            view! { <Grid table /> }
        })
    };
    let missing = move || {
        let missing = found.get().map(|(wiring, _)| wiring.fuse.missing).unwrap_or_default();
        (!missing.is_empty()).then(|| {
            view! {
                <p>{said::FUSE_MISSING}</p>
                <ul class="plain">{missing.into_iter().map(gap).collect_view()}</ul>
            }
        })
    };
    let group = move || found.get().map(|(wiring, _)| said::weak_group(&wiring, app.style()));
    view! {
        {missing}
        <div class="chart worded" id=WIRES>
            {grid}
        </div>
        <p>{group}</p>
        <p class="help">{said::RULES}</p>
        <Caution text=said::CAUTION />
        <h2>{page::CARRYING}</h2>
        <ul class="plain">{page::TRANSPORT.map(|fact| view! { <li>{fact}</li> }).collect_view()}</ul>
    }
}

/// Leads to the input of a rating that nobody gave.
pub(super) fn gap(rating: Rating) -> impl IntoView {
    let (slot, key) = rating.input();
    let place = slot.kind().field_index(key).map(|index| (slot, index));
    let go = move |_| _ = place.map(lead_to);
    view! {
        <li>
            <button type="button" class="lead-to" on:click=go>
                {words::name(rating)}
            </button>
        </li>
    }
}
