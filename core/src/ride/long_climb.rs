//! A long climb, until something gets hot, and the hill that can be held for ever.

use super::course::{Course, Leg, Manner, Steps, Until};
use super::ridden::RideEnd;
use super::trip::Trip;
use crate::answers::{Drive, Limit, Sag, Steepest, steepest};
use crate::build::Build;
use crate::math::sqrt;
use crate::physics::gear::{MotorSpeed, PushForce};
use crate::physics::heat::{
    ContinuousCurrentSquared, CoolChannel, Cooling, CopperResistance, HeldByController,
    HeldByWindings, IronHeat,
};
use crate::physics::motor::{GreatestTorque, WarmResistance};
use crate::physics::road_load::{NetForce, SteepestGrade};
use crate::working::{Step, Working};
use alloc::vec::Vec;
use serde::Serialize;

/// A long climb at one speed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LongClimb {
    /// Rise over run.
    pub grade: f64,
    /// Speed wished for, m/s.
    pub speed_m_s: f64,
    /// What ends it; [`Limit::Empty`] stands for the pack.
    pub limit: Limit,
    /// Distance, m.
    pub distance_m: f64,
    /// Height, m.
    pub height_m: f64,
    /// Time, s.
    pub time_s: f64,
    /// Temperature of the windings there, °C.
    pub winding_c: f64,
    /// Temperature of the controller's switches there, °C.
    pub controller_c: f64,
    /// Charge left, as a share.
    pub end_charge: f64,
    /// Highest speed on the way, m/s.
    pub top_m_s: f64,
}

const MANNER: Manner = Manner { acceleration_m_s2: 1.0, braking_m_s2: 1.0 };

impl Drive {
    /// Climbs a grade, rise over run, at a speed, m/s, above 0, from the rider's start charge, until the windings are
    /// as hot as they may get, the controller holds back, or the pack or the
    /// push gives out.
    ///
    /// ```
    /// use pitchline_core::{Build, Draft, Drive, SLOW_M_S};
    ///
    /// let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
    /// let found = drive.long_climb(0.10, SLOW_M_S);
    /// // 10 % is a rise of 1 in √(1 + 10²) along the road.
    /// assert!((found.height_m / found.distance_m - 1.0 / 101.0_f64.sqrt()).abs() < 1e-9);
    /// // No higher than all that 10 in series of 9 Ah hold would lift it, at 4.2 V each.
    /// let lifts_m = 10.0 * 9.0 * 4.2 * 3600.0 / (drive.build.mass_kg() * 9.806_65);
    /// assert!(found.height_m > 0.0 && found.height_m < lifts_m);
    /// assert!(drive.long_climb(0.16, SLOW_M_S).height_m < found.height_m);
    /// ```
    #[must_use]
    pub fn long_climb(&self, grade: f64, speed_m_s: f64) -> LongClimb {
        let b = &self.build;
        let (winding, controller) = (b.winding_held_c(), b.controller.cutback_start_c);
        let mut hot = None;
        let leg = Leg { length_m: 1e9, grade, cruise_m_s: speed_m_s, rest_s: None };
        let steps = Steps { steady_s: 2.0, steady_growth: 1.0, ..Steps::USUAL };
        let legs = [leg];
        let start = b.ride.start_charge;
        let mut trip = Trip::new(self, Course::Legs(&legs), MANNER, Until::EMPTY, start, steps);
        let mut goes_on = true;
        while goes_on && hot.is_none() {
            goes_on = trip.advance(1) && !trip.sagged();
            let now = trip.now();
            if now.winding_c >= winding {
                hot = Some(Limit::WindingHot);
            } else if now.controller_c >= controller {
                hot = Some(Limit::ControllerHot);
            }
        }
        let ride = trip.finish();
        let limit = match (hot, ride.end) {
            (Some(limit), _) => limit,
            (None, RideEnd::Stalled) => ride.stopped.map_or(Limit::Empty, |met| met.limit),
            (None, _) => Limit::Empty,
        };
        LongClimb {
            grade,
            speed_m_s,
            limit,
            distance_m: ride.distance_m,
            height_m: ride.distance_m * grade / sqrt(1.0 + grade * grade),
            time_s: ride.time_s,
            winding_c: ride.hottest.winding_c,
            controller_c: ride.hottest.controller_c,
            end_charge: ride.end_charge,
            top_m_s: ride.top_m_s,
        }
    }

    /// The current of each motor, A, that its windings hold for ever at a speed.
    #[must_use]
    pub fn continuous_a(&self, speed_m_s: f64) -> f64 {
        self.continuous_explained(speed_m_s, &mut Working::off())
    }

    fn continuous_explained(&self, speed_m_s: f64, w: &mut Working) -> f64 {
        let (m, c) = (&self.build.motor, &self.build.controller);
        let omega =
            w.apply(MotorSpeed { ratio: self.ratio, speed: speed_m_s, radius: self.radius_m });
        let iron = self.iron_n_m(omega, w);
        let iron_w = w.apply(IronHeat { iron, omega });
        let outer = w.apply(Cooling { still: m.case_k_per_w, speed: speed_m_s });
        let most_c = self.build.winding_held_c();
        let winding = WarmResistance { cold: m.resistance_ll_ohm, celsius: most_c }.value();
        let copper = w.apply(CopperResistance { copper: c.convention.copper_factor(), winding });
        let air_c = self.build.place.air_c;
        let squared = w.apply(ContinuousCurrentSquared {
            most: most_c,
            air: air_c,
            iron: iron_w,
            inner: m.winding_k_per_w,
            outer,
            copper,
        });
        w.apply(HeldByWindings { squared })
    }

    /// The current of each motor, A, at which the controller never holds back.
    pub(crate) fn cool_controller_a(&self, open_v: f64, w: &mut Working) -> f64 {
        let c = &self.build.controller;
        let air_c = self.build.place.air_c;
        let cool = w.apply(CoolChannel {
            hot: c.cutback_start_c,
            air: air_c,
            sink: c.heat_sink_k_per_w,
            motors: self.motors,
            idle: c.idle_w,
        });
        let on = c.convention.switch_factor();
        w.apply(HeldByController {
            cool,
            switching: c.switching_share,
            open: open_v,
            on,
            switch: c.switch_ohm,
        })
    }

    /// The hill that a current of each motor, A, climbs at a speed.
    fn grade_at(&self, current_a: f64, speed_m_s: f64, iron: f64, w: &mut Working) -> f64 {
        let torque =
            w.apply(GreatestTorque { constant: self.torque_per_amp, current: current_a, iron });
        let eff = self.build.belt.efficiency;
        let force = w.apply(PushForce {
            torque,
            ratio: self.ratio,
            efficiency: eff,
            motors: self.motors,
            radius: self.radius_m,
        });
        let air = self.air_n(speed_m_s, w);
        let net = w.apply(NetForce { push: force, air });
        w.apply(SteepestGrade { net, mass: self.mass_kg, rolling: self.rolling })
    }

    /// The steepest hill that can be held at a speed, m/s, for ever, but for the
    /// charge: a half-full pack in a steady ride, windings and controller warm
    /// and no warmer than they may get.
    #[must_use]
    pub fn steepest_for_ever(&self, speed_m_s: f64) -> Steepest {
        let mut warm = *self;
        warm.copper = self.copper_at(self.build.winding_held_c());
        let off = &mut Working::off();
        let supply = warm.supply(HALF, Sag::Sustained);
        let most = warm.steepest(&supply, speed_m_s);
        let winding = self.continuous_explained(speed_m_s, off);
        let controller = self.cool_controller_a(supply.open_v, off);
        let (current, limit) = if winding <= controller {
            (winding, Limit::WindingHot)
        } else {
            (controller, Limit::ControllerHot)
        };
        if !current.is_finite() {
            return most;
        }
        let iron = self.iron_n_m(self.motor_rad_s(speed_m_s), off);
        let grade = self.grade_at(current, speed_m_s, iron, off);
        if grade < most.grade { Steepest { grade, speed_m_s, limit } } else { most }
    }
}

/// Charge for what is held for ever.
const HALF: f64 = 0.5;

/// The working of the hill that is held for ever at a speed, m/s: of the windings,
/// the controller or the push, whichever holds least.
#[must_use]
pub fn explain_for_ever(build: &Build, speed_m_s: f64) -> Vec<Step> {
    let mut hot = *build;
    hot.ride.winding_c = build.winding_held_c();
    let mut w = Working::on();
    let drive = Drive::explained(&hot, &mut w);
    let current = match drive.steepest_for_ever(speed_m_s).limit {
        Limit::WindingHot => drive.continuous_explained(speed_m_s, &mut w),
        Limit::ControllerHot => {
            let supply = drive.supply_explained(HALF, Sag::Sustained, &mut w);
            let omega = w.apply(MotorSpeed {
                ratio: drive.ratio,
                speed: speed_m_s,
                radius: drive.radius_m,
            });
            drive.iron_n_m(omega, &mut w);
            drive.cool_controller_a(supply.open_v, &mut w)
        }
        _ => {
            steepest(&drive, HALF, Sag::Sustained, speed_m_s, &mut w);
            return w.into_steps();
        }
    };
    let omega = drive.motor_rad_s(speed_m_s);
    let iron = drive.iron_n_m(omega, &mut Working::off());
    drive.grade_at(current, speed_m_s, iron, &mut w);
    w.into_steps()
}
