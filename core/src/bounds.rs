//! Limits as data: every input's unit, range and typical value in one row.

use crate::error::{Error, Plain, Reason, bare};
use crate::parts::CellClass;
use alloc::string::String;

/// Unit of an input as it is written in a file, or of a result as it is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "the names are the units")]
pub enum Unit {
    None,
    Count,
    Teeth,
    Cells,
    Cycles,
    Percent,
    Kilogram,
    Millimetre,
    Metre,
    SquareMetre,
    Celsius,
    Degree,
    MetrePerSecond,
    KilometrePerHour,
    Kilometre,
    Volt,
    Ampere,
    AmpereHour,
    PerAmpere,
    PerVolt,
    Ohm,
    MilliOhm,
    MicroHenry,
    Henry,
    Pascal,
    Bar,
    Second,
    Hour,
    Watt,
    WattHour,
    WattHourPerKilometre,
    RpmPerVolt,
    Rpm,
    Newton,
    NewtonPerMillimetre,
    NewtonMetre,
    NewtonMetrePerAmpere,
    NewtonSquareMetre,
    RadianPerSecond,
    KilogramPerCubicMetre,
    KilogramPerMetre,
    Radian,
    Hertz,
    SquareMillimetre,
    Gauge,
    Money,
    MetrePerSecondSquared,
    MetrePerKilometre,
    PerKilometre,
    KelvinPerWatt,
    PerKelvin,
    JoulePerKelvin,
    KilogramSquareMetre,
    SquareAmpere,
}

impl Unit {
    /// The symbol as printed after a number; empty for a bare number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::None | Self::Count | Self::Money => "",
            Self::Teeth => "teeth",
            Self::Cells => "cells",
            Self::Cycles => "cycles",
            Self::Percent => "%",
            Self::Kilogram => "kg",
            Self::Millimetre => "mm",
            Self::Metre => "m",
            Self::SquareMetre => "m²",
            Self::Celsius => "°C",
            Self::Degree => "°",
            Self::MetrePerSecond => "m/s",
            Self::KilometrePerHour => "km/h",
            Self::Kilometre => "km",
            Self::Volt => "V",
            Self::Ampere => "A",
            Self::AmpereHour => "Ah",
            Self::PerAmpere => "1/A",
            Self::PerVolt => "1/V",
            Self::Ohm => "Ω",
            Self::MilliOhm => "mΩ",
            Self::MicroHenry => "µH",
            Self::Henry => "H",
            Self::Pascal => "Pa",
            Self::Bar => "bar",
            Self::Second => "s",
            Self::Hour => "h",
            Self::Watt => "W",
            Self::WattHour => "Wh",
            Self::WattHourPerKilometre => "Wh/km",
            Self::RpmPerVolt => "rpm/V",
            Self::Rpm => "rpm",
            Self::Newton => "N",
            Self::NewtonPerMillimetre => "N/mm",
            Self::NewtonMetre => "N·m",
            Self::NewtonMetrePerAmpere => "N·m/A",
            Self::NewtonSquareMetre => "N·m²",
            Self::RadianPerSecond => "rad/s",
            Self::KilogramPerCubicMetre => "kg/m³",
            Self::KilogramPerMetre => "kg/m",
            Self::Radian => "rad",
            Self::Hertz => "Hz",
            Self::SquareMillimetre => "mm²",
            Self::Gauge => "AWG",
            Self::MetrePerSecondSquared => "m/s²",
            Self::MetrePerKilometre => "m/km",
            Self::PerKilometre => "1/km",
            Self::KelvinPerWatt => "K/W",
            Self::PerKelvin => "1/K",
            Self::JoulePerKelvin => "J/K",
            Self::KilogramSquareMetre => "kg·m²",
            Self::SquareAmpere => "A²",
        }
    }

    /// What one of this unit is in SI, for units that only differ by a factor.
    /// Degrees, of temperature and of angle, stay degrees in the core.
    #[must_use]
    pub const fn si(self) -> f64 {
        match self {
            Self::Percent => 0.01,
            Self::Millimetre | Self::MilliOhm | Self::MetrePerKilometre | Self::PerKilometre => {
                1e-3
            }
            Self::MicroHenry => 1e-6,
            Self::KilometrePerHour => 1.0 / 3.6,
            Self::Kilometre | Self::NewtonPerMillimetre => 1e3,
            Self::Hour => 3600.0,
            Self::Bar => 1e5,
            _ => 1.0,
        }
    }

    /// The symbol after the number 1.
    #[must_use]
    pub const fn symbol_of_one(self) -> &'static str {
        match self {
            Self::Teeth => "tooth",
            Self::Cells => "cell",
            Self::Cycles => "cycle",
            other => other.symbol(),
        }
    }

    /// Whether only whole numbers make sense.
    #[must_use]
    pub const fn whole(self) -> bool {
        matches!(self, Self::Count | Self::Teeth | Self::Cells | Self::Cycles | Self::Gauge)
    }
}

/// What happens when a value is not given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// The part is refused without it.
    Required,
    /// A usual value is taken ([`Field::assumed`]), and the page says "assumed".
    Assumed,
    /// It stays empty, and the model knows what to do without it.
    Optional,
}

/// One input: its key in a file, unit, limits and typical value.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// Key in files and links; carries the unit.
    pub key: &'static str,
    /// Unit of the number under that key.
    pub unit: Unit,
    /// Smallest value allowed, in `unit`.
    pub min: f64,
    /// Largest value allowed, in `unit`.
    pub max: f64,
    /// A plausible value: the assumption where none is given, unless that depends on the cells,
    /// and the size of a step.
    pub typical: f64,
    /// What happens when it is not given.
    pub need: Need,
    /// The assumption by the cells of the build, in `unit`, where it depends on them.
    pub by_cell: Option<fn(CellClass) -> f64>,
    /// Names of the choices, where the value is one of a list; its number is the value.
    pub choices: &'static [&'static str],
    /// What it means, for the schema.
    #[cfg(feature = "schema")]
    pub doc: &'static str,
}

impl Field {
    /// The value if it lies within the limits.
    ///
    /// # Errors
    /// Names this field with the value, the range and the unit when it is not
    /// finite, not whole where it must be, or out of range.
    pub fn check(&self, value: f64) -> Result<f64, Error> {
        let Self { min, max, unit, .. } = *self;
        let reason = if !value.is_finite() {
            Reason::NotANumber { min, max, unit }
        } else if value < min || value > max {
            Reason::OutOfRange { value, min, max, unit }
        } else if self.must_be_whole() && value != crate::math::round(value) {
            Reason::NotWhole { value, min, max, unit }
        } else {
            return Ok(value);
        };
        Err(Error::new(self.key, reason))
    }

    /// What is assumed in a build with such cells, in `unit`, held within the limits.
    #[must_use]
    pub fn assumed(&self, cell: CellClass) -> f64 {
        self.by_cell.map_or(self.typical, |by_cell| by_cell(cell).max(self.min).min(self.max))
    }

    /// What may be given, in words: a number with its limits, or one of the choices.
    #[must_use]
    pub fn wanted(&self) -> String {
        if !self.choices.is_empty() {
            return alloc::format!("one of {}", self.choices.join(", "));
        }
        let form = if self.must_be_whole() { "a whole number" } else { "a number" };
        alloc::format!("{form} from {} to {}", bare(self.min), Plain(self.max, self.unit))
    }

    /// Whether only whole numbers are allowed.
    #[must_use]
    pub fn must_be_whole(&self) -> bool {
        self.unit.whole() || !self.choices.is_empty()
    }

    /// The number of a choice by its name.
    ///
    /// # Errors
    /// Names this field and lists the choices when the name is none of them.
    pub fn choice(&self, name: &str) -> Result<f64, Error> {
        let mut number = 0.0;
        for known in self.choices {
            if *known == name {
                return Ok(number);
            }
            number += 1.0;
        }
        Err(Error::new(
            self.key,
            Reason::UnknownChoice { given: String::from(name), allowed: self.choices.join(", ") },
        ))
    }

    /// The name of a choice by its number.
    #[must_use]
    pub fn choice_name(&self, value: f64) -> &'static str {
        let mut number = 0.0;
        for known in self.choices {
            if number == value {
                return known;
            }
            number += 1.0;
        }
        ""
    }
}
