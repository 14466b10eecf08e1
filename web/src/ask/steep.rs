//! How steep?

use super::answer::{ALONG_CURVE, Figure, Say, answers, bound, figure, regions, table};
use super::question;
use crate::chart::{Axis, Curves, Drawing, Series, Table};
use crate::component::{Headline, caution, notice};
use crate::dom::{Node, live};
use crate::later;
use crate::state::{App, Banded, Sure};
use crate::text::{Style, page, words};
use pitchline_core::band::Quantity;
use pitchline_core::{Answers, Headline as Which, PushPoint, Steepest, Unit};

/// The headlines.
const HEADLINES: [(Which, Say); 4] = [
    (Which::ClimbCrawl, |_, a, style| at("At a crawl,", a.climb.crawl, Sure::default(), style)),
    (Which::ClimbSlow, |app, a, style| at("At", a.climb.slow, app.sure(Banded::Hill), style)),
    (Which::ClimbBrisk, |_, a, style| at("At", a.climb.brisk, Sure::default(), style)),
    (Which::ClimbSlowLow, |_, a, style| {
        at("Nearly empty, at", a.climb.slow_low, Sure::default(), style)
    }),
];

pub(super) fn steep(app: App) -> Node {
    let told = move || {
        let said = own_hill(app);
        (!said.is_empty()).then(|| notice(said)).into()
    };
    let inside = vec![
        answers(app, &HEADLINES),
        live(move || own_hill(app), told),
        caution(page::CAUTION_HILL),
        figure(app, CURVE),
        later::sure(app, Quantity::Hill),
        later::long_climb(app),
    ];
    question("steep", page::STEEP, inside)
}

fn at(name: &str, found: Steepest, sure: Sure, style: Style) -> Headline {
    hill(format!("{name} {}", style.speed_unit(found.speed_m_s)), found, sure, style)
}

/// A hill as a headline, in whole percent: no band supports more.
pub(super) fn hill(name: String, found: Steepest, sure: Sure, style: Style) -> Headline {
    let limit = bound(found.limit);
    if found.grade < 0.0 {
        return Headline { name, figure: page::NOT_FLAT.into(), unit: "", limit };
    }
    // What cannot climb does not climb down.
    let band = sure.about(found.grade).map(|grade| grade.max(0.0) * 100.0);
    Headline { name, figure: style.span(band, 0), unit: "%", limit }
}

/// Steepest hill over speed.
const CURVE: Figure = Figure { finding, draw, rows, hint: ALONG_CURVE };

fn finding(answers: &Answers, style: Style) -> String {
    let (slow, brisk) = (answers.climb.slow, answers.climb.brisk);
    let (slow_grade, brisk_grade) = (percent(slow.grade, style), percent(brisk.grade, style));
    let (slow, brisk) = (style.speed_unit(slow.speed_m_s), style.speed_unit(brisk.speed_m_s));
    if slow_grade == brisk_grade {
        return format!("It climbs {slow_grade} at {slow} and at {brisk}.");
    }
    format!("Slower climbs steeper: {slow_grade} at {slow}, {brisk_grade} at {brisk}.")
}

/// How the rider's own hill stands to what the board can do, full and low.
fn own_hill(app: App) -> String {
    let Some(found) = app.found() else { return String::new() };
    let (climb, ride, style) = (&found.answers.climb, &found.build.ride, app.style());
    let hill = style.si(ride.grade, Unit::Percent, 2);
    let low = style.si(ride.low_charge, Unit::Percent, 2);
    let slow = style.speed_unit(climb.slow.speed_m_s);
    if climb.slow.grade < ride.grade {
        format!("Your {hill} hill is too steep at {slow}, even with a full pack.")
    } else if climb.slow_low.grade < ride.grade {
        format!(
            "With {low} charge left your {hill} hill is too steep at {slow}: keep a reserve for it."
        )
    } else {
        String::new()
    }
}

fn percent(grade: f64, style: Style) -> String {
    if grade < 0.0 {
        page::NOT_FLAT.into()
    } else {
        format!("{}\u{a0}%", style.fixed(grade * 100.0, 0))
    }
}

/// What can be ridden up at all.
fn uphill(answers: &Answers) -> Vec<&PushPoint> {
    answers.push.points.iter().filter(|p| p.grade >= 0.0).collect()
}

fn draw(answers: &Answers, style: Style, width: f64) -> Drawing {
    let km_h = |v: f64| style.shown_si(v, Unit::KilometrePerHour);
    let points = uphill(answers);
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
                let (speed, grade) = (style.speed_unit(p.speed_m_s), percent(p.grade, style));
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

fn rows(answers: &Answers, style: Style) -> Table {
    let speed = style.units.shown(Unit::KilometrePerHour);
    let heads = vec![format!("Speed, {}", speed.symbol), "Steepest hill, %".into(), "Limit".into()];
    let rows = uphill(answers).into_iter().step_by(4).map(|p| {
        vec![
            style.speed(p.speed_m_s),
            style.fixed(p.grade * 100.0, 0),
            words::limit(p.hill_limit).into(),
        ]
    });
    table("Steepest hill by speed, full pack", heads, rows.collect())
}
