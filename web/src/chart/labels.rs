//! Labels that keep out of each other's way.

use super::mark::{Anchor, Mark};
use super::measure::{DROP, LINE, RISE, fit, text_width};
use super::scale::within;

/// The room a placed text takes.
#[derive(Clone, Copy)]
struct Taken {
    left: f64,
    right: f64,
    base: f64,
}

impl Taken {
    fn meets(&self, other: &Self) -> bool {
        self.left < other.right + 3.0
            && other.left < self.right + 3.0
            && (self.base - other.base).abs() < LINE - 1.0
    }

    fn covers(&self, x: f64, y: f64) -> bool {
        x >= self.left && x <= self.right && y >= self.base - RISE && y <= self.base + DROP
    }
}

/// Where a text would like to stand.
pub(crate) struct Wish<'a> {
    pub class: &'static str,
    pub x: f64,
    pub y: f64,
    pub anchor: Anchor,
    pub text: &'a str,
    /// Class of a short sample stroke before the text, if there is one.
    pub sample: Option<&'static str>,
    /// The x about which it may change sides, if it may.
    pub about: Option<f64>,
}

/// Length of a sample stroke with the gap after it.
pub(super) const SAMPLE: f64 = 26.0;

/// Places labels one after the other: each takes the nearest height at which
/// it covers no earlier label and as little as may be of the curves.
pub(crate) struct Labels {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
    taken: Vec<Taken>,
    curves: Vec<(f64, f64)>,
}

impl Labels {
    /// Labels may stand from `left` to `right` with their letters between
    /// `top` and `bottom`.
    pub(crate) fn new((left, right): (f64, f64), (top, bottom): (f64, f64)) -> Self {
        Self { left, right, top, bottom, taken: Vec::new(), curves: Vec::new() }
    }

    /// Tells the labels where a stroke runs.
    pub(crate) fn avoid(&mut self, from: (f64, f64), to: (f64, f64)) {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let pieces = (dx.abs().max(dy.abs()) / 6.0).ceil() as usize;
        let pieces = pieces.clamp(1, 400);
        for n in 0..=pieces {
            let part = n as f64 / pieces as f64;
            self.curves.push((from.0 + dx * part, from.1 + dy * part));
        }
    }

    /// Draws one label.
    pub(crate) fn put(&mut self, marks: &mut Vec<Mark>, wish: &Wish<'_>) {
        let before = if wish.sample.is_some() { SAMPLE } else { 0.0 };
        let text = fit(wish.text, self.right - self.left - before);
        if text.is_empty() {
            return;
        }
        let size = text_width(&text) + before;
        let mut best: Option<(f64, Anchor, Taken)> = None;
        for (anchor, x) in sides(wish) {
            let left = match anchor {
                Anchor::Start => x,
                Anchor::Middle => x - size / 2.0,
                Anchor::End => x - size,
            };
            let held = within(left, self.left, self.right - size);
            for n in 0_i32..31 {
                // 0, up 1, down 1, up 2, ...
                let steps = (n + 1) / 2 * if n % 2 == 1 { -1 } else { 1 };
                let base = wish.y + f64::from(steps) * 5.0;
                if n > 0 && (base - RISE < self.top || base + DROP > self.bottom) {
                    continue;
                }
                let highest = self.top + RISE;
                let spot = Taken {
                    left: held,
                    right: held + size,
                    base: within(base, highest, self.bottom - DROP),
                };
                let off = f64::from(steps.abs()) + (held - left).abs() * 0.5;
                let fault = self.fault(&spot) + off;
                if best.is_none_or(|(least, ..)| fault < least) {
                    best = Some((fault, anchor, spot));
                }
            }
        }
        let Some((_, anchor, spot)) = best else {
            return;
        };
        let left = spot.left;
        self.taken.push(spot);
        if let Some(class) = wish.sample {
            marks.push(Mark::Line {
                class,
                x1: left,
                y1: spot.base - DROP,
                x2: left + SAMPLE - 5.0,
                y2: spot.base - DROP,
            });
        }
        // A text keeps its own anchor, so that a wrong guess of its width
        // does not move the end that matters.
        let x = match anchor {
            Anchor::Start => left + before,
            Anchor::Middle => left + (size + before) / 2.0,
            Anchor::End => left + size,
        };
        marks.push(Mark::text(wish.class, x, spot.base, anchor, text));
    }

    fn fault(&self, spot: &Taken) -> f64 {
        let labels = self.taken.iter().filter(|other| other.meets(spot)).count();
        let curves = self.curves.iter().filter(|(x, y)| spot.covers(*x, *y)).count();
        labels as f64 * 200.0 + curves.min(20) as f64 * 3.0
    }
}

/// The wished place, then the one mirrored about its point.
fn sides(wish: &Wish<'_>) -> impl Iterator<Item = (Anchor, f64)> {
    let other = match wish.anchor {
        Anchor::Start => Anchor::End,
        Anchor::Middle => Anchor::Middle,
        Anchor::End => Anchor::Start,
    };
    let mirrored = wish.about.map(|about| (other, 2.0 * about - wish.x));
    std::iter::once((wish.anchor, wish.x)).chain(mirrored)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bases(marks: &[Mark]) -> Vec<f64> {
        marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Text { y, .. } => Some(*y),
                _ => None,
            })
            .collect()
    }

    fn wish(text: &str, y: f64) -> Wish<'_> {
        Wish { class: "c-name", x: 20.0, y, anchor: Anchor::Start, text, sample: None, about: None }
    }

    #[test]
    fn four_labels_at_one_height_stand_apart() {
        let mut labels = Labels::new((0.0, 300.0), (0.0, 200.0));
        let mut marks = Vec::new();
        for name in ["Kittiwake", "Gannet", "Kittiwake, wide", "Gannet, wide"] {
            labels.put(&mut marks, &wish(name, 100.0));
        }
        let mut found = bases(&marks);
        found.sort_by(f64::total_cmp);
        assert_eq!(found.len(), 4);
        assert!(found.windows(2).all(|pair| pair[1] - pair[0] >= LINE - 1.0));
        assert!(found.iter().all(|y| (50.0..150.0).contains(y)));
    }

    #[test]
    fn a_label_leaves_the_curve_alone() {
        let mut labels = Labels::new((0.0, 300.0), (0.0, 200.0));
        labels.avoid((0.0, 97.0), (300.0, 97.0));
        let mut marks = Vec::new();
        labels.put(&mut marks, &wish("road load", 100.0));
        let base = bases(&marks)[0];
        assert!(base + DROP < 97.0 || base - RISE > 97.0, "{base}");
    }

    #[test]
    fn a_label_changes_sides_rather_than_stand_on_another() {
        let mut labels = Labels::new((0.0, 300.0), (80.0, 120.0));
        let mut marks = Vec::new();
        let mut first = wish("Signal Steps", 100.0);
        first.x = 160.0;
        labels.put(&mut marks, &first);
        first.about = Some(150.0);
        labels.put(&mut marks, &first);
        let Mark::Text { x, anchor, .. } = marks[1] else { panic!("no text") };
        assert_eq!((x, anchor), (140.0, Anchor::End));
    }

    #[test]
    fn a_label_stays_in_the_drawing() {
        let mut labels = Labels::new((0.0, 120.0), (10.0, 60.0));
        let mut marks = Vec::new();
        let mut far = wish("a label far too long for its drawing", 400.0);
        far.x = 500.0;
        labels.put(&mut marks, &far);
        let Mark::Text { x, y, text, .. } = &marks[0] else { panic!("no text") };
        assert!(*x >= 0.0 && x + text_width(text) <= 120.0);
        assert!(*y <= 60.0);
    }
}
