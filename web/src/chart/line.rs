//! A curve through points, with gaps, cut at the edges of its plot.

use super::axis::Plot;
use super::mark::step;
use super::scale::within;

/// One point of a curve: where, and the value if there is one.
pub type Point = (f64, Option<f64>);

/// A straight piece of a curve, in drawing places.
pub(super) type Piece = ((f64, f64), (f64, f64));

/// The pieces of a curve that lie inside the plot. A lone point between gaps
/// becomes a piece of no length, which a round pen shows as a dot.
pub(super) fn pieces(points: &[Point], plot: &Plot) -> Vec<Piece> {
    let place = |p: &Point| match *p {
        (x, Some(y)) if x.is_finite() && y.is_finite() => Some((plot.x.at(x), plot.y.at(y))),
        _ => None,
    };
    let mut out = Vec::new();
    let mut last = None;
    let mut joined = true;
    for point in points {
        let here = place(point);
        match (last, here) {
            (Some(from), Some(to)) => {
                joined = true;
                out.extend(cut(from, to, plot));
            }
            (None, Some(_)) => joined = false,
            (Some(from), None) if !joined => out.extend(cut(from, from, plot)),
            _ => {}
        }
        last = here;
    }
    if let (Some(at), false) = (last, joined) {
        out.extend(cut(at, at, plot));
    }
    out
}

/// Path data of the pieces; pieces that meet are drawn without lifting the
/// pen, so that a dash pattern runs on.
pub(super) fn path(pieces: &[Piece]) -> String {
    let mut d = String::new();
    let mut pen = None;
    for (from, to) in pieces {
        if pen != Some(*from) {
            step(&mut d, 'M', from.0, from.1);
        }
        step(&mut d, 'L', to.0, to.1);
        pen = Some(*to);
    }
    d
}

/// The part of a stroke inside the plot (Liang and Barsky's line clipping,
/// ACM Transactions on Graphics 3, 1984; from memory).
fn cut(from: (f64, f64), to: (f64, f64), plot: &Plot) -> Option<Piece> {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for (slope, room) in [
        (-dx, from.0 - plot.left),
        (dx, plot.right - from.0),
        (-dy, from.1 - plot.top),
        (dy, plot.bottom - from.1),
    ] {
        if slope == 0.0 {
            // A hair of slack: a value at the very end of its axis is inside.
            if room < -1e-6 {
                return None;
            }
        } else if slope < 0.0 {
            enter = enter.max(room / slope);
        } else {
            leave = leave.min(room / slope);
        }
    }
    if enter > leave + 1e-9 {
        return None;
    }
    let at = |part: f64| {
        // An untouched end stays exactly as it was: neighbours must meet.
        let (x, y) = match part {
            0.0 => from,
            1.0 => to,
            _ => (from.0 + dx * part, from.1 + dy * part),
        };
        (within(x, plot.left, plot.right), within(y, plot.top, plot.bottom))
    };
    Some((at(enter), at(leave)))
}

/// The value of a curve at `x`, straight between its points; `None` outside
/// them and in a gap. The points must rise in x.
pub fn value_at(points: &[Point], x: f64) -> Option<f64> {
    let after = points.iter().position(|p| p.0 >= x)?;
    let (xb, b) = *points.get(after)?;
    if xb == x {
        return b;
    }
    let (xa, a) = *points.get(after.checked_sub(1)?)?;
    let (a, b) = (a?, b?);
    Some(a + (b - a) * ((x - xa) / (xb - xa)))
}

/// The part of a curve from `from` to `to`, with new points at both ends.
pub(super) fn part(points: &[Point], from: f64, to: f64) -> Vec<Point> {
    let mut out = vec![(from, value_at(points, from))];
    out.extend(points.iter().filter(|p| p.0 > from && p.0 < to));
    out.push((to, value_at(points, to)));
    // Outside the curve there is nothing to begin or end with.
    let (low, high) = match (points.first(), points.last()) {
        (Some(first), Some(last)) => (first.0, last.0),
        _ => return Vec::new(),
    };
    out.retain(|p| p.0 >= low && p.0 <= high);
    out
}

#[cfg(test)]
mod tests {
    use super::super::scale::Linear;
    use super::*;

    /// A plot where values and places agree, 100 by 100.
    fn plot() -> Plot {
        Plot {
            left: 0.0,
            top: 0.0,
            right: 100.0,
            bottom: 100.0,
            x: Linear::new(0.0, 100.0, 0.0, 100.0),
            y: Linear::new(0.0, 100.0, 0.0, 100.0),
        }
    }

    fn drawn(points: &[Point]) -> String {
        path(&pieces(points, &plot()))
    }

    #[test]
    fn a_gap_lifts_the_pen() {
        let points = [
            (0.0, Some(10.0)),
            (10.0, Some(20.0)),
            (20.0, None),
            (30.0, Some(40.0)),
            (40.0, Some(40.0)),
        ];
        assert_eq!(drawn(&points), "M0 10L10 20M30 40L40 40");
    }

    #[test]
    fn a_lone_point_is_a_dot() {
        assert_eq!(drawn(&[(5.0, Some(5.0))]), "M5 5L5 5");
        let points = [(1.0, None), (5.0, Some(5.0)), (9.0, None)];
        assert_eq!(drawn(&points), "M5 5L5 5");
        assert_eq!(drawn(&[(5.0, Some(f64::NAN))]), "");
        assert_eq!(drawn(&[]), "");
    }

    #[test]
    fn strokes_are_cut_at_the_edges() {
        // Slope 1 through the left and the lower edge.
        assert_eq!(drawn(&[(-20.0, Some(30.0)), (80.0, Some(130.0))]), "M0 50L50 100");
        // Out and in again: two strokes.
        let points = [(0.0, Some(50.0)), (20.0, Some(150.0)), (40.0, Some(50.0))];
        assert_eq!(drawn(&points), "M0 50L10 100M30 100L40 50");
        assert_eq!(drawn(&[(0.0, Some(-5.0)), (100.0, Some(-1.0))]), "");
    }

    #[test]
    fn values_between_points() {
        let points = [(0.0, Some(1.0)), (10.0, Some(3.0)), (20.0, None)];
        assert_eq!(value_at(&points, 5.0), Some(2.0));
        assert_eq!(value_at(&points, 10.0), Some(3.0));
        assert_eq!(value_at(&points, 15.0), None);
        assert_eq!(value_at(&points, -1.0), None);
        assert_eq!(value_at(&points, 21.0), None);
    }

    #[test]
    fn a_part_ends_where_asked() {
        let points = [(0.0, Some(0.0)), (10.0, Some(10.0)), (20.0, Some(0.0))];
        assert_eq!(
            part(&points, 5.0, 15.0),
            [(5.0, Some(5.0)), (10.0, Some(10.0)), (15.0, Some(5.0))]
        );
        assert_eq!(part(&points, 20.0, 40.0), [(20.0, Some(0.0))]);
        assert_eq!(part(&[], 0.0, 1.0), []);
    }
}
