//! Words that cover neither strokes nor each other.

use super::shape::Place;
use crate::chart::{Anchor, Mark, text_width};

/// From the middle of a line of text to its upper and lower edge.
const HALF_LINE: f64 = 6.0;
/// From the middle of a line of text down to its baseline.
const BASE: f64 = 4.0;
/// Free room around words.
const AIR: f64 = 1.5;

/// An upright rectangle: from its middle to its sides.
#[derive(Clone, Copy)]
struct Area {
    at: Place,
    half: (f64, f64),
}

impl Area {
    fn around(points: &[Place]) -> Self {
        let (mut low, mut high) = ((f64::MAX, f64::MAX), (f64::MIN, f64::MIN));
        for (x, y) in points {
            low = (low.0.min(*x), low.1.min(*y));
            high = (high.0.max(*x), high.1.max(*y));
        }
        Self {
            at: ((low.0 + high.0) / 2.0, (low.1 + high.1) / 2.0),
            half: ((high.0 - low.0) / 2.0, (high.1 - low.1) / 2.0),
        }
    }

    fn meets(&self, other: &Self) -> bool {
        (self.at.0 - other.at.0).abs() < self.half.0 + other.half.0
            && (self.at.1 - other.at.1).abs() < self.half.1 + other.half.1
    }

    /// Whether a straight stroke passes through: no side of the rectangle and no side of the
    /// stroke keeps them apart.
    fn crossed(&self, a: Place, b: Place) -> bool {
        let (ax, ay) = (a.0 - self.at.0, a.1 - self.at.1);
        let (bx, by) = (b.0 - self.at.0, b.1 - self.at.1);
        let (w, h) = self.half;
        let past = |a: f64, b: f64, half: f64| a.min(b) >= half || a.max(b) <= -half;
        if past(ax, bx, w) || past(ay, by, h) {
            return false;
        }
        let (dx, dy) = (bx - ax, by - ay);
        (ax * dy - ay * dx).abs() < w * dy.abs() + h * dx.abs()
    }

    /// Where the way from its middle to a place leaves it.
    fn edge(&self, to: Place) -> Place {
        let (dx, dy) = (to.0 - self.at.0, to.1 - self.at.1);
        let share = (self.half.0 / dx.abs()).min(self.half.1 / dy.abs()).min(1.0);
        (self.at.0 + dx * share, self.at.1 + dy * share)
    }
}

/// Whether an outline goes around a place: a ray from there meets it an odd number of times.
fn holds(outline: &[Place], (x, y): Place) -> bool {
    let mut inside = false;
    for pair in outline.windows(2) {
        let ((x1, y1), (x2, y2)) = (pair[0], pair[1]);
        if (y1 > y) != (y2 > y) && x < x1 + (y - y1) / (y2 - y1) * (x2 - x1) {
            inside = !inside;
        }
    }
    inside
}

/// Somewhere that words may stand.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spot {
    /// Their middle.
    pub(super) at: Place,
    /// What a line leads to from there, if it is not close by.
    pub(super) lead: Option<Place>,
    /// Whether they would seem to name any part that they stand in.
    pub(super) off: bool,
}

/// Places words one after the other, each where it covers least.
pub(super) struct Lettering {
    width: f64,
    bottom: f64,
    strokes: Vec<Stroke>,
    words: Vec<Area>,
}

/// A stroke, and whether it bounds something filled.
struct Stroke {
    around: Area,
    points: Vec<Place>,
    filled: bool,
}

impl Lettering {
    /// Words may stand from 0 to `width` and from 0 down to `bottom`.
    pub(super) fn new(width: f64, bottom: f64) -> Self {
        Self { width, bottom, strokes: Vec::new(), words: Vec::new() }
    }

    /// Tells where a stroke runs, and whether it bounds something filled; in painting order.
    pub(super) fn stroke(&mut self, points: Vec<Place>, filled: bool) {
        self.strokes.push(Stroke { around: Area::around(&points), points, filled });
    }

    /// Which filled part is seen at a place, if there is one.
    fn part(&self, at: Place) -> Option<usize> {
        let spot = Area { at, half: (0.0, 0.0) };
        self.strokes.iter().rposition(|stroke| {
            stroke.filled && stroke.around.meets(&spot) && holds(&stroke.points, at)
        })
    }

    /// How much words at a spot would cover: other words count most. `own` is the part that
    /// they may stand in, if only one.
    fn fault(&self, area: &Area, Spot { lead, off, .. }: Spot, own: Option<Option<usize>>) -> u32 {
        let mut fault = 0;
        for word in &self.words {
            let led = lead.is_some_and(|to| word.crossed(area.at, to));
            fault += if word.meets(area) || led { 100 } else { 0 };
        }
        for stroke in self.strokes.iter().filter(|stroke| stroke.around.meets(area)) {
            let crossed = |pair: &[Place]| area.crossed(pair[0], pair[1]);
            fault += u32::from(stroke.points.windows(2).any(crossed));
        }
        let part = self.part(area.at);
        fault + u32::from(part.is_some() && (off || own.is_some_and(|own| own != part)))
    }

    /// Writes a text, the name of what is at `of` if that is given, at the first of the spots at which it covers nothing, or at the best of
    /// them. It is left out where none is within the drawing, or, if `free`, where every one
    /// covers something.
    pub(super) fn put(
        &mut self,
        marks: &mut Vec<Mark>,
        [class, rimmed]: [&'static str; 2],
        text: &str,
        spots: &[Spot],
        of: Option<Place>,
        free: bool,
    ) -> bool {
        let own = of.map(|of| self.part(of));
        let half = (text_width(text) / 2.0 + AIR, HALF_LINE + AIR);
        let mut best: Option<(u32, Area, Spot)> = None;
        for &spot in spots {
            let area = Area { at: spot.at, half };
            let ((x, y), (w, h)) = (spot.at, half);
            // What is no number is nowhere.
            if !(x - w >= 0.0 && x + w <= self.width && y - h >= 0.0 && y + h <= self.bottom) {
                continue;
            }
            let fault = self.fault(&area, spot, own);
            if best.as_ref().is_none_or(|(least, ..)| fault < *least) {
                best = Some((fault, area, spot));
            }
            if fault == 0 {
                break;
            }
        }
        let Some((fault, area, spot)) = best.filter(|(fault, ..)| *fault == 0 || !free) else {
            return false;
        };
        if let Some((x2, y2)) = spot.lead {
            let (x1, y1) = area.edge((x2, y2));
            marks.push(Mark::Line { class: "d-lead", x1, y1, x2, y2 });
            self.stroke(vec![(x1, y1), (x2, y2)], false);
        }
        let class = if fault == 0 { class } else { rimmed };
        let (x, y) = area.at;
        marks.push(Mark::text(class, x, y + BASE, Anchor::Middle, text.to_string()));
        self.words.push(area);
        true
    }
}

/// The eight directions, sideways first.
const AROUND: [Place; 8] = [
    (1.0, 0.0),
    (-1.0, 0.0),
    (0.0, -1.0),
    (0.0, 1.0),
    (0.7, -0.7),
    (-0.7, -0.7),
    (0.7, 0.7),
    (-0.7, 0.7),
];

/// Spots around a place, nearer ones first, each with a line that leads to it.
fn around(spots: &mut Vec<Spot>, (x, y): Place, text: &str) {
    let half = text_width(text) / 2.0;
    for far in [12.0, 20.0, 30.0, 42.0, 56.0, 72.0, 90.0] {
        for (dx, dy) in AROUND {
            let at = (x + dx * (far + half), y + dy * (far + HALF_LINE));
            spots.push(Spot { at, lead: Some((x, y)), off: true });
        }
    }
}

/// Spots for the name of what is at a place: on it, beside it, then around it.
pub(super) fn upon(place: Place, text: &str) -> Vec<Spot> {
    let mut spots = Vec::new();
    for dy in [0.0, -8.0, 8.0, -16.0, 16.0] {
        for dx in [0.0, 10.0, -10.0] {
            let at = (place.0 + dx, place.1 + dy);
            spots.push(Spot { at, lead: None, off: false });
        }
    }
    around(&mut spots, place, text);
    spots
}

/// Spots for the words of a dimension from `a` to `b`: beside its line, beyond its ends, then
/// around its middle.
pub(super) fn along(a: Place, b: Place, text: &str) -> Vec<Spot> {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let apart = dx.hypot(dy);
    let (ux, uy) = if apart > 0.0 { (dx / apart, dy / apart) } else { (1.0, 0.0) };
    let half = text_width(text) / 2.0;
    // Up from what is flat, to the right of what is steep.
    let turned = if uy.abs() > ux.abs() { uy < 0.0 } else { ux < 0.0 };
    let (nx, ny) = if turned { (-uy, ux) } else { (uy, -ux) };
    let reach = |x: f64, y: f64, more: f64| x.abs() * half + y.abs() * HALF_LINE + more;
    let mut spots = Vec::new();
    let beside = reach(nx, ny, 3.5);
    for part in [0.5, 0.4, 0.6, 0.25, 0.75] {
        for side in [beside, -beside] {
            let at = (a.0 + dx * part + nx * side, a.1 + dy * part + ny * side);
            spots.push(Spot { at, lead: None, off: false });
        }
    }
    let beyond = reach(ux, uy, 8.0);
    for (end, way) in [(b, beyond), (a, -beyond)] {
        spots.push(Spot { at: (end.0 + ux * way, end.1 + uy * way), lead: None, off: true });
    }
    around(&mut spots, (a.0 + dx / 2.0, a.1 + dy / 2.0), text);
    spots
}
