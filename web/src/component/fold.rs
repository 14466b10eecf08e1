//! Something folded away, made only when it is first opened.

use leptos::ev;
use leptos::html;
use leptos::prelude::*;

/// A fold with its title. `inside` is called when it is opened, and what it
/// made is dropped when it is closed: nothing hidden is kept up to date.
pub fn fold(
    class: &'static str,
    title: &'static str,
    inside: impl Fn() -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let open = RwSignal::new(false);
    let node = NodeRef::<html::Details>::new();
    let toggled = move |_| {
        let now = node.get_untracked().is_some_and(|details| details.open());
        if open.get_untracked() != now {
            open.set(now);
        }
    };
    html::details()
        .class(class)
        .node_ref(node)
        .on(ev::toggle, toggled)
        .child((
            html::summary().child(title).into_any(),
            html::div().class("fold").child(move || open.get().then(&inside)).into_any(),
        ))
        .into_any()
}
