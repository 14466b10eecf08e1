//! The numbers behind a drawing, for whoever would rather read them.

use leptos::html;
use leptos::prelude::*;

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

/// The table folded away; it scrolls in its own region, never the page.
pub(super) fn view(table: Signal<Table>) -> AnyView {
    let part = move |read: fn(&Table) -> String| move || table.with(read);
    let heads = move || {
        let head = |text: &String| html::th().scope("col").child(text.clone()).into_any();
        table.with(|t| t.heads.iter().map(head).collect::<Vec<_>>())
    };
    let rows = move || table.with(|t| t.rows.iter().map(|r| row(r)).collect::<Vec<_>>());
    html::details()
        .class("chart-data")
        .child((
            html::summary().child(part(|t| t.label.clone())),
            html::div()
                .class("chart-table")
                .role("region")
                .tabindex(0)
                .attr("aria-label", part(|t| t.caption.clone()))
                .child(html::table().child((
                    html::caption().child(part(|t| t.caption.clone())),
                    html::thead().child(html::tr().child(heads)),
                    html::tbody().child(rows),
                ))),
        ))
        .into_any()
}

fn row(cells: &[String]) -> AnyView {
    let cell = |(n, text): (usize, &String)| match n {
        0 => html::th().scope("row").child(text.clone()).into_any(),
        _ => html::td().child(text.clone()).into_any(),
    };
    html::tr().child(cells.iter().enumerate().map(cell).collect::<Vec<_>>()).into_any()
}
