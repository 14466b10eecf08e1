//! Whether the motors alone hold a speed downhill.

use super::journey::Journey;
use crate::answers::{Drive, Limit};
use crate::math::share;
use crate::physics::road_load::Slope;
use serde::Serialize;

/// A steady speed downhill, held by the motors alone.
///
/// Judged over the first ten seconds, the time over which a ride judges whether a speed is
/// held: the pack starts rested, and its voltage may not pass the one at which its protection
/// ends charging. A pack that is full takes in little and a longer descent fills it further, so
/// a hill that is held here is no promise for a longer one.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Descent {
    /// Rise over run of the hill that is ridden down; positive.
    pub grade: f64,
    /// The speed, m/s.
    pub speed_m_s: f64,
    /// Charge of the pack, as a share.
    pub charge: f64,
    /// Braking force at the road that the speed takes, N; 0 where the board does not roll by
    /// itself.
    pub needed_n: f64,
    /// The most that the motors brake with at the road, N, their own drag with it.
    pub brake_n: f64,
    /// What keeps them from braking harder.
    pub limit: Limit,
    /// Whether the speed is held: the motors brake with what it takes, or more.
    pub held: bool,
}

impl Drive {
    /// Whether the motors alone hold a speed down a hill.
    ///
    /// The grade is positive for a hill ridden down; the charge is taken as a share between 0
    /// and 1.
    ///
    /// ```
    /// use pitchline_core::{Build, Draft, Drive, Limit, SLOW_M_S};
    ///
    /// let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
    /// // A steep hill that half a pack holds: a full one takes too little back.
    /// let half = drive.descent(0.18, SLOW_M_S, 0.5);
    /// let full = drive.descent(0.18, SLOW_M_S, 1.0);
    /// assert!(half.held && !full.held);
    /// assert_eq!(full.limit, Limit::OverVoltage);
    /// ```
    #[must_use]
    pub fn descent(&self, grade: f64, speed_m_s: f64, charge: f64) -> Descent {
        let charge = share(charge);
        let mut journey = Journey::new(self, charge);
        journey.set_warm(self.build.ride.winding_c);
        let supply = journey.supply(&journey.hold);
        let slope = Slope::of_grade(-grade);
        let brake = journey.drive.brake(&supply, speed_m_s, slope);
        let brake_n = -journey.drive.braked_n(brake.current_a, speed_m_s);
        let needed_n = (-self.load_n(speed_m_s, slope)).max(0.0);
        Descent {
            grade,
            speed_m_s,
            charge,
            needed_n,
            brake_n,
            limit: brake.limit,
            held: brake_n >= needed_n,
        }
    }
}
