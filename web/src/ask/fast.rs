//! How fast?

use super::answer::{ALONG_CURVE, Figure, answered, answers, bound, figure, regions, table};
use super::{app, gear_map, question};
use crate::chart::{Axis, Curves, Drawing, Note, Series, Table};
use crate::component::{Headline, caution};
use crate::text::{Style, page, words};
use leptos::html;
use leptos::prelude::*;
use pitchline_core::{Answers, Headline as Which, Slot, TopSpeed, Unit};

pub(super) fn fast() -> AnyView {
    let app = app();
    let said = move |name: &str, top: TopSpeed| speed(name.into(), top, app.style.get());
    let grade = move || {
        let grade = app.draft.with(|draft| draft.value(Slot::Ride, "grade_percent"));
        format!("Up your {} hill", app.style.get().quantity(grade.unwrap_or(0.0), Unit::Percent, 2))
    };
    let low = move || {
        let low = app.draft.with(|draft| draft.value(Slot::Ride, "low_charge_percent"));
        format!(
            "Nearly empty, {} left",
            app.style.get().quantity(low.unwrap_or(0.0), Unit::Percent, 2)
        )
    };
    let list = vec![
        answered(Which::TopSpeed, move |a| said("Flat, full pack", a.speed.flat_full)),
        answered(Which::TopSpeedLow, move |a| said(&low(), a.speed.flat_low)),
        answered(Which::TopSpeedOnGrade, move |a| said(&grade(), a.speed.on_grade)),
    ];
    let inside = html::div()
        .child((
            answers(list),
            caution(page::CAUTION_SPEED),
            modes(),
            gear_map::gear_map(),
            figure(PUSH),
        ))
        .into_any();
    question("fast", page::FAST, inside)
}

/// A top speed as a headline, in whole units: no band supports more.
pub(super) fn speed(name: String, top: TopSpeed, style: Style) -> Headline {
    let shown = style.units.shown(Unit::KilometrePerHour);
    let limit = bound(top.limit);
    Headline { name, figure: style.speed(top.speed_m_s), unit: shown.symbol, limit }
}

/// Top speed in each ride mode, and on each grade.
fn modes() -> AnyView {
    let app = app();
    let row = |name: String, top: &TopSpeed, style: Style| {
        html::tr()
            .child((
                html::th().scope("row").child(name),
                html::td().child(format!(
                    "{} {}",
                    style.speed(top.speed_m_s),
                    style.units.shown(Unit::KilometrePerHour).symbol
                )),
                html::td().child(words::limit(top.limit)),
            ))
            .into_any()
    };
    let rows = move || {
        let style = app.style.get();
        app.answers.with(|answers| {
            let answers = answers.as_ref()?;
            let slots = [Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh];
            let name = |slot: Slot| {
                let name = app.draft.with(|draft| draft.record(slot).name.clone());
                if name.is_empty() { words::slot(slot).into() } else { format!("Mode: {name}") }
            };
            let modes = slots.iter().zip(&answers.speed.modes);
            let modes = modes.map(|(slot, top)| row(name(*slot), top, style));
            let grades = answers.speed.by_grade.iter().map(|(grade, top)| {
                let grade = style.si(*grade, Unit::Percent, 2);
                row(format!("Up {grade}"), top, style)
            });
            Some(modes.chain(grades).collect::<Vec<_>>())
        })
    };
    let head = ["With a full pack", "Top speed", "Limit"];
    let head = head.map(|text| html::th().scope("col").child(text).into_any());
    html::table()
        .class("plain")
        .child((html::thead().child(html::tr().child(Vec::from(head))), html::tbody().child(rows)))
        .into_any()
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
