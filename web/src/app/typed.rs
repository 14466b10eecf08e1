//! Text in the fields while it is being typed.

use crate::text::{self, Style, number};
use pitchline_core::{Error, Field, Kind, Need, Reason, Slot};

/// Which input: a slot, and its place in the kind's table.
pub type Place = (Slot, usize);

/// What stands in a field and is not yet written out by us.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// As typed.
    pub text: String,
    /// What is wrong with it, in a sentence.
    pub fault: Option<String>,
    /// What the build had before anything was typed, in the file's unit.
    pub before: Option<f64>,
}

/// Every field that someone is typing in or has left faulty: a handful at most.
#[derive(Clone, Debug, Default)]
pub struct Typed(Vec<(Place, Entry)>);

impl Typed {
    /// What stands in a field.
    #[must_use]
    pub fn get(&self, place: Place) -> Option<&Entry> {
        self.0.iter().find(|(at, _)| *at == place).map(|(_, entry)| entry)
    }

    /// Puts text into a field.
    pub fn put(&mut self, place: Place, entry: Entry) {
        self.clear(place);
        self.0.push((place, entry));
    }

    /// Leaves a field to what the build says.
    pub fn clear(&mut self, place: Place) {
        self.0.retain(|(at, _)| *at != place);
    }

    /// Keeps only some of the fields.
    pub fn keep(&mut self, keep: impl Fn(Place, &Entry) -> bool) {
        self.0.retain(|(place, entry)| keep(*place, entry));
    }

    /// What was typed, field by field.
    #[must_use]
    pub fn texts(&self) -> Vec<(Place, String)> {
        self.0.iter().map(|(place, entry)| (*place, entry.text.clone())).collect()
    }

    /// The first faulty field, and what is wrong with it.
    #[must_use]
    pub fn fault(&self) -> Option<(Place, &str)> {
        self.0.iter().find_map(|(place, entry)| Some((*place, entry.fault.as_deref()?)))
    }
}

/// A value from what was typed, in the file's unit; `None` for a field left empty.
///
/// # Errors
/// A sentence that names the field, the range and the unit.
pub(super) fn value(
    kind: Kind,
    field: &Field,
    text: &str,
    style: Style,
) -> Result<Option<f64>, String> {
    let say = |reason: &Reason| text::reason(kind, field.key, reason, style);
    if text.trim().is_empty() {
        // What is assumed when left out of a file is still needed here: it was shown.
        return if field.need == Need::Optional {
            Ok(None)
        } else {
            Err(say(&Reason::missing("")))
        };
    }
    // A hair of rounding from the conversion would stand in links and files.
    let shown = style.units.field(kind, field);
    let check = |typed| field.check(number::tidy(shown.to_file(typed)));
    let small = number::parse(text).unwrap_or(f64::NAN);
    let found = check(small);
    if let Some(large) = number::grouped(text, style)
        && let Ok(value) = check(large)
    {
        return match found {
            Ok(_) => Err(text::two_readings(kind, field, [small, large], style)),
            Err(_) => Ok(Some(value)),
        };
    }
    found.map(Some).map_err(|Error { reason, .. }| say(&reason))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::Units;

    fn read(kind: Kind, key: &str, text: &str, style: Style) -> Result<Option<f64>, String> {
        value(kind, &kind.fields()[kind.field_index(key).unwrap()], text, style)
    }

    #[test]
    fn a_fault_names_field_range_and_unit() {
        assert_eq!(
            read(Kind::MotorPulley, "teeth", "7", Style::default()).unwrap_err(),
            "Teeth: enter a value from 8 to 60\u{a0}teeth"
        );
        let imperial = Style { units: Units::Imperial, comma: false };
        assert_eq!(
            read(Kind::Deck, "width_mm", "1", imperial).unwrap_err(),
            "Width at the wheels: enter a value from 1.969 to 19.69\u{a0}in"
        );
        // Wheels are sold in millimetres.
        assert_eq!(
            read(Kind::Wheel, "diameter_mm", "1", imperial).unwrap_err(),
            "Diameter: enter a value from 50 to 400\u{a0}mm"
        );
    }

    #[test]
    fn thousands_are_no_decimals() {
        let (point, comma) = (Style::default(), Style { comma: true, ..Style::default() });
        // Cycles may be 1 as well as 1000; a whole number of them is no fraction.
        let asked = "Charge cycles so far: is that 1 or 1000\u{a0}cycles? Type the one you mean.";
        for (text, style) in [("1,000", point), ("1.000", comma)] {
            assert_eq!(read(Kind::Pack, "cycles", text, style).unwrap_err(), asked);
        }
        // The reader's own mark is one for decimals.
        assert_eq!(read(Kind::Pack, "cycles", "1.000", point), Ok(Some(1.0)));
        // Where one reading only lies within the range, that one is meant.
        assert!(read(Kind::Place, "altitude_m", "1,000", point).is_err());
        assert_eq!(read(Kind::Rider, "mass_kg", "78,250", point), Ok(Some(78.25)));
        assert_eq!(read(Kind::Controller, "erpm_limit", "60,000", point), Ok(Some(60_000.0)));
    }

    #[test]
    fn imperial_text_becomes_the_files_unit() {
        let imperial = Style { units: Units::Imperial, comma: false };
        let kg = read(Kind::Rider, "mass_kg", "200", imperial).unwrap().unwrap();
        // NIST SP 811: 1 lb = 0.45359237 kg.
        assert!((kg - 90.718_474).abs() < 1e-9);
    }

    #[test]
    fn empty_is_allowed_only_where_it_means_something() {
        assert_eq!(read(Kind::Mode, "speed_cap_km_h", " ", Style::default()), Ok(None));
        assert!(read(Kind::Rider, "mass_kg", "", Style::default()).is_err());
    }
}
