//! Dots over two axes, such as builds by reach and price.

use super::axis::{Axis, Layout, Plot};
use super::labels::{Labels, Wish};
use super::mark::{Anchor, CursorStop, Drawing, Follow, Mark, step};
use super::measure::{held_width, text_width};
use super::nothing::nothing;
use super::scale::{extent, within};
use super::tick::round_out;

const DOTS: [&str; 4] = ["c-dot s1", "c-dot s2", "c-dot s3", "c-dot s4"];

/// One dot.
#[derive(Clone, Debug, Default)]
pub struct Dot {
    /// Where along the bottom.
    pub x: f64,
    /// Where up the side.
    pub y: f64,
    /// Which of the four shapes and colours (0 to 3, beyond that it starts
    /// again): disc, square, triangle, diamond.
    pub kind: usize,
    /// Its name, written beside it; may be empty.
    pub name: String,
    /// What the cursor says here.
    pub readout: String,
}

/// A chart of dots.
#[derive(Clone, Debug, Default)]
pub struct Dots<'a> {
    /// The axis along the bottom.
    pub x: Axis<'a>,
    /// The axis up the side.
    pub y: Axis<'a>,
    /// The dots; give the important ones first, their names get the best
    /// places.
    pub dots: Vec<Dot>,
    /// What to say when there are no dots.
    pub nothing: String,
}

impl Dots<'_> {
    /// Lays the chart out for a width in logical pixels (held within 200 and
    /// 2000). The cursor's stops run from left to right.
    pub fn draw(&self, width: f64) -> Drawing {
        let width = held_width(width);
        let sound = |d: &&Dot| d.x.is_finite() && d.y.is_finite();
        let dots = || self.dots.iter().filter(sound);
        let (Some(x_data), Some(y_data)) =
            (extent(dots().map(|d| d.x)), extent(dots().map(|d| d.y)))
        else {
            return nothing(width, &self.nothing);
        };
        let layout =
            Layout { width, height: within(width * 0.65, 230.0, 380.0), top: 0.0, right: 16.0 };
        // Room for a dot and its name at either side.
        let x_data = round_out(x_data.0, x_data.1, 5);
        let mut marks = Vec::new();
        let plot = Plot::new(&self.x, &self.y, x_data, y_data, &layout, &mut marks);
        let mut labels = Labels::new((plot.left, width), (plot.top - 8.0, plot.bottom));
        let placed: Vec<_> =
            dots().filter_map(|dot| plot.place(dot.x, dot.y).map(|at| (dot, at))).collect();
        for (dot, (x, y)) in &placed {
            marks.push(shape(dot.kind, *x, *y));
            labels.avoid((x - 6.0, *y), (x + 6.0, *y));
            labels.avoid((*x, y - 6.0), (*x, y + 6.0));
        }
        for (dot, (x, y)) in &placed {
            let room = width - x > text_width(&dot.name) + 12.0;
            let wish = Wish {
                class: "c-name",
                x: if room { x + 10.0 } else { x - 10.0 },
                y: y + 4.0,
                anchor: if room { Anchor::Start } else { Anchor::End },
                text: &dot.name,
                sample: None,
                about: Some(*x),
            };
            labels.put(&mut marks, &wish);
        }
        let mut points: Vec<CursorStop> = Vec::with_capacity(placed.len());
        for (dot, (x, y)) in &placed {
            let stop =
                CursorStop { x: *x, ys: vec![*y], row: 0, col: 0, text: dot.readout.clone() };
            points.insert(points.partition_point(|p| p.x <= *x), stop);
        }
        for (col, point) in points.iter_mut().enumerate() {
            point.col = col;
        }
        Drawing {
            width,
            height: layout.height,
            marks,
            points,
            home: 0,
            follow: Follow::Ring { width: 20.0, height: 20.0 },
        }
    }
}

/// Four shapes of like weight, told apart without colour.
fn shape(kind: usize, x: f64, y: f64) -> Mark {
    let class = DOTS[kind % 4];
    let corners: &[(f64, f64)] = match kind % 4 {
        0 => return Mark::Circle { class, x, y, r: 5.0 },
        1 => &[(-4.5, -4.5), (4.5, -4.5), (4.5, 4.5), (-4.5, 4.5)],
        2 => &[(0.0, -6.0), (5.5, 4.0), (-5.5, 4.0)],
        _ => &[(0.0, -6.0), (6.0, 0.0), (0.0, 6.0), (-6.0, 0.0)],
    };
    let mut d = String::new();
    for (n, (dx, dy)) in corners.iter().enumerate() {
        step(&mut d, if n == 0 { 'M' } else { 'L' }, x + dx, y + dy);
    }
    d.push('Z');
    Mark::Path { class, d }
}
