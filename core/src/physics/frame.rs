//! Room around pulleys, belt and motors: what is between two parts is their
//! clearance, and less than nothing is by how much they do not go together.
//!
//! The board stands upright and level. From the hanger's shoulder outward the
//! axle carries a washer, the wheel pulley, the wheel about the middle of its
//! two bearings, a washer and the nut. The mount's plate ends at the shoulder,
//! and the motor's can points from it to the middle of the board.

use crate::math::{sine_cosine, sqrt};

/// How far a pulley's flange stands out beyond its teeth, m. Common practice, no source.
pub const FLANGE_HEIGHT_M: f64 = 0.0025;
/// Thickness of each of its two flanges, m. Common practice, no source.
pub const FLANGE_WIDTH_M: f64 = 0.0015;
/// How far a 5 mm belt's back stands out beyond the pulley's teeth, m. Common practice, no source.
pub const BELT_BACK_M: f64 = 0.0017;
/// Thickness of the motor mount's plate, m. Common practice, no source.
pub const MOUNT_M: f64 = 0.008;
/// Thickness of a speed washer, m. Common practice, no source.
pub const WASHER_M: f64 = 0.001;
/// Height of the axle's nut, m: an M8 lock nut, from memory.
pub const NUT_M: f64 = 0.008;
/// Least room between two motors, m. Common practice, no source.
pub const MOTOR_GAP_M: f64 = 0.005;
/// Room below which two parts clear each other too tightly to trust sizes that
/// were assumed or rounded, m. Common practice, no source.
pub const TIGHT_M: f64 = 0.002;
/// Bore, outer diameter and width of a 608 bearing, m. Source: ISO 15.
pub const BEARING_608_M: [f64; 3] = [0.008, 0.022, 0.007];

/// How far the deck reaches beyond each axle, as a share of the wheelbase. Common practice, no source.
pub const DECK_END_SHARE: f64 = 0.16;
/// Diameter of a wheel's core as a share of the wheel's. Common practice, no source.
pub const CORE_SHARE: f64 = 0.5;
/// Height of a belt's tooth as a share of its pitch: 2.06 mm at 5 mm, from memory.
pub const TOOTH_SHARE: f64 = 0.412;

law! {
    /// Wheel pulley to the road, m.
    ///
    /// Source: geometry; the flange is common practice, no source.
    PulleyRoad = "Wheel pulley to road", "c" = "r − d_out / 2 − 2.5 mm", Metre, PRACTICE;
    radius: "r" Metre, outer: "d_out" Metre => radius - outer / 2.0 - FLANGE_HEIGHT_M
}

law! {
    /// Back of the belt to the road, under the wheel pulley, m.
    ///
    /// Source: geometry; the belt's back is common practice, no source.
    BeltRoad = "Belt to road", "c" = "r − d_out / 2 − 1.7 mm", Metre, PRACTICE;
    radius: "r" Metre, outer: "d_out" Metre => radius - outer / 2.0 - BELT_BACK_M
}

law! {
    /// Height of the motor shaft above the road, m.
    ///
    /// ```
    /// // By hand: 80 mm at 30° rise by half of that.
    /// use pitchline_core::physics::frame::MotorHeight;
    /// let height = MotorHeight { radius: 0.048, centre: 0.080, angle: 30.0 }.value();
    /// assert!((height - 0.088).abs() < 1e-12);
    /// ```
    MotorHeight = "Height of the motor shaft", "h_motor" = "r + C sin θ_mount", Metre, MECHANICS;
    radius: "r" Metre, centre: "C" Metre, angle: "θ_mount" Degree => radius + centre * sine_cosine(angle).0
}

law! {
    /// Motor can to the road, m.
    MotorRoad = "Motor to road", "c" = "h_motor − d_can / 2", Metre, MECHANICS;
    height: "h_motor" Metre, can: "d_can" Metre => height - can / 2.0
}

law! {
    /// Height of the deck's underside over the axles, with nobody on it, m.
    DeckHeight = "Height of the deck's underside", "h_deck" = "r + h_truck + h_riser", Metre, MECHANICS;
    radius: "r" Metre, truck: "h_truck" Metre, riser: "h_riser" Metre => radius + truck + riser
}

law! {
    /// Motor can to the deck above it, m.
    MotorDeck = "Motor to deck", "c" = "h_deck − h_motor − d_can / 2", Metre, MECHANICS;
    deck: "h_deck" Metre, height: "h_motor" Metre, can: "d_can" Metre => deck - height - can / 2.0
}

law! {
    /// Motor can to the enclosure ahead of it, measured along the board, m.
    MotorBox = "Motor to enclosure", "c" = "(L_base − l_box) / 2 + l_ahead − t_wall − C cos θ_mount − d_can / 2", Metre, MECHANICS;
    base: "L_base" Metre, length: "l_box" Metre, ahead: "l_ahead" Metre, wall: "t_wall" Metre,
    centre: "C" Metre, angle: "θ_mount" Degree, can: "d_can" Metre =>
        (base - length) / 2.0 + ahead - wall - centre * sine_cosine(angle).1 - can / 2.0
}

law! {
    /// Width of the wheel pulley with its flanges, m.
    PulleyWidth = "Width of the wheel pulley", "w_pulley" = "w_belt + 2 · 1.5 mm", Metre, PRACTICE;
    belt: "w_belt" Metre => belt + 2.0 * FLANGE_WIDTH_M
}

law! {
    /// Motor can to the wheel's tread, across their axes, m; may be negative.
    WheelAcross = "Motor to the tread, across", "c_across" = "C − (d_wheel + d_can) / 2", Metre, MECHANICS;
    centre: "C" Metre, wheel: "d_wheel" Metre, can: "d_can" Metre => centre - (wheel + can) / 2.0
}

law! {
    /// Motor can to the wheel's flank, along their axes, m: mount, washer and
    /// wheel pulley are between.
    WheelAlong = "Motor to the wheel's face, along", "c_along" = "8 mm + 1 mm + w_pulley", Metre, PRACTICE;
    pulley: "w_pulley" Metre => MOUNT_M + WASHER_M + pulley
}

law! {
    /// Least distance of two cylinders with parallel axes, m. Where they overlap
    /// both ways it is negative: the lesser way to pull them apart.
    MotorWheel = "Motor to wheel", "c" = "√(c_across² + c_along²) where both are positive, else the larger", Metre, MECHANICS;
    across: "c_across" Metre, along: "c_along" Metre =>
        if across > 0.0 && along > 0.0 { sqrt(across * across + along * along) } else { across.max(along) }
}

law! {
    /// Between the two motors, end to end, m.
    MotorMotor = "Motor to motor", "c" = "w_hanger − 2 (8 mm + l_can)", Metre, PRACTICE;
    hanger: "w_hanger" Metre, can: "l_can" Metre => hanger - 2.0 * (MOUNT_M + can)
}

law! {
    /// Hanger to spare beside mounts and motors and a gap between motors, m.
    HangerRoom = "Hanger width to spare", "c" = "w_hanger − n (8 mm + l_can) − (n − 1) 5 mm", Metre, PRACTICE;
    hanger: "w_hanger" Metre, motors: "n" Count, can: "l_can" Metre =>
        hanger - motors * (MOUNT_M + can) - (motors - 1.0) * MOTOR_GAP_M
}

law! {
    /// Width of the wheel's hub over its two bearings, m.
    HubWidth = "Two bearings and their spacer", "w_hub" = "2 · 7 mm + l_spacer", Metre, ISO_15;
    spacer: "l_spacer" Metre => 2.0 * BEARING_608_M[2] + spacer
}

law! {
    /// Axle that washers, wheel pulley, wheel and nut take, m.
    AxleTaken = "Axle length used", "l_taken" = "1 mm + w_pulley + (w_wheel + w_hub) / 2 + 1 mm + 8 mm", Metre, PRACTICE;
    pulley: "w_pulley" Metre, wheel: "w_wheel" Metre, hub: "w_hub" Metre =>
        2.0 * WASHER_M + pulley + (wheel + hub) / 2.0 + NUT_M
}

law! {
    /// Axle that stands out of its nut, m.
    AxleRoom = "Axle past its nut", "c" = "l_axle − l_taken", Metre, MECHANICS;
    axle: "l_axle" Metre, taken: "l_taken" Metre => axle - taken
}
