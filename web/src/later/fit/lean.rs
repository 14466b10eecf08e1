//! How it leans and turns, and where the deck meets a tyre.

use super::found::{Asked, Found};
use super::view::{Shows, faults, headlines, length, line, rough};
use crate::component::Headline;
use crate::dom::{Node, el};
use crate::text::Style;
use pitchline_core::Unit;
use pitchline_core::fit::{FrameHeadline, WheelAt};

pub(super) fn lean(asked: &Asked) -> Node {
    Node::from(vec![
        el("h3").with("Lean and turn").into(),
        faults(asked, amiss),
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

fn degrees(style: Style, angle: f64) -> String {
    format!("{}\u{a0}°", style.fixed(angle, 0))
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
fn least(found: &Found) -> Option<(f64, &'static str)> {
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
    match least(found) {
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
    let has = found.build.deck.riser_m;
    let limit = format!("On the board: {}", rough(style, has));
    length("Least riser without wheel bite", found.lean.riser_m.max(0.0), limit, style)
}

fn amiss(found: &Found, style: Style) -> Vec<String> {
    let Some((angle, which)) = least(found).filter(|_| found.lean.bites) else {
        return Vec::new();
    };
    vec![format!(
        "Wheel bite: leaning {} the deck touches a {which} wheel, which stops it at once and throws the rider. A riser of {} only just keeps them apart up to the {} that the trucks lean: take some millimetres more, and lean the board by hand as far as it goes before you ride.",
        degrees(style, angle),
        rough(style, found.lean.riser_m),
        degrees(style, found.build.truck.max_lean_deg),
    )]
}

fn bushing(found: &Found, style: Style) -> String {
    format!(
        "Bushings for this rider: about {}A, harder for speed. Common practice, no source. Try lean and turn at walking pace, with the wheels you ride.",
        style.fixed(found.lean.bushing_shore_a, 0)
    )
}
