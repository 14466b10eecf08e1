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
