//! What differs between two builds, in words.

use super::{Style, label, words};
use pitchline_core::{Field, Need, Slot, Unit};

/// Of a part of the reader's own without a name.
const OWN: &str = "my own";

/// Before the name of an edit that has been undone.
pub const UNDONE: &str = "Undone";
/// Before the name of one that has been done again.
pub const REDONE: &str = "Redone";
/// Where there is none.
pub const NO_MORE: &str = "There is nothing more to undo or redo.";

/// After a start from a kit, by its name.
#[must_use]
pub fn switched(kit: &str) -> String {
    format!("Switched to the standard {kit}. Your rider settings are kept.")
}

/// One thing that differs.
#[derive(Clone, Debug, PartialEq)]
pub struct Said {
    /// What it is of: "Motor pulley".
    of: String,
    /// How it differs: "15 to 13 teeth".
    how: String,
}

impl Said {
    /// On a line of its own: "Motor pulley: 15 to 13 teeth".
    #[must_use]
    pub fn line(&self) -> String {
        format!("{}: {}", self.of, self.how)
    }

    /// Within a sentence: "motor pulley: 15 to 13 teeth".
    #[must_use]
    pub fn within(&self) -> String {
        format!("{}: {}", small(&self.of), self.how)
    }
}

/// With a small letter in front, unless it is a symbol.
fn small(text: &str) -> String {
    let mut small = String::from(text);
    let symbol = text.starts_with("Kv") || text.starts_with("ERPM");
    if let Some(first) = small.get_mut(..1).filter(|_| !symbol) {
        first.make_ascii_lowercase();
    }
    small
}

fn said(of: impl Into<String>, how: String) -> Said {
    Said { of: of.into(), how }
}

/// Another kit, by its name.
#[must_use]
pub fn kit([from, to]: [String; 2]) -> Said {
    said("Kit", instead(&to, &from))
}

/// What there is now, and what there was: "47 to 52" would be a range.
fn instead(to: &str, from: &str) -> String {
    format!("{to} instead of {from}")
}

/// Another part in a slot, by its name.
#[must_use]
pub fn part(slot: Slot, names: &[String; 2]) -> Said {
    let [from, to] = names.each_ref().map(|name| if name.is_empty() { OWN } else { name });
    said(words::slot(slot), instead(to, from))
}

/// The build's own name.
#[must_use]
pub fn name([from, to]: &[String; 2]) -> Said {
    let how = match (from.is_empty(), to.is_empty()) {
        (true, _) => to.clone(),
        (_, true) => instead("none", from),
        _ => instead(to, from),
    };
    said("Name", how)
}

/// Words of a part.
#[must_use]
pub fn texts(of: &str) -> Said {
    said(of, "name, notes or fitting changed".into())
}

/// What a later version's links and files say beyond what this page knows.
#[must_use]
pub fn rest() -> Said {
    said("Other details", "changed".into())
}

/// Another value, in the file's unit; none where it is left out.
#[must_use]
pub fn value(
    slot: Slot,
    field: &Field,
    values: [Option<f64>; 2],
    currency: &str,
    style: Style,
) -> Said {
    let name = label(slot.kind(), field.key);
    let of = match (slot.holds_part(), field.unit) {
        (false, _) => name.into(),
        // A pulley is its teeth.
        (true, Unit::Teeth) => words::slot(slot).into(),
        (true, _) => format!("{}, {}", words::slot(slot), small(name)),
    };
    if !field.choices.is_empty() {
        let [from, to] =
            values.map(|v| words::choice(field.choice_name(v.unwrap_or(field.typical))));
        return said(of, instead(to, from));
    }
    let shown = style.units.field(slot.kind(), field);
    let unit = if field.unit == Unit::Money { currency } else { shown.symbol };
    let number = |value| style.input(value, shown).replace('-', "−");
    let with_unit = |value| {
        let text = number(value);
        let unit =
            if text == "1" && field.unit.whole() { field.unit.symbol_of_one() } else { unit };
        let gap = if unit.is_empty() { "" } else { "\u{a0}" };
        format!("{text}{gap}{unit}")
    };
    // A value left out of a part is assumed, unless it may stay empty.
    let nothing = if field.need == Need::Assumed { "the assumed value" } else { "none" };
    let how = match values {
        [Some(from), Some(to)] => instead(&number(to), &with_unit(from)),
        [None, Some(to)] => instead(&with_unit(to), nothing),
        [Some(from), None] => instead(nothing, &with_unit(from)),
        [None, None] => String::new(),
    };
    said(of, how)
}

/// All of it in a few words: the first, and how many more.
#[must_use]
pub fn named(all: &[Said]) -> String {
    match all {
        [] => String::new(),
        [one] => one.within(),
        [one, _] => format!("{}, plus 1 more change", one.within()),
        [one, rest @ ..] => format!("{}, plus {} more changes", one.within(), rest.len()),
    }
}

/// Beside answers, what the last edit was.
#[must_use]
pub fn since(edit: &str) -> String {
    format!("Last change – {edit}")
}

/// How many parts differ from those of a kit, by its name.
#[must_use]
pub fn from_kit(parts: usize, kit: &str) -> String {
    match parts {
        1 => format!("1 part differs from the standard {kit}"),
        n => format!("{n} parts differ from the standard {kit}"),
    }
}
