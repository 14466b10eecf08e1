//! The belt drive from the side: wheel, pulleys, belt and motor over the road.

use super::{Dim, Place, Plan, Shape};
use crate::text::Style;

/// What the view shows; lengths in metres, angle in radians.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeltSide {
    /// Free diameter of the wheel.
    pub wheel_m: f64,
    /// Height of its axle over the road.
    pub axle_m: f64,
    /// Between the axles of wheel and motor.
    pub centre_m: f64,
    /// How far the motor's axle stands above the wheel's, seen from there.
    pub angle: f64,
    /// Pitch diameter of the pulley on the wheel.
    pub wheel_pitch_m: f64,
    /// Its outside diameter.
    pub wheel_pulley_m: f64,
    /// Pitch diameter of the pulley on the motor.
    pub motor_pitch_m: f64,
    /// Its outside diameter.
    pub motor_pulley_m: f64,
    /// Diameter over the wheel pulley's flange or the belt's back, whichever is more.
    pub over_belt_m: f64,
    /// Diameter of the motor's can.
    pub can_m: f64,
    /// Whether the centre distance is assumed; then whether the can's size is.
    pub assumed: [bool; 2],
}

impl BeltSide {
    /// The drawing, in the reader's units.
    #[must_use]
    pub fn plan(&self, style: Style) -> Plan {
        let mm = |m: f64| m * 1e3;
        let wheel: Place = (0.0, mm(self.axle_m));
        let (sin, cos) = self.angle.sin_cos();
        let motor = (mm(self.centre_m) * cos, wheel.1 + mm(self.centre_m) * sin);
        let (wheel_r, can_r) = (mm(self.wheel_m) / 2.0, mm(self.can_m) / 2.0);
        let right = (motor.0 + can_r).max(wheel_r);
        let pitch = |m: f64| mm(m) / 2.0;
        let shapes = vec![
            Shape::circle("d-wheel", wheel, wheel_r),
            Shape::circle("d-far", motor, can_r),
            Shape::circle("d-part", wheel, pitch(self.wheel_pulley_m)),
            Shape::circle("d-part", motor, pitch(self.motor_pulley_m)),
            Shape::belt(
                "d-belt",
                (wheel, pitch(self.wheel_pitch_m)),
                (motor, pitch(self.motor_pitch_m)),
            ),
            Shape::circle("d-axle", wheel, 4.0),
            Shape::circle("d-axle", motor, 4.0),
            Shape::line("d-road", (-wheel_r - 10.0, 0.0), (right + 10.0, 0.0)),
        ];
        let down = |from: Place| (from.0, 0.0);
        let under_belt = (0.0, wheel.1 - mm(self.over_belt_m) / 2.0);
        let under_can = (motor.0, motor.1 - can_r);
        let across = |(x, y): Place, r: f64| ((x - r, y), (x + r, y));
        let (wheel_from, wheel_to) = across((0.0, wheel.1 + wheel_r), wheel_r);
        let (can_from, can_to) = across((motor.0, motor.1 + can_r), can_r);
        let [centre_assumed, can_assumed] = self.assumed;
        let dim = |name: &str, value: f64, ends| Dim::new(style, name, value, ends);
        let over = self.over_belt_m / 2.0;
        let dims = vec![
            Dim {
                assumed: centre_assumed,
                ..dim("Between the axles", self.centre_m, (wheel, motor))
            },
            dim(
                "Wheel pulley or belt to the road",
                self.axle_m - over,
                (under_belt, down(under_belt)),
            ),
            Dim {
                assumed: centre_assumed || can_assumed,
                ..dim("Motor to the road", under_can.1 / 1e3, (under_can, down(under_can)))
            },
            Dim {
                aside: 14.0,
                ..dim("Wheel, free diameter", self.wheel_m, (wheel_from, wheel_to))
            },
            Dim {
                aside: 14.0,
                assumed: can_assumed,
                ..dim("Motor can, diameter", self.can_m, (can_from, can_to))
            },
        ];
        Plan { shapes, dims, height: 380.0, ..Plan::new(style) }
    }

    /// What cannot be seen well at this scale, as further rows of the table.
    #[must_use]
    pub fn more(&self, style: Style) -> Vec<(&'static str, String)> {
        vec![
            ("Wheel pulley, outside diameter", style.millimetres(self.wheel_pulley_m)),
            ("Motor pulley, outside diameter", style.millimetres(self.motor_pulley_m)),
            ("Wheel axle over the road", style.millimetres(self.axle_m)),
        ]
    }
}
