//! The one component: any drawing, with its finding, cursor and table.

use super::cursor::{moved, nearest, shown};
use super::mark::{Drawing, Mark};
use super::number::tenths;
use super::svg::view_box;
use super::table::{Grid, Table};
use super::width::Seen;
use leptos::{ev, html, prelude::*};
use std::sync::Arc;
use std::time::Duration;

type Say = Box<dyn Fn() -> String + Send + Sync>;
type Draw = Box<dyn Fn(f64) -> Drawing + Send + Sync>;
type Rows = Box<dyn Fn() -> Table + Send + Sync>;

/// What a figure shows of something: made anew when that changes, and worked out once it is seen.
pub struct Sketch {
    /// What the drawing shows, as a sentence: its caption and its name.
    pub finding: Say,
    /// The drawing, laid out for a width.
    pub draw: Draw,
    /// The numbers behind it.
    pub table: Rows,
}

/// Only it itself is the same.
impl PartialEq for Sketch {
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self, other)
    }
}

impl Sketch {
    /// A sketch of its three parts.
    pub fn new(
        finding: impl Fn() -> String + Send + Sync + 'static,
        draw: impl Fn(f64) -> Drawing + Send + Sync + 'static,
        table: impl Fn() -> Table + Send + Sync + 'static,
    ) -> Arc<Self> {
        Arc::new(Self { finding: Box::new(finding), draw: Box::new(draw), table: Box::new(table) })
    }
}

/// Where the cursor stands, and whether a key put it there: only then is it
/// read out aloud.
type At = Option<(usize, bool)>;

/// How long after the last change what is out of sight follows it.
const REST: Duration = Duration::from_millis(250);

/// A figure: the drawing, a line that says what stands at the cursor,
/// the finding as caption, and the numbers as a table.
///
/// A finger, a mouse and the arrow keys move the cursor; Escape hides it.
/// Above the drawing lies a sheet of glass that takes all of them: a picture
/// with a name stays a picture, and places count from one corner in every
/// browser.
#[component]
pub fn Figure(
    /// What it shows; nothing where there is no answer.
    #[prop(into)]
    sketch: Signal<Option<Arc<Sketch>>>,
    /// What the keys do, as the name of the cursor: "Arrow keys move along
    /// the curve".
    hint: &'static str,
    /// Told a stop's number when it is tapped, or chosen with Enter.
    #[prop(optional, into)]
    on_pick: Option<Callback<usize>>,
) -> impl IntoView {
    let seen = Seen::new();
    let at = RwSignal::new(At::None);
    let held = unhurried(sketch, seen.near);
    let drawing = Memo::new_with_compare(
        move |_| {
            let width = seen.width.get();
            let drawn = held.with(|held| held.as_ref().map(|sketch| (sketch.draw)(width)));
            Arc::new(drawn.unwrap_or_else(|| super::nothing(width, "")))
        },
        // Made anew only when it is another.
        |_, _| true,
    );
    let finding = Memo::new(move |_| {
        held.with(|held| held.as_ref().map_or_else(String::new, |sketch| (sketch.finding)()))
    });
    let stop = move || {
        let drawing = drawing.get();
        at.get().filter(|(stop, _)| *stop < drawing.points.len()).map(|(stop, _)| (drawing, stop))
    };
    let picture = move || {
        let (drawing, finding) = (drawing.get(), finding.get());
        // Without anything to say it is empty, as until an answer is worked out.
        let named = !finding.is_empty();
        sheet(&drawing, &drawing.marks, "chart-svg", named.then_some(finding))
    };
    let cursor = move || {
        stop().map(|(drawing, stop)| {
            sheet(&drawing, &shown(&drawing, stop), "chart-svg c-cursor", None)
        })
    };
    let readout = move || {
        stop().map_or_else(String::new, |(drawing, stop)| drawing.points[stop].text.clone())
    };
    // Out of sight, for a moment.
    let behind = move || {
        let now = sketch.get();
        held.with(|held| *held != now)
    };
    let frame = NodeRef::<html::Div>::new();
    frame.on_load(move |frame| seen.watch(&frame));
    // A finger that is lifted leaves, but its reading should stay.
    let left = move |e: ev::PointerEvent| {
        if e.pointer_type() == "mouse" {
            at.set(None);
        }
    };
    let live = move || if at.get().is_some_and(|at| at.1) { "polite" } else { "off" };
    view! {
        <figure class="chart" aria-busy=move || behind().then_some("true")>
            <div class="chart-frame" node_ref=frame on:pointerleave=left>
                <div class="chart-plot">
                    {picture} {cursor} <Glass drawing at hint on_pick />
                </div>
                <p class="chart-readout" aria-live=live>{readout}</p>
            </div>
            <figcaption>{finding}</figcaption>
            <Data held />
        </figure>
    }
}

/// Follows a sketch; out of sight only once the reader rests, so that an edit costs no more than
/// what is seen of it.
fn unhurried(
    sketch: Signal<Option<Arc<Sketch>>>,
    near: RwSignal<bool>,
) -> Memo<Option<Arc<Sketch>>> {
    let rests = RwSignal::new(0_u32);
    let timer = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move |before: Option<()>| {
        sketch.track();
        if before.is_some() && !near.get_untracked() {
            if let Some(timer) = timer.get_value() {
                timer.clear();
            }
            let rest = move || _ = rests.try_update(|rests| *rests += 1);
            timer.set_value(set_timeout_with_handle(rest, REST).ok());
        }
    });
    let followed = StoredValue::new(0);
    Memo::new(move |before: Option<&Option<Arc<Sketch>>>| {
        let (now, near, rests) = (sketch.get(), near.get(), rests.get());
        match before {
            Some(before) if !near && before.is_some() && followed.get_value() == rests => {
                before.clone()
            }
            _ => {
                followed.set_value(rests);
                now
            }
        }
    })
}

/// The table folded away, made while it is open.
#[component]
fn Data(held: Memo<Option<Arc<Sketch>>>) -> impl IntoView {
    let open = RwSignal::new(false);
    let fold = NodeRef::<html::Details>::new();
    let table = move || held.with(|held| held.as_ref().map(|sketch| (sketch.table)()));
    // It stays as it was first: the rows need not be worked out for it again.
    let label = Memo::new(move |before: Option<&String>| match before {
        Some(label) if !label.is_empty() => label.clone(),
        _ => table().map_or_else(String::new, |table| table.label),
    });
    // Before there is anything to show it has no heads either.
    let some = move || table().filter(|table| !table.heads.is_empty());
    let inside = move || open.get().then(some).flatten().map(|table| view! { <Grid table /> });
    view! {
        <details
            class="chart-data"
            node_ref=fold
            on:toggle=move |_| open.set(fold.get_untracked().is_some_and(|fold| fold.open()))
        >
            <summary>{label}</summary>
            {inside}
        </details>
    }
}

/// The sheet that takes finger, mouse and keys.
#[component]
fn Glass(
    drawing: Memo<Arc<Drawing>>,
    at: RwSignal<At>,
    hint: &'static str,
    on_pick: Option<Callback<usize>>,
) -> impl IntoView {
    let glass = NodeRef::<html::Div>::new();
    let under = move |e: &ev::MouseEvent| {
        let room = glass.get_untracked().map_or(0, |glass| glass.client_width());
        drawing.with_untracked(|drawing| {
            // The drawing may be shown smaller than it was laid out.
            let scale = drawing.width / f64::from(room.max(1));
            let (x, y) = (f64::from(e.offset_x()), f64::from(e.offset_y()));
            nearest(drawing, x * scale, y * scale)
        })
    };
    let point = move |e: ev::PointerEvent| {
        let now = under(&e).map(|stop| (stop, false));
        if at.get_untracked() != now {
            at.set(now);
        }
    };
    let pick = move |stop: Option<usize>| {
        if let (Some(pick), Some(stop)) = (on_pick, stop) {
            pick.run(stop);
        }
    };
    let keyed = move |e: ev::KeyboardEvent| {
        if e.ctrl_key() || e.alt_key() || e.meta_key() {
            return;
        }
        let here = at.get_untracked().map(|at| at.0);
        match e.key().as_str() {
            "Escape" => at.set(None),
            "Enter" | " " => {
                e.prevent_default();
                pick(here);
            }
            key => {
                if let Some(next) = drawing.with_untracked(|drawing| moved(drawing, here, key)) {
                    e.prevent_default();
                    at.set(Some((next, true)));
                }
            }
        }
    };
    view! {
        <div
            class="chart-glass"
            class:can-pick=on_pick.is_some()
            node_ref=glass
            hidden=move || drawing.with(|drawing| drawing.points.is_empty())
            role="application"
            tabindex="0"
            aria-label=hint
            on:pointerdown=point
            on:pointermove=point
            // The finger went on to scroll the page: it meant nothing here.
            on:pointercancel=move |_| at.set(None)
            on:click=move |e| pick(under(&e))
            on:keydown=keyed
        ></div>
    }
}

/// Marks on a sheet of the drawing's size; hidden from speech without a name.
fn sheet(
    drawing: &Drawing,
    marks: &[Mark],
    class: &'static str,
    name: Option<String>,
) -> impl IntoView + use<> {
    view! {
        <svg
            class=class
            width=tenths(drawing.width)
            height=tenths(drawing.height)
            viewBox=view_box(drawing)
            role=name.is_some().then_some("img")
            aria-hidden=name.is_none().then_some("true")
            aria-label=name
        >
            {drawn(marks)}
        </svg>
    }
}

/// Marks as elements of SVG.
pub(crate) fn drawn(marks: &[Mark]) -> impl IntoView + use<> {
    let mark = |mark: &Mark| match mark {
        Mark::Text { class, x, y, anchor, text } => view! {
            <text class=*class x=tenths(*x) y=tenths(*y) text-anchor=anchor.word()>
                {text.clone()}
            </text>
        }
        .into_any(),
        shape => view! { <path class=shape.class() d=shape.outline() /> }.into_any(),
    };
    marks.iter().map(mark).collect_view()
}
