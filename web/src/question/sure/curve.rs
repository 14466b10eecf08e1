//! Distance over speed, with its band.

use super::measure::Measure;
use crate::chart::{Axis, Curves, Drawing, Note, Series, Table};
use crate::text::sure as said;
use crate::text::{Style, page, range, words};
use pitchline_core::band::{CURVE_SAMPLES, CurvePoint};
use pitchline_core::{Distance, Unit};

/// What it shows, as a sentence: the rider's speed, and the one that goes farthest. Without a
/// band yet it says the distances alone.
pub(super) fn finding(
    measure: Measure,
    distance: &Distance,
    curve: &[CurvePoint],
    (cruise, band): (f64, [f64; 2]),
) -> String {
    if distance.cruise.distance_m <= 0.0 {
        return page::STILL.into();
    }
    let far = |band: [f64; 2]| {
        let text = measure.style.span(band.map(|m| measure.shown(m)), measure.decimals(band));
        said::in_a_sentence(&text, measure.symbol)
    };
    let best = curve.iter().max_by(|a, b| a.nominal.total_cmp(&b.nominal));
    let best = best.map_or_else(
        || {
            let along = distance.curve.iter();
            let best = along.max_by(|a, b| a.distance_m.total_cmp(&b.distance_m));
            best.map_or((cruise, band), |best| (best.speed_m_s, [best.distance_m; 2]))
        },
        |best| (best.speed_m_s, [best.p10, best.p90]),
    );
    said::over_speed(measure.style, (cruise, &far(band)), (best.0, &far(best.1)))
}

pub(super) fn draw(
    measure: Measure,
    curve: &[CurvePoint],
    distance: &Distance,
    here: [f64; 2],
    width: f64,
) -> Drawing {
    let style = measure.style;
    let still = distance.cruise.distance_m <= 0.0;
    let km_h = |v: f64| style.shown_si(v, Unit::KilometrePerHour);
    let label = |value: f64, decimals: u8| style.fixed(value, decimals);
    let far = |value: f64| measure.shown(value);
    let along = distance.curve.iter();
    let band = curve.iter().map(|p| (km_h(p.speed_m_s), far(p.p10), far(p.p90)));
    let text = style.span(here.map(far), measure.decimals(here));
    let x = km_h(distance.cruise.speed_m_s);
    let y = far(distance.cruise.distance_m);
    Curves {
        x: Axis {
            title: style.units.shown(Unit::KilometrePerHour).symbol.into(),
            label: &label,
            ..Axis::default()
        },
        y: Axis {
            title: range::distance_axis(measure.symbol),
            zero: true,
            label: &label,
            ..Axis::default()
        },
        // What does not move has no curve, whatever a luckier board of its kind would do.
        series: if still {
            Vec::new()
        } else {
            vec![Series {
                points: along.map(|p| (km_h(p.speed_m_s), Some(far(p.distance_m)))).collect(),
                band: band.collect(),
                ..Series::default()
            }]
        },
        notes: vec![
            Note { x, y: None, text: String::new() },
            Note { x, y: Some(y), text: format!("{text}\u{a0}{}", measure.symbol) },
        ],
        readout: curve
            .iter()
            .map(|p| {
                let [from, to] = [p.p10, p.p90].map(|value| measure.rough(value));
                let text = said::over_speed_at(
                    &style.speed_unit(p.speed_m_s),
                    [&from, &to],
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
    point.map_or("", |point| words::ended(point.end, point.limit, point.sag))
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
        label: said::CURVE_TABLE.into(),
        caption: said::over_speed_caption(CURVE_SAMPLES),
        heads: said::over_speed_heads(speed, symbol),
        // What does not move has no range at any speed.
        rows: if distance.cruise.distance_m > 0.0 {
            curve.iter().map(row).collect()
        } else {
            Vec::new()
        },
    }
}
