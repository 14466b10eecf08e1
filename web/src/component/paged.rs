//! A long table, of which so many rows are shown at a time that the page stays light.

use crate::chart::{Grid, Table};
use crate::text::page;
use leptos::{html, prelude::*};

/// Most rows that are shown at once.
pub const SHOWN: usize = 50;

/// Makes the row of that number, counted from 0.
pub type Row = Box<dyn Fn(usize) -> Vec<String> + Send + Sync>;

/// A table of words: its first rows, with buttons for the next and the previous ones.
#[component]
pub fn PagedTable(
    caption: String,
    heads: &'static [&'static str],
    /// How many rows there are. The first ones are shown again when that changes.
    #[prop(into)]
    count: Signal<usize>,
    row: Row,
) -> impl IntoView {
    let from = RwSignal::new(0);
    Effect::new(move |before: Option<usize>| {
        let now = count.get();
        if before.is_some_and(|before| before != now) {
            from.set(0);
        }
        now
    });
    let place = move || (from.get(), count.get().min(from.get() + SHOWN), count.get());
    let shown = move || {
        let (from, to, _) = place();
        let heads = heads.iter().map(|head| String::from(*head)).collect();
        let rows = (from..to).map(&row).collect();
        let table = Table { label: String::new(), caption: caption.clone(), heads, rows };
        view! { <Grid table /> }
    };
    let said = move || {
        let (from, to, count) = place();
        page::rows(from + 1, to, count)
    };
    let top = NodeRef::<html::Div>::new();
    // From the last row, the first of the others is far up.
    let turn = move |by: isize| {
        from.update(|from| *from = from.saturating_add_signed(by * SHOWN as isize));
        if let Some(top) = top.get_untracked() {
            let _ = top.focus();
        }
    };
    view! {
        <div class="chart words" tabindex="-1" node_ref=top>
            {shown}
        </div>
        // The buttons stay, or the focus would go with them.
        <p class="paged" hidden=move || place().2 <= SHOWN>
            <span role="status">{said}</span>
            <button type="button" hidden=move || place().0 == 0 on:click=move |_| turn(-1)>
                {page::previous_rows(SHOWN)}
            </button>
            <button
                type="button"
                hidden=move || place().1 == place().2
                on:click=move |_| turn(1)
            >
                {page::next_rows(SHOWN)}
            </button>
        </p>
    }
}
