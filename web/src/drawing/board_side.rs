//! The whole board from the side, front to the right: the product's face.
//!
//! Unlike a [`Plan`](super::Plan) it has no dimensions. It is made of parts, each with its slot, and
//! gives each an area to tap.

use super::board_area::{Area, Stands, areas};
use super::board_label::labels;
use super::pulley::Pulley;
use super::shape::{Place, Shape, arc};
use crate::chart::{Mark, capsule, path, within};
use pitchline_core::Slot;
use pitchline_core::angle;
use pitchline_core::physics::frame::BEARING_608_M;
use std::f64::consts::{FRAC_PI_2, PI};

/// What the view shows; lengths in metres, places ahead of the rear axle's or the board's middle as
/// said, heights over the road.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardSide {
    /// Between the axles.
    pub wheelbase_m: f64,
    /// Free diameter of the wheels.
    pub wheel_m: f64,
    /// Diameter of their cores.
    pub core_m: f64,
    /// Height of the axles.
    pub axle_m: f64,
    /// Height of the trucks over the axles.
    pub truck_m: f64,
    /// Underside of the deck at the axles, with nobody on it.
    pub deck_m: f64,
    /// How far the deck reaches beyond each axle.
    pub deck_end_m: f64,
    /// Thickness of the deck.
    pub thick_m: f64,
    /// How far its middle sags under the rider.
    pub sag_m: f64,
    /// The motor's shaft: ahead of the rear axle, and its height.
    pub motor_m: (f64, f64),
    /// Diameter of the motor's can.
    pub can_m: f64,
    /// Pitch diameters of the pulleys: on the motor, on the wheel.
    pub pitches_m: [f64; 2],
    /// Diameters over their teeth.
    pub pulleys_m: [f64; 2],
    /// Their teeth.
    pub teeth: [f64; 2],
    /// Height of a tooth.
    pub tooth_m: f64,
    /// Outside of the enclosure: length, and depth below the deck.
    pub box_m: [f64; 2],
    /// Inside of the enclosure: length and height.
    pub inside_m: [f64; 2],
    /// How far its middle stands ahead of the middle between the axles.
    pub box_ahead_m: f64,
    /// All cells together, from and to: along from the enclosure's front end inside, and up from its floor.
    pub bank_m: [[f64; 2]; 2],
    /// The controller, in the same way.
    pub controller_m: [[f64; 2]; 2],
    /// Whether it lies beside the cells, and is seen through.
    pub beside: bool,
    /// What cells and controller take of the inside.
    pub used_m: [f64; 2],
    /// Whether they fit; where not, they are drawn as much smaller.
    pub fits: bool,
    /// Cells in series.
    pub series: f64,
    /// Words under the gearing, the pack and the front wheel, each in full and shorter.
    pub words: [[String; 2]; 3],
}

/// A finished drawing of the board; one logical pixel is one CSS pixel.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardDrawing {
    /// Width in logical pixels.
    pub width: f64,
    /// Height in logical pixels.
    pub height: f64,
    /// Height at which the road runs.
    pub ground: f64,
    /// Parts in painting order.
    pub parts: Vec<(Slot, Vec<Mark>)>,
    /// Road and words.
    pub rest: Vec<Mark>,
    /// Where each of [`PARTS`](super::PARTS) is tapped.
    pub areas: [Area; 10],
}

/// Least free room beside and above the board, logical pixels.
const RIM: f64 = 6.0;
/// Greatest height of the board.
const TALLEST: f64 = 220.0;
/// Least width of a frame that has room for every part.
const NARROWEST: f64 = 240.0;
/// Widest frame.
const WIDEST: f64 = 1200.0;
/// Least length of the board for each cell in series, so that each can be told.
const CELL: f64 = 4.5;
/// From what is lowest down to the baseline of the words.
const WORDS: f64 = 17.0;
/// How far a finger that meets something low may miss the road.
const FOOT: f64 = 10.0;

/// Where millimetres come to stand: x ahead of the middle between the axles, y over the road.
#[derive(Clone, Copy)]
struct Frame {
    left: f64,
    ground: f64,
    scale: f64,
}

impl Frame {
    fn at(self, (x, y): Place) -> Place {
        (self.left + x * self.scale, self.ground - y * self.scale)
    }

    fn area(self, [x1, x2]: [f64; 2], [y1, y2]: [f64; 2]) -> Area {
        let ((left, top), (right, bottom)) = (self.at((x1, y2)), self.at((x2, y1)));
        Area { x: left, y: top, width: right - left, height: bottom - top }
    }

    fn circle(self, class: &'static str, at: Place, r: f64) -> Mark {
        let (x, y) = self.at(at);
        Mark::Circle { class, x, y, r: r * self.scale }
    }

    fn shape(self, shape: &Shape) -> Mark {
        let places: Vec<_> = shape.points.iter().map(|place| self.at(*place)).collect();
        Mark::Path { class: shape.class, d: path(&places, shape.closed) }
    }
}

fn mm(m: f64) -> f64 {
    m * 1e3
}

impl BoardSide {
    /// Lays the board out for a width in logical pixels (held within 240 and 1200).
    #[must_use]
    pub fn draw(&self, width: f64) -> BoardDrawing {
        let width = if width.is_nan() { 360.0 } else { within(width, NARROWEST, WIDEST) };
        let [[left, right], [low, high]] = self.reach();
        let scale = ((width - 2.0 * RIM) / (right - left)).min(TALLEST / (high - low));
        let least = 2.0 * Area::TOUCH;
        let frame = Frame {
            left: (width - (left + right) * scale) / 2.0,
            ground: least.max(RIM + high * scale),
            scale,
        };
        let under = frame.ground - low * scale;
        let height = under + FOOT + Area::TOUCH;
        let stands = self.stands(frame, width, height);
        let mut rest = vec![Mark::Line {
            class: "b-road",
            x1: 0.0,
            y1: frame.ground,
            x2: width,
            y2: frame.ground,
        }];
        labels(&self.words, stands.middles(), width, under + WORDS, &mut rest);
        BoardDrawing {
            width,
            height,
            ground: frame.ground,
            parts: vec![
                (Slot::Truck, self.trucks(frame)),
                (Slot::Deck, vec![frame.shape(&self.enclosure()), frame.shape(&self.plank())]),
                (Slot::Pack, vec![stands.bank.rect("b-pack")]),
                (Slot::Cell, self.cells(stands.bank)),
                (
                    Slot::Controller,
                    vec![stands.controller.rect(if self.beside {
                        "b-controller b-through"
                    } else {
                        "b-controller"
                    })],
                ),
                (Slot::Wheel, self.wheels(frame)),
                (Slot::Motor, self.motor(frame)),
                (Slot::WheelPulley, self.pulley(frame, 1)),
                (Slot::MotorPulley, self.pulley(frame, 0)),
                (Slot::Belt, vec![frame.shape(&self.belt())]),
            ],
            rest,
            areas: areas(&stands),
        }
    }

    /// From and to, along and up, mm.
    fn reach(&self) -> [[f64; 2]; 2] {
        let (axle, shaft) = (self.rear(), self.shaft());
        let wheel = mm(self.wheel_m) / 2.0;
        let can = mm(self.can_m) / 2.0;
        let [small, large] = self.pulleys_m.map(|m| mm(m) / 2.0);
        let tip = self.under(mm(self.wheelbase_m / 2.0 + self.deck_end_m));
        let thick = mm(self.thick_m);
        let ends = mm(self.wheelbase_m / 2.0 + self.deck_end_m) + thick / 2.0;
        let [length, depth] = self.box_m.map(mm);
        let ahead = mm(self.box_ahead_m);
        let far = |list: &[f64]| list.iter().copied().fold(0.0, f64::max);
        let rear = far(&[
            ends,
            wheel - axle.0,
            large - axle.0,
            can.max(small) - shaft.0,
            length / 2.0 - ahead,
        ]);
        let front = far(&[ends, wheel - axle.0, shaft.0 + can.max(small), length / 2.0 + ahead]);
        let over = far(&[
            tip + thick,
            axle.1 + wheel.max(large),
            shaft.1 + can.max(small),
            mm(self.axle_m + self.truck_m),
        ]);
        let below = far(&[
            depth + mm(self.sag_m) - mm(self.deck_m),
            mm(self.sag_m) - mm(self.deck_m),
            large - axle.1,
            can.max(small) - shaft.1,
        ]);
        [[-rear, front], [-below, over]]
    }

    /// The rear axle, mm.
    fn rear(&self) -> Place {
        (-mm(self.wheelbase_m) / 2.0, mm(self.axle_m))
    }

    /// The motor's shaft, mm.
    fn shaft(&self) -> Place {
        (self.rear().0 + mm(self.motor_m.0), mm(self.motor_m.1))
    }

    /// The deck's underside: a sagging beam, near enough for the eye, is a parabola between the axles
    /// and straight beyond them; beyond its ends it is level.
    fn under(&self, x: f64) -> f64 {
        let (half, sag) = (mm(self.wheelbase_m) / 2.0, mm(self.sag_m));
        let share = x.abs().min(half + mm(self.deck_end_m)) / half;
        let rise = if share < 1.0 { share * share - 1.0 } else { 2.0 * (share - 1.0) };
        mm(self.deck_m) + sag * rise
    }

    fn plank(&self) -> Shape {
        let half = mm(self.wheelbase_m) / 2.0;
        let ends = half + mm(self.deck_end_m);
        let thick = mm(self.thick_m);
        let steps = |sign: f64| (-10..=10).map(move |n| sign * f64::from(n) * half / 10.0);
        let end = |x: f64| (x, self.under(x) + thick / 2.0);
        let mut points: Vec<Place> = steps(1.0).map(|x| (x, self.under(x))).collect();
        points.extend(arc(end(ends), thick / 2.0, -FRAC_PI_2, FRAC_PI_2));
        points.extend(steps(-1.0).map(|x| (x, self.under(x) + thick)));
        points.extend(arc(end(-ends), thick / 2.0, FRAC_PI_2, 3.0 * FRAC_PI_2));
        Shape::outline("b-deck", points)
    }

    /// Height of the enclosure's floor outside.
    fn floor(&self) -> f64 {
        // An enclosure is stiff: its floor is level.
        mm(self.deck_m - self.sag_m - self.box_m[1])
    }

    fn enclosure(&self) -> Shape {
        let [length, depth] = self.box_m.map(mm);
        let (mid, floor) = (mm(self.box_ahead_m), self.floor());
        let along = |n: i32| mid + f64::from(n) * length / 20.0;
        let mut points: Vec<Place> = (-10..=10).map(along).map(|x| (x, self.under(x))).collect();
        let r = 9.0_f64.min(depth / 3.0).min(length / 3.0);
        let corner = |n: i32| along(n) - r * f64::from(n.signum());
        points.extend(arc((corner(10), floor + r), r, 0.0, -FRAC_PI_2));
        points.extend(arc((corner(-10), floor + r), r, -FRAC_PI_2, -PI));
        // Broken where it is too small for what is in it.
        Shape::outline(if self.fits { "b-box" } else { "b-box b-amiss" }, points)
    }

    /// What is in the enclosure, on the page. The cells begin at its front, so that the controller behind
    /// them is near the motors.
    fn inside(&self, frame: Frame, [along, up]: [[f64; 2]; 2]) -> Area {
        let [length, height] = self.inside_m.map(mm);
        let [taken, high] = self.used_m.map(mm);
        let squeeze = |m: f64, room: f64, used: f64| mm(m) * (room / used.max(1.0)).min(1.0);
        let front = mm(self.box_ahead_m) + length / 2.0;
        let wall = mm(self.box_m[1]) - height;
        let x = along.map(|m| front - squeeze(m, length, taken));
        let y = up.map(|m| self.floor() + wall + squeeze(m, height, high));
        frame.area([x[1], x[0]], y)
    }

    /// A bar for each group in series, as far as they can be told apart.
    fn cells(&self, bank: Area) -> Vec<Mark> {
        let step = bank.width / self.series.max(1.0);
        let r = (step.min(bank.height) - 1.5).min(0.9 * step) / 2.0;
        if step < CELL || r < 1.0 {
            return Vec::new();
        }
        let (top, bottom) = (bank.y + 0.75 + r, bank.y + bank.height - 0.75 - r);
        let mut d = String::new();
        for n in (0..self.series as u32).map(f64::from) {
            capsule(&mut d, bank.x + (n + 0.5) * step, (top, bottom.max(top)), r);
        }
        vec![Mark::Path { class: "b-cell", d }]
    }

    /// From the axle up to the deck: hanger, plate and riser.
    fn trucks(&self, frame: Frame) -> Vec<Mark> {
        let (axle, top) = (mm(self.axle_m), mm(self.axle_m + self.truck_m));
        let deck = mm(self.deck_m);
        let half = within(mm(self.truck_m) * 0.55, 16.0, 40.0);
        let plate = top - mm(self.truck_m).min(24.0) / 4.0;
        let one = |x: f64| {
            let hanger = vec![
                (x - 11.0, axle),
                (x + 11.0, axle),
                (x + half * 0.7, plate),
                (x - half * 0.7, plate),
            ];
            let mut marks = vec![
                frame.shape(&Shape::outline("b-truck", hanger)),
                frame.shape(&Shape::rect("b-truck", (x - half, plate), (x + half, top))),
            ];
            if deck > top + 0.5 {
                marks.push(frame.shape(&Shape::rect("b-riser", (x - half, top), (x + half, deck))));
            }
            marks
        };
        let (rear, _) = self.rear();
        [rear, -rear].into_iter().flat_map(one).collect()
    }

    /// Both wheels, flat where they stand.
    fn wheels(&self, frame: Frame) -> Vec<Mark> {
        let (x, axle) = self.rear();
        let (wheel, core) = (mm(self.wheel_m) / 2.0, mm(self.core_m) / 2.0);
        // From the front edge of the patch around to its rear edge.
        let lower = (axle / wheel).min(1.0);
        let patch = angle((1.0 - lower * lower).sqrt(), lower).to_radians();
        let [bore, bearing, _] = BEARING_608_M.map(|m| mm(m) / 2.0);
        let one = |x: f64| {
            let tyre = arc((x, axle), wheel, patch - FRAC_PI_2, 1.5 * PI - patch);
            [
                frame.shape(&Shape::outline("b-tyre", tyre)),
                frame.circle("b-core", (x, axle), core),
                frame.circle("b-hub", (x, axle), bearing.min(core)),
                frame.circle("b-axle", (x, axle), bore),
            ]
        };
        [x, -x].into_iter().flat_map(one).collect()
    }

    fn motor(&self, frame: Frame) -> Vec<Mark> {
        let r = mm(self.can_m) / 2.0;
        vec![frame.circle("b-can", self.shaft(), r), frame.circle("b-cap", self.shaft(), r * 0.8)]
    }

    /// The pulley on the motor, 0, or on the wheel, 1.
    fn pulley(&self, frame: Frame, which: usize) -> Vec<Mark> {
        let middle = if which == 0 { self.shaft() } else { self.rear() };
        let r = mm(self.pulleys_m[which]) / 2.0;
        let [bore, bearing, _] = BEARING_608_M.map(|m| mm(m) / 2.0);
        let mut marks = Vec::new();
        Pulley {
            at: frame.at(middle),
            r: r * frame.scale,
            tooth: mm(self.tooth_m) * frame.scale,
            teeth: self.teeth[which],
        }
        .marks(&mut marks);
        if which == 1 {
            marks.push(frame.circle("b-web", middle, 0.7 * r));
            marks.push(frame.circle("b-hub", middle, bearing.min(0.5 * r)));
        }
        marks.push(frame.circle("b-axle", middle, bore.min(0.4 * r)));
        marks
    }

    /// Its path along the pitch circles.
    fn belt(&self) -> Shape {
        let [small, large] = self.pitches_m.map(|m| mm(m) / 2.0);
        Shape::belt("b-belt", (self.rear(), large), (self.shaft(), small))
    }

    /// Where the parts stand on the page.
    fn stands(&self, frame: Frame, width: f64, height: f64) -> Stands {
        let about = |(x, y): Place, r: f64| frame.area([x - r, x + r], [y - r, y + r]);
        let [small, large] = self.pulleys_m.map(|m| mm(m) / 2.0);
        let (x, axle) = self.rear();
        let [length, depth] = self.box_m.map(mm);
        let (mid, floor) = (mm(self.box_ahead_m), self.floor());
        let deck = mm(self.wheelbase_m / 2.0 + self.deck_end_m);
        let thick = mm(self.thick_m);
        Stands {
            width,
            height,
            foot: frame.ground + FOOT,
            deck: frame.area([-deck, deck], [self.under(0.0), self.under(0.0) + thick]),
            wheel: about((-x, axle), mm(self.wheel_m) / 2.0),
            motor: about(self.shaft(), mm(self.can_m) / 2.0),
            motor_pulley: about(self.shaft(), small),
            wheel_pulley: about((x, axle), large),
            enclosure: frame.area([mid - length / 2.0, mid + length / 2.0], [floor, floor + depth]),
            bank: self.inside(frame, self.bank_m),
            controller: self.inside(frame, self.controller_m),
        }
    }
}
