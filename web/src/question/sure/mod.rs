//! How sure an answer is, and what moves it most.

mod curve;
mod measure;
mod over_speed;
mod spreads;
mod told;
mod tornado;

use super::draws::{Draws, sketch};
use super::task_line::TaskLine;
use crate::app::{Banded, Banding, Found, use_app};
use crate::chart::Figure;
use crate::component::Fold;
use crate::text::number::exact;
use crate::text::sure as said;
use crate::text::{Style, caveat};
use leptos::prelude::*;
use measure::Measure;
pub use over_speed::OverSpeed;
use pitchline_core::band::Band;
use pitchline_core::caveats;
use spreads::Spreads;
use std::sync::Arc;

/// How sure an answer is, folded away; its hint is what changes it most.
pub fn fold(of: Banded) -> impl IntoView {
    let app = use_app();
    let hint = Memo::new(move |_| {
        let banding = app.banding(of);
        let moves = |found: &Arc<Found>| told::still(of, found).is_none();
        let band = banding.band.filter(|_| banding.found.as_ref().is_some_and(moves));
        band.as_ref().map_or_else(String::new, said::mostly)
    });
    view! {
        <Fold class="evidence" title=said::SURE hint>
            <Sure of />
        </Fold>
    }
}

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
    let moves = Memo::new(move |_| {
        worked.with(|worked| worked.as_ref().map(|w| told::still(of, &w.found).is_none()))
    });
    let view = move || {
        let bars = moves.get()?.then(|| {
            let sketch = sketch(move || worked.get(), &MOVERS);
            view! {
                <Figure sketch hint=said::ALONG_MOVERS />
                <Fold class="working" title=said::SPREADS>
                    <Spreads of />
                </Fold>
            }
        });
        Some(view! {
            <Words worked />
            {bars}
        })
    };
    view! {
        <div class="sure">
            {app.band_task(of).map(|task| view! { <TaskLine task /> })} {view}
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
        worked.with(|worked| worked.as_ref().map_or_else(String::new, |w| words(w, style)))
    };
    // For who reads the page by script: 10, 50 and 90 of a hundred, in SI, to the last digit.
    let figures = move || {
        worked.with(|worked| {
            let worked = worked.as_ref()?;
            if told::still(worked.of, &worked.found).is_some() {
                return None;
            }
            let Band { p10, p50, p90, .. } = worked.band;
            Some([p10, p50, p90].map(exact).join(" "))
        })
    };
    view! { <p class="facts" data-band=figures>{words}</p> }
}

/// What is sure of it, and what it rests on.
fn words(Worked { of, band, found }: &Worked, style: Style) -> String {
    if let Some(still) = told::still(*of, found) {
        return still.into();
    }
    let mut words = told::told(*of, band, &found.build, style);
    for rests in caveats(&found.build) {
        words.push(' ');
        words.push_str(&caveat(&rests, style));
    }
    words
}

/// What moves it most.
static MOVERS: Draws<Worked> = Draws {
    finding: |worked, _| tornado::finding(&worked.band),
    draw: |worked, style, width| tornado::draw(Measure::of(worked.of, style), &worked.band, width),
    table: |worked, style| tornado::rows(Measure::of(worked.of, style), &worked.band),
};
