//! Distance over speed as a band.

use super::sample::{Sequence, quantile, triangle};
use super::spread::SPREADS;
use crate::answers::Drive;
use crate::build::Build;
use alloc::vec::Vec;
use serde::Serialize;

/// One speed of the curve.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct CurvePoint {
    /// Speed, m/s.
    pub speed_m_s: f64,
    /// Distance for exactly what was entered, m.
    pub nominal: f64,
    /// One in ten is below, m.
    pub p10: f64,
    /// One in ten is above, m; those that do not hold the speed go nowhere.
    pub p90: f64,
}

/// Takes samples of the distance at several speeds, some at a time.
///
/// ```
/// use pitchline_core::band::CurveSampler;
/// use pitchline_core::{Build, Draft, Drive};
///
/// let build = Build::check(&Draft::typical()).unwrap();
/// let mut sampler = CurveSampler::new(&build, [4.0, 8.0]);
/// while sampler.left() > 0 {
///     sampler.take(); // and let the page breathe
/// }
/// let curve = sampler.curve();
/// assert!(curve.iter().all(|point| point.p10 < point.nominal && point.nominal < point.p90));
/// // Slower goes farther, beyond all spread. Its middle is the answer for what was entered.
/// assert!(curve[0].p10 > curve[1].p90);
/// assert_eq!(curve[0].nominal, Drive::new(&build).reach(4.0).distance_m);
/// ```
#[derive(Clone, Debug)]
pub struct CurveSampler {
    build: Build,
    sequence: Sequence,
    /// Each speed, its answer, and what was sampled there.
    points: Vec<(f64, f64, Vec<f64>)>,
    taken: usize,
}

/// Samples of a curve that is shown: coarse, since only its shape is looked at. The ends of its
/// band are within a tenth of the band's width of those of 4096.
pub const CURVE_SAMPLES: usize = 64;

impl CurveSampler {
    /// For these speeds in m/s; no samples yet.
    #[must_use]
    pub fn new(build: &Build, speeds: impl IntoIterator<Item = f64>) -> Self {
        let drive = Drive::new(build);
        let points = speeds.into_iter().map(|speed| (speed, distance(&drive, speed), Vec::new()));
        let points = points.collect();
        Self { build: *build, sequence: Sequence::new(), points, taken: 0 }
    }

    /// How much is to be taken yet for a curve that is shown.
    #[must_use]
    pub fn left(&self) -> usize {
        CURVE_SAMPLES.saturating_sub(self.taken)
    }

    /// Takes one sample at every speed: the same as a [`Sampler`](super::Sampler) takes.
    pub fn take(&mut self) {
        let mut build = self.build;
        for (spread, share) in SPREADS.iter().zip(self.sequence.next()) {
            spread.put(&mut build, triangle(share));
        }
        let drive = Drive::new(&build);
        for (speed, _, values) in &mut self.points {
            values.push(distance(&drive, *speed));
        }
        self.taken += 1;
    }

    /// The curve by what was taken so far; empty where nothing was.
    #[must_use]
    pub fn curve(&self) -> Vec<CurvePoint> {
        let point = |(speed, nominal, values): &(f64, f64, Vec<f64>)| {
            let mut values = values.clone();
            let [p10, p90] = [0.1, 0.9].map(|share| quantile(&mut values, share));
            CurvePoint { speed_m_s: *speed, nominal: *nominal, p10, p90 }
        };
        self.points.iter().filter(|_| self.taken > 0).map(point).collect()
    }
}

fn distance(drive: &Drive, speed: f64) -> f64 {
    drive.reach(speed).distance_m
}
