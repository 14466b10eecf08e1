//! The one component: any drawing, with its finding, cursor and table.
#![allow(unreachable_pub, reason = "the component macro writes a public function of its own")]

use super::cursor::{moved, nearest, shown};
use super::mark::{Drawing, Mark};
use super::number::tenths;
use super::svg::view_box;
use super::table::{self, Table};
use super::width::Width;
use leptos::html::Div;
use leptos::prelude::*;
use leptos::{ev, html, svg};

/// Where the cursor stands, and whether a key put it there: only then is it
/// read out aloud.
type At = Option<(usize, bool)>;

/// Draws a figure: the drawing, a line that says what stands at the cursor,
/// the finding as caption, and the numbers as a table.
///
/// A finger, a mouse and the arrow keys move the cursor; Escape hides it.
/// Above the drawing lies a sheet of glass that takes all of them: a picture
/// with a name stays a picture, and places count from one corner in every
/// browser.
#[component]
pub fn Chart(
    /// What the drawing shows, as a sentence: its caption and its name.
    #[prop(into)]
    finding: Signal<String>,
    /// The drawing, laid out for the chart's width.
    #[prop(into)]
    marks: Signal<Drawing>,
    /// The numbers behind it.
    #[prop(into)]
    table: Signal<Table>,
    /// What the keys do, as the name of the cursor: "Arrow keys move along
    /// the curve".
    #[prop(into)]
    hint: Signal<String>,
    /// The measured width, if the drawing is laid out for it.
    #[prop(optional)]
    width: Option<Width>,
    /// Called with a stop's number when it is tapped, or chosen with Enter.
    #[prop(optional, into)]
    on_pick: Option<Callback<usize>>,
) -> impl IntoView {
    let at = RwSignal::new(At::None);
    let glass = NodeRef::<Div>::new();
    let frame = width.map_or_else(NodeRef::new, |w| w.node);

    let under = move |x: i32, y: i32| {
        let wide = f64::from(glass.get_untracked()?.client_width().max(1));
        marks.with_untracked(|d| {
            // The drawing may be shown smaller than it was laid out.
            let scale = d.width / wide;
            nearest(d, f64::from(x) * scale, f64::from(y) * scale)
        })
    };
    let show = move |stop: Option<usize>, by_key: bool| {
        let next = stop.map(|stop| (stop, by_key));
        if at.get_untracked() != next {
            at.set(next);
        }
    };
    let point = move |e: ev::PointerEvent| show(under(e.offset_x(), e.offset_y()), false);
    let leave = move |e: ev::PointerEvent| {
        // A finger that is lifted leaves, but its reading should stay.
        if e.pointer_type() == "mouse" {
            show(None, false);
        }
    };
    let pick = move |stop: Option<usize>| match (on_pick, stop) {
        (Some(on_pick), Some(stop)) => {
            on_pick.run(stop);
            true
        }
        _ => false,
    };
    let key = move |e: ev::KeyboardEvent| {
        if e.ctrl_key() || e.alt_key() || e.meta_key() {
            return;
        }
        let here = at.get_untracked().map(|at| at.0);
        let ours = match e.key().as_str() {
            "Escape" => {
                show(None, false);
                here.is_some()
            }
            "Enter" | " " => pick(here),
            key => {
                let next = marks.with_untracked(|d| moved(d, here, key));
                if next.is_some() {
                    show(next, true);
                }
                next.is_some()
            }
        };
        if ours {
            e.prevent_default();
        }
    };

    let said = move || {
        let stop = at.get()?.0;
        marks.with(|d| d.points.get(stop).map(|p| p.text.clone()))
    };
    let cursor = move || {
        let at = at.get().map(|at| at.0);
        marks.with(|d| at.map_or_else(Vec::new, |at| views(&shown(d, at))))
    };
    let picture = svg::svg()
        .attr("class", "chart-svg")
        .attr("role", "img")
        .attr("aria-label", move || finding.get())
        .attr("width", move || marks.with(|d| tenths(d.width)))
        .attr("height", move || marks.with(|d| tenths(d.height)))
        .attr("viewBox", move || marks.with(view_box))
        .child((
            svg::g().child(move || marks.with(|d| views(&d.marks))),
            svg::g().attr("class", "c-cursor").child(cursor),
        ))
        .into_any();
    let sheet = html::div()
        .class(if on_pick.is_some() { "chart-glass can-pick" } else { "chart-glass" })
        .role("application")
        .tabindex(0)
        .attr("aria-label", move || hint.get())
        .attr("hidden", move || marks.with(|d| d.points.is_empty()))
        .node_ref(glass)
        .on(ev::pointerdown, point)
        .on(ev::pointermove, point)
        .on(ev::click, move |e| {
            pick(under(e.offset_x(), e.offset_y()));
        })
        .on(ev::keydown, key)
        .into_any();
    let readout = html::p()
        .class("chart-readout")
        .attr("aria-live", move || match at.get() {
            Some((_, true)) => "polite",
            _ => "off",
        })
        .child(said)
        .into_any();

    html::figure()
        .class("chart")
        .child((
            html::div()
                .class("chart-frame")
                .node_ref(frame)
                .on(ev::pointerleave, leave)
                .child((html::div().class("chart-plot").child((picture, sheet)), readout))
                .into_any(),
            html::figcaption().child(move || finding.get()).into_any(),
            table::view(table),
        ))
        .into_any()
}

/// The marks as elements: two kinds, whatever is drawn.
fn views(marks: &[Mark]) -> Vec<AnyView> {
    marks
        .iter()
        .map(|mark| match mark {
            Mark::Text { class, x, y, anchor, text } => svg::text()
                .attr("class", *class)
                .attr("x", tenths(*x))
                .attr("y", tenths(*y))
                .attr("text-anchor", anchor.word())
                .child(text.clone())
                .into_any(),
            shape => svg::path().attr("class", shape.class()).attr("d", shape.outline()).into_any(),
        })
        .collect()
}
