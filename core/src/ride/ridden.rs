//! What came of a ride in time.

use super::journey::Moment;
use super::ledger::Ledger;
use super::sag::SagCause;
use crate::answers::Limit;
use crate::parts::Outing;
use alloc::vec::Vec;
use serde::Serialize;

/// What ends a ride.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum RideEnd {
    /// The distance asked for is made.
    Distance,
    /// The time asked for has passed.
    Time,
    /// The board can no longer hold 80 % of the speed wished for on the flat.
    Slow,
    /// The charge is used up.
    Empty,
    /// The push does not move the board.
    Stalled,
}

/// A limit, and when and where it was met.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Met {
    /// The limit.
    pub limit: Limit,
    /// Time since the start, s.
    pub time_s: f64,
    /// Distance from the start, m.
    pub distance_m: f64,
    /// Speed there, m/s.
    pub speed_m_s: f64,
    /// Rise over run there.
    pub grade: f64,
    /// Why, where the limit is the pack's voltage.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sag: Option<SagCause>,
}

/// Highest temperatures of a ride, °C.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Hottest {
    /// Windings, °C.
    pub winding_c: f64,
    /// Cases of the motors, °C.
    pub case_c: f64,
    /// Switches of the controller, °C.
    pub controller_c: f64,
    /// Cells, °C.
    pub cell_c: f64,
}

/// A ride in time.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Ridden {
    /// Distance, m.
    pub distance_m: f64,
    /// Of which at the full wish, m, to within 2 % of it; 0 where the board never reaches it.
    pub full_wish_m: f64,
    /// How much farther it limps to walking pace once the speed is lost, m; 0 where that was not
    /// asked for.
    pub limp_m: f64,
    /// The speed that the distance is judged by, m/s: the one wished for, or what the board reaches
    /// on the flat with a full pack where that is less.
    pub wish_m_s: f64,
    /// Time with all rests, s.
    pub time_s: f64,
    /// Charge at the start, as a share.
    pub start_charge: f64,
    /// Charge at the end, as a share.
    pub end_charge: f64,
    /// What ends it.
    pub end: RideEnd,
    /// Highest speed, m/s.
    pub top_m_s: f64,
    /// Energy out of the cells for each kilometre, Wh/km; 0 for no way at all.
    pub wh_per_km: f64,
    /// Where the energy went.
    pub ledger: Ledger,
    /// How warm it got.
    pub hottest: Hottest,
    /// The first limit that held the push back.
    pub held_back: Option<Met>,
    /// Where the speed wished for was first not held, and the speed that it settled at.
    pub not_held: Option<Met>,
    /// What ended it, where the pack was empty or the push did not move it.
    pub stopped: Option<Met>,
    /// The first limit that left braking to the rider, crawling aside.
    pub brake_held_back: Option<Met>,
    /// Where the windings were first hotter than their limit.
    pub winding_hot: Option<Met>,
    /// Moments on the way, at even times.
    pub moments: Vec<Moment>,
    /// Lowest, highest and mean values up to each moment since the one before.
    pub extents: Vec<Extent>,
}

/// Lowest, highest and mean values between two moments.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Extent {
    /// Speed, m/s.
    pub speed_m_s: [f64; 2],
    /// Voltage at the controller, V.
    pub bus_v: [f64; 2],
    /// Current out of the pack, A.
    pub pack_a: [f64; 2],
    /// Current of each motor, A.
    pub motor_a: [f64; 2],
    /// Time between them, s.
    pub time_s: f64,
    /// Volts, pack current and motor current, each summed over that time.
    sums: [f64; 3],
}

impl Extent {
    /// Of a moment alone.
    pub(super) const fn of(m: &Moment) -> Self {
        Self::over(m, 0.0)
    }

    /// Of the step that led to a moment, which its volts and currents are of.
    pub(super) const fn over(m: &Moment, step_s: f64) -> Self {
        Self {
            speed_m_s: [m.speed_m_s; 2],
            bus_v: [m.bus_v; 2],
            pack_a: [m.pack_a; 2],
            motor_a: [m.motor_a; 2],
            time_s: step_s,
            sums: [step_s * m.bus_v, step_s * m.pack_a, step_s * m.motor_a],
        }
    }

    /// Mean volts at the controller, pack current, A, and current of each motor, A; none of no time.
    #[must_use]
    pub fn means(&self) -> Option<[f64; 3]> {
        (self.time_s > 0.0).then(|| self.sums.map(|sum| sum / self.time_s))
    }

    /// Of both.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        let ([a, b, c], [d, e, f]) = (self.sums, other.sums);
        let both = |[a, b]: [f64; 2], [c, d]: [f64; 2]| [a.min(c), b.max(d)];
        Self {
            speed_m_s: both(self.speed_m_s, other.speed_m_s),
            bus_v: both(self.bus_v, other.bus_v),
            pack_a: both(self.pack_a, other.pack_a),
            motor_a: both(self.motor_a, other.motor_a),
            time_s: self.time_s + other.time_s,
            sums: [a + d, b + e, c + f],
        }
    }
}

/// Share of the distance, from 0 to 1, before which a speed is lost early: every pack loses it
/// towards the end. A judgement of this model's, no source.
pub const EARLY_SHARE: f64 = 0.8;

/// Distance, m, from which a board has got going. A judgement of this model's, no source.
pub const GOING_M: f64 = 1.0;

impl Ridden {
    /// Mean speed with all rests, m/s; 0 for no time at all.
    #[must_use]
    pub fn mean_m_s(&self) -> f64 {
        if self.time_s > 0.0 { self.distance_m / self.time_s } else { 0.0 }
    }

    /// Whether the board gets going: for [`GOING_M`] or farther.
    #[must_use]
    pub fn gets_going(&self) -> bool {
        self.distance_m >= GOING_M
    }

    /// Where the speed wished for was lost early, before [`EARLY_SHARE`] of the distance; none where
    /// it was held so far, or to the end.
    #[must_use]
    pub fn lost_early(&self) -> Option<Met> {
        self.not_held.filter(|met| met.distance_m < EARLY_SHARE * self.distance_m)
    }

    /// Whether this ride, of an outing, could not be had as it was asked for: the push did not move
    /// the board, or the speed wished for was lost early. An outing flat out wishes for no speed.
    ///
    /// ```
    /// use pitchline_core::ride::Until;
    /// use pitchline_core::{Build, Draft, Drive, Outing, Slot};
    ///
    /// // 150 m up for each kilometre, half of which leads down: climbs of 30 %.
    /// let mut draft = Draft::typical();
    /// draft.set(Slot::Ride, "climb_m_per_km", 150.0);
    /// let drive = Drive::new(&Build::check(&draft).unwrap());
    /// let own = drive.ride_out(Outing::Own, Until::distance(2000.0));
    /// assert!(own.falls_short(Outing::Own));
    /// // The steady ride is on the flat.
    /// let steady = drive.ride_out(Outing::Steady, Until::distance(2000.0));
    /// assert!(!steady.falls_short(Outing::Steady) && steady.lost_early().is_none());
    /// ```
    #[must_use]
    pub fn falls_short(&self, outing: Outing) -> bool {
        let wishes = outing != Outing::Flatout;
        self.end == RideEnd::Stalled || (wishes && self.lost_early().is_some())
    }
}
