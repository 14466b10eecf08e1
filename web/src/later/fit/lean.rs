//! How it leans and turns, and where the deck meets a tyre.

use super::found::{Asked, Found};
use super::view::{Shows, degrees, headlines, least, line, rough};
use crate::component::Headline;
use crate::dom::{Node, el};
use crate::text::Style;
use pitchline_core::Unit;
use pitchline_core::fit::{FrameHeadline, WheelAt};

pub(super) fn lean(asked: &Asked) -> Node {
    Node::from(vec![
        el("h3").with("Lean and turn").into(),
        headlines(
            asked,
            &[
                (Shows::Frame(FrameHeadline::Turn), turn),
                (Shows::Frame(FrameHeadline::Bite(WheelAt::Rear)), bite),
                (Shows::Frame(FrameHeadline::Riser), riser),
            ],
        ),
        line(asked, bushing),
    ])
}

fn turn(found: &Found, style: Style) -> Headline {
    let turn = &found.lean.furthest;
    let shown = style.units.shown(Unit::Metre);
    let limit = format!(
        "At a lean of {}: the front steers {}, the rear {}",
        degrees(style, turn.lean_deg),
        degrees(style, turn.steer_front_deg),
        degrees(style, turn.steer_rear_deg)
    );
    let figure =
        turn.radius_m.map_or_else(|| "straight on".into(), |r| style.value(r, Unit::Metre, 2));
    let unit = if turn.radius_m.is_some() { shown.symbol } else { "" };
    Headline { name: "Tightest turn, radius".into(), figure, unit, limit }
}

/// The lesser lean at which deck and tyre meet.
pub(super) fn bites_first(found: &Found) -> Option<(f64, &'static str)> {
    let front = found.lean.bite_front_deg.map(|angle| (angle, "front"));
    let rear = found.lean.bite_rear_deg.map(|angle| (angle, "rear"));
    match (front, rear) {
        (Some(front), Some(rear)) => Some(if front.0 < rear.0 { front } else { rear }),
        (front, rear) => front.or(rear),
    }
}

fn bite(found: &Found, style: Style) -> Headline {
    let most = found.build.truck.max_lean_deg;
    let name = "Deck meets a tyre at a lean of".into();
    match bites_first(found) {
        None => Headline { name, figure: "never".into(), unit: "", limit: String::new() },
        Some((angle, which)) => Headline {
            name,
            figure: style.fixed(angle, 0),
            unit: "°",
            limit: format!("A {which} wheel; the trucks lean to {}", degrees(style, most)),
        },
    }
}

fn riser(found: &Found, style: Style) -> Headline {
    Headline {
        name: "Least riser without wheel bite".into(),
        figure: least(style, found.lean.riser_m.max(0.0)),
        unit: style.units.shown(Unit::Millimetre).symbol,
        limit: format!("On the board: {}", rough(style, found.build.deck.riser_m)),
    }
}

fn bushing(found: &Found, style: Style) -> String {
    format!(
        "Bushings for this rider: about {}A, harder for speed. Common practice, no source. Try lean and turn at walking pace, with the wheels you ride.",
        style.fixed(found.lean.bushing_shore_a, 0)
    )
}
