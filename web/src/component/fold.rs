//! Something folded away, made only when it is first opened.

use crate::dom::{Element, Node, el, live};
use reactive_graph::prelude::*;
use reactive_graph::signal::RwSignal;

/// Attribute that names what a fold holds, by which [`reveal`] finds its way.
///
/// [`reveal`]: crate::browser::reveal
pub const HOLDS: &str = "data-holds";

/// A fold with its title. `inside` is called when it is opened, and what it
/// made is dropped when it is closed: nothing hidden is kept up to date.
pub fn fold(
    class: &'static str,
    title: &'static str,
    inside: impl Fn() -> Node + 'static,
) -> Element {
    let open = RwSignal::new(false);
    let key = move || if open.get() { "open".into() } else { String::new() };
    let view = move || if open.get_untracked() { inside() } else { Node::None };
    el("details")
        .class(class)
        .on("toggle", move |e| open.set(e.open()))
        .with(el("summary").with(title))
        .with(el("div").class("fold").with(live(key, view)))
}
