//! Things to be told: what does not fit, and cautions.

use leptos::html;
use leptos::prelude::*;

/// Something that needs mending, by icon and words.
pub fn notice(text: String) -> AnyView {
    html::p()
        .class("notice")
        .child((html::span().class("notice-icon").attr("aria-hidden", "true").child("!"), text))
        .into_any()
}

/// A caution, where the action is.
pub fn caution(text: &'static str) -> AnyView {
    html::p().class("caution").child(text).into_any()
}
