//! Words on the drawings to scale: the parts, and what is measured between them.

use super::page;

/// A wheel.
pub const WHEEL: &str = "wheel";
/// The pulley on it.
pub const WHEEL_PULLEY: &str = "wheel pulley";
/// The same from behind, where there is no other.
pub const PULLEY: &str = "pulley";
/// A motor.
pub const MOTOR: &str = "motor";
/// The pulley on it.
pub const MOTOR_PULLEY: &str = "motor pulley";
/// What holds it.
pub const MOUNT: &str = "mount";
/// What holds the wheels.
pub const HANGER: &str = "hanger";
/// That with its base.
pub const TRUCK: &str = "truck";
/// What the rider stands on.
pub const DECK: &str = "deck";
/// The box below it.
pub const ENCLOSURE: &str = "enclosure";
/// What lies in that.
pub const CELLS: &str = "cells";
/// What lies beside them.
pub const CONTROLLER: &str = "controller";
/// What the wheels stand on.
pub const ROAD: &str = "road";

/// Between motor and wheel.
pub const SHAFT_TO_AXLE: &str = "Motor shaft to wheel axle";
/// Below the wheel pulley.
pub const PULLEY_TO_ROAD: &str = "Wheel pulley to road";
/// Below the motor.
pub const MOTOR_TO_ROAD: &str = "Motor to road";
/// Across the wheel, nobody on the board.
pub const WHEEL_DIAMETER: &str = "Wheel diameter, unloaded";
/// Across the motor.
pub const MOTOR_DIAMETER: &str = "Motor can diameter";
/// Across the wheel pulley, in the table alone.
pub const WHEEL_PULLEY_DIAMETER: &str = "Wheel pulley, outside diameter";
/// Across the motor pulley, in the table alone.
pub const MOTOR_PULLEY_DIAMETER: &str = "Motor pulley, outside diameter";
/// Below the axle, in the table alone.
pub const AXLE_HEIGHT: &str = "Wheel axle above the road";

/// From one motor to the other.
pub const BETWEEN_MOTORS: &str = "Between the motors";
/// From a motor to where another would be held.
pub const BESIDE_MOTOR: &str = "Beside the motor";
/// Along the motor.
pub const MOTOR_LENGTH: &str = "Motor can length";
/// Along the hanger.
pub const HANGER_LENGTH: &str = "Rear hanger width";
/// From the outside of one wheel to that of the other.
pub const OVER_WHEELS: &str = "Width over the wheels";
/// Along the axle beyond the hanger.
pub const AXLE_END: &str = "Axle length, each end";

/// Below the enclosure.
pub const ENCLOSURE_TO_ROAD: &str = "Enclosure to road, standing still";
/// The same at the bottom of a bump.
pub const ENCLOSURE_OFF_BUMP: &str = "Enclosure to road, off a bump";
/// Behind that measure, where there is room.
pub const OFF_BUMP: &str = "off a bump";
/// How far the deck bends.
pub const DECK_SAG: &str = "Sag under the rider";
/// Behind that measure, where there is room.
pub const SAG: &str = "sag";
/// Between the axles.
pub const WHEELBASE: &str = "Wheelbase, axle to axle";

/// Along the enclosure.
pub const INSIDE_LENGTH: &str = "Enclosure length, inside";
/// Across it.
pub const INSIDE_WIDTH: &str = "Enclosure width, inside";
/// What its contents take of the length.
pub const USED_LENGTH: &str = "Length used, with padding";
/// What they take of the width.
pub const USED_WIDTH: &str = "Width used, with padding";

/// A measure at the cursor, with its unit.
#[must_use]
pub fn measure(name: &str, value: &str, symbol: &str, assumed: bool) -> String {
    let assumed = if assumed { [" (", page::ASSUMED, ")"].concat() } else { String::new() };
    [name, ": ", value, "\u{a0}", symbol, &assumed].concat()
}
