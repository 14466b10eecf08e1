//! Words of "How fast?".

mod pairing;

use super::answer::bound;
use super::page::Warning;
use super::{Style, words};
use pitchline_core::ride::LET_GO_M_S;
use pitchline_core::{Limit, Unit};

pub use pairing::*;

/// The first answer.
pub const TOP: &str = "On the flat, full pack";
/// Of a board that does not move.
pub const NO_PUSH: &str = "No push, so there's no curve.";
/// The fold of the gear map.
pub const PAIRINGS: &str = "Which pulleys and wheels?";
/// The fold of ride modes and grades.
pub const MODES: &str = "In each ride mode, and uphill";
/// The fold of sprints and braking.
pub const RUNS: &str = "Speeding up and braking";
/// Over speeding up.
pub const SPEEDING_UP: &str = "Speeding up";
/// Over braking.
pub const BRAKING: &str = "Braking with the motors alone";
/// Heads of the table of modes and grades.
pub const MODES_HEADS: [&str; 3] = ["With a full pack", "Top speed", "Limit"];
/// What the table of the picture opens with.
pub const PUSH_TABLE: &str = "Table of push by speed";
/// Its caption.
pub const PUSH_CAPTION: &str = "Push against road load";
/// Lines of the picture: the board's push, and what the flat takes of it.
pub const PUSH_LINES: [&str; 2] = ["push", "road load"];
/// Marks where they meet.
pub const TOP_MARK: &str = "top speed";
/// Caution, by the answer.
pub const CAUTION: Warning = Warning {
    short: "Don't ride as fast as the board can go. Keep to a speed you can stop from, wear a helmet and pads, and follow local law.",
    more: "Many places limit or ban powered boards on roads and paths. Brakes, belts and grip can fail without warning, and the faster you go, the farther you slide.",
};
/// Caution by braking.
pub const CAUTION_BRAKING: Warning = Warning {
    short: "Motor braking can fail without warning. Try it at low speed first, and always be able to stop without it.",
    more: "A full pack absorbs little or no braking energy, a pack or controller can cut out, and a belt can break or skip teeth.",
};

/// The second answer; `share` is the charge that counts as nearly empty.
#[must_use]
pub fn nearly_empty(share: f64, style: Style) -> String {
    format!("Nearly empty, {} left", style.entered_percent(share))
}

/// The third, for the rider's slope.
#[must_use]
pub fn up_your_hill(grade: f64, style: Style) -> String {
    format!("Up your {} hill", style.entered_percent(grade))
}

/// A row of the table of grades.
#[must_use]
pub fn up(grade: f64, style: Style) -> String {
    format!("Uphill, {}", style.entered_percent(grade))
}

/// A row of the table of modes.
#[must_use]
pub fn mode(name: &str) -> String {
    format!("Mode: {name}")
}

/// Top speed of each ride mode in m/s, the gentlest first, in a few words.
#[must_use]
pub fn modes_hint([low, mid, high]: [f64; 3], style: Style) -> String {
    let figure = |m_s| style.fixed(style.shown_si(m_s, Unit::KilometrePerHour), 0);
    format!("{}, {}, {}", figure(low), figure(mid), style.speed_unit(high))
}

/// What the picture shows: push at rest, N, and what holds it; top speed, m/s, and what binds.
#[must_use]
pub fn push(first: (f64, Limit), top: (f64, Limit), style: Style) -> String {
    format!(
        "Push starts at {} ({}) and meets the road load (rolling and air resistance) on the flat at {} ({}).",
        style.si(first.0, Unit::Newton, 2),
        words::limit(first.1),
        style.speed_unit(top.0),
        words::limit(top.1),
    )
}

/// The axis of push, by its unit.
#[must_use]
pub fn push_axis(force: &str) -> String {
    format!("push, {force}")
}

/// What stands at the cursor.
#[must_use]
pub fn push_at(speed_m_s: f64, push_n: f64, limit: Limit, flat_n: f64, style: Style) -> String {
    format!(
        "{}: push {} ({}), road load on the flat {}",
        style.speed_unit(speed_m_s),
        style.si(push_n.max(0.0), Unit::Newton, 2),
        words::limit(limit),
        style.si(flat_n, Unit::Newton, 2)
    )
}

/// Heads of the table of push by speed.
#[must_use]
pub fn push_heads(style: Style) -> Vec<String> {
    let (speed, force) =
        (style.units.shown(Unit::KilometrePerHour).symbol, style.units.shown(Unit::Newton).symbol);
    vec![
        format!("Speed, {speed}"),
        format!("Push, {force}"),
        "Limit".into(),
        format!("Road load, {force}"),
    ]
}

/// Over the sprints; `limit` is what holds the board back at first.
#[must_use]
pub fn sprint(limit: Limit) -> String {
    if words::is_rating(limit) {
        return format!(
            "From rest, within the {}. Full throttle would exceed it.",
            words::limit(limit)
        );
    }
    format!("From rest at full throttle. First limit: {}.", words::limit_short(limit))
}

/// Caption and heads of the sprints.
pub const SPRINTS: (&str, [&str; 4]) =
    ("From rest, on the flat", ["Goal", "Time, s", "Distance", "Speed there"]);

/// A sprint to a speed, m/s.
#[must_use]
pub fn to_speed(speed_m_s: f64, style: Style) -> String {
    format!("To {}", style.speed_unit(speed_m_s))
}

/// A sprint over a distance, m.
#[must_use]
pub fn first_distance(way_m: f64, style: Style) -> String {
    format!("The first {}", style.way(way_m))
}

/// Of a goal that is not reached: the speed it got to, m/s.
#[must_use]
pub fn not_reached(speed_m_s: f64, style: Style) -> String {
    format!("not reached, {} at most", style.speed_unit(speed_m_s))
}

/// In a few words: how soon the rider's speed is there.
#[must_use]
pub fn sprint_hint(speed_m_s: f64, time_s: f64, style: Style) -> String {
    format!("{} in {}\u{a0}s", style.speed_unit(speed_m_s), style.fixed(time_s, 1))
}

/// Over braking.
#[must_use]
pub fn braked(style: Style) -> String {
    format!(
        "From your cruising speed on the flat, including one second to react. Motors stop braking below {}: use your foot for the rest. Reaction time and wet grip are rules of thumb.",
        style.speed_unit(LET_GO_M_S)
    )
}

/// Names of the two stops.
pub const STOPS: [&str; 2] = ["Dry road, half-full pack", "Dry road, full pack"];
/// Caption of all stops, of a board with one motor or more.
#[must_use]
pub fn stops_caption(one_motor: bool) -> &'static str {
    if one_motor {
        "Distance to slow to walking pace. No motor: after the belt breaks, or the controller or pack cuts out."
    } else {
        "Distance to slow to walking pace. One motor: after a belt breaks. None: after the controller or pack cuts out."
    }
}
/// Of a board that nothing slows.
pub const NEVER: &str = "never";
/// Where no motor brakes.
pub const NOTHING_BRAKES: &str = "no motor braking";

/// What a stop is from, and what keeps the motors from braking harder.
#[must_use]
pub fn stop_from(speed_m_s: f64, limit: Limit, style: Style) -> String {
    let speed = style.speed_unit(speed_m_s);
    match limit {
        Limit::Empty => format!("From {speed}, {NOTHING_BRAKES}"),
        limit => format!("From {speed}. {}", bound(limit)),
    }
}

/// Road and pack of a stop.
#[must_use]
pub fn road_and_pack(wet: bool, full: bool) -> String {
    let road = if wet { "wet" } else { "dry" };
    let pack = if full { "full" } else { "half full" };
    format!("{road}, {pack}")
}

/// Heads of the stops.
#[must_use]
pub fn stops_heads(style: Style) -> Vec<String> {
    let metre = style.units.shown(Unit::Metre).symbol;
    let least = style.speed_unit(LET_GO_M_S);
    vec![
        "Road, pack".into(),
        "Motors braking".into(),
        format!("Total, {metre}"),
        format!("Reacting, {metre}"),
        format!("Down to {least}, {metre}"),
        "Limit".into(),
    ]
}
