//! Deck and box: sag, ground clearance, crests, and the cells in the box.

use super::view::{
    Answered, Drawn, Headlines, Line, Shows, ToScale, at_least, at_most, entered, least, length,
    rough, sizes,
};
use crate::app::Fit;
use crate::chart::plain;
use crate::component::Caution;
use crate::drawing::{BoxPlan, DeckSide, Item};
use crate::text::{Answer, Style, page};
use leptos::prelude::*;
use pitchline_core::fit::{FrameHeadline, Lie, SagFrom};
use pitchline_core::{Slot, Unit};

const ROOM_BELOW: [Answered; 3] = [
    (Shows::Frame(FrameHeadline::Road), road),
    (Shows::Frame(FrameHeadline::BumpRoad), bump),
    (Shows::Frame(FrameHeadline::Sag), sag),
];

const ROOM_INSIDE: [Answered; 3] = [
    (Shows::Frame(FrameHeadline::BoxRoom), room),
    (Shows::Nothing, enough),
    (Shows::Nothing, most),
];

/// Deck and box.
#[component]
pub(super) fn Deck() -> impl IntoView {
    view! {
        <h3>"Deck and box"</h3>
        <Headlines list=&ROOM_BELOW />
        <ToScale of=&SIDE />
        <Line say=assumed />
        <Line say=crest />
        <h4>"Cells in the box"</h4>
        <Headlines list=&ROOM_INSIDE />
        <ToScale of=&PLAN />
        <Line say=wide />
        <Caution text=page::CAUTION_BOX />
    }
}

/// What the box leaves under it: too little is said as that.
fn under(name: &str, room_m: f64, limit: String, style: Style) -> Answer {
    if room_m < 0.0 {
        return length(&format!("{name}: too low by"), room_m, limit, style);
    }
    length(name, room_m, limit, style)
}

fn road(found: &Fit, style: Style) -> Answer {
    under("Box to the road, standing still", found.together.deck.road_m, String::new(), style)
}

fn bump(found: &Fit, style: Style) -> Answer {
    let limit = format!("Off a bump of {}", entered(style, found.build.place.bump_m));
    under("Box to the road, at the bottom of a bump", found.together.deck.bump_road_m, limit, style)
}

fn sag(found: &Fit, style: Style) -> Answer {
    let from = match found.together.deck.sag_from {
        SagFrom::Measured => "From the sag that was measured",
        SagFrom::Stiffness => "From the deck's stiffness",
    };
    length("Sag under the rider", found.together.deck.sag_m, from.into(), style)
}

/// Which sizes of deck and box were assumed.
fn assumed(found: &Fit, _: Style) -> String {
    match sizes(&found.together.deck.assumed) {
        sizes if sizes.is_empty() => sizes,
        sizes => format!("Assumed here: {sizes}."),
    }
}

/// By how much the contents are too large, each way.
pub(super) fn short(left_m: [f64; 3], style: Style) -> String {
    let ways = ["too long", "too wide", "too high"];
    let over = left_m.iter().zip(ways).filter(|(left, _)| **left < 0.0);
    over.map(|(left, way)| format!("{} {way}", at_least(style, -left)))
        .collect::<Vec<_>>()
        .join(", ")
}

fn crest(found: &Fit, style: Style) -> String {
    found.together.deck.break_over_deg.map_or_else(String::new, |angle| {
        format!(
            "It rolls over a crest where two slopes meet at up to {}° without touching.",
            style.fixed(angle, 0)
        )
    })
}

fn room(found: &Fit, style: Style) -> Answer {
    let cells = &found.together.cells;
    let ways = [("along", "long"), ("across", "wide"), ("up", "high")];
    let left = cells.left_m.get(cells.tightest).copied().unwrap_or(0.0);
    let (way, over) = ways.get(cells.tightest).copied().unwrap_or_default();
    let name = if left < 0.0 {
        format!("Pack and controller too {over} for the box by")
    } else {
        format!("Least room left in the box, {way}")
    };
    length(&name, left, String::new(), style)
}

/// The length of a box that would do.
fn enough(found: &Fit, style: Style) -> Answer {
    let (figure, unit, limit) = match found.together.cells.length_for_m {
        Some(length) => (
            least(style, length),
            style.units.shown(Unit::Millimetre).symbol,
            format!("This one has {}", at_most(style, found.build.deck.box_length_m)),
        ),
        None => ("–".into(), "", "None: it is too narrow or too low".into()),
    };
    Answer { name: "Box length that is enough".into(), figure, unit, limit }
}

/// The most cells that the box takes.
fn most(found: &Fit, _: Style) -> Answer {
    let (cells, pack) = (&found.together.cells, &found.build.pack);
    Answer {
        name: "Most cells that the box takes".into(),
        figure: plain(cells.room_for, 0),
        unit: "",
        limit: format!(
            "The pack has {}; with {} in series, {} in parallel at most",
            plain(pack.series * pack.parallel, 0),
            plain(pack.series, 0),
            plain(cells.parallel_for, 0)
        ),
    }
}

/// Whether the deck is wide enough for the box.
fn wide(found: &Fit, style: Style) -> String {
    let at = &found.together.layout;
    if at.box_beyond_deck_m <= 0.0 {
        return String::new();
    }
    format!(
        "The box is {} wide outside, {} more than the deck over the wheels. See that the deck is as wide where the box hangs.",
        rough(style, at.box_m[1]),
        rough(style, at.box_beyond_deck_m)
    )
}

/// The board from the side.
pub(super) static SIDE: Drawn = Drawn {
    finding: |found, style| {
        format!(
            "Board from the side: {} under the box, {} sag.",
            rough(style, found.together.deck.road_m),
            rough(style, found.together.deck.sag_m)
        )
    },
    plan: |found, style| side(found).plan(style),
    more: |_, _| Vec::new(),
};

fn side(found: &Fit) -> DeckSide {
    let (build, at, deck) = (&found.build, &found.together.layout, &found.build.deck);
    let [box_length_m, _, box_depth_m] = at.box_m;
    DeckSide {
        wheelbase_m: deck.wheelbase_m,
        wheel_m: build.wheel.diameter_m,
        axle_m: at.axle_up_m,
        deck_m: at.deck_up_m,
        thick_m: deck.thickness_m,
        sag_m: found.together.deck.sag_m,
        box_length_m,
        box_depth_m,
        box_ahead_m: deck.box_ahead_m,
        clear_m: found.together.deck.road_m,
        bump_clear_m: found.together.deck.bump_road_m,
        assumed: !found.together.deck.assumed.is_empty(),
        wheelbase_assumed: !found.given(Slot::Deck, "wheelbase_mm"),
    }
}

/// The box from above.
pub(super) static PLAN: Drawn = Drawn {
    finding: |found, style| {
        let cells = &found.together.cells;
        let count = plain(cells.cells_m.len() as f64, 0);
        let size = format!(
            "{} by {}",
            style.entered_millimetres(cells.cell.diameter_m),
            entered(style, cells.cell.length_m)
        );
        let lie = match cells.lie {
            Lie::Along => "lying along the board",
            Lie::Across => "lying across the board",
            Lie::Standing => "standing on end",
        };
        let [_, _, layers] = cells.counts;
        let layers = if layers > 1.0 {
            format!(" in {} layers, the lowest shown", plain(layers, 0))
        } else {
            String::new()
        };
        if cells.fits {
            format!("Box from above: {count} cells of {size} go in, {lie}{layers}.")
        } else {
            format!(
                "Box from above: {count} cells of {size}, {lie}{layers}, do not go in: {}.",
                short(cells.left_m, style)
            )
        }
    },
    plan: |found, style| plan(found).plan(style),
    more: |found, style| {
        let up = found.together.cells.left_m[2];
        let height = style.entered_millimetres(found.build.deck.box_height_m);
        let room = if up < 0.0 { "Too high by" } else { "Room left, up" };
        vec![("Box, inside height", height), (room, style.rough_millimetres(up.abs()))]
    },
};

fn plan(found: &Fit) -> BoxPlan {
    let cells = &found.together.cells;
    let (d, l) = (cells.cell.diameter_m, cells.cell.length_m);
    let (length_m, width_m, round) = match cells.lie {
        Lie::Along => (l, d, false),
        Lie::Across => (d, l, false),
        Lie::Standing => (d, d, true),
    };
    let lowest = cells.cells_m.iter().map(|at| at[2]).fold(f64::MAX, f64::min);
    let layer = cells.cells_m.iter().filter(|at| at[2] < lowest + 1e-6);
    let item = |at: &[f64; 3]| Item { x_m: at[0], y_m: at[1], length_m, width_m, round };
    let controller = &cells.controller;
    BoxPlan {
        length_m: cells.inside_m[0],
        width_m: cells.inside_m[1],
        cells: layer.map(item).collect(),
        controller: Some(Item {
            x_m: controller.corner_m[0] + controller.size_m[0] / 2.0,
            y_m: controller.corner_m[1] + controller.size_m[1] / 2.0,
            length_m: controller.size_m[0],
            width_m: controller.size_m[1],
            round: false,
        }),
        used_length_m: cells.used_m[0],
        used_width_m: cells.used_m[1],
        assumed: !cells.assumed.is_empty(),
    }
}
