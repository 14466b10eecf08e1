//! Wheels.

use super::Surface;
use crate::physics::gear::WheelRadius;
use crate::physics::road_load::RollingCoefficient;
use crate::working::Working;

part! {
    /// Wheel, tyre included.
    Wheel, tags ["core"];
    /// Mass of one wheel.
    mass_kg: f64 = "mass_kg" Kilogram, 0.05..5.0, 0.28, Assumed;
    /// Price of one, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 20.0, Optional;
    /// Diameter, unloaded.
    diameter_m: f64 = "diameter_mm" Millimetre, 50.0..400.0, 97.0, Required;
    /// Tread deflection under the rider.
    deflection_m: f64 = "deflection_mm" Millimetre, 0.0..15.0, 1.0, Assumed;
    /// Rolling resistance coefficient on smooth asphalt.
    rolling_smooth: f64 = "rolling_smooth" None, 0.002..0.1, 0.012, Required;
    /// Share added to the rolling resistance for each step of surface roughness.
    roughness_share: f64 = "roughness_percent" Percent, 0.0..100.0, 15.0, Assumed;
    /// Width of the tyre.
    width_m: f64 = "width_mm" Millimetre, 15.0..200.0, 52.0, Assumed;
    /// Maximum load on one wheel.
    max_load_kg: Option<f64> = "max_load_kg" Kilogram, 5.0..500.0, 60.0, Optional;
    /// Tyre pressure.
    pressure_pa: Option<f64> = "pressure_bar" Bar, 0.2..10.0, 3.0, Optional;
    /// Maximum tyre pressure.
    max_pressure_pa: Option<f64> = "max_pressure_bar" Bar, 0.2..10.0, 4.0, Optional;
    /// Maximum speed of the wheel bearings.
    bearing_rpm: Option<f64> = "bearing_rpm" Rpm, 500.0..100000.0, 20000.0, Optional;
    /// Bearing spacer: distance between the two bearings, which sit symmetrically about the middle
    /// of the wheel.
    spacer_m: f64 = "spacer_mm" Millimetre, 0.0..100.0, 10.0, Assumed;
}

impl Wheel {
    /// Rolling radius under load, m: half the free diameter less the tread's deflection.
    #[must_use]
    pub fn radius_m(&self) -> f64 {
        self.radius_explained(&mut Working::off())
    }

    pub(crate) fn radius_explained(&self, w: &mut Working) -> f64 {
        // The limits keep this positive: 25 mm at least, less 15 mm at most.
        w.apply(WheelRadius { diameter: self.diameter_m, deflection: self.deflection_m })
    }

    /// Rolling resistance coefficient on a surface.
    #[must_use]
    pub fn rolling(&self, surface: Surface) -> f64 {
        self.rolling_explained(surface, &mut Working::off())
    }

    pub(crate) fn rolling_explained(&self, surface: Surface, w: &mut Working) -> f64 {
        w.apply(RollingCoefficient {
            smooth: self.rolling_smooth,
            share: self.roughness_share,
            roughness: surface.roughness(),
        })
    }
}
