//! The way to every question, always at hand: the page is long on a phone.

use crate::platform::{self, Heading};
use crate::text::page;
use leptos::prelude::*;

/// Id of the list.
const LIST: &str = "contents";

/// A button in the corner that opens the list of headings, as they are just then.
///
/// The browser itself opens and closes it, and closes it by Escape or a tap beside.
#[component]
pub(super) fn Contents() -> impl IntoView {
    let headings = RwSignal::new(Vec::<Heading>::new());
    let entry = |(place, heading): (usize, Heading)| {
        view! {
            <li class=if heading.part { "part" } else { "" }>
                <button
                    type="button"
                    popovertarget=LIST
                    popovertargetaction="hide"
                    on:click=move |_| platform::go_to_heading(place)
                >
                    {heading.text}
                </button>
            </li>
        }
    };
    let list = move || headings.get().into_iter().enumerate().map(entry).collect_view();
    view! {
        <nav class="contents" aria-label=page::CONTENTS>
            <button
                type="button"
                popovertarget=LIST
                on:click=move |_| headings.set(platform::headings())
            >
                {page::CONTENTS}
            </button>
            <div id=LIST popover="">
                <ul>{list}</ul>
            </div>
        </nav>
    }
}
