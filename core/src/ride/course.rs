//! What is to be ridden: legs of a course, or a speed over time.

use serde::Serialize;

/// A stretch of a course.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Leg {
    /// Length, m.
    pub length_m: f64,
    /// Rise over run.
    pub grade: f64,
    /// Speed wished, m/s.
    pub cruise_m_s: f64,
    /// Rest at its end, s; none where the board rolls on.
    pub rest_s: Option<f64>,
}

/// How fast the rider changes speed, m/s².
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Manner {
    /// Speeding up, m/s².
    pub acceleration_m_s2: f64,
    /// Slowing down, m/s².
    pub braking_m_s2: f64,
}

/// A speed wished at a time; between two of them it changes evenly.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct TracePoint {
    /// Time since the start, s.
    pub time_s: f64,
    /// Speed, m/s.
    pub speed_m_s: f64,
}

/// What is to be ridden.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Course<'a> {
    /// Legs, over and over.
    Legs(&'a [Leg]),
    /// A speed over time on the flat, over and over.
    Trace(&'a [TracePoint]),
}

impl Course<'_> {
    /// The highest speed that it asks for, m/s.
    #[must_use]
    pub fn wish_m_s(&self) -> f64 {
        let most = |most: f64, speed_m_s: f64| most.max(speed_m_s);
        match self {
            Self::Legs(legs) => legs.iter().map(|leg| leg.cruise_m_s).fold(0.0, most),
            Self::Trace(points) => points.iter().map(|point| point.speed_m_s).fold(0.0, most),
        }
    }
}

/// Where a ride is to end, if the pack does not end it before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Until {
    /// Distance, m.
    pub distance_m: f64,
    /// Time, s.
    pub time_s: f64,
}

impl Until {
    /// The pack is empty, or a day has passed.
    pub const EMPTY: Self = Self { distance_m: f64::INFINITY, time_s: DAY_S };

    /// Whether only the board ends the ride.
    pub(super) fn is_open(&self) -> bool {
        self.distance_m.is_infinite() && self.time_s >= DAY_S
    }

    /// A time has passed.
    #[must_use]
    pub const fn time(time_s: f64) -> Self {
        Self { distance_m: f64::INFINITY, time_s }
    }

    /// A distance is made, or a day has passed.
    #[must_use]
    pub const fn distance(distance_m: f64) -> Self {
        Self { distance_m, time_s: DAY_S }
    }
}

/// No ride is followed for longer, s.
const DAY_S: f64 = 86_400.0;

/// How fine a ride is cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steps {
    /// Longest step while speed changes, s.
    pub changing_s: f64,
    /// Fewest steps from rest to the speed wished for, and back: a count of 1 or more.
    pub changing: f64,
    /// First step while speed does not change, s.
    pub steady_s: f64,
    /// How many times as long such a step becomes while hardly anything changes: 1 or more.
    pub steady_growth: f64,
}

impl Steps {
    /// Those of every answer: halving them moves no total by more than 0.1 %.
    pub const USUAL: Self =
        Self { changing_s: 0.5, changing: 6.0, steady_s: 5.0, steady_growth: 64.0 };

    /// Half as long.
    #[must_use]
    pub const fn halved(self) -> Self {
        Self {
            changing_s: 0.5 * self.changing_s,
            changing: 2.0 * self.changing,
            steady_s: 0.5 * self.steady_s,
            ..self
        }
    }
}
