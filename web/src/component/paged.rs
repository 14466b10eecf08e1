//! A long list, of which so many are shown at a time that the page stays light.

use leptos::{html, prelude::*};

/// Most items that are shown at once.
pub const SHOWN: usize = 50;

/// The first items of a list, with buttons for the next and the previous ones.
#[component]
pub fn Paged<T, V>(
    /// The list. The items shown are the first ones again when it changes.
    #[prop(into)]
    list: Signal<Vec<T>>,
    /// What shows some of them.
    show: V,
) -> impl IntoView
where
    T: Clone + Send + Sync + 'static,
    V: Fn(Vec<T>) -> AnyView + Send + Sync + 'static,
{
    let from = RwSignal::new(0);
    Effect::new(move |before: Option<()>| {
        list.track();
        if before.is_some() {
            from.set(0);
        }
    });
    let shown = move || {
        let from = from.get();
        show(list.with(|list| list.iter().skip(from).take(SHOWN).cloned().collect()))
    };
    let place = move || {
        let (from, total) = (from.get(), list.with(Vec::len));
        (from, total.min(from + SHOWN), total)
    };
    let said = move || match place() {
        (from, to, total) if to == total => format!("{} to {to} of {total}", from + 1),
        (from, to, total) => format!("{} to {to} of {total}, and {} more", from + 1, total - to),
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
        <div tabindex="-1" node_ref=top>
            {shown}
        </div>
        // The buttons stay, or the focus would go with them.
        <p class="paged" hidden=move || place().2 <= SHOWN>
            <span role="status">{said}</span>
            <button type="button" hidden=move || place().0 == 0 on:click=move |_| turn(-1)>
                {format!("Show the previous {SHOWN}")}
            </button>
            <button
                type="button"
                hidden=move || place().1 == place().2
                on:click=move |_| turn(1)
            >
                {format!("Show the next {SHOWN}")}
            </button>
        </p>
    }
}
