//! Keys: samples and words in as many lines as they need.

use super::mark::{Anchor, Mark};
use super::measure::{fit, text_width};

/// Words and swatches one after the other, in as many lines as they need.
pub(super) struct Flow {
    pub x: f64,
    pub base: f64,
    width: f64,
}

impl Flow {
    /// Begins at the left on the baseline `base`.
    pub(super) fn new(base: f64, width: f64) -> Self {
        Self { x: 0.0, base, width }
    }

    /// Begins a new line unless `size` still fits.
    pub(super) fn room(&mut self, size: f64) {
        if self.x > 0.0 && self.x + size > self.width {
            self.x = 0.0;
            self.base += 22.0;
        }
    }

    pub(super) fn text(&mut self, class: &'static str, text: &str, marks: &mut Vec<Mark>) {
        self.room(text_width(text));
        let text = fit(text, self.width - self.x);
        let size = text_width(&text);
        marks.push(Mark::text(class, self.x, self.base, Anchor::Start, text));
        self.x += size + 12.0;
    }
}
