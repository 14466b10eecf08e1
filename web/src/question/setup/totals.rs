//! Mass, energy and cost adding up.

use crate::app::{App, use_app};
use crate::text::setup;
use leptos::prelude::*;
use pitchline_core::{Unit, totals};

/// The sums under the parts; nothing where a part is missing.
#[component]
pub(super) fn Totals() -> impl IntoView {
    let app = use_app();
    let row = |(name, value): (&'static str, String)| {
        view! { <div><dt>{name}</dt><dd>{value}</dd></div> }
    };
    view! { <dl class="sums">{move || rows(app).into_iter().map(row).collect_view()}</dl> }
}

fn rows(app: App) -> Vec<(&'static str, String)> {
    let Some(found) = app.found() else { return Vec::new() };
    let (style, totals) = (app.style(), totals(&found.build));
    let kg = |mass| style.quantity(mass, Unit::Kilogram, 3);
    let mut rows = vec![
        (setup::BOARD, kg(totals.board_mass_kg)),
        (setup::WITH_RIDER, kg(totals.total_mass_kg)),
        (setup::ENERGY, style.quantity(totals.nameplate_wh, Unit::WattHour, 3)),
        (setup::RATIO, style.fixed(totals.gear_ratio, 2)),
    ];
    if totals.price > 0.0 {
        let currency = app.catalog().currency.clone();
        let price = setup::price(&currency, totals.price, totals.unpriced, style);
        rows.push((setup::PRICE, price));
    }
    rows
}
