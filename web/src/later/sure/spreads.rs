//! What may differ from what was entered, and by how much.

use super::tornado::name;
use crate::chart::{Table, table};
use crate::dom::{Node, el, live};
use crate::state::App;
use crate::text::{Style, page};
use pitchline_core::Unit;
use pitchline_core::band::{P90_PLACE, Quantity, SPREADS, Spread};

pub(super) fn spreads(app: App, of: Quantity) -> Node {
    // Several stand on one page, so each has a name of its own.
    let behind = match of {
        Quantity::TopSpeed => "top speed",
        Quantity::Hill => "the hill",
        Quantity::SteadyDistance => "the distance",
        Quantity::OutingDistance => "the ride",
        Quantity::ChargeTime | Quantity::EnoughTime => "the charge",
    };
    let rows = move || {
        let style = app.style();
        let row = |spread: &Spread| {
            let half = app.found().map_or(spread.half, |found| spread.half_in(&found.build));
            let (usual, most) = (off(spread, P90_PLACE * half, style), off(spread, half, style));
            vec![name(spread.input), usual, most]
        };
        table(Table {
            caption: format!("How far off each is taken to be, for {behind}"),
            heads: vec!["What".into(), "8 of 10".into(), "At most".into()],
            rows: SPREADS.iter().map(row).collect(),
            ..Table::default()
        })
    };
    Node::from(vec![
        el("p").with(page::SPREADS_WHY).into(),
        el("div").class("chart").with(live(move || app.units().key().into(), rows)).into(),
    ])
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
