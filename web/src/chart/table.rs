//! The numbers behind a drawing, for whoever would rather read them.

use crate::dom::{Node, el, live};
use reactive_graph::prelude::*;
use reactive_graph::signal::RwSignal;
use std::rc::Rc;

/// A data table; all in words, units in the heads.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// What opens it, such as "Table".
    pub label: String,
    /// What it holds.
    pub caption: String,
    /// One for each column, with its unit.
    pub heads: Vec<String>,
    /// The rows; the first cell of each is its head.
    pub rows: Vec<Vec<String>>,
}

/// The table folded away, made while it is open; it scrolls in its own
/// region, never the page.
pub(super) fn view(key: Rc<dyn Fn() -> String>, table: Box<dyn Fn() -> Table>) -> Node {
    let open = RwSignal::new(false);
    let table: Rc<dyn Fn() -> Table> = Rc::from(table);
    let label = table().label;
    let key = move || if open.get() { key() } else { String::new() };
    let inside = move || if open.get_untracked() { grid(table()) } else { Node::None };
    el("details")
        .class("chart-data")
        .on("toggle", move |e| open.set(e.open()))
        .with(el("summary").with(label))
        .with(live(key, inside))
        .into()
}

/// The table itself, open.
pub fn grid(table: Table) -> Node {
    let head = |text: String| Node::from(el("th").attr("scope", "col").with(text));
    let heads = table.heads.into_iter().map(head).collect::<Node>();
    let rows = table.rows.into_iter().map(row).collect::<Node>();
    el("div")
        .class("chart-table")
        .attr("role", "region")
        .attr("tabindex", "0")
        .attr("aria-label", table.caption.clone())
        .with(
            el("table")
                .with(el("caption").with(el("span").with(table.caption)))
                .with(el("thead").with(el("tr").with(heads)))
                .with(el("tbody").with(rows)),
        )
        .into()
}

fn row(cells: Vec<String>) -> Node {
    let cell = |(n, text): (usize, String)| -> Node {
        match n {
            0 => el("th").attr("scope", "row").with(text).into(),
            _ => el("td").with(text).into(),
        }
    };
    el("tr").with(cells.into_iter().enumerate().map(cell).collect::<Node>()).into()
}
