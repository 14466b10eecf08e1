//! How it leans and turns, and where the deck meets a tyre.

use super::view::{Answered, Headlines, Line, Shows, at_most, degrees, least, tenth};
use crate::app::Fit;
use crate::text::{Answer, Style};
use leptos::prelude::*;
use pitchline_core::Unit;
use pitchline_core::fit::{FrameHeadline, WheelAt};

/// The headlines, each with what its working leads to.
pub(super) const HEADLINES: [Answered; 3] = [
    (Shows::Frame(FrameHeadline::Turn), turn),
    (Shows::Frame(FrameHeadline::FirstBite), bite),
    (Shows::Frame(FrameHeadline::Riser), riser),
];

/// How it leans and turns.
#[component]
pub(super) fn Leaning() -> impl IntoView {
    view! {
        <h3>"Lean and turn"</h3>
        <Headlines list=&HEADLINES />
        <Line say=bushing />
    }
}

fn turn(found: &Fit, style: Style) -> Answer {
    let turn = &found.together.lean.furthest;
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
    Answer { name: "Tightest turn, radius".into(), figure, unit, limit }
}

/// What a wheel is called.
pub(super) fn wheel(at: WheelAt) -> &'static str {
    match at {
        WheelAt::Front => "front",
        WheelAt::Rear => "rear",
    }
}

pub(super) fn bite(found: &Fit, style: Style) -> Answer {
    let most = found.build.truck.max_lean_deg;
    let name = "Deck meets a tyre at a lean of".into();
    match found.together.lean.first_bite() {
        None => Answer { name, figure: "never".into(), unit: "", limit: String::new() },
        Some((at, angle)) => Answer {
            name,
            figure: tenth(style, angle, false),
            unit: "°",
            limit: format!(
                "A {} wheel; the trucks lean to {}°",
                wheel(at),
                tenth(style, most, true)
            ),
        },
    }
}

pub(super) fn riser(found: &Fit, style: Style) -> Answer {
    let (enough, riser) = (found.together.lean.riser_m, found.build.deck.riser_m);
    // A deck that passes between the tyres needs no riser to clear them from above.
    let (name, why) = if riser < enough && !found.together.lean.bites {
        ("Riser that lifts the deck over the tyres", ", enough between them")
    } else {
        ("Least riser without wheel bite", "")
    };
    Answer {
        name: name.into(),
        figure: least(style, enough.max(0.0)),
        unit: style.units.shown(Unit::Millimetre).symbol,
        limit: format!("On the board: {}{why}", at_most(style, riser)),
    }
}

fn bushing(found: &Fit, style: Style) -> String {
    format!(
        "Bushings for this rider: about {}A, harder for speed. Common practice, no source. Try lean and turn at walking pace, with the wheels you ride.",
        style.fixed(found.together.lean.bushing_shore_a, 0)
    )
}
