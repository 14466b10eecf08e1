//! The one thing that a first visit asks: which kit.

use super::board::Shown;
use crate::app::{App, Fit, see, use_app};
use crate::chart::{drawn, tenths};
use crate::platform;
use crate::text::{setup, shell, words};
use leptos::prelude::*;
use pitchline_core::Build;
use pitchline_core::catalog::Kit;

/// Width that a kit is drawn in, px.
const WIDTH: f64 = 300.0;

/// Every kit with its picture, and a board of the reader's own.
#[component]
pub(super) fn Kits() -> impl IntoView {
    let app = use_app();
    let kits = untrack(|| app.catalog()).kits.clone();
    let one = move |kit: Kit| {
        let picture = untrack(|| picture(app, &kit.id));
        let Kit { id, name, notes, .. } = kit;
        view! {
            <li>
                <button type="button" class="kit" on:click=move |_| app.choose_kit(&id)>
                    {picture}
                    <strong>{name}</strong>
                    <span>{notes}</span>
                </button>
            </li>
        }
    };
    let own = move |_| {
        app.choose_own(shell::OWN_BOARD, |slot| setup::my_own(words::slot(slot)));
        platform::follow(&see::lead("build"));
    };
    view! {
        <ul class="first" role="list">
            {kits.into_iter().map(one).collect_view()}
            <li>
                <button type="button" class="kit" on:click=own>
                    <strong>{shell::OWN_BOARD}</strong>
                    <span>{shell::OWN_BOARD_WHY}</span>
                </button>
            </li>
        </ul>
    }
}

/// The kit's board from the side; none where a part of it is missing.
fn picture(app: App, kit: &str) -> Option<impl IntoView + use<>> {
    let draft = app.catalog().draft(kit);
    if !draft.unfilled().is_empty() {
        return None;
    }
    let build = Build::check(&draft).ok()?;
    let fit = Fit::of(draft, build, Default::default());
    let drawing = Shown::of(&fit, app.style()).side.draw(WIDTH);
    let (width, height) = (tenths(drawing.width), tenths(drawing.height));
    let parts = drawing.parts.iter().map(|(_, marks)| drawn(marks)).collect_view();
    Some(view! {
        <span class="board">
            <svg class="chart-svg" viewBox=format!("0 0 {width} {height}") aria-hidden="true">
                {drawn(&drawing.rest)}
                {parts}
            </svg>
        </span>
    })
}
