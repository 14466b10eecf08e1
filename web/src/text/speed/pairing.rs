//! Words of the map of pairings: motor pulleys against wheel pulleys, and what is suggested.

use crate::text::Style;
use pitchline_core::Unit;
use pitchline_core::fit::{Between, MisfitKind};

/// What the gear map says of its use.
pub const TAP: &str = "Tap a pairing to use it.";
/// What the keys do on it.
pub const ALONG_MAP: &str = "Arrow keys move between the pairings. Enter uses the current one.";
/// Labels of what a pairing is suggested for.
pub const WISHES: [&str; 3] = ["Your weight", "Cruising speed", "Your hill"];
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

/// How many pairings hold the rider's speed up the rider's hill.
#[must_use]
pub fn met(met: usize, all: usize, cruise: &str, grade: &str) -> String {
    match met {
        0 if all == 0 => "None of the available pairings fits these parts.".into(),
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

/// What the pairing on the board comes to beside one that is suggested: how far it goes, with its
/// unit; none where it does not hold that speed.
#[must_use]
pub fn yours(far: Option<String>) -> String {
    far.map_or_else(
        || "Your pairing doesn't hold that.".into(),
        |far| format!("Your pairing holds that too and goes {far}."),
    )
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
    format!("It needs a different belt: {name}.")
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
