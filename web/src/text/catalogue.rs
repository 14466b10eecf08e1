//! The maker's check of the catalogue in words. Numbers are metric, as in the file.

use super::number::{Style, percent};
use super::sentence::what;
use super::{Units, words};
use pitchline_core::catalog::{AssumedValue, Cause, Finding, Place};
use pitchline_core::fit::{Between, Misfit, MisfitKind, Severity};
use pitchline_core::{Kind, Notice, Reason, Slot, Unit};

/// Its heading.
pub const TITLE: &str = "Catalogue check";
/// What riders read where something could not be used, after how many.
pub const SEE: &str = "See which";
/// Under the heading.
pub const WHY: &str = "For the maker: what to correct in catalogue.json, what is assumed because the file leaves it out, and which combinations don't fit.";
/// Over the faults.
pub const FAULTS: &str = "Faults in the file";
/// Where there are none.
pub const NO_FAULTS: &str = "Every entry in the file was read and is in use.";
/// Over what parts leave out.
pub const GAPS: &str = "Left out of the file";
/// Under that.
pub const GAPS_WHY: &str = "Nothing here is wrong. The page marks an assumed value as \"assumed\", and a total leaves out parts without a price.";
/// Where parts leave nothing out.
pub const NO_GAPS: &str = "Every part has a price, a weight and all its values.";
/// Over the kits.
pub const KITS: &str = "Combinations of parts";
/// Under that.
pub const KITS_WHY: &str = "We try every pack, controller, motor, set of trucks, pair of pulleys, wheel, deck and charger that a kit offers, with its own rider and place. Each combination uses the kit's own belt if it fits, otherwise the best-fitting belt it offers.";
/// Where the catalogue has none.
pub const NO_KITS: &str = "This catalogue has no kit, so there is nothing to combine.";
/// Where all of the combinations fit.
pub const ALL_FIT: &str = "Every combination fits.";
/// In place of parts, where the cause is in every combination.
pub const ANY: &str = "Every combination";
/// Of a value that depends on the cells.
const BY_CELLS: &str = "depends on the cells";

/// `1 fault`, `2 faults`.
#[must_use]
pub fn count(number: u64, one: &str, more: &str) -> String {
    format!("{} {}", big(number), if number == 1 { one } else { more })
}

/// A count with a space between the thousands; of very many only how many at least.
#[must_use]
pub fn big(number: u64) -> String {
    if number >= 1_000_000_000 {
        return "over a billion".into();
    }
    let digits = number.to_string();
    let mut text = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) && digits.len() > 4 {
            text.push('\u{202f}');
        }
        text.push(digit);
    }
    text
}

/// What riders read where something could not be used.
#[must_use]
pub fn unusable(faults: usize) -> String {
    let entries = count(faults as u64, "entry", "entries");
    format!("{entries} in this catalogue couldn't be used.")
}

/// What a part of the list is called, and what it is.
#[must_use]
pub fn whose(place: &Place) -> String {
    let list =
        Kind::ALL.iter().find(|kind| kind.list_key() == place.list && !place.list.is_empty());
    let what = match (list, place.list.as_str()) {
        (Some(kind), _) => words::kind(*kind).to_ascii_lowercase(),
        (None, "kits") => "kit".into(),
        (None, _) => return "The file".into(),
    };
    if place.part.is_empty() {
        format!("{} (the whole list)", place.list)
    } else {
        format!("{} ({what})", place.part)
    }
}

/// What is wrong there, and what became of it.
#[must_use]
pub fn wrong(place: &Place, reason: &Reason, style: Style) -> String {
    let key = &place.key;
    let said = match reason {
        Reason::OutOfRange { value, unit, .. } | Reason::NotWhole { value, unit, .. } => {
            file(style).quantity(*value, *unit, 6)
        }
        Reason::Missing { .. } => "missing".into(),
        Reason::Unknown { given, .. } if place.key.ends_with(given.as_str()) => {
            "not a known key".into()
        }
        Reason::Unknown { given, elsewhere, .. } => match elsewhere {
            0 => format!("\"{given}\" is not known"),
            n => format!(
                "\"{given}\" is not known, here and in {}",
                count(u64::from(*n), "other place", "other places")
            ),
        },
        Reason::UnknownChoice { given, .. } => format!("\"{given}\" is not a choice"),
        Reason::Duplicate { given, times, .. } => format!("\"{given}\" appears {times} times"),
        Reason::WrongForm { .. } => "not in this form".into(),
        Reason::TooLarge { most, what } => format!("more than {most} {what}"),
        other => what(other, style),
    };
    let became = if place.left_out { "Left out." } else { "Ignored." };
    match key.as_str() {
        "" => format!("{}. {became}", capital(&said)),
        key => format!("{key}: {said}. {became}"),
    }
}

/// What would be right.
#[must_use]
pub fn right(reason: &Reason, style: Style) -> String {
    let range = |min: f64, max: f64, unit: Unit| {
        let style = file(style);
        format!("{} to {}", style.value(min, unit, 6), style.quantity(max, unit, 6))
    };
    match reason {
        Reason::OutOfRange { min, max, unit, .. } => range(*min, *max, *unit),
        Reason::NotWhole { min, max, unit, .. } => {
            format!("a whole number, {}", range(*min, *max, *unit))
        }
        Reason::NotANumber { min, max, unit } => format!("a number, {}", range(*min, *max, *unit)),
        Reason::Missing { expected } if expected.is_empty() => "a value".into(),
        Reason::Missing { expected } | Reason::WrongForm { expected } => expected.to_string(),
        Reason::UnknownChoice { allowed, .. } => format!("one of {allowed}"),
        Reason::Unknown { known, near, more, .. } => {
            let mut known = known.iter();
            let first = known.next().filter(|_| *near).map(|first| format!("{first}?"));
            first.unwrap_or_else(|| nothing_near(reason, *more))
        }
        Reason::Duplicate { meant, .. } if !meant.is_empty() => format!("{meant}?"),
        Reason::Duplicate { first, .. } => format!("an id of its own: {first} has this one"),
        Reason::TooLarge { most, what } => format!("at most {most} {what}"),
        Reason::Unfilled { .. } | Reason::Unused { .. } | Reason::Syntax { .. } => String::new(),
    }
}

/// What is known, where nothing of it is near to what was written.
fn nothing_near(reason: &Reason, more: u32) -> String {
    let Reason::Unknown { known, .. } = reason else { return String::new() };
    let more = if more > 0 { format!(" and {more} more") } else { String::new() };
    if known.is_empty() { "remove it".into() } else { format!("one of {}{more}", known.join(", ")) }
}

/// Values that are assumed, each as its key and what is taken.
#[must_use]
pub fn assumed(values: &[AssumedValue], style: Style) -> String {
    let one = |assumed: &AssumedValue| {
        let field = assumed.field;
        let taken = match assumed.value {
            None => BY_CELLS.into(),
            Some(value) if field.choices.is_empty() => file(style).significant(value, 6),
            Some(value) => field.choice_name(value).into(),
        };
        format!("{}\u{a0}{taken}", field.key)
    };
    values.iter().map(one).collect::<Vec<_>>().join(", ")
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
#[must_use]
pub fn finding(finding: &Finding, style: Style) -> String {
    match finding {
        Finding::Missing(slot) => format!("{}: not in this catalogue", words::slot(*slot)),
        Finding::Notice(notice) => disagree(notice, style),
        Finding::Misfit(misfit) => misfit_of(misfit, style),
    }
}

/// What it is about, in a few words.
#[must_use]
pub fn cause(cause: Cause) -> String {
    match cause {
        Cause::Missing(slot) => words::slot(slot).into(),
        Cause::PackAboveController => "Pack above the controller's limit".into(),
        Cause::ChargerVoltage => "Wrong charger".into(),
        Cause::FullVoltage => "Cell voltage".into(),
        Cause::PackTooLight => "Pack weight".into(),
        Cause::Tags(..) => "Tags don't match".into(),
        Cause::BeltTravel => "No belt fits".into(),
        Cause::BeltOverload => "Belt overloaded".into(),
        Cause::Clearance(between) => room(between).into(),
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
            format!("full at {}, the controller survives {}", volts(*pack_v), volts(*controller_v))
        }
        Notice::ChargerVoltage { charger_v, pack_v, .. } => {
            format!("output {}, the pack is full at {}", volts(*charger_v), volts(*pack_v))
        }
        Notice::FullVoltage { full_v, highest_v } => {
            format!(
                "{} when full, this chemistry takes {} at most",
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
            format!("{} too little", length(style, -room_m, true))
        }
    };
    match misfit.kind {
        MisfitKind::BeltTooShort { touching_m } => {
            format!("too short: these pulleys touch at {}", length(style, touching_m, true))
        }
        MisfitKind::BeltOutOfSlot { centre_m, slot_m: [near, far], miss_m } => format!(
            "the nearest needs {}, {} beyond the mount's {} to {}",
            length(style, centre_m, centre_m > far),
            length(style, miss_m, true),
            length(style, near, true),
            length(style, far, false),
        ),
        MisfitKind::BeltOverload { used, .. } => format!("{} of its rating", percent(used)),
        MisfitKind::Clearance { room_m, .. } => left(room_m),
        MisfitKind::BoxDrags { room_m } => left(room_m),
        MisfitKind::BoxStrikes { bump_m, room_m } => {
            format!("off a bump of {}: {}", length(style, bump_m, false), left(room_m))
        }
        MisfitKind::PackInBox { left_m, tightest, .. } => {
            let way = ["length", "width", "height"].get(tightest).copied().unwrap_or_default();
            format!("{way}: {}", left(left_m.get(tightest).copied().unwrap_or(0.0)))
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

fn file(style: Style) -> Style {
    Style { units: Units::Metric, ..style }
}

fn room(between: Between) -> &'static str {
    match between {
        Between::PulleyRoad => "Wheel pulley to road",
        Between::BeltRoad => "Belt to road",
        Between::MotorRoad => "Motor to road",
        Between::MotorWheel => "Motor to wheel",
        Between::MotorDeck => "Motor to deck",
        Between::MotorBox => "Motor to enclosure",
        Between::MotorMotor => "Motor to motor",
        Between::Hanger => "Hanger width",
        Between::Axle => "Axle length",
    }
}

/// With a capital in front.
pub(super) fn capital(text: &str) -> String {
    let mut capital = String::from(text);
    if let Some(first) = capital.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    capital
}

#[cfg(test)]
mod tests {
    use super::*;
    use pitchline_core::catalog::Catalog;

    /// What is said of the faults of a file of motor pulleys and one kit, sorted.
    fn said(pulleys: &str, kits: &str) -> Vec<[String; 3]> {
        let text = format!(
            r#"{{"schema_version": 1, "maker": "M", "motor_pulleys": {pulleys}, "kits": {kits}}}"#
        );
        let (catalog, faults) = Catalog::read(&text).expect("an object");
        let style = Style { units: Units::Imperial, comma: true };
        let mut said: Vec<_> = faults
            .iter()
            .map(|fault| {
                let place = catalog.place(fault);
                [whose(&place), wrong(&place, &fault.reason, style), right(&fault.reason, style)]
            })
            .collect();
        said.sort();
        said
    }

    /// In the units of the file, whatever the reader prefers; his comma is his own.
    #[test]
    fn each_fault_says_whose_it_is_what_is_wrong_and_what_would_be_right() {
        let pulley = |rest: &str| said(&format!(r#"[{{"id": "p", "name": "P", {rest}}}]"#), "[]");
        for (rest, wrong, right) in [
            (r#""teeth": 7"#, "teeth: 7\u{a0}teeth. Left out.", "8 to 60\u{a0}teeth"),
            (
                r#""teeth": 16.5"#,
                "teeth: 16,5\u{a0}teeth. Left out.",
                "a whole number, 8 to 60\u{a0}teeth",
            ),
            (
                r#""teeth": "16""#,
                "teeth: not in this form. Left out.",
                "a whole number from 8 to 60 teeth, not in quotes",
            ),
            (r#""bore": "8 mm""#, "teeth: missing. Left out.", "a whole number from 8 to 60 teeth"),
            (r#""teeth": 16, "bor": "8""#, "bor: not a known key. Ignored.", "bore?"),
        ] {
            assert_eq!(pulley(rest), [["P (motor pulley)", wrong, right].map(String::from)]);
        }
        assert_eq!(
            said("{}", "[]"),
            [[
                "motor_pulleys (the whole list)",
                "Not in this form. Left out.",
                "a list in square brackets"
            ]
            .map(String::from)]
        );
        let kit = r#"[{"id": "k", "name": "K", "slots": {"motor_pulley": {"default": "q"}}}]"#;
        assert_eq!(
            said(r#"[{"id": "p", "name": "P", "teeth": 16}]"#, kit),
            [["K (kit)", "slots/motor_pulley/default: \"q\" is not known. Ignored.", "p?"]
                .map(String::from)]
        );
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
                "Every combination, Pack above the controller's limit: full at 42\u{a0}V, the controller survives 40\u{a0}V",
                "Every combination, Tags don't match: motor \"8 mm\", motor pulley \"10 mm\"",
                "Every combination, Wrong charger: output 50.4\u{a0}V, the pack is full at 42\u{a0}V",
            ]
        );
    }

    #[test]
    fn large_counts_are_grouped_and_the_largest_are_not_spelt_out() {
        assert_eq!(count(1, "part", "parts"), "1 part");
        assert_eq!(count(0, "part", "parts"), "0 parts");
        assert_eq!((big(9999), big(50_000)), ("9999".into(), "50\u{202f}000".into()));
        assert_eq!(big(1_200_000), "1\u{202f}200\u{202f}000");
        assert_eq!(big(1 << 62), "over a billion");
        assert_eq!(unusable(1), "1 entry in this catalogue couldn't be used.");
    }
}
