//! How far?
//!
//! Every distance is a ride in time ([`crate::ride`]), and every ride ends by one rule: it counts
//! until the board can no longer hold 80 % of the speed wished for on the flat.

use super::drive::{Drive, Sag};
use super::limit::Limit;
use crate::physics::battery::{MeanPackCurrent, RideDistance};
use crate::physics::road_load::Slope;
use crate::ride::{Ledger, Ridden, RideEnd, SagCause, Trip};
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// How far one steady speed on the flat reaches.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct Reach {
    /// Speed wished for, m/s.
    pub speed_m_s: f64,
    /// The speed that the distance is judged by, m/s: the one wished for, or what the board reaches
    /// with a full pack where that is less.
    pub wish_m_s: f64,
    /// Distance, m, until the board no longer holds 80 % of that.
    pub distance_m: f64,
    /// Of which at the full wish, m; 0 where the board never reaches it.
    pub full_wish_m: f64,
    /// How much farther it limps to walking pace, m; 0 where that was not asked for.
    pub limp_m: f64,
    /// Time that the distance takes, s.
    pub time_s: f64,
    /// Charge at the start, as a share.
    pub start_charge: f64,
    /// Charge left at the end, as a share.
    pub end_charge: f64,
    /// What ends it.
    pub limit: Limit,
    /// Why, where that is the pack's voltage.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sag: Option<SagCause>,
    /// How it ends: at the latest after 24 h.
    pub end: RideEnd,
}

impl Reach {
    fn of(speed_m_s: f64, ride: &Ridden) -> Self {
        Self {
            speed_m_s,
            wish_m_s: ride.wish_m_s,
            distance_m: ride.distance_m,
            full_wish_m: ride.full_wish_m,
            limp_m: ride.limp_m,
            time_s: ride.time_s,
            start_charge: ride.start_charge,
            end_charge: ride.end_charge,
            limit: ride.stopped.map_or(Limit::Empty, |met| met.limit),
            sag: ride.stopped.and_then(|met| met.sag),
            end: ride.end,
        }
    }
}

/// One speed on the distance curve.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct DistancePoint {
    /// Speed, m/s.
    pub speed_m_s: f64,
    /// Distance, m.
    pub distance_m: f64,
    /// What ends it.
    pub limit: Limit,
    /// Why, where that is the pack's voltage.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sag: Option<SagCause>,
    /// How it ends: at the latest after 24 h.
    pub end: RideEnd,
}

/// How far?
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Distance {
    /// At the rider's cruising speed on the flat.
    pub cruise: Reach,
    /// Where the energy of that ride went, Wh.
    pub ledger: Ledger,
    /// Energy out of the pack's cells for each kilometre, Wh/km.
    pub wh_per_km: f64,
    /// Distance over speed.
    pub curve: Vec<DistancePoint>,
}

impl Drive {
    /// How far a steady speed on the flat, m/s and above 0, reaches from the rider's start charge, without what it
    /// limps afterwards.
    ///
    /// ```
    /// use pitchline_core::physics::road_load::Slope;
    /// use pitchline_core::{Build, Draft, Drive};
    ///
    /// let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
    /// let (slow, fast) = (drive.reach(5.0), drive.reach(8.0));
    /// assert!(slow.distance_m > fast.distance_m);
    /// // At 80 % of the speed it ends; until then it was no faster than asked.
    /// assert!(slow.distance_m <= 5.0 * slow.time_s * (1.0 + 1e-9));
    /// // 10 in series of 9 Ah hold no more than 4.2 V each gives, and the road takes its share of it.
    /// let stored_j = 10.0 * 9.0 * 4.2 * 3600.0;
    /// assert!(slow.distance_m < stored_j / drive.load_n(4.0, Slope::FLAT));
    /// ```
    #[must_use]
    pub fn reach(&self, speed_m_s: f64) -> Reach {
        Reach::of(speed_m_s, &Trip::steady(self, speed_m_s).brief().whole())
    }
}

/// The steps that lead to the distance at cruising speed: the middle of the charge stands for the
/// ride, whose own mean current and mean speed follow.
pub(super) fn explain(drive: &Drive, w: &mut Working) {
    let ride = &drive.build.ride;
    let found = drive.reach(ride.cruise_m_s);
    let middle = 0.5 * (found.start_charge + found.end_charge);
    let supply = drive.supply_explained(middle, Sag::Sustained, w);
    let speed_m_s = ride.cruise_m_s.min(found.wish_m_s);
    drive.hold_explained(&supply, speed_m_s, Slope::FLAT, w);
    if found.distance_m > 0.0 {
        let (start, end, time) = (found.start_charge, found.end_charge, found.time_s);
        w.apply(MeanPackCurrent { capacity: drive.capacity_ah, start, end, time });
        w.apply(RideDistance { speed: found.distance_m / time, time });
    }
}

/// Speeds on the distance curve.
const SPEEDS: usize = 40;

pub(crate) fn answer(drive: &Drive, top_m_s: f64) -> Distance {
    let cruise_m_s = drive.build.ride.cruise_m_s;
    let ride = Trip::steady(drive, cruise_m_s).unrecorded().whole();
    Distance {
        cruise: Reach::of(cruise_m_s, &ride),
        ledger: ride.ledger,
        wh_per_km: ride.wh_per_km,
        curve: curve(drive, top_m_s, SPEEDS),
    }
}

/// Distance at `count` steady speeds on the flat, from 5 km/h to the top speed.
fn curve(drive: &Drive, top_m_s: f64, count: usize) -> Vec<DistancePoint> {
    let (lo, hi) = (5.0 / 3.6, top_m_s);
    if hi <= lo || count < 2 {
        return Vec::new();
    }
    let step = (hi - lo) / (count - 1) as f64;
    let at = |i: usize| {
        let Reach { speed_m_s, distance_m, limit, sag, end, .. } =
            drive.reach(lo + step * i as f64);
        DistancePoint { speed_m_s, distance_m, limit, sag, end }
    };
    (0..count).map(at).collect()
}
