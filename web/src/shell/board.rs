//! The board that is being built, drawn from the side; each part of it can be tapped.

use crate::app::{Fit, use_app};
use crate::chart::{STEP, Seen, drawn, tenths};
use crate::drawing::{Area, BoardDrawing, BoardSide, PARTS};
use crate::text::{Style, board};
use leptos::{html, prelude::*};
use pitchline_core::Slot;
use pitchline_core::fit::{Side, SizeFrom};
use std::sync::Arc;

/// What is drawn and said of a build.
#[derive(PartialEq)]
pub(super) struct Shown {
    pub(super) side: BoardSide,
    /// The drawing in a sentence.
    pub(super) finding: String,
    /// Name and figure of each of [`PARTS`].
    pub(super) names: [String; 10],
}

impl Shown {
    pub(super) fn of(fit: &Fit, style: Style) -> Self {
        let assumed = |slot: &Slot| is_assumed(fit, *slot);
        let guessed: Vec<Slot> = PARTS.into_iter().filter(assumed).collect();
        Self {
            side: side(fit, style),
            finding: board::finding(&fit.build, fit.together.cells.fits, &guessed, style),
            names: PARTS.map(|slot| {
                board::part(slot, &fit.draft, &fit.build, guessed.contains(&slot), style)
            }),
        }
    }
}

/// The board from the side, with a button over each part.
#[component]
pub(super) fn Board(
    /// Told the slot of the part that is tapped.
    on_pick: Callback<Slot>,
) -> impl IntoView {
    let app = use_app();
    let shown = Memo::new(move |_| {
        let style = app.style();
        app.fit().map(|fit| Arc::new(Shown::of(&fit, style)))
    });
    let seen = Seen::new();
    let frame = NodeRef::<html::Div>::new();
    frame.on_load(move |frame| seen.watch(&frame));
    // Never wider than the room there is, so that nothing is shown smaller than it was laid out.
    let drawing = Memo::new(move |_| {
        let width = seen.width.get() - STEP / 2.0;
        shown.with(|shown| shown.as_ref().map(|shown| Arc::new(shown.side.draw(width))))
    });
    let lit = RwSignal::new(None::<Slot>);
    // Said, not left to the picture's width: WebKit keeps the room of the picture before.
    let wide = move || drawing.get().map(|drawing| tenths(drawing.width) + "px");
    let picture = move || drawing.get().map(|drawing| picture(&drawing, lit));
    let name = move |n: usize| {
        shown.with(|shown| shown.as_ref().map(|shown| shown.names[n].clone())).unwrap_or_default()
    };
    let finding = move || {
        shown.with(|shown| shown.as_ref().map(|shown| shown.finding.clone())).unwrap_or_default()
    };
    let readout = move || {
        let at = PARTS.iter().position(|slot| lit.get() == Some(*slot));
        at.map_or_else(|| board::PICK.into(), name)
    };
    let part = move |(n, slot): (usize, Slot)| {
        let px = move |pick: fn(&Area) -> f64| {
            let size = drawing.with(|drawing| drawing.as_ref().map(|d| pick(&d.areas[n])));
            size.map(|size| tenths(size) + "px")
        };
        // Where another part is lit by now, it stays so.
        let dim = move || {
            if lit.get_untracked() == Some(slot) {
                lit.set(None);
            }
        };
        view! {
            <li>
                <button
                    type="button"
                    aria-label=move || name(n)
                    style:left=move || px(|area| area.x)
                    style:top=move || px(|area| area.y)
                    style:width=move || px(|area| area.width)
                    style:height=move || px(|area| area.height)
                    on:click=move |_| on_pick.run(slot)
                    on:pointerenter=move |_| lit.set(Some(slot))
                    on:pointerleave=move |_| dim()
                    on:focus=move |_| lit.set(Some(slot))
                    on:blur=move |_| dim()
                ></button>
            </li>
        }
    };
    view! {
        <div class="board" hidden=move || shown.with(Option::is_none)>
            <p class="unseen">{finding}</p>
            <div class="board-frame" node_ref=frame>
                <div class="board-plot" style:width=wide>
                    {picture} <ul role="list">
                        {PARTS.into_iter().enumerate().map(part).collect_view()}
                    </ul> <p
                        class="board-readout"
                        class:idle=move || lit.get().is_none()
                        aria-hidden="true"
                    >
                        {readout}
                    </p>
                </div>
            </div>
        </div>
    }
}

/// The parts, each lit while it is pointed at, and what stands around them.
fn picture(drawing: &BoardDrawing, lit: RwSignal<Option<Slot>>) -> impl IntoView + use<> {
    let (width, height) = (tenths(drawing.width), tenths(drawing.height));
    let part = |(slot, marks): &(Slot, Vec<_>)| {
        let slot = *slot;
        view! { <g class:lit=move || lit.get() == Some(slot)>{drawn(marks)}</g> }
    };
    view! {
        <svg class="chart-svg" viewBox=format!("0 0 {width} {height}") width=width height=height aria-hidden="true">
            {drawn(&drawing.rest)} {drawing.parts.iter().map(part).collect_view()}
        </svg>
    }
}

/// Whether a size that a part is drawn by was assumed.
fn is_assumed(fit: &Fit, slot: Slot) -> bool {
    let keys: &[&str] = match slot {
        Slot::Deck => &["wheelbase_mm", "thickness_mm", "box_length_mm", "box_height_mm"],
        Slot::Truck => &["height_mm", "mount_angle_deg"],
        Slot::Motor => &["can_diameter_mm"],
        Slot::Belt => &["teeth"],
        Slot::Controller => &["length_mm", "width_mm", "height_mm"],
        Slot::Cell => return fit.together.cells.cell.from == SizeFrom::Assumed,
        _ => &[],
    };
    keys.iter().any(|key| !fit.given(slot, key))
}

fn side(fit: &Fit, style: Style) -> BoardSide {
    let (build, at, cells) = (&fit.build, &fit.together.layout, &fit.together.cells);
    let [along, _, up] = cells.bank_m();
    let [corner, _, low] = cells.controller.corner_m;
    let [long, _, high] = cells.controller.size_m;
    let [inside, _, height] = cells.inside_m;
    let [used, _, used_up] = cells.used_m;
    let [box_length, _, box_depth] = at.box_m;
    BoardSide {
        wheelbase_m: build.deck.wheelbase_m,
        wheel_m: build.wheel.diameter_m,
        core_m: at.core_m,
        axle_m: at.axle_up_m,
        truck_m: build.truck.height_m,
        deck_m: at.deck_up_m,
        deck_end_m: at.deck_end_m,
        thick_m: build.deck.thickness_m,
        sag_m: fit.together.deck.sag_with_room_m(),
        motor_m: (at.motor_ahead_m, at.motor_up_m),
        can_m: build.motor.can_diameter_m,
        pitches_m: fit.together.belt.pulleys.map(|size| size.pitch_diameter_m),
        pulleys_m: at.pulleys_m,
        teeth: [build.motor_pulley.teeth, build.wheel_pulley.teeth],
        tooth_m: at.tooth_m,
        box_m: [box_length, box_depth],
        inside_m: [inside, height],
        box_ahead_m: build.deck.box_ahead_m,
        bank_m: [along, up],
        controller_m: [[corner, corner + long], [low, low + high]],
        beside: cells.controller.side == Side::Beside,
        used_m: [used, used_up],
        fits: cells.fits,
        series: build.pack.series,
        words: board::under(build, style),
    }
}
