//! How long, how much, and when to plug in.

use super::Now;
use super::found::Found;
use super::said::{self, With};
use crate::app::use_app;
use crate::component::{AnswerView, SideBySide};
use crate::question::WorkingSteps;
use crate::text::{Answer, Style, page};
use leptos::prelude::*;
use pitchline_core::{Build, explain_charge};

/// Says something of the charges.
type Say = fn(&Found, &With, Style) -> Answer;
/// What a charge ends at, as a share.
type Until = fn(&Build) -> f64;

/// Each answer, and where its working leads to.
const ANSWERS: [(Say, Option<Until>); 4] = [
    (said::full, Some(|_| 1.0)),
    (said::enough, Some(|build| build.ride.charge_to)),
    (said::leaving, None),
    (said::wall, None),
];

/// All of it.
#[component]
pub(super) fn Times(found: Now) -> impl IntoView {
    let app = use_app();
    let answers = ANSWERS.map(|(say, until)| {
        let answer = Memo::new(move |_| {
            let (with, style) = (With::now(app), app.style());
            found.get().map(|found| say(&found, &with, style)).unwrap_or_default()
        });
        let working = until.map(|until| view! { <Working found until /> });
        view! { <div class="answer"><AnswerView answer /> {working}</div> }
    });
    let plug_in = Memo::new(move |_| {
        let with = With::now(app);
        found.get().map(|found| said::plug_in(&found, &with)).unwrap_or_default()
    });
    let waits = Signal::derive(move || app.waits());
    view! {
        <SideBySide waits>{answers.collect_view()}</SideBySide>
        <p class="facts">{plug_in}</p>
    }
}

/// The working of a charge, folded away.
#[component]
fn Working(found: Now, until: Until) -> impl IntoView {
    let steps = move || {
        let build = found.get().map(|found| found.build);
        let steps = build.map(|b| explain_charge(&b, b.ride.charge_from, until(&b)));
        steps.and_then(Result::ok).unwrap_or_default()
    };
    view! { <WorkingSteps title=page::WORKING_FOLD first=page::CHARGED steps /> }
}
