//! The button that makes a change of the build.

use crate::app::{App, Change};
use crate::text::{Style, cure};
use leptos::prelude::*;
use pitchline_core::Slot;
use std::sync::Arc;

/// The button that makes a change.
pub fn take(app: App, change: Arc<Change>, style: Style) -> impl IntoView {
    let names: Vec<_> = change.parts.iter().map(|(slot, _, name)| (*slot, name.as_str())).collect();
    let text = cure::take(&names, change.highest, change.price, &app.catalog().currency, style);
    let go = move |_| match change.parts.as_slice() {
        [] => app.set_controller(change.highest),
        parts => {
            let picks = parts.iter().map(|(slot, id, _)| (*slot, id.clone()));
            app.pick_all(&picks.collect::<Vec<(Slot, String)>>());
        }
    };
    view! {
        <button type="button" on:click=go>
            {text}
        </button>
    }
}
