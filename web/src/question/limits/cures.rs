//! The cheapest change on offer for each rating that is exceeded.

use crate::app::{App, Change, Changes, use_app};
use crate::question::change::take;
use crate::text::{Style, cure, limits as words};
use leptos::prelude::*;
use pitchline_core::{Level, Rating};
use std::sync::Arc;

/// A change, and the ratings that it cures.
struct Cure {
    of: Vec<Rating>,
    /// None where nothing on offer does.
    change: Option<Arc<Change>>,
}

/// What cures what is over, worst first; nothing where nothing is.
#[component]
pub(super) fn Cures() -> impl IntoView {
    let app = use_app();
    let changes = Changes::begin(app);
    let over = Memo::new(move |_| over(app));
    let each = move || {
        let style = app.style();
        let done = changes.done();
        let shown = |cure: &Cure| done || cure.change.is_some();
        let list = over.with(|over| cures(over, changes));
        list.into_iter().filter(shown).map(|cure| one(app, cure, style)).collect_view()
    };
    let any = Memo::new(move |_| over.with(|over| !over.is_empty()));
    move || {
        any.get().then(|| {
            view! {
                <section>
                    <h2>{cure::CURES}</h2>
                    <ul class="plain">{each}</ul>
                    <p class="help">{move || changes.said()}</p>
                </section>
            }
        })
    }
}

/// The ratings that are exceeded, worst first; tracked.
fn over(app: App) -> Vec<Rating> {
    let Some(margins) = app.margins() else { return Vec::new() };
    let over = margins.list.iter().filter(|margin| margin.level == Level::Over);
    over.map(|margin| margin.rating).collect()
}

/// One change for all that it cures.
fn cures(over: &[Rating], changes: Changes) -> Vec<Cure> {
    let mut list: Vec<Cure> = Vec::new();
    for rating in over {
        let change = changes.cure(*rating);
        match list.iter_mut().find(|cure| is_same(cure.change.as_ref(), change.as_ref())) {
            Some(cure) => cure.of.push(*rating),
            None => list.push(Cure { of: vec![*rating], change }),
        }
    }
    list
}

fn is_same(one: Option<&Arc<Change>>, other: Option<&Arc<Change>>) -> bool {
    match (one, other) {
        (Some(one), Some(other)) => Arc::ptr_eq(one, other),
        (one, other) => one.is_none() && other.is_none(),
    }
}

fn one(app: App, Cure { of, change }: Cure, style: Style) -> impl IntoView {
    let then = match &change {
        Some(change) => cure::then(change.slow.grade, change.top_m_s, style),
        None => cure::NO_CURE.into(),
    };
    let button = change.map(|change| take(app, change, style));
    view! {
        <li>
            <span>{words::named(&of)} ". " {then}</span>
            <span class="cures">{button}</span>
        </li>
    }
}
