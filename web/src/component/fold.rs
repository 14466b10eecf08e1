//! Something folded away, made only when it is first opened.

use leptos::{ev, html, prelude::*};

/// A fold with its title. What is inside is made when it is opened and dropped when it is closed:
/// nothing hidden is kept up to date.
#[component]
pub fn Fold(
    class: &'static str,
    #[prop(into)] title: Signal<String>,
    /// What it holds, in a few words beside the title.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Names what it holds, by which [`reveal`](crate::platform::reveal) finds its way.
    #[prop(optional, into)]
    holds: String,
    /// Whether it stands open at first.
    #[prop(optional)]
    begins_open: bool,
    children: ChildrenFn,
) -> impl IntoView {
    let open = RwSignal::new(begins_open);
    let fold = NodeRef::<html::Details>::new();
    let toggled =
        move |_: ev::Event| open.set(fold.get_untracked().is_some_and(|fold| fold.open()));
    view! {
        <details
            class=class
            open=begins_open
            data-holds=(!holds.is_empty()).then_some(holds)
            node_ref=fold
            on:toggle=toggled
        >
            <summary>
                <span class="fold-title">{title}</span>
                " "
                <span class="fold-hint">{hint}</span>
            </summary>
            <div class="fold">{move || open.get().then(|| children())}</div>
        </details>
    }
}
