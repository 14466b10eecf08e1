//! Where the energy of a ride went.

use super::rides::Ridings;
use super::trace::none;
use crate::chart::{Bar, Bars, Drawing, Table, nothing};
use crate::question::Draws;
use crate::text::trip as said;
use crate::text::{Style, page, range, words};
use pitchline_core::ride::Ridden;
use std::sync::Arc;

/// Of the chosen one, also while it is not there yet.
pub(super) static SPENT: Draws<Option<Arc<Ridings>>> = Draws {
    finding: |found, style| {
        found.as_ref().map_or_else(String::new, |found| finding(found.chosen(), style))
    },
    draw: |found, style, width| match found {
        Some(found) => draw(found.chosen(), style, width),
        None => nothing(width, page::WORKING),
    },
    table: |found, style| {
        found.as_ref().map_or_else(|| none(said::SPENT_TABLE), |found| table(found.chosen(), style))
    },
};

/// What took energy, largest first, and its share. What a downhill gave back is not among it.
fn sorted(ride: &Ridden) -> Vec<(&'static str, f64, f64)> {
    let sinks = words::SINKS.into_iter().zip(ride.ledger.sinks_wh()).filter(|(_, wh)| *wh > 0.0);
    // The standard library's sort would cost the page more bytes than all of this.
    let mut sorted: Vec<(&str, f64)> = Vec::new();
    for (name, wh) in sinks {
        let place = sorted.iter().position(|sink| sink.1 < wh).unwrap_or(sorted.len());
        sorted.insert(place, (name, wh));
    }
    let all: f64 = sorted.iter().map(|(_, wh)| wh).sum();
    // Under half a percent a bar is not seen.
    let seen = sorted.into_iter().map(|(name, wh)| (name, wh, wh / all));
    seen.filter(|(.., share)| *share >= 0.005).collect()
}

fn finding(ride: &Ridden, style: Style) -> String {
    let l = &ride.ledger;
    let back = Some(l.returned_wh).filter(|back| *back >= 0.01 * l.passed_wh);
    match sorted(ride).as_slice() {
        [(one, _, first), (two, _, second), ..] => {
            said::spent(l.stored_wh, back, [(one, *first), (two, *second)], style)
        }
        _ => range::NO_ENERGY.into(),
    }
}

pub(super) fn draw(ride: &Ridden, style: Style, width: f64) -> Drawing {
    let bar = |(name, wh, share): &(&'static str, f64, f64)| {
        let text = range::energy_amount(*wh, *share, style);
        Bar { name: (*name).into(), values: vec![*wh], readout: format!("{name}: {text}"), text }
    };
    let bars = sorted(ride).iter().map(bar).collect();
    Bars { bars, nothing: range::NO_ENERGY.into(), ..Bars::default() }.draw(width)
}

pub(super) fn table(ride: &Ridden, style: Style) -> Table {
    let row = |(name, wh, share): &(&'static str, f64, f64)| {
        vec![(*name).into(), style.significant(*wh, 2), style.significant(*share * 100.0, 2)]
    };
    Table {
        label: said::SPENT_TABLE.into(),
        caption: said::SPENT_CAPTION.into(),
        heads: range::ENERGY_HEADS.map(String::from).into(),
        rows: sorted(ride).iter().map(row).collect(),
    }
}
