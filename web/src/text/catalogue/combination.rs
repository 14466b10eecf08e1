//! What is wrong with a combination of parts.

use super::{big, count, file};
use crate::text::fit::between;
use crate::text::{Style, percent, words};
use pitchline_core::catalog::{Cause, Finding, Group};
use pitchline_core::fit::{Misfit, MisfitKind, Severity};
use pitchline_core::{Notice, Slot, Unit};

/// In place of parts, where the cause is in every combination.
const ANY: &str = "Every combination";

/// Caption of the table of kits.
pub const KITS_CAPTION: &str = "Combinations of each kit";
/// Its heads.
pub const KITS_HEADS: [&str; 4] = ["Kit", "Combinations", "Don't fit", "Tight"];
/// Heads of what doesn't fit in a kit.
pub const GROUPS_HEADS: [&str; 3] = ["Parts", "What's wrong", "Combinations"];

/// Whether all that was checked fits; `whole` where every combination was.
#[must_use]
pub fn fits(misfitting: u64, checked: u64, whole: bool) -> String {
    match (misfitting, whole) {
        (0, true) => "Every combination fits.".into(),
        (0, false) => "Every combination checked fits.".into(),
        (n, _) => {
            let all = count(checked, "combination", "combinations");
            let checked = if whole { "" } else { " checked" };
            let fit = if n == 1 { "doesn't fit" } else { "don't fit" };
            format!("{} of {all}{checked} {fit}.", big(n))
        }
    }
}

/// Below the kits that are shown, how many others have misfits.
#[must_use]
pub fn more_kits(kits: u64) -> String {
    let more = count(kits, "more kit has", "more kits have");
    format!("{more} misfits. Correct the ones above first.")
}

/// How many combinations a kit has, and how many of them were checked.
#[must_use]
pub fn checked(checked: u64, combinations: u64) -> String {
    if checked == combinations {
        big(combinations)
    } else {
        format!("checked {} of {}, spread evenly", big(checked), big(combinations))
    }
}

/// The fold of a kit: how many of its findings are misfits, and how many tight fits.
#[must_use]
pub fn kit(name: &str, misfits: u64, tight: u64) -> String {
    let some = [(misfits, "misfit", "misfits"), (tight, "tight fit", "tight fits")]
        .into_iter()
        .filter(|(number, ..)| *number > 0)
        .map(|(number, one, more)| count(number, one, more));
    format!("{name}: {}", some.collect::<Vec<_>>().join(", "))
}

/// Caption of what doesn't fit in it.
#[must_use]
pub fn kit_caption(name: &str) -> String {
    format!("{name}: what doesn't fit, worst cases")
}

/// Below that, how many findings are not listed.
#[must_use]
pub fn more_findings(findings: u64) -> String {
    let (more, are) = if findings == 1 { ("finding", "isn't") } else { ("findings", "aren't") };
    format!(
        "{} more {more} about other parts {are} listed. Correct the ones above first.",
        big(findings)
    )
}

/// What is wrong with combinations that have the same fault.
#[must_use]
pub fn group(group: &Group, style: Style) -> String {
    let tight = if group.severity == Severity::Tight { "Tight. " } else { "" };
    let about = match group.cause {
        // A tight one neither strikes nor bites.
        Cause::BoxStrikes if !tight.is_empty() => "Enclosure to road".into(),
        Cause::WheelBite if !tight.is_empty() => "Deck to wheel at full lean".into(),
        other => cause(other),
    };
    format!("{tight}{about}: {}", finding(&group.worst, style))
}

/// How many combinations that is, of all that have the parts.
#[must_use]
pub fn of_all(group: &Group) -> String {
    match group.with_parts {
        Some(all) if all == group.combinations => format!("all {}", big(all)),
        Some(all) => format!("{} of {}", big(group.combinations), big(all)),
        None => big(group.combinations),
    }
}

/// Parts that belong together, by name.
#[must_use]
pub fn together(parts: &[(Slot, String)]) -> String {
    if parts.is_empty() {
        return ANY.into();
    }
    parts.iter().map(|(_, name)| name.as_str()).collect::<Vec<_>>().join(" + ")
}

/// What is wrong with a combination, with its sizes.
fn finding(finding: &Finding, style: Style) -> String {
    match finding {
        Finding::Missing(_) => "not in this catalogue".into(),
        Finding::Notice(notice) => disagree(notice, style),
        Finding::Misfit(misfit) => misfit_of(misfit, style),
    }
}

/// What it is about, in a few words.
fn cause(cause: Cause) -> String {
    match cause {
        Cause::Missing(slot) => words::slot(slot).into(),
        Cause::PackAboveController => "Pack above the controller's limit".into(),
        Cause::ChargerVoltage => "Wrong charger".into(),
        Cause::FullVoltage => "Cell voltage".into(),
        Cause::PackTooLight => "Pack weight".into(),
        Cause::Tags(..) => "Tags don't match".into(),
        Cause::BeltTravel => "No belt fits".into(),
        Cause::BeltOverload => "Belt overloaded".into(),
        Cause::Clearance(of) => between(of).into(),
        Cause::BoxDrags => "Enclosure drags".into(),
        Cause::BoxStrikes => "Enclosure strikes the road".into(),
        Cause::PackInBox => "Pack in the enclosure".into(),
        Cause::WheelBite => "Wheel bite".into(),
    }
}

fn disagree(notice: &Notice, style: Style) -> String {
    let volts = |value: f64| file(style).quantity(value, Unit::Volt, 3);
    let mass = |value: f64| file(style).quantity(value, Unit::Kilogram, 2);
    match notice {
        Notice::PackAboveController { pack_v, controller_v } => {
            format!(
                "full at {}, but the controller survives no more than {}",
                volts(*pack_v),
                volts(*controller_v)
            )
        }
        Notice::ChargerVoltage { charger_v, pack_v, .. } => {
            format!("output {}, but the pack is full at {}", volts(*charger_v), volts(*pack_v))
        }
        Notice::FullVoltage { full_v, highest_v } => {
            format!(
                "{} when full, but this chemistry takes {} at most",
                volts(*full_v),
                volts(*highest_v)
            )
        }
        Notice::PackTooLight { pack_kg, cells_kg } => {
            format!("{}, but its cells alone weigh {}", mass(*pack_kg), mass(*cells_kg))
        }
        Notice::TagMismatch { one, one_tag, other, other_tag } => {
            let name = |slot: &Slot| words::kind(slot.kind()).to_ascii_lowercase();
            if one == other {
                return format!("hanger \"{one_tag}\", mounts for \"{other_tag}\"");
            }
            format!("{} \"{one_tag}\", {} \"{other_tag}\"", name(one), name(other))
        }
    }
}

fn misfit_of(misfit: &Misfit, style: Style) -> String {
    let left = |room_m: f64| {
        if misfit.severity == Severity::Tight {
            format!("{} left", length(style, room_m, false))
        } else {
            format!("{} short", length(style, -room_m, true))
        }
    };
    match misfit.kind {
        MisfitKind::BeltTooShort { touching_m } => format!(
            "the nearest is too short, as these pulleys touch at {} from shaft to axle",
            length(style, touching_m, true)
        ),
        MisfitKind::BeltOutOfSlot { centre_m, slot_m: [near, far], miss_m } => format!(
            "the nearest needs {}, {} outside the mount's range of {} to {}",
            length(style, centre_m, centre_m > far),
            length(style, miss_m, true),
            length(style, near, true),
            length(style, far, false),
        ),
        MisfitKind::BeltOverload { used, .. } => format!("{} of its rating", percent(used)),
        MisfitKind::Clearance { room_m, .. } => left(room_m),
        MisfitKind::BoxDrags { room_m } => left(room_m),
        MisfitKind::BoxStrikes { bump_m, room_m } => {
            format!("off a bump of {}, {}", length(style, bump_m, false), left(room_m))
        }
        MisfitKind::PackInBox { left_m, tightest, .. } => {
            let way = ["length", "width", "height"].get(tightest).copied().unwrap_or_default();
            format!("{way} {}", left(left_m.get(tightest).copied().unwrap_or(0.0)))
        }
        MisfitKind::WheelBite { lean_deg, riser_m, .. } => format!(
            "at {}° of lean, needs a riser above {}",
            style.fixed(lean_deg, 0),
            length(style, riser_m, true)
        ),
        MisfitKind::NearWheelBite { left_m } => {
            format!("{} of riser left", length(style, left_m, false))
        }
    }
}

/// A length as in the file, what is needed rounded up and what there is down.
fn length(style: Style, length_m: f64, up: bool) -> String {
    format!("{}\u{a0}mm", file(style).bounded_millimetres(length_m, up))
}

#[cfg(test)]
mod tests {
    use super::*;
    use pitchline_core::catalog::Catalog;

    /// Its name is said once.
    #[test]
    fn a_part_that_is_missing_says_so() {
        let why = finding(&Finding::Missing(Slot::Cell), Style::default());
        let said = format!("{}: {why}", cause(Cause::Missing(Slot::Cell)));
        assert_eq!(said, "Cell: not in this catalogue");
    }

    /// By hand: 10 in series of 4.2 V are 42 V; tags as written.
    #[test]
    fn a_combination_that_does_not_fit_says_why() {
        let text = r#"{"schema_version": 1, "maker": "M",
            "chargers": [{"id": "c", "name": "C", "full_v": 50.4, "current_a": 3}],
            "controllers": [{"id": "e", "name": "E", "motor_current_a": 40,
                "battery_current_a": 20, "max_bus_v": 40}],
            "motors": [{"id": "m", "name": "M", "shaft": "8 mm", "kv_rpm_per_v": 190,
                "resistance_ll_mohm": 60, "max_current_a": 60}],
            "motor_pulleys": [{"id": "p", "name": "P", "bore": "10 mm", "teeth": 16}],
            "kits": [{"id": "k", "name": "K", "slots": {}}]}"#;
        let (catalog, _) = Catalog::read(text).expect("an object");
        let mut check = pitchline_core::catalog::KitCheck::new(&catalog, &catalog.kits[0]);
        while check.step() {}
        let mut said: Vec<_> = check
            .report()
            .groups
            .iter()
            .map(|group| {
                let why = finding(&group.worst, Style::default());
                format!("{}, {}: {why}", together(&group.parts), cause(group.cause))
            })
            .collect();
        said.sort();
        assert_eq!(
            said,
            [
                "Every combination, Pack above the controller's limit: full at 42\u{a0}V, but the controller survives no more than 40\u{a0}V",
                "Every combination, Tags don't match: motor \"8 mm\", motor pulley \"10 mm\"",
                "Every combination, Wrong charger: output 50.4\u{a0}V, but the pack is full at 42\u{a0}V",
            ]
        );
    }
}
