//! How far what is drawn reaches.

use super::Place;
use crate::chart::{Anchor, Mark, text_width};

/// Every place that a mark reaches.
pub(crate) fn reach(mark: &Mark) -> Vec<Place> {
    if let Mark::Text { x, y, anchor, text, .. } = mark {
        let size = text_width(text);
        let left = match anchor {
            Anchor::Start => *x,
            Anchor::Middle => x - size / 2.0,
            Anchor::End => x - size,
        };
        return vec![(left, y - 9.0), (left + size, y + 3.0)];
    }
    let outline = mark.outline();
    let numbers: Vec<f64> = outline
        .split(|c: char| c.is_ascii_alphabetic() || c == ' ')
        .filter(|part| !part.is_empty())
        .map(|part| part.parse().expect("a number in a path"))
        .collect();
    numbers.chunks(2).map(|pair| (pair[0], pair[1])).collect()
}
