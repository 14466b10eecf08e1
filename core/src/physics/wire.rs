//! Wires.

use crate::math::{PI, exp};

/// Natural logarithm of 92, the ratio of diameters over 39 gauges.
const LN_92: f64 = 4.521_788_577_049_041;

law! {
    /// Diameter of a wire, mm, from its gauge.
    ///
    /// Source: ASTM B258.
    WireDiameter = "Wire diameter", "d_wire" = "0.127 · 92^((36 − gauge) / 39)", Millimetre, ASTM_B258;
    gauge: "gauge" Gauge => 0.127 * exp(LN_92 * (36.0 - gauge) / 39.0)
}

law! {
    /// Resistance of a copper wire, ohm.
    ///
    /// Resistivity 1/58 Ω mm²/m at 20 °C, 0.00393/K. Source: IEC 60028.
    ///
    /// ```
    /// use pitchline_core::physics::wire::{WireDiameter, WireResistance};
    /// // 1000 ft of gauge 12: 1.588 ohm, published wire table citing Floyd.
    /// let diameter = WireDiameter { gauge: 12.0 }.value();
    /// let r = WireResistance { length: 304.8, diameter, celsius: 20.0 }.value();
    /// assert!((r / 1.588 - 1.0).abs() < 1e-3);
    /// ```
    WireResistance = "Wire resistance", "R_wire" = "4 L_wire (1 + 0.00393 (t − 20)) / (58 π d_wire²)", Ohm, IEC_60028;
    length: "L_wire" Metre, diameter: "d_wire" Millimetre, celsius: "t" Celsius =>
        4.0 * length * (1.0 + super::motor::COPPER_PER_K * (celsius - 20.0)) / (58.0 * PI * diameter * diameter)
}

/// Copper of a wire, mm², from its diameter, mm.
///
/// ```
/// use pitchline_core::physics::wire::{WireDiameter, area_mm2};
/// // Gauge 10: a diameter of 0.10189 in, published wire table citing Floyd.
/// let diameter = WireDiameter { gauge: 10.0 }.value();
/// let published = 0.10189 * 25.4;
/// assert!((area_mm2(diameter) / (0.785_398 * published * published) - 1.0).abs() < 3e-4);
/// ```
#[must_use]
pub fn area_mm2(diameter: f64) -> f64 {
    0.25 * PI * diameter * diameter
}

/// Heat that leaves a wire for each square metre of its jacket and kelvin, W/(m² K), in still air.
/// Common practice, no source.
const JACKET_W_M2_K: f64 = 15.0;
/// Diameter over the jacket for that of the copper. Common practice, no source.
const JACKET: f64 = 1.8;

/// How much warmer than the air a wire settles, K, that carries a current, A, with a resistance for
/// each metre, ohm, and a diameter, mm. Common practice, no source.
///
/// ```
/// use pitchline_core::physics::wire::rise_k;
/// // Twice the current, four times the heat; nothing, none.
/// assert!((rise_k(40.0, 5e-3, 2.0) / rise_k(20.0, 5e-3, 2.0) - 4.0).abs() < 1e-12);
/// assert_eq!(rise_k(0.0, 5e-3, 2.0), 0.0);
/// ```
#[must_use]
pub fn rise_k(current: f64, metre_ohm: f64, diameter: f64) -> f64 {
    current * current * metre_ohm / (JACKET_W_M2_K * PI * 1e-3 * JACKET * diameter)
}
