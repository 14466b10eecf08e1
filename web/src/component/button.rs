//! A button that does one thing.

use crate::dom::{Element, Text, el};

/// A button with its words.
pub fn button(words: impl Into<Text>, act: impl Fn() + 'static) -> Element {
    el("button").attr("type", "button").on("click", move |_| act()).with(words.into())
}
