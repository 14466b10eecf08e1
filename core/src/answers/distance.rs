//! How far?

use super::drive::{Drive, Sag};
use super::limit::Limit;
use super::point::Point;
use super::push::FULL;
use crate::math::root;
use crate::physics::battery::{MeanPackCurrent, SteadyDistance};
use crate::physics::road_load::Slope;
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// How far one steady speed reaches.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Reach {
    /// Speed, m/s.
    pub speed_m_s: f64,
    /// Distance, m; 0 where the speed cannot be held even at the start.
    pub distance_m: f64,
    /// Charge at the start, as a share.
    pub start_charge: f64,
    /// Charge left at the end, as a share.
    pub end_charge: f64,
    /// What ends it.
    pub limit: Limit,
}

/// One speed on the distance curve.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DistancePoint {
    /// Speed, m/s.
    pub speed_m_s: f64,
    /// Distance, m.
    pub distance_m: f64,
    /// What ends it.
    pub limit: Limit,
}

/// How far?
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Distance {
    /// At the rider's cruising speed on the flat.
    pub cruise: Reach,
    /// Energy over that ride, Wh, by where it goes: an operating point whose
    /// watts are watt-hours.
    pub energy_wh: Point,
    /// Energy out of the pack's cells for each kilometre, Wh/km.
    pub wh_per_km: f64,
    /// Distance over speed.
    pub curve: Vec<DistancePoint>,
}

/// Charge intervals of the Simpson sum.
pub(crate) const INTERVALS: usize = 24;

impl Drive {
    /// How far a steady speed on a slope reaches from the rider's start charge.
    #[must_use]
    pub fn reach(&self, speed_m_s: f64, slope: Slope) -> Reach {
        self.reach_explained(speed_m_s, slope, INTERVALS, &mut Working::off())
    }

    /// The same over any even number of charge intervals, for judging the sum.
    pub(crate) fn reach_explained(
        &self,
        speed_m_s: f64,
        slope: Slope,
        intervals: usize,
        w: &mut Working,
    ) -> Reach {
        let start = self.build.ride.start_charge;
        let (end, limit) = self.last_charge(speed_m_s, slope, start);
        let none =
            Reach { speed_m_s, distance_m: 0.0, start_charge: start, end_charge: start, limit };
        if end >= start {
            return none;
        }
        let mut inverse = 0.0;
        for (charge, weight) in simpson(end, start, intervals) {
            let Some(point) = self.hold(&self.supply(charge, Sag::Sustained), speed_m_s, slope)
            else {
                // A hair below what the push allows; the end is where it allows it.
                continue;
            };
            inverse += weight / point.pack_current_a;
        }
        if inverse <= 0.0 {
            return none;
        }
        let mean = w.apply(MeanPackCurrent { inverse });
        let distance_m = w.apply(SteadyDistance {
            speed: speed_m_s,
            capacity: self.capacity_ah,
            start,
            end,
            mean,
        });
        Reach { speed_m_s, distance_m, start_charge: start, end_charge: end, limit }
    }

    /// The charge at which the speed can no longer be held, and why.
    fn last_charge(&self, speed_m_s: f64, slope: Slope, start: f64) -> (f64, Limit) {
        let load = self.load_n(speed_m_s, slope);
        let push =
            |charge: f64| self.push(&self.supply(charge, Sag::Sustained), &FULL, speed_m_s, slope);
        let spare = |charge: f64| push(charge).force_n - load;
        if spare(start) <= 0.0 {
            return (start, push(start).limit);
        }
        if spare(0.0) >= 0.0 {
            return (0.0, Limit::Empty);
        }
        let end = root(0.0, start, 1e-9, spare);
        (end, push(end).limit)
    }

    /// How far a steady speed reaches, and the energy over it.
    pub(crate) fn reach_with_energy(&self, speed_m_s: f64, slope: Slope) -> (Reach, Point) {
        let reach = self.reach(speed_m_s, slope);
        let energy = self.energy(&reach, slope);
        (reach, energy)
    }

    /// Energy over a ride, Wh, by where it goes.
    fn energy(&self, reach: &Reach, slope: Slope) -> Point {
        let start = self.build.ride.start_charge;
        let mut sum = Point::default();
        if reach.end_charge >= start {
            return sum;
        }
        for (charge, weight) in simpson(reach.end_charge, start, INTERVALS) {
            let supply = self.supply(charge, Sag::Sustained);
            if let Some(point) = self.hold(&supply, reach.speed_m_s, slope) {
                // Hours spent in this slice of charge.
                let hours =
                    weight * (start - reach.end_charge) * self.capacity_ah / point.pack_current_a;
                sum.add_scaled(&point, hours);
            }
        }
        sum
    }
}

/// Points and weights of a Simpson mean over `[lo, hi]`; the weights sum to 1.
fn simpson(lo: f64, hi: f64, intervals: usize) -> impl Iterator<Item = (f64, f64)> {
    let count = intervals as f64;
    (0..=intervals).map(move |i| {
        let weight = match i {
            0 => 1.0,
            i if i == intervals => 1.0,
            i if i % 2 == 1 => 4.0,
            _ => 2.0,
        };
        (lo + (hi - lo) * i as f64 / count, weight / (3.0 * count))
    })
}

/// Speeds on the distance curve.
pub(crate) const SPEEDS: usize = 40;

pub(crate) fn answer(drive: &Drive, top_m_s: f64) -> Distance {
    let cruise = drive.reach(drive.build.ride.cruise_m_s, Slope::FLAT);
    let energy_wh = drive.energy(&cruise, Slope::FLAT);
    let wh_per_km = if cruise.distance_m > 0.0 {
        energy_wh.chemical_w / (cruise.distance_m / 1000.0)
    } else {
        0.0
    };
    Distance { cruise, energy_wh, wh_per_km, curve: curve(drive, top_m_s, SPEEDS) }
}

/// Distance at `count` steady speeds on the flat, from 5 km/h to the top speed.
pub(crate) fn curve(drive: &Drive, top_m_s: f64, count: usize) -> Vec<DistancePoint> {
    let (lo, hi) = (5.0 / 3.6, top_m_s);
    if hi <= lo || count < 2 {
        return Vec::new();
    }
    let step = (hi - lo) / (count - 1) as f64;
    let at = |i: usize| {
        let reach = drive.reach(lo + step * i as f64, Slope::FLAT);
        DistancePoint {
            speed_m_s: reach.speed_m_s,
            distance_m: reach.distance_m,
            limit: reach.limit,
        }
    };
    (0..count).map(at).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::build::{Build, Draft};

    /// The sum against one forty times finer: Simpson's rule converges, so the
    /// finer sum is the better number.
    #[test]
    fn the_charge_sum_is_fine_enough() {
        let draft = Draft::typical();
        let drive = Drive::new(&Build::check(&draft).unwrap());
        for km_h in [8.0, 22.0, 35.0] {
            let mut off = Working::off();
            let coarse = drive.reach(km_h / 3.6, Slope::FLAT);
            let fine = drive.reach_explained(km_h / 3.6, Slope::FLAT, 40 * INTERVALS, &mut off);
            let error = (coarse.distance_m / fine.distance_m - 1.0).abs();
            assert!(error < 1e-3, "{km_h} km/h: {error}");
        }
    }
}
