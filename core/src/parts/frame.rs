//! Deck and trucks.

part! {
    /// Deck with its box.
    Deck, tags [];
    /// Mass with box.
    mass_kg: f64 = "mass_kg" Kilogram, 0.3..30.0, 2.6, Assumed;
    /// Price, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 120.0, Optional;
    /// Distance between the axles.
    wheelbase_m: f64 = "wheelbase_mm" Millimetre, 250.0..1500.0, 720.0, Assumed;
    /// Width over the wheels, where the cut-outs are.
    width_m: f64 = "width_mm" Millimetre, 50.0..500.0, 150.0, Assumed;
    /// Thickness over the wheels.
    thickness_m: f64 = "thickness_mm" Millimetre, 3.0..80.0, 13.0, Assumed;
    /// Bending stiffness E times I of the deck, lengthwise.
    stiffness_n_m2: f64 = "stiffness_n_m2" NewtonSquareMetre, 20.0..50000.0, 400.0, Assumed;
    /// Sag in the middle, measured under a rider; goes before the stiffness.
    sag_m: Option<f64> = "sag_mm" Millimetre, 0.0..100.0, 10.0, Optional;
    /// Mass of the rider under whom the sag was measured.
    sag_mass_kg: f64 = "sag_mass_kg" Kilogram, 20.0..200.0, 80.0, Assumed;
    /// Distance between the rider's feet, centred between the axles.
    stance_m: f64 = "stance_mm" Millimetre, 50.0..1500.0, 450.0, Assumed;
    /// Riser between truck and deck; negative where the deck hangs lower.
    riser_m: f64 = "riser_mm" Millimetre, -60.0..60.0, 15.0, Assumed;
    /// Length of the box inside, along the board.
    box_length_m: f64 = "box_length_mm" Millimetre, 50.0..1400.0, 340.0, Assumed;
    /// Width of the box inside.
    box_width_m: f64 = "box_width_mm" Millimetre, 30.0..450.0, 160.0, Assumed;
    /// Height of the box inside, from its floor to the deck.
    box_height_m: f64 = "box_height_mm" Millimetre, 8.0..200.0, 52.0, Assumed;
    /// Thickness of its walls and floor.
    box_wall_m: f64 = "box_wall_mm" Millimetre, 0.0..20.0, 3.0, Assumed;
    /// Its middle ahead of the middle between the axles; behind is negative.
    box_ahead_m: f64 = "box_ahead_mm" Millimetre, -400.0..400.0, 0.0, Assumed;
}

part! {
    /// Pair of trucks with the motor mounts on the rear one.
    Truck, tags ["hanger", "mount"];
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
    /// Width of the rear hanger between the shoulders of its axle.
    hanger_width_m: f64 = "hanger_width_mm" Millimetre, 80.0..500.0, 184.0, Assumed;
    /// Length of one axle end, from its shoulder.
    axle_m: f64 = "axle_mm" Millimetre, 20.0..200.0, 70.0, Assumed;
    /// Height of the deck's underside above the axle, without riser.
    height_m: f64 = "height_mm" Millimetre, 10.0..200.0, 66.0, Assumed;
    /// Angle of the front pivot from level.
    pivot_front_deg: f64 = "pivot_front_deg" Degree, 0.0..70.0, 50.0, Assumed;
    /// Angle of the rear pivot from level.
    pivot_rear_deg: f64 = "pivot_rear_deg" Degree, 0.0..70.0, 50.0, Assumed;
    /// Furthest lean that bushings and pivots allow.
    max_lean_deg: f64 = "max_lean_deg" Degree, 1.0..45.0, 18.0, Assumed;
    /// Angle of the motor above level, seen from the rear axle toward the front;
    /// more than 90° is behind the axle.
    mount_angle_deg: f64 = "mount_angle_deg" Degree, -90.0..270.0, 20.0, Assumed;
}
