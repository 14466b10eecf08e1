//! Does it go together?

mod belt;
mod bench;
mod concern;
mod cure;
mod deck;
mod frame;
mod lean;
mod view;
mod worked;

#[cfg(test)]
mod laws;
#[cfg(test)]
mod told;

use super::LeadToWires;
use super::registry::Line;
use crate::app::{App, use_app};
use crate::component::{Caution, Fold, Lead};
use crate::text::{Answer, fit as words, page};
use belt::{Belts, Side, Tight};
use bench::Bench;
pub use concern::concerns;
use concern::{Concerns, Verdict, mismatches};
use deck::Deck;
use frame::Frame;
use lean::Leaning;
use leptos::prelude::*;
use view::told;
use worked::Workings;

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    let Some(Verdict { amiss, check, tight, worst }) = Verdict::now(app) else {
        return Line::default();
    };
    let text = words::verdict_line(amiss, check, tight, &worst);
    Line { text, alert: amiss + check + tight > 0 }
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let waits = Signal::derive(move || app.waits());
    let verdict = Memo::new(move |_| Verdict::now(app));
    let lead = Memo::new(move |_| {
        verdict.with(|verdict| verdict.as_ref().map_or_else(Answer::none, Verdict::answer))
    });
    let why = move || {
        verdict
            .with(|verdict| verdict.as_ref().map(|v| words::verdict_why(v.amiss, v.check, v.tight)))
    };
    let mismatches = Memo::new(move |_| app.found().map_or(0, |found| mismatches(&found)));
    view! {
        <Lead waits answer=lead />
        <div>
            <p class="facts">{why}</p>
            <Concerns />
        </div>
        <Side />
        <Caution text=page::CAUTION_BELT />
        <LeadToWires />
        <Fold class="evidence" title=words::BELTS hint=told(belt::belts_hint)>
            <Belts />
        </Fold>
        <Fold class="evidence" title=words::TIGHT hint=told(belt::tight_hint)>
            <Tight />
        </Fold>
        <Fold class="evidence" title=words::BENCH hint=told(bench::hint) holds="bench">
            <Bench />
        </Fold>
        <Fold class="evidence" title=words::HANGER hint=told(frame::hint)>
            <Frame />
        </Fold>
        <Fold class="evidence" title=words::DECK hint=told(deck::hint)>
            <Deck />
        </Fold>
        <Fold class="evidence" title=words::LEAN hint=told(lean::hint)>
            <Leaning />
        </Fold>
        <Fold
            class="evidence"
            title=words::MEET
            hint=Signal::derive(move || words::meet(mismatches.get()))
        >
            <p class="facts">{move || words::meet_why(mismatches.get())}</p>
        </Fold>
        <Workings />
    }
    .into_any()
}
