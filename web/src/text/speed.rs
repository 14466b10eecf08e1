//! Words of "How fast?".

use super::answer::bound;
use super::page::Warning;
use super::{Style, words};
use pitchline_core::fit::{Between, MisfitKind};
use pitchline_core::ride::LET_GO_M_S;
use pitchline_core::{Limit, Unit};

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

/// What the picture shows: push at rest, N, and what holds it; top speed, m/s, and what binds.
#[must_use]
pub fn push(first: (f64, Limit), top: (f64, Limit), style: Style) -> String {
    format!(
        "Push starts at {} ({}) and meets the road load on the flat at {} ({}).",
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

/// What the gear map says of its use.
pub const TAP: &str = "Tap a pairing to use it.";
/// What the keys do on it.
pub const ALONG_MAP: &str = "Arrow keys move between the pairings. Enter uses one.";
/// Labels of what it shows and of the wheel.
pub const MAP_LABELS: [&str; 2] = ["Show", "Wheel on the board"];
/// The first thing that it shows; the others follow.
pub const MAP_SPEED: &str = "Top speed on the flat";
/// Titles of its rows and columns.
pub const MAP_AXES: [&str; 2] = ["wheel pulley, teeth", "motor pulley, teeth"];
/// Of parts with other fittings.
pub const NO_MATCH: &str = "These parts don't fit together.";
/// The same in its key and its table.
pub const NO_MATCH_KEY: &str = "doesn't fit";
/// Of a catalogue without pulleys.
pub const NO_PULLEYS: &str = "This catalogue has no pulleys.";
/// What its table opens with.
pub const MAP_TABLE: &str = "Table of pairings";
/// On the button under a suggestion.
pub const USE: &str = "Use this pairing";

/// The second, by the rider's hill.
#[must_use]
pub fn map_hill_speed(grade: &str) -> String {
    format!("Top speed up your {grade} hill")
}

/// The third, by the rider's speed.
#[must_use]
pub fn map_distance(cruise: &str) -> String {
    format!("Distance at {cruise}")
}

/// The fourth, at a speed in m/s.
#[must_use]
pub fn map_hill(speed_m_s: f64, style: Style) -> String {
    format!("Steepest hill at {}", style.speed_unit(speed_m_s))
}

/// Caption of its table: with every wheel, or with the one on the board alone.
#[must_use]
pub fn map_caption(all: bool) -> &'static str {
    if all { "Every available pairing" } else { "Every pairing with the wheel on the board" }
}

/// Heads of its table.
#[must_use]
pub fn map_heads(style: Style) -> Vec<String> {
    let speed = style.units.shown(Unit::KilometrePerHour).symbol;
    vec![
        "Wheel".into(),
        "Wheel pulley".into(),
        "Motor pulley".into(),
        format!("Top speed, {speed}"),
        format!("Up your hill, {speed}"),
        format!("Distance, {}", style.units.shown(Unit::Kilometre).symbol),
        "Steepest, %".into(),
    ]
}

/// What is on the board, in a few words.
#[must_use]
pub fn pairing_hint(motor: &str, wheel: &str) -> String {
    format!("{motor}/{wheel} teeth now")
}

/// Top speed of each ride mode in m/s, the gentlest first, in a few words.
#[must_use]
pub fn modes_hint([low, mid, high]: [f64; 3], style: Style) -> String {
    let figure = |m_s| style.fixed(style.shown_si(m_s, Unit::KilometrePerHour), 0);
    format!("{}, {}, {}", figure(low), figure(mid), style.speed_unit(high))
}

/// How many pairings hold the rider's speed up the rider's hill.
#[must_use]
pub fn met(met: usize, all: usize, cruise: &str, grade: &str) -> String {
    match met {
        0 if all == 1 => {
            format!("The only available pairing can't hold {cruise} up your {grade} hill.")
        }
        0 => format!("None of the {all} available pairings holds {cruise} up your {grade} hill."),
        1 if all == 1 => format!(
            "With a full pack, the only available pairing holds {cruise} up your {grade} hill."
        ),
        1 => format!("With a full pack, 1 of {all} pairings holds {cruise} up your {grade} hill."),
        _ => {
            format!("With a full pack, {met} of {all} pairings hold {cruise} up your {grade} hill.")
        }
    }
}

/// Of more parts of a kind than the map takes: "motor pulley", those it shows, and all.
#[must_use]
pub fn left_out(kind: &str, shown: usize, all: usize) -> String {
    format!("The map shows the {shown} {kind}s closest in size to yours, of {all} available.")
}

/// A pairing in words.
#[derive(Clone, Debug, Default)]
pub struct Pairing {
    /// Teeth of the motor pulley.
    pub motor: String,
    /// Teeth of the wheel pulley.
    pub wheel_pulley: String,
    /// Name of the wheel.
    pub wheel: String,
    /// How far it goes, with its unit.
    pub far: String,
    /// What it climbs, with its unit.
    pub climbs: String,
    /// The rider's speed and hill, with their units, where it holds the one up the other.
    pub holds: Option<(String, String)>,
    /// Whether it is on the board.
    pub here: bool,
    /// How many go about as far as the farthest, this one among them; none where it goes less far.
    pub alike: Option<usize>,
    /// Whether what it breaks was the least that any breaks.
    pub breaks: bool,
}

impl Pairing {
    /// What is suggested, and why.
    #[must_use]
    pub fn said(&self) -> String {
        let Self { motor, wheel_pulley, wheel, far, climbs, holds, here, alike, breaks } = self;
        let lead = if *here { "You already have the best one" } else { "Suggested" };
        let why = match alike {
            Some(1) if *breaks => "It goes farthest.".into(),
            Some(1) => "It goes farthest of those that fit.".into(),
            Some(n) if *breaks => format!(
                "{n} pairings come within 3\u{a0}% of the longest distance. This one climbs best."
            ),
            Some(n) => {
                format!(
                    "{n} pairings come within 3\u{a0}% of the longest distance. Of those that fit, this one climbs best."
                )
            }
            None => "It goes farthest of those that fit.".into(),
        };
        let holds = holds.as_ref().map_or_else(String::new, |(speed, hill)| {
            format!(" It holds {speed} up your {hill} hill.")
        });
        format!(
            "{lead}: motor pulley with {motor}\u{a0}teeth, wheel pulley with {wheel_pulley}\u{a0}teeth, on {wheel}.{holds} It goes {far} on the flat and climbs {climbs}. {why}"
        )
    }
}

/// What stands at the cursor of the map.
#[must_use]
pub fn map_at(motor: &str, wheel: &str, top: &str, hill: &str, far: &str, climbs: &str) -> String {
    format!(
        "{motor}/{wheel}\u{a0}teeth: {top} on the flat, {hill} up your hill, goes {far}, climbs {climbs}"
    )
}

/// A wheel without a name, by its diameter in mm.
#[must_use]
pub fn unnamed_wheel(diameter_mm: f64, style: Style) -> String {
    format!("{}\u{a0}mm wheels", style.significant(diameter_mm, 4))
}

/// That a pairing needs another belt.
#[must_use]
pub fn needs_belt(name: &str) -> String {
    format!("It needs another belt: {name}.")
}

/// What a pairing would break or make tight, worst first: a list, and whether it does not fit.
#[must_use]
pub fn would_break(names: &[&str], unfit: bool) -> String {
    let list = names.join(", ");
    if unfit {
        format!("It doesn't fit as it is: {list}. See \"Does it go together?\" before you buy.")
    } else {
        format!("It only just fits: {list}. Measure before you buy.")
    }
}

/// A misfit in a few words.
#[must_use]
pub fn misfit(kind: &MisfitKind) -> &'static str {
    match kind {
        MisfitKind::BeltTooShort { .. } => "belt too short",
        MisfitKind::BeltOutOfSlot { .. } => "belt outside the mount's range",
        MisfitKind::BeltOverload { .. } => "belt overloaded",
        MisfitKind::Clearance { between, .. } => match between {
            Between::PulleyRoad | Between::BeltRoad => "pulley-to-road clearance",
            Between::MotorRoad => "motor-to-road clearance",
            Between::MotorWheel => "motor-to-wheel clearance",
            Between::MotorDeck => "motor-to-deck clearance (riser)",
            Between::MotorBox => "motor-to-enclosure clearance",
            Between::MotorMotor | Between::Hanger => "hanger width",
            Between::Axle => "axle length",
        },
        MisfitKind::BoxDrags { .. } => "enclosure drags on the road",
        MisfitKind::BoxStrikes { .. } => "enclosure clearance off bumps",
        MisfitKind::PackInBox { .. } => "pack in the enclosure",
        MisfitKind::WheelBite { .. } => "wheel bite (needs a taller riser)",
        MisfitKind::NearWheelBite { .. } => "riser height (wheel bite)",
    }
}
