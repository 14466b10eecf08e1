//! Where each part of the board is tapped: areas that a finger meets, none over another.

use crate::chart::{Mark, within};
use pitchline_core::Slot;

/// An upright rectangle in logical pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Its left edge.
    pub x: f64,
    /// Its upper edge.
    pub y: f64,
    /// From left to right.
    pub width: f64,
    /// From its upper to its lower edge.
    pub height: f64,
}

impl Area {
    /// Least width and height that a finger meets.
    pub const TOUCH: f64 = 44.0;

    fn between((left, right): (f64, f64), (top, bottom): (f64, f64)) -> Self {
        Self { x: left, y: top, width: right - left, height: bottom - top }
    }

    fn right(self) -> f64 {
        self.x + self.width
    }

    fn bottom(self) -> f64 {
        self.y + self.height
    }

    /// Its middle, sideways.
    fn mid(self) -> f64 {
        self.x + self.width / 2.0
    }

    /// The same as a mark.
    pub(super) fn rect(self, class: &'static str) -> Mark {
        let Self { x, y, width, height } = self;
        Mark::Rect { class, x, y, width, height }
    }
}

/// The parts that can be tapped, in the order in which the keyboard visits them.
pub const PARTS: [Slot; 10] = [
    Slot::Deck,
    Slot::Truck,
    Slot::Wheel,
    Slot::Motor,
    Slot::MotorPulley,
    Slot::WheelPulley,
    Slot::Belt,
    Slot::Pack,
    Slot::Cell,
    Slot::Controller,
];

/// Where the parts stand on the page.
pub(super) struct Stands {
    pub width: f64,
    pub height: f64,
    /// Where the row of words begins.
    pub foot: f64,
    pub deck: Area,
    /// The front one.
    pub wheel: Area,
    pub motor: Area,
    pub motor_pulley: Area,
    pub wheel_pulley: Area,
    pub enclosure: Area,
    pub bank: Area,
    pub controller: Area,
}

impl Stands {
    /// The middles of gearing, pack and front wheel, sideways.
    pub(super) fn middles(&self) -> [f64; 3] {
        let drive = (self.wheel_pulley.mid() + self.motor_pulley.mid()) / 2.0;
        [drive, self.enclosure.mid(), self.wheel.mid()]
    }
}

/// Where each of [`PARTS`] is tapped.
///
/// The drawing is cut into three columns, for drive, enclosure and front wheel, each wide enough for what
/// stands side by side in it, and those into what is over the road, in two rows, and the row of words
/// under it.
pub(super) fn areas(at: &Stands) -> [Area; 10] {
    let touch = Area::TOUCH;
    let fits = |x: f64, low: f64, high: f64| within(x, low, high.max(low));
    // From the drive to the enclosure, and from there to the front wheel.
    let drive_end = at.motor.right().max(at.wheel_pulley.right());
    let to_box = fits((drive_end + at.enclosure.x) / 2.0, 2.0 * touch, at.width - 3.0 * touch);
    let to_wheel =
        fits((at.enclosure.right() + at.wheel.x) / 2.0, to_box + 2.0 * touch, at.width - touch);
    let from = fits(at.deck.x.min(at.wheel_pulley.x), 0.0, to_box - 2.0 * touch);
    let end = fits(at.deck.right().max(at.wheel.right()), to_wheel + touch, at.width);

    // Over the words: what is above, and what is below.
    let (foot, bottom) = (at.foot, at.height);
    let row = |y: f64| fits(y, touch, foot - touch);

    // Wheel pulley and motor pulley side by side, the motor over its own.
    let ahead = at.motor_pulley.mid() >= at.wheel_pulley.mid();
    let (rear, fore) =
        if ahead { (at.wheel_pulley, at.motor_pulley) } else { (at.motor_pulley, at.wheel_pulley) };
    let cut = fits((rear.right() + fore.x) / 2.0, from + touch, to_box - touch);
    let (rear, fore) = ((from, cut), (cut, to_box));
    let (on_wheel, on_motor) = if ahead { (rear, fore) } else { (fore, rear) };
    let motor = row(at.motor_pulley.y);

    // Cells and controller side by side.
    let behind = at.controller.mid() < at.bank.mid();
    let cut = if behind { (at.controller.right() + at.bank.x) / 2.0 } else { at.controller.x };
    let cut = fits(cut, to_box + touch, to_wheel - touch);
    let (rear, fore) = ((to_box, cut), (cut, to_wheel));
    let (cells, controller) = if behind { (fore, rear) } else { (rear, fore) };
    let deck = row(at.deck.bottom());
    let wheel = row(at.wheel.y);
    [
        Area::between((to_box, to_wheel), (0.0, deck)),
        Area::between((to_wheel, end), (0.0, wheel)),
        Area::between((to_wheel, end), (wheel, bottom)),
        Area::between(on_motor, (0.0, motor)),
        Area::between(on_motor, (motor, foot)),
        Area::between(on_wheel, (row(at.wheel_pulley.y), foot)),
        Area::between((from, to_box), (foot, bottom)),
        Area::between((to_box, to_wheel), (foot, bottom)),
        Area::between(cells, (deck, foot)),
        Area::between(controller, (deck, foot)),
    ]
}
