//! How steep?

mod better;
mod curve;
mod long_climb;

use super::registry::Line;
use super::{Answers, InputAs, LeadToGears, Say, Workings, hint, in_a_line, sketch};
use crate::app::{App, Banded, Found, use_app};
use crate::chart::Figure;
use crate::component::{Caution, Fold, Notice};
use crate::question::sure;
use crate::text::hill as said;
use crate::text::{Answer, Style, answer, page, words};
use better::Better;
use leptos::prelude::*;
use long_climb::LongClimb;
use pitchline_core::{Headline, Slot, Steepest};

/// The answers.
const ANSWERS: [(Headline, Say); 4] = [
    (Headline::ClimbSlow, |app, found, style| {
        let why = words::limit_sentence(found.answers.climb.slow.limit);
        slow(app, found, style).explained(&why)
    }),
    (Headline::ClimbCrawl, |_, found, style| alone(1, found.answers.climb.crawl, style)),
    (Headline::ClimbBrisk, |_, found, style| alone(2, found.answers.climb.brisk, style)),
    (Headline::ClimbSlowLow, |_, found, style| alone(3, found.answers.climb.slow_low, style)),
];

/// The first answer, with its band.
fn slow(app: App, found: &Found, style: Style) -> Answer {
    let slow = found.answers.climb.slow;
    let [name, ..] = said::names(slow.speed_m_s, style);
    answer::hill(name, slow, app.sure(Banded::Hill).about(slow.grade), style)
}

/// A hill of which no band is known, by the place of its name.
fn alone(place: usize, found: Steepest, style: Style) -> Answer {
    let mut names = said::names(found.speed_m_s, style).into_iter();
    answer::hill(names.nth(place).unwrap_or_default(), found, [found.grade; 2], style)
}

/// The answer in one line, where nothing beside it names the speed.
#[must_use]
pub fn line(app: App) -> Line {
    in_a_line(app, |app, found, style| {
        let answer = slow(app, found, style);
        let Steepest { grade, speed_m_s, .. } = found.answers.climb.slow;
        if grade < 0.0 {
            return Answer { figure: said::not_flat_at(speed_m_s, style), ..answer };
        }
        answer
    })
}

/// That the rider's own hill is too much; nothing where it is not.
#[must_use]
pub fn own_hill(app: App) -> Option<String> {
    let found = app.found()?;
    let climb = &found.answers.climb;
    let full = (climb.slow.speed_m_s, climb.slow.grade);
    said::own_hill(&found.build, full, climb.slow_low.grade, app.style())
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let own = Memo::new(move |_| own_hill(app));
    let curve = sketch(move || app.found(), &curve::CURVE);
    view! {
        <Answers list=&ANSWERS />
        {move || own.get().map(|text| view! { <Notice text /> })}
        <Figure sketch=curve hint=page::ALONG_CURVE />
        <div class="fields">
            <InputAs of=Slot::Ride key="grade_percent" place="steep" label=said::YOUR_HILL />
        </div>
        <LeadToGears />
        <Caution text=said::CAUTION />
        <Fold class="evidence" title=said::BETTER hint=Signal::stored(said::BETTER_HINT.to_string())>
            <Better />
        </Fold>
        <Fold class="evidence" title=said::LONG_CLIMB hint=hint(long_climb::hint)>
            <LongClimb />
        </Fold>
        {sure::fold(Banded::Hill)}
        <Workings list=&ANSWERS />
    }
    .into_any()
}
