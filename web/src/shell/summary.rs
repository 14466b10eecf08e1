//! The board in a line: kit, motors, gearing, wheels, mass and price.

use crate::app::{App, see, use_app};
use crate::text::{setup, shell};
use leptos::prelude::*;
use pitchline_core::{Record, Slot, Unit, totals};

/// The kit and its parts in a line, and the way to change them.
#[component]
pub(super) fn Summary() -> impl IntoView {
    view! {
        <div class="summary">
            <InALine />
            <a class="button" href=see::lead("build")>
                {shell::CHANGE}
            </a>
        </div>
    }
}

/// The kit and its parts in a line.
#[component]
pub(super) fn InALine() -> impl IntoView {
    let app = use_app();
    let kit = Memo::new(move |_| {
        let (catalog, name) = (app.catalog(), app.draft(|draft| draft.name.clone()));
        let kit = app.draft(|draft| catalog.kit(&draft.kit).map(|kit| kit.name.clone()));
        if name.is_empty() { kit.unwrap_or_default() } else { name }
    });
    let parts = Memo::new(move |_| parts(app));
    view! {
        <p>
            <strong>{kit}</strong>
            <span>{parts}</span>
        </p>
    }
}

fn parts(app: App) -> String {
    let Some(found) = app.found() else { return String::new() };
    let (style, totals) = (app.style(), totals(&found.build));
    let value = |slot: Slot, key: &str| {
        let record: &Record = found.draft.record(slot);
        slot.kind().field_index(key).and_then(|index| record.value(index)).unwrap_or_default()
    };
    let mut line = vec![
        shell::motors(found.build.count(Slot::Motor), value(Slot::Motor, "kv_rpm_per_v")),
        shell::gearing(value(Slot::MotorPulley, "teeth"), value(Slot::WheelPulley, "teeth")),
        shell::wheel(value(Slot::Wheel, "diameter_mm"), style),
        style.quantity(totals.board_mass_kg, Unit::Kilogram, 2),
    ];
    if totals.price > 0.0 {
        line.push(setup::price(&app.catalog().currency, totals.price, totals.unpriced, style));
    }
    line.join(" · ")
}
