//! The maker's check of the catalogue in force.

mod faults;
mod gaps;
mod kits;

use super::task_line::TaskLine;
use crate::app::{Loaded, use_app};
use crate::text::catalogue as text;
use faults::Faults;
use gaps::{Gaps, missing};
use kits::{Kits, checked, fits};
use leptos::prelude::*;
use pitchline_core::Kind;

/// The check of the catalogue: a summary, faults, what parts leave out, and every combination on
/// offer, which is worked out while it is in sight.
#[component]
pub fn CatalogueCheck() -> impl IntoView {
    let app = use_app();
    let (kits, task) = checked();
    let summary = move || {
        let loaded = app.loaded();
        let left_out = loaded.catalog.count_left_out(&loaded.faults);
        let faults = text::faults(loaded.faults.len() as u64, left_out as u64);
        let gaps = missing(&loaded.catalog);
        [faults, gaps].join(" ")
    };
    view! {
        <p class="help">{text::WHY}</p>
        <p class="facts">{move || source(&app.loaded())}</p>
        <p class="check-summary">
            <strong>{summary}</strong>
            " "
            <strong role="status">{move || fits(&kits.get(), task.busy())}</strong>
        </p>
        <TaskLine task />
        <Faults />
        <Kits kits />
        <Gaps />
    }
}

/// Whose catalogue it is, and why that one.
fn source(loaded: &Loaded) -> String {
    let catalog = &loaded.catalog;
    let parts = Kind::ALL.iter().map(|kind| catalog.parts(*kind).len() as u64).sum();
    let kits = catalog.kits.len() as u64;
    let instead = match (&loaded.refused, &loaded.kept) {
        (None, _) => "",
        (Some(_), Some(_)) => text::LAST_COPY,
        (Some(_), None) => text::DEMO,
    };
    text::source(&catalog.maker, &catalog.version, parts, kits, instead)
}
