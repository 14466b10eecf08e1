//! The unit that an answer is shown in.

use crate::app::Banded;
use crate::text::{MINUTE, Style, change, duration, minutes};
use pitchline_core::Unit;

/// How values of an answer are written.
#[derive(Clone, Copy)]
pub(super) struct Measure {
    pub(super) style: Style,
    /// From SI to the shown unit.
    factor: f64,
    pub(super) symbol: &'static str,
    far: bool,
}

impl Measure {
    pub(super) fn of(of: Banded, style: Style) -> Self {
        let unit = match of {
            Banded::Speed => Unit::KilometrePerHour,
            Banded::Hill => Unit::Percent,
            Banded::Distance | Banded::Outing => Unit::Kilometre,
            Banded::Charge | Banded::Enough => {
                return Self { style, factor: minutes(1.0), symbol: MINUTE, far: false };
            }
        };
        let (factor, symbol) = (style.shown_si(1.0, unit), style.units.shown(unit).symbol);
        Self { style, factor, symbol, far: unit == Unit::Kilometre }
    }

    pub(super) fn shown(self, value: f64) -> f64 {
        value * self.factor
    }

    /// Decimals that a band supports, as its headline has them.
    pub(super) fn decimals(self, band: [f64; 2]) -> u8 {
        if self.far { self.style.distance_decimals(band) } else { 0 }
    }

    /// A value with so many decimals.
    pub(super) fn fixed(self, value: f64, decimals: u8) -> String {
        self.style.fixed(self.shown(value), decimals)
    }

    /// A value as a headline rounds it.
    pub(super) fn rough(self, value: f64) -> String {
        self.fixed(value, self.decimals([value; 2]))
    }

    /// The value of what was entered, with its unit.
    pub(super) fn entered(self, value: f64) -> String {
        if self.symbol == MINUTE {
            return duration(value);
        }
        format!("{}\u{a0}{}", self.fine(value), self.symbol)
    }

    /// The unit of a difference: one between percentages would be read as either.
    pub(super) fn of_difference(self) -> &'static str {
        if self.symbol == Unit::Percent.symbol() { change::POINTS } else { self.symbol }
    }

    pub(super) fn fine_decimals(self) -> u8 {
        u8::from(self.symbol != MINUTE)
    }

    /// A value finer than its band supports: what one input does is told apart by less.
    pub(super) fn fine(self, value: f64) -> String {
        self.fixed(value, self.fine_decimals())
    }
}
