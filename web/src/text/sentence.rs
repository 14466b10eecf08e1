//! Sentences about what is wrong, and what a person would want to be told.

use super::number::Style;
use super::words;
use super::{label, unit::Units};
use pitchline_core::physics::{Basis, Chemistry};
use pitchline_core::{Caveat, Error, Field, Kind, Notice, Reason, Unfilled, Unit};

/// What is wrong with a field that someone typed into, with its range and unit.
#[must_use]
pub fn reason(kind: Kind, key: &str, reason: &Reason, style: Style) -> String {
    let name = label(kind, key);
    let (what, min, max, unit) = match reason {
        Reason::OutOfRange { min, max, unit, .. } => ("a value", min, max, unit),
        Reason::NotWhole { min, max, unit, .. } => ("a whole number", min, max, unit),
        Reason::NotANumber { min, max, unit } => ("a number", min, max, unit),
        _ => return format!("{name}: enter a value"),
    };
    let field = kind.field_index(key).and_then(|index| kind.fields().get(index));
    let sold =
        field.is_some_and(|field| style.units.field(kind, field) != style.units.shown(*unit));
    let style = if sold { Style { units: Units::Metric, ..style } } else { style };
    let low = style.value(*min, *unit, 4);
    let high = style.quantity(*max, *unit, 4);
    format!("{name}: enter {what} from {low} to {high}")
}

/// What was typed may be read as either number, both within the range.
#[must_use]
pub fn two_readings(kind: Kind, field: &Field, typed: [f64; 2], style: Style) -> String {
    let [small, large] = typed.map(|value| style.significant(value, 9));
    let (name, unit) = (label(kind, field.key), style.units.field(kind, field).symbol);
    format!("{name}: is that {small} or {large}\u{a0}{unit}? Type the one you mean.")
}

/// What a fault is of that is of nothing within the file.
pub const THE_FILE: &str = "The file";

/// A fault in a file or a link: where it is and what was expected.
#[must_use]
pub fn fault(error: &Error, style: Style) -> String {
    let what = match &error.reason {
        Reason::WrongForm { expected } if error.field.is_empty() => format!("must be {expected}"),
        reason => what(reason, style),
    };
    let part = if error.part.is_empty() { String::new() } else { format!("\"{}\": ", error.part) };
    if error.field.is_empty() {
        format!("{THE_FILE} {what}")
    } else {
        format!("{part}{}: {what}", error.field)
    }
}

/// What is wrong, in the units of files: those are metric whatever the reader prefers.
pub(super) fn what(reason: &Reason, style: Style) -> String {
    let file = Style { units: Units::Metric, ..style };
    match reason {
        Reason::OutOfRange { value, min, max, unit }
        | Reason::NotWhole { value, min, max, unit } => {
            let value = file.quantity(*value, *unit, 6);
            let (how, low) = (reason.beyond(), file.value(*min, *unit, 6));
            format!("{value} is {how} {low} to {}", file.quantity(*max, *unit, 6))
        }
        other => other.to_string(),
    }
}

/// A slot without its part: what is missing, why, and what to do. `kit` is the kit's name.
#[must_use]
pub fn unfilled(kit: &str, unfilled: &Unfilled, style: Style) -> String {
    let whose = if kit.is_empty() { "This build" } else { kit };
    let slot = words::slot(unfilled.slot).to_ascii_lowercase();
    let named = match unfilled.name.as_str() {
        "" => String::new(),
        name => format!("\"{name}\" "),
    };
    let why = match &unfilled.why {
        None if unfilled.name.is_empty() => "its entry in this catalogue can't be read".into(),
        None => "isn't in this catalogue".into(),
        Some(error) => {
            let key = error.field.rsplit('/').next().unwrap_or_default();
            format!("can't be used ({key}: {})", what(&error.reason, style))
        }
    };
    format!("{whose}, {slot}: {named}{why}. Pick another to see figures.")
}

/// What a figure rests on that is less than the rest.
#[must_use]
pub fn caveat(caveat: &Caveat, style: Style) -> String {
    let Caveat::ColdCells { chemistry, air_c, basis } = caveat;
    let cells = match chemistry {
        Chemistry::Energy => "energy cells",
        Chemistry::Power => "power cells",
        Chemistry::Lfp => "LFP cells",
    };
    let rest = match basis {
        Basis::PublishedModel => "come from a published model",
        Basis::Extrapolated => "are extrapolated from warmer cells",
        Basis::CommonPractice => "are a rule of thumb, not measured",
    };
    let air = style.quantity(*air_c, Unit::Celsius, 2);
    format!("Figures for {cells} at {air} {rest}, so the range is wider.")
}

/// The same in a few words, for what leads to the list.
#[must_use]
pub fn pick_another(unfilled: &Unfilled) -> String {
    let slot = words::slot(unfilled.slot);
    match unfilled.name.as_str() {
        "" => format!("{slot}: pick one to see figures."),
        name => format!("{slot}: \"{name}\" is missing. Pick another to see figures."),
    }
}

/// What a person would want to be told about a build.
#[must_use]
pub fn notice(notice: &Notice, style: Style) -> String {
    match notice {
        Notice::PackAboveController { pack_v, controller_v } => format!(
            "The full pack is at {}, but the controller survives no more than {}. Don't connect them.",
            style.quantity(*pack_v, Unit::Volt, 3),
            style.quantity(*controller_v, Unit::Volt, 3),
        ),
        Notice::ChargerVoltage { charger_v, pack_v, fits_v: [least_v, most_v] } => format!(
            "The charger's output is {}, but this pack is full at {} and needs a charger with an output of {} to {}. Don't use it: the wrong charger can set a pack on fire.",
            style.quantity(*charger_v, Unit::Volt, 3),
            style.quantity(*pack_v, Unit::Volt, 3),
            style.value(*least_v, Unit::Volt, 3),
            style.quantity(*most_v, Unit::Volt, 3),
        ),
        Notice::FullVoltage { full_v, highest_v } => {
            let highest = style.quantity(*highest_v, Unit::Volt, 3);
            format!(
                "The full voltage entered is {} per cell. Cells of this chemistry take {highest} at most, so {highest} is used. Correct the voltage or the chemistry before you charge.",
                style.quantity(*full_v, Unit::Volt, 3),
            )
        }
        Notice::PackTooLight { pack_kg, cells_kg } => format!(
            "The pack's weight is given as {}, but its cells alone weigh {}. When you change its cells, enter its new weight and price too.",
            style.quantity(*pack_kg, Unit::Kilogram, 2),
            style.quantity(*cells_kg, Unit::Kilogram, 2),
        ),
        Notice::TagMismatch { one, one_tag, other, other_tag } if one == other => format!(
            "{} and their mounts don't match: the hanger is \"{one_tag}\", but the mounts are for \"{other_tag}\".",
            words::kind(one.kind()),
        ),
        Notice::TagMismatch { one, one_tag, other, other_tag } => {
            let [one, other] =
                [one, other].map(|slot| words::kind(slot.kind()).to_ascii_lowercase());
            format!(
                "{} and {other} don't match: {one} \"{one_tag}\", {other} \"{other_tag}\".",
                words::capital(&one)
            )
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cold_cells_are_told_with_what_their_figures_rest_on() {
        let say = |chemistry, basis| {
            caveat(&Caveat::ColdCells { chemistry, air_c: -12.0, basis }, Style::default())
        };
        assert_eq!(
            say(Chemistry::Lfp, Basis::CommonPractice),
            "Figures for LFP cells at \u{2212}12\u{a0}°C are a rule of thumb, not measured, so the range is wider."
        );
        assert_eq!(
            say(Chemistry::Energy, Basis::Extrapolated),
            "Figures for energy cells at \u{2212}12\u{a0}°C are extrapolated from warmer cells, so the range is wider."
        );
    }
}
