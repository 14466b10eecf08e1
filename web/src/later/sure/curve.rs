//! Distance over speed, with its band.

use super::measure::Measure;
use crate::chart::{Axis, Curves, Drawing, Note, Series, Table};
use crate::text::Style;
use pitchline_core::Unit;
use pitchline_core::band::{CURVE_SAMPLES, CurvePoint};

/// What it shows, as a sentence: both ends of it.
pub(super) fn finding(measure: Measure, curve: &[CurvePoint]) -> String {
    let reached = |point: &&CurvePoint| point.nominal > 0.0;
    let ends = (curve.iter().find(reached), curve.iter().rfind(reached));
    let (Some(slow), Some(fast)) = ends else { return "No speed is held.".into() };
    let far = |point: &CurvePoint| {
        let band = [point.p10, point.p90];
        let shown = band.map(|value| measure.shown(value));
        let text = measure.style.span(shown, measure.decimals(band));
        format!(
            "{}\u{a0}{} at {}",
            text.replace('–', " to "),
            measure.symbol,
            measure.style.speed_unit(point.speed_m_s)
        )
    };
    format!("8 of 10 come {} and {}.", far(slow), far(fast))
}

pub(super) fn draw(
    measure: Measure,
    curve: &[CurvePoint],
    (cruise, nominal): (f64, f64),
    width: f64,
) -> Drawing {
    let style = measure.style;
    let km_h = |v: f64| style.shown_si(v, Unit::KilometrePerHour);
    let label = |value: f64, decimals: u8| style.fixed(value, decimals);
    let far = |value: f64| measure.shown(value);
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
            points: curve.iter().map(|p| (km_h(p.speed_m_s), Some(far(p.nominal)))).collect(),
            band: curve.iter().map(|p| (km_h(p.speed_m_s), far(p.p10), far(p.p90))).collect(),
            ..Series::default()
        }],
        notes: vec![Note { x: km_h(cruise), y: Some(far(nominal)), text: "your speed".into() }],
        readout: curve
            .iter()
            .map(|p| {
                let text = format!(
                    "{}: {} to {}\u{a0}{}",
                    style.speed_unit(p.speed_m_s),
                    measure.rough(p.p10),
                    measure.rough(p.p90),
                    measure.symbol
                );
                (km_h(p.speed_m_s), text)
            })
            .collect(),
        nothing: "No speed is held.".into(),
        ..Curves::default()
    }
    .draw(width)
}

pub(super) fn rows(measure: Measure, style: Style, curve: &[CurvePoint]) -> Table {
    let symbol = measure.symbol;
    let speed = style.units.shown(Unit::KilometrePerHour).symbol;
    let row = |p: &CurvePoint| {
        let far = [p.p10, p.nominal, p.p90].map(|value| measure.rough(value));
        let [low, entered, high] = far;
        vec![style.speed(p.speed_m_s), low, entered, high]
    };
    Table {
        label: "Table".into(),
        caption: format!("Distance by speed as a band, from {CURVE_SAMPLES} boards"),
        heads: vec![
            format!("Speed, {speed}"),
            format!("1 of 10 below, {symbol}"),
            format!("As entered, {symbol}"),
            format!("1 of 10 above, {symbol}"),
        ],
        rows: curve.iter().map(row).collect(),
    }
}
