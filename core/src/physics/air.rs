//! Air: pressure and density.

use crate::math::{exp, ln};

/// Specific gas constant of dry air, J/(kg K). Source: ISO 2533.
pub const GAS_CONSTANT: f64 = 287.052_87;
/// Standard gravity, m/s². Source: ISO 80000-3.
pub const G: f64 = 9.806_65;

law! {
    /// Pressure of the standard atmosphere, Pa, at a geopotential altitude.
    ///
    /// Valid from the sea to 11 km. Source: ISO 2533.
    ///
    /// ```
    /// let p = pitchline_core::physics::air::AirPressure { altitude: 1000.0 }.value();
    /// assert!((p - 89_874.56).abs() < 0.01);
    /// ```
    AirPressure = "Air pressure", "p_air" = "101325 (1 − 0.0065 h / 288.15)^(g / (0.0065 · 287.05287))", Pascal, ISA;
    // `exp` of `ln`: a general power would bring a third function into the page.
    altitude: "h" Metre => 101_325.0 * exp(
        G / (0.0065 * GAS_CONSTANT) * ln(1.0 - 0.0065 * altitude / 288.15),
    )
}

law! {
    /// Density of dry air, kg/m³, from pressure (Pa) and temperature (°C).
    ///
    /// Source: ISO 2533 (the gas law with its constant).
    ///
    /// ```
    /// use pitchline_core::physics::air::AirDensity;
    /// let rho = AirDensity { pressure: 101_325.0, celsius: 15.0 }.value();
    /// assert!((rho - 1.225).abs() < 1e-6);
    /// ```
    AirDensity = "Air density", "ρ" = "p_air / (287.05287 (t + 273.15))", KilogramPerCubicMetre, ISA;
    pressure: "p_air" Pascal, celsius: "t" Celsius => pressure / (GAS_CONSTANT * (celsius + 273.15))
}
