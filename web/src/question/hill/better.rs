//! What would climb better: every single change on offer, by how much it moves the hill.

use crate::app::{Change, Changes, use_app};
use crate::question::change::take;
use crate::text::{hill as said, words};
use leptos::prelude::*;
use std::sync::Arc;

/// Changes that are listed: those that climb the most.
const LISTED: usize = 5;

/// What binds, and what on offer moves it.
#[component]
pub(super) fn Better() -> impl IntoView {
    let app = use_app();
    let changes = Changes::begin(app);
    let now = Memo::new(move |_| {
        let answers = &app.found()?.answers;
        Some((answers.climb.slow, answers.speed.flat_full.speed_m_s))
    });
    let binds = move || now.get().map(|(slow, _)| words::limit_sentence(slow.limit));
    let list = move || now.get().map_or_else(Vec::new, |(slow, _)| changes.climbing(slow.grade));
    let each = move || {
        let style = app.style();
        let before = now.get().map_or([0.0; 2], |(slow, top_m_s)| [slow.grade, top_m_s]);
        let one = move |change: Arc<Change>| {
            let after = [change.slow.grade, change.top_m_s];
            let text = said::would_climb(after, before, change.slow.limit, style);
            view! {
                <li>
                    <span>{text}</span>
                    <span class="cures">{take(app, change, style)}</span>
                </li>
            }
        };
        list().into_iter().take(LISTED).map(one).collect_view()
    };
    let none = move || (changes.done() && list().is_empty()).then_some(said::NO_BETTER);
    view! {
        <p>{binds}</p>
        <ul class="plain">{each}</ul>
        <p class="help">{move || changes.said()} {none}</p>
    }
}
