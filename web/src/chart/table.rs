//! The numbers behind a drawing, for whoever would rather read them.

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

impl Table {
    /// A table that stands open: nothing opens it.
    #[must_use]
    pub fn alone(caption: &str, heads: &[&str], rows: Vec<Vec<String>>) -> Self {
        let heads = heads.iter().map(|head| (*head).into()).collect();
        Self { label: String::new(), caption: caption.into(), heads, rows }
    }
}

/// The table itself; it scrolls in its own region, never the page.
#[component]
pub fn Grid(
    table: Table,
    /// What stands beside the head of the row of that number, such as a button.
    #[prop(optional)]
    beside: Option<Callback<usize, AnyView>>,
) -> impl IntoView {
    let head = |text: String| view! { <th scope="col">{text}</th> };
    let row = |(number, mut cells): (usize, Vec<String>)| {
        let first = if cells.is_empty() { String::new() } else { cells.remove(0) };
        let beside = beside.map(|beside| (" ", beside.run(number)));
        let cells = cells.into_iter().map(|text| view! { <td>{text}</td> }).collect_view();
        view! { <tr><th scope="row">{first} {beside}</th>{cells}</tr> }
    };
    let label = table.caption.clone();
    view! {
        <div class="chart-table" role="region" tabindex="0" aria-label=label>
            <table>
                <caption><span>{table.caption}</span></caption>
                <thead>
                    <tr>{table.heads.into_iter().map(head).collect_view()}</tr>
                </thead>
                <tbody>{table.rows.into_iter().enumerate().map(row).collect_view()}</tbody>
            </table>
        </div>
    }
}
