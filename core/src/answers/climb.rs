//! How steep?

use super::drive::{Drive, Sag, Supply};
use super::limit::Limit;
use super::push::{FULL, Push};
use crate::math::root;
use crate::physics::road_load::{NetForce, Slope, SteepestGrade};
use crate::working::Working;
use serde::Serialize;

/// A crawl: 2 km/h.
pub(crate) const CRAWL_M_S: f64 = 2.0 / 3.6;
/// The slow climb by which boards are compared, m/s: 10 km/h. A convention of this model's.
pub const SLOW_M_S: f64 = 10.0 / 3.6;
/// A brisk climb: 20 km/h.
pub(crate) const BRISK_M_S: f64 = 20.0 / 3.6;

/// The steepest hill that can be held at a speed, and what sets it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Steepest {
    /// Rise over run, from -1 to 1; negative where the speed cannot be held on the flat.
    pub grade: f64,
    /// The speed, m/s.
    pub speed_m_s: f64,
    /// What binds there.
    pub limit: Limit,
}

/// How steep?
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Climb {
    /// At a crawl, 2 km/h.
    pub crawl: Steepest,
    /// At 10 km/h.
    pub slow: Steepest,
    /// At 20 km/h.
    pub brisk: Steepest,
    /// At 10 km/h with a pack nearly empty, after a steady ride.
    pub slow_low: Steepest,
}

impl Drive {
    /// The steepest hill that a supply can hold at a speed, m/s, of 0 or more.
    ///
    /// ```
    /// use pitchline_core::physics::road_load::Slope;
    /// use pitchline_core::{Build, Draft, Drive, SLOW_M_S, Sag, Slot};
    ///
    /// let mut draft = Draft::typical();
    /// let drive = Drive::new(&Build::check(&draft).unwrap());
    /// let found = drive.steepest(&drive.supply(1.0, Sag::Burst), SLOW_M_S);
    /// // Rolling resistance and the hill, by hand, take what push there is: 2 motors of 60 A peak at
    /// // √3/2 · 60 / (2π 190) N·m for each, geared 2.25 to 1 at 95 %, on a radius of 47.5 mm, less
    /// // what iron and bearings take.
    /// let most_n = 2.0 * 60.0 * 0.043_53 * 2.25 * 0.95 / 0.0475;
    /// let hill_n = drive.build.mass_kg() * 9.806_65 * Slope::of_grade(found.grade).sin;
    /// assert!(hill_n > 0.8 * most_n && hill_n < most_n);
    ///
    /// // More teeth on the wheel pulley: steeper.
    /// draft.set(Slot::WheelPulley, "teeth", 46.0);
    /// let low = Drive::new(&Build::check(&draft).unwrap());
    /// assert!(low.steepest(&low.supply(1.0, Sag::Burst), SLOW_M_S).grade > found.grade);
    /// ```
    #[must_use]
    pub fn steepest(&self, supply: &Supply, speed_m_s: f64) -> Steepest {
        self.steepest_explained(supply, speed_m_s, &mut Working::off())
    }

    pub(crate) fn steepest_explained(
        &self,
        supply: &Supply,
        speed_m_s: f64,
        w: &mut Working,
    ) -> Steepest {
        let air = self.air_n(speed_m_s, w);
        let push_on = |grade: f64, w: &mut Working| {
            self.push_explained(supply, &FULL, speed_m_s, Slope::of_grade(grade), w)
        };
        let held = |push: &Push, w: &mut Working| {
            let net = w.apply(NetForce { push: push.force_n, air });
            w.apply(SteepestGrade { net, mass: self.mass_kg, rolling: self.rolling })
        };
        let quiet = &mut Working::off();
        let mut on = 0.0;
        let most = held(&push_on(on, quiet), quiet);
        // Grip falls with the cosine of the hill that it is to hold, so it may
        // bind there though it does not on the flat.
        if push_on(most, quiet).limit == Limit::Grip {
            let least = if most > 0.0 { 0.0 } else { -1.0 };
            on = root(least, most, 1e-12, |grade| held(&push_on(grade, quiet), quiet) - grade);
        }
        let push = push_on(on, w);
        Steepest { grade: held(&push, w), speed_m_s, limit: push.limit }
    }
}

pub(crate) fn answer(drive: &Drive) -> Climb {
    let full = drive.supply(1.0, Sag::Burst);
    let low = drive.supply(drive.build.ride.low_charge, Sag::Sustained);
    Climb {
        crawl: drive.steepest(&full, CRAWL_M_S),
        slow: drive.steepest(&full, SLOW_M_S),
        brisk: drive.steepest(&full, BRISK_M_S),
        slow_low: drive.steepest(&low, SLOW_M_S),
    }
}
