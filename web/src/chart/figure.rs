//! The one component: any drawing, with its finding, cursor and table.
//!
//! Made with the page's own `dom` room: typed views cost the page more than
//! all charts together.

use super::cursor::{moved, nearest, shown};
use super::mark::{Drawing, Mark};
use super::number::tenths;
use super::svg::view_box;
use super::table::{self, Table};
use super::width::Width;
use crate::dom::{Node, el, live, said, svg};
use reactive_graph::prelude::*;
use std::cell::{Cell, RefCell};
use std::rc::Rc;

/// What a figure shows, and whom it tells.
pub struct Chart {
    /// Changes whenever the drawing would: the figure is drawn anew then, and
    /// only then.
    pub key: Box<dyn Fn() -> String>,
    /// What the drawing shows, as a sentence: its caption and its name.
    pub finding: Box<dyn Fn() -> String>,
    /// The drawing, laid out for a width.
    pub draw: Box<dyn Fn(f64) -> Drawing>,
    /// The numbers behind it.
    pub table: Box<dyn Fn() -> Table>,
    /// What the keys do, as the name of the cursor: "Arrow keys move along
    /// the curve".
    pub hint: &'static str,
    /// The measured width.
    pub width: Width,
    /// Told a stop's number when it is tapped, or chosen with Enter.
    pub on_pick: Option<Box<dyn Fn(usize)>>,
}

/// Draws a figure: the drawing, a line that says what stands at the cursor,
/// the finding as caption, and the numbers as a table.
///
/// A finger, a mouse and the arrow keys move the cursor; Escape hides it.
/// Above the drawing lies a sheet of glass that takes all of them: a picture
/// with a name stays a picture, and places count from one corner in every
/// browser.
pub fn chart(chart: Chart) -> Node {
    let Chart { key, finding, draw, table, hint, width, on_pick } = chart;
    let key: Rc<dyn Fn() -> String> = Rc::from(key);
    let newest = width.with_width(key.clone());
    let drawing_key = width.unhurried(newest.clone());
    let finding: Rc<dyn Fn() -> String> = Rc::from(finding);
    // What is drawn now, for the cursor; no signal, since the cursor only asks.
    let drawn = Rc::new(RefCell::new(super::nothing(0.0, "")));
    let seen = width.0;

    let picture = {
        let (drawn, finding) = (drawn.clone(), finding.clone());
        move || {
            let drawing = draw(seen.get_untracked().width);
            let (picture, finding) =
                (sheet(&drawing, &drawing.marks).class("chart-svg"), finding());
            drawn.replace(drawing);
            // Without anything to say it is empty, as until an answer is worked out.
            if finding.is_empty() {
                picture.attr("aria-hidden", "true").into()
            } else {
                picture.attr("role", "img").attr("aria-label", finding).into()
            }
        }
    };
    let cursor = {
        let drawn = drawn.clone();
        move || {
            let drawing = drawn.borrow();
            let stop = seen.get_untracked().at.filter(|at| at.0 < drawing.points.len());
            let cursor = stop.map(|at| {
                let marks = shown(&drawing, at.0);
                sheet(&drawing, &marks).class("chart-svg c-cursor").attr("aria-hidden", "true")
            });
            cursor.into()
        }
    };
    let place = move || seen.get().at.map_or_else(String::new, |at| tenths(at.0 as f64));
    let cursor_key = {
        let key = drawing_key.clone();
        move || key() + "@" + &place()
    };
    let readout = {
        let drawn = drawn.clone();
        move || {
            // The drawing under the cursor may have changed.
            let stop = seen.get().at;
            let drawing = drawn.borrow();
            stop.and_then(|at| drawing.points.get(at.0))
                .map_or_else(String::new, |p| p.text.clone())
        }
    };
    let live_readout = {
        let key = cursor_key.clone();
        move || {
            key();
            readout()
        }
    };
    let behind = {
        let key = drawing_key.clone();
        move || (key() != newest()).then(|| "true".into())
    };
    let caption = {
        let (key, last) = (drawing_key.clone(), RefCell::new((String::new(), String::new())));
        move || {
            let key = key();
            let mut last = last.borrow_mut();
            if last.0 != key {
                *last = (key, finding());
            }
            last.1.clone()
        }
    };
    let now = {
        let key = drawing_key.clone();
        move || key()
    };
    let glass = glass(drawing_key, drawn, hint, on_pick, width);
    let plot = el("div")
        .class("chart-plot")
        .with(live(now, picture))
        .with(live(cursor_key, cursor))
        .with(glass);
    let readout = el("p")
        .class("chart-readout")
        .follow("aria-live", move || {
            Some(if seen.get().at.is_some_and(|at| at.1) { "polite" } else { "off" }.into())
        })
        .with(said(live_readout));
    let frame = el("div")
        .class("chart-frame")
        .made(move |element| width.watch(element))
        // A finger that is lifted leaves, but its reading should stay.
        .on("pointerleave", move |e| {
            if e.by_mouse() {
                width.change(|seen| seen.at = None);
            }
        })
        .with(plot)
        .with(readout);
    el("figure")
        .class("chart")
        // Out of sight, for a moment.
        .follow("aria-busy", behind)
        .with(frame)
        .with(el("figcaption").with(said(caption)))
        .with(table::view(key, table))
        .into()
}

/// The sheet that takes finger, mouse and keys.
fn glass(
    key: Rc<dyn Fn() -> String>,
    drawn: Rc<RefCell<Drawing>>,
    hint: &'static str,
    on_pick: Option<Box<dyn Fn(usize)>>,
    width: Width,
) -> Node {
    let class = if on_pick.is_some() { "chart-glass can-pick" } else { "chart-glass" };
    let pick = Rc::new(move |stop: Option<usize>| {
        if let (Some(pick), Some(stop)) = (&on_pick, stop) {
            pick(stop);
        }
    });
    let show = move |stop: Option<usize>, by_key: bool| {
        width.change(|seen| seen.at = stop.map(|stop| (stop, by_key)));
    };
    let measured = Rc::new(Cell::new(1.0));
    let under = {
        let (drawn, measured) = (drawn.clone(), measured.clone());
        move |(x, y): (f64, f64)| {
            let drawing = drawn.borrow();
            // The drawing may be shown smaller than it was laid out.
            let scale = drawing.width / f64::max(measured.get(), 1.0);
            nearest(&drawing, x * scale, y * scale)
        }
    };
    let point = {
        let (under, measured) = (under.clone(), measured);
        move |e: &crate::dom::Event| {
            measured.set(e.room().unwrap_or_else(|| width.0.get_untracked().width));
            show(e.place().and_then(&under), false);
        }
    };
    let (down, moving, tap, chosen) = (point.clone(), point, pick.clone(), pick);
    let empty = {
        let drawn = drawn.clone();
        move || {
            // Asked again with every drawing, after it was made.
            key();
            drawn.borrow().points.is_empty()
        }
    };
    el("div")
        .class(class)
        .flag("hidden", empty)
        .attr("role", "application")
        .attr("tabindex", "0")
        .attr("aria-label", hint)
        .on("pointerdown", down)
        .on("pointermove", moving)
        // The finger went on to scroll the page: it meant nothing here.
        .on("pointercancel", move |_| show(None, false))
        .on("click", move |e| tap(e.place().and_then(&under)))
        .on("keydown", move |e| {
            let here = width.0.get_untracked().at.map(|at| at.0);
            match e.key().as_str() {
                "" => {}
                "Escape" => show(None, false),
                "Enter" | " " => {
                    e.prevent();
                    chosen(here);
                }
                key => {
                    let next = moved(&drawn.borrow(), here, key);
                    if next.is_some() {
                        e.prevent();
                        show(next, true);
                    }
                }
            }
        })
        .into()
}

/// Marks on a sheet of the drawing's size.
fn sheet(drawing: &Drawing, marks: &[Mark]) -> crate::dom::Element {
    let mark = |mark: &Mark| -> Node {
        match mark {
            Mark::Text { class, x, y, anchor, text } => svg("text")
                .class(class)
                .attr("x", tenths(*x))
                .attr("y", tenths(*y))
                .attr("text-anchor", anchor.word())
                .with(text.clone())
                .into(),
            shape => svg("path").class(shape.class()).attr("d", shape.outline()).into(),
        }
    };
    svg("svg")
        .attr("width", tenths(drawing.width))
        .attr("height", tenths(drawing.height))
        .attr("viewBox", view_box(drawing))
        .with(marks.iter().map(mark).collect::<Node>())
}
