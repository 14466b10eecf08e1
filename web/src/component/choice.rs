//! One of a few, picked from a list.

use crate::dom::{Node, el, live, said};
use std::rc::Rc;

/// The options: value and words; and the value that is chosen.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Options {
    /// Value and words of each.
    pub list: Vec<(String, String)>,
    /// The chosen value.
    pub chosen: String,
}

/// Draws a label and a list.
pub fn choice(
    id: String,
    label: impl Fn() -> String + 'static,
    options: impl Fn() -> Options + 'static,
    picked: impl Fn(&str) + 'static,
) -> Node {
    let options: Rc<dyn Fn() -> Options> = Rc::new(options);
    let (keyed, listed) = (options.clone(), options.clone());
    // The list is made anew when an option changes, not when another is picked.
    let key = move || {
        let list = keyed().list;
        list.iter().flat_map(|(value, words)| [value.as_str(), "=", words, "\n"]).collect()
    };
    let list = move || {
        let Options { list, chosen } = listed();
        let option = |(value, words): (String, String)| {
            let option = el("option").attr("value", value.clone());
            let option = if value == chosen { option.attr("selected", "") } else { option };
            Node::from(option.with(words))
        };
        list.into_iter().map(option).collect()
    };
    let label_id = id.clone();
    el("div")
        .class("field")
        .with(el("label").attr("for", label_id).with(said(label)))
        .with(
            el("select")
                .attr("id", id)
                .with(live(key, list))
                .value(move || options().chosen)
                .on("change", move |e| picked(&e.value())),
        )
        .into()
}
