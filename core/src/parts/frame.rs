//! Deck and trucks.

part! {
    /// Deck with its enclosure.
    Deck, tags [];
    /// Mass, enclosure included.
    mass_kg: f64 = "mass_kg" Kilogram, 0.3..30.0, 2.6, Assumed;
    /// Price, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 120.0, Optional;
    /// Maximum load on the deck: the rider and what the rider carries.
    max_load_kg: Option<f64> = "max_load_kg" Kilogram, 20.0..400.0, 120.0, Optional;
    /// Wheelbase: distance between the axles.
    wheelbase_m: f64 = "wheelbase_mm" Millimetre, 250.0..1500.0, 720.0, Assumed;
    /// Deck width at the wheels, inside any cut-outs.
    width_m: f64 = "width_mm" Millimetre, 50.0..500.0, 150.0, Assumed;
    /// Deck thickness at the wheels.
    thickness_m: f64 = "thickness_mm" Millimetre, 3.0..80.0, 13.0, Assumed;
    /// Bending stiffness of the deck lengthwise, E times I.
    stiffness_n_m2: f64 = "stiffness_n_m2" NewtonSquareMetre, 20.0..50000.0, 400.0, Assumed;
    /// Measured sag in the middle, under a rider. Overrides the stiffness.
    sag_m: Option<f64> = "sag_mm" Millimetre, 0.0..100.0, 10.0, Optional;
    /// Mass of the rider who stood on the deck when the sag was measured.
    sag_mass_kg: f64 = "sag_mass_kg" Kilogram, 20.0..200.0, 80.0, Assumed;
    /// Distance between the rider's feet, assumed centred between the axles.
    stance_m: f64 = "stance_mm" Millimetre, 50.0..1500.0, 450.0, Assumed;
    /// Riser height between truck and deck. Negative if the deck sits below the truck baseplates.
    riser_m: f64 = "riser_mm" Millimetre, -60.0..60.0, 15.0, Assumed;
    /// Inside length of the enclosure, along the board.
    box_length_m: f64 = "box_length_mm" Millimetre, 50.0..1400.0, 340.0, Assumed;
    /// Inside width of the enclosure.
    box_width_m: f64 = "box_width_mm" Millimetre, 30.0..450.0, 160.0, Assumed;
    /// Inside height of the enclosure, from its floor to the deck.
    box_height_m: f64 = "box_height_mm" Millimetre, 8.0..200.0, 52.0, Assumed;
    /// Thickness of the enclosure's walls and floor.
    box_wall_m: f64 = "box_wall_mm" Millimetre, 0.0..20.0, 3.0, Assumed;
    /// How far the enclosure's centre is ahead of the middle of the wheelbase. Negative if behind.
    box_ahead_m: f64 = "box_ahead_mm" Millimetre, -400.0..400.0, 0.0, Assumed;
}

part! {
    /// Pair of trucks, with the motor mounts on the rear one.
    Truck, tags ["hanger", "mount"];
    /// Mass of the pair, mounts included.
    mass_kg: f64 = "mass_kg" Kilogram, 0.3..20.0, 1.5, Assumed;
    /// Price, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 110.0, Optional;
    /// Number of motors, all on the rear axle.
    motor_count: f64 = "motor_count" Count, 1.0..2.0, 2.0, Required;
    /// Minimum distance from motor shaft to axle that the mount adjusts to.
    centre_min_m: f64 = "centre_min_mm" Millimetre, 20.0..400.0, 66.0, Assumed;
    /// Maximum distance from motor shaft to axle that the mount adjusts to.
    centre_max_m: f64 = "centre_max_mm" Millimetre, 20.0..400.0, 78.0, Assumed;
    /// Rear hanger width, between the axle shoulders.
    hanger_width_m: f64 = "hanger_width_mm" Millimetre, 80.0..500.0, 184.0, Assumed;
    /// Length of one axle end, from the hanger's shoulder to the end of the thread.
    axle_m: f64 = "axle_mm" Millimetre, 20.0..200.0, 70.0, Assumed;
    /// Height from axle to the underside of the deck, without riser.
    height_m: f64 = "height_mm" Millimetre, 10.0..200.0, 66.0, Assumed;
    /// Front pivot angle, from horizontal.
    pivot_front_deg: f64 = "pivot_front_deg" Degree, 0.0..70.0, 50.0, Assumed;
    /// Rear pivot angle, from horizontal.
    pivot_rear_deg: f64 = "pivot_rear_deg" Degree, 0.0..70.0, 50.0, Assumed;
    /// Maximum lean that bushings and pivots allow.
    max_lean_deg: f64 = "max_lean_deg" Degree, 1.0..45.0, 18.0, Assumed;
    /// Motor mount angle at the rear axle: 0° points forward, 90° straight up. Beyond 90° is behind
    /// the axle.
    mount_angle_deg: f64 = "mount_angle_deg" Degree, -90.0..270.0, 20.0, Assumed;
}
