//! Top speed in each ride mode, and on each grade.

use crate::app::{Found, use_app};
use crate::chart::{Grid, Table};
use crate::text::speed as said;
use crate::text::{Style, words};
use leptos::prelude::*;
use pitchline_core::{Slot, TopSpeed};

const MODES: [Slot; 3] = [Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh];

/// Top speed in each ride mode, and on each grade.
#[component]
pub(super) fn Modes() -> impl IntoView {
    let app = use_app();
    let grid = move || {
        app.found().map(|found| {
            let rows = modes(&found, app.style());
            let table = Table::alone(said::MODES, &said::MODES_HEADS, rows);
            view! { <Grid table /> }
        })
    };
    view! { <div class="chart worded">{grid}</div> }
}

/// Mode names are the rider's to change.
fn name(found: &Found, slot: Slot) -> String {
    let name = &found.draft.record(slot).name;
    if name.is_empty() { words::slot(slot).into() } else { said::mode(name) }
}

fn modes(found: &Found, style: Style) -> Vec<Vec<String>> {
    let row = |name: String, top: &TopSpeed| {
        vec![name, style.speed_unit(top.speed_m_s), words::limit(top.limit).into()]
    };
    let speed = &found.answers.speed;
    let modes = MODES.into_iter().zip(&speed.modes).map(|(slot, top)| row(name(found, slot), top));
    let grades = speed.by_grade.iter().map(|(grade, top)| row(said::up(*grade, style), top));
    modes.chain(grades).collect()
}

/// Top speed of each mode, in a few words.
pub(super) fn hint(found: &Found, style: Style) -> String {
    said::modes_hint(found.answers.speed.modes.map(|top| top.speed_m_s), style)
}
