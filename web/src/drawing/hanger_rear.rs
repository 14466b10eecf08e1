//! The rear hanger from behind: wheels, pulleys and motors side by side.

use super::{Dim, Plan, Shape};
use crate::text::Style;

/// What the view shows; lengths in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HangerRear {
    /// Length of the hanger between the shoulders of its axle ends.
    pub hanger_m: f64,
    /// Length of each axle end.
    pub axle_end_m: f64,
    /// From the shoulder to the inner face of the wheel: spacer, pulley and all.
    pub inside_m: f64,
    /// Width of the pulley.
    pub pulley_width_m: f64,
    /// Outside diameter of the pulley on the wheel.
    pub pulley_m: f64,
    /// Width of the wheel.
    pub wheel_width_m: f64,
    /// Free diameter of the wheel.
    pub wheel_m: f64,
    /// Height of the axle over the road.
    pub axle_m: f64,
    /// Diameter of the motor's can.
    pub can_m: f64,
    /// Length of the motor's can.
    pub can_length_m: f64,
    /// Height of the motor's axle over the road.
    pub motor_m: f64,
    /// Motors: one or two.
    pub motors: u8,
    /// Thickness of the mount's plate, from the shoulder inwards.
    pub mount_m: f64,
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
        let (inner, motor) = (half + mm(self.inside_m), mm(self.motor_m));
        let outer = inner + mm(self.wheel_width_m);
        let wheel = mm(self.wheel_m) / 2.0;
        let pulley = mm(self.pulley_m) / 2.0;
        let end = half + mm(self.axle_end_m);
        let mut shapes = vec![
            Shape::rect("d-part", (-half, axle - 8.0), (half, axle + 8.0)),
            Shape::rect("d-axle", (-end, axle - 4.0), (-half, axle + 4.0)),
            Shape::rect("d-axle", (half, axle - 4.0), (end, axle + 4.0)),
        ];
        for (n, side) in [1.0, -1.0].into_iter().enumerate() {
            let rect = |class, from: f64, to: f64, at: f64, r: f64| {
                Shape::rect(class, (side * from, at - r), (side * to, at + r))
            };
            shapes.push(rect("d-wheel", inner, outer, axle, wheel));
            if n < usize::from(self.motors) {
                shapes.push(rect("d-part", inner - mm(self.pulley_width_m), inner, axle, pulley));
                let plate = half - mm(self.mount_m);
                shapes.push(rect("d-motor", plate - mm(self.can_length_m), plate, motor, can));
                shapes.push(rect("d-axle", plate, half, (motor + axle) / 2.0, can * 0.7));
            }
        }
        shapes.push(Shape::line("d-road", (-outer - 8.0, 0.0), (outer + 8.0, 0.0)));
        let [frame, sized] = self.assumed;
        let dim = |name: &str, value: f64, ends, aside: f64, assumed: bool| Dim {
            aside,
            assumed,
            ..Dim::new(style, name, value, ends)
        };
        let top = axle.max(motor + can).max(axle + wheel);
        let across = |x: f64, y: f64| ((-x, y), (x, y));
        let plate = half - mm(self.mount_m);
        let free = plate - mm(self.can_length_m);
        let gap = if self.motors > 1 { (-free, free) } else { (-half, free) };
        let dims = vec![
            dim(
                "Between the motors",
                self.between_m,
                ((gap.0, motor), (gap.1, motor)),
                0.0,
                sized || frame,
            ),
            dim("Hanger", self.hanger_m, across(half, top), 14.0, frame),
            dim("Over the wheels", 2.0 * outer / 1e3, across(outer, top), 32.0, frame),
            dim(
                "Axle end",
                self.axle_end_m,
                ((half, axle - wheel), (end, axle - wheel)),
                -14.0,
                frame,
            ),
            dim(
                "Motor can, length",
                self.can_length_m,
                ((free, motor + can), (plate, motor + can)),
                10.0,
                sized,
            ),
        ];
        let plan = Plan { shapes, dims, height: 360.0, ..Plan::new(style) };
        plan.note(((free + plate) / 2.0, motor - can / 2.0), "motor")
    }
}
