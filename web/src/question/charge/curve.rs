//! Charge and current over time.

use crate::chart::{Point, Region, Table, value_at};
use crate::question::{Draws, Mark, Plot};
use crate::text::{Style, charge as words, duration, percent};
use pitchline_core::{ChargeEnd, ChargePoint, Charging, Unit};

/// Something of a moment, as it is drawn.
type Of = fn(&ChargePoint) -> f64;

/// One of the two curves.
struct Curve {
    of: Of,
    title: &'static str,
    /// What opens its table, and what that holds.
    label: &'static str,
    caption: &'static str,
    heads: [&'static str; 3],
    /// How many decimals it has there.
    decimals: u8,
    /// What stands beside it there.
    beside: Of,
    /// Where the axis ends.
    most: fn(&Charging) -> f64,
    /// What is marked on it, by time, s.
    marks: fn(&Charging) -> Vec<Mark>,
}

const OF_CHARGE: Of = |point| point.charge * 100.0;
const OF_CURRENT: Of = |point| point.current_a;
const OF_VOLTS: Of = |point| point.volts;

/// Places of the cursor along a curve, but one.
const STOPS: u32 = 48;
/// Of which one in so many is a row of the table.
const ROW: usize = 4;

/// Charge over time.
pub(super) static CHARGE: Draws<Charging> = Draws {
    finding: filling,
    draw: |charges, style, width| CHARGE_CURVE.plot(charges, style).draw(style, width),
    table: |charges, style| CHARGE_CURVE.table(charges, style),
};

/// Current over time.
pub(super) static CURRENT: Draws<Charging> = Draws {
    finding: falling,
    draw: |charges, style, width| CURRENT_CURVE.plot(charges, style).draw(style, width),
    table: |charges, style| CURRENT_CURVE.table(charges, style),
};

static CHARGE_CURVE: Curve = Curve {
    of: OF_CHARGE,
    title: words::CHARGE_AXIS,
    label: words::CHARGE_TABLE,
    caption: words::CHARGE_CAPTION,
    heads: words::CHARGE_HEADS,
    decimals: 0,
    beside: OF_CURRENT,
    most: |_| 100.0,
    marks: |Charging { enough, leaving, .. }| {
        let enough = (enough.time_s, enough.end_charge * 100.0, percent(enough.end_charge));
        let mark = words::leave_mark(leaving.end_charge);
        let leaving_at = (leaving.time_s, leaving.end_charge * 100.0, mark);
        // Once the charger has ended, nothing more happens.
        if leaving.end == ChargeEnd::Time { vec![enough, leaving_at] } else { vec![enough] }
    },
};

static CURRENT_CURVE: Curve = Curve {
    of: OF_CURRENT,
    title: words::CURRENT_AXIS,
    label: words::CURRENT_TABLE,
    caption: words::CURRENT_CAPTION,
    heads: words::CURRENT_HEADS,
    decimals: 1,
    beside: OF_VOLTS,
    // Room for words above it.
    most: |charges| 1.3 * charges.full.curve.first().map_or(0.0, OF_CURRENT),
    marks: |Charging { full, .. }| {
        let first = full.constant_current_s;
        vec![(first, at(&full.curve, OF_CURRENT, first), words::HELD.into())]
    },
};

fn filling(charges: &Charging, style: Style) -> String {
    let full = &charges.full;
    words::filling(full, at(&full.curve, OF_CHARGE, full.constant_current_s) / 100.0, style)
}

fn falling(charges: &Charging, style: Style) -> String {
    match charges.full.curve.as_slice() {
        [first, .., last] => {
            let (current, volts) = ([first, last].map(OF_CURRENT), [first, last].map(OF_VOLTS));
            words::falling(current, volts, style)
        }
        _ => String::new(),
    }
}

fn points(curve: &[ChargePoint], of: Of) -> Vec<Point> {
    curve.iter().map(|point| (point.time_s, Some(of(point)))).collect()
}

/// What a curve has come to at a time, s.
fn at(curve: &[ChargePoint], of: Of, time_s: f64) -> f64 {
    value_at(&points(curve, of), time_s).unwrap_or_default()
}

/// Times from start to end, s, evenly.
fn times(charges: &Charging) -> impl Iterator<Item = f64> {
    // The curve's own end: the sum of both parts may lie a hair behind it.
    let whole = charges.full.curve.last().map_or(0.0, |point| point.time_s);
    (0..=STOPS).map(move |n| whole * f64::from(n) / f64::from(STOPS))
}

impl Curve {
    fn plot(&self, charges: &Charging, style: Style) -> Plot {
        let hours = |seconds: f64| style.shown_si(seconds, Unit::Hour);
        let full = &charges.full;
        let line = points(&full.curve, self.of);
        let pace = words::pace(full.limit);
        let first = full.constant_current_s;
        let region = |from: f64, to: f64, kind, name: &str| Region {
            from: hours(from),
            to: hours(to),
            kind,
            name: name.into(),
        };
        let regions = vec![region(0.0, first, 0, pace), region(first, full.time_s, 1, "")];
        let mark = |(time_s, y, text): Mark| (hours(time_s), y, text);
        let stop = |time_s: f64| {
            let [charge, current] = [OF_CHARGE, OF_CURRENT].map(|of| at(&full.curve, of, time_s));
            (hours(time_s), words::moment(time_s, charge / 100.0, current, style))
        };
        Plot {
            x: words::HOURS.into(),
            y: self.title.into(),
            most: Some((self.most)(charges)),
            points: line.into_iter().map(|(time_s, y)| (hours(time_s), y)).collect(),
            regions,
            marks: (self.marks)(charges).into_iter().map(mark).collect(),
            readout: times(charges).map(stop).collect(),
            nothing: words::FULL,
        }
    }

    fn table(&self, charges: &Charging, style: Style) -> Table {
        let curve = charges.full.curve.as_slice();
        let row = |time_s: f64| {
            let value = |of: Of, decimals| style.fixed(at(curve, of, time_s), decimals);
            vec![duration(time_s), value(self.of, self.decimals), value(self.beside, 1)]
        };
        Table {
            label: self.label.into(),
            caption: self.caption.into(),
            heads: self.heads.map(String::from).into(),
            rows: times(charges).step_by(ROW).map(row).collect(),
        }
    }
}
