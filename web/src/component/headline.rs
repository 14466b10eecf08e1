//! One answer, large, with what it means and what binds.

use crate::dom::{Node, el, said};
use std::rc::Rc;

/// What a headline says.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Headline {
    /// What it is.
    pub name: String,
    /// The number, or the band that it lies in.
    pub figure: String,
    /// Its unit.
    pub unit: &'static str,
    /// What holds it there.
    pub limit: String,
}

/// Draws a headline.
pub fn headline(says: impl Fn() -> Headline + 'static) -> Node {
    let says: Rc<dyn Fn() -> Headline> = Rc::new(says);
    let part = |read: fn(Headline) -> String| {
        let says = says.clone();
        said(move || read(says()))
    };
    let figure = says.clone();
    // Words may break, a number may not.
    let words = move || {
        figure().figure.starts_with(|c: char| c.is_ascii_alphabetic()).then(|| "words".into())
    };
    // Spans, since a headline may stand in a button.
    el("span")
        .class("headline")
        .with(el("span").class("headline-name").with(part(|h| h.name)))
        .with(
            el("span")
                .class("headline-figure")
                .with(el("strong").follow("class", words).with(part(|h| h.figure)))
                .with(" ")
                .with(el("span").with(part(|h| h.unit.into()))),
        )
        .with(el("span").class("headline-limit").with(part(|h| h.limit)))
        .into()
}
