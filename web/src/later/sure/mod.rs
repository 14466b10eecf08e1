//! How sure an answer is, and what moves it most.

mod measure;
mod spreads;
mod told;
mod tornado;

use super::work::{Job, Work};
use crate::chart::{Chart, Table, chart, nothing, use_width};
use crate::component::fold;
use crate::dom::{Node, el, live, said};
use crate::state::{App, Strip, Sure};
use crate::text::number::exact;
use crate::text::{Style, page};
use measure::Measure;
use pitchline_core::band::{Band, Quantity, Sampler, WHOLE};
use std::cell::Cell;
use std::rc::Rc;

/// Samples between two looks at the clock.
const AT_ONCE: usize = 8;

/// The band that was worked out last.
type Last = Rc<Cell<Option<Band>>>;

/// A band in words, what moves it, and where it comes from.
pub(super) fn sure(app: App, of: Quantity) -> Node {
    let (work, last) = (Work::new(), Last::default());
    let count = move || exact(f64::from(app.found().map_or(0, |found| found.count)));
    let line = {
        let last = last.clone();
        work.line(count, move || job(app, of, last.clone()))
    };
    // What was worked out stays until the next is there, so that nothing flickers.
    let there = {
        let last = last.clone();
        move || {
            if work.ended() > 0 && last.get().is_some() { "there".into() } else { String::new() }
        }
    };
    let inside = move || match last.get() {
        Some(_) => view(app, of, work, last.clone()),
        None => Node::None,
    };
    el("div")
        .class("sure")
        .with(el("div").class("sure-head").with(el("h3").with(page::SURE)).with(line))
        .with(live(there, inside))
        .into()
}

/// Takes the samples, and tells the strip.
fn job(app: App, of: Quantity, last: Last) -> Job {
    let Some(now) = app.found() else { return Box::new(|| 1.0) };
    let mut sampler = Sampler::new(&now.build, of);
    Box::new(move || {
        sampler.take(sampler.left().min(AT_ONCE));
        if sampler.left() == 0 {
            let band = sampler.band();
            last.set(band);
            if let Some(band) = band {
                tell(app, of, &band, now.count);
            }
        }
        1.0 - sampler.left() as f64 / WHOLE as f64
    })
}

/// What the headlines show.
fn tell(app: App, of: Quantity, band: &Band, count: u32) {
    let sure = Sure { nominal: band.nominal, low: band.p10, high: band.p90, of: Some(count) };
    let place = match of {
        Quantity::TopSpeed => Strip::Speed,
        Quantity::Hill => Strip::Hill,
        Quantity::SteadyDistance => Strip::Distance,
        _ => return,
    };
    app.change(|model| model.sure[place as usize] = sure);
}

fn view(app: App, of: Quantity, work: Work, last: Last) -> Node {
    let with = move || {
        let _ = work.ended();
        last.get().map(|band| (band, app.style()))
    };
    let with: Rc<dyn Fn() -> Option<(Band, Style)>> = Rc::new(with);
    let words = {
        let with = with.clone();
        move || with().map_or_else(String::new, |(band, style)| told::told(of, &band, app, style))
    };
    // For who reads the page by script: 10, 50 and 90 of a hundred, in SI, to the last digit.
    let figures = {
        let with = with.clone();
        move || with().map(|(band, _)| [band.p10, band.p50, band.p90].map(exact).join(" "))
    };
    let (key, finding, draw, rows) = (with.clone(), with.clone(), with.clone(), with);
    let tornado = chart(Chart {
        key: Box::new(move || {
            key().map_or_else(String::new, |(band, style)| {
                exact(band.p50) + style.units.key() + if style.comma { "," } else { "." }
            })
        }),
        finding: Box::new(move || {
            finding().map_or_else(String::new, |(band, _)| tornado::finding(&band))
        }),
        draw: Box::new(move |width| {
            let drawing = draw().map(|(band, s)| tornado::draw(Measure::of(of, s), &band, width));
            drawing.unwrap_or_else(|| nothing(width, ""))
        }),
        table: Box::new(move || {
            rows().map_or_else(Table::default, |(band, s)| tornado::rows(Measure::of(of, s), &band))
        }),
        hint: "Arrow keys visit the bars",
        width: use_width(340.0),
        on_pick: None,
    });
    Node::from(vec![
        el("p").class("facts").follow("data-band", figures).with(said(words)).into(),
        tornado,
        fold("working", page::SPREADS, move || spreads::spreads(app, of)).into(),
    ])
}
