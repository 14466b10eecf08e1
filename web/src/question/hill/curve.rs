//! Steepest hill over speed.

use crate::app::Found;
use crate::chart::{Axis, Curves, Drawing, Note, Series, Table};
use crate::question::{Draws, regions};
use crate::text::hill as said;
use crate::text::{Style, words};
use pitchline_core::{PushPoint, Unit};

/// Steepest hill over speed.
pub(super) static CURVE: Draws<Found> = Draws { finding, draw, table: rows };

fn finding(found: &Found, style: Style) -> String {
    let (slow, brisk) = (found.answers.climb.slow, found.answers.climb.brisk);
    said::curve((slow.speed_m_s, slow.grade), (brisk.speed_m_s, brisk.grade), style)
}

/// What can be ridden up at all.
fn uphill(found: &Found) -> Vec<&PushPoint> {
    found.answers.push.points.iter().filter(|p| p.grade >= 0.0).collect()
}

fn draw(found: &Found, style: Style, width: f64) -> Drawing {
    let km_h = |v: f64| style.shown_si(v, Unit::KilometrePerHour);
    let points = uphill(found);
    let limits: Vec<_> = points.iter().map(|p| (km_h(p.speed_m_s), p.hill_limit)).collect();
    let label = |value: f64, decimals: u8| style.fixed(value, decimals);
    let slow = &found.answers.climb.slow;
    let here = Note {
        x: km_h(slow.speed_m_s),
        y: Some(slow.grade * 100.0).filter(|_| slow.grade >= 0.0),
        text: said::steepest(slow.grade),
    };
    Curves {
        x: Axis {
            title: style.units.shown(Unit::KilometrePerHour).symbol.into(),
            label: &label,
            ..Axis::default()
        },
        y: Axis { title: said::STEEPEST.into(), zero: true, label: &label, ..Axis::default() },
        series: vec![Series {
            points: points.iter().map(|p| (km_h(p.speed_m_s), Some(p.grade * 100.0))).collect(),
            regions: regions(&limits),
            ..Series::default()
        }],
        notes: if slow.grade >= 0.0 { vec![here] } else { Vec::new() },
        readout: points
            .iter()
            .map(|p| (km_h(p.speed_m_s), said::curve_at(p.speed_m_s, p.grade, p.hill_limit, style)))
            .collect(),
        nothing: said::NO_CLIMB.into(),
        ..Curves::default()
    }
    .draw(width)
}

fn rows(found: &Found, style: Style) -> Table {
    let rows = uphill(found).into_iter().step_by(4).map(|p| {
        vec![
            style.speed(p.speed_m_s),
            style.fixed(p.grade * 100.0, 0),
            words::limit(p.hill_limit).into(),
        ]
    });
    Table {
        label: said::CURVE_TABLE.into(),
        caption: said::CURVE_CAPTION.into(),
        heads: said::curve_heads(style),
        rows: rows.collect(),
    }
}
