//! Shapes in millimetres, x to the right and y up.

use pitchline_core::{angle, sine_cosine};
use std::f64::consts::PI;

/// A place in millimetres: to the right, and up.
pub type Place = (f64, f64);

/// Steps in which a full turn is drawn.
const STEPS: f64 = 72.0;

/// A stroke or an area; its look comes from the class.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// CSS classes.
    pub class: &'static str,
    /// Corners in order.
    pub points: Vec<Place>,
    /// Whether the last corner joins the first.
    pub closed: bool,
}

impl Shape {
    /// Whether its class fills what it goes around.
    pub(super) fn is_filled(&self) -> bool {
        self.closed && !matches!(self.class, "d-far" | "d-box" | "d-belt")
    }

    /// A straight stroke.
    pub fn line(class: &'static str, from: Place, to: Place) -> Self {
        Self { class, points: vec![from, to], closed: false }
    }

    /// An upright rectangle between two corners.
    pub fn rect(class: &'static str, (x1, y1): Place, (x2, y2): Place) -> Self {
        Self { class, points: vec![(x1, y1), (x2, y1), (x2, y2), (x1, y2)], closed: true }
    }

    /// A circle.
    pub fn circle(class: &'static str, at: Place, r: f64) -> Self {
        let mut points = arc(at, r, 0.0, 2.0 * PI);
        points.pop();
        Self { class, points, closed: true }
    }

    /// Any outline.
    pub fn outline(class: &'static str, points: Vec<Place>) -> Self {
        Self { class, points, closed: true }
    }

    /// Any stroke.
    pub fn stroke(class: &'static str, points: Vec<Place>) -> Self {
        Self { class, points, closed: false }
    }

    /// An open belt around two pulleys, along their pitch circles.
    pub fn belt(class: &'static str, (a, ra): (Place, f64), (b, rb): (Place, f64)) -> Self {
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let apart = dx.hypot(dy);
        if apart <= (ra - rb).abs() {
            // One pulley within the other: no belt to draw.
            return Self { class, points: Vec::new(), closed: true };
        }
        let along = angle(dy, dx).to_radians();
        // The spans lean by this towards the smaller pulley.
        let lean = (ra - rb) / apart;
        let half = angle((1.0 - lean * lean).sqrt(), lean).to_radians();
        let mut points = arc(a, ra, along + half, along + 2.0 * PI - half);
        points.extend(arc(b, rb, along - half, along + half));
        Self { class, points, closed: true }
    }
}

/// Places along an arc, both ends included.
pub(super) fn arc((x, y): Place, r: f64, from: f64, to: f64) -> Vec<Place> {
    let steps = ((to - from).abs() / (2.0 * PI) * STEPS).ceil().max(1.0);
    let at = |n: f64| from + (to - from) * n / steps;
    // Ends in a whole number of steps, at most one turn of them.
    let place = |n: usize| {
        let (sine, cosine) = sine_cosine(at(n as f64).to_degrees());
        (x + r * cosine, y + r * sine)
    };
    (0..=steps as usize).map(place).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(shape: &Shape) -> f64 {
        let ends = shape.points.iter().zip(shape.points.iter().cycle().skip(1));
        ends.map(|(a, b)| (a.0 - b.0).hypot(a.1 - b.1)).sum()
    }

    /// Open belt of 16 and 44 teeth of 5 mm at the centre distance that takes
    /// 60 teeth: 300 mm, drawn in chords a little short of that.
    /// Source: exact open-belt length, Shigley and Budynas, equations 17-1 and 17-2.
    #[test]
    fn a_belt_is_as_long_as_it_is() {
        let radius = |teeth: f64| teeth * 5.0 / (2.0 * PI);
        let belt =
            Shape::belt("d-belt", ((0.0, 0.0), radius(44.0)), ((50.0, 51.1113), radius(16.0)));
        let drawn = length(&belt);
        assert!((299.5..300.0).contains(&drawn), "{drawn}");
    }

    #[test]
    fn a_belt_on_equal_pulleys_runs_straight() {
        let belt = Shape::belt("d-belt", ((0.0, 0.0), 10.0), ((40.0, 0.0), 10.0));
        let tops = belt.points.iter().filter(|p| (p.1 - 10.0).abs() < 1e-9).count();
        assert_eq!(tops, 2);
    }

    #[test]
    fn no_belt_on_a_pulley_within_the_other() {
        assert!(Shape::belt("d-belt", ((0.0, 0.0), 30.0), ((5.0, 0.0), 10.0)).points.is_empty());
    }

    #[test]
    fn a_circle_is_round() {
        let circle = Shape::circle("d-part", (3.0, 4.0), 5.0);
        assert!(circle.points.iter().all(|p| ((p.0 - 3.0).hypot(p.1 - 4.0) - 5.0).abs() < 1e-12));
        assert!((length(&circle) / (10.0 * PI) - 1.0).abs() < 1e-3);
    }
}
