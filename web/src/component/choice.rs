//! One of a few, picked from a list.

use leptos::html;
use leptos::prelude::*;
use leptos::{ev, prelude::AnyView};

/// The options: value and words; and the value that is chosen.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Options {
    /// Value and words of each.
    pub list: Vec<(String, String)>,
    /// The chosen value.
    pub chosen: String,
}

/// What a list shows and whom it tells.
pub struct Choice {
    /// Id of the list, unique on the page.
    pub id: String,
    /// What it is.
    pub label: Signal<String>,
    /// What can be chosen.
    pub options: Signal<Options>,
    /// Told of the value picked.
    pub on_pick: Callback<String>,
}

/// Draws a label and a list.
pub fn choice(choice: Choice) -> AnyView {
    let Choice { id, label, options, on_pick } = choice;
    let list = move || {
        options.with(|options| {
            let option = |(value, words): &(String, String)| {
                html::option()
                    .value(value.clone())
                    .selected(*value == options.chosen)
                    .child(words.clone())
                    .into_any()
            };
            options.list.iter().map(option).collect::<Vec<_>>()
        })
    };
    html::div()
        .class("field")
        .child((
            html::label().r#for(id.clone()).child(move || label.get()).into_any(),
            html::select()
                .id(id)
                .on(ev::change, move |e| on_pick.run(event_target_value(&e)))
                .child(list)
                .into_any(),
        ))
        .into_any()
}
