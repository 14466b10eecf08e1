//! What is wrong with an entry, how to fix it, and what is assumed.

use super::{count, file};
use crate::text::sentence::{THE_FILE, what};
use crate::text::words::capital;
use crate::text::{Style, words};
use pitchline_core::catalog::{AssumedValue, Place};
use pitchline_core::{Kind, Reason, Unit};

/// Of a value that depends on the cells.
const BY_CELLS: &str = "depends on the cells";

/// What a part of the list is called, and what it is.
#[must_use]
pub fn whose(place: &Place) -> String {
    let list =
        Kind::ALL.iter().find(|kind| kind.list_key() == place.list && !place.list.is_empty());
    let what = match (list, place.list.as_str()) {
        (Some(kind), _) => words::kind(*kind).to_ascii_lowercase(),
        (None, "kits") => "kit".into(),
        (None, _) => return THE_FILE.into(),
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
            0 => format!("unknown name \"{given}\""),
            n => format!(
                "unknown name \"{given}\" (also in {})",
                count(u64::from(*n), "other place", "other places")
            ),
        },
        Reason::UnknownChoice { given, .. } => format!("\"{given}\" isn't one of the choices"),
        Reason::Duplicate { given, times: 2, .. } => format!("\"{given}\" appears twice"),
        Reason::Duplicate { given, times, .. } => format!("\"{given}\" appears {times} times"),
        Reason::WrongForm { .. } if key == "schema_version" => "not version 1".into(),
        Reason::WrongForm { .. } => "wrong type".into(),
        Reason::TooLarge { most, what } => format!("more than {most} {what}"),
        other => what(other, style),
    };
    let became = match (place.list.as_str(), key.as_str()) {
        _ if place.left_out => "Not used.",
        // Nothing takes the place of what was meant.
        ("kits", key) if key.ends_with("/default") => {
            "This kit shows no figures until the visitor picks a part."
        }
        ("packs", "cell") => "This pack shows no figures until the visitor picks a cell.",
        _ => "Ignored.",
    };
    match key.as_str() {
        "" => format!("{}. {became}", capital(&said)),
        key => format!("{key}: {said}. {became}"),
    }
}

/// How to fix it.
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
            let first =
                known.next().filter(|_| *near).map(|first| format!("Did you mean \"{first}\"?"));
            first.unwrap_or_else(|| nothing_near(reason, *more))
        }
        Reason::Duplicate { meant, .. } if !meant.is_empty() => {
            format!("Did you mean \"{meant}\"?")
        }
        Reason::Duplicate { first, .. } => {
            format!("an id of its own: {} already has this one", entry(first))
        }
        Reason::TooLarge { most, what } => format!("at most {most} {what}"),
        Reason::Unfilled { .. } | Reason::Unused { .. } | Reason::Syntax { .. } => String::new(),
    }
}

/// An entry by its pointer, counted from 1 as everywhere on the page: `/motors/0` is entry 1 of
/// motors.
fn entry(pointer: &str) -> String {
    let mut steps = pointer.split('/').skip(1);
    match (steps.next(), steps.next().and_then(|step| step.parse::<u64>().ok()), steps.next()) {
        (Some(list), Some(number), None) => format!("entry {} of {list}", number + 1),
        _ => pointer.into(),
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::Units;
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
            (r#""teeth": 7"#, "teeth: 7\u{a0}teeth. Not used.", "8 to 60\u{a0}teeth"),
            (
                r#""teeth": 16.5"#,
                "teeth: 16,5\u{a0}teeth. Not used.",
                "a whole number, 8 to 60\u{a0}teeth",
            ),
            (
                r#""teeth": "16""#,
                "teeth: wrong type. Not used.",
                "a whole number from 8 to 60 teeth, not in quotes",
            ),
            (r#""bore": "8 mm""#, "teeth: missing. Not used.", "a whole number from 8 to 60 teeth"),
            (
                r#""teeth": 16, "bor": "8""#,
                "bor: not a known key. Ignored.",
                "Did you mean \"bore\"?",
            ),
        ] {
            assert_eq!(pulley(rest), [["P (motor pulley)", wrong, right].map(String::from)]);
        }
        assert_eq!(
            said("{}", "[]"),
            [[
                "motor_pulleys (the whole list)",
                "Wrong type. Not used.",
                "a list in square brackets"
            ]
            .map(String::from)]
        );
        let kit = r#"[{"id": "k", "name": "K", "slots": {"motor_pulley": {"default": "q"}}}]"#;
        assert_eq!(
            said(r#"[{"id": "p", "name": "P", "teeth": 16}]"#, kit),
            [[
                "K (kit)",
                "slots/motor_pulley/default: unknown name \"q\". This kit shows no figures until the visitor picks a part.",
                "Did you mean \"p\"?"
            ]
            .map(String::from)]
        );
    }
}
