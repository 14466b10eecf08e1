//! One answer, large, with what it means and what binds.

use leptos::html;
use leptos::prelude::*;

/// What a headline says.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Headline {
    /// What it is.
    pub name: String,
    /// The number.
    pub figure: String,
    /// Its unit.
    pub unit: &'static str,
    /// What holds it there.
    pub limit: String,
}

/// Draws a headline.
pub fn headline(said: Signal<Headline>) -> AnyView {
    let part = move |read: fn(&Headline) -> String| move || said.with(read);
    html::div()
        .class("headline")
        .child((
            html::p().class("headline-name").child(part(|h| h.name.clone())).into_any(),
            html::p()
                .class("headline-figure")
                .child((
                    html::strong().child(part(|h| h.figure.clone())),
                    " ",
                    html::span().child(part(|h| h.unit.to_string())),
                ))
                .into_any(),
            html::p().class("headline-limit").child(part(|h| h.limit.clone())).into_any(),
        ))
        .into_any()
}
