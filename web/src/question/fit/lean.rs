//! How it leans and turns, and where the deck meets a wheel.

use super::view::{Headlines, Line};
use crate::app::Fit;
use crate::text::{Answer, Style, fit as words};
use leptos::prelude::*;

/// How it leans and turns.
#[component]
pub(super) fn Leaning() -> impl IntoView {
    view! {
        <Headlines list=&[riser, bite, turn] />
        <Line say=|found, style| words::bushing(&found.together.lean, style) />
    }
}

pub(super) fn hint(found: &Fit, style: Style) -> String {
    words::lean(&found.together.lean, found.build.deck.riser_m, style)
}

pub(super) fn turn(found: &Fit, style: Style) -> Answer {
    words::turn(&found.together.lean, style)
}

pub(super) fn bite(found: &Fit, style: Style) -> Answer {
    words::bite(&found.together.lean, found.build.truck.max_lean_deg, style)
}

pub(super) fn riser(found: &Fit, style: Style) -> Answer {
    words::riser(&found.together.lean, found.build.deck.riser_m, style)
}
