//! How fast?

mod gear_map;
#[cfg(test)]
mod laws;
mod modes;
mod offer;
mod push;
mod runs;

use super::registry::Line;
use super::{Answers, GEARS, Say, Workings, hint, in_a_line, sketch};
use crate::app::{App, Banded, Found, use_app};
use crate::chart::Figure;
use crate::component::{Caution, Fold};
use crate::question::sure;
use crate::text::speed as said;
use crate::text::{Answer, Style, answer, page, words};
use gear_map::GearMap;
use leptos::prelude::*;
use modes::Modes;
use pitchline_core::{Headline, TopSpeed};
use runs::Runs;

/// The answers.
const ANSWERS: [(Headline, Say); 3] = [
    (Headline::TopSpeed, |app, found, style| {
        let why = words::limit_sentence(found.answers.speed.flat_full.limit);
        top(app, found, style).explained(&why)
    }),
    (Headline::TopSpeedLow, |_, found, style| {
        let name = said::nearly_empty(found.build.ride.low_charge, style);
        alone(name, found.answers.speed.flat_low, style)
    }),
    (Headline::TopSpeedOnGrade, |_, found, style| {
        let name = said::up_your_hill(found.build.ride.grade, style);
        alone(name, found.answers.speed.on_grade, style)
    }),
];

/// The first answer, with its band.
fn top(app: App, found: &Found, style: Style) -> Answer {
    let top = found.answers.speed.flat_full;
    let band = app.sure(Banded::Speed).about(top.speed_m_s);
    answer::speed(said::TOP.into(), top, band, style)
}

/// A top speed of which no band is known.
fn alone(name: String, top: TopSpeed, style: Style) -> Answer {
    answer::speed(name, top, [top.speed_m_s; 2], style)
}

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    in_a_line(app, top)
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let push = sketch(move || app.found(), &push::PUSH);
    view! {
        <Answers list=&ANSWERS />
        <Figure sketch=push hint=page::ALONG_CURVE />
        <Caution text=said::CAUTION />
        <Fold class="evidence" title=said::PAIRINGS hint=hint(offer::hint) holds=GEARS>
            <GearMap />
        </Fold>
        <Fold class="evidence" title=said::MODES hint=hint(modes::hint)>
            <Modes />
        </Fold>
        <Fold class="evidence" title=said::RUNS hint=hint(runs::hint)>
            <Runs />
        </Fold>
        {sure::fold(Banded::Speed)}
        <Workings list=&ANSWERS />
    }
    .into_any()
}
