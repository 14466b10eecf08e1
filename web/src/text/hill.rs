//! Words of "How steep?".

use super::page::Warning;
use super::{Style, page, percent, span, words};
use pitchline_core::ride::LongClimb;
use pitchline_core::{Build, Limit, Unit};

/// The fold of long climbs.
pub const LONG_CLIMB: &str = "On a long hill";
/// The working of the hill that never overheats.
pub const ENDLESS_WORKING: &str = "Working: steepest climb without overheating";
/// Over it.
pub const ENDLESS_STEPS: &str =
    "Step by step, for whichever limit is reached first. The last step is the answer.";
/// What the table of the picture opens with.
pub const CURVE_TABLE: &str = "Table of steepest hill by speed";
/// Its caption.
pub const CURVE_CAPTION: &str = "Steepest hill by speed, full pack";
/// The axis of the picture.
pub const STEEPEST: &str = "steepest hill, %";
/// Of a board that climbs nothing.
pub const NO_CLIMB: &str = "This build can't climb.";
/// The rider's hill, as an input of this view.
pub const YOUR_HILL: &str = "Your hill";
/// Caution, by the answer.
pub const CAUTION: Warning = Warning {
    short: "Your board may climb a hill it can't stop on. Don't ride down anything you can't stop on, and try your brakes at low speed first.",
    more: "A full pack absorbs little or no braking energy. A belt can break or skip teeth, and then its motor neither pushes nor brakes.",
};

/// Names of the four answers, by their speed in m/s.
#[must_use]
pub fn names(speed_m_s: f64, style: Style) -> [String; 4] {
    let speed = style.speed_unit(speed_m_s);
    [
        format!("At {speed}, full pack"),
        format!("At a crawl, {speed}"),
        format!("At {speed}"),
        format!("Nearly empty, at {speed}"),
    ]
}

/// What a grade is called where it is an answer.
#[must_use]
pub fn steepest(grade: f64) -> String {
    if grade < 0.0 { page::NOT_FLAT.into() } else { percent(grade) }
}

/// Where a speed, m/s, cannot be held on the flat, and nothing beside it names the speed.
#[must_use]
pub fn not_flat_at(speed_m_s: f64, style: Style) -> String {
    format!("can't hold {} on the flat", style.speed_unit(speed_m_s))
}

/// What the picture shows, by speeds in m/s and grades.
#[must_use]
pub fn curve(slow: (f64, f64), brisk: (f64, f64), style: Style) -> String {
    let [at_slow, at_brisk] = [slow, brisk].map(|at| style.speed_unit(at.0));
    if brisk.1 < 0.0 && slow.1 >= 0.0 {
        return format!(
            "It climbs {} at {at_slow}. At {at_brisk} it can't hold its speed on the flat.",
            percent(slow.1)
        );
    }
    if slow.1 < 0.0 {
        return NO_CLIMB.into();
    }
    let (low, high) = (percent(slow.1), percent(brisk.1));
    if low == high {
        return format!("It climbs {low} at {at_slow} and at {at_brisk}.");
    }
    let (low, high) = (format!("{low} at {at_slow}"), format!("{high} at {at_brisk}"));
    if slow.0 < brisk.0 {
        format!("It climbs steeper hills at lower speeds: {low}, {high}.")
    } else {
        format!("It climbs {low} and {high}.")
    }
}

/// What stands at the cursor.
#[must_use]
pub fn curve_at(speed_m_s: f64, grade: f64, limit: Limit, style: Style) -> String {
    let (speed, grade) = (style.speed_unit(speed_m_s), steepest(grade));
    format!("{speed}: up to {grade} ({})", words::limit(limit))
}

/// Heads of the table of steepest hill by speed.
#[must_use]
pub fn curve_heads(style: Style) -> Vec<String> {
    let speed = style.units.shown(Unit::KilometrePerHour).symbol;
    vec![format!("Speed, {speed}"), "Steepest hill, %".into(), "Limit".into()]
}

/// Of a board that moves, but not that fast.
pub const TOO_FAST: &str = "This build doesn't reach that speed even on the flat.";

/// That the rider's own hill is too much, full or nearly empty; nothing where it is not.
#[must_use]
pub fn own_hill(build: &Build, full: (f64, f64), low: f64, style: Style) -> Option<String> {
    let ride = &build.ride;
    let (slow, full) = (style.speed_unit(full.0), full.1);
    let hill = style.entered_percent(ride.grade);
    if full < ride.grade {
        Some(format!("Your {hill} hill is too steep at {slow}, even with a full pack."))
    } else if low < ride.grade {
        let left = style.entered_percent(ride.low_charge);
        Some(format!(
            "With {left} charge left, your {hill} hill is too steep at {slow}. Keep a reserve for it."
        ))
    } else {
        None
    }
}

/// What ends a climb.
#[must_use]
pub fn ended(climb: &LongClimb) -> &'static str {
    match climb.limit {
        Limit::Empty => "pack at its limit",
        limit => words::limit(limit),
    }
}

/// Whether it does not reach its speed.
#[must_use]
pub fn slower(climb: &LongClimb) -> bool {
    climb.top_m_s < 0.95 * climb.speed_m_s
}

/// Whether it comes up at all.
#[must_use]
pub fn climbs(climb: &LongClimb) -> bool {
    climb.distance_m >= 1.0
}

/// The fold's hint: how far up the rider's hill.
#[must_use]
pub fn climb_hint(climb: &LongClimb, style: Style) -> String {
    let hill = style.entered_percent(climb.grade);
    if climbs(climb) {
        format!("{} uphill at {hill}", style.way(climb.distance_m))
    } else {
        format!("can't climb {hill}")
    }
}

/// Name of how far a climb goes.
#[must_use]
pub fn lasts(climb: &LongClimb, style: Style) -> String {
    let (hill, speed) = (style.entered_percent(climb.grade), style.speed_unit(climb.speed_m_s));
    format!("Up your {hill} hill at {speed}")
}

/// In place of its figure where it does not come up.
pub const TOO_STEEP: &str = "too steep";

/// Until what.
#[must_use]
pub fn until(climb: &LongClimb) -> String {
    format!("Ended by: {}", ended(climb))
}

/// Name of the hill that never overheats, by its speed in m/s.
#[must_use]
pub fn endless(speed_m_s: f64, style: Style) -> String {
    format!("Steepest climb without overheating at {}", style.speed_unit(speed_m_s))
}

/// How a climb ends.
#[must_use]
pub fn ends(climb: &LongClimb, limit_c: f64, style: Style) -> String {
    let hill = style.entered_percent(climb.grade);
    if !climbs(climb) {
        return format!("It can't climb {hill} ({}).", ended(climb));
    }
    let (far, time) = (style.way(climb.distance_m), span(climb.time_s));
    let height = style.way(climb.height_m);
    let warm = |c: f64| style.quantity(c.round(), Unit::Celsius, 2);
    let heat = match climb.limit {
        Limit::WindingHot => {
            format!("the windings reach {}, where power must be limited", warm(climb.winding_c))
        }
        Limit::ControllerHot => {
            format!("the controller reaches {} and starts limiting", warm(climb.controller_c))
        }
        Limit::Empty => {
            format!(
                "the pack can no longer supply enough power for this speed, with {} charge left and the windings at {} (limit {})",
                percent(climb.end_charge),
                warm(climb.winding_c),
                warm(limit_c)
            )
        }
        limit => format!("it stops: {}", words::limit(limit)),
    };
    let slow = if slower(climb) {
        format!(" It gets no faster than {}.", style.speed_unit(climb.top_m_s))
    } else {
        String::new()
    };
    format!("After {far} and {time} ({height} of height gained), {heat}.{slow}")
}

/// A speed that was not reached: the wish as a bare number, and the speed made, m/s.
#[must_use]
pub fn made(wish_m_s: f64, top_m_s: f64, style: Style) -> String {
    format!("{} asked for, {} reached", style.speed(wish_m_s), style.speed_unit(top_m_s))
}

/// Caption of the table of climbs, for a grade.
#[must_use]
pub fn climbs_caption(grade: f64, style: Style) -> String {
    format!("On an endless {} climb", style.entered_percent(grade))
}

/// Its heads.
pub const CLIMBS_HEADS: [&str; 6] =
    ["Speed", "Distance", "Height gained", "Time", "Ended by", "Steepest without overheating, %"];

/// The fold of changes that climb better.
pub const BETTER: &str = "What would climb better?";
/// What it holds.
pub const BETTER_HINT: &str = "one change at a time";
/// Where none does.
pub const NO_BETTER: &str = "No single part in this catalogue climbs better and still fits.";

/// What a change does to the hill at 10 km/h and to the top speed, m/s, and what then binds.
#[must_use]
pub fn would_climb(after: [f64; 2], before: [f64; 2], limit: Limit, style: Style) -> String {
    let [speed, was] = [after, before].map(|[_, top_m_s]| style.speed_unit(top_m_s));
    let top = if speed == was {
        "Top speed stays.".into()
    } else {
        format!("Top speed {speed} instead of {was}.")
    };
    format!(
        "Climbs {} instead of {}. {top} Then the limit is {}.",
        percent(after[0]),
        percent(before[0]),
        words::small(words::limit_short(limit)),
    )
}
