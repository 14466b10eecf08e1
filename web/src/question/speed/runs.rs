//! Speeding up and braking.

use crate::app::{Found, Job, Task, use_app};
use crate::chart::{Grid, Table};
use crate::component::{AnswerView, Caution, SideBySide};
use crate::question::TaskLine;
use crate::text::speed as said;
use crate::text::{Answer, Style, words};
use leptos::prelude::*;
use pitchline_core::ride::{Braking, COMMON_M, COMMON_M_S, Goal, Sprint};
use pitchline_core::{Drive, Limit, Unit};
use std::sync::Arc;

/// From rest to speed and back, each under its heading.
#[component]
pub(super) fn Runs() -> impl IntoView {
    view! {
        <div class="ride">
            <h2>{said::SPEEDING_UP}</h2>
            <Sprints />
            <h2>{said::BRAKING}</h2>
            <Stops />
            <Caution text=said::CAUTION_BRAKING />
        </div>
    }
}

/// Speeding up.
#[component]
fn Sprints() -> impl IntoView {
    let app = use_app();
    let runs = Memo::new(move |_| app.found().map(|found| sprints(&found)));
    let limit = move || {
        let limit = runs.with(|runs| runs.as_ref()?.first().map(|(_, run)| run.limit));
        limit.map_or_else(String::new, said::sprint)
    };
    let grid = move || runs.get().map(|runs| view! { <Grid table=rows(&runs, app.style()) /> });
    view! {
        <p class="facts">{limit}</p>
        <div class="chart">{grid}</div>
    }
}

fn sprints(found: &Found) -> Vec<(Goal, Sprint)> {
    let (drive, ride) = (Drive::new(&found.build), &found.build.ride);
    let (one, two) = (COMMON_M_S, ride.cruise_m_s);
    let mut goals = vec![Goal::Speed(one.min(two)), Goal::Speed(one.max(two))];
    if (one - two).abs() < 0.1 {
        goals.pop();
    }
    goals.push(Goal::Distance(COMMON_M));
    let run = |goal| (goal, drive.sprint(goal, 0.0, ride.start_charge));
    goals.into_iter().map(run).collect()
}

fn rows(runs: &[(Goal, Sprint)], style: Style) -> Table {
    let row = |(goal, run): &(Goal, Sprint)| {
        let goal = match goal {
            Goal::Speed(speed_m_s) => said::to_speed(*speed_m_s, style),
            Goal::Distance(way_m) => said::first_distance(*way_m, style),
        };
        if !run.reached {
            let most = said::not_reached(run.speed_m_s, style);
            return vec![goal, "–".into(), "–".into(), most];
        }
        let time = style.fixed(run.time_s, 1);
        vec![goal, time, style.way(run.distance_m), style.speed_unit(run.speed_m_s)]
    };
    let (caption, heads) = said::SPRINTS;
    Table {
        label: String::new(),
        caption: caption.into(),
        heads: heads.map(String::from).into(),
        rows: runs.iter().map(row).collect(),
    }
}

/// Braking as it was worked out last.
type Last = RwSignal<Arc<Vec<Braking>>>;

/// Braking.
#[component]
fn Stops() -> impl IntoView {
    let app = use_app();
    let last = Last::default();
    let task =
        Task::new(move || _ = app.found(), move || app.found().map(|found| job(&found, last)));
    let grid = move || {
        let (stops, style) = (last.get(), app.style());
        (!stops.is_empty()).then(|| view! { <Grid table=stops_table(&stops, style) /> })
    };
    let waits = Signal::derive(move || app.waits());
    let [half, full] = said::STOPS;
    view! {
        <p class="facts">{move || said::braked(app.style())}</p>
        <TaskLine task />
        <div class="ridden" class:waits=move || task.busy()>
            <SideBySide waits>
                <AnswerView answer=on_dry(last, half, 0.5) />
                <AnswerView answer=on_dry(last, full, 1.0) />
            </SideBySide>
        </div>
        <div class="chart">{grid}</div>
    }
}

/// One case a piece.
fn job(found: &Found, last: Last) -> Job {
    let drive = Drive::new(&found.build);
    let cases = drive.cases(found.build.ride.cruise_m_s);
    let mut stops = Vec::new();
    Box::new(move || {
        if let Some(case) = cases.get(stops.len()) {
            stops.push(drive.braking(*case));
        }
        if stops.len() < cases.len() {
            return stops.len() as f64 / cases.len() as f64;
        }
        last.set(Arc::new(std::mem::take(&mut stops)));
        1.0
    })
}

/// On a dry road, with every motor.
fn on_dry(last: Last, name: &'static str, charge: f64) -> Memo<Answer> {
    let app = use_app();
    Memo::new(move |_| {
        let (stops, style) = (last.get(), app.style());
        let most = stops.first().map_or(0.0, |stop| stop.case.motors);
        let wanted = |stop: &&Braking| {
            !stop.case.wet && stop.case.charge == charge && stop.case.motors == most
        };
        stops.iter().find(wanted).map(|stop| head(name, stop, style)).unwrap_or_default()
    })
}

fn head(name: &'static str, stop: &Braking, style: Style) -> Answer {
    let shown = style.units.shown(Unit::Metre);
    let limit = said::stop_from(stop.case.speed_m_s, stop.limit, style);
    let figure = if slows(stop) {
        style.fixed(style.shown_si(stop.braked_m(), Unit::Metre), 0)
    } else {
        said::NEVER.into()
    };
    Answer { name: name.into(), figure, unit: if slows(stop) { shown.symbol } else { "" }, limit }
}

/// Whether it slowed down to where the motors let go at all.
fn slows(stop: &Braking) -> bool {
    stop.stops || stop.rolling_m > 0.0
}

/// What keeps the motors from braking harder.
fn held(stop: &Braking) -> &'static str {
    match stop.limit {
        Limit::Empty => said::NOTHING_BRAKES,
        limit => words::limit(limit),
    }
}

fn stops_table(stops: &[Braking], style: Style) -> Table {
    let one_motor = stops.iter().all(|stop| stop.case.motors < 2.0);
    let way = |way_m: f64| style.fixed(style.shown_si(way_m, Unit::Metre), 0);
    let row = |stop: &Braking| {
        let case = &stop.case;
        let motors = style.fixed(case.motors, 0);
        let (slowing, all) = if slows(stop) {
            (way(stop.slowing_m), way(stop.braked_m()))
        } else {
            (said::NEVER.into(), said::NEVER.into())
        };
        vec![
            said::road_and_pack(case.wet, case.charge >= 1.0),
            motors,
            all,
            way(stop.reaction_m),
            slowing,
            held(stop).into(),
        ]
    };
    Table {
        label: String::new(),
        caption: said::stops_caption(one_motor).into(),
        heads: said::stops_heads(style),
        rows: stops.iter().map(row).collect(),
    }
}

/// How soon the rider's speed is there, in a few words.
pub(super) fn hint(found: &Found, style: Style) -> String {
    let ride = &found.build.ride;
    let run = Drive::new(&found.build).sprint(Goal::Speed(ride.cruise_m_s), 0.0, ride.start_charge);
    if run.reached {
        said::sprint_hint(ride.cruise_m_s, run.time_s, style)
    } else {
        said::not_reached(run.speed_m_s, style)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use pitchline_core::{Build, Draft};

    #[test]
    fn braking_says_what_is_left_to_the_feet() {
        let drive = Drive::new(&Build::check(&Draft::typical()).expect("in range"));
        let stops = drive.braking_cases(22.0 / 3.6);
        let table = stops_table(&stops, Style::default());
        // Dry and wet, full and half full, with two motors, one and none.
        assert_eq!(table.rows.len(), 12);
        // A second at 22 km/h is 6.1 m, whatever brakes.
        assert!(table.rows.iter().all(|row| row[3] == "6"), "{table:?}");
        assert_eq!(table.rows[0][0], "dry, full");
        assert_eq!(table.rows[2][5], "no motor braking");
        let heads = head("Dry road, full pack", &stops[0], Style::default());
        assert!(heads.limit.starts_with("From 22\u{a0}km/h. Limit: "), "{heads:?}");
    }

    #[test]
    fn a_goal_that_is_not_reached_says_how_fast_it_got() {
        let drive = Drive::new(&Build::check(&Draft::typical()).expect("in range"));
        let goal = Goal::Speed(40.0);
        let table = rows(&[(goal, drive.sprint(goal, 0.0, 1.0))], Style::default());
        assert!(table.rows[0][3].starts_with("not reached, "), "{table:?}");
        let goal = Goal::Distance(100.0);
        let table = rows(&[(goal, drive.sprint(goal, 0.0, 1.0))], Style::default());
        assert_eq!(table.rows[0][0], "The first 100\u{a0}m");
    }
}
