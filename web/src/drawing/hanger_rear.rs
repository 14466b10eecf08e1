//! The rear hanger from behind: wheels, pulleys and motors side by side.

use super::{Dim, Plan, Shape};
use crate::text::{Style, drawing as said};

/// What the view shows; lengths in metres, across from the middle of the board.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HangerRear {
    /// Length of the hanger between the shoulders of its axle ends.
    pub hanger_m: f64,
    /// Length of each axle end.
    pub axle_end_m: f64,
    /// The pulley across: from and to.
    pub pulley_across_m: [f64; 2],
    /// Outside diameter of the pulley on the wheel.
    pub pulley_m: f64,
    /// The wheel across: inner and outer flank.
    pub wheel_across_m: [f64; 2],
    /// Free diameter of the wheel.
    pub wheel_m: f64,
    /// Height of the axle over the road.
    pub axle_m: f64,
    /// Diameter of the motor's can.
    pub can_m: f64,
    /// Length of the motor's can.
    pub can_length_m: f64,
    /// The motor's can across: inner end, and the plate that it stands on.
    pub can_across_m: [f64; 2],
    /// Height of the motor shaft over the road.
    pub motor_m: f64,
    /// Motors: one or two.
    pub motors: u8,
    /// What is left between two motors, or between one and the far mount;
    /// negative where they meet.
    pub between_m: f64,
    /// Whether sizes of hanger and axle are assumed; then those of the motor.
    pub assumed: [bool; 2],
}

impl HangerRear {
    /// The drawing, in the reader's units.
    #[must_use]
    pub fn plan(&self, style: Style) -> Plan {
        let mm = |m: f64| m * 1e3;
        let (half, axle, can) = (mm(self.hanger_m) / 2.0, mm(self.axle_m), mm(self.can_m) / 2.0);
        let ([inner, outer], motor) = (self.wheel_across_m.map(mm), mm(self.motor_m));
        let [pulley_from, pulley_to] = self.pulley_across_m.map(mm);
        let [free, plate] = self.can_across_m.map(mm);
        let wheel = mm(self.wheel_m) / 2.0;
        let pulley = mm(self.pulley_m) / 2.0;
        let end = half + mm(self.axle_end_m);
        let mut shapes = vec![
            Shape::rect("d-part", (-half, axle - 8.0), (half, axle + 8.0)),
            Shape::rect("d-metal", (-end, axle - 4.0), (-half, axle + 4.0)),
            Shape::rect("d-metal", (half, axle - 4.0), (end, axle + 4.0)),
        ];
        for (n, side) in [1.0, -1.0].into_iter().enumerate() {
            let rect = |class, from: f64, to: f64, at: f64, r: f64| {
                Shape::rect(class, (side * from, at - r), (side * to, at + r))
            };
            shapes.push(rect("d-wheel", inner, outer, axle, wheel));
            if n < usize::from(self.motors) {
                shapes.push(rect("d-part", pulley_from, pulley_to, axle, pulley));
                shapes.push(rect("d-motor", free, plate, motor, can));
                shapes.push(rect("d-metal", plate, half, (motor + axle) / 2.0, can * 0.7));
            }
        }
        shapes.push(Shape::line("d-road", (-outer - 8.0, 0.0), (outer + 8.0, 0.0)));
        let [frame, sized] = self.assumed;
        let top = axle.max(motor + can).max(axle + wheel);
        let across = |x: f64, y: f64| ((-x, y), (x, y));
        let gap = if self.motors > 1 { (-free, free) } else { (-half, free) };
        let low = axle - wheel;
        let size = |name: &str, value: f64, ends, aside: f64, assumed: bool| Dim {
            aside,
            ..Dim::size(style, name, value, ends, assumed)
        };
        let dim = |name: &str, value: f64, ends, aside: f64, assumed: bool| Dim {
            aside,
            assumed,
            ..Dim::new(style, name, value, ends)
        };
        let between = if self.motors > 1 { said::BETWEEN_MOTORS } else { said::BESIDE_MOTOR };
        let dims = vec![
            dim(between, self.between_m, ((gap.0, top), (gap.1, top)), 12.0, sized || frame),
            size(said::MOTOR_LENGTH, self.can_length_m, ((free, top), (plate, top)), 12.0, sized),
            size(said::HANGER_LENGTH, self.hanger_m, across(half, top), 31.0, frame),
            dim(said::OVER_WHEELS, 2.0 * self.wheel_across_m[1], across(outer, top), 50.0, frame),
            size(said::AXLE_END, self.axle_end_m, ((half, low), (end, low)), -14.0, frame),
        ];
        let side = if self.motors > 1 { -1.0 } else { 1.0 };
        let plan = Plan { shapes, dims, height: 360.0, ..Plan::new(style) };
        plan.note((side * (free + plate) / 2.0, motor + can * 0.4), said::MOTOR)
            .note((-(inner + outer) / 2.0, axle + wheel * 0.5), said::WHEEL)
            .note((side * (plate + half) / 2.0, (motor + axle) / 2.0 - can * 0.6), said::MOUNT)
            .note((side * (pulley_from + pulley_to) / 2.0, axle - pulley * 0.75), said::PULLEY)
            .note((0.0, axle), said::HANGER)
    }
}
