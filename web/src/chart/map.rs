//! A map: rows by columns of cells, each with its value as text and as a
//! colour, such as top speed for every pair of pulleys.

use super::flow::Flow;
use super::mark::{Anchor, CursorStop, Drawing, Follow, Mark, step};
use super::measure::{fit, held_width, text_width};
use super::nothing::nothing;
use super::scale::{Band, extent, within};

const CELLS: [&str; 6] =
    ["c-cell m1", "c-cell m2", "c-cell m3", "c-cell m4", "c-cell m5", "c-cell m6"];
const VALUES: [&str; 6] =
    ["c-value m1", "c-value m2", "c-value m3", "c-value m4", "c-value m5", "c-value m6"];
/// Tall enough for a finger together with the gap below.
const ROW: f64 = 44.0;

/// One cell.
#[derive(Clone, Debug, Default)]
pub struct Cell {
    /// The value that chooses the colour; none, or one that is not finite,
    /// marks the cell as not possible.
    pub value: Option<f64>,
    /// What stands in the cell, short.
    pub text: String,
    /// What the cursor says here.
    pub readout: String,
}

/// A map of cells.
#[derive(Clone, Debug, Default)]
pub struct Map {
    /// What the rows are, such as "motor pulley, teeth".
    pub row_title: String,
    /// What the columns are.
    pub col_title: String,
    /// A name for each row.
    pub rows: Vec<String>,
    /// A name for each column.
    pub cols: Vec<String>,
    /// Row by row; a missing cell counts as not possible.
    pub cells: Vec<Vec<Cell>>,
    /// Row and column of the chosen cell.
    pub selected: Option<(usize, usize)>,
    /// What the values are, such as "top speed, km/h".
    pub key: String,
    /// The key's words for a cell without a value.
    pub not_possible: String,
    /// What to say when there are no cells.
    pub nothing: String,
}

impl Map {
    /// Lays the map out for a width in logical pixels (held within 200 and
    /// 2000). The cursor's stops run row by row, so a stop's number is
    /// `row * cols.len() + col`.
    pub fn draw(&self, width: f64) -> Drawing {
        let width = held_width(width);
        let (rows, cols) = (self.rows.len(), self.cols.len());
        if rows == 0 || cols == 0 {
            return nothing(width, &self.nothing);
        }
        let mut marks = Vec::new();
        let left = self.rows.iter().map(|r| text_width(r)).fold(0.0, f64::max);
        let left = within(left + 8.0, 14.0, width * 0.4);
        let end = width.min(left + 88.0 * cols as f64);
        let top = self.titles(end, width, &mut marks);
        let across = Band::new(cols, left, end);
        let down = Band::new(rows, top, top + ROW * rows as f64);
        self.heads(left, &across, &down, &mut marks);

        let cells = || self.cells.iter().take(rows).flat_map(|row| row.iter().take(cols));
        let values = extent(cells().filter_map(|cell| cell.value));
        let size = (across.width(), down.width());
        let words = cells().map(|cell| text_width(&cell.text)).fold(0.0, f64::max);
        // Either every cell carries its value or none does: a map with some
        // would read as if the others had none.
        let written = words + 3.0 <= size.0;
        let none = Cell::default();
        let mut points = Vec::with_capacity(rows * cols);
        for row in 0..rows {
            for col in 0..cols {
                let cell = self.cells.get(row).and_then(|r| r.get(col)).unwrap_or(&none);
                let (x, y) = (across.start(col), down.start(row));
                let shade = cell.value.and_then(|v| shade(v, values));
                paint(shade, x, y, size, &mut marks);
                let middle = (across.middle(col), down.middle(row));
                if written && !cell.text.is_empty() {
                    let class = shade.map_or("c-tick", |n| VALUES[n]);
                    let mark = Mark::text(
                        class,
                        middle.0,
                        middle.1 + 4.0,
                        Anchor::Middle,
                        cell.text.as_str(),
                    );
                    marks.push(mark);
                }
                points.push(CursorStop {
                    x: middle.0,
                    ys: vec![middle.1],
                    row,
                    col,
                    text: cell.readout.clone(),
                });
            }
        }
        let chosen = self.selected.filter(|s| s.0 < rows && s.1 < cols);
        if let Some((row, col)) = chosen {
            marks.push(Mark::Rect {
                class: "c-selected",
                x: across.start(col) + 1.5,
                y: down.start(row) + 1.5,
                width: (size.0 - 3.0).max(1.0),
                height: size.1 - 3.0,
            });
        }
        let bottom = self.legend(width, down.start(rows) + 10.0, values, &mut marks);
        Drawing {
            width,
            height: bottom,
            marks,
            points,
            home: chosen.map_or(0, |(row, col)| row * cols + col),
            follow: Follow::Ring { width: size.0, height: size.1 },
        }
    }

    /// Writes what rows and columns are, over cells that end at `end`, and
    /// gives back where the cells begin.
    fn titles(&self, end: f64, width: f64, marks: &mut Vec<Mark>) -> f64 {
        let mut top = 12.0;
        let (down, across) = (with(&self.row_title, "↓"), with(&self.col_title, "→"));
        if !down.is_empty() {
            marks.push(Mark::text("c-title", 0.0, top, Anchor::Start, fit(&down, width)));
        }
        if !across.is_empty() {
            if text_width(&down) + text_width(&across) + 16.0 > end {
                top += 17.0;
            }
            let text = fit(&across, width);
            let end = end.max(text_width(&text));
            marks.push(Mark::text("c-title", end, top, Anchor::End, text));
        }
        top + 26.0
    }

    fn heads(&self, left: f64, across: &Band, down: &Band, marks: &mut Vec<Mark>) {
        let names = self.cols.iter().map(|c| text_width(c)).fold(0.0, f64::max);
        let every = ((names + 5.0) / across.width()).ceil().max(1.0) as usize;
        let end = across.start(self.cols.len());
        let room = (across.width() * every as f64).min(end);
        for (n, name) in self.cols.iter().enumerate().step_by(every) {
            let name = fit(name, room);
            let half = text_width(&name) / 2.0;
            let x = across.middle(n).min(end - half).max(half);
            marks.push(Mark::text("c-tick", x, down.start(0) - 7.0, Anchor::Middle, name));
        }
        for (n, name) in self.rows.iter().enumerate() {
            let name = fit(name, left - 7.0);
            marks.push(Mark::text("c-tick", left - 6.0, down.middle(n) + 4.0, Anchor::End, name));
        }
    }

    /// Explains the colours and the hatching; gives back where it ends.
    fn legend(
        &self,
        width: f64,
        top: f64,
        values: Option<(f64, f64)>,
        marks: &mut Vec<Mark>,
    ) -> f64 {
        let mut flow = Flow::new(top + 11.0, width);
        if values.is_some() {
            if !self.key.is_empty() {
                flow.text("c-title", &self.key, marks);
            }
            let named = |end| {
                self.cells.iter().flatten().find(|c| c.value == Some(end)).map(|c| c.text.as_str())
            };
            let ends = values.map(|(low, high)| (named(low), named(high)));
            let (low, high) = ends.unwrap_or_default();
            let (low, high) =
                (fit(low.unwrap_or_default(), 60.0), fit(high.unwrap_or_default(), 60.0));
            flow.room(text_width(&low) + 6.0 * 16.0 + text_width(&high) + 16.0);
            flow.text("c-tick", &low, marks);
            flow.x -= 4.0;
            let used = |end: fn((f64, f64)) -> f64| values.and_then(|v| shade(end(v), values));
            let (first, last) = (used(|v| v.0).unwrap_or(0), used(|v| v.1).unwrap_or(0));
            for class in CELLS.into_iter().take(last + 1).skip(first) {
                marks.push(Mark::Rect {
                    class,
                    x: flow.x,
                    y: flow.base - 11.0,
                    width: 16.0,
                    height: 14.0,
                });
                flow.x += 16.0;
            }
            flow.x += 6.0;
            flow.text("c-tick", &high, marks);
        }
        let full = |row: &Vec<Cell>| {
            let known = row.iter().take(self.cols.len());
            known.filter(|c| c.value.is_some_and(f64::is_finite)).count() == self.cols.len()
        };
        let all = self.cells.iter().take(self.rows.len()).filter(|r| full(r)).count();
        if all < self.rows.len() && !self.not_possible.is_empty() {
            flow.room(24.0 + text_width(&self.not_possible));
            paint(None, flow.x, flow.base - 11.0, (18.0, 14.0), marks);
            flow.x += 24.0;
            flow.text("c-tick", &self.not_possible, marks);
        }
        flow.base + 9.0
    }
}

fn with(title: &str, arrow: &str) -> String {
    match title {
        "" => String::new(),
        title => [title, " ", arrow].concat(),
    }
}

/// Least share of the highest value that all six colours stand for.
const NARROW: f64 = 0.15;

/// Which of the six colours, `None` for a value that is not finite.
fn shade(value: f64, values: Option<(f64, f64)>) -> Option<usize> {
    let (low, high) = values.filter(|_| value.is_finite())?;
    // Halves, because the difference of two far values need not be finite. What
    // differs by a few percent is not spread over all colours.
    let span = high / 2.0 - low / 2.0;
    if span <= 0.0 {
        return Some(2);
    }
    let span = span.max(high.abs() * NARROW / 2.0);
    let part = (value / 2.0 - low / 2.0) / span;
    Some(((part * 6.0) as usize).min(5))
}

/// A cell's ground: its colour, or hatching for what is not possible.
fn paint(shade: Option<usize>, x: f64, y: f64, size: (f64, f64), marks: &mut Vec<Mark>) {
    marks.push(Mark::Rect {
        class: shade.map_or("c-cell void", |n| CELLS[n]),
        x,
        y,
        width: size.0,
        height: size.1,
    });
    if shade.is_none() {
        marks.push(hatch("c-hatch", x, y, size));
    }
}

/// Slanting strokes across a rectangle.
pub(super) fn hatch(class: &'static str, x: f64, y: f64, (w, h): (f64, f64)) -> Mark {
    let mut d = String::new();
    let mut along = 5.0;
    while along < w + h {
        step(&mut d, 'M', x + along.min(w), y + (along - w).max(0.0));
        step(&mut d, 'L', x + (along - h).max(0.0), y + along.min(h));
        along += 8.0;
    }
    Mark::Path { class, d }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colours_run_from_lowest_to_highest() {
        let values = Some((10.0, 70.0));
        let shades: Vec<_> =
            [10.0, 19.0, 21.0, 69.0, 70.0].into_iter().map(|v| shade(v, values)).collect();
        assert_eq!(shades, [Some(0), Some(0), Some(1), Some(5), Some(5)]);
        assert_eq!(shade(5.0, Some((5.0, 5.0))), Some(2));
        // 18 and 19 differ by a third of what all six colours would stand for.
        assert_eq!(shade(19.0, Some((18.0, 19.0))), Some(2));
        assert_eq!(shade(f64::NAN, values), None);
        assert_eq!(shade(1.0, None), None);
    }

    #[test]
    fn hatching_stays_in_its_cell() {
        // 10 by 10: strokes at 5 and 13 along the upper and right edge.
        assert_eq!(hatch("c-hatch", 0.0, 0.0, (10.0, 10.0)).outline(), "M5 0L0 5M10 3L3 10");
    }

    #[test]
    fn a_stop_for_every_cell_even_where_one_is_missing() {
        let map = Map {
            rows: vec!["14".into(), "15".into()],
            cols: vec!["36".into(), "40".into(), "44".into()],
            cells: vec![vec![Cell { value: Some(1.0), text: "1".into(), readout: "one".into() }]],
            selected: Some((1, 2)),
            ..Map::default()
        };
        let drawing = map.draw(360.0);
        assert_eq!(drawing.points.len(), 6);
        assert_eq!(drawing.home, 5);
        let stop = &drawing.points[5];
        assert_eq!((stop.row, stop.col), (1, 2));
        let hatched = drawing.marks.iter().filter(|m| m.class() == "c-hatch");
        assert_eq!(hatched.count(), 5);
    }
}
