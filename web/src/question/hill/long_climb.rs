//! A long climb, until something gets hot.

use crate::app::{Found, Job, Task, use_app};
use crate::chart::{Grid, Table};
use crate::component::{AnswerView, Notice, SideBySide};
use crate::question::{TaskLine, WorkingSteps};
use crate::text::{Answer, Style, page, span, whole, words};
use leptos::prelude::*;
use pitchline_core::ride::{LongClimb as Climb, explain_for_ever};
use pitchline_core::{Build, Drive, Limit, Steepest, Unit};
use std::sync::Arc;

/// A climb at a speed, how long it lasts, and the hill that is held for ever at that speed.
type Held = (Climb, Steepest);

/// The climbs as they were worked out last; none at first.
type Last = RwSignal<Arc<Vec<Held>>>;

/// Walking pace and the rider's own speed.
fn speeds(build: &Build, slow_m_s: f64) -> [f64; 2] {
    [slow_m_s, build.ride.cruise_m_s]
}

/// How long a hill can be climbed before something gets hot.
#[component]
pub(super) fn LongClimb() -> impl IntoView {
    let app = use_app();
    let last = Last::default();
    let task =
        Task::new(move || _ = app.found(), move || app.found().map(|found| job(&found, last)));
    let steps = move || {
        let found = app.found();
        let steps = found.map(|f| explain_for_ever(&f.build, f.answers.climb.slow.speed_m_s));
        steps.unwrap_or_default()
    };
    let grid = move || {
        let (climbs, style) = (last.get(), app.style());
        (!climbs.is_empty()).then(|| view! { <Grid table=grid(&climbs, style) /> })
    };
    view! {
        <div class="ride">
            <h3>{page::LONG_CLIMB}</h3>
            <TaskLine task />
            <First last task />
            <WorkingSteps title=page::WORKING_FOLD first=page::FOR_EVER steps />
            <div class="chart">{grid}</div>
        </div>
    }
}

/// The climb at walking pace, in words.
#[component]
fn First(last: Last, task: Task) -> impl IntoView {
    let app = use_app();
    let waits = Signal::derive(move || app.waits());
    let sentence = move || {
        let style = app.style();
        last.with(|climbs| {
            let (climb, _) = climbs.first()?;
            let text = ends(climb, style);
            Some(match climb.limit {
                Limit::WindingHot | Limit::ControllerHot => view! { <Notice text /> }.into_any(),
                _ => view! { <p class="facts">{text}</p> }.into_any(),
            })
        })
    };
    view! {
        <div class="ridden" class:waits=move || task.busy()>
            <SideBySide waits>
                <AnswerView answer=first(last, lasts) />
                <AnswerView answer=first(last, for_ever) />
            </SideBySide>
            <div role="status">{sentence}</div>
        </div>
    }
}

/// Says something of the climb at walking pace.
fn first(last: Last, say: fn(&Held, Style) -> Answer) -> Memo<Answer> {
    let app = use_app();
    Memo::new(move |_| {
        let style = app.style();
        last.with(|climbs| climbs.first().map(|climb| say(climb, style))).unwrap_or_default()
    })
}

/// One climb a piece.
fn job(found: &Found, last: Last) -> Job {
    let (drive, build) = (Drive::new(&found.build), found.build);
    let speeds = speeds(&build, found.answers.climb.slow.speed_m_s);
    let mut climbs = Vec::new();
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
        last.set(Arc::new(std::mem::take(&mut climbs)));
        1.0
    })
}

/// What ends a climb.
fn limit(climb: &Climb) -> &'static str {
    match climb.limit {
        Limit::Empty => "empty pack",
        limit => words::limit(limit),
    }
}

/// Whether it does not reach its speed.
fn slower(climb: &Climb) -> bool {
    climb.top_m_s < 0.95 * climb.speed_m_s
}

/// Whether it comes up at all.
fn climbs(climb: &Climb) -> bool {
    climb.distance_m >= 1.0
}

fn lasts((climb, _): &Held, style: Style) -> Answer {
    let (hill, speed) = (style.entered_percent(climb.grade), style.speed_unit(climb.speed_m_s));
    let name = format!("Up your {hill} hill at {speed}");
    if !climbs(climb) {
        return Answer { name, figure: "too steep".into(), unit: "", limit: limit(climb).into() };
    }
    let shown = style.units.shown(Unit::Kilometre);
    let figure = style.distance(climb.distance_m);
    Answer { name, figure, unit: shown.symbol, limit: format!("Until: {}", limit(climb)) }
}

fn for_ever((_, hill): &Held, style: Style) -> Answer {
    let name = format!("Never too hot at {}, up to", style.speed_unit(hill.speed_m_s));
    let limit = format!("Limit: {}", words::limit(hill.limit));
    if hill.grade < 0.0 {
        return Answer { name, figure: page::NOT_FLAT.into(), unit: "", limit };
    }
    Answer { name, figure: held(hill, style), unit: "%", limit }
}

/// Percent, rounded down: a hair above it gets too hot.
fn held(hill: &Steepest, style: Style) -> String {
    style.fixed(whole(hill.grade * 100.0, false), 0)
}

fn ends(climb: &Climb, style: Style) -> String {
    let hill = style.entered_percent(climb.grade);
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

fn grid(climbs: &[Held], style: Style) -> Table {
    let row = |(climb, hill): &Held| {
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
        caption: format!("Up {} without end", style.entered_percent(hill)),
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

    fn climbed(grade: f64) -> Held {
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
