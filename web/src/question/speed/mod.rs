//! How fast?

mod gear_map;
mod push;
mod runs;

use super::{ALONG_CURVE, AnswerRow, Say, Sure, sketch};
use crate::app::{Banded, Found, use_app};
use crate::chart::{Figure, Grid, Table};
use crate::component::Caution;
use crate::text::answer::speed;
use crate::text::{Answer, Style, page, words};
use gear_map::GearMap;
use leptos::prelude::*;
use pitchline_core::{Headline, Slot, TopSpeed};
use runs::Runs;

/// The answers.
const ANSWERS: [(Headline, Say); 3] = [
    (Headline::TopSpeed, |app, found, style| {
        let top = found.answers.speed.flat_full;
        let band = app.sure(Banded::Speed).about(top.speed_m_s);
        speed("Flat, full pack".into(), top, band, style)
    }),
    (Headline::TopSpeedLow, |_, found, style| {
        let left = style.entered_percent(found.build.ride.low_charge);
        alone(format!("Nearly empty, {left} left"), found.answers.speed.flat_low, style)
    }),
    (Headline::TopSpeedOnGrade, |_, found, style| {
        let grade = style.entered_percent(found.build.ride.grade);
        alone(format!("Up your {grade} hill"), found.answers.speed.on_grade, style)
    }),
];

/// A top speed of which no band is known.
fn alone(name: String, top: TopSpeed, style: Style) -> Answer {
    speed(name, top, [top.speed_m_s; 2], style)
}

/// The question.
#[component]
pub fn Speed() -> impl IntoView {
    let app = use_app();
    let push = sketch(move || app.found(), &push::PUSH);
    view! {
            <AnswerRow list=&ANSWERS />
            <Caution text=page::CAUTION_SPEED />
            <GearMap />
            <Figure sketch=push hint=ALONG_CURVE />
            <Modes />
            <Sure of=Banded::Speed />
            <Runs />
    }
}

const MODES: [Slot; 3] = [Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh];

/// Top speed in each ride mode, and on each grade.
#[component]
fn Modes() -> impl IntoView {
    let app = use_app();
    let grid = move || {
        app.found().map(|found| {
            let table = modes(&found, app.style());
            view! { <Grid table /> }
        })
    };
    view! { <div class="chart worded">{grid}</div> }
}

fn modes(found: &Found, style: Style) -> Table {
    let row = |name: String, top: &TopSpeed| {
        vec![name, style.speed_unit(top.speed_m_s), words::limit(top.limit).into()]
    };
    let speed = &found.answers.speed;
    // Mode names are the rider's to change.
    let name = |slot: Slot| {
        let name = &found.draft.record(slot).name;
        if name.is_empty() { words::slot(slot).into() } else { format!("Mode: {name}") }
    };
    let modes = MODES.into_iter().zip(&speed.modes).map(|(slot, top)| row(name(slot), top));
    let grades = speed.by_grade.iter();
    let grades =
        grades.map(|(grade, top)| row(format!("Up {}", style.entered_percent(*grade)), top));
    Table {
        label: String::new(),
        caption: page::MODES.into(),
        heads: ["Mode or grade", "Top speed", "Limit"].map(String::from).into(),
        rows: modes.chain(grades).collect(),
    }
}
