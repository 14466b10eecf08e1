//! The ways from view to view.

use super::sight::View;
use crate::app::{App, see, use_app};
use crate::question::registry::QUESTIONS;
use crate::text::page;
use leptos::prelude::*;

/// The bar within the thumb's reach.
#[component]
pub(super) fn Bar() -> impl IntoView {
    let app = use_app();
    let one = |(view, icon): (View, &'static str)| {
        let name = if matches!(view, View::Build) { page::BUILD } else { view.title() };
        view! {
            <li>
                <a href=see::lead(view.key()) aria-current=current(app, view.key())>
                    <span class="icon" aria-hidden="true">{icon}</span>
                    {name}
                </a>
            </li>
        }
    };
    let views = [(View::Overview, "⌂"), (View::Build, "⚙"), (View::Share, "⇪"), (View::More, "☰")];
    view! {
        <nav class="bar" aria-label=page::VIEWS>
            <ul>{views.map(one).collect_view()}</ul>
        </nav>
    }
}

/// Every question by name, beside the view in sight.
#[component]
pub(super) fn Questions() -> impl IntoView {
    let app = use_app();
    let one = |(key, title): (&'static str, &'static str)| {
        view! {
            <li>
                <a href=see::lead(key) aria-current=current(app, key)>
                    {title}
                </a>
            </li>
        }
    };
    let views = [View::Overview].into_iter();
    let views = views.chain(QUESTIONS.iter().map(View::Question)).chain([View::Share, View::More]);
    let views = views.map(|view| one((view.key(), view.title())));
    view! {
        <nav class="questions" aria-label=page::VIEWS>
            <ul>{views.collect_view()}</ul>
        </nav>
    }
}

fn current(app: App, key: &'static str) -> impl Fn() -> Option<&'static str> {
    move || (app.see() == key).then_some("page")
}
