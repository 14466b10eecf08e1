//! A ride in time: stops, hills, heat.

mod rides;
mod said;
mod spent;
mod trace;

#[cfg(test)]
mod laws;

use crate::ask::{input_of, side_by_side};
use crate::chart::{Table, table};
use crate::component::{Headline, headline, notice};
use crate::dom::{Node, el, live, said as follows};
use crate::state::{App, Banded, Sure};
use crate::text::{Style, page, span, words};
use pitchline_core::band::Quantity;
use pitchline_core::{Outing, Slot, Unit};
use rides::{Rides, Ridings};

use super::sure::sure;

/// The rows of the rider's own way.
const OWN: [&str; 4] = ["stops_per_km", "rest_s", "acceleration_m_s2", "climb_m_per_km"];

/// Says something of the rides.
type Say<T> = fn(&Ridings, Style) -> T;

pub(super) fn ride(app: App) -> Node {
    let rides = Rides::new(app);
    let begun = rides.clone();
    let (busy, work) = (rides.work, rides.work);
    let answers = el("div")
        .follow("class", move || Some(if busy.busy() { "ridden waits" } else { "ridden" }.into()))
        .with(side_by_side(app, headline(banded(&rides))))
        .with(el("p").class("facts").with(follows(says(&rides, facts))))
        .with(made(&rides, told).attr("role", "status"));
    let inside = vec![
        el("h3").with(page::RIDE).into(),
        el("p").class("facts").with(page::RIDE_WHY).into(),
        el("div").class("fields").with(input_of(app, Slot::Ride, "outing")).into(),
        live(move || if own(app) { "own".into() } else { String::new() }, move || own_rows(app)),
        el("p").class("help").with(follows(move || course(app))).into(),
        work.line(move || app.key(), move || begun.job()),
        answers.into(),
        made(&rides, all).class("chart").into(),
        trace::trace(&rides),
        spent::spent(&rides),
        sure(app, Quantity::OutingDistance),
    ];
    el("div").class("ride").with(inside).into()
}

/// Text that follows the rides; empty until there are any.
fn says<T: Default + 'static>(rides: &Rides, say: Say<T>) -> impl Fn() -> T + 'static {
    let rides = rides.clone();
    move || {
        rides.key();
        rides.get().map(|found| say(&found, rides.app.style())).unwrap_or_default()
    }
}

/// Something made anew when the rides are others.
fn made(rides: &Rides, view: Say<Node>) -> crate::dom::Element {
    let (keyed, rides) = (rides.clone(), rides.clone());
    let view = move || rides.get().map(|found| view(&found, rides.app.style())).into();
    el("div").with(live(move || keyed.key(), view))
}

fn own(app: App) -> bool {
    let chosen = app.found().is_some_and(|found| found.build.ride.outing == Outing::Own);
    // What is being typed stays in sight, or its fault could not be found.
    chosen
        || app.read(|model| {
            let indices = OWN.iter().filter_map(|key| Slot::Ride.kind().field_index(key));
            indices.into_iter().any(|index| model.typed.get((Slot::Ride, index)).is_some())
        })
}

fn own_rows(app: App) -> Node {
    if !own(app) {
        return Node::None;
    }
    let rows = OWN.iter().map(|key| input_of(app, Slot::Ride, key)).collect::<Node>();
    let fields = el("div").class("fields").with(rows);
    Node::from(vec![fields.into(), el("p").class("help").with(page::OWN_RIDE).into()])
}

/// How the chosen way is ridden.
fn course(app: App) -> String {
    let course = |found: std::sync::Arc<crate::state::Found>| {
        said::course(&found.build, found.build.ride.outing, app.style())
    };
    app.found().map(course).unwrap_or_default()
}

fn name(outing: Outing) -> &'static str {
    let place = Outing::ALL.iter().position(|one| *one == outing);
    place.and_then(|place| Outing::NAMES.get(place)).map_or("", |name| words::choice(name))
}

/// The distance of the chosen way, which follows its band too.
fn banded(rides: &Rides) -> impl Fn() -> Headline + 'static {
    let rides = rides.clone();
    move || {
        rides.key();
        let sure = rides.app.sure(Banded::Outing);
        rides.get().map(|found| distance(&found, sure, rides.app.style())).unwrap_or_default()
    }
}

fn distance(found: &Ridings, sure: Sure, style: Style) -> Headline {
    let ride = found.chosen();
    let band = sure.about(ride.distance_m);
    let shown = band.map(|far| style.shown_si(far, Unit::Kilometre));
    let figure = if said::starts(ride) {
        style.span(shown, style.distance_decimals(band))
    } else {
        "0".into()
    };
    Headline {
        name: name(found.build.ride.outing).into(),
        figure,
        unit: style.units.shown(Unit::Kilometre).symbol,
        limit: match ride.winding_hot {
            Some(met) => format!("But windings too hot after {}", style.way(met.distance_m)),
            None if said::stalls(ride) => said::ended(ride),
            None => format!("Ended by: {}", said::ended(ride)),
        },
    }
}

fn facts(found: &Ridings, style: Style) -> String {
    let ride = found.chosen();
    if !said::starts(ride) {
        return String::new();
    }
    format!(
        "{} with all rests, {} on average, {} from the cells. Hottest: {}.",
        span(ride.time_s),
        style.speed_unit(ride.mean_m_s()),
        style.quantity(ride.wh_per_km, Unit::WattHourPerKilometre, 2),
        said::hottest(ride, style),
    )
}

/// How it ended, and what was met on the way.
fn told(found: &Ridings, style: Style) -> Node {
    let (ride, outing) = (found.chosen(), found.build.ride.outing);
    let line = |text: String| Node::from(el("li").with(text));
    let mut met = said::met(&found.build, ride, outing, style).into_iter();
    let end = said::end(ride, style);
    let impossible = said::impossible(ride, outing);
    let first = if impossible && !said::stalls(ride) { met.next() } else { None };
    let (warned, plain) = match (impossible, first) {
        (true, Some(first)) => (Some(first), Some(end)),
        (true, None) => (Some(end), None),
        (false, _) => (None, Some(end)),
    };
    let list = plain.into_iter().chain(met).map(line).collect::<Node>();
    let burnt = said::burnt(&found.build, ride, style).map(notice);
    Node::from(vec![
        warned.map(notice).into(),
        burnt.into(),
        el("ul").class("facts").with(list).into(),
    ])
}

/// Every way to ride, side by side.
fn all(found: &Ridings, style: Style) -> Node {
    let row = |(outing, ride): (&Outing, &std::rc::Rc<pitchline_core::ride::Ridden>)| {
        vec![
            name(*outing).into(),
            style.distance(ride.distance_m),
            said::ended(ride),
            style.speed(ride.mean_m_s()),
            style.value(ride.wh_per_km, Unit::WattHourPerKilometre, 2),
            said::hottest(ride, style),
        ]
    };
    let symbol = |unit: Unit| style.units.shown(unit).symbol;
    table(Table {
        label: String::new(),
        caption: page::RIDES.into(),
        heads: vec![
            page::HOW.into(),
            format!("Distance, {}", symbol(Unit::Kilometre)),
            "Ended by".into(),
            format!("Average, {}", symbol(Unit::KilometrePerHour)),
            symbol(Unit::WattHourPerKilometre).into(),
            "Hottest".into(),
        ],
        rows: Outing::ALL.iter().zip(&found.whole).map(row).collect(),
    })
}
