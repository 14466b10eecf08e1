//! What does not fit or is tight, in words.

use super::{at_least, at_most, entered, mm, tenth};
use crate::text::catalogue::count;
use crate::text::words::capital;
use crate::text::{Answer, Style, percent, words};
use pitchline_core::fit::{Between, Misfit, MisfitKind, Severity, WheelAt};
use pitchline_core::{Notice, Slot};

/// How bad a concern is, the worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// Someone could be hurt.
    Unsafe,
    /// It does not fit.
    DoesNotFit,
    /// A value that was entered cannot be: a slip of the pen beside parts that do not fit.
    Check,
    /// It fits with next to nothing to spare.
    Tight,
}

impl Grade {
    /// In a word or two.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Unsafe => "Unsafe",
            Self::DoesNotFit => "Doesn't fit",
            Self::Check => "Check",
            Self::Tight => "Tight",
        }
    }

    /// Of a misfit.
    #[must_use]
    pub const fn of(misfit: &Misfit) -> Self {
        match (misfit.severity, misfit.kind) {
            (Severity::Tight, _) => Self::Tight,
            (_, MisfitKind::WheelBite { .. } | MisfitKind::BeltOverload { .. }) => Self::Unsafe,
            _ => Self::DoesNotFit,
        }
    }

    /// Of parts that do not match.
    #[must_use]
    pub fn of_notice(notice: &Notice) -> Self {
        match notice {
            Notice::PackAboveController { .. }
            | Notice::ChargerVoltage { .. }
            | Notice::FullVoltage { .. } => Self::Unsafe,
            Notice::PackTooLight { .. } => Self::Check,
            other if other.slots().contains(&Slot::Charger) => Self::Unsafe,
            _ => Self::DoesNotFit,
        }
    }
}

/// What there is beside the worst: so many values to check, and so many tight spots.
fn also(values: usize, spots: usize) -> String {
    let some: Vec<_> =
        [(values, "value to check", "values to check"), (spots, "tight spot", "tight spots")]
            .into_iter()
            .filter(|(number, ..)| *number > 0)
            .map(|(number, one, more)| count(number as u64, one, more))
            .collect();
    if some.is_empty() { String::new() } else { format!(". Also {}", some.join(" and ")) }
}

/// The answer: how many things don't fit, must be checked or are tight, and the worst in a few words.
#[must_use]
pub fn verdict(amiss: usize, check: usize, tight: usize, worst: &str) -> Answer {
    let (figure, limit) = match (amiss, check, tight) {
        (0, 0, 0) => ("Yes", "Everything matches and clears.".into()),
        (0, 0, 1) => ("Tight", format!("{}.", capital(worst))),
        (0, 0, n) => ("Tight", format!("{n} tight spots. Worst: {worst}.")),
        (0, n, _) => ("Check", format!("{}{}.", capital(worst), also(n - 1, tight))),
        (1, ..) => ("No", format!("{}{}.", capital(worst), also(check, 0))),
        (n, ..) => ("No", format!("{n} things don't fit. Worst: {worst}{}.", also(check, 0))),
    };
    Answer { name: "Parts, sizes and clearances".into(), figure: figure.into(), unit: "", limit }
}

/// The same in one line.
#[must_use]
pub fn verdict_line(amiss: usize, check: usize, tight: usize, worst: &str) -> String {
    match (amiss, check, tight) {
        (0, 0, 0) => "Yes".into(),
        (0, 0, 1) => format!("Yes, but 1 tight spot: {worst}"),
        (0, 0, n) => format!("Yes, but {n} tight spots. Worst: {worst}"),
        (0, n, _) => format!("Yes, but check: {worst}{}", also(n - 1, tight)),
        (1, ..) => format!("No: {worst}{}", also(check, 0)),
        (n, ..) => format!("No, {n} things don't fit. Worst: {worst}{}", also(check, 0)),
    }
}

/// The sentence under the answer.
#[must_use]
pub const fn verdict_why(amiss: usize, check: usize, tight: usize) -> &'static str {
    match (amiss, check, tight) {
        (0, 0, 0) => {
            "Shafts, bores, cores, plugs and voltages match. Belt, motors, deck, enclosure and wheels clear each other, going by the sizes entered or assumed."
        }
        (0, _, 0) => {
            "Everything matches and nothing touches, going by the sizes entered or assumed. Correct the value below: other figures depend on it."
        }
        (0, 1.., _) => {
            "It fits, in places with less than 2 mm to spare, and the sizes entered or assumed aren't that exact. Correct the value below, and measure on the board before you ride."
        }
        (0, ..) => {
            "It fits with less than 2 mm to spare, and the sizes entered or assumed aren't that exact. Measure on the board before you ride."
        }
        _ => "Fix these before you build or ride, worst first.",
    }
}

/// Leads to an input by its label.
#[must_use]
pub fn change(label: &str) -> String {
    format!("Change: {label}")
}

/// Leads to the list of parts of a slot.
#[must_use]
pub fn pick(slot: &str) -> String {
    format!("Change: {slot}")
}

/// Where no part on offer cures it.
pub const NO_CURE: &str = "None of the available parts fixes this.";

/// What the room is between.
#[must_use]
pub const fn between(between: Between) -> &'static str {
    match between {
        Between::PulleyRoad => "Wheel pulley to road",
        Between::BeltRoad => "Belt to road",
        Between::MotorRoad => "Motor to road",
        Between::MotorWheel => "Motor to wheel",
        Between::MotorDeck => "Motor to deck",
        Between::MotorBox => "Motor to enclosure",
        Between::MotorMotor => "Motor to motor",
        Between::Hanger => "Hanger width to spare",
        Between::Axle => "Axle past its nut",
    }
}

/// What a wheel is called.
pub(super) const fn wheel(at: WheelAt) -> &'static str {
    match at {
        WheelAt::Front => "front",
        WheelAt::Rear => "rear",
    }
}

/// By how much the contents of the enclosure are too large, each way.
#[must_use]
pub fn short(left_m: [f64; 3], style: Style) -> String {
    let ways = ["too long", "too wide", "too tall"];
    let over = left_m.iter().zip(ways).filter(|(left, _)| **left < 0.0);
    over.map(|(left, way)| format!("{} {way}", at_least(style, -left)))
        .collect::<Vec<_>>()
        .join(", ")
}

/// A misfit in a few words, to go on after a colon.
#[must_use]
pub fn misfit_short(misfit: &Misfit, style: Style) -> String {
    let spare = |what: &str, room_m: f64| format!("{what}, {} to spare", at_most(style, room_m));
    let tight = misfit.severity == Severity::Tight;
    match misfit.kind {
        MisfitKind::BeltTooShort { .. } => "belt too short".into(),
        MisfitKind::BeltOutOfSlot { miss_m, .. } => {
            format!("belt {} outside the mount's range", at_least(style, miss_m))
        }
        MisfitKind::BeltOverload { used, .. } => {
            format!("belt at {} of its rating", percent(used))
        }
        MisfitKind::Clearance { between: pair, room_m } if tight => {
            spare(&between(pair).to_ascii_lowercase(), room_m)
        }
        MisfitKind::Clearance { between: pair, room_m } => {
            let by = at_least(style, -room_m);
            match pair {
                Between::Hanger => format!("hanger {by} too narrow"),
                Between::Axle => format!("axle {by} too short"),
                other => format!("{}, {by} short", between(other).to_ascii_lowercase()),
            }
        }
        MisfitKind::BoxDrags { room_m } => {
            format!("enclosure drags by {}", at_least(style, -room_m))
        }
        MisfitKind::BoxStrikes { room_m, .. } if tight => spare("enclosure off a bump", room_m),
        MisfitKind::BoxStrikes { room_m, .. } => {
            format!("enclosure {} too low off a bump", at_least(style, -room_m))
        }
        MisfitKind::PackInBox { left_m, tightest, .. } if tight => {
            spare("pack in the enclosure", left_m.get(tightest).copied().unwrap_or(0.0))
        }
        MisfitKind::PackInBox { left_m, .. } => format!("pack {}", short(left_m, style)),
        MisfitKind::NearWheelBite { left_m } => spare("riser", left_m),
        MisfitKind::WheelBite { lean_deg, .. } => {
            format!("wheel bite at {}° of lean", tenth(style, lean_deg, false))
        }
    }
}

/// A misfit in full. `offer` is the belt on offer that fits, by name, and its centre distance, m.
#[must_use]
pub fn misfit(misfit: &Misfit, offer: Option<(&str, f64)>, style: Style) -> String {
    let tight = misfit.severity == Severity::Tight;
    let belt = |wrong: String| match offer {
        Some((name, centre_m)) => {
            format!(
                "{wrong} \"{name}\" is available and fits, with {} from shaft to axle.",
                mm(style, centre_m)
            )
        }
        None => format!("{wrong} No available belt fits these pulleys."),
    };
    match misfit.kind {
        MisfitKind::BeltTooShort { touching_m } => belt(format!(
            "The belt is too short. These pulleys already touch at {} from shaft to axle.",
            mm(style, touching_m)
        )),
        MisfitKind::BeltOutOfSlot { centre_m, slot_m: [near, far], miss_m } => belt(format!(
            "This belt needs {} from motor shaft to wheel axle. The mount adjusts from {} to {}, so it misses by {}.",
            mm(style, centre_m),
            entered(style, near),
            entered(style, far),
            at_least(style, miss_m),
        )),
        MisfitKind::BeltOverload { used, braking } => format!(
            "{} loads the belt to {} of its rating. The belt may break or skip teeth, and its motor then can't brake.",
            if braking { "Braking" } else { "Full throttle" },
            percent(used)
        ),
        MisfitKind::Clearance { between: pair, room_m } if tight => {
            just(between(pair), &at_most(style, room_m))
        }
        MisfitKind::Clearance { between: pair, room_m } => {
            let by = at_least(style, -room_m);
            match pair {
                Between::Hanger => {
                    format!("The hanger is {by} too narrow for mounts and motors.")
                }
                Between::Axle => format!("The axle is {by} too short for pulley, wheel and nut."),
                other => format!("{}: needs {by} more clearance.", between(other)),
            }
        }
        MisfitKind::BoxDrags { room_m } => format!(
            "The enclosure drags on the road: {} too low with you on the board.",
            at_least(style, -room_m)
        ),
        MisfitKind::BoxStrikes { room_m, .. } if tight => {
            just("Enclosure to road, off a bump", &at_most(style, room_m))
        }
        MisfitKind::BoxStrikes { bump_m, room_m } => format!(
            "Off a bump of {}, the enclosure hits the road: {} too low.",
            entered(style, bump_m),
            at_least(style, -room_m)
        ),
        MisfitKind::PackInBox { left_m, tightest, .. } if tight => just(
            "Pack and controller in the enclosure",
            &at_most(style, left_m.get(tightest).copied().unwrap_or(0.0)),
        ),
        MisfitKind::PackInBox { left_m, length_for_m, .. } => {
            let would = length_for_m.map_or_else(String::new, |length| {
                format!(
                    " At this width and height the enclosure needs an inside length of {}.",
                    at_least(style, length)
                )
            });
            format!(
                "The pack and controller don't fit the enclosure: {}.{would}",
                short(left_m, style)
            )
        }
        MisfitKind::NearWheelBite { left_m } => {
            just("Deck to wheel, at full lean", &format!("{} of riser", at_most(style, left_m)))
        }
        MisfitKind::WheelBite { wheel: at, lean_deg, most_deg, riser_m } => format!(
            "Wheel bite: at {}° of lean the deck touches a {} wheel, which stops it dead and throws you off. A riser of {} only just prevents this up to the trucks' maximum lean of {}°. Fit one a few millimetres taller, and lean the board by hand as far as it goes before you ride.",
            tenth(style, lean_deg, false),
            wheel(at),
            at_least(style, riser_m),
            tenth(style, most_deg, true),
        ),
    }
}

fn just(what: &str, left: &str) -> String {
    format!("{what}: {left} to spare.")
}

/// Parts that do not match, in a few words, to go on after a colon.
#[must_use]
pub fn notice_short(notice: &Notice) -> String {
    match notice {
        Notice::PackAboveController { .. } => "pack voltage too high for the controller".into(),
        Notice::ChargerVoltage { .. } => "wrong charger".into(),
        Notice::FullVoltage { .. } => "cell voltage too high".into(),
        Notice::PackTooLight { .. } => "pack lighter than its cells".into(),
        Notice::TagMismatch { one, other, .. } if one == other => {
            format!("{} and mounts don't match", words::slot(*one).to_ascii_lowercase())
        }
        Notice::TagMismatch { one, other, .. } => format!(
            "{} and {} don't match",
            words::slot(*one).to_ascii_lowercase(),
            words::slot(*other).to_ascii_lowercase()
        ),
    }
}

/// How many parts that meet do not match.
#[must_use]
pub fn meet(mismatches: usize) -> String {
    match mismatches {
        0 => "all match".into(),
        1 => "1 doesn't match".into(),
        n => format!("{n} don't match"),
    }
}

/// Which parts that meet were compared, and how that went.
#[must_use]
pub fn meet_why(mismatches: usize) -> &'static str {
    if mismatches == 0 {
        "These match: motor shaft with pulley bore, wheel core with wheel pulley, hanger with mounts, pack plug with controller plug, charger plug with charge port, and all voltages. Where a part's fitting isn't given, a match is assumed."
    } else {
        "Compared: motor shaft with pulley bore, wheel core with wheel pulley, hanger with mounts, pack plug with controller plug, charger plug with charge port, and all voltages. What doesn't match is listed at the top. Where a part's fitting isn't given, a match is assumed."
    }
}
