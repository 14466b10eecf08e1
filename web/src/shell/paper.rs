//! What is on paper beside the view: the build, its conditions, its link, the versions and the date.

use crate::app::{App, see, use_app};
use crate::platform;
use crate::text::{page, shell, words};
use leptos::prelude::*;
use pitchline_core::{Draft, Kind, Slot};

/// What is seen on paper alone.
#[component]
pub(super) fn Paper() -> impl IntoView {
    let app = use_app();
    view! {
        <section class="paper" aria-hidden="true">
            <h2>{page::ON_IT}</h2>
            <p>{move || parts(app)}</p>
            <h2>{shell::CONDITIONS}</h2>
            <p>{move || app.conditions()}</p>
            <p>{move || platform::link(&see::join(&app.link(), &app.see()))}</p>
            <p>{move || app.made()}</p>
        </section>
    }
}

/// Every part by its slot.
fn parts(app: App) -> String {
    let part = |draft: &Draft, slot: Slot| {
        let name = &draft.record(slot).name;
        (!name.is_empty()).then(|| format!("{}: {name}", words::slot(slot)))
    };
    let is_part = |slot: &&Slot| slot.holds_part() && slot.kind() != Kind::Mode;
    app.draft(|draft| {
        let parts = Slot::ALL.iter().filter(is_part).filter_map(|slot| part(draft, *slot));
        parts.collect::<Vec<_>>().join("\n")
    })
}
