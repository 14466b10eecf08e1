//! What moves an answer: bars about what was entered, the longest on top.

use super::measure::Measure;
use crate::chart::{Bar, Bars, Drawing, Limit, Table};
use crate::text::sure as said;
use pitchline_core::band::{Band, Mover};

/// Bars that are drawn; the table has all.
const DRAWN: usize = 5;
/// What moves an answer by less than this share of it does not count.
const COUNTS: f64 = 0.002;

/// Those that count, strongest first.
fn strong(band: &Band) -> impl Iterator<Item = &Mover> {
    let least = COUNTS * band.nominal.abs();
    band.movers.iter().filter(move |mover| mover.swing().abs() > least).take(DRAWN)
}

/// What moves it most, as a sentence.
pub(super) fn finding(band: &Band) -> String {
    said::movers(strong(band))
}

pub(super) fn draw(measure: Measure, band: &Band, width: f64) -> Drawing {
    let bars = strong(band).map(|mover| bar(measure, band.nominal, mover)).collect();
    let entered = said::as_entered(&measure.entered(band.nominal));
    Bars {
        bars,
        parts: said::ENDS.map(String::from).into(),
        signs: vec!["↓", "↑"],
        limit: Some(Limit { at: 0.0, name: entered }),
        nothing: finding(band),
        ..Bars::default()
    }
    .draw(width)
}

fn bar(measure: Measure, nominal: f64, mover: &Mover) -> Bar {
    let ends = [mover.low, mover.high].map(|value| measure.shown(value) - measure.shown(nominal));
    let signed = |value: f64| {
        let plus = if value > 0.0 { "+" } else { "" };
        plus.to_string() + &measure.style.fixed(value, measure.fine_decimals())
    };
    let (least, most) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
    let name = said::name(mover.input);
    let [low, high] = [mover.low, mover.high].map(|value| measure.fine(value));
    let symbol = measure.symbol;
    Bar {
        text: said::from_to(&signed(least), &signed(most), measure.of_difference()),
        readout: said::bar(&name, &low, &high, symbol),
        name,
        values: apart(ends).to_vec(),
    }
}

/// Both ends on one side stand one behind the other, the nearer one first.
fn apart([low, high]: [f64; 2]) -> [f64; 2] {
    if low * high <= 0.0 {
        [low, high]
    } else if high.abs() > low.abs() {
        [low, high - low]
    } else {
        [low, 0.0]
    }
}

pub(super) fn rows(measure: Measure, band: &Band) -> Table {
    let row = |mover: &Mover| {
        vec![said::name(mover.input), measure.fine(mover.low), measure.fine(mover.high)]
    };
    Table {
        label: said::MOVERS_TABLE.into(),
        caption: said::movers_caption(&measure.entered(band.nominal)),
        heads: said::movers_heads(measure.symbol),
        rows: band.movers.iter().map(row).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_on_one_side_stand_behind_each_other() {
        assert_eq!(apart([-2.0, 3.0]), [-2.0, 3.0]);
        assert_eq!(apart([1.0, 4.0]), [1.0, 3.0]);
        assert_eq!(apart([-4.0, -1.0]), [-4.0, 0.0]);
        assert_eq!(apart([0.0, -1.0]), [0.0, -1.0]);
    }
}
