//! What is on paper beside the view: the build, its conditions, its link, the versions and the date.

use crate::app::{App, see, use_app};
use crate::platform;
use crate::text::{self, page, shell, words};
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
            <p>{move || conditions(app)}</p>
            <p>{move || platform::link(&see::join(&app.link(), &app.see()))}</p>
            <p>{move || made(app)}</p>
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

/// What of rider, place and ride the answers rest on.
fn conditions(app: App) -> String {
    let style = app.style();
    let of = |draft: &Draft, slot: Slot| {
        let fields = slot.kind().fields().iter().enumerate();
        let said = |(index, field)| {
            let value = draft.record(slot).value(index).or_else(|| draft.assumed(slot, index))?;
            Some(text::said(slot.kind(), field, value, style))
        };
        fields.filter_map(said).collect::<Vec<_>>().join("; ")
    };
    app.draft(|draft| {
        let all = [Slot::Rider, Slot::Place, Slot::Ride].map(|slot| of(draft, slot));
        all.join("\n")
    })
}

fn made(app: App) -> String {
    let catalog = app.catalog();
    shell::made(&catalog.maker, &catalog.version, &platform::today())
}
