//! Top speed in each ride mode, and on each grade.

use crate::app::{Found, use_app};
use crate::text::speed as said;
use crate::text::{Style, words};
use leptos::prelude::*;
use pitchline_core::{Slot, TopSpeed};

const MODES: [Slot; 3] = [Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh];

/// Top speed in each ride mode, and on each grade.
#[component]
pub(super) fn Modes() -> impl IntoView {
    let app = use_app();
    let head = |text: &'static str| view! { <th scope="col">{text}</th> };
    let row = |[name, speed, limit]: [String; 3]| {
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td>{speed}</td>
                <td>{limit}</td>
            </tr>
        }
    };
    let rows = move || {
        let rows = app.found().map(|found| modes(&found, app.style())).unwrap_or_default();
        rows.into_iter().map(row).collect_view()
    };
    view! {
        <table class="plain">
            <thead>
                <tr>{said::MODES_HEADS.map(head).into_view()}</tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
}

/// Mode names are the rider's to change.
fn name(found: &Found, slot: Slot) -> String {
    let name = &found.draft.record(slot).name;
    if name.is_empty() { words::slot(slot).into() } else { said::mode(name) }
}

fn modes(found: &Found, style: Style) -> Vec<[String; 3]> {
    let row = |name: String, top: &TopSpeed| {
        [name, style.speed_unit(top.speed_m_s), words::limit(top.limit).into()]
    };
    let speed = &found.answers.speed;
    let modes = MODES.into_iter().zip(&speed.modes).map(|(slot, top)| row(name(found, slot), top));
    let grades = speed.by_grade.iter().map(|(grade, top)| row(said::up(*grade, style), top));
    modes.chain(grades).collect()
}

/// The gentlest mode, in a few words.
pub(super) fn hint(found: &Found, style: Style) -> String {
    let first = modes(found, style).into_iter().next();
    first.map_or_else(String::new, |[name, speed, _]| format!("{name}, {speed}"))
}
