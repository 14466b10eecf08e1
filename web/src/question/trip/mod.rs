//! A ride in time: stops, hills, heat.

mod rides;
mod spent;
mod trace;

#[cfg(test)]
mod laws;

use super::draws::sketch;
use super::input::Input;
use super::sure::Sure;
use super::task_line::TaskLine;
use crate::app::{App, Banded, Sure as Band, see, use_app};
use crate::chart::{Figure, Grid, Table};
use crate::component::{AnswerView, Notice, SideBySide};
use crate::platform;
use crate::text::sure::SURE_RIDE;
use crate::text::trip as said;
use crate::text::{Answer, Style, words};
use leptos::prelude::*;
use pitchline_core::ride::Ridden;
use pitchline_core::{Outing, Slot, Unit};
use rides::{Rides, Ridings, rides};
use spent::SPENT;
use std::sync::Arc;
use trace::Trace;

/// The rows of the rider's own way.
const OWN: [&str; 4] = ["stops_per_km", "rest_s", "acceleration_m_s2", "climb_m_per_km"];

/// A ride in time, with stops, hills and heat.
#[component]
pub fn Trip() -> impl IntoView {
    let app = use_app();
    let (rides, task) = rides();
    let all = move || {
        rides.get().map(|found| {
            let table = all(&found, app.style());
            view! { <Grid table /> }
        })
    };
    view! {
        <div class="ride">
            <p class="facts">{said::WHY}</p>
            <div class="fields">
                <Input of=Slot::Ride key="outing" />
            </div>
            <OwnRows />
            <p class="help">{move || course(app)}</p>
            <TaskLine task />
            <div class="ridden" class:waits=move || task.busy()>
                <Ending rides />
            </div>
            <div class="chart">{all}</div>
            <Trace rides />
            <Figure
                sketch=sketch(move || Some(Arc::new(rides.get())), &SPENT)
                hint=said::ALONG_BARS
            />
            <h2>{SURE_RIDE}</h2>
            <Sure of=Banded::Outing />
        </div>
    }
}

/// The rows of the rider's own way, while it is chosen.
#[component]
fn OwnRows() -> impl IntoView {
    let app = use_app();
    let own = Memo::new(move |_| own(app));
    move || {
        let row = |key| view! { <Input of=Slot::Ride key /> };
        own.get().then(|| {
            view! {
                <div class="fields">{OWN.map(row).into_iter().collect_view()}</div>
                <OwnElsewhere />
            }
        })
    }
}

/// Where the speed and the charge of the rider's own way are set.
#[component]
fn OwnElsewhere() -> impl IntoView {
    let [uses, speed, and, charge] = said::OWN;
    let lead = |words: &'static str, id: &'static str| {
        let go = move |_| platform::reveal("ride", id.into(), see::lead("far"));
        view! {
            <button type="button" class="lead-to" on:click=go>
                {words}
            </button>
        }
    };
    view! {
        <p class="help">
            {uses} {lead(speed, "far-ride-cruise_km_h")} {and}
            {lead(charge, "ride-start_charge_percent")} "."
        </p>
    }
}

fn own(app: App) -> bool {
    let chosen = app.found().is_some_and(|found| found.build.ride.outing == Outing::Own);
    // What is being typed stays in sight, or its fault could not be found.
    chosen
        || app.typed(|typed| {
            let indices = OWN.iter().filter_map(|key| Slot::Ride.kind().field_index(key));
            indices.into_iter().any(|index| typed.get((Slot::Ride, index)).is_some())
        })
}

/// How the chosen way is ridden.
fn course(app: App) -> String {
    let course = |found: Arc<crate::app::Found>| {
        said::course(&found.build, found.build.ride.outing, app.style())
    };
    app.found().map(course).unwrap_or_default()
}

/// How far the chosen ride goes, how it ends, and what is met on the way.
#[component]
fn Ending(rides: Rides) -> impl IntoView {
    let app = use_app();
    let answer = Memo::new(move |_| {
        let (sure, style) = (app.sure(Banded::Outing), app.style());
        rides.with(|found| found.as_ref().map(|found| distance(found, sure, style)))
    });
    let answer = Signal::derive(move || answer.get().unwrap_or_default());
    let facts = move || {
        let style = app.style();
        rides.with(|found| found.as_ref().map_or_else(String::new, |found| facts(found, style)))
    };
    let told = move || {
        rides.get().map(|found| {
            let Told { warnings, plain } = told(&found, app.style());
            let line = |text| view! { <li>{text}</li> };
            view! {
                {warnings.into_iter().map(|text| view! { <Notice text /> }).collect_view()}
                <ul class="facts">{plain.into_iter().map(line).collect_view()}</ul>
            }
        })
    };
    view! {
        <SideBySide waits=Signal::derive(move || app.waits())>
            <AnswerView answer />
        </SideBySide>
        <p class="facts">{facts}</p>
        <div role="status">{told}</div>
    }
}

fn name(outing: Outing) -> &'static str {
    let place = Outing::ALL.iter().position(|one| *one == outing);
    place.and_then(|place| Outing::NAMES.get(place)).map_or("", |name| words::choice(name))
}

fn distance(found: &Ridings, sure: Band, style: Style) -> Answer {
    let ride = found.chosen();
    let band = sure.about(ride.distance_m);
    let shown = band.map(|far| style.shown_si(far, Unit::Kilometre));
    let figure = if ride.gets_going() {
        style.span(shown, style.distance_decimals(band))
    } else {
        "0".into()
    };
    Answer {
        name: name(found.build.ride.outing).into(),
        figure,
        unit: style.units.shown(Unit::Kilometre).symbol,
        limit: said::ended_by(ride, style),
    }
}

fn facts(found: &Ridings, style: Style) -> String {
    let ride = found.chosen();
    if !ride.gets_going() {
        return String::new();
    }
    said::facts(&found.build, ride, style)
}

/// How far the chosen ride goes, in a few words: its band as it was worked out last.
pub fn hint() -> Signal<String> {
    let app = use_app();
    let sure = Memo::new(move |_| app.sure(Banded::Outing));
    let moves = Memo::new(move |_| {
        app.found().is_some_and(|found| found.answers.distance.cruise.distance_m > 0.0)
    });
    Signal::derive(move || {
        let (Band { low, high, of, .. }, style) = (sure.get(), app.style());
        if of.is_none() || !moves.get() {
            return String::new();
        }
        let shown = [low, high].map(|far| style.shown_si(far, Unit::Kilometre));
        let figure = style.span(shown, style.distance_decimals([low, high]));
        format!("{figure}\u{a0}{}", style.units.shown(Unit::Kilometre).symbol)
    })
}

/// How a ride ended, and what was met on the way.
struct Told {
    /// What the rider should mind.
    warnings: Vec<String>,
    plain: Vec<String>,
}

fn told(found: &Ridings, style: Style) -> Told {
    let (ride, outing) = (found.chosen(), found.build.ride.outing);
    let mut met = said::met(&found.build, ride, outing, style).into_iter();
    let end = said::end(ride, style);
    let impossible = ride.falls_short(outing);
    let first = if impossible && !said::stalls(ride) { met.next() } else { None };
    let (warned, plain) = match (impossible, first) {
        (true, Some(first)) => (Some(first), Some(end)),
        (true, None) => (Some(end), None),
        (false, _) => (None, Some(end)),
    };
    let burnt = said::burnt(&found.build, ride, style);
    Told {
        warnings: warned.into_iter().chain(burnt).collect(),
        plain: plain.into_iter().chain(met).collect(),
    }
}

/// Every way to ride, side by side.
fn all(found: &Ridings, style: Style) -> Table {
    let row = |(outing, ride): (&Outing, &Arc<Ridden>)| {
        vec![
            name(*outing).into(),
            style.distance(ride.distance_m),
            said::ended(ride),
            style.speed(ride.mean_m_s()),
            style.value(ride.wh_per_km, Unit::WattHourPerKilometre, 2),
            said::hottest(&found.build, ride, style),
        ]
    };
    Table {
        label: String::new(),
        caption: said::ALL.into(),
        heads: said::all_heads(style),
        rows: Outing::ALL.iter().zip(&found.whole).map(row).collect(),
    }
}
