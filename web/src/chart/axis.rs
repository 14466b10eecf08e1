//! The frame of a plot: its scales, grid, marked values and titles.

use super::mark::{Anchor, Mark};
use super::measure::{fit, text_width};
use super::number::plain;
use super::scale::{Linear, within};
use super::tick::{Ticks, round_out, ticks};

/// How a value on an axis is written: the value and how many decimals its
/// tick needs.
pub type Label<'a> = &'a dyn Fn(f64, u8) -> String;

/// What an axis shows. The values are already in the unit of its title.
#[derive(Clone)]
pub struct Axis<'a> {
    /// Quantity and unit, such as "km/h"; may be empty.
    pub title: String,
    /// First and last value; taken from the data if not given.
    pub range: Option<(f64, f64)>,
    /// Whether a range taken from the data must reach 0.
    pub zero: bool,
    /// Writes a value.
    pub label: Label<'a>,
}

impl Default for Axis<'_> {
    fn default() -> Self {
        Self { title: String::new(), range: None, zero: false, label: &plain }
    }
}

impl std::fmt::Debug for Axis<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Axis")
            .field("title", &self.title)
            .field("range", &self.range)
            .field("zero", &self.zero)
            .finish_non_exhaustive()
    }
}

impl Axis<'_> {
    /// The ends of the axis for data from `low` to `high`.
    pub(super) fn ends(&self, (low, high): (f64, f64)) -> (f64, f64) {
        match self.range {
            Some(range) => range,
            None if self.zero => (low.min(0.0), high.max(0.0)),
            None => (low, high),
        }
    }

    /// The marked values in words, none wider than `room`.
    pub(super) fn words(&self, ticks: &Ticks, room: f64) -> Vec<(f64, String)> {
        let word = |v: &f64| (*v, fit(&(self.label)(*v, ticks.decimals), room));
        ticks.values.iter().map(word).collect()
    }
}

pub(super) fn widest(words: &[(f64, String)]) -> f64 {
    words.iter().map(|w| text_width(&w.1)).fold(0.0, f64::max)
}

/// The inner part of a chart: its edges, and the scales that fill it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Plot {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
    pub x: Linear,
    pub y: Linear,
}

/// What a plot is laid out for.
pub(super) struct Layout {
    /// Width of the whole drawing.
    pub width: f64,
    /// Height of the whole drawing.
    pub height: f64,
    /// Room kept free at the top for a key.
    pub top: f64,
    /// Room kept free at the right for labels.
    pub right: f64,
}

impl Plot {
    /// Lays the plot out for data within the two extents and draws grid, marks
    /// and titles.
    pub(super) fn new(
        x: &Axis<'_>,
        y: &Axis<'_>,
        x_data: (f64, f64),
        y_data: (f64, f64),
        layout: &Layout,
        marks: &mut Vec<Mark>,
    ) -> Self {
        let top = layout.top + if y.title.is_empty() { 10.0 } else { 26.0 };
        let bottom = layout.height - if x.title.is_empty() { 22.0 } else { 38.0 };
        let rows = (((bottom - top) / 42.0) as usize).clamp(2, 8);
        let mut y_ends = y.ends(y_data);
        if y.range.is_none() {
            y_ends = round_out(y_ends.0, y_ends.1, rows);
        }
        let y_words = y.words(&ticks(y_ends.0, y_ends.1, rows), 64.0);
        let left = (widest(&y_words) + 8.0).max(14.0);
        let right = layout.width - layout.right.max(10.0);
        let x_ends = x.ends(x_data);
        let plot = Self {
            left,
            top,
            right,
            bottom,
            x: Linear::new(x_ends.0, x_ends.1, left, right),
            y: Linear::new(y_ends.0, y_ends.1, bottom, top),
        };
        plot.draw(x, y, &y_words, layout, marks);
        plot
    }

    fn draw(
        &self,
        x: &Axis<'_>,
        y: &Axis<'_>,
        y_words: &[(f64, String)],
        layout: &Layout,
        marks: &mut Vec<Mark>,
    ) {
        self.rows(y_words, marks);
        self.columns(x, layout.width, marks);
        let title = |text: &str, at: f64, base: f64, anchor| {
            Mark::text("c-title", at, base, anchor, fit(text, layout.width - 4.0))
        };
        if !y.title.is_empty() {
            marks.push(title(&y.title, 0.0, layout.top + 12.0, Anchor::Start));
        }
        if !x.title.is_empty() {
            // Ends under the plot, unless it needs the whole width.
            let end = self.right.max(text_width(&x.title)).min(layout.width);
            marks.push(title(&x.title, end, layout.height - 5.0, Anchor::End));
        }
    }

    /// The marked values up the side, and the base.
    pub(super) fn rows(&self, words: &[(f64, String)], marks: &mut Vec<Mark>) {
        for (value, word) in words {
            let at = self.y.at(*value);
            marks.push(self.across(if *value == 0.0 { "c-zero" } else { "c-grid" }, at));
            marks.push(Mark::text("c-tick", self.left - 6.0, at + 4.0, Anchor::End, word));
        }
        marks.push(self.across("c-base", self.bottom));
    }

    /// The marked values along the bottom.
    pub(super) fn columns(&self, x: &Axis<'_>, width: f64, marks: &mut Vec<Mark>) {
        for (value, word) in self.spaced(x) {
            let at = self.x.at(value);
            marks.push(Mark::Line {
                class: "c-base",
                x1: at,
                y1: self.bottom,
                x2: at,
                y2: self.bottom + 4.0,
            });
            // The outermost words move in rather than be cut off.
            let half = text_width(&word) / 2.0;
            let at = within(at, half, width - half);
            marks.push(Mark::text("c-tick", at, self.bottom + 17.0, Anchor::Middle, word));
        }
    }

    /// As many marked values as stand side by side with room between them.
    fn spaced(&self, x: &Axis<'_>) -> Vec<(f64, String)> {
        let mut words = Vec::new();
        for about in (1..=10).rev() {
            let ticks = ticks(self.x.low(), self.x.high(), about);
            words = x.words(&ticks, 90.0);
            let gap = match ticks.values.as_slice() {
                [a, b, ..] => self.x.at(*b) - self.x.at(*a),
                _ => break,
            };
            if widest(&words) + 14.0 <= gap {
                break;
            }
        }
        words
    }

    fn across(&self, class: &'static str, y: f64) -> Mark {
        Mark::Line { class, x1: self.left, y1: y, x2: self.right, y2: y }
    }

    /// The place of a point, if it lies inside the plot.
    pub(super) fn place(&self, x: f64, y: f64) -> Option<(f64, f64)> {
        (self.x.holds(x) && self.y.holds(y)).then(|| (self.x.at(x), self.y.at(y)))
    }
}
