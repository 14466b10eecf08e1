//! Deck and enclosure: sag, ground clearance, crests, and the cells inside.

use super::view::{Drawn, Headlines, Line, Say, ToScale};
use crate::app::Fit;
use crate::component::Caution;
use crate::drawing::{BoxPlan, DeckSide, Item};
use crate::text::{Answer, Style, fit as words};
use leptos::prelude::*;
use pitchline_core::Slot;
use pitchline_core::fit::Lie;

/// Deck and enclosure.
#[component]
pub(super) fn Deck() -> impl IntoView {
    const BELOW: &[Say<Answer>] = &[road, bump, sag];
    const INSIDE: &[Say<Answer>] = &[inside, length_needed, most_cells];
    view! {
        <Headlines list=INSIDE />
        <h2>{words::CELLS}</h2>
        <ToScale of=&PLAN />
        <Line say=|found, style| words::wide(&found.together.layout, style) />
        <Caution text=words::CAUTION_CELLS />
        <h2>{words::UNDER}</h2>
        <Headlines list=BELOW />
        <ToScale of=&SIDE />
        <Line say=|found, _| words::deck_assumed(&found.together.deck) />
        <Line say=|found, style| words::crest(&found.together.deck, style) />
    }
}

pub(super) fn hint(found: &Fit, style: Style) -> String {
    words::cells(&found.together.cells, style)
}

pub(super) fn road(found: &Fit, style: Style) -> Answer {
    words::road(&found.together.deck, style)
}

pub(super) fn bump(found: &Fit, style: Style) -> Answer {
    words::bump(&found.together.deck, found.build.place.bump_m, style)
}

pub(super) fn sag(found: &Fit, style: Style) -> Answer {
    words::sag(&found.together.deck, style)
}

pub(super) fn inside(found: &Fit, style: Style) -> Answer {
    words::inside(&found.together.cells, style)
}

fn length_needed(found: &Fit, style: Style) -> Answer {
    words::length_needed(&found.together.cells, found.build.deck.box_length_m, style)
}

fn most_cells(found: &Fit, _: Style) -> Answer {
    words::most_cells(&found.together.cells, &found.build)
}

/// The board from the side.
pub(super) static SIDE: Drawn = Drawn {
    label: words::BOARD_TABLE,
    finding: |found, style| words::board_finding(&found.together.deck, style),
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

/// The enclosure from above.
pub(super) static PLAN: Drawn = Drawn {
    label: words::CELLS_TABLE,
    finding: |found, style| words::cells_finding(&found.together.cells, style),
    plan: |found, style| plan(found).plan(style),
    more: |found, style| {
        words::cells_more(&found.together.cells, found.build.deck.box_height_m, style)
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
