//! How sure an answer is, and what moves it most.

mod curve;
mod measure;
mod spreads;
mod told;
mod tornado;

use super::work::{Job, Work};
use crate::ask::ALONG_CURVE;
use crate::chart::{Chart, Drawing, Table, chart, nothing, use_width};
use crate::component::fold;
use crate::dom::{Node, el, live, said};
use crate::state::{App, Banded, Found, Sure};
use crate::text::number::exact;

use crate::text::{Style, caveat, page};
use measure::Measure;
use pitchline_core::band::{Band, CURVE_SAMPLES, CurvePoint, CurveSampler, Quantity, Sampler};
use pitchline_core::caveats;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::sync::Arc;

/// Speeds of the distance's curve, about.
const SPEEDS: usize = 12;

/// What was worked out last.
#[derive(Default)]
struct Last {
    band: Cell<Option<Band>>,
    curve: RefCell<Vec<CurvePoint>>,
}

/// A band in words, what moves it, and where it comes from.
pub(super) fn sure(app: App, of: Quantity) -> Node {
    let (work, last) = (Work::new(), Rc::<Last>::default());
    let count = move || exact(f64::from(app.found().map_or(0, |found| found.count)));
    let line = {
        let last = last.clone();
        work.line(count, move || job(app, of, last.clone()))
    };
    // What was worked out stays until the next is there, so that nothing flickers.
    let there = {
        let last = last.clone();
        let some = move || work.ended() > 0 && last.band.get().is_some();
        move || if some() { "there".into() } else { String::new() }
    };
    let inside = move || match last.band.get() {
        Some(_) => view(app, of, work, last.clone()),
        None => Node::None,
    };
    el("div")
        .class("sure")
        .with(el("div").class("sure-head").with(el("h3").with(page::SURE)).with(line))
        .with(live(there, inside))
        .into()
}

/// Takes the samples, and tells the strip; for the distance then those of its curve.
fn job(app: App, of: Quantity, last: Rc<Last>) -> Job {
    let Some(now) = app.found() else { return Box::new(|| 1.0) };
    let mut sampler = Sampler::new(&now.build, of);
    let mut curve = (of == Quantity::SteadyDistance).then(|| {
        let along = &now.answers.distance.curve;
        let some = along.iter().step_by(along.len().div_ceil(SPEEDS).max(1));
        CurveSampler::new(&now.build, some.map(|point| point.speed_m_s))
    });
    // A charge until there is enough goes with the one until it is full.
    let mut enough =
        (of == Quantity::ChargeTime).then(|| Sampler::new(&now.build, Quantity::EnoughTime));
    let all = of.whole()
        + curve.as_ref().map_or(0, |_| SPEEDS * CURVE_SAMPLES)
        + enough.as_ref().map_or(0, Sampler::left);
    // A ride in time takes a millisecond or so, anything else far less.
    let at_once = if of == Quantity::OutingDistance { 1 } else { 8 };
    Box::new(move || {
        if sampler.left() > 0 {
            sampler.take(sampler.left().min(at_once));
            if sampler.left() == 0 {
                let band = sampler.band();
                last.band.set(band);
                if let Some(band) = band {
                    tell(app, of, &band, now.count);
                }
            }
        } else if let Some(enough) = enough.as_mut().filter(|enough| enough.left() > 0) {
            enough.take(enough.left().min(at_once));
            if let Some(band) = enough.band().filter(|_| enough.left() == 0) {
                tell(app, Quantity::EnoughTime, &band, now.count);
            }
        } else if let Some(curve) = &mut curve {
            curve.take();
            if curve.left() == 0 {
                last.curve.replace(curve.curve());
            }
        }
        let left = sampler.left()
            + curve.as_ref().map_or(0, |curve| SPEEDS * curve.left())
            + enough.as_ref().map_or(0, Sampler::left);
        1.0 - left as f64 / all as f64
    })
}

/// What the headlines show.
fn tell(app: App, of: Quantity, band: &Band, count: u32) {
    let sure = Sure { nominal: band.nominal, low: band.p10, high: band.p90, of: Some(count) };
    let place = match of {
        Quantity::TopSpeed => Banded::Speed,
        Quantity::Hill => Banded::Hill,
        Quantity::SteadyDistance => Banded::Distance,
        Quantity::OutingDistance => Banded::Outing,
        Quantity::ChargeTime => Banded::Charge,
        Quantity::EnoughTime => Banded::Enough,
    };
    app.change(|model| model.sure[place as usize] = sure);
}

/// The band that was worked out last, and how numbers are written; tracked.
type With = Rc<dyn Fn() -> Option<(Band, Style)>>;

fn view(app: App, of: Quantity, work: Work, last: Rc<Last>) -> Node {
    let with: With = {
        let last = last.clone();
        Rc::new(move || {
            let _ = work.ended();
            last.band.get().map(|band| (band, app.style()))
        })
    };
    let words = {
        let with = with.clone();
        move || {
            with().map_or_else(String::new, |(band, style)| {
                let mut words = told::told(of, &band, app, style);
                for said in app.found().map(|found| caveats(&found.build)).unwrap_or_default() {
                    words.push(' ');
                    words.push_str(&caveat(&said, style));
                }
                words
            })
        }
    };
    // For who reads the page by script: 10, 50 and 90 of a hundred, in SI, to the last digit.
    let figures = {
        let with = with.clone();
        move || with().map(|(band, _)| [band.p10, band.p50, band.p90].map(exact).join(" "))
    };
    let curve = match of {
        Quantity::SteadyDistance => over_speed(app, with.clone(), last),
        _ => Node::None,
    };
    let say = move |band: &Band, _| tornado::finding(band);
    let draw = move |band: &Band, style, width| tornado::draw(Measure::of(of, style), band, width);
    let rows = move |band: &Band, style| tornado::rows(Measure::of(of, style), band);
    Node::from(vec![
        el("p").class("facts").follow("data-band", figures).with(said(words)).into(),
        curve,
        shown(with, "Arrow keys visit the bars", say, draw, rows),
        fold("working", page::SPREADS, move || spreads::spreads(app, of)).into(),
    ])
}

/// The distance at other speeds.
fn over_speed(app: App, with: With, last: Rc<Last>) -> Node {
    let measure = |style| Measure::of(Quantity::SteadyDistance, style);
    let (told, drawn) = (last.clone(), last.clone());
    let say = move |band: &Band, style| {
        let cruise = app.found().map_or(0.0, |found| found.build.ride.cruise_m_s);
        curve::finding(measure(style), &told.curve.borrow(), (cruise, [band.p10, band.p90]))
    };
    let draw = move |_: &Band, style, width| {
        let draw = |found: Arc<Found>| {
            curve::draw(measure(style), &drawn.curve.borrow(), &found.answers.distance, width)
        };
        app.found().map_or_else(|| nothing(width, ""), draw)
    };
    let rows = move |_: &Band, style| {
        let rows = |found: Arc<Found>| {
            curve::rows(measure(style), style, &last.curve.borrow(), &found.answers.distance)
        };
        app.found().map(rows).unwrap_or_default()
    };
    shown(with, ALONG_CURVE, say, draw, rows)
}

/// A chart of a band.
fn shown(
    with: With,
    hint: &'static str,
    say: impl Fn(&Band, Style) -> String + 'static,
    draw: impl Fn(&Band, Style, f64) -> Drawing + 'static,
    rows: impl Fn(&Band, Style) -> Table + 'static,
) -> Node {
    let (key, told, drawn, table) = (with.clone(), with.clone(), with.clone(), with);
    chart(Chart {
        key: Box::new(move || {
            key().map_or_else(String::new, |(band, style)| {
                exact(band.p50) + style.units.key() + if style.comma { "," } else { "." }
            })
        }),
        finding: Box::new(move || told().map_or_else(String::new, |(b, s)| say(&b, s))),
        draw: Box::new(move |width| {
            drawn().map_or_else(|| nothing(width, ""), |(b, s)| draw(&b, s, width))
        }),
        table: Box::new(move || table().map_or_else(Table::default, |(b, s)| rows(&b, s))),
        hint,
        width: use_width(340.0),
        on_pick: None,
    })
}
