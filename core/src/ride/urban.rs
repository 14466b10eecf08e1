//! The urban cycle of UN Regulation 83, as a trace to be followed.

use super::course::{Course, Manner, Steps, TracePoint, Until};
use super::ridden::Ridden;
use super::trip::Trip;
use crate::answers::Drive;
use alloc::vec::Vec;
use serde::Serialize;

/// How the cycle is made to suit a board that does not reach its 50 km/h.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum UrbanFit {
    /// Every speed less by the same share.
    Scaled,
    /// Speeds above what the board reaches are cut off.
    Clipped,
}

const fn at(time_s: f64, km_h: f64) -> TracePoint {
    TracePoint { time_s, speed_m_s: km_h / 3.6 }
}

/// The urban cycle of UN Regulation 83 (ECE-15): 195 s, 1.0 km, 50 km/h at most.
///
/// Source: the elementary urban cycle of UN Regulation 83, annex 4a, from
/// memory; speed held while gears would be changed.
pub const URBAN: [TracePoint; 25] = [
    at(0.0, 0.0),
    at(11.0, 0.0),
    at(15.0, 15.0),
    at(23.0, 15.0),
    at(25.0, 10.0),
    at(28.0, 0.0),
    at(49.0, 0.0),
    at(54.0, 15.0),
    at(56.0, 15.0),
    at(61.0, 32.0),
    at(85.0, 32.0),
    at(93.0, 10.0),
    at(96.0, 0.0),
    at(117.0, 0.0),
    at(122.0, 15.0),
    at(124.0, 15.0),
    at(133.0, 35.0),
    at(135.0, 35.0),
    at(143.0, 50.0),
    at(155.0, 50.0),
    at(163.0, 35.0),
    at(178.0, 35.0),
    at(185.0, 10.0),
    at(188.0, 0.0),
    at(195.0, 0.0),
];

/// The highest speed of the urban cycle, m/s. Source: as of [`URBAN`].
pub const URBAN_M_S: f64 = 50.0 / 3.6;
/// Share of its top speed that a board is asked for.
const ASKED: f64 = 0.95;
/// A board that lags behind catches up no harder than this.
const MANNER: Manner = Manner { acceleration_m_s2: 2.0, braking_m_s2: 2.0 };

/// The cycle made to suit a highest speed, m/s; less than 0 counts as 0, and one of [`URBAN_M_S`]
/// or more leaves it as it is.
#[must_use]
pub fn urban(fastest_m_s: f64, fit: UrbanFit) -> Vec<TracePoint> {
    let fastest = fastest_m_s.max(0.0);
    if fastest >= URBAN_M_S {
        return Vec::from(URBAN);
    }
    if fit == UrbanFit::Scaled {
        let scaled =
            |p: &TracePoint| TracePoint { speed_m_s: p.speed_m_s * fastest / URBAN_M_S, ..*p };
        return URBAN.iter().map(scaled).collect();
    }
    let mut points = Vec::with_capacity(URBAN.len() + 8);
    let mut last: Option<TracePoint> = None;
    for point in URBAN {
        if let Some(from) = last {
            let (under, over) = (from.speed_m_s < fastest, point.speed_m_s > fastest);
            if under == over && from.speed_m_s != point.speed_m_s {
                // It crosses the speed on the way.
                let part = (fastest - from.speed_m_s) / (point.speed_m_s - from.speed_m_s);
                if part > 0.0 && part < 1.0 {
                    let time_s = from.time_s + part * (point.time_s - from.time_s);
                    points.push(TracePoint { time_s, speed_m_s: fastest });
                }
            }
        }
        points.push(TracePoint { speed_m_s: point.speed_m_s.min(fastest), ..point });
        last = Some(point);
    }
    points
}

impl Trip {
    /// At the start of rounds of the urban cycle on the flat, made to suit the
    /// board, from the rider's start charge.
    #[must_use]
    pub fn on_urban(drive: &Drive, fit: UrbanFit, until: Until, steps: Steps) -> Self {
        let points = urban(drive.urban_m_s(), fit);
        let charge = drive.build.ride.start_charge;
        Self::new(drive, Course::Trace(&points), MANNER, until, charge, steps)
    }
}

impl Drive {
    /// The highest speed that the urban cycle asks of this board, m/s.
    #[must_use]
    pub fn urban_m_s(&self) -> f64 {
        (ASKED * self.reached_m_s(URBAN_M_S / ASKED)).min(URBAN_M_S)
    }

    /// Rounds of the urban cycle on the flat, 195 s each, made to suit the board, from the rider's
    /// start charge; a part of a round is a part of its time, and less than none is none.
    ///
    /// ```
    /// use pitchline_core::ride::{URBAN, URBAN_M_S, UrbanFit};
    /// use pitchline_core::{Build, Draft, Drive};
    ///
    /// let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
    /// let ride = drive.ride_urban(UrbanFit::Scaled, 2.0);
    /// assert!((ride.time_s - 2.0 * 195.0).abs() < 1e-6);
    /// // Speed over time, integrated: twice the cycle's way, less by the share that speeds are.
    /// let mut cycle_m = 0.0;
    /// for pair in URBAN.windows(2) {
    ///     let mean_m_s = 0.5 * (pair[0].speed_m_s + pair[1].speed_m_s);
    ///     cycle_m += mean_m_s * (pair[1].time_s - pair[0].time_s);
    /// }
    /// let wanted_m = 2.0 * cycle_m * drive.urban_m_s() / URBAN_M_S;
    /// assert!((ride.distance_m / wanted_m - 1.0).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn ride_urban(&self, fit: UrbanFit, rounds: f64) -> Ridden {
        let until = Until::time(195.0 * rounds.max(0.0));
        Trip::on_urban(self, fit, until, Steps::USUAL).whole()
    }
}
