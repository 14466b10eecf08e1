//! Answers of the build: the first of a view large, the others side by side, their workings folded away.

use super::registry::Line;
use super::working::Working;
use crate::app::{App, Banded, Found, use_app};
use crate::component::{AnswerView, Fold, Lead, SideBySide};
use crate::text::change::{self, Change};
use crate::text::{Answer, Style, page};
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

/// An answer in one line. Its limit stands in the view, and beside the three that everyone asks for
/// first.
pub fn in_a_line(app: App, says: Say) -> Line {
    let answer = say(app, says).get();
    Line::plain(format!("{} {}", answer.figure, answer.unit).trim_end().into())
}

/// Says what has changed from one to the other, in SI, against the band of the second.
type SayChange = fn([f64; 2], [f64; 2], Style) -> Change;

/// What the last edit has changed in a headline; none where it is none of the three that everyone
/// asks for first.
pub fn changed(app: App, which: Headline) -> Memo<Option<Change>> {
    let (of, says): (Banded, SayChange) = match which {
        Headline::TopSpeed => (Banded::Speed, change::speed),
        Headline::ClimbSlow => (Banded::Hill, change::hill),
        Headline::Distance => (Banded::Distance, change::distance),
        _ => return Memo::new(|_| None),
    };
    Memo::new(move |_| {
        let [was, is] = app.was_and_is(of)?;
        // What the edit cannot have changed needs no word.
        (was != is).then(|| says([was, is], app.sure(of).about(is), app.style()))
    })
}

/// The first of some answers large, the others side by side beneath it.
#[component]
pub fn Answers(list: &'static [(Headline, Say)]) -> impl IntoView {
    let app = use_app();
    let waits = Signal::derive(move || app.waits());
    let mut answers = list.iter().map(|(which, says)| (say(app, *says), changed(app, *which)));
    let lead = answers.next().map(|(answer, change)| view! { <Lead waits answer change /> });
    let others: Vec<_> =
        answers.map(|(answer, change)| view! { <AnswerView answer change /> }).collect();
    let others = (!others.is_empty()).then(|| view! { <SideBySide waits>{others}</SideBySide> });
    view! {
        {lead}
        {others}
    }
}

/// The workings of some answers, folded away one by one within a fold.
#[component]
pub fn Workings(list: &'static [(Headline, Say)]) -> impl IntoView {
    let app = use_app();
    let one = move |(which, says): &(Headline, Say)| {
        let answer = say(app, *says);
        let title = Signal::derive(move || answer.with(|answer| answer.name.clone()));
        view! { <Working which=*which title /> }
    };
    view! {
        <Fold class="evidence" title=page::WORKING_FOLD hint=page::WORKING_HINT>
            {list.iter().map(one).collect_view()}
        </Fold>
    }
}
