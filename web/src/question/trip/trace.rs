//! A ride over time: small charts over one time axis.

use super::rides::{Rides, Ridings};
use crate::chart::{Axis, Drawing, Figure, Panel, Series, Stack, Table, nothing};
use crate::question::{Draws, sketch};
use crate::text::trip as said;
use crate::text::{Style, minutes, page, span};
use leptos::prelude::*;
use pitchline_core::Unit;
use pitchline_core::ride::{Extent, Moment, Ridden};
use std::sync::Arc;

/// More moments than this are not drawn: there are no more pixels.
const DRAWN: usize = 240;
/// Stretches that a ride is seen in.
const STRETCHES: usize = 48;
/// Seconds from moment to moment beyond which they pass over what happens between.
const APART_S: f64 = 5.0;
/// Seconds between two rows of the table, at least; a hair less, as moments are not on the minute.
const MINUTE_S: f64 = 59.0;

type Read = fn(&Moment) -> f64;

/// The chosen ride over time, as a whole or its start.
#[component]
pub(super) fn Trace(rides: Rides) -> impl IntoView {
    let close = RwSignal::new(false);
    let pick = |words: &'static str, which: bool| {
        let pressed = move || if close.get() == which { "true" } else { "false" };
        view! {
            <button type="button" aria-pressed=pressed on:click=move |_| close.set(which)>
                {words}
            </button>
        }
    };
    let [whole, start] = said::STRETCHES;
    let traced = move || Some(Arc::new(Traced { found: rides.get(), close: close.get() }));
    view! {
        <div class="row" role="group" aria-label=said::TRACED>
            {pick(whole, false)}
            {pick(start, true)}
        </div>
        <Figure sketch=sketch(traced, &TRACE) hint=said::ALONG_TIME />
    }
}

/// What is shown of the rides, also while there are none yet.
struct Traced {
    found: Option<Arc<Ridings>>,
    /// Only the start.
    close: bool,
}

static TRACE: Draws<Traced> = Draws {
    finding: |Traced { found, close }, style| {
        let say = |found: &Arc<Ridings>| finding(shown(found, *close), *close, style);
        found.as_ref().map_or_else(String::new, say)
    },
    draw: |Traced { found, close }, style, width| match found {
        Some(found) => draw(shown(found, *close), *close, style, width),
        None => nothing(width, page::WORKING),
    },
    table: |Traced { found, close }, style| {
        let rows = |found: &Arc<Ridings>| {
            let ride = shown(found, *close);
            table(&kept(ride, *close), finding(ride, *close, style), style)
        };
        found.as_ref().map_or_else(|| none(said::TRACE_TABLE), rows)
    },
};

fn shown(found: &Ridings, close: bool) -> &Ridden {
    if close { &found.start } else { found.chosen() }
}

/// The table before there is a ride.
pub(super) fn none(label: &str) -> Table {
    Table { label: label.into(), ..Table::default() }
}

pub(super) fn finding(ride: &Ridden, close: bool, style: Style) -> String {
    let over = ride.moments.get(stretch(ride)).map(|m| m.time_s);
    said::traced(ride, over.filter(|_| means(ride, close)), style)
}

fn step(ride: &Ridden) -> usize {
    ride.moments.len().div_ceil(DRAWN).max(1)
}

/// Moments that are seen as one: so many that a stop or two fall into each.
fn stretch(ride: &Ridden) -> usize {
    ride.moments.len().div_ceil(STRETCHES).max(1)
}

/// Between which values it was, with the time at which each stretch ends.
fn spread(ride: &Ridden) -> Vec<(f64, Extent)> {
    let each: Vec<_> = ride.moments.iter().zip(&ride.extents).collect();
    let chunk = |chunk: &[(&Moment, &Extent)]| {
        let (last, first) = (chunk.last()?, chunk.first()?.1);
        let all = chunk.iter().fold(*first, |all, (_, extent)| all.with(**extent));
        Some((last.0.time_s, all))
    };
    let mut all: Vec<_> = each.chunks(stretch(ride)).filter_map(chunk).collect();
    if let Some((_, extent)) = all.first() {
        all.insert(0, (0.0, *extent));
    }
    all
}

/// What is drawn of a ride: each moment where it is seen closely, else the means of stretches, as
/// moments alone would pass over most stops.
pub(super) fn kept(ride: &Ridden, close: bool) -> Vec<Moment> {
    if means(ride, close) { averaged(ride) } else { thinned(ride) }
}

/// Whether moments alone would pass over too much.
fn means(ride: &Ridden, close: bool) -> bool {
    !close && ride.time_s > APART_S * ride.moments.len() as f64
}

fn averaged(ride: &Ridden) -> Vec<Moment> {
    let Some(mut from) = ride.moments.first().copied() else { return Vec::new() };
    let mut means = vec![from];
    let all: Vec<_> = ride.moments.iter().zip(&ride.extents).skip(1).collect();
    for stretch in all.chunks(stretch(ride)) {
        let Some((last, first)) = stretch.last().zip(stretch.first()) else { continue };
        let over = stretch.iter().skip(1).fold(*first.1, |all, (_, extent)| all.with(**extent));
        let Some([bus_v, pack_a, motor_a]) = over.means() else { continue };
        let speed_m_s = (last.0.distance_m - from.distance_m) / over.time_s;
        from = *last.0;
        means.push(Moment { speed_m_s, bus_v, pack_a, motor_a, ..from });
    }
    means
}

fn thinned(ride: &Ridden) -> Vec<Moment> {
    let step = step(ride);
    let mut kept: Vec<Moment> = ride.moments.iter().step_by(step).copied().collect();
    if kept.last() != ride.moments.last() {
        kept.extend(ride.moments.last());
    }
    kept
}

pub(super) fn draw(ride: &Ridden, close: bool, style: Style, width: f64) -> Drawing {
    let (moments, mean) = (kept(ride, close), means(ride, close));
    let extents = spread(ride);
    let series = |name: &str, unit: Unit, read: Read| Series {
        name: name.into(),
        points: moments
            .iter()
            .map(|m| (minutes(m.time_s), Some(style.shown_si(read(m), unit))))
            .collect(),
        ..Series::default()
    };
    let label = |value: f64, decimals: u8| style.fixed(value, decimals);
    let panel = |name: &str, unit: Unit, zero: bool, height: f64, series: Vec<Series>| Panel {
        y: Axis {
            title: format!("{name}, {}", style.units.shown(unit).symbol),
            zero,
            label: &label,
            range: None,
        },
        series,
        height,
    };
    let warm = |name: &str, read: Read| series(name, Unit::Celsius, read);
    let banded = |name: &str, unit: Unit, read: Read, of: fn(&Extent) -> [f64; 2]| {
        let shown = |v: f64| style.shown_si(v, unit);
        let spans = extents.iter().map(|(time_s, extent)| {
            let [least, most] = of(extent);
            (minutes(*time_s), shown(least), shown(most))
        });
        Series { band: spans.collect(), ..series(name, unit, read) }
    };
    let small =
        |name: &str, unit: Unit, zero: bool, one: Series| panel(name, unit, zero, 56.0, vec![one]);
    let [speed, charge, under_load, current, temperature] = said::PANELS;
    let [pack, each_motor] = said::CURRENTS;
    let [windings, cases, controller, cells] = said::WARMTHS;
    Stack {
        x: Axis { title: said::MINUTES.into(), zero: true, label: &label, range: None },
        panels: vec![
            small(
                speed,
                Unit::KilometrePerHour,
                true,
                banded("", Unit::KilometrePerHour, |m| m.speed_m_s, |e| e.speed_m_s),
            ),
            small(charge, Unit::Percent, true, series("", Unit::Percent, |m| m.charge)),
            small(under_load, Unit::Volt, false, banded("", Unit::Volt, |m| m.bus_v, |e| e.bus_v)),
            panel(
                current,
                Unit::Ampere,
                true,
                72.0,
                vec![
                    banded(pack, Unit::Ampere, |m| m.pack_a, |e| e.pack_a),
                    banded(each_motor, Unit::Ampere, |m| m.motor_a, |e| e.motor_a),
                ],
            ),
            panel(
                temperature,
                Unit::Celsius,
                false,
                108.0,
                vec![
                    warm(windings, |m| m.winding_c),
                    warm(cases, |m| m.case_c),
                    warm(controller, |m| m.controller_c),
                    warm(cells, |m| m.cell_c),
                ],
            ),
        ],
        readout: moments
            .iter()
            .map(|m| (minutes(m.time_s), said::moment(m, mean, style)))
            .collect(),
        nothing: said::NO_RIDE.into(),
    }
    .draw(width)
}

pub(super) fn table(moments: &[Moment], caption: String, style: Style) -> Table {
    let celsius = |c: f64| style.value(c.round(), Unit::Celsius, 2);
    let row = |m: &Moment| {
        vec![
            span(m.time_s),
            style.fixed(style.shown_si(m.distance_m, Unit::Kilometre), 1),
            style.speed(m.speed_m_s),
            style.fixed(m.charge * 100.0, 0),
            style.fixed(m.bus_v, 1),
            style.fixed(m.pack_a, 0),
            style.fixed(m.motor_a, 0),
            celsius(m.winding_c),
            celsius(m.case_c),
            celsius(m.controller_c),
            celsius(m.cell_c),
        ]
    };
    // A row for each minute at most.
    let (mut rows, mut next) = (Vec::new(), 0.0);
    for m in moments {
        if m.time_s >= next {
            rows.push(row(m));
            next = m.time_s + MINUTE_S;
        }
    }
    Table { label: said::TRACE_TABLE.into(), caption, heads: said::trace_heads(style), rows }
}
