//! The cursor: which stop a pointer or a key means, and how it is shown.

use super::mark::{CursorStop, Drawing, Follow, Mark};

/// Half a frame, and half of the gap beside it.
const INSIDE: f64 = 0.55;

/// The stop nearest to a place in the drawing. Beside a frame there is none: a
/// tap there must not choose what it did not touch.
pub fn nearest(drawing: &Drawing, x: f64, y: f64) -> Option<usize> {
    let far = |stop: &CursorStop| match drawing.follow {
        Follow::Rule { .. } => (stop.x - x).abs(),
        // In frames, not pixels: within a wide frame nothing else is nearer.
        Follow::Ring { width, height } => {
            let down = stop.ys.first().map_or(0.0, |at| (at - y).abs());
            ((stop.x - x).abs() / width.max(1.0)).max(down / height.max(1.0))
        }
    };
    let stops = drawing.points.iter().enumerate();
    let stop = stops.min_by(|a, b| far(a.1).total_cmp(&far(b.1)))?;
    let framed = matches!(drawing.follow, Follow::Ring { .. });
    (!framed || far(stop.1) <= INSIDE).then_some(stop.0)
}

/// Where a key leads from the stop `at` (`None` if the cursor is hidden);
/// `None` if the key does not move the cursor. The keys bear the names the
/// page's key events give them.
///
/// Left and right move by column, up and down by row; where there is only one
/// row or one column, the other pair of keys moves along it too.
pub fn moved(drawing: &Drawing, at: Option<usize>, key: &str) -> Option<usize> {
    let points = &drawing.points;
    let last = points.len().checked_sub(1)?;
    let at = at.map(|at| at.min(last));
    let home = drawing.home.min(last);
    let (row, col) = match key {
        "ArrowLeft" => (0, -1),
        "ArrowRight" => (0, 1),
        "ArrowUp" => (-1, 0),
        "ArrowDown" => (1, 0),
        "Home" => return Some(end_of_row(points, at.unwrap_or(home), false)),
        "End" => return Some(end_of_row(points, at.unwrap_or(home), true)),
        _ => return None,
    };
    let Some(at) = at else { return Some(home) };
    let one_row = points.iter().all(|p| p.row == points[0].row);
    let one_col = points.iter().all(|p| p.col == points[0].col);
    let (row, col) = match (one_row, one_col) {
        // Up means more, and more lies to the right.
        (true, _) => (0, col - row),
        (_, true) => (row + col, 0),
        _ => (row, col),
    };
    let here = &points[at];
    let ahead = |p: &&CursorStop| {
        if row == 0 {
            p.row == here.row && sign(p.col, here.col) == col
        } else {
            p.col == here.col && sign(p.row, here.row) == row
        }
    };
    let steps = |p: &CursorStop| p.row.abs_diff(here.row) + p.col.abs_diff(here.col);
    let next = points.iter().filter(ahead).min_by_key(|p| steps(p));
    // At the end the cursor stays, but the key is still ours.
    Some(next.map_or(at, |p| index_of(points, p)))
}

fn sign(there: usize, here: usize) -> i32 {
    i32::from(there > here) - i32::from(there < here)
}

fn end_of_row(points: &[CursorStop], at: usize, last: bool) -> usize {
    let one_col = points.iter().all(|p| p.col == points[0].col);
    let mut row = points.iter().filter(|p| one_col || p.row == points[at].row);
    let end = if last { row.next_back() } else { row.next() };
    end.map_or(at, |p| index_of(points, p))
}

fn index_of(points: &[CursorStop], stop: &CursorStop) -> usize {
    points.iter().position(|p| std::ptr::eq(p, stop)).unwrap_or_default()
}

/// What to draw on top while the cursor stands at stop `at`.
pub fn shown(drawing: &Drawing, at: usize) -> Vec<Mark> {
    let Some(stop) = drawing.points.get(at) else {
        return Vec::new();
    };
    match drawing.follow {
        Follow::Rule { top, bottom } => {
            let mut marks =
                vec![Mark::Line { class: "c-rule", x1: stop.x, y1: top, x2: stop.x, y2: bottom }];
            marks.extend(stop.ys.iter().map(|y| Mark::Circle {
                class: "c-here",
                x: stop.x,
                y: *y,
                r: 4.5,
            }));
            marks
        }
        Follow::Ring { width, height } => {
            let y = stop.ys.first().copied().unwrap_or_default();
            let (left, top) = ((stop.x - width / 2.0).max(1.0), (y - height / 2.0).max(1.0));
            vec![Mark::Rect {
                class: "c-ring",
                x: left,
                y: top,
                width: width.min(drawing.width - 1.0 - left),
                height: height.min(drawing.height - 1.0 - top),
            }]
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Stops of a grid, 20 by 10 pixels each, row by row.
    fn grid(rows: usize, cols: usize, follow: Follow) -> Drawing {
        let stop = |n: usize| CursorStop {
            x: 20.0 * (n % cols) as f64 + 10.0,
            ys: vec![10.0 * (n / cols) as f64 + 5.0],
            row: n / cols,
            col: n % cols,
            text: String::new(),
        };
        Drawing {
            width: 200.0,
            height: 100.0,
            marks: Vec::new(),
            points: (0..rows * cols).map(stop).collect(),
            home: 1,
            follow,
        }
    }

    const RULE: Follow = Follow::Rule { top: 0.0, bottom: 100.0 };
    const RING: Follow = Follow::Ring { width: 20.0, height: 10.0 };

    #[test]
    fn a_pointer_finds_the_stop_beneath_it() {
        let curve = grid(1, 5, RULE);
        assert_eq!(nearest(&curve, 49.0, 90.0), Some(2));
        assert_eq!(nearest(&curve, -50.0, 0.0), Some(0));
        let map = grid(3, 4, RING);
        assert_eq!(nearest(&map, 21.0, 11.0), Some(5));
        assert_eq!(nearest(&map, 79.0, 29.0), Some(11));
        assert_eq!(nearest(&grid(0, 1, RING), 0.0, 0.0), None);
    }

    #[test]
    fn keys_walk_a_curve_both_ways() {
        let curve = grid(1, 5, RULE);
        assert_eq!(moved(&curve, None, "ArrowRight"), Some(1));
        assert_eq!(moved(&curve, Some(1), "ArrowRight"), Some(2));
        assert_eq!(moved(&curve, Some(1), "ArrowUp"), Some(2));
        assert_eq!(moved(&curve, Some(1), "ArrowLeft"), Some(0));
        assert_eq!(moved(&curve, Some(0), "ArrowDown"), Some(0));
        assert_eq!(moved(&curve, Some(2), "End"), Some(4));
        assert_eq!(moved(&curve, Some(2), "Home"), Some(0));
        assert_eq!(moved(&curve, Some(2), "a"), None);
    }

    #[test]
    fn keys_walk_a_map_by_row_and_column() {
        let map = grid(3, 4, RING);
        assert_eq!(moved(&map, Some(5), "ArrowDown"), Some(9));
        assert_eq!(moved(&map, Some(9), "ArrowDown"), Some(9));
        assert_eq!(moved(&map, Some(5), "ArrowUp"), Some(1));
        assert_eq!(moved(&map, Some(5), "ArrowLeft"), Some(4));
        assert_eq!(moved(&map, Some(7), "ArrowRight"), Some(7));
        assert_eq!(moved(&map, Some(5), "End"), Some(7));
        assert_eq!(moved(&map, Some(5), "Home"), Some(4));
    }

    #[test]
    fn keys_walk_bars_down_and_up() {
        let bars = grid(4, 1, RING);
        assert_eq!(moved(&bars, Some(1), "ArrowDown"), Some(2));
        assert_eq!(moved(&bars, Some(1), "ArrowRight"), Some(2));
        assert_eq!(moved(&bars, Some(1), "ArrowUp"), Some(0));
        assert_eq!(moved(&bars, Some(1), "End"), Some(3));
    }

    #[test]
    fn a_stop_that_is_gone_is_no_harm() {
        let curve = grid(1, 3, RULE);
        assert_eq!(moved(&curve, Some(9), "ArrowLeft"), Some(1));
        assert!(shown(&curve, 9).is_empty());
        assert_eq!(moved(&grid(0, 1, RULE), Some(1), "ArrowLeft"), None);
    }
}
