//! How long on the charger?
//!
//! Where a charger is not to be used, it says why, and no time.

mod answers;
mod curve;
mod found;
mod offers;

#[cfg(test)]
mod laws;

use super::registry::Line;
use super::{Draws, Input, Sure, WorkingSteps, sketch};
use crate::app::{App, Banded, use_app};
use crate::chart::Figure;
use crate::component::{AnswerView, Caution, Fold, Lead, Notice, SideBySide};
use crate::text::{Answer, charge as words, page, setup, sure};
use answers::{Say, hint, said};
use found::Found;
use leptos::prelude::*;
use offers::Offers;
use pitchline_core::{Build, Charging, Slot, charger_offer, explain_charge};
use std::sync::Arc;

/// The charges of now.
type Now = Memo<Option<Arc<Found>>>;

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    let Some(now) = app.found() else { return Line::default() };
    // Of the board's own charger, without curves and the others on offer.
    let own = now.draft.record(Slot::Charger);
    let Ok(does) = charger_offer(&now.draft, &now.build, own) else { return Line::default() };
    let full_s = app.sure(Banded::Charge).about(does.full_s.unwrap_or_default());
    let alert = does.fit.refusal.is_some() || does.fit.too_strong.is_some();
    Line { text: words::line(does.fit, full_s, app.style()), alert }
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let found: Now = Memo::new_with_compare(move |_| Found::now(app).map(Arc::new), |_, _| true);
    let waits = Signal::derive(move || app.waits());
    let lead = said(found, answers::lead);
    let lead =
        Memo::new(move |_| if found.with(Option::is_some) { lead.get() } else { Answer::none() });
    // What is there only while the board's charger may be used.
    let may =
        Memo::new(move |_| found.with(|found| found.as_ref().is_some_and(|f| f.charges.is_ok())));
    let drawn = move |draws: &'static Draws<Charging>| {
        sketch(move || found.get()?.charges.clone().ok(), draws)
    };
    let picture = move || {
        may.get().then(|| view! { <Figure sketch=drawn(&curve::CHARGE) hint=page::ALONG_CURVE /> })
    };
    let current = move || {
        may.get().then(|| {
            view! {
                <Fold class="evidence" title=words::CURRENT hint=said(found, hint::current)>
                    <Figure sketch=drawn(&curve::CURRENT) hint=page::ALONG_CURVE />
                </Fold>
                <Fold class="evidence" title=sure::SURE hint=said(found, hint::sure)>
                    <Sure of=Banded::Charge />
                </Fold>
            }
        })
    };
    let workings = move || may.get().then(|| view! { <Workings found /> });
    view! {
        <Lead waits answer=lead />
        <div>
            <Warning found /> <p class="facts">{said(found, answers::plug_in)}</p>
        </div>
        {picture}
        <div class="fields">
            <Input of=Slot::Ride key="charge_from_percent" />
            <Input of=Slot::Place key="charge_air_c" />
        </div>
        <Caution text=words::CAUTION />
        <Fold class="evidence" title=words::GOALS hint=said(found, hint::goals) holds="ride">
            <Says found list=&[answers::enough, answers::leaving] />
            <p class="facts">{said(found, answers::plug_in_for)}</p>
            <div class="fields">
                <Input of=Slot::Ride key="charge_to_percent" />
                <Input of=Slot::Ride key="charge_time_h" />
            </div>
        </Fold>
        <Fold class="evidence" title=words::CHARGERS hint=said(found, hint::chargers)>
            <Offers found />
        </Fold>
        {current}
        <Fold class="evidence" title=words::COST hint=said(found, hint::cost) holds="place">
            <Says found list=&[answers::wall] />
            <div class="fields">
                <Input of=Slot::Place key="energy_price_kwh" />
            </div>
        </Fold>
        {workings}
    }
    .into_any()
}

/// What must not be done, why, and the charger to use instead.
#[component]
fn Warning(found: Now) -> impl IntoView {
    let app = use_app();
    let (warning, none) = (said(found, answers::warning), said(found, answers::none_fits));
    let instead = Memo::new(move |_| {
        let found = found.get().filter(|found| found.is_wrong())?;
        let part = found.instead.as_ref()?;
        let back = found.offers.iter().any(|offer| offer.here && offer.part.id == part.id);
        Some((setup::take(&part.name, back), part.id.clone()))
    });
    let cure = move || {
        instead.get().map(|(words, id)| {
            let take = move |_| app.pick(Slot::Charger, &id);
            view! {
                <p class="cures">
                    <button type="button" on:click=take>
                        {words}
                    </button>
                </p>
            }
        })
    };
    let told = move || {
        let text = warning.get();
        (!text.is_empty()).then(|| {
            let none = none.get();
            view! {
                <div class="concern unsafe">
                    <Notice text />
                </div>
                {cure}
                {(!none.is_empty()).then(|| view! { <p class="facts">{none}</p> })}
            }
        })
    };
    view! { <div role="status">{told}</div> }
}

/// Answers side by side, while there are any.
#[component]
fn Says(found: Now, list: &'static [Say<Answer>]) -> impl IntoView {
    let app = use_app();
    let waits = Signal::derive(move || app.waits());
    let any =
        Memo::new(move |_| found.with(|found| found.as_ref().is_some_and(|f| f.charges.is_ok())));
    move || {
        any.get().then(|| {
            let one = move |say: &Say<Answer>| view! { <AnswerView answer=said(found, *say) /> };
            view! { <SideBySide waits>{list.iter().map(one).collect_view()}</SideBySide> }
        })
    }
}

/// What a charge ends at, as a share.
type Until = fn(&Build) -> f64;

/// Each time, and where its working leads to.
const WORKED: [(Say<Answer>, Until); 2] =
    [(answers::lead, |_| 1.0), (answers::enough, |build| build.ride.charge_to)];

/// The workings of both times, each folded away within a fold.
#[component]
fn Workings(found: Now) -> impl IntoView {
    let one = move |(say, until): (Say<Answer>, Until)| {
        let answer = said(found, say);
        let steps = move || {
            let build = found.get().map(|found| found.build);
            let steps = build.map(|b| explain_charge(&b, b.ride.charge_from, until(&b)));
            steps.and_then(Result::ok).unwrap_or_default()
        };
        let title = Signal::derive(move || answer.with(|answer| answer.name.clone()));
        view! { <WorkingSteps title first=words::CHARGED steps /> }
    };
    view! {
        <Fold class="evidence" title=page::WORKING_FOLD hint=page::WORKING_HINT>
            {WORKED.map(one).collect_view()}
        </Fold>
    }
}
