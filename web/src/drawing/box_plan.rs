//! The box from above, with the cells and the controller in it.

use super::{Dim, Plan, Shape};
use crate::text::{Style, drawing as said};

/// Something that lies in the box; lengths in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Item {
    /// Middle, along the box from its left end.
    pub x_m: f64,
    /// Middle, across the box from its lower side.
    pub y_m: f64,
    /// Size along the box.
    pub length_m: f64,
    /// Size across the box.
    pub width_m: f64,
    /// Whether it stands on end and is seen as a circle.
    pub round: bool,
}

/// What the view shows; lengths in metres.
#[derive(Clone, Debug, PartialEq)]
pub struct BoxPlan {
    /// Inside length of the box.
    pub length_m: f64,
    /// Inside width of the box.
    pub width_m: f64,
    /// The cells of the layer that is seen.
    pub cells: Vec<Item>,
    /// The controller.
    pub controller: Option<Item>,
    /// Length that the contents take.
    pub used_length_m: f64,
    /// Width that the contents take.
    pub used_width_m: f64,
    /// Whether a size is assumed.
    pub assumed: bool,
}

impl BoxPlan {
    /// The drawing, in the reader's units.
    #[must_use]
    pub fn plan(&self, style: Style) -> Plan {
        let mm = |m: f64| m * 1e3;
        let (length, width) = (mm(self.length_m), mm(self.width_m));
        let (used, across) = (mm(self.used_length_m), mm(self.used_width_m));
        let mut shapes = vec![Shape::rect("d-box", (0.0, 0.0), (length, width))];
        let drawn = |class, item: &Item| {
            let (x, y, l, w) = (mm(item.x_m), mm(item.y_m), mm(item.length_m), mm(item.width_m));
            if item.round {
                Shape::circle(class, (x, y), l / 2.0)
            } else {
                Shape::rect(class, (x - l / 2.0, y - w / 2.0), (x + l / 2.0, y + w / 2.0))
            }
        };
        shapes.extend(self.cells.iter().map(|cell| drawn("d-part", cell)));
        shapes.extend(self.controller.iter().map(|item| drawn("d-motor", item)));
        let size = |name: &str, value: f64, ends, aside: f64| Dim {
            aside,
            ..Dim::size(style, name, value, ends, self.assumed)
        };
        let taken = |name: &str, value: f64, ends, aside: f64, bad: bool| Dim {
            aside,
            bad,
            assumed: self.assumed,
            ..Dim::new(style, name, value, ends)
        };
        let high = width.max(across);
        let far = length.max(used);
        let dims = vec![
            size(said::INSIDE_LENGTH, self.length_m, ((0.0, high), (length, high)), 32.0),
            size(said::INSIDE_WIDTH, self.width_m, ((far, width), (far, 0.0)), 14.0),
            taken(
                said::USED_LENGTH,
                self.used_length_m,
                ((0.0, high), (used, high)),
                12.0,
                used > length,
            ),
            taken(
                said::USED_WIDTH,
                self.used_width_m,
                ((0.0, 0.0), (0.0, across)),
                12.0,
                across > width,
            ),
        ];
        let mut plan = Plan { shapes, dims, height: 360.0, ..Plan::new(style) };
        let at = |item: &Item| (mm(item.x_m), mm(item.y_m));
        if let Some(item) = &self.controller {
            plan = plan.note(at(item), said::CONTROLLER);
        }
        if let Some(item) = self.cells.last() {
            plan = plan.note(at(item), said::CELLS);
        }
        plan
    }
}
