//! The way to every question, always at hand: the page is long on a phone.

use crate::browser;
use crate::dom::{Node, el, live};
use crate::text::page;
use reactive_graph::prelude::*;
use reactive_graph::signal::RwSignal;

/// Id of the list.
const LIST: &str = "contents";

/// A button in the corner that opens the list of headings, as they are just then.
///
/// The browser itself opens and closes it, and closes it by Escape or a tap beside.
pub(super) fn contents() -> Node {
    let opened = RwSignal::new(0_u32);
    let entry = |(place, heading): (usize, browser::Heading)| {
        let part = if heading.part { "part" } else { "" };
        el("li").class(part).with(
            el("button")
                .attr("type", "button")
                .attr("popovertarget", LIST)
                .attr("popovertargetaction", "hide")
                .on("click", move |_| browser::go_to_heading(place))
                .with(heading.text),
        )
    };
    let list = move || {
        let headings = browser::headings().into_iter().enumerate();
        el("ul").with(headings.map(|one| Node::from(entry(one))).collect::<Node>()).into()
    };
    el("nav")
        .class("contents")
        .attr("aria-label", page::CONTENTS)
        .with(
            el("button")
                .attr("type", "button")
                .attr("popovertarget", LIST)
                .on("click", move |_| opened.update(|n| *n += 1))
                .with(page::CONTENTS),
        )
        .with(
            el("div")
                .attr("id", LIST)
                .attr("popover", "")
                .with(live(move || opened.get().to_string(), list)),
        )
        .into()
}
