//! Answers of the build, side by side, each with its working folded away.

use super::working::WorkingFold;
use crate::app::{App, Found, use_app};
use crate::component::{AnswerView, SideBySide};
use crate::text::{Answer, Style};
use leptos::prelude::*;
use pitchline_core::Headline;

/// Says an answer.
pub type Say = fn(App, &Found, Style) -> Answer;

/// An answer of the build; where a part is missing, none and why.
pub fn say(app: App, say: Say) -> Memo<Answer> {
    Memo::new(move |_| {
        let style = app.style();
        app.found().map_or_else(Answer::none, |found| say(app, &found, style))
    })
}

/// Answers side by side, each with its working folded away beneath.
#[component]
pub fn AnswerRow(list: &'static [(Headline, Say)]) -> impl IntoView {
    let app = use_app();
    let one = |(which, says): &(Headline, Say)| {
        let (which, answer) = (*which, say(app, *says));
        view! {
            <div class="answer">
                <AnswerView answer />
                <WorkingFold which />
            </div>
        }
    };
    let list = list.iter().map(one).collect_view();
    let waits = Signal::derive(move || app.waits());
    view! { <SideBySide waits>{list}</SideBySide> }
}
