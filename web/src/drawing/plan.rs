//! Shapes and dimensions laid out for a width.

use super::lettering::{Lettering, along, upon};
use super::shape::{Place, Shape};
use crate::chart::{
    Anchor, CursorStop, Drawing, Follow, Mark, held, held_width, nothing, path, plain, text_width,
    within,
};
use crate::text::{Style, drawing, page};
use pitchline_core::Unit;

/// A measure between two places, with a line of its own.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Dim {
    /// What is measured: "centre distance".
    pub name: String,
    /// The measure as drawn, without a unit.
    pub value: String,
    /// A word or two to stand behind it in the drawing, where there is room.
    pub word: &'static str,
    /// From here.
    pub from: Place,
    /// To here.
    pub to: Place,
    /// How far its line stands to the left of the way from one to the other,
    /// logical pixels; negative to the right.
    pub aside: f64,
    /// Whether it is a clash or a shortage.
    pub bad: bool,
    /// Whether something assumed went into it.
    pub assumed: bool,
}

impl Dim {
    /// A measure in metres between two places, in the reader's unit, to a
    /// millimetre; less than nothing is a shortage.
    #[must_use]
    pub fn new(style: Style, name: &str, value_m: f64, (from, to): (Place, Place)) -> Self {
        let (name, value) = (name.into(), style.rough_millimetres(value_m));
        Self { name, value, from, to, bad: value_m < 0.0, ..Self::default() }
    }

    /// A size of a part: as it was entered, or to a millimetre where it is assumed.
    #[must_use]
    pub fn size(
        style: Style,
        name: &str,
        value_m: f64,
        ends: (Place, Place),
        assumed: bool,
    ) -> Self {
        let rough = Self::new(style, name, value_m, ends);
        let value = if assumed { rough.value } else { style.entered_millimetres(value_m) };
        Self { value, assumed, ..rough }
    }
}

/// A name beside a place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Note {
    /// Where.
    pub at: Place,
    /// What stands there.
    pub text: String,
}

/// The unit of a drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Ruler {
    /// Millimetres to one unit.
    pub mm: f64,
    /// Its symbol.
    pub symbol: &'static str,
}

/// A drawing to scale.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// What is there, in painting order.
    pub shapes: Vec<Shape>,
    /// Its dimensions, in the order in which the cursor visits them.
    pub dims: Vec<Dim>,
    /// Names of parts.
    pub notes: Vec<Note>,
    /// Its unit.
    pub ruler: Ruler,
    /// Greatest height, logical pixels.
    pub height: f64,
    /// What to say when there is nothing to draw.
    pub nothing: String,
}

/// Least free room around the shapes, logical pixels.
const RIM: f64 = 10.0;
/// Room for the scale bar below.
const FOOT: f64 = 26.0;
/// Half a stroke at the end of a dimension line.
const TICK: f64 = 4.0;
/// Height of a line of text with the gap to what it stands on.
const LINE: f64 = 18.0;

/// Farthest that a dimension line stands off.
const MOST_ASIDE: f64 = 52.0;
/// Share of the width or height that words beside the shapes may take on one side.
const MOST_RIM: f64 = 0.25;
/// Size of the frame around a place of the cursor.
const RING: (f64, f64) = (48.0, 24.0);

impl Plan {
    /// Nothing yet, in the reader's unit.
    #[must_use]
    pub fn new(style: Style) -> Self {
        let shown = style.units.shown(Unit::Millimetre);
        Self {
            shapes: Vec::new(),
            dims: Vec::new(),
            notes: Vec::new(),
            ruler: Ruler { mm: 1.0 / shown.from_file(1.0), symbol: shown.symbol },
            height: 320.0,
            nothing: String::new(),
        }
    }

    /// With a name beside a place.
    #[must_use]
    pub fn note(mut self, at: Place, text: &str) -> Self {
        self.notes.push(Note { at, text: text.into() });
        self
    }

    /// Lays the drawing out for a width in logical pixels (held within 200
    /// and 2000).
    pub fn draw(&self, width: f64) -> Drawing {
        let width = held_width(width);
        let Some(frame) = Frame::new(self, width) else {
            return nothing(width, &self.nothing);
        };
        let mut marks = Vec::new();
        let mut letters = Lettering::new(width, frame.height - FOOT);
        for shape in self.shapes.iter().filter(|shape| shape.points.len() > 1) {
            let places: Vec<_> = shape.points.iter().map(|p| frame.at(*p)).collect();
            marks.push(Mark::Path { class: shape.class, d: path(&places, shape.closed) });
            letters.stroke(outline(places, shape.closed), shape.is_filled());
        }
        frame.scale_bar(&self.ruler, &mut marks);
        let lines: Vec<_> =
            self.dims.iter().map(|dim| frame.dimension(dim, &mut marks, &mut letters)).collect();
        let mut points = Vec::with_capacity(lines.len());
        for (col, (dim, (from, to))) in self.dims.iter().zip(&lines).enumerate() {
            let look = if dim.bad {
                ["d-value d-bad", "d-value d-bad d-rim"]
            } else {
                ["d-value", "d-value d-rim"]
            };
            let mut put = |text: &str, free: bool| {
                letters.put(&mut marks, look, text, &along(*from, *to, text), None, free)
            };
            let long = [&dim.value, "\u{a0}", dim.word].concat();
            if dim.word.is_empty() || !put(&long, true) {
                put(&dim.value, false);
            }
            let (x, y) = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
            let ys = vec![within(y, RING.1 / 2.0, frame.height - RING.1 / 2.0)];
            let x = within(x, RING.0 / 2.0, width - RING.0 / 2.0);
            points.push(CursorStop { x, ys, row: 0, col, text: self.said(dim) });
        }
        for note in &self.notes {
            let at = frame.at(note.at);
            let look = ["d-name", "d-name d-rim"];
            letters.put(&mut marks, look, &note.text, &upon(at, &note.text), Some(at), true);
        }
        let follow = Follow::Ring { width: RING.0, height: RING.1 };
        Drawing { width, height: frame.height, marks, points, home: 0, follow }
    }

    /// A dimension in words.
    fn said(&self, dim: &Dim) -> String {
        drawing::measure(&dim.name, &dim.value, self.ruler.symbol, dim.assumed)
    }

    /// The dimensions as rows of a table: name, value, and whether it is assumed.
    pub fn rows(&self) -> Vec<Vec<String>> {
        let row = |dim: &Dim| {
            let note = if dim.assumed { page::ASSUMED } else { "" };
            vec![dim.name.clone(), dim.value.clone(), note.into()]
        };
        self.dims.iter().map(row).collect()
    }
}

/// A closed way ends where it began.
fn outline(mut places: Vec<Place>, closed: bool) -> Vec<Place> {
    if closed && let Some(first) = places.first().copied() {
        places.push(first);
    }
    places
}

/// How far a dimension's line stands off the way from its one end to the other,
/// on the page, where y runs down.
fn aside(dim: &Dim) -> Place {
    let on_page = |(x, y): Place| (held(x), -held(y));
    let (a, b) = (on_page(dim.from), on_page(dim.to));
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let apart = dx.hypot(dy);
    // Left of the way.
    let (nx, ny) = if apart > 0.0 { (dy / apart, -dx / apart) } else { (0.0, -1.0) };
    let off = within(dim.aside, -MOST_ASIDE, MOST_ASIDE);
    (nx * off, ny * off)
}

/// Free room left of the shapes, above, right and below: for dimension lines
/// that stand off, and for their words.
fn rims(plan: &Plan, width: f64, height: f64) -> [f64; 4] {
    let mut rims = [RIM; 4];
    for dim in &plan.dims {
        let (x, y) = aside(dim);
        let words = text_width(&dim.value) + 8.0;
        let sides = [(-x, words, width), (-y, LINE, height), (x, words, width), (y, LINE, height)];
        for (rim, (off, words, size)) in rims.iter_mut().zip(sides) {
            if off > 0.5 {
                let line = off + TICK + 1.0;
                *rim = rim.max((off + words).min(size * MOST_RIM)).max(line);
            }
        }
    }
    if !plan.notes.is_empty() {
        let [_, _, _, bottom] = &mut rims;
        *bottom = bottom.max(LINE);
    }
    rims
}

/// Where millimetres come to stand.
struct Frame {
    left: f64,
    top: f64,
    /// Logical pixels to a millimetre.
    scale: f64,
    /// The place in millimetres that stands at `left`, `top`.
    corner: Place,
    height: f64,
}

impl Frame {
    /// None if there is nothing to draw.
    fn new(plan: &Plan, width: f64) -> Option<Self> {
        let shapes = plan.shapes.iter().flat_map(|shape| shape.points.iter().copied());
        let dims = plan.dims.iter().flat_map(|dim| [dim.from, dim.to]);
        let notes = plan.notes.iter().map(|note| note.at);
        let (mut low, mut high) = ((f64::MAX, f64::MAX), (f64::MIN, f64::MIN));
        for (x, y) in shapes.chain(dims).chain(notes) {
            let (x, y) = (held(x), held(y));
            low = (low.0.min(x), low.1.min(y));
            high = (high.0.max(x), high.1.max(y));
        }
        if low.0 > high.0 {
            return None;
        }
        let width = held_width(width);
        let most = within(plan.height, 160.0, 900.0);
        let [left, top, right, bottom] = rims(plan, width, most);
        let (wide, tall) = ((high.0 - low.0).max(1e-3), (high.1 - low.1).max(1e-3));
        let room = (width - left - right, most - top - bottom - FOOT);
        let scale = (room.0 / wide).min(room.1 / tall);
        Some(Self {
            left: left + (room.0 - wide * scale) / 2.0,
            top,
            scale,
            corner: (low.0, high.1),
            height: top + tall * scale + bottom + FOOT,
        })
    }

    /// A place in the drawing.
    fn at(&self, (x, y): Place) -> Place {
        let (x, y) = (held(x), held(y));
        (self.left + (x - self.corner.0) * self.scale, self.top + (self.corner.1 - y) * self.scale)
    }

    /// Draws a dimension's line, its ends and what leads to it; gives its ends.
    fn dimension(
        &self,
        dim: &Dim,
        marks: &mut Vec<Mark>,
        letters: &mut Lettering,
    ) -> (Place, Place) {
        let (a, b) = (self.at(dim.from), self.at(dim.to));
        let (ox, oy) = aside(dim);
        let (from, to) = ((a.0 + ox, a.1 + oy), (b.0 + ox, b.1 + oy));
        let class = if dim.bad { "d-dim d-bad" } else { "d-dim" };
        let mut line = |class, (x1, y1): Place, (x2, y2): Place| {
            marks.push(Mark::Line { class, x1, y1, x2, y2 });
            letters.stroke(vec![(x1, y1), (x2, y2)], false);
        };
        if (ox, oy) != (0.0, 0.0) {
            line("d-lead", a, from);
            line("d-lead", b, to);
        }
        line(class, from, to);
        for (x, y) in [from, to] {
            line(class, (x - TICK, y + TICK), (x + TICK, y - TICK));
        }
        (from, to)
    }

    /// A bar of a round length at the foot: the scale, for the eye.
    fn scale_bar(&self, ruler: &Ruler, marks: &mut Vec<Mark>) {
        let unit = self.scale * ruler.mm.max(1e-3);
        let steps = [1.0, 2.0, 5.0];
        let mut lengths = (-2..6).flat_map(|n| steps.map(|step| step * f64::powi(10.0, n)));
        // The longest that takes no more than a hundred pixels.
        let length = lengths.rfind(|length| length * unit <= 100.0);
        let Some(length) = length.filter(|length| length * unit >= 4.0) else { return };
        let (x, y) = (TICK, self.height - 8.0);
        let end = x + length * unit;
        for (x1, y1, x2, y2) in
            [(x, y, end, y), (x, y - TICK, x, y + TICK), (end, y - TICK, end, y + TICK)]
        {
            marks.push(Mark::Line { class: "c-base", x1, y1, x2, y2 });
        }
        let decimals = u8::from(length < 1.0) + u8::from(length < 0.1);
        let text = [&plain(length, decimals), "\u{a0}", ruler.symbol].concat();
        marks.push(Mark::text("c-tick", end + 6.0, y + 4.0, Anchor::Start, text));
    }
}
