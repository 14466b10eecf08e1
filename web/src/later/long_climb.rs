//! A long climb, until something gets hot.

use crate::ask::side_by_side;
use crate::chart::{Table, table};
use crate::component::{Headline, fold, headline, notice};
use crate::dom::{Node, el, live};
use crate::later::work::{Job, Work};
use crate::later::working::list;
use crate::state::App;
use crate::text::{Style, page, span, whole, words};
use pitchline_core::ride::{LongClimb, explain_for_ever};
use pitchline_core::{Build, Drive, Limit, Steepest, Unit};
use std::cell::RefCell;
use std::rc::Rc;

/// A speed, how long its climb lasts, and the hill that it holds for ever.
struct Climbs(Vec<(LongClimb, Steepest)>);

type Last = Rc<RefCell<Option<Rc<Climbs>>>>;

/// Walking pace and the rider's own speed.
fn speeds(build: &Build, slow_m_s: f64) -> [f64; 2] {
    [slow_m_s, build.ride.cruise_m_s]
}

pub(super) fn long_climb(app: App) -> Node {
    let work = Work::new();
    let last = Last::default();
    let shown = last.clone();
    let get = move || {
        work.ended();
        shown.borrow().clone()
    };
    let (one, two, told, rows, begun) = (get.clone(), get.clone(), get.clone(), get, last);
    let first = move |get: &dyn Fn() -> Option<Rc<Climbs>>,
                      say: fn(&(LongClimb, Steepest), Style) -> Headline| {
        let climbs = get();
        let climb = climbs.as_ref().and_then(|climbs| climbs.0.first());
        climb.map(|climb| say(climb, app.style())).unwrap_or_default()
    };
    let heads = [headline(move || first(&one, lasts)), headline(move || first(&two, for_ever))];
    let key = move || {
        let style = app.style();
        format!("{}{}{}", work.ended(), style.comma, style.units.key())
    };
    let sentence = move || {
        let climbs = told();
        let Some((climb, _)) = climbs.as_ref().and_then(|climbs| climbs.0.first()) else {
            return Node::None;
        };
        let text = ends(climb, app.style());
        match climb.limit {
            Limit::WindingHot | Limit::ControllerHot => notice(text),
            _ => el("p").class("facts").with(text).into(),
        }
    };
    let view = move || rows().map(|climbs| table(grid(&climbs.0, app.style()))).into();
    let steps = move || {
        let found = app.found();
        let steps = found.map(|f| explain_for_ever(&f.build, f.answers.climb.slow.speed_m_s));
        steps.unwrap_or_default()
    };
    let class = move || Some(if work.busy() { "ridden waits" } else { "ridden" }.into());
    let answers = el("div")
        .follow("class", class)
        .with(side_by_side(app, Node::from_iter(heads)))
        .with(el("div").attr("role", "status").with(live(key, sentence)));
    let inside = vec![
        el("h3").with(page::LONG_CLIMB).into(),
        work.line(move || app.key(), move || job(app, &begun)),
        answers.into(),
        fold("working", "Working", move || list(app, page::FOR_EVER, steps)).into(),
        el("div").class("chart").with(live(key, view)).into(),
    ];
    el("div").class("ride").with(inside).into()
}

/// One climb a piece.
fn job(app: App, last: &Last) -> Job {
    let Some(found) = app.found() else { return Box::new(|| 1.0) };
    let (drive, build) = (Drive::new(&found.build), found.build);
    let speeds = speeds(&build, found.answers.climb.slow.speed_m_s);
    let (last, mut climbs) = (last.clone(), Vec::new());
    Box::new(move || {
        if let Some(speed) = speeds.get(climbs.len()) {
            climbs.push((
                drive.long_climb(build.ride.grade, *speed),
                drive.steepest_for_ever(*speed),
            ));
        }
        if climbs.len() < speeds.len() {
            return climbs.len() as f64 / speeds.len() as f64;
        }
        last.replace(Some(Rc::new(Climbs(std::mem::take(&mut climbs)))));
        1.0
    })
}

fn percent(style: Style, grade: f64) -> String {
    style.si(grade, Unit::Percent, 2)
}

/// What ends a climb.
fn limit(climb: &LongClimb) -> &'static str {
    match climb.limit {
        Limit::Empty => "empty pack",
        limit => words::limit(limit),
    }
}

/// Whether it does not reach its speed.
fn slower(climb: &LongClimb) -> bool {
    climb.top_m_s < 0.95 * climb.speed_m_s
}

/// Whether it comes up at all.
fn climbs(climb: &LongClimb) -> bool {
    climb.distance_m >= 1.0
}

fn lasts((climb, _): &(LongClimb, Steepest), style: Style) -> Headline {
    let (hill, speed) = (percent(style, climb.grade), style.speed_unit(climb.speed_m_s));
    let name = format!("Up your {hill} hill at {speed}");
    if !climbs(climb) {
        return Headline { name, figure: "too steep".into(), unit: "", limit: limit(climb).into() };
    }
    let shown = style.units.shown(Unit::Kilometre);
    let figure = style.distance(climb.distance_m);
    Headline { name, figure, unit: shown.symbol, limit: format!("Until: {}", limit(climb)) }
}

fn for_ever((_, hill): &(LongClimb, Steepest), style: Style) -> Headline {
    let name = format!("Never too hot at {}, up to", style.speed_unit(hill.speed_m_s));
    let limit = format!("Limit: {}", words::limit(hill.limit));
    if hill.grade < 0.0 {
        return Headline { name, figure: page::NOT_FLAT.into(), unit: "", limit };
    }
    Headline { name, figure: held(hill, style), unit: "%", limit }
}

/// Percent, rounded down: a hair above it gets too hot.
fn held(hill: &Steepest, style: Style) -> String {
    style.fixed(whole(hill.grade * 100.0, false), 0)
}

fn ends(climb: &LongClimb, style: Style) -> String {
    let hill = percent(style, climb.grade);
    if !climbs(climb) {
        return format!("It does not climb {hill}: {}.", limit(climb));
    }
    let (way, time) = (style.way(climb.distance_m), span(climb.time_s));
    let height = style.way(climb.height_m);
    let warm = |c: f64| style.quantity(c.round(), Unit::Celsius, 2);
    let heat = match climb.limit {
        Limit::WindingHot => {
            format!("the windings are at {}, as hot as they may get", warm(climb.winding_c))
        }
        Limit::ControllerHot => {
            format!("the controller is at {} and begins to hold back", warm(climb.controller_c))
        }
        Limit::Empty => format!("the pack is empty; the windings got to {}", warm(climb.winding_c)),
        limit => format!("it stops: {}", words::limit(limit)),
    };
    let slow = if slower(climb) {
        format!(" It gets no faster than {}.", style.speed_unit(climb.top_m_s))
    } else {
        String::new()
    };
    format!("After {way}, {height} up and {time}, {heat}.{slow}")
}

fn grid(climbs: &[(LongClimb, Steepest)], style: Style) -> Table {
    let row = |(climb, hill): &(LongClimb, Steepest)| {
        let for_ever = if hill.grade < 0.0 { page::NOT_FLAT.into() } else { held(hill, style) };
        let (wish, top) = (style.speed(climb.speed_m_s), style.speed_unit(climb.top_m_s));
        vec![
            if slower(climb) {
                format!("{wish}, made {top}")
            } else {
                style.speed_unit(climb.speed_m_s)
            },
            style.way(climb.distance_m),
            style.way(climb.height_m),
            span(climb.time_s),
            limit(climb).into(),
            for_ever,
        ]
    };
    let hill = climbs.first().map_or(0.0, |(climb, _)| climb.grade);
    Table {
        label: String::new(),
        caption: format!("Up {} without end", percent(style, hill)),
        heads: ["At", "How far", "Height", "Time", "Ended by", "Held for ever, %"]
            .map(String::from)
            .into(),
        rows: climbs.iter().map(row).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use pitchline_core::{Draft, Slot};

    fn climbed(grade: f64) -> (LongClimb, Steepest) {
        let mut draft = Draft::typical();
        draft.set(Slot::Ride, "grade_percent", grade);
        let drive = Drive::new(&Build::check(&draft).expect("in range"));
        (drive.long_climb(grade / 100.0, 10.0 / 3.6), drive.steepest_for_ever(10.0 / 3.6))
    }

    #[test]
    fn a_climb_says_what_ends_it_and_how_high_that_is() {
        let style = Style::default();
        let steep = climbed(60.0);
        assert!(ends(&steep.0, style).starts_with("It does not climb 60\u{a0}%: "));
        assert_eq!(lasts(&steep, style).figure, "too steep");
        let (climb, _) = climbed(8.0);
        let said = ends(&climb, style);
        assert!(said.contains(&span(climb.time_s)), "{said}");
        // 8 % of the way, less a third of a percent for the slope's own length.
        let height = climb.distance_m * 0.08 * 0.9968;
        assert!(said.contains(&format!("{} up", style.way(height))), "{said} {height}");
    }
}
