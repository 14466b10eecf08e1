//! The belt drive from the side: wheel, pulleys, belt and motor over the road.

use super::{Dim, Place, Plan, Shape};
use crate::text::{Style, drawing as said};

/// What the view shows; lengths in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeltSide {
    /// Free diameter of the wheel.
    pub wheel_m: f64,
    /// Height of its axle over the road.
    pub axle_m: f64,
    /// From the motor's shaft to the wheel's axle.
    pub centre_m: f64,
    /// The motor's shaft: ahead of the wheel's axle, and over the road.
    pub motor_m: (f64, f64),
    /// Pitch diameters of the pulleys: on the motor, on the wheel.
    pub pitches_m: [f64; 2],
    /// Their outside diameters.
    pub pulleys_m: [f64; 2],
    /// Wheel pulley's flange to the road.
    pub pulley_clear_m: f64,
    /// Motor to the road.
    pub motor_clear_m: f64,
    /// Diameter of the motor's can.
    pub can_m: f64,
    /// Whether the centre distance is that of a belt, or measured.
    pub centre_known: bool,
    /// Whether the can's size or the mount's angle is assumed.
    pub can_assumed: bool,
}

impl BeltSide {
    /// The drawing, in the reader's units.
    #[must_use]
    pub fn plan(&self, style: Style) -> Plan {
        let mm = |m: f64| m * 1e3;
        let wheel: Place = (0.0, mm(self.axle_m));
        let motor = (mm(self.motor_m.0), mm(self.motor_m.1));
        let (wheel_r, can_r) = (mm(self.wheel_m) / 2.0, mm(self.can_m) / 2.0);
        let right = (motor.0 + can_r).max(wheel_r);
        let [small, large] = self.pulleys_m.map(|m| mm(m) / 2.0);
        let [small_pitch, large_pitch] = self.pitches_m.map(|m| mm(m) / 2.0);
        let shapes = vec![
            Shape::circle("d-wheel", wheel, wheel_r),
            Shape::circle("d-far", motor, can_r),
            Shape::circle("d-part", wheel, large),
            Shape::circle("d-part", motor, small),
            Shape::belt("d-belt", (wheel, large_pitch), (motor, small_pitch)),
            Shape::circle("d-axle", wheel, 4.0),
            Shape::circle("d-axle", motor, 4.0),
            Shape::line("d-road", (-wheel_r - 10.0, 0.0), (right + 10.0, 0.0)),
        ];
        let (pulley_low, can_low) = (mm(self.pulley_clear_m), mm(self.motor_clear_m));
        let across = |(x, y): Place, r: f64| ((x - r, y), (x + r, y));
        let dim = |name: &str, value: f64, ends| Dim::new(style, name, value, ends);
        let centre = dim(said::SHAFT_TO_AXLE, self.centre_m, (wheel, motor));
        let centre = if self.centre_known {
            Dim { value: style.millimetres(self.centre_m), ..centre }
        } else {
            Dim { assumed: true, ..centre }
        };
        let top = (wheel.1 + wheel_r).max(motor.1 + can_r);
        let dims = vec![
            centre,
            dim(said::PULLEY_TO_ROAD, self.pulley_clear_m, ((0.0, pulley_low), (0.0, 0.0))),
            Dim {
                assumed: self.can_assumed || !self.centre_known,
                ..dim(said::MOTOR_TO_ROAD, self.motor_clear_m, ((motor.0, can_low), (motor.0, 0.0)))
            },
            Dim {
                aside: 32.0,
                ..Dim::size(
                    style,
                    said::WHEEL_DIAMETER,
                    self.wheel_m,
                    across((wheel.0, top), wheel_r),
                    false,
                )
            },
            Dim {
                aside: 12.0,
                ..Dim::size(
                    style,
                    said::MOTOR_DIAMETER,
                    self.can_m,
                    across((motor.0, top), can_r),
                    self.can_assumed,
                )
            },
        ];
        let plan = Plan { shapes, dims, height: 380.0, ..Plan::new(style) };
        plan.note((0.0, wheel.1 + (wheel_r + large) / 2.0), said::WHEEL)
            .note((0.0, wheel.1 - large * 0.5), said::WHEEL_PULLEY)
            .note((motor.0, motor.1 + (can_r + small) / 2.0), said::MOTOR)
            .note((motor.0 + small * 0.6, motor.1), said::MOTOR_PULLEY)
            .note((-wheel_r, 4.0), said::ROAD)
    }

    /// What cannot be seen well at this scale, as further rows of the table.
    #[must_use]
    pub fn more(&self, style: Style) -> Vec<(&'static str, String)> {
        let [small, large] = self.pulleys_m;
        vec![
            (said::WHEEL_PULLEY_DIAMETER, style.millimetres(large)),
            (said::MOTOR_PULLEY_DIAMETER, style.millimetres(small)),
            (said::AXLE_HEIGHT, style.rough_millimetres(self.axle_m)),
        ]
    }
}
