//! How fast?

mod gear_map;
mod push;
mod runs;

use super::registry::Line;
use super::{ALONG_CURVE, Answers, Say, Sure, Workings, say, sketch};
use crate::app::{App, Banded, Found, use_app};
use crate::chart::Figure;
use crate::component::{Caution, Fold};
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

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    let [(_, says), ..] = ANSWERS;
    let answer = say(app, says).get();
    Line::plain(format!("{} {} flat. {}", answer.figure, answer.unit, answer.limit))
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let push = sketch(move || app.found(), &push::PUSH);
    view! {
        <Answers list=&ANSWERS />
        <Figure sketch=push hint=ALONG_CURVE />
        <Caution text=page::CAUTION_SPEED />
        <Fold class="evidence" title="Every pairing of pulleys">
            <GearMap />
        </Fold>
        <Fold class="evidence" title="In each ride mode, and uphill">
            <Modes />
        </Fold>
        <Fold class="evidence" title="Speeding up and braking">
            <Runs />
        </Fold>
        <Fold class="evidence" title=page::SURE>
            <Sure of=Banded::Speed />
        </Fold>
        <Workings list=&ANSWERS />
    }
    .into_any()
}

const MODES: [Slot; 3] = [Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh];

/// Top speed in each ride mode, and on each grade.
#[component]
fn Modes() -> impl IntoView {
    let app = use_app();
    let head = |text: &'static str| view! { <th scope="col">{text}</th> };
    let row = |[name, speed, limit]: [String; 3]| {
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td>{speed}</td>
                <td>{limit}</td>
            </tr>
        }
    };
    let rows = move || {
        let rows = app.found().map(|found| modes(&found, app.style())).unwrap_or_default();
        rows.into_iter().map(row).collect_view()
    };
    view! {
        <table class="plain">
            <thead>
                <tr>{["With a full pack", "Top speed", "Limit"].map(head).into_view()}</tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
}

fn modes(found: &Found, style: Style) -> Vec<[String; 3]> {
    let row = |name: String, top: &TopSpeed| {
        [name, style.speed_unit(top.speed_m_s), words::limit(top.limit).into()]
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
    modes.chain(grades).collect()
}
