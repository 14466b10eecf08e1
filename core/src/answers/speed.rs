//! How fast?

use super::drive::{Drive, Sag, Supply};
use super::limit::{Least, Limit};
use super::push::FULL;
use crate::math::root_between;
use crate::parts::Mode;
use crate::physics::gear;
use crate::physics::road_load::Slope;
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// A top speed and what sets it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct TopSpeed {
    /// Speed, m/s; 0 where the board cannot move.
    pub speed_m_s: f64,
    /// What binds there.
    pub limit: Limit,
}

/// How fast?
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Speed {
    /// On the flat with a full pack.
    pub flat_full: TopSpeed,
    /// On the flat with a pack nearly empty, after a steady ride.
    pub flat_low: TopSpeed,
    /// On the rider's own slope with a full pack.
    pub on_grade: TopSpeed,
    /// In each ride mode, on the flat with a full pack.
    pub modes: [TopSpeed; 3],
    /// Grade, rise over run, from 0.02 to 0.2, and the top speed there with a full pack.
    pub by_grade: Vec<(f64, TopSpeed)>,
}

/// Below this, m/s, the board is said not to move. A judgement of this model's, no source.
const STILL_M_S: f64 = 0.02;

impl Drive {
    /// Top speed on a slope, of any grade, for a supply and a ride mode: where the push equals the
    /// road load, or where volts, electrical speed or the mode end it.
    ///
    /// ```
    /// use pitchline_core::physics::road_load::Slope;
    /// use pitchline_core::{Build, Draft, Drive, Mode, Sag, Slot};
    ///
    /// let full_throttle = Mode { current_share: 1.0, speed_cap_m_s: None };
    /// let top = |teeth: f64| {
    ///     let mut draft = Draft::typical();
    ///     draft.set(Slot::WheelPulley, "teeth", teeth);
    ///     let drive = Drive::new(&Build::check(&draft).unwrap());
    ///     let full = drive.supply(1.0, Sag::Burst);
    ///     let v = drive.top_speed(&full, &full_throttle, Slope::FLAT).speed_m_s;
    ///     // Push and road load are equal there.
    ///     let push_n = drive.push(&full, &full_throttle, v, Slope::FLAT).force_n;
    ///     assert!((push_n / drive.load_n(v, Slope::FLAT) - 1.0).abs() < 1e-4);
    ///     v
    /// };
    /// // More teeth on the wheel pulley: less speed.
    /// assert!(top(46.0) < top(36.0));
    /// ```
    #[must_use]
    pub fn top_speed(&self, supply: &Supply, mode: &Mode, slope: Slope) -> TopSpeed {
        self.top_speed_explained(supply, mode, slope, &mut Working::off())
    }

    pub(crate) fn top_speed_explained(
        &self,
        supply: &Supply,
        mode: &Mode,
        slope: Slope,
        w: &mut Working,
    ) -> TopSpeed {
        let (c, m) = (&self.build.controller, &self.build.motor);
        // A quiet run tells whether an end of the range is to be shown.
        let shown = w.is_on().then(|| self.top_speed(supply, mode, slope).limit);
        let mut end = Least::new(shown, w);
        let (radius, ratio) = (self.radius_m, self.ratio);
        end.offer(
            Limit::Voltage,
            gear::UnloadedSpeed {
                duty: c.max_duty,
                open: supply.open_v,
                kv: m.kv_rpm_per_v,
                radius,
                ratio,
            },
        );
        end.offer(
            Limit::ElectricalSpeed,
            gear::CountedSpeed { erpm: c.erpm_limit, pairs: m.pole_pairs, radius, ratio },
        );
        if let Some(cap) = mode.speed_cap_m_s {
            end.offer(Limit::ModeSpeed, gear::CappedSpeed { cap });
        }
        let push = |v: f64| self.push(supply, mode, v, slope);
        let spare = |v: f64| push(v).force_n - self.load_n(v, slope);
        let end_n = spare(end.value);
        if end_n >= 0.0 {
            return TopSpeed { speed_m_s: end.value, limit: end.limit };
        }
        let still_n = spare(STILL_M_S);
        if still_n <= 0.0 {
            return TopSpeed { speed_m_s: 0.0, limit: push(STILL_M_S).limit };
        }
        let speed_m_s = root_between([(STILL_M_S, still_n), (end.value, end_n)], 1e-10, spare);
        TopSpeed { speed_m_s, limit: push(speed_m_s).limit }
    }
}

pub(crate) fn answer(drive: &Drive) -> Speed {
    let ride = &drive.build.ride;
    let full = drive.supply(1.0, Sag::Burst);
    let low = drive.supply(ride.low_charge, Sag::Sustained);
    let modes = &drive.build.modes;
    let on = |grade: f64| drive.top_speed(&full, &FULL, Slope::of_grade(grade));
    Speed {
        flat_full: on(0.0),
        flat_low: drive.top_speed(&low, &FULL, Slope::FLAT),
        on_grade: on(ride.grade),
        modes: modes.map(|mode| drive.top_speed(&full, &mode, Slope::FLAT)),
        by_grade: [0.02, 0.05, 0.08, 0.12, 0.16, 0.20].map(|grade| (grade, on(grade))).into(),
    }
}
