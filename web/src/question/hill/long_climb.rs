//! A long climb, until something gets hot.

use crate::app::{Found, Job, Task, use_app};
use crate::chart::{Grid, Table};
use crate::component::{AnswerView, Notice, SideBySide};
use crate::question::{TaskLine, WorkingSteps};
use crate::text::hill as said;
use crate::text::{Answer, Style, answer, page, span, whole};
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
            <TaskLine task />
            <First last task />
            <WorkingSteps title=said::ENDLESS_WORKING first=said::ENDLESS_STEPS steps />
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
            let limit_c = app.found().map_or(0.0, |found| found.build.motor.winding_limit_c);
            let text = said::ends(climb, limit_c, style);
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

fn lasts((climb, _): &Held, style: Style) -> Answer {
    let name = said::lasts(climb, style);
    if !said::climbs(climb) {
        let limit = said::ended(climb).into();
        return Answer { name, figure: said::TOO_STEEP.into(), unit: "", limit };
    }
    let shown = style.units.shown(Unit::Kilometre);
    let figure = style.distance(climb.distance_m);
    Answer { name, figure, unit: shown.symbol, limit: said::until(climb) }
}

fn for_ever((_, hill): &Held, style: Style) -> Answer {
    let name = said::endless(hill.speed_m_s, style);
    let limit = answer::bound(hill.limit);
    if hill.grade < 0.0 {
        return Answer { name, figure: page::NOT_FLAT.into(), unit: "", limit };
    }
    Answer { name, figure: held(hill, style), unit: "%", limit }
}

/// Percent, rounded down: a hair above it gets too hot.
fn held(hill: &Steepest, style: Style) -> String {
    style.fixed(whole(hill.grade * 100.0, false), 0)
}

fn grid(climbs: &[Held], style: Style) -> Table {
    let row = |(climb, hill): &Held| {
        let for_ever = if hill.grade < 0.0 { page::NOT_FLAT.into() } else { held(hill, style) };
        vec![
            if said::slower(climb) {
                said::made(climb.speed_m_s, climb.top_m_s, style)
            } else {
                style.speed_unit(climb.speed_m_s)
            },
            style.way(climb.distance_m),
            style.way(climb.height_m),
            span(climb.time_s),
            said::ended(climb).into(),
            for_ever,
        ]
    };
    let grade = climbs.first().map_or(0.0, |(climb, _)| climb.grade);
    Table {
        label: String::new(),
        caption: said::climbs_caption(grade, style),
        heads: said::CLIMBS_HEADS.map(String::from).into(),
        rows: climbs.iter().map(row).collect(),
    }
}

/// How far up the rider's hill it goes at walking pace, in a few words.
pub(super) fn hint(found: &Found, style: Style) -> String {
    let speed = found.answers.climb.slow.speed_m_s;
    let climb = Drive::new(&found.build).long_climb(found.build.ride.grade, speed);
    said::climb_hint(&climb, style)
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
        assert!(said::ends(&steep.0, 120.0, style).starts_with("It can't climb 60\u{a0}% ("));
        assert_eq!(lasts(&steep, style).figure, "too steep");
        let (climb, _) = climbed(8.0);
        let text = said::ends(&climb, 120.0, style);
        assert!(text.contains(&span(climb.time_s)), "{text}");
        // 8 % of the way, less a third of a percent for the slope's own length.
        let height = climb.distance_m * 0.08 * 0.9968;
        assert!(
            text.contains(&format!("{} of height gained", style.way(height))),
            "{text} {height}"
        );
    }
}
