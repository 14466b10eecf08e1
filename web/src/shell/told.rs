//! What the page has to say: faults in files and links.

use crate::app::{Loaded, use_app};
use crate::text::{Style, catalogue as text, fault, keep, page, shell};
use leptos::prelude::*;
use pitchline_core::{Error, Reason};

/// Why another catalogue stands in, that some of this one could not be used, and what could not be
/// read of a link or a file.
#[component]
pub(super) fn Told() -> impl IntoView {
    let app = use_app();
    let catalogue = move || {
        let Loaded { faults, refused, kept, .. } = app.loaded();
        let refused = refused.map(|why| {
            let title = match &kept {
                Some(date) => page::kept_parts(date),
                None => page::DEMO_PARTS.into(),
            };
            boxed(title, view! { <p>{why}</p> }.into_any())
        });
        // Which they are is for the maker, however many there are.
        let faults = (!faults.is_empty()).then(|| {
            view! {
                <div class="told">
                    <p>
                        {text::unusable(faults.len())} " " <a href="#see=catalogue">{text::SEE}</a>
                    </p>
                </div>
            }
        });
        view! {
            {refused}
            {faults}
        }
    };
    let unread = move || {
        let unread = app.unread();
        (!unread.is_empty()).then(|| {
            // What is said of a link's model takes nothing away from the link.
            let used = unread.iter().all(|error| matches!(error.reason, Reason::Unused { .. }));
            let title = if used { keep::READ } else { keep::UNREAD };
            let inside = view! {
                {list(&unread, app.style())}
                <button type="button" on:click=move |_| app.dismiss_unread()>
                    {shell::CLOSE}
                </button>
            };
            boxed(title.into(), inside.into_any())
        })
    };
    view! { <div role="status">{catalogue} {unread}</div> }
}

fn boxed(title: String, inside: AnyView) -> impl IntoView {
    view! {
        <div class="told">
            <p>
                <strong>{title}</strong>
            </p>
            {inside}
        </div>
    }
}

/// So many are told one by one: a link can hold thousands.
const MOST: usize = 12;

fn list(faults: &[Error], style: Style) -> AnyView {
    let item = |error: &Error| view! { <li>{fault(error, style)}</li> };
    let more = faults.len().saturating_sub(MOST);
    let more = (more > 0).then(|| view! { <li>{shell::and_more(more)}</li> });
    view! {
        <ul>
            {faults.iter().take(MOST).map(item).collect_view()} {more}
        </ul>
    }
    .into_any()
}
