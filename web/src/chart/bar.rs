//! Bars lying down, each under its own name: plain ones, or stacked ones for
//! where something goes.

use super::flow::Flow;
use super::map::hatch;
use super::mark::{Anchor, CursorStop, Drawing, Follow, Mark};
use super::measure::{fit, held_width, text_width};
use super::nothing::nothing;
use super::scale::{Linear, extent, held, within};

const PARTS: [&str; 4] = ["c-part s1", "c-part s2", "c-part s3", "c-part s4"];
const ON: [&str; 4] = ["c-on s1", "c-on s2", "c-on s3", "c-on s4"];
const ROW: f64 = 46.0;
const THICK: f64 = 18.0;

/// One bar.
#[derive(Clone, Debug, Default)]
pub struct Bar {
    /// Its name, written above it.
    pub name: String,
    /// Its values from left to right: one for a plain bar, several for a
    /// stacked one. One that is not finite is left out.
    pub values: Vec<f64>,
    /// The whole in words, written above it at the right.
    pub text: String,
    /// What the cursor says here.
    pub readout: String,
}

/// A mark all bars are measured against.
#[derive(Clone, Debug)]
pub struct Limit {
    /// Its value.
    pub at: f64,
    /// Its name, written above the bars.
    pub name: String,
}

/// A chart of bars.
#[derive(Clone, Debug, Default)]
pub struct Bars {
    /// The bars from top to bottom.
    pub bars: Vec<Bar>,
    /// What the values of a stacked bar are, in order; empty for plain bars.
    pub parts: Vec<String>,
    /// A sign for each part, where its name has no room; a number where it has none.
    pub signs: Vec<&'static str>,
    /// A mark they are measured against; a plain bar beyond it is drawn as
    /// being over.
    pub limit: Option<Limit>,
    /// The value at the right edge; taken from the data if not given.
    pub most: Option<f64>,
    /// What to say when there are no bars.
    pub nothing: String,
}

impl Bars {
    /// Lays the bars out for a width in logical pixels (held within 200 and
    /// 2000).
    pub fn draw(&self, width: f64) -> Drawing {
        let width = held_width(width);
        if self.bars.is_empty() {
            return nothing(width, &self.nothing);
        }
        let scale = self.scale(width);
        let mut marks = Vec::new();
        let limit = self.limit.as_ref().filter(|l| scale.holds(l.at));
        let mut top = 2.0;
        if let Some(limit) = limit.filter(|l| !l.name.is_empty()) {
            let name = fit(&limit.name, width);
            let half = text_width(&name) / 2.0;
            let x = scale.at(limit.at).min(width - half).max(half);
            marks.push(Mark::text("c-name", x, 13.0, Anchor::Middle, name));
            top += 16.0;
        }
        let mut points = Vec::with_capacity(self.bars.len());
        for (row, bar) in self.bars.iter().enumerate() {
            let y = top + ROW * row as f64;
            let text = fit(&bar.text, width * 0.6);
            let name = fit(&bar.name, width - text_width(&text) - 12.0);
            marks.push(Mark::text("c-name", 0.0, y + 14.0, Anchor::Start, name));
            marks.push(Mark::text("c-amount", width, y + 14.0, Anchor::End, text));
            self.bar(bar, y + 20.0, &scale, &mut marks);
            if let Some(limit) = limit {
                let x = scale.at(limit.at);
                marks.push(Mark::Line {
                    class: "c-limit",
                    x1: x,
                    y1: y + 17.0,
                    x2: x,
                    y2: y + 23.0 + THICK,
                });
            }
            points.push(CursorStop {
                x: width / 2.0,
                ys: vec![y + ROW / 2.0],
                row,
                col: 0,
                text: bar.readout.clone(),
            });
        }
        top += ROW * self.bars.len() as f64;
        Drawing {
            width,
            height: self.legend(width, top, &mut marks),
            marks,
            points,
            home: 0,
            follow: Follow::Ring { width: width - 2.0, height: ROW - 2.0 },
        }
    }

    /// From 0, or the lowest sum below it, to the highest sum.
    fn scale(&self, width: f64) -> Linear {
        let sum = |sign: f64| {
            let side = move |b: &Bar| {
                let of_sign = b.values.iter().filter(|v| v.is_finite() && **v * sign > 0.0);
                // Held at every step, so that no sum runs off to infinity.
                of_sign.fold(0.0_f64, |sum, v| held(sum + v))
            };
            self.bars.iter().map(side)
        };
        let limit = self.limit.iter().map(|l| l.at);
        let ends = extent(sum(1.0).chain(sum(-1.0)).chain(limit)).unwrap_or_default();
        let low = ends.0.min(0.0);
        let high = self.most.filter(|m| m.is_finite()).unwrap_or(ends.1).max(0.0);
        // All bars at nothing: they stand at the left, not in the middle.
        let high = if high - low > 0.0 { high } else { 1.0 };
        Linear::new(low, high, 1.0, width - 1.0)
    }

    fn bar(&self, bar: &Bar, y: f64, scale: &Linear, marks: &mut Vec<Mark>) {
        let stacked = !self.parts.is_empty();
        let place = |v: f64| within(scale.at(v), 1.0, scale.at(scale.high()));
        let edge = place(0.0);
        marks.push(Mark::Line {
            class: "c-base",
            x1: edge,
            y1: y - 2.0,
            x2: edge,
            y2: y + THICK + 2.0,
        });
        let (mut above, mut below) = (0.0_f64, 0.0_f64);
        for (n, value) in bar.values.iter().enumerate() {
            if !value.is_finite() {
                continue;
            }
            let side = if *value < 0.0 { &mut below } else { &mut above };
            let from = place(*side);
            *side = held(*side + value);
            let to = place(*side);
            let (x, wide) = (from.min(to), (to - from).abs());
            if wide < 0.05 {
                continue;
            }
            let over = !stacked && self.limit.as_ref().is_some_and(|l| *value > l.at);
            marks.push(Mark::Rect {
                class: if over { "c-part over" } else { PARTS[n % 4] },
                x,
                y,
                width: wide,
                height: THICK,
            });
            if over || n >= PARTS.len() {
                marks.push(hatch("c-hatch", x, y, (wide, THICK)));
            }
            if stacked {
                self.on_part(n, x, y, wide, marks);
            }
        }
    }

    fn sign(&self, n: usize) -> String {
        self.signs.get(n).map_or_else(|| super::plain((n + 1) as f64, 0), |sign| (*sign).into())
    }

    /// Names a part inside its bar, or marks it as in the key.
    fn on_part(&self, n: usize, x: f64, y: f64, wide: f64, marks: &mut Vec<Mark>) {
        let sign = self.sign(n);
        let fits = |text: &&str| text_width(text) + 8.0 <= wide;
        let name = self.parts.get(n).map(String::as_str).filter(fits);
        // On hatching only a sign stays legible.
        let name = name.filter(|_| n < PARTS.len());
        let Some(text) = name.or_else(|| Some(sign.as_str()).filter(fits)) else {
            return;
        };
        let middle = x + wide / 2.0;
        marks.push(Mark::text(ON[n % 4], middle, y + 13.0, Anchor::Middle, text));
    }

    /// Signs and names of the parts; gives back where it ends.
    fn legend(&self, width: f64, top: f64, marks: &mut Vec<Mark>) -> f64 {
        if self.parts.is_empty() {
            return top;
        }
        let mut flow = Flow::new(top + 16.0, width);
        for (n, name) in self.parts.iter().enumerate() {
            flow.room(24.0 + text_width(name));
            let y = flow.base - 13.0;
            marks.push(Mark::Rect {
                class: PARTS[n % 4],
                x: flow.x,
                y,
                width: 18.0,
                height: THICK,
            });
            if n >= PARTS.len() {
                marks.push(hatch("c-hatch", flow.x, y, (18.0, THICK)));
            }
            let sign = self.sign(n);
            marks.push(Mark::text(ON[n % 4], flow.x + 9.0, flow.base, Anchor::Middle, sign));
            flow.x += 24.0;
            flow.text("c-name", name, marks);
        }
        flow.base + 10.0
    }
}
