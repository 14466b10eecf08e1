//! Push against road load.

use crate::app::Found;
use crate::chart::{Axis, Curves, Drawing, Note, Series, Table};
use crate::question::{Draws, regions};
use crate::text::speed as said;
use crate::text::{Style, words};
use pitchline_core::Unit;

/// Push against road load.
pub(super) static PUSH: Draws<Found> = Draws { finding, draw, table: rows };

fn finding(found: &Found, style: Style) -> String {
    let (answers, top) = (&found.answers, found.answers.speed.flat_full);
    let Some(first) = answers.push.points.first() else { return String::new() };
    said::push((first.push_n, first.limit), (top.speed_m_s, top.limit), style)
}

fn draw(found: &Found, style: Style, width: f64) -> Drawing {
    let answers = &found.answers;
    let km_h = |v: f64| style.shown_si(v, Unit::KilometrePerHour);
    let newton = |f: f64| style.shown_si(f, Unit::Newton);
    let points = &answers.push.points;
    let limits: Vec<_> = points.iter().map(|p| (km_h(p.speed_m_s), p.limit)).collect();
    let [push, flat_load] = said::PUSH_LINES.map(String::from);
    let mut series = vec![
        Series {
            name: push,
            points: points
                .iter()
                .map(|p| (km_h(p.speed_m_s), Some(newton(p.push_n)).filter(|n| *n >= 0.0)))
                .collect(),
            regions: regions(&limits),
            ..Series::default()
        },
        Series {
            name: flat_load,
            points: points.iter().map(|p| (km_h(p.speed_m_s), Some(newton(p.flat_n)))).collect(),
            ..Series::default()
        },
    ];
    for (grade, loads) in answers.push.grades.iter().zip(&answers.push.loads) {
        series.push(Series {
            name: style.entered_percent(*grade),
            points: points
                .iter()
                .zip(loads)
                .map(|(p, load)| (km_h(p.speed_m_s), Some(newton(*load))))
                .collect(),
            ..Series::default()
        });
    }
    let top = answers.speed.flat_full.speed_m_s;
    let flat = points.iter().rev().find(|p| p.speed_m_s <= top).map(|p| newton(p.flat_n));
    let label = |value: f64, decimals: u8| style.fixed(value, decimals);
    let force = style.units.shown(Unit::Newton).symbol;
    Curves {
        x: Axis {
            title: style.units.shown(Unit::KilometrePerHour).symbol.into(),
            label: &label,
            ..Axis::default()
        },
        y: Axis { title: said::push_axis(force), zero: true, label: &label, ..Axis::default() },
        series,
        notes: vec![Note { x: km_h(top), y: flat, text: said::TOP_MARK.into() }],
        readout: points
            .iter()
            .map(|p| {
                let text = said::push_at(p.speed_m_s, p.push_n, p.limit, p.flat_n, style);
                (km_h(p.speed_m_s), text)
            })
            .collect(),
        nothing: said::NO_PUSH.into(),
        ..Curves::default()
    }
    .draw(width)
}

fn rows(found: &Found, style: Style) -> Table {
    let newton = |f: f64| style.significant(style.shown_si(f, Unit::Newton), 2);
    let rows = found.answers.push.points.iter().step_by(4).map(|p| {
        vec![
            style.speed(p.speed_m_s),
            newton(p.push_n.max(0.0)),
            words::limit(p.limit).into(),
            newton(p.flat_n),
        ]
    });
    Table {
        label: said::PUSH_TABLE.into(),
        caption: said::PUSH_CAPTION.into(),
        heads: said::push_heads(style),
        rows: rows.collect(),
    }
}
