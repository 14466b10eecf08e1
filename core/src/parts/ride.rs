//! What is not bought: the rider, the place and the wish.

use super::{Outing, Posture, Surface};

part! {
    /// Rider.
    Rider, tags [];
    /// Weight of the rider, dressed.
    mass_kg: f64 = "mass_kg" Kilogram, 20.0..180.0, 78.0, Assumed;
    /// Weight of what the rider carries, such as bag and helmet.
    gear_mass_kg: f64 = "gear_mass_kg" Kilogram, 0.0..60.0, 4.0, Assumed;
    /// Riding posture, which sets the drag area.
    posture: Posture = "posture" None, 0.0..2.0, 1.0, Assumed Posture::NAMES;
    /// Drag area, if known. Overrides the posture.
    drag_area_m2: Option<f64> = "drag_area_m2" SquareMetre, 0.1..1.5, 0.5, Optional;
    /// Height of the centre of mass of rider and board above the road.
    centre_height_m: f64 = "centre_height_mm" Millimetre, 200.0..1500.0, 950.0, Assumed;
}

part! {
    /// Place and weather.
    Place, tags [];
    /// Temperature of the air, and of the pack at the start.
    air_c: f64 = "air_c" Celsius, -25.0..50.0, 20.0, Assumed;
    /// Altitude above sea level.
    altitude_m: f64 = "altitude_m" Metre, -430.0..5000.0, 10.0, Assumed;
    /// Headwind. Negative for a tailwind.
    headwind_m_s: f64 = "headwind_km_h" KilometrePerHour, -60.0..60.0, 0.0, Assumed;
    /// Road surface.
    surface: Surface = "surface" None, 0.0..4.0, 1.0, Assumed Surface::NAMES;
    /// Grip: the share of their load that the driven wheels can push with.
    grip: f64 = "grip_percent" Percent, 5.0..120.0, 70.0, Assumed;
    /// Height of the kerbs or bumps that the board rolls off.
    bump_m: f64 = "bump_mm" Millimetre, 0.0..200.0, 15.0, Assumed;
    /// Temperature where you charge, and of the pack there. If not given, the air temperature.
    charge_air_c: Option<f64> = "charge_air_c" Celsius, -25.0..50.0, 20.0, Optional;
    /// Electricity price per kilowatt-hour, in the catalogue's currency.
    energy_price: Option<f64> = "energy_price_kwh" Money, 0.0..1000000.0, 0.3, Optional;
}

part! {
    /// The ride that the answers are for.
    Ride, tags [];
    /// Cruising speed.
    cruise_m_s: f64 = "cruise_km_h" KilometrePerHour, 3.0..100.0, 22.0, Assumed;
    /// Grade of the rider's own hill.
    grade: f64 = "grade_percent" Percent, 0.0..60.0, 8.0, Assumed;
    /// Charge at the start.
    start_charge: f64 = "start_charge_percent" Percent, 5.0..100.0, 100.0, Assumed;
    /// Charge that counts as nearly empty.
    low_charge: f64 = "low_charge_percent" Percent, 2.0..50.0, 10.0, Assumed;
    /// Winding temperature when warm.
    winding_c: f64 = "winding_c" Celsius, -25.0..180.0, 60.0, Assumed;
    /// Riding style: stops, hills and speed.
    outing: Outing = "outing" None, 0.0..7.0, 2.0, Assumed Outing::NAMES;
    /// Stops per kilometre, for the style my_own.
    stops_per_m: f64 = "stops_per_km" PerKilometre, 0.0..20.0, 1.0, Assumed;
    /// Acceleration and braking, for the style my_own.
    acceleration_m_s2: f64 = "acceleration_m_s2" MetrePerSecondSquared, 0.2..6.0, 1.5, Assumed;
    /// Climb per kilometre, with the same descent, for the style my_own.
    climb_per_m: f64 = "climb_m_per_km" MetrePerKilometre, 0.0..150.0, 5.0, Assumed;
    /// Rest at each stop, for the style my_own.
    rest_s: f64 = "rest_s" Second, 0.0..600.0, 10.0, Assumed;
    /// Charge when the charger is plugged in.
    charge_from: f64 = "charge_from_percent" Percent, 0.0..100.0, 20.0, Assumed;
    /// Charge at which to stop charging.
    charge_to: f64 = "charge_to_percent" Percent, 1.0..100.0, 80.0, Assumed;
    /// Time available for charging.
    charge_time_s: f64 = "charge_time_h" Hour, 0.0..48.0, 2.0, Assumed;
}

part! {
    /// Measured at the workbench.
    Bench, tags [];
    /// Distance from motor shaft to axle, measured.
    measured_centre_m: Option<f64> = "measured_centre_mm" Millimetre, 20.0..400.0, 71.0, Optional;
    /// Number of teeth of a belt in hand.
    belt_in_hand_teeth: Option<f64> = "belt_in_hand_teeth" Teeth, 20.0..400.0, 60.0, Optional;
}
