//! The cheapest change on offer for each rating that is exceeded.

use crate::app::{App, Change, Changes, use_app};
use crate::question::change::take;
use crate::text::{Style, limits as words};
use leptos::prelude::*;
use pitchline_core::{Level, Rating};

/// A change, and the ratings that it cures.
#[derive(Clone, PartialEq)]
struct Cure {
    of: Vec<Rating>,
    /// None where nothing on offer does.
    change: Option<Change>,
}

/// What cures what is over, worst first; nothing where nothing is.
#[component]
pub(super) fn Cures() -> impl IntoView {
    let app = use_app();
    let changes = Changes::begin(app);
    let over = Memo::new(move |_| over(app));
    let list = Memo::new(move |_| over.with(|over| cures(over, changes)));
    let each = move || {
        let style = app.style();
        let done = changes.done();
        let shown = |cure: &Cure| done || cure.change.is_some();
        list.get().into_iter().filter(shown).map(|cure| one(app, cure, style)).collect_view()
    };
    let any = Memo::new(move |_| over.with(|over| !over.is_empty()));
    move || {
        any.get().then(|| {
            view! {
                <section>
                    <h3>{words::CURES}</h3>
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
        match list.iter_mut().find(|cure| cure.change == change) {
            Some(cure) => cure.of.push(*rating),
            None => list.push(Cure { of: vec![*rating], change }),
        }
    }
    list
}

fn one(app: App, Cure { of, change }: Cure, style: Style) -> impl IntoView {
    let button = change.map(|change| take(app, change, style));
    let none = button.is_none().then_some(words::NO_CURE);
    view! {
        <li>
            <span>{words::named(&of)} ". " {none}</span>
            <span class="cures">{button}</span>
        </li>
    }
}
