//! Does it go together?

mod agree;
mod amiss;
mod belt;
mod bench;
mod cure;
mod deck;
mod frame;
mod lean;
mod view;

#[cfg(test)]
mod laws;
#[cfg(test)]
mod told;

use super::registry::Line;
use crate::app::App;
use crate::component::{Caution, Fold};
use crate::text::page;
use agree::Agree;
use belt::Belts;
use deck::Deck;
use frame::Frame;
use lean::Leaning;
use leptos::prelude::*;
use pitchline_core::fit::Severity;

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    let Some(fit) = app.fit() else { return Line::default() };
    let tight = fit.together.count(Severity::Tight);
    let amiss = fit.together.count(Severity::DoesNotFit)
        + app.found().map_or(0, |found| found.notices.len());
    match (amiss, tight) {
        (0, 0) => Line::plain("Yes".into()),
        (0, n) => Line { text: format!("Yes, {n} tight"), alert: true },
        (1, _) => Line { text: "No, 1 thing doesn't fit".into(), alert: true },
        (n, _) => Line { text: format!("No, {n} things don't fit"), alert: true },
    }
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    view! {
        <Agree />
        <Belts />
        <Caution text=page::CAUTION_BELT />
        <Fold class="evidence" title="Hanger and axle">
            <Frame />
        </Fold>
        <Fold class="evidence" title="Deck, enclosure and road">
            <Deck />
        </Fold>
        <Fold class="evidence" title="Lean and wheel bite">
            <Leaning />
        </Fold>
    }
    .into_any()
}
