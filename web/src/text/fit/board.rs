//! Deck, enclosure and road; the cells inside; how it leans.

use super::concern::wheel;
use super::length::length;
use super::{at_least, at_most, degrees, entered, least, rough, short, sizes, tenth, unit};
use crate::chart::plain;
use crate::text::{Answer, Style};
use pitchline_core::fit::{BoxPlan, DeckFit, Layout, Lean, Lie, SagFrom};
use pitchline_core::{Build, Unit};

/// What the enclosure has under it: too little is said as that.
fn under(name: &str, room_m: f64, limit: String, style: Style) -> Answer {
    if room_m < 0.0 {
        return length(&format!("{name}: shortfall"), room_m, limit, style);
    }
    length(name, room_m, limit, style)
}

/// Enclosure to road.
#[must_use]
pub fn road(deck: &DeckFit, style: Style) -> Answer {
    under("Enclosure to road, standing still", deck.road_m, String::new(), style)
}

/// The same at the bottom of a bump. `bump_m` is its height.
#[must_use]
pub fn bump(deck: &DeckFit, bump_m: f64, style: Style) -> Answer {
    let limit = format!("Rolling off a bump of {}", entered(style, bump_m));
    under("Enclosure to road, off a bump", deck.bump_road_m, limit, style)
}

/// How far the deck sags.
#[must_use]
pub fn sag(deck: &DeckFit, style: Style) -> Answer {
    let from = match deck.sag_from {
        SagFrom::Measured => "From the sag you measured",
        SagFrom::Stiffness => "From the deck's stiffness",
    };
    length("Sag under the rider", deck.sag_m, from.into(), style)
}

/// Which sizes of deck and enclosure were assumed.
#[must_use]
pub fn deck_assumed(deck: &DeckFit) -> String {
    match sizes(&deck.assumed) {
        sizes if sizes.is_empty() => sizes,
        sizes => format!("Assumed here: {sizes}."),
    }
}

/// How steep a crest it rolls over.
#[must_use]
pub fn crest(deck: &DeckFit, style: Style) -> String {
    deck.break_over_deg.map_or_else(String::new, |angle| {
        format!("It clears a crest where the slope changes by up to {}.", degrees(style, angle))
    })
}

/// What the board from the side shows.
#[must_use]
pub fn board_finding(deck: &DeckFit, style: Style) -> String {
    let sag = rough(style, deck.sag_m);
    if deck.road_m < 0.0 {
        let below = at_least(style, -deck.road_m);
        return format!(
            "Board from the side: the enclosure reaches {below} below the road, with {sag} of sag."
        );
    }
    let room = rough(style, deck.road_m);
    format!("Board from the side: {room} under the enclosure, {sag} of sag.")
}

/// Whether the pack goes in, in a few words.
#[must_use]
pub fn cells(plan: &BoxPlan, style: Style) -> String {
    if plan.fits {
        let left = plan.left_m.get(plan.tightest).copied().unwrap_or(0.0);
        format!("pack fits, {} to spare", unit(style, &super::room(style, left)))
    } else {
        format!("pack {}", short(plan.left_m, style))
    }
}

/// The least room inside.
#[must_use]
pub fn inside(plan: &BoxPlan, style: Style) -> Answer {
    let left = plan.left_m.get(plan.tightest).copied().unwrap_or(0.0);
    let way = ["length", "width", "height"].get(plan.tightest).copied().unwrap_or_default();
    let name = if left < 0.0 {
        format!("Shortfall in the enclosure: {way}")
    } else {
        format!("Least room left in the enclosure: {way}")
    };
    length(&name, left, String::new(), style)
}

/// The length that would do. `length_m` is the enclosure's inside length.
#[must_use]
pub fn length_needed(plan: &BoxPlan, length_m: f64, style: Style) -> Answer {
    let (figure, unit, limit) = match plan.length_for_m {
        Some(length) => (
            least(style, length),
            style.units.shown(Unit::Millimetre).symbol,
            format!("This one has {}", at_most(style, length_m)),
        ),
        None => ("–".into(), "", "Too narrow or too shallow at any length".into()),
    };
    Answer { name: "Enclosure length needed, inside".into(), figure, unit, limit }
}

/// The most cells that go in.
#[must_use]
pub fn most_cells(plan: &BoxPlan, build: &Build) -> Answer {
    let pack = &build.pack;
    Answer {
        name: "Most cells that fit".into(),
        figure: plain(plan.room_for, 0),
        unit: "",
        limit: format!(
            "The pack has {}. With {} in series, at most {} in parallel.",
            plain(pack.series * pack.parallel, 0),
            plain(pack.series, 0),
            plain(plan.parallel_for, 0)
        ),
    }
}

/// Whether the deck is wide enough for the enclosure.
#[must_use]
pub fn wide(at: &Layout, style: Style) -> String {
    if at.box_beyond_deck_m <= 0.0 {
        return String::new();
    }
    format!(
        "The enclosure is {} wide outside, {} more than the deck at the wheels. Check that the deck is that wide where the enclosure hangs.",
        rough(style, at.box_m[1]),
        rough(style, at.box_beyond_deck_m)
    )
}

/// What the enclosure from above shows.
#[must_use]
pub fn cells_finding(plan: &BoxPlan, style: Style) -> String {
    let cells = format!(
        "{} cells of {} by {}",
        plain(plan.cells_m.len() as f64, 0),
        style.entered_millimetres(plan.cell.diameter_m),
        entered(style, plan.cell.length_m)
    );
    let lie = match plan.lie {
        Lie::Along => "lying lengthways",
        Lie::Across => "lying across the board",
        Lie::Standing => "standing upright",
    };
    let [_, _, layers] = plan.counts;
    let layers = if layers > 1.0 {
        format!(", bottom layer of {}", plain(layers, 0))
    } else {
        String::new()
    };
    if plan.fits {
        format!("Enclosure from above{layers}. All {cells} fit, {lie}.")
    } else {
        format!("Enclosure from above{layers}. All {cells}, {lie}: {}.", short(plan.left_m, style))
    }
}

/// What cannot be drawn from above. `height_m` is the enclosure's inside height.
#[must_use]
pub fn cells_more(plan: &BoxPlan, height_m: f64, style: Style) -> Vec<(&'static str, String)> {
    let up = plan.left_m[2];
    let room = if up < 0.0 { "Too tall by" } else { "Room left above" };
    vec![
        ("Enclosure height, inside", style.entered_millimetres(height_m)),
        (room, style.rough_millimetres(up.abs())),
    ]
}

/// The tightest turn.
#[must_use]
pub fn turn(lean: &Lean, style: Style) -> Answer {
    let turn = &lean.furthest;
    let limit = format!(
        "At {} of lean, the front steers {} and the rear {}",
        degrees(style, turn.lean_deg),
        degrees(style, turn.steer_front_deg),
        degrees(style, turn.steer_rear_deg)
    );
    let straight = || "straight on".into();
    let figure = turn.radius_m.map_or_else(straight, |r| style.value(r, Unit::Metre, 2));
    let unit = if turn.radius_m.is_some() { style.units.shown(Unit::Metre).symbol } else { "" };
    Answer { name: "Tightest turn, radius".into(), figure, unit, limit }
}

/// At which lean the deck meets a wheel. `most_deg` is the trucks' furthest.
#[must_use]
pub fn bite(lean: &Lean, most_deg: f64, style: Style) -> Answer {
    let name = "Lean at which the deck meets a wheel".into();
    match lean.first_bite() {
        None => Answer { name, figure: "never".into(), unit: "", limit: String::new() },
        Some((at, angle)) => Answer {
            name,
            figure: tenth(style, angle, false),
            unit: "°",
            limit: format!(
                "At a {} wheel. The trucks lean to {}°.",
                wheel(at),
                tenth(style, most_deg, true)
            ),
        },
    }
}

/// A deck that passes between the wheels needs no riser to clear them from above.
fn is_between(lean: &Lean, riser_m: f64) -> bool {
    riser_m < lean.riser_m && !lean.bites
}

/// The riser that it takes. `riser_m` is the one on the board.
#[must_use]
pub fn riser(lean: &Lean, riser_m: f64, style: Style) -> Answer {
    let (name, why) = if is_between(lean, riser_m) {
        ("Riser to lift the deck over the wheels", ". The deck passes between the wheels.")
    } else {
        ("Minimum riser to avoid wheel bite", "")
    };
    Answer {
        name: name.into(),
        figure: least(style, lean.riser_m.max(0.0)),
        unit: style.units.shown(Unit::Millimetre).symbol,
        limit: format!("On the board: {}{why}", at_most(style, riser_m)),
    }
}

/// The same in a few words.
#[must_use]
pub fn lean(lean: &Lean, riser_m: f64, style: Style) -> String {
    if is_between(lean, riser_m) {
        return "no wheel bite".into();
    }
    let needed = at_least(style, lean.riser_m.max(0.0));
    format!("riser: needs {needed}, has {}", at_most(style, riser_m))
}

/// Which bushings, and how to try them.
#[must_use]
pub fn bushing(lean: &Lean, style: Style) -> String {
    format!(
        "Bushings for this rider: about {}A, harder for speed (rule of thumb). Try leaning and turning at walking pace, on the wheels you ride.",
        style.fixed(lean.bushing_shore_a, 0)
    )
}
