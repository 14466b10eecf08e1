//! Deck and box: sag, ground clearance, crests, and the cells in the enclosure.

use super::found::{Asked, Found};
use super::view::{Drawn, Shows, drawn, faults, headlines, length, line, rough};
use crate::chart::plain;
use crate::component::{Headline, caution};
use crate::dom::{Node, el};
use crate::drawing::{BoxPlan, DeckSide, Item};
use crate::text::{Style, page};
use pitchline_core::Unit;
use pitchline_core::fit::{FrameHeadline, Lie, SagFrom};
use pitchline_core::physics::frame::DECK_HEIGHT;

pub(super) fn deck(asked: &Asked) -> Node {
    Node::from(vec![
        el("h3").with("Deck and box").into(),
        faults(asked, amiss),
        headlines(
            asked,
            &[
                (Shows::Frame(FrameHeadline::Road), road),
                (Shows::Frame(FrameHeadline::BumpRoad), bump),
                (Shows::Frame(FrameHeadline::Sag), sag),
            ],
        ),
        drawn(asked, SIDE),
        line(asked, crest),
        el("h4").with("Cells in the box").into(),
        headlines(asked, &[(Shows::Frame(FrameHeadline::BoxRoom), room)]),
        drawn(asked, PLAN),
        caution(page::CAUTION_BOX),
    ])
}

fn assumed(found: &Found) -> &'static str {
    if found.deck.assumed.is_empty() { "" } else { "Some sizes assumed" }
}

fn road(found: &Found, style: Style) -> Headline {
    length("Box to the road, standing still", found.deck.road_m, assumed(found).into(), style)
}

fn bump(found: &Found, style: Style) -> Headline {
    let limit = format!("Off a bump of {}", rough(style, found.build.place.bump_m));
    length("Box to the road, at the bottom of a bump", found.deck.bump_road_m, limit, style)
}

fn sag(found: &Found, style: Style) -> Headline {
    let from = match found.deck.sag_from {
        SagFrom::Measured => "From the sag that was measured",
        SagFrom::Stiffness => "From the deck's stiffness",
    };
    length("Sag under the rider", found.deck.sag_m, from.into(), style)
}

fn amiss(found: &Found, style: Style) -> Vec<String> {
    let mut said = Vec::new();
    let deck = &found.deck;
    if deck.road_m < 0.0 {
        said.push(format!(
            "The box drags: {} too low under the rider.",
            rough(style, -deck.road_m)
        ));
    } else if deck.bump_road_m < 0.0 {
        said.push(format!(
            "Off a bump of {} the box strikes the road: {} too low.",
            rough(style, found.build.place.bump_m),
            rough(style, -deck.bump_road_m)
        ));
    }
    if !found.cells.fits {
        said.push(format!("The pack does not go in the box: {}.", short(found, style)));
    }
    said
}

/// By how much the contents are too large, each way.
fn short(found: &Found, style: Style) -> String {
    let ways = ["too long", "too wide", "too high"];
    let over = found.cells.left_m.iter().zip(ways).filter(|(left, _)| **left < 0.0);
    over.map(|(left, way)| format!("{} {way}", rough(style, -left))).collect::<Vec<_>>().join(", ")
}

fn crest(found: &Found, style: Style) -> String {
    found.deck.break_over_deg.map_or_else(String::new, |angle| {
        format!(
            "It rolls over a crest where two slopes meet at up to {}\u{a0}° without touching.",
            style.fixed(angle, 0)
        )
    })
}

fn room(found: &Found, style: Style) -> Headline {
    let cells = &found.cells;
    let ways = ["along", "across", "up"];
    let left = cells.left_m.get(cells.tightest).copied().unwrap_or(0.0);
    let way = ways.get(cells.tightest).copied().unwrap_or_default();
    let limit = format!("Room for {} cells of that size", plain(cells.room_for, 0));
    length(&format!("Least room left in the box, {way}"), left, limit, style)
}

pub(super) const SIDE: Drawn = Drawn {
    finding: |found, style| {
        format!(
            "Board from the side: {} under the box, {} sag.",
            rough(style, found.deck.road_m),
            rough(style, found.deck.sag_m)
        )
    },
    plan: |found, style| side(found).plan(style),
    more: |_, _| Vec::new(),
};

fn side(found: &Found) -> DeckSide {
    let (build, deck) = (&found.build, &found.build.deck);
    let axle_m = build.wheel.radius_m();
    DeckSide {
        wheelbase_m: deck.wheelbase_m,
        wheel_m: build.wheel.diameter_m,
        axle_m,
        deck_m: DECK_HEIGHT.of([axle_m, build.truck.height_m, deck.riser_m]),
        thick_m: deck.thickness_m,
        sag_m: found.deck.sag_m,
        box_length_m: deck.box_length_m + 2.0 * deck.box_wall_m,
        box_depth_m: deck.box_height_m + deck.box_wall_m,
        box_ahead_m: deck.box_ahead_m,
        clear_m: found.deck.road_m,
        bump_clear_m: found.deck.bump_road_m,
        assumed: !found.deck.assumed.is_empty(),
    }
}

pub(super) const PLAN: Drawn = Drawn {
    finding: |found, style| {
        let cells = &found.cells;
        let count = plain(cells.cells_m.len() as f64, 0);
        let size = format!(
            "{} by {}",
            style.millimetres(cells.cell.diameter_m),
            rough(style, cells.cell.length_m)
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
                short(found, style)
            )
        }
    },
    plan: |found, style| plan(found).plan(style),
    more: |found, style| {
        let up = found.cells.left_m[2];
        let height = style.quantity(found.build.deck.box_height_m * 1e3, Unit::Millimetre, 3);
        vec![("Box, inside height", height), ("Room left, up", rough(style, up))]
    },
};

fn plan(found: &Found) -> BoxPlan {
    let cells = &found.cells;
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
        used_length_m: cells.inside_m[0] - cells.left_m[0],
        used_width_m: cells.inside_m[1] - cells.left_m[1],
        assumed: !cells.assumed.is_empty(),
    }
}
