//! What may differ from what was entered, and by how much.

use crate::app::{Banded, use_app};
use crate::chart::{Grid, Table};
use crate::text::Style;
use crate::text::sure as said;
use leptos::prelude::*;
use pitchline_core::band::{P90_PLACE, SPREADS, Spread};
use pitchline_core::{Build, Unit};

/// What may differ, and why it is so.
#[component]
pub(super) fn Spreads(of: Banded) -> impl IntoView {
    let app = use_app();
    let grid = move || {
        let found = app.found();
        let table = rows(of, found.as_ref().map(|found| &found.build), app.style());
        view! { <Grid table /> }
    };
    view! {
        <p>{said::spreads_why(of.quantity().samples())}</p>
        <div class="chart">{grid}</div>
    }
}

fn rows(of: Banded, build: Option<&Build>, style: Style) -> Table {
    // Several stand on one page, so each has a name of its own.
    let behind = match of {
        Banded::Speed => said::OF_SPEED,
        Banded::Hill => said::OF_HILL,
        Banded::Distance => said::OF_DISTANCE,
        Banded::Outing => said::OF_RIDE,
        Banded::Charge | Banded::Enough => said::OF_CHARGE,
    };
    let row = |spread: &Spread| {
        let half = build.map_or(spread.half, |build| spread.half_in(build));
        let (usual, most) = (off(spread, P90_PLACE * half, style), off(spread, half, style));
        vec![said::name(spread.input), usual, most]
    };
    Table {
        caption: said::spreads(behind),
        heads: said::SPREADS_HEADS.map(String::from).into(),
        rows: SPREADS.iter().map(row).collect(),
        ..Table::default()
    }
}

/// How far an input may be off, with the sign that says so.
fn off(spread: &Spread, by: f64, style: Style) -> String {
    let fields = spread.slot.kind().fields();
    let own = fields.iter().find(|field| field.key == spread.key).filter(|_| spread.absolute);
    let unit = own.map_or(Unit::Percent, |field| field.unit);
    // By how much it differs: where the scale has its zero does not matter.
    let shown = style.shown_si(by, unit) - style.shown_si(0.0, unit);
    let symbol = style.units.shown(unit).symbol;
    format!("±\u{a0}{}\u{a0}{symbol}", style.significant(shown, 2))
}
