//! How fast?

use super::answer::{ALONG_CURVE, Figure, Say, answers, bound, figure, regions, table};
use super::question;
use crate::chart::{Axis, Curves, Drawing, Note, Series, Table};
use crate::component::{Headline, caution};
use crate::dom::{Node, el, live};
use crate::later;
use crate::state::{App, Banded, Sure};
use crate::text::{Style, page, words};
use pitchline_core::band::Quantity;
use pitchline_core::{Answers, Headline as Which, Ride, Slot, TopSpeed, Unit};

/// The headlines.
const HEADLINES: [(Which, Say); 3] = [
    (Which::TopSpeed, |app, a, style| {
        speed("Flat, full pack".into(), a.speed.flat_full, app.sure(Banded::Speed), style)
    }),
    (Which::TopSpeedLow, |app, a, style| {
        let name = format!("Nearly empty, {} left", percent(app, |ride| ride.low_charge, style));
        speed(name, a.speed.flat_low, Sure::default(), style)
    }),
    (Which::TopSpeedOnGrade, |app, a, style| {
        let name = format!("Up your {} hill", percent(app, |ride| ride.grade, style));
        speed(name, a.speed.on_grade, Sure::default(), style)
    }),
];

pub(super) fn fast(app: App) -> Node {
    let head = ["With a full pack", "Top speed", "Limit"];
    let head = head.map(|text| Node::from(el("th").attr("scope", "col").with(text)));
    // Mode names are the rider's to change, so they belong into the key.
    let names =
        move |model: &crate::state::Model| MODES.map(|slot| model.record(slot).name.clone());
    let key = move || app.key() + &app.read(names).join("|");
    let inside = vec![
        answers(app, &HEADLINES),
        caution(page::CAUTION_SPEED),
        later::gear_map(app),
        figure(app, PUSH),
        el("table")
            .class("plain")
            .with(el("thead").with(el("tr").with(Node::from_iter(head))))
            .with(el("tbody").with(live(key, move || modes(app))))
            .into(),
        later::sure(app, Quantity::TopSpeed),
        later::runs(app),
    ];
    question("fast", page::FAST, inside)
}

fn percent(app: App, read: fn(&Ride) -> f64, style: Style) -> String {
    let share = app.found().map_or(0.0, |found| read(&found.build.ride));
    style.si(share, Unit::Percent, 2)
}

/// A top speed as a headline, in whole units: no band supports more.
pub(super) fn speed(name: String, top: TopSpeed, sure: Sure, style: Style) -> Headline {
    let shown = style.units.shown(Unit::KilometrePerHour);
    let band = sure.about(top.speed_m_s).map(|v| style.shown_si(v, Unit::KilometrePerHour));
    Headline { name, figure: style.span(band, 0), unit: shown.symbol, limit: bound(top.limit) }
}

const MODES: [Slot; 3] = [Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh];

/// Top speed in each ride mode, and on each grade.
fn modes(app: App) -> Node {
    let Some(found) = app.found() else { return Node::None };
    let style = app.style();
    let row = |name: String, top: &TopSpeed| {
        el("tr")
            .with(el("th").attr("scope", "row").with(name))
            .with(el("td").with(style.speed_unit(top.speed_m_s)))
            .with(el("td").with(words::limit(top.limit)))
            .into()
    };
    let speed = &found.answers.speed;
    let name = |slot: Slot| {
        let name = app.peek(|model| model.record(slot).name.clone());
        if name.is_empty() { words::slot(slot).into() } else { format!("Mode: {name}") }
    };
    let modes = MODES.into_iter().zip(&speed.modes).map(|(slot, top)| row(name(slot), top));
    let grades = speed.by_grade.iter();
    let grades =
        grades.map(|(grade, top)| row(format!("Up {}", style.si(*grade, Unit::Percent, 2)), top));
    modes.chain(grades).collect()
}

/// Push against road load.
const PUSH: Figure = Figure { finding, draw, rows, hint: ALONG_CURVE };

fn finding(answers: &Answers, style: Style) -> String {
    let top = answers.speed.flat_full;
    let Some(first) = answers.push.points.first() else { return String::new() };
    format!(
        "Push starts at {}, held by the {}, and meets the road load on the flat at {}, where the {} binds.",
        style.si(first.push_n, Unit::Newton, 2),
        words::limit(first.limit),
        style.speed_unit(top.speed_m_s),
        words::limit(top.limit),
    )
}

fn draw(answers: &Answers, style: Style, width: f64) -> Drawing {
    let km_h = |v: f64| style.shown_si(v, Unit::KilometrePerHour);
    let newton = |f: f64| style.shown_si(f, Unit::Newton);
    let points = &answers.push.points;
    let limits: Vec<_> = points.iter().map(|p| (km_h(p.speed_m_s), p.limit)).collect();
    let mut series = vec![
        Series {
            name: "push".into(),
            points: points
                .iter()
                .map(|p| (km_h(p.speed_m_s), Some(newton(p.push_n)).filter(|n| *n >= 0.0)))
                .collect(),
            regions: regions(&limits),
            ..Series::default()
        },
        Series {
            name: "flat".into(),
            points: points.iter().map(|p| (km_h(p.speed_m_s), Some(newton(p.flat_n)))).collect(),
            ..Series::default()
        },
    ];
    for (grade, loads) in answers.push.grades.iter().zip(&answers.push.loads) {
        series.push(Series {
            name: style.si(*grade, Unit::Percent, 2),
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
        y: Axis { title: format!("push, {force}"), zero: true, label: &label, ..Axis::default() },
        series,
        notes: vec![Note { x: km_h(top), y: flat, text: "top speed".into() }],
        readout: points
            .iter()
            .map(|p| {
                let text = format!(
                    "{}: push {} ({}), flat needs {}",
                    style.speed_unit(p.speed_m_s),
                    style.si(p.push_n.max(0.0), Unit::Newton, 2),
                    words::limit(p.limit),
                    style.si(p.flat_n, Unit::Newton, 2)
                );
                (km_h(p.speed_m_s), text)
            })
            .collect(),
        nothing: "No push to draw.".into(),
        ..Curves::default()
    }
    .draw(width)
}

fn rows(answers: &Answers, style: Style) -> Table {
    let (speed, force) =
        (style.units.shown(Unit::KilometrePerHour), style.units.shown(Unit::Newton));
    let heads = vec![
        format!("Speed, {}", speed.symbol),
        format!("Push, {}", force.symbol),
        "Limit".into(),
        format!("Flat needs, {}", force.symbol),
    ];
    let newton = |f: f64| style.significant(style.shown_si(f, Unit::Newton), 2);
    let rows = answers.push.points.iter().step_by(4).map(|p| {
        vec![
            style.speed(p.speed_m_s),
            newton(p.push_n.max(0.0)),
            words::limit(p.limit).into(),
            newton(p.flat_n),
        ]
    });
    table("Push against road load", heads, rows.collect())
}
