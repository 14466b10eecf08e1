//! What would climb better: every single change on offer, by how much it moves the hill.

use crate::app::{Changes, use_app};
use crate::question::change::take;
use crate::text::{hill as said, words};
use leptos::prelude::*;

/// Changes that are listed: those that climb the most.
const LISTED: usize = 5;

/// What binds, and what on offer moves it.
#[component]
pub(super) fn Better() -> impl IntoView {
    let app = use_app();
    let changes = Changes::begin(app);
    let now = Memo::new(move |_| app.found().map(|found| found.answers.climb.slow));
    let binds = move || now.get().map(|slow| words::limit_sentence(slow.limit));
    let list = Memo::new(move |_| {
        let mut list = now.get().map_or_else(Vec::new, |slow| changes.climbing(slow.grade));
        list.truncate(LISTED);
        list
    });
    let each = move || {
        let (style, before) = (app.style(), now.get().map_or(0.0, |slow| slow.grade));
        let one = move |change: crate::app::Change| {
            let text = said::would_climb(change.slow.grade, before, change.slow.limit, style);
            view! {
                <li>
                    <span>{text}</span>
                    <span class="cures">{take(app, change, style)}</span>
                </li>
            }
        };
        list.get().into_iter().map(one).collect_view()
    };
    let none = move || (changes.done() && list.with(Vec::is_empty)).then_some(said::NO_BETTER);
    view! {
        <p>{binds}</p>
        <ul class="plain">{each}</ul>
        <p class="help">{move || changes.said()} {none}</p>
    }
}
