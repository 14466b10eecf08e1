//! Things to be told: what does not fit, and cautions.

use crate::dom::{Node, el};

/// Something that needs mending, by icon and words.
pub fn notice(text: String) -> Node {
    let icon = el("span").class("notice-icon").attr("aria-hidden", "true").with("!");
    el("p").class("notice").with(icon).with(text).into()
}

/// A caution, where the action is.
pub fn caution(text: &'static str) -> Node {
    el("p").class("caution").with(text).into()
}
