//! A long list, of which so many are shown at a time that the page stays light.

use leptos::prelude::*;

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
    let total = move || list.with(Vec::len);
    let turn = move |by: isize| {
        from.update(|from| *from = from.saturating_add_signed(by * SHOWN as isize));
    };
    let rest = move || {
        let (from, total) = (from.get(), total());
        (total > SHOWN).then(|| {
            let to = total.min(from + SHOWN);
            let left = total - to;
            let said = match left {
                0 => format!("{} to {to} of {total}", from + 1),
                _ => format!("{} to {to} of {total}, and {left} more", from + 1),
            };
            let back = (from > 0).then(|| {
                view! {
                    <button type="button" on:click=move |_| turn(-1)>
                        {format!("Show the previous {SHOWN}")}
                    </button>
                }
            });
            let on = (left > 0).then(|| {
                view! {
                    <button type="button" on:click=move |_| turn(1)>
                        {format!("Show the next {}", left.min(SHOWN))}
                    </button>
                }
            });
            view! {
                <p class="paged">
                    <span role="status">{said}</span>
                    {back}
                    {on}
                </p>
            }
        })
    };
    view! {
        {shown}
        {rest}
    }
}
