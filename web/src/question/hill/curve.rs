//! Steepest hill over speed.

use crate::app::Found;
use crate::chart::{Axis, Curves, Drawing, Series, Table};
use crate::question::{Draws, regions, table};
use crate::text::{Style, page, percent, words};
use pitchline_core::{PushPoint, Unit};

/// Steepest hill over speed.
pub(super) static CURVE: Draws<Found> = Draws { finding, draw, table: rows };

fn finding(found: &Found, style: Style) -> String {
    let (slow, brisk) = (found.answers.climb.slow, found.answers.climb.brisk);
    let (slow_grade, brisk_grade) = (steepest(slow.grade), steepest(brisk.grade));
    let (slow, brisk) = (style.speed_unit(slow.speed_m_s), style.speed_unit(brisk.speed_m_s));
    if slow_grade == brisk_grade {
        return format!("It climbs {slow_grade} at {slow} and at {brisk}.");
    }
    format!("Slower climbs steeper: {slow_grade} at {slow}, {brisk_grade} at {brisk}.")
}

fn steepest(grade: f64) -> String {
    if grade < 0.0 { page::NOT_FLAT.into() } else { percent(grade) }
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
    Curves {
        x: Axis {
            title: style.units.shown(Unit::KilometrePerHour).symbol.into(),
            label: &label,
            ..Axis::default()
        },
        y: Axis { title: "steepest hill, %".into(), zero: true, label: &label, ..Axis::default() },
        series: vec![Series {
            points: points.iter().map(|p| (km_h(p.speed_m_s), Some(p.grade * 100.0))).collect(),
            regions: regions(&limits),
            ..Series::default()
        }],
        readout: points
            .iter()
            .map(|p| {
                let (speed, grade) = (style.speed_unit(p.speed_m_s), steepest(p.grade));
                (
                    km_h(p.speed_m_s),
                    format!("{speed}: up to {grade} ({})", words::limit(p.hill_limit)),
                )
            })
            .collect(),
        nothing: "This build cannot climb.".into(),
        ..Curves::default()
    }
    .draw(width)
}

fn rows(found: &Found, style: Style) -> Table {
    let speed = style.units.shown(Unit::KilometrePerHour);
    let heads = vec![format!("Speed, {}", speed.symbol), "Steepest hill, %".into(), "Limit".into()];
    let rows = uphill(found).into_iter().step_by(4).map(|p| {
        vec![
            style.speed(p.speed_m_s),
            style.fixed(p.grade * 100.0, 0),
            words::limit(p.hill_limit).into(),
        ]
    });
    table("Steepest hill by speed, full pack", heads, rows.collect())
}
