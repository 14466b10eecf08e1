//! Distance over speed, with its band.

use super::measure::Measure;
use crate::chart::{Axis, Curves, Drawing, Note, Series, Table};
use crate::text::{Style, page, words};
use pitchline_core::band::{CURVE_SAMPLES, CurvePoint};
use pitchline_core::{Distance, Unit};

/// What it shows, as a sentence: the rider's speed, and the one that goes farthest.
pub(super) fn finding(
    measure: Measure,
    curve: &[CurvePoint],
    (cruise, band): (f64, [f64; 2]),
) -> String {
    let best = curve.iter().max_by(|a, b| a.nominal.total_cmp(&b.nominal));
    let Some(best) = best.filter(|best| best.nominal > 0.0) else { return page::STILL.into() };
    let far = |band: [f64; 2], speed_m_s: f64| {
        let text = measure.style.span(band.map(|m| measure.shown(m)), measure.decimals(band));
        let speed = measure.style.speed_unit(speed_m_s);
        format!("{}\u{a0}{} at {speed}", text.replace('–', " to "), measure.symbol)
    };
    format!(
        "Slower goes farther: {}, up to {}.",
        far(band, cruise),
        far([best.p10, best.p90], best.speed_m_s)
    )
}

pub(super) fn draw(
    measure: Measure,
    curve: &[CurvePoint],
    distance: &Distance,
    width: f64,
) -> Drawing {
    let style = measure.style;
    let km_h = |v: f64| style.shown_si(v, Unit::KilometrePerHour);
    let label = |value: f64, decimals: u8| style.fixed(value, decimals);
    let far = |value: f64| measure.shown(value);
    let along = distance.curve.iter();
    Curves {
        x: Axis {
            title: style.units.shown(Unit::KilometrePerHour).symbol.into(),
            label: &label,
            ..Axis::default()
        },
        y: Axis {
            title: format!("distance, {}", measure.symbol),
            zero: true,
            label: &label,
            ..Axis::default()
        },
        series: vec![Series {
            points: along.map(|p| (km_h(p.speed_m_s), Some(far(p.distance_m)))).collect(),
            band: curve.iter().map(|p| (km_h(p.speed_m_s), far(p.p10), far(p.p90))).collect(),
            ..Series::default()
        }],
        notes: vec![Note {
            x: km_h(distance.cruise.speed_m_s),
            y: Some(far(distance.cruise.distance_m)),
            text: "your speed".into(),
        }],
        readout: curve
            .iter()
            .map(|p| {
                let text = format!(
                    "{}: {} to {}\u{a0}{}, {}",
                    style.speed_unit(p.speed_m_s),
                    measure.rough(p.p10),
                    measure.rough(p.p90),
                    measure.symbol,
                    ends_at(distance, p.speed_m_s),
                );
                (km_h(p.speed_m_s), text)
            })
            .collect(),
        nothing: page::STILL.into(),
        ..Curves::default()
    }
    .draw(width)
}

/// What ends a ride at the speed of one of the curve's points.
fn ends_at(distance: &Distance, speed_m_s: f64) -> &'static str {
    let point = distance.curve.iter().find(|point| point.speed_m_s >= speed_m_s);
    point.map_or("", |point| words::limit(point.limit))
}

pub(super) fn rows(
    measure: Measure,
    style: Style,
    curve: &[CurvePoint],
    distance: &Distance,
) -> Table {
    let symbol = measure.symbol;
    let speed = style.units.shown(Unit::KilometrePerHour).symbol;
    let row = |p: &CurvePoint| {
        let far = [p.p10, p.nominal, p.p90].map(|value| measure.rough(value));
        let [low, entered, high] = far;
        vec![style.speed(p.speed_m_s), low, entered, high, ends_at(distance, p.speed_m_s).into()]
    };
    Table {
        label: "Table".into(),
        caption: format!("Distance by speed as a band, from {CURVE_SAMPLES} boards"),
        heads: vec![
            format!("Speed, {speed}"),
            format!("1 of 10 below, {symbol}"),
            format!("As entered, {symbol}"),
            format!("1 of 10 above, {symbol}"),
            "Ends at".into(),
        ],
        rows: curve.iter().map(row).collect(),
    }
}
