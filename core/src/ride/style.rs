//! Ways to ride, as figures.

use super::course::{Leg, Manner};
use crate::build::Build;
use serde::Serialize;

/// A way to ride.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Style {
    /// The rider's cruising speed all the way.
    Steady,
    /// An easy round with a few stops.
    Easy,
    /// Town: stop and go.
    Town,
    /// Up and down hills.
    Hills,
    /// Everything that the board gives.
    Flatout,
    /// As the rider's own rows say.
    Own,
}

/// A way to ride, as figures. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct StyleFigures {
    /// Speed wished between stops, m/s.
    pub cruise_m_s: f64,
    /// Stops for each metre, 1/m; 0 for none.
    pub stops_per_m: f64,
    /// Acceleration and braking, m/s².
    pub acceleration_m_s2: f64,
    /// Height climbed for each metre, m/m, and come down again; 0 on the flat.
    pub climb_per_m: f64,
    /// Rest at each stop, s.
    pub rest_s: f64,
}

const fn figures(km_h: f64, stops: f64, rate: f64, climb: f64, rest_s: f64) -> StyleFigures {
    StyleFigures {
        cruise_m_s: km_h / 3.6,
        stops_per_m: stops / 1000.0,
        acceleration_m_s2: rate,
        climb_per_m: climb / 1000.0,
        rest_s,
    }
}

/// Distance between two crests where nobody stops, m.
const ROUND_M: f64 = 1000.0;
/// A leg without stops or climbs, m: longer than any pack lasts.
const ENDLESS_M: f64 = 1e8;

impl Style {
    /// Every way to ride.
    pub const ALL: [Self; 6] =
        [Self::Steady, Self::Easy, Self::Town, Self::Hills, Self::Flatout, Self::Own];

    /// Its figures.
    #[must_use]
    pub fn figures(self, build: &Build) -> StyleFigures {
        let own = &build.ride;
        match self {
            // km/h, stops for each km, m/s², m climbed for each km, s.
            Self::Steady => {
                StyleFigures { cruise_m_s: own.cruise_m_s, ..figures(0.0, 0.0, 1.0, 0.0, 0.0) }
            }
            Self::Easy => figures(18.0, 0.5, 0.8, 5.0, 20.0),
            Self::Town => figures(20.0, 3.0, 1.5, 3.0, 12.0),
            Self::Hills => figures(18.0, 1.0, 1.2, 40.0, 20.0),
            Self::Flatout => figures(60.0, 1.0, 3.0, 5.0, 10.0),
            Self::Own => StyleFigures {
                cruise_m_s: own.cruise_m_s,
                stops_per_m: own.stops_per_m,
                acceleration_m_s2: own.acceleration_m_s2,
                climb_per_m: own.climb_per_m,
                rest_s: own.rest_s,
            },
        }
    }
}

impl StyleFigures {
    /// One round: up one half of the way to the next stop, down the other.
    #[must_use]
    pub fn legs(&self) -> [Leg; 2] {
        let stops = self.stops_per_m > 1e-6;
        let length_m = 0.5
            * match self.climb_per_m {
                _ if stops => 1.0 / self.stops_per_m,
                0.0 => ENDLESS_M,
                _ => ROUND_M,
            };
        let up = Leg {
            length_m,
            grade: 2.0 * self.climb_per_m,
            cruise_m_s: self.cruise_m_s,
            rest_s: None,
        };
        let rest_s = if stops { Some(self.rest_s) } else { None };
        [up, Leg { grade: -up.grade, rest_s, ..up }]
    }

    /// How speed changes.
    #[must_use]
    pub fn manner(&self) -> Manner {
        let rate = self.acceleration_m_s2;
        Manner { acceleration_m_s2: rate, braking_m_s2: rate }
    }
}
