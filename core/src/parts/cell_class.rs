//! What the cells of a build say about values that were left out.

use super::Record;
use super::choice::chosen;
use crate::bounds::Field;
use crate::physics::Chemistry;

/// Class, size and capacity of a build's cells: what is assumed for a voltage, a mass or a charge
/// current follows from them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CellClass {
    /// The class.
    pub chemistry: Chemistry,
    /// Diameter, m: as given, by the format, or that of a 21700.
    pub diameter_m: f64,
    /// Length, m, likewise.
    pub length_m: f64,
    /// Rated capacity, Ah: as given, or that of a usual cell.
    pub capacity_ah: f64,
}

/// Capacity, Ah, of a usual cell.
const USUAL_AH: f64 = 3.0;

/// Diameter and length, m, of a cell without size and format.
pub(crate) const USUAL_SIZE_M: (f64, f64) = (0.021, 0.070);

impl CellClass {
    /// Reads it off the record of a cell. A record of another kind says nothing: a cell of the
    /// energy class, usual size and usual capacity.
    #[must_use]
    pub fn of(fields: &[Field], tags: &[&str], record: &Record) -> Self {
        let value = |key: &str| record.value(fields.iter().position(|field| field.key == key)?);
        let format = tags.iter().position(|tag| *tag == "format").map(|index| record.tag(index));
        let (diameter_m, length_m) = format.and_then(size_of_format).unwrap_or(USUAL_SIZE_M);
        let metres = |key: &str| value(key).map(|mm| mm / 1000.0);
        Self {
            chemistry: chosen(value("chemistry").unwrap_or(0.0), &Chemistry::ALL),
            diameter_m: metres("diameter_mm").unwrap_or(diameter_m),
            length_m: metres("length_mm").unwrap_or(length_m),
            capacity_ah: value("capacity_ah").unwrap_or(USUAL_AH),
        }
    }

    /// A cell of the usual size and capacity: a 21700 of 3 Ah.
    #[must_use]
    pub const fn usual(chemistry: Chemistry) -> Self {
        let (diameter_m, length_m) = USUAL_SIZE_M;
        Self { chemistry, diameter_m, length_m, capacity_ah: USUAL_AH }
    }

    /// Voltage of a full cell, V.
    #[must_use]
    pub fn full_v(self) -> f64 {
        self.chemistry.full_v()
    }

    /// Voltage that stands for the nameplate energy, V.
    #[must_use]
    pub fn nominal_v(self) -> f64 {
        self.chemistry.nominal_v()
    }

    /// Voltage of the weakest group at which the pack disconnects, V.
    #[must_use]
    pub fn cut_off_v(self) -> f64 {
        self.chemistry.cut_off_v()
    }

    /// Voltage of a group at which the controller begins to limit battery current, V.
    #[must_use]
    pub fn cutback_start_v(self) -> f64 {
        self.chemistry.cutback_v().0
    }

    /// Voltage of a group at which nothing is left, V.
    #[must_use]
    pub fn cutback_end_v(self) -> f64 {
        self.chemistry.cutback_v().1
    }

    /// Highest charge current of a cell, A: 1C, its capacity in ampere. Common practice, no source.
    #[must_use]
    pub const fn max_charge_a(self) -> f64 {
        self.capacity_ah
    }

    /// Mass of a cell, kg, by volume and class, to a gram. Common practice, no source.
    #[must_use]
    pub fn mass_kg(self) -> f64 {
        let face = core::f64::consts::FRAC_PI_4 * self.diameter_m * self.diameter_m;
        crate::math::round(1e3 * face * self.length_m * self.chemistry.density_kg_m3()) / 1e3
    }
}

/// Diameter and length, m, of a format such as 18650, 21700 or 4680: its first run of four or
/// five digits, two of diameter and two of length in mm, with a fifth for tenths.
pub(crate) fn size_of_format(tag: &str) -> Option<(f64, f64)> {
    let run = tag.split(|c: char| !c.is_ascii_digit()).find(|run| matches!(run.len(), 4 | 5))?;
    let number = |digits: &str| digits.bytes().fold(0.0, |n, d| 10.0 * n + f64::from(d - b'0'));
    let (diameter, length) = (number(run.get(..2)?), number(run.get(2..)?));
    let length = if run.len() == 5 { length / 10.0 } else { length };
    (diameter >= 8.0 && length >= 15.0).then_some((diameter / 1000.0, length / 1000.0))
}
