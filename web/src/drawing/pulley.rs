//! A toothed pulley from the side.

use super::Place;
use crate::chart::{Mark, path};
use pitchline_core::sine_cosine;
use std::f64::consts::TAU;

/// Least pitch at which a tooth is an outline, logical pixels.
const OUTLINED: f64 = 3.2;
/// Least pitch at which it is at least a stroke.
const STROKES: f64 = 1.5;
/// Least length of such a stroke.
const STROKE: f64 = 2.0;

/// A pulley on the page, in logical pixels.
#[derive(Clone, Copy)]
pub(super) struct Pulley {
    /// Its middle.
    pub at: Place,
    /// Radius over its teeth.
    pub r: f64,
    /// Height of a tooth.
    pub tooth: f64,
    /// How many it has.
    pub teeth: f64,
}

impl Pulley {
    /// Its outline, tooth by tooth as far as they can be told apart.
    pub(super) fn marks(self, marks: &mut Vec<Mark>) {
        let Self { at: (x, y), r, tooth, teeth } = self;
        let around = |turn: f64, r: f64| {
            let (sine, cosine) = sine_cosine(360.0 * turn / teeth);
            (x + r * cosine, y - r * sine)
        };
        let each = || (0..teeth as u32).map(f64::from);
        let pitch = TAU * r / teeth.max(1.0);
        let root = r - tooth.min(0.4 * r);
        if pitch >= OUTLINED {
            // A land, and a groove with slanted flanks.
            let corners = [(-0.2, r), (0.2, r), (0.32, root), (0.68, root)];
            let all = each().flat_map(|n| corners.map(|(turn, r)| around(n + turn, r)));
            let d = path(&all.collect::<Vec<_>>(), true);
            marks.push(Mark::Path { class: "b-pulley", d });
            return;
        }
        marks.push(Mark::Circle { class: "b-pulley", x, y, r });
        if pitch >= STROKES {
            let root = root.min(r - STROKE).max(0.0);
            let one = |n| path(&[around(n, root), around(n, r)], false);
            marks.push(Mark::Path { class: "b-teeth", d: each().map(one).collect() });
        }
    }
}
