//! How sure an answer is, and what moves it most.

mod curve;
mod measure;
mod spreads;
mod told;
mod tornado;

use super::draws::{ALONG_CURVE, Draws, sketch};
use super::task_line::TaskLine;
use crate::app::{Banded, Banding, Found, use_app};
use crate::chart::Figure;
use crate::component::Fold;
use crate::text::number::exact;
use crate::text::{Style, caveat, page};
use leptos::prelude::*;
use measure::Measure;
use pitchline_core::band::{Band, CurvePoint};
use pitchline_core::caveats;
use spreads::Spreads;
use std::sync::Arc;

/// A band in words, what moves it, and where it comes from.
///
/// What was worked out last stays until the next is there, so that nothing flickers.
#[component]
pub fn Sure(
    /// Whose band.
    of: Banded,
) -> impl IntoView {
    let app = use_app();
    let worked = worked(of);
    let speeds = (of == Banded::Distance).then(|| speeds(worked));
    let there = Memo::new(move |_| {
        let some = |speeds: Memo<Option<_>>| speeds.with(Option::is_some);
        worked.with(Option::is_some) && speeds.is_none_or(some)
    });
    let view = move || {
        there.get().then(|| {
            view! {
                <Words worked />
                {speeds
                    .map(|speeds| {
                        let sketch = sketch(move || speeds.get(), &OVER_SPEED);
                        view! { <Figure sketch hint=ALONG_CURVE /> }
                    })}
                <Figure
                    sketch=sketch(move || worked.get(), &MOVERS)
                    hint="Arrow keys visit the bars"
                />
                <Fold class="working" title=page::SPREADS>
                    <Spreads of />
                </Fold>
            }
        })
    };
    view! {
        <div class="sure">
            <div class="sure-head">
                <h3>{page::SURE}</h3>
                {app.band_task(of).map(|task| view! { <TaskLine task /> })}
            </div>
            {view}
        </div>
    }
}

/// A band that was worked out.
struct Worked {
    of: Banded,
    band: Band,
    /// The answers that it belongs to.
    found: Arc<Found>,
}

/// The band that was worked out last; none where there is no answer.
fn worked(of: Banded) -> Memo<Option<Arc<Worked>>> {
    let app = use_app();
    let whole = move |Banding { band, found }| Some(Worked { of, band: band?, found: found? });
    Memo::new_with_compare(
        move |_| whole(app.banding(of)).map(Arc::new),
        |one: Option<&Option<Arc<Worked>>>, other| {
            // Other bands are told beside this one.
            let key = |worked: &Worked| (worked.found.count, worked.band);
            let key = |worked: Option<&Option<Arc<Worked>>>| worked.map(|w| w.as_deref().map(key));
            key(one) != key(other)
        },
    )
}

/// The band in words.
#[component]
fn Words(worked: Memo<Option<Arc<Worked>>>) -> impl IntoView {
    let app = use_app();
    let words = move || {
        let style = app.style();
        worked.with(|worked| worked.as_ref().map_or_else(String::new, |w| said(w, style)))
    };
    // For who reads the page by script: 10, 50 and 90 of a hundred, in SI, to the last digit.
    let figures = move || {
        worked.with(|worked| {
            let Band { p10, p50, p90, .. } = worked.as_ref()?.band;
            Some([p10, p50, p90].map(exact).join(" "))
        })
    };
    view! { <p class="facts" data-band=figures>{words}</p> }
}

/// What is sure of it, and what it rests on.
fn said(Worked { of, band, found }: &Worked, style: Style) -> String {
    let mut words = told::told(*of, band, &found.build, style);
    for said in caveats(&found.build) {
        words.push(' ');
        words.push_str(&caveat(&said, style));
    }
    words
}

/// What moves it most.
static MOVERS: Draws<Worked> = Draws {
    finding: |worked, _| tornado::finding(&worked.band),
    draw: |worked, style, width| tornado::draw(Measure::of(worked.of, style), &worked.band, width),
    table: |worked, style| tornado::rows(Measure::of(worked.of, style), &worked.band),
};

/// The band of the distance at every speed.
struct Speeds {
    /// At the rider's own.
    band: Band,
    points: Vec<CurvePoint>,
    /// The answers that they belong to.
    found: Arc<Found>,
}

/// The distance at other speeds, as it was worked out last for one and the same build.
fn speeds(worked: Memo<Option<Arc<Worked>>>) -> Memo<Option<Arc<Speeds>>> {
    let app = use_app();
    Memo::new_with_compare(
        move |before: Option<&Option<Arc<Speeds>>>| {
            let (worked, curve) = (worked.get()?, app.band_curve());
            let found = curve.found.filter(|found| found.count == worked.found.count);
            let speeds = |found| Speeds { band: worked.band, points: curve.points, found };
            // The curve comes a moment after the band.
            found.map(speeds).map(Arc::new).or_else(|| before.cloned().flatten())
        },
        |_, _| true,
    )
}

/// The distance at other speeds.
static OVER_SPEED: Draws<Speeds> = Draws {
    finding: |Speeds { band, points, found }, style| {
        let cruise = found.build.ride.cruise_m_s;
        let measure = Measure::of(Banded::Distance, style);
        curve::finding(measure, points, (cruise, [band.p10, band.p90]))
    },
    draw: |Speeds { points, found, .. }, style, width| {
        let measure = Measure::of(Banded::Distance, style);
        curve::draw(measure, points, &found.answers.distance, width)
    },
    table: |Speeds { points, found, .. }, style| {
        let measure = Measure::of(Banded::Distance, style);
        curve::rows(measure, style, points, &found.answers.distance)
    },
};
