//! Up to four curves over one axis, each with its band, its name at its end
//! and, along it, what binds where.

use super::axis::{Axis, Layout, Plot};
use super::band::{Span, area};
use super::flow::Flow;
use super::labels::{Labels, SAMPLE, Wish};
use super::line::{Piece, Point, part, path, pieces, value_at};
use super::mark::{Anchor, CursorStop, Drawing, Follow, Mark};
use super::measure::{held_width, text_width};
use super::nothing::nothing;
use super::scale::{extent, within};

/// Four are told apart at a glance by dash and colour; more are not drawn.
pub const MOST_SERIES: usize = 4;

const LINES: [&str; 4] = ["c-line s1", "c-line s2", "c-line s3", "c-line s4"];
pub(super) const BANDS: [&str; 4] = ["c-band s1", "c-band s2", "c-band s3", "c-band s4"];
const DOTS: [&str; 4] = ["c-dot s1", "c-dot s2", "c-dot s3", "c-dot s4"];
/// By series, then by kind of region.
const REGIONS: [[&str; 4]; 4] = [
    ["c-line s1 r1", "c-line s1 r2", "c-line s1 r3", "c-line s1 r4"],
    ["c-line s2 r1", "c-line s2 r2", "c-line s2 r3", "c-line s2 r4"],
    ["c-line s3 r1", "c-line s3 r2", "c-line s3 r3", "c-line s3 r4"],
    ["c-line s4 r1", "c-line s4 r2", "c-line s4 r3", "c-line s4 r4"],
];

/// One curve.
#[derive(Clone, Debug, Default)]
pub struct Series {
    /// Its name, written at its end; may be empty if there is only one.
    pub name: String,
    /// Its points, rising in x; a point without a value leaves a gap.
    pub points: Vec<Point>,
    /// The band around it: (x, low, high), rising in x; may be empty.
    pub band: Vec<Span>,
    /// What binds where along it; may be empty. Outside all regions the
    /// curve is drawn in its own dash.
    pub regions: Vec<Region>,
}

/// A stretch of a curve that has its own dash and name.
#[derive(Clone, Debug)]
pub struct Region {
    /// First x.
    pub from: f64,
    /// Last x.
    pub to: f64,
    /// Which of the four dashes (0 to 3, beyond that it starts again).
    pub kind: usize,
    /// Written beside the curve where the stretch is long enough.
    pub name: String,
}

/// A remark in the plot.
#[derive(Clone, Debug)]
pub struct Note {
    /// Where.
    pub x: f64,
    /// A marked point there; without it an upright rule is drawn.
    pub y: Option<f64>,
    /// The words.
    pub text: String,
}

/// A chart of curves.
#[derive(Clone, Debug, Default)]
pub struct Curves<'a> {
    /// The axis along the bottom.
    pub x: Axis<'a>,
    /// The axis up the side.
    pub y: Axis<'a>,
    /// The curves; only the first four are drawn.
    pub series: Vec<Series>,
    /// Remarks.
    pub notes: Vec<Note>,
    /// Where the cursor can stand, rising in x, and what it says there.
    pub readout: Vec<(f64, String)>,
    /// What to say when there is no curve.
    pub nothing: String,
    /// Height in logical pixels, without a key; 0 chooses one to suit the
    /// width.
    pub height: f64,
}

impl Curves<'_> {
    /// Lays the chart out for a width in logical pixels (held within 200 and
    /// 2000).
    pub fn draw(&self, width: f64) -> Drawing {
        let width = held_width(width);
        let height = match self.height {
            h if h > 0.0 => within(h, 120.0, 1200.0),
            _ => within(width * 0.6, 240.0, 340.0),
        };
        let series = self.series.get(..MOST_SERIES).unwrap_or(&self.series);
        let Some((x_data, y_data)) = bounds(series) else {
            return nothing(width, &self.nothing);
        };
        let mut marks = Vec::new();
        let names = series.iter().map(|s| text_width(&s.name)).fold(0.0, f64::max);
        // Names stand at the ends of their curves if they take no more than a
        // third of the width, else in a key on top.
        let beside = names > 0.0 && names + SAMPLE + 8.0 <= width / 3.0;
        let top = if names > 0.0 && !beside { key(series, (0.0, width), &mut marks) } else { 0.0 };
        // The key comes on top of the height, not out of the plot's.
        let height = height + top;
        let right = if beside { names + SAMPLE + 8.0 } else { 10.0 };
        let layout = Layout { width, height, top, right };
        let plot = Plot::new(&self.x, &self.y, x_data, y_data, &layout, &mut marks);
        let mut labels = Labels::new((plot.left, width), (plot.top - 8.0, plot.bottom));
        for (n, one) in series.iter().enumerate() {
            let d = area(&one.band, &plot);
            if !d.is_empty() {
                marks.push(Mark::Path { class: BANDS[n], d });
            }
        }
        let mut ends = Vec::new();
        for (n, one) in series.iter().enumerate() {
            let drawn = strokes(one, n, &plot, &mut marks);
            for (from, to) in &drawn {
                labels.avoid(*from, *to);
            }
            ends.push(drawn.last().map(|piece| piece.1));
        }
        for note in &self.notes {
            remark(note, &plot, &mut labels, &mut marks);
        }
        let ends = series.iter().zip(ends).enumerate().filter(|_| beside);
        for (n, (one, end)) in ends {
            if let (Some(end), false) = (end, one.name.is_empty()) {
                name(one, n, end, &mut labels, &mut marks);
            }
        }
        for one in series {
            for region in &one.regions {
                region_name(one, region, &plot, &mut labels, &mut marks);
            }
        }
        let points = self.stops(series, &plot);
        Drawing {
            width,
            height,
            marks,
            home: points.len() / 2,
            points,
            follow: Follow::Rule { top: plot.top, bottom: plot.bottom },
        }
    }

    fn stops(&self, series: &[Series], plot: &Plot) -> Vec<CursorStop> {
        let inside = self.readout.iter().filter(|r| plot.x.holds(r.0));
        inside
            .enumerate()
            .map(|(col, (x, text))| CursorStop {
                x: plot.x.at(*x),
                ys: series
                    .iter()
                    .filter_map(|s| value_at(&s.points, *x))
                    .filter_map(|y| plot.place(*x, y))
                    .map(|place| place.1)
                    .collect(),
                row: 0,
                col,
                text: text.clone(),
            })
            .collect()
    }
}

pub(super) type Bounds = ((f64, f64), (f64, f64));

/// The extents of everything drawn, `None` if no point has a value.
pub(super) fn bounds(series: &[Series]) -> Option<Bounds> {
    let whole = |p: &&Point| p.0.is_finite() && p.1.is_some_and(f64::is_finite);
    let points = || series.iter().flat_map(|s| &s.points).filter(whole);
    let spans = || series.iter().flat_map(|s| &s.band);
    let x = extent(points().map(|p| p.0).chain(spans().map(|s| s.0)))?;
    let values = points().filter_map(|p| p.1);
    let y = extent(values.chain(spans().flat_map(|s| [s.1, s.2])))?;
    // A band without any curve is nothing a reader could name.
    points().next().map(|_| (x, y))
}

fn dot(n: usize, (x, y): (f64, f64)) -> Mark {
    let (class, r) = (DOTS[n], 3.5);
    Mark::Circle { class, x, y, r }
}

/// Draws the curve, stretch by stretch, and gives back its pieces.
pub(super) fn strokes(one: &Series, n: usize, plot: &Plot, marks: &mut Vec<Mark>) -> Vec<Piece> {
    let all = pieces(&one.points, plot);
    // A lone point would be lost as a stroke of no length.
    let lone = all.iter().filter(|(from, to)| from == to);
    marks.extend(lone.map(|(at, _)| dot(n, *at)));
    let mut stroke = |class, drawn: &[Piece]| {
        let d = path(drawn);
        if !d.is_empty() {
            marks.push(Mark::Path { class, d });
        }
    };
    if one.regions.is_empty() {
        stroke(LINES[n], &all);
        return all;
    }
    let mut from = f64::NEG_INFINITY;
    let last = one.points.last().map_or(from, |p| p.0);
    let mut borders = Vec::new();
    for region in &one.regions {
        let first = one.points.first().map_or(from, |p| p.0).max(from);
        if region.from > first {
            stroke(LINES[n], &pieces(&part(&one.points, first, region.from), plot));
        }
        let drawn = pieces(&part(&one.points, region.from, region.to), plot);
        stroke(REGIONS[n][region.kind % 4], &drawn);
        if let (Some(first), true) = (drawn.first(), from.is_finite()) {
            borders.push(first.0);
        }
        from = region.to;
    }
    if from < last {
        stroke(LINES[n], &pieces(&part(&one.points, from, last), plot));
    }
    // A dot where one stretch hands over to the next: not by dash alone.
    marks.extend(borders.into_iter().map(|at| dot(n, at)));
    all
}

/// Names all curves with samples of their strokes, from `top` on; gives back where it ends.
pub(super) fn key(series: &[Series], (top, width): (f64, f64), marks: &mut Vec<Mark>) -> f64 {
    let mut flow = Flow::new(top + 12.0, width);
    for (n, one) in series.iter().enumerate() {
        flow.room(SAMPLE + text_width(&one.name));
        marks.push(Mark::Line {
            class: LINES[n],
            x1: flow.x + 2.0,
            y1: flow.base - 4.0,
            x2: flow.x + SAMPLE - 4.0,
            y2: flow.base - 4.0,
        });
        flow.x += SAMPLE;
        flow.text("c-name", &one.name, marks);
    }
    flow.base + 10.0
}

/// Writes a curve's name at its end, with a sample of its stroke.
pub(super) fn name(
    one: &Series,
    n: usize,
    end: (f64, f64),
    labels: &mut Labels,
    marks: &mut Vec<Mark>,
) {
    let wish = Wish {
        class: "c-name",
        x: end.0 + 8.0,
        y: end.1 + 4.0,
        anchor: Anchor::Start,
        text: &one.name,
        sample: Some(LINES[n]),
        about: None,
    };
    labels.put(marks, &wish);
}

fn remark(note: &Note, plot: &Plot, labels: &mut Labels, marks: &mut Vec<Mark>) {
    if !plot.x.holds(note.x) {
        return;
    }
    let x = plot.x.at(note.x);
    let y = match note.y {
        Some(y) => {
            let Some((x, y)) = plot.place(note.x, y) else {
                return;
            };
            marks.push(Mark::Circle { class: "c-point", x, y, r: 5.0 });
            // The label keeps off the point as it keeps off the curves.
            labels.avoid((x - 5.0, y - 5.0), (x + 5.0, y + 5.0));
            y - 10.0
        }
        None => {
            marks.push(Mark::Line { class: "c-note", x1: x, y1: plot.top, x2: x, y2: plot.bottom });
            plot.top + 9.0
        }
    };
    let room = plot.right - x > text_width(&note.text) + 10.0;
    labels.put(
        marks,
        &Wish {
            class: "c-name",
            x: if room { x + 6.0 } else { x - 6.0 },
            y,
            anchor: if room { Anchor::Start } else { Anchor::End },
            text: &note.text,
            sample: None,
            about: Some(x),
        },
    );
}

/// Writes what binds beside the middle of its stretch, if the stretch is long
/// enough to carry the words.
fn region_name(
    one: &Series,
    region: &Region,
    plot: &Plot,
    labels: &mut Labels,
    marks: &mut Vec<Mark>,
) {
    let drawn = pieces(&part(&one.points, region.from, region.to), plot);
    let length = |(a, b): &Piece| {
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        (dx * dx + dy * dy).sqrt()
    };
    let whole: f64 = drawn.iter().map(length).sum();
    if region.name.is_empty() || whole < text_width(&region.name) * 0.8 {
        return;
    }
    let mut left = whole / 2.0;
    let Some((from, to)) = drawn.iter().find(|piece| {
        left -= length(piece);
        left <= 0.0
    }) else {
        return;
    };
    let (x, y) = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
    let slope = (to.1 - from.1) / (to.0 - from.0).max(1e-3);
    // A falling curve leaves room to the right above it, a rising one to the
    // left.
    let (x, y, anchor) = if slope > 0.35 {
        (x + 8.0, y - 2.0, Anchor::Start)
    } else if slope < -0.35 {
        (x - 8.0, y - 2.0, Anchor::End)
    } else {
        (x, y - 9.0, Anchor::Middle)
    };
    labels.put(
        marks,
        &Wish { class: "c-region", x, y, anchor, text: &region.name, sample: None, about: None },
    );
}
