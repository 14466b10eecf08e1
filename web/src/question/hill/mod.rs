//! How steep?

mod curve;
mod long_climb;

use super::registry::Line;
use super::{ALONG_CURVE, Answers, Say, Sure, Workings, say, sketch};
use crate::app::{App, Banded, Found, use_app};
use crate::chart::Figure;
use crate::component::{Caution, Fold, Notice};
use crate::text::answer::{self, hill};
use crate::text::{Answer, Style, page};
use leptos::prelude::*;
use long_climb::LongClimb;
use pitchline_core::{Headline, Steepest};

/// The answers.
const ANSWERS: [(Headline, Say); 4] = [
    (Headline::ClimbCrawl, |_, found, style| {
        alone("At a crawl,", found.answers.climb.crawl, style)
    }),
    (Headline::ClimbSlow, |app, found, style| {
        let slow = found.answers.climb.slow;
        at("At", slow, app.sure(Banded::Hill).about(slow.grade), style)
    }),
    (Headline::ClimbBrisk, |_, found, style| alone("At", found.answers.climb.brisk, style)),
    (Headline::ClimbSlowLow, |_, found, style| {
        alone("Nearly empty, at", found.answers.climb.slow_low, style)
    }),
];

fn at(name: &str, found: Steepest, band: [f64; 2], style: Style) -> Answer {
    hill(format!("{name} {}", style.speed_unit(found.speed_m_s)), found, band, style)
}

/// A hill of which no band is known.
fn alone(name: &str, found: Steepest, style: Style) -> Answer {
    at(name, found, [found.grade; 2], style)
}

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    let answer = say(app, |app, found, style| {
        let band = app.sure(Banded::Hill).about(found.answers.climb.slow.grade);
        answer::slow_hill(&found.answers, band, style)
    });
    let answer = answer.get();
    Line::plain(format!("{} {}. {}", answer.figure, answer.unit, answer.limit))
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let own = Memo::new(move |_| {
        let found = app.found()?;
        own_hill(&found, app.style())
    });
    let curve = sketch(move || app.found(), &curve::CURVE);
    view! {
        <Answers list=&ANSWERS />
        {move || own.get().map(|text| view! { <Notice text /> })}
        <Figure sketch=curve hint=ALONG_CURVE />
        <Caution text=page::CAUTION_HILL />
        <Fold class="evidence" title=page::LONG_CLIMB>
            <LongClimb />
        </Fold>
        <Fold class="evidence" title=page::SURE>
            <Sure of=Banded::Hill />
        </Fold>
        <Workings list=&ANSWERS />
    }
    .into_any()
}

/// How the rider's own hill stands to what the board can do, full and low; nothing where it can.
fn own_hill(found: &Found, style: Style) -> Option<String> {
    let (climb, ride) = (&found.answers.climb, &found.build.ride);
    let hill = style.entered_percent(ride.grade);
    let low = style.entered_percent(ride.low_charge);
    let slow = style.speed_unit(climb.slow.speed_m_s);
    if climb.slow.grade < ride.grade {
        Some(format!("Your {hill} hill is too steep at {slow}, even with a full pack."))
    } else if climb.slow_low.grade < ride.grade {
        Some(format!(
            "With {low} charge left your {hill} hill is too steep at {slow}: keep a reserve for it."
        ))
    } else {
        None
    }
}
