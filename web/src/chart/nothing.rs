//! The drawing for when there is nothing to draw.

use super::mark::{Anchor, Drawing, Follow, Mark};
use super::measure::{LINE, held_width, wrap};

/// A quiet box with the reason in words, such as "nothing to draw until the
/// pack is known".
pub fn nothing(width: f64, why: &str) -> Drawing {
    let width = held_width(width);
    let lines = wrap(why, width - 24.0);
    let height = 48.0 + lines.len() as f64 * LINE;
    let mut marks = vec![Mark::Rect {
        class: "c-nothing",
        x: 1.0,
        y: 1.0,
        width: width - 2.0,
        height: height - 2.0,
    }];
    let text = |(n, line): (usize, String)| {
        let y = 36.0 + n as f64 * LINE;
        Mark::text("c-title", width / 2.0, y, Anchor::Middle, line)
    };
    marks.extend(lines.into_iter().enumerate().map(text));
    Drawing {
        width,
        height,
        marks,
        points: Vec::new(),
        home: 0,
        follow: Follow::Ring { width: 0.0, height: 0.0 },
    }
}
