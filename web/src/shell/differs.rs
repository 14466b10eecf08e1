//! How the build differs from its kit as it is sold, part by part.

use crate::app::{Difference, is_own, use_app};
use crate::component::Fold;
use crate::text::difference::{self, Said};
use leptos::prelude::*;

/// What differs, folded away, as after a link was opened; nothing where nothing does.
#[component]
pub(super) fn Differs() -> impl IntoView {
    let app = use_app();
    let differs = Memo::new(move |_| {
        let catalog = app.catalog();
        // A board of the reader's own is of no kit.
        let of_kit = |draft: &_| (!is_own(draft)).then(|| Difference::from_kit(draft, &catalog))?;
        app.draft(of_kit).filter(|all| !all.is_empty())
    });
    let said = Memo::new(move |_| {
        differs.get().map_or_else(Vec::new, |all| all.said(&app.catalog(), app.style()))
    });
    let title = Signal::derive(move || {
        let parts = differs.with(|all| all.as_ref().map_or(0, |all| all.slots.len()));
        let catalog = app.catalog();
        let kit = app.draft(|draft| catalog.kit(&draft.kit).map(|kit| kit.name.clone()));
        difference::from_kit(parts, &kit.unwrap_or_default())
    });
    let hint = Signal::derive(move || said.with(|all| difference::named(all)));
    let line = |said: Said| view! { <li>{said.line()}</li> };
    let any = Memo::new(move |_| differs.with(Option::is_some));
    move || {
        any.get().then(|| {
            view! {
                <Fold class="evidence" title hint>
                    <ul>{move || said.get().into_iter().map(line).collect_view()}</ul>
                </Fold>
            }
        })
    }
}

/// What the last edit was, beside the answers that say what has changed since.
#[component]
pub(super) fn Since() -> impl IntoView {
    let app = use_app();
    let said = Memo::new(move |_| {
        let edit = app.done()?.named(&app.catalog(), app.style());
        (!edit.is_empty()).then(|| difference::since(&edit))
    });
    move || said.get().map(|said| view! { <p class="help">{said}</p> })
}
