//! Words in a row under the board: each under its part, shorter or gone where there is no room.

use crate::chart::{Anchor, Mark, text_width, within};

/// Least room between two of them, logical pixels.
const GAP: f64 = 12.0;

/// What is said of each, from the most to the least: 0 in full, 1 shorter, 2 nothing.
const LESS: [[usize; 3]; 5] = [[0, 0, 0], [0, 1, 0], [1, 1, 0], [1, 1, 2], [1, 2, 2]];

/// Words under gearing, pack and front wheel, which stand about these places from left to right.
pub(super) fn labels(
    words: &[[String; 2]; 3],
    middles: [f64; 3],
    width: f64,
    y: f64,
    marks: &mut Vec<Mark>,
) {
    let row = LESS.iter().find_map(|less| {
        let said = |n: usize| words[n].get(less[n]).map_or("", String::as_str);
        let row = [said(0), said(1), said(2)];
        places(row.map(text_width), middles, width).map(|places| (row, places))
    });
    let Some((row, places)) = row else { return };
    for (text, x) in row.into_iter().zip(places).filter(|(text, _)| !text.is_empty()) {
        marks.push(Mark::text("b-words", x, y, Anchor::Start, text));
    }
}

/// Their left ends; none where they do not stand side by side. What is empty takes no room.
fn places(widths: [f64; 3], middles: [f64; 3], width: f64) -> Option<[f64; 3]> {
    let gap = |wide: f64| if wide > 0.0 { wide + GAP } else { 0.0 };
    if widths.map(gap).iter().sum::<f64>() - GAP > width {
        return None;
    }
    let mut places = [0.0; 3];
    let mut free = 0.0;
    for n in 0..3 {
        // What follows needs its room, too.
        let after: f64 = widths.iter().skip(n + 1).copied().map(gap).sum();
        let end = width - after - widths[n];
        places[n] = within(middles[n] - widths[n] / 2.0, free, end.max(free));
        free = places[n] + gap(widths[n]);
    }
    Some(places)
}
