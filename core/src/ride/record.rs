//! What is kept of a ride for charts: moments at even times, and what lay between.

use super::journey::Moment;
use super::ridden::Extent;
use crate::math::floor;
use alloc::vec::Vec;

/// Moments kept: from so many to twice as many.
const MOMENTS: usize = 200;

/// Moments at even times, and what lay between.
#[derive(Clone, Debug)]
pub(super) struct Record {
    pub(super) moments: Vec<Moment>,
    pub(super) extents: Vec<Extent>,
    /// Since the last moment that was kept.
    extent: Extent,
    every_s: f64,
}

impl Record {
    /// From the start.
    pub(super) fn new(now: &Moment) -> Self {
        let extent = Extent::of(now);
        Self { moments: Vec::from([*now]), extents: Vec::from([extent]), extent, every_s: 1.0 }
    }

    /// After a step.
    pub(super) fn take(&mut self, now: &Moment, step_s: f64) {
        self.extent = self.extent.with(Extent::over(now, step_s));
        if self.moments.last().is_none_or(|last| later(last, now, self.every_s)) {
            self.moments.push(*now);
            self.extents.push(self.extent);
            self.extent = Extent::of(now);
            while self.moments.len() > 2 * MOMENTS {
                self.every_s *= 2.0;
                self.thin();
            }
        }
    }

    /// With the last moment, wherever it fell.
    pub(super) fn close(&mut self, now: &Moment) {
        if self.moments.last() != Some(now) {
            self.moments.push(*now);
            self.extents.push(self.extent);
        }
    }

    /// Keeps the first moment of each stretch; what lies between goes to the extent of the one
    /// after, or to what comes next.
    fn thin(&mut self) {
        let (mut moments, mut extents) = (Vec::new(), Vec::new());
        let mut left = None::<Extent>;
        for (moment, extent) in self.moments.iter().zip(&self.extents) {
            let extent = left.take().map_or(*extent, |left| left.with(*extent));
            if moments.last().is_none_or(|last| later(last, moment, self.every_s)) {
                moments.push(*moment);
                extents.push(extent);
            } else {
                left = Some(extent);
            }
        }
        (self.moments, self.extents) = (moments, extents);
        if let Some(left) = left {
            self.extent = left.with(self.extent);
        }
    }
}

/// Whether a moment lies in a later one of stretches that are so long, s.
fn later(last: &Moment, now: &Moment, every_s: f64) -> bool {
    floor(now.time_s / every_s) > floor(last.time_s / every_s)
}
