//! What is not bought: the rider, the place and the wish.

use super::{Outing, Posture, Surface};

part! {
    /// Rider.
    Rider, tags [];
    /// Mass of the rider, dressed.
    mass_kg: f64 = "mass_kg" Kilogram, 20.0..180.0, 78.0, Assumed;
    /// Mass of what is carried.
    gear_mass_kg: f64 = "gear_mass_kg" Kilogram, 0.0..60.0, 4.0, Assumed;
    /// Posture, which sets the drag area.
    posture: Posture = "posture" None, 0.0..2.0, 1.0, Assumed Posture::NAMES;
    /// Drag area, where it is known better than by posture.
    drag_area_m2: Option<f64> = "drag_area_m2" SquareMetre, 0.1..1.5, 0.5, Optional;
    /// Height of the centre of mass of rider and board above the road.
    centre_height_m: f64 = "centre_height_mm" Millimetre, 200.0..1500.0, 950.0, Assumed;
}

part! {
    /// Place and weather.
    Place, tags [];
    /// Temperature of air and pack.
    air_c: f64 = "air_c" Celsius, -25.0..50.0, 20.0, Assumed;
    /// Height above the sea.
    altitude_m: f64 = "altitude_m" Metre, -430.0..5000.0, 10.0, Assumed;
    /// Wind from ahead; from behind is negative.
    headwind_m_s: f64 = "headwind_km_h" KilometrePerHour, -60.0..60.0, 0.0, Assumed;
    /// Surface.
    surface: Surface = "surface" None, 0.0..4.0, 1.0, Assumed Surface::NAMES;
    /// Grip: the share of the driven wheels' load that they can push with.
    grip: f64 = "grip_percent" Percent, 5.0..120.0, 70.0, Assumed;
    /// Height of the bumps that are rolled off.
    bump_m: f64 = "bump_mm" Millimetre, 0.0..200.0, 15.0, Assumed;
    /// Temperature where it charges, and of the pack there; the same as outside if not given.
    charge_air_c: Option<f64> = "charge_air_c" Celsius, -25.0..50.0, 20.0, Optional;
    /// Price of a kilowatt-hour from the wall, in the catalogue's currency.
    energy_price: Option<f64> = "energy_price_kwh" Money, 0.0..1000000.0, 0.3, Optional;
}

part! {
    /// The ride that the questions are asked about.
    Ride, tags [];
    /// Speed held when asking how far.
    cruise_m_s: f64 = "cruise_km_h" KilometrePerHour, 3.0..100.0, 22.0, Assumed;
    /// The slope that matters to the rider.
    grade: f64 = "grade_percent" Percent, 0.0..60.0, 8.0, Assumed;
    /// Charge at the start.
    start_charge: f64 = "start_charge_percent" Percent, 5.0..100.0, 100.0, Assumed;
    /// Charge called nearly empty.
    low_charge: f64 = "low_charge_percent" Percent, 2.0..50.0, 10.0, Assumed;
    /// Temperature of the windings once warm.
    winding_c: f64 = "winding_c" Celsius, -25.0..180.0, 60.0, Assumed;
    /// How it is ridden, with stops, hills and heat.
    outing: Outing = "outing" None, 0.0..7.0, 2.0, Assumed Outing::NAMES;
    /// Stops for each kilometre, in the rider's own style.
    stops_per_m: f64 = "stops_per_km" PerKilometre, 0.0..20.0, 1.0, Assumed;
    /// Acceleration and braking, in the rider's own style.
    acceleration_m_s2: f64 = "acceleration_m_s2" MetrePerSecondSquared, 0.2..6.0, 1.5, Assumed;
    /// Height climbed for each kilometre, and come down again, in the rider's own style.
    climb_per_m: f64 = "climb_m_per_km" MetrePerKilometre, 0.0..150.0, 5.0, Assumed;
    /// Rest at each stop, in the rider's own style.
    rest_s: f64 = "rest_s" Second, 0.0..600.0, 10.0, Assumed;
    /// Charge at which the charger is plugged in.
    charge_from: f64 = "charge_from_percent" Percent, 0.0..100.0, 20.0, Assumed;
    /// Charge that is enough; the charger may be taken off there.
    charge_to: f64 = "charge_to_percent" Percent, 1.0..100.0, 80.0, Assumed;
    /// Time for which it can charge, until the board is needed.
    charge_time_s: f64 = "charge_time_h" Hour, 0.0..48.0, 2.0, Assumed;
}

part! {
    /// What was measured at the workbench.
    Bench, tags [];
    /// Distance from motor shaft to axle as measured.
    measured_centre_m: Option<f64> = "measured_centre_mm" Millimetre, 20.0..400.0, 71.0, Optional;
    /// Teeth of a belt in hand.
    belt_in_hand_teeth: Option<f64> = "belt_in_hand_teeth" Teeth, 20.0..400.0, 60.0, Optional;
}
