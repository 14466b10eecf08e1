//! The units that a reader sees, and the only place that converts to and from them.

use pitchline_core::{Field, Kind, Unit};

/// Metric or imperial.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Kilometres, kilograms, millimetres, degrees Celsius.
    #[default]
    Metric,
    /// Miles, pounds, inches, degrees Fahrenheit.
    Imperial,
}

/// A unit as shown: `shown = file × factor + offset`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown {
    /// Symbol behind the number.
    pub symbol: &'static str,
    factor: f64,
    offset: f64,
}

impl Shown {
    /// From the file's unit to the shown one.
    #[must_use]
    pub fn from_file(self, value: f64) -> f64 {
        value * self.factor + self.offset
    }

    /// From the shown unit to the file's.
    #[must_use]
    pub fn to_file(self, value: f64) -> f64 {
        (value - self.offset) / self.factor
    }
}

/// Kilometres in a mile; exact by definition.
const MILE: f64 = 1.609_344;
/// Kilograms in a pound; exact by definition.
const POUND: f64 = 0.453_592_37;
/// Metres in a foot; exact by definition.
const FOOT: f64 = 0.304_8;
/// Newtons in a pound-force; exact by definition.
const POUND_FORCE: f64 = POUND * 9.806_65;
/// Pascals in a pound-force to the square inch, of 25.4 mm.
const PSI: f64 = POUND_FORCE / (0.025_4 * 0.025_4);

impl Units {
    /// How a unit is shown.
    #[must_use]
    pub fn shown(self, unit: Unit) -> Shown {
        let (symbol, factor, offset) = match (self, unit) {
            (Self::Imperial, Unit::Kilogram) => ("lb", 1.0 / POUND, 0.0),
            (Self::Imperial, Unit::Millimetre) => ("in", 1.0 / 25.4, 0.0),
            (Self::Imperial, Unit::Metre) => ("ft", 1.0 / FOOT, 0.0),
            (Self::Imperial, Unit::SquareMetre) => ("ft²", 1.0 / (FOOT * FOOT), 0.0),
            (Self::Imperial, Unit::Celsius) => ("°F", 1.8, 32.0),
            (Self::Imperial, Unit::KilometrePerHour) => ("mph", 1.0 / MILE, 0.0),
            (Self::Imperial, Unit::Kilometre) => ("mi", 1.0 / MILE, 0.0),
            (Self::Imperial, Unit::WattHourPerKilometre) => ("Wh/mi", MILE, 0.0),
            (Self::Imperial, Unit::Newton) => ("lbf", 1.0 / POUND_FORCE, 0.0),
            (Self::Imperial, Unit::Bar) => ("psi", 1e5 / PSI, 0.0),
            (Self::Imperial, Unit::NewtonMetre) => ("lbf·ft", 1.0 / (POUND_FORCE * FOOT), 0.0),
            (Self::Imperial, Unit::MetrePerSecondSquared) => ("ft/s²", 1.0 / FOOT, 0.0),
            (Self::Imperial, Unit::MetrePerKilometre) => ("ft/mi", MILE / FOOT, 0.0),
            (Self::Imperial, Unit::PerKilometre) => ("per mi", MILE, 0.0),
            (Self::Metric, Unit::PerKilometre) => ("per km", 1.0, 0.0),
            _ => (unit.symbol(), 1.0, 0.0),
        };
        Shown { symbol, factor, offset }
    }

    /// How an input is shown. The trade sells wheels, belts, pulleys and motors in millimetres
    /// everywhere.
    #[must_use]
    pub fn field(self, kind: Kind, field: &Field) -> Shown {
        let sold = matches!(
            kind,
            Kind::Wheel | Kind::Belt | Kind::MotorPulley | Kind::WheelPulley | Kind::Motor
        );
        match field.unit {
            Unit::Millimetre if sold => Self::Metric.shown(Unit::Millimetre),
            unit => self.shown(unit),
        }
    }

    /// The other one.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Metric => Self::Imperial,
            Self::Imperial => Self::Metric,
        }
    }

    /// Key for the store.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Metric => "metric",
            Self::Imperial => "imperial",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn published_conversions() {
        // NIST SP 811, appendix B: 1 mi = 1609.344 m, 1 lb = 0.45359237 kg, 1 in = 25.4 mm.
        let to = |unit, value| Units::Imperial.shown(unit).from_file(value);
        assert!((to(Unit::Kilometre, 1.609_344) - 1.0).abs() < 1e-15);
        assert!((to(Unit::Kilogram, 45.359_237) - 100.0).abs() < 1e-12);
        assert!((to(Unit::Millimetre, 97.0) - 3.818_897_6).abs() < 1e-7);
        assert!((to(Unit::Celsius, -40.0) + 40.0).abs() < 1e-12);
        // The same: 1 lbf·ft = 1.355818 N·m, 1 ft/s² = 0.3048 m/s²; 1 mi = 5280 ft.
        assert!((to(Unit::NewtonMetre, 1.355_818) - 1.0).abs() < 1e-6);
        // The same: 1 psi = 6894.757 Pa.
        assert!((to(Unit::Bar, 0.068_947_57) - 1.0).abs() < 1e-6);
        assert!((to(Unit::MetrePerSecondSquared, 0.304_8) - 1.0).abs() < 1e-15);
        assert!((to(Unit::MetrePerKilometre, 1000.0) - 5280.0).abs() < 1e-9);
        assert!((to(Unit::PerKilometre, 1.0) - 1.609_344).abs() < 1e-15);
    }

    /// A wheel of 150 mm is sold as 150 mm to everyone; a rider's height of deck is not.
    #[test]
    fn what_is_sold_in_millimetres_stays_so() {
        let shown = |kind: Kind, key: &str| {
            let place = kind.field_index(key).expect("a field");
            Units::Imperial.field(kind, &kind.fields()[place]).symbol
        };
        assert_eq!(shown(Kind::Wheel, "diameter_mm"), "mm");
        assert_eq!(shown(Kind::Belt, "width_mm"), "mm");
        assert_eq!(shown(Kind::Deck, "riser_mm"), "in");
        assert_eq!(shown(Kind::Rider, "mass_kg"), "lb");
    }

    #[test]
    fn there_and_back() {
        for unit in [Unit::Kilogram, Unit::Millimetre, Unit::Celsius, Unit::KilometrePerHour] {
            let shown = Units::Imperial.shown(unit);
            assert!((shown.to_file(shown.from_file(77.7)) - 77.7).abs() < 1e-12);
        }
    }
}
