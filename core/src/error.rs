//! The one error type: which field, what was given, what is allowed, in what unit.

use crate::bounds::Unit;
use crate::near::by_nearness;
use alloc::borrow::Cow;
use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

/// Something that cannot be accepted, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct Error {
    /// Path of the field, with dots or slashes, such as `motor.kv_rpm_per_v` or `/motors/2`.
    pub field: String,
    /// Name of the part or kit that the field belongs to, as shown to people; empty if unknown.
    pub part: String,
    /// What is wrong with it.
    pub reason: Reason,
}

/// What is wrong with a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Reason {
    /// A number outside its limits.
    OutOfRange {
        /// What was given, in `unit`.
        value: f64,
        /// Smallest value allowed.
        min: f64,
        /// Largest value allowed.
        max: f64,
        /// Unit of all three.
        unit: Unit,
    },
    /// A number that must be whole (teeth, cells) and is not.
    NotWhole {
        /// What was given.
        value: f64,
        /// Smallest value allowed.
        min: f64,
        /// Largest value allowed.
        max: f64,
        /// What it counts.
        unit: Unit,
    },
    /// Not a finite number.
    NotANumber {
        /// Smallest value allowed.
        min: f64,
        /// Largest value allowed.
        max: f64,
        /// Unit of both.
        unit: Unit,
    },
    /// Required but missing.
    Missing {
        /// What should be there; empty if that is obvious.
        expected: Cow<'static, str>,
    },
    /// A slot whose chosen part is missing.
    Unfilled {
        /// Name of that part, or its id; empty if neither can be read.
        name: String,
    },
    /// Not one of the choices.
    UnknownChoice {
        /// What was given.
        given: String,
        /// What is allowed, with commas.
        allowed: String,
    },
    /// A key, or a part named by its id, that is not known.
    Unknown {
        /// What was given.
        given: String,
        /// What is known, the nearest first; not more than can be read at a glance.
        known: Vec<String>,
        /// Whether the first of them is near enough to be what was meant.
        near: bool,
        /// How many more are known.
        more: u32,
        /// In how many other places the same name is used.
        elsewhere: u32,
    },
    /// An id that is used more than once.
    Duplicate {
        /// The id.
        given: String,
        /// Where it stands first.
        first: Box<str>,
        /// How often it stands in the list.
        times: u32,
        /// An id that kits use and no part has, so it may be meant here; or empty.
        meant: Box<str>,
    },
    /// A value of the wrong form.
    WrongForm {
        /// What was expected.
        expected: Cow<'static, str>,
    },
    /// Something that is understood and has no effect here.
    Unused {
        /// Why.
        why: &'static str,
    },
    /// Text that is not JSON.
    Syntax {
        /// Line, counted from 1.
        line: usize,
        /// Column, counted from 1.
        column: usize,
        /// What is wrong there, if known; or empty.
        slip: &'static str,
    },
    /// More than is read.
    TooLarge {
        /// The most that is read, in `unit`.
        most: usize,
        /// What is counted.
        what: &'static str,
    },
}

impl Error {
    /// An error at `field`.
    pub fn new(field: impl Into<String>, reason: Reason) -> Self {
        Self { field: field.into(), part: String::new(), reason }
    }

    /// The same error with `prefix` put in front of the field.
    #[must_use]
    pub fn under(mut self, prefix: &str) -> Self {
        self.field.insert_str(0, prefix);
        self
    }
}

/// Most known words that a message lists.
const LISTED: usize = 8;

impl Reason {
    /// A word that is not among the known ones.
    #[must_use]
    pub fn unknown(given: &str, known: &[&str]) -> Self {
        let (words, near) = by_nearness(given, known);
        Self::Unknown {
            given: given.into(),
            known: words.iter().take(LISTED).map(|word| String::from(*word)).collect(),
            near: near > 0,
            more: words.iter().skip(LISTED).map(|_| 1).sum(),
            elsewhere: 0,
        }
    }

    /// Another form than expected.
    pub fn wrong_form(expected: impl Into<Cow<'static, str>>) -> Self {
        Self::WrongForm { expected: expected.into() }
    }

    /// Something that has to be there.
    pub fn missing(expected: impl Into<Cow<'static, str>>) -> Self {
        Self::Missing { expected: expected.into() }
    }

    /// How a number misses its range, in words that lead up to the range: a
    /// number beside an end may read like the end itself.
    #[must_use]
    pub fn beyond(&self) -> &'static str {
        let Self::OutOfRange { value, min, max, .. } = self else {
            return "not a whole number from";
        };
        let end = if value < min { min } else { max };
        if crate::math::abs(value - end) > 1e-6 + 1e-5 * crate::math::abs(*end) {
            "outside the range"
        } else if value < min {
            "just below the range"
        } else {
            "just above the range"
        }
    }
}

/// A number to at most six decimals with its unit, by whole-number arithmetic:
/// the general formatter costs the page more than all of this file.
pub(crate) struct Plain(pub(crate) f64, pub(crate) Unit);

pub(crate) fn bare(number: f64) -> Plain {
    Plain(number, Unit::None)
}

impl fmt::Display for Plain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        const MILLION: u64 = 1_000_000;
        let size = crate::math::abs(self.0);
        if size.is_nan() || size >= 1e12 {
            return f.write_str("a number too large to show");
        }
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 1e18")]
        let millionths = crate::math::round(size * 1e6) as u64;
        if self.0 < 0.0 && millionths > 0 {
            f.write_str("-")?;
        }
        let (whole, mut part, mut digits) = (millionths / MILLION, millionths % MILLION, 6);
        write!(f, "{whole}")?;
        if part > 0 {
            while part % 10 == 0 {
                part /= 10;
                digits -= 1;
            }
            write!(f, ".{part:0digits$}")?;
        }
        let one = whole == 1 && part == 0 && self.0 > 0.0;
        let unit = if one { self.1.symbol_of_one() } else { self.1.symbol() };
        if unit.is_empty() { Ok(()) } else { write!(f, " {unit}") }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.part.is_empty() {
            write!(f, "\"{}\": ", self.part)?;
        }
        f.write_str(&self.field)?;
        f.write_str(": ")?;
        self.reason.fmt(f)
    }
}

impl fmt::Display for Reason {
    #[inline]
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange { value, min, max, unit }
            | Self::NotWhole { value, min, max, unit } => {
                let (value, min, max) = (Plain(*value, *unit), bare(*min), Plain(*max, *unit));
                write!(f, "{value} is {} {min} to {max}", self.beyond())
            }
            Self::NotANumber { min, max, unit } => {
                write!(f, "must be a number from {} to {}", bare(*min), Plain(*max, *unit))
            }
            Self::Missing { expected } if expected.is_empty() => {
                f.write_str("is required but missing")
            }
            Self::Missing { expected } => write!(f, "is required but missing: {expected}"),
            Self::Unfilled { name } if name.is_empty() => {
                f.write_str("no part is picked; pick one")
            }
            Self::Unfilled { name } => write!(f, "\"{name}\" isn't available; pick another part"),
            Self::UnknownChoice { given, allowed } => {
                write!(f, "\"{given}\" is not one of {allowed}")
            }
            Self::Unknown { given, known, near, more, elsewhere } => {
                write!(f, "\"{given}\" is not known")?;
                match elsewhere {
                    0 => {}
                    1 => f.write_str(" (also used in 1 other place)")?,
                    n => write!(f, " (also used in {n} other places)")?,
                }
                let mut others = known.iter();
                if let Some(nearest) = others.next().filter(|_| *near) {
                    write!(f, "; did you mean \"{nearest}\"?")?;
                } else {
                    others = known.iter();
                }
                listed(
                    f,
                    others.as_slice(),
                    if *near { " Other names" } else { "; known names" },
                    *more,
                )
            }
            Self::Duplicate { given, first, times, meant } => {
                write!(f, "\"{given}\" appears ")?;
                if *times == 2 { f.write_str("twice") } else { write!(f, "{times} times") }?;
                write!(f, ", first at {first}; ")?;
                if meant.is_empty() {
                    f.write_str("give each its own id")
                } else {
                    write!(f, "did you mean \"{meant}\", which is used but missing?")
                }
            }
            Self::WrongForm { expected } => write!(f, "expected {expected}"),
            Self::Unused { why } => f.write_str(why),
            Self::Syntax { line, column, slip } => {
                write!(f, "is not valid JSON at line {line}, column {column}")?;
                if slip.is_empty() { Ok(()) } else { write!(f, ": {slip}") }
            }
            Self::TooLarge { most, what } => write!(f, "has more than {most} {what}"),
        }
    }
}

/// A list of known words, and how many more there are.
fn listed(f: &mut fmt::Formatter<'_>, words: &[String], title: &str, more: u32) -> fmt::Result {
    let mut before = ": ";
    if !words.is_empty() {
        f.write_str(title)?;
    }
    for word in words {
        write!(f, "{before}{word}")?;
        before = ", ";
    }
    if more > 0 && !words.is_empty() { write!(f, " and {more} more") } else { Ok(()) }
}

impl core::error::Error for Error {}

#[cfg(test)]
mod tests {
    use super::*;
    use std::string::ToString;

    #[test]
    fn numbers_read_as_typed() {
        for (value, text) in [
            (7.0, "7"),
            (-0.25, "-0.25"),
            (0.000_001, "0.000001"),
            (1234.5, "1234.5"),
            (0.05, "0.05"),
            (1e300, "a number too large to show"),
            (f64::NAN, "a number too large to show"),
        ] {
            assert_eq!(bare(value).to_string(), text);
        }
        assert_eq!(Plain(-1.5, Unit::Kilogram).to_string(), "-1.5 kg");
    }

    #[test]
    fn beside_an_end_it_is_said_on_which_side() {
        let said = |value: f64| {
            Reason::OutOfRange { value, min: 0.1, max: 60.0, unit: Unit::Kilogram }.to_string()
        };
        assert_eq!(said(0.1_f64.next_down()), "0.1 kg is just below the range 0.1 to 60 kg");
        assert_eq!(said(60.000_000_4), "60 kg is just above the range 0.1 to 60 kg");
        assert_eq!(said(0.0999), "0.0999 kg is outside the range 0.1 to 60 kg");
    }
}
