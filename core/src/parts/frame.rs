//! Deck and trucks.

part! {
    /// Deck with its enclosure.
    Deck, tags [];
    /// Mass with enclosure.
    mass_kg: f64 = "mass_kg" Kilogram, 0.3..30.0, 2.6, Assumed;
    /// Price, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 120.0, Optional;
    /// Distance between the axles.
    wheelbase_m: f64 = "wheelbase_mm" Millimetre, 250.0..1500.0, 720.0, Assumed;
}

part! {
    /// Pair of trucks with the motor mounts on the rear one.
    Truck, tags ["hanger"];
    /// Mass of the pair with mounts.
    mass_kg: f64 = "mass_kg" Kilogram, 0.3..20.0, 1.5, Assumed;
    /// Price, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 110.0, Optional;
    /// Motors that it carries, all on the rear axle.
    motor_count: f64 = "motor_count" Count, 1.0..2.0, 2.0, Required;
    /// Least distance from motor shaft to axle that the mount slides to.
    centre_min_m: f64 = "centre_min_mm" Millimetre, 20.0..400.0, 66.0, Assumed;
    /// Greatest distance from motor shaft to axle that the mount slides to.
    centre_max_m: f64 = "centre_max_mm" Millimetre, 20.0..400.0, 78.0, Assumed;
}
