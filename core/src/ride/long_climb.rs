//! A long climb, until something gets hot, and the hill that can be held for ever.

use super::course::{Course, Leg, Manner, Steps, Until};
use super::ridden::RideEnd;
use super::trip::Trip;
use crate::answers::{Drive, Limit, Sag, Steepest};
use crate::math::sqrt;
use crate::physics::gear::PUSH;
use crate::physics::heat::{CONTINUOUS, COOLING, continuous_a};
use crate::physics::motor::{GREATEST_TORQUE, WARM_RESISTANCE};
use crate::physics::road_load::STEEPEST;
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
    /// Temperatures of windings and controller there, °C.
    pub winding_c: f64,
    /// Of the controller's switches, °C.
    pub controller_c: f64,
    /// Charge left, as a share.
    pub end_charge: f64,
    /// Highest speed on the way, m/s.
    pub top_m_s: f64,
}

const MANNER: Manner = Manner { acceleration_m_s2: 1.0, braking_m_s2: 1.0 };

impl Drive {
    /// Climbs at a speed from the rider's start charge, until the windings are
    /// as hot as they may get, the controller holds back, or the pack or the
    /// push gives out.
    #[must_use]
    pub fn long_climb(&self, grade: f64, speed_m_s: f64) -> LongClimb {
        let b = &self.build;
        let (winding, controller) = (b.motor.winding_limit_c, b.controller.cutback_start_c);
        let mut hot = None;
        let leg = Leg { length_m: 1e9, grade, cruise_m_s: speed_m_s, rest_s: None };
        let steps = Steps { steady_s: 2.0, ..Steps::USUAL };
        let legs = [leg];
        let start = b.ride.start_charge;
        let mut trip = Trip::new(self, Course::Legs(&legs), MANNER, Until::EMPTY, start, steps);
        let mut goes_on = true;
        while goes_on && hot.is_none() {
            goes_on = trip.advance(1);
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
        let omega = self.motor_rad_s(speed_m_s);
        let iron_w = self.iron_n_m(omega, w) * omega;
        let outer = w.apply(&COOLING, [m.case_k_per_w, speed_m_s]);
        let winding = w.apply(&WARM_RESISTANCE, [m.resistance_ll_ohm, m.winding_limit_c]);
        let copper = c.convention.copper().of([1.0, 1.0]) * winding.max(1e-9);
        let air_c = self.build.place.air_c;
        let balance = [m.winding_limit_c, air_c, iron_w, m.winding_k_per_w, outer, copper];
        continuous_a(w.apply(&CONTINUOUS, balance))
    }

    /// The current of each motor, A, at which the controller never holds back.
    fn cool_controller_a(&self, bus_v: f64) -> f64 {
        let c = &self.build.controller;
        let allowed_w = (c.cutback_start_c - self.build.place.air_c) / c.heat_sink_k_per_w;
        let each_w = allowed_w / self.motors - c.idle_w;
        let square = c.convention.switch_factor() * c.switch_ohm;
        let linear = c.switching_share * bus_v;
        if each_w <= 0.0 {
            return 0.0;
        }
        let root = linear + sqrt(linear * linear + 4.0 * square * each_w);
        if root > 0.0 { 2.0 * each_w / root } else { f64::INFINITY }
    }

    /// The steepest hill that can be held at a speed for ever, but for the
    /// charge: a half-full pack in a steady ride, windings and controller warm
    /// and no warmer than they may get.
    #[must_use]
    pub fn steepest_for_ever(&self, speed_m_s: f64) -> Steepest {
        self.for_ever_explained(speed_m_s, &mut Working::off())
    }

    fn for_ever_explained(&self, speed_m_s: f64, w: &mut Working) -> Steepest {
        let mut warm = *self;
        warm.set_winding(self.build.motor.winding_limit_c);
        let supply = warm.supply(0.5, Sag::Sustained);
        let most = warm.steepest(&supply, speed_m_s);
        let winding = self.continuous_explained(speed_m_s, w);
        let controller = self.cool_controller_a(supply.open_v);
        let (current, limit) = if winding <= controller {
            (winding, Limit::WindingHot)
        } else {
            (controller, Limit::ControllerHot)
        };
        if !current.is_finite() {
            return most;
        }
        let omega = self.motor_rad_s(speed_m_s);
        let iron = self.iron_n_m(omega, w);
        let torque = w.apply(&GREATEST_TORQUE, [self.torque_per_amp, current, iron]);
        let eff = self.build.belt.efficiency;
        let force = w.apply(&PUSH, [torque, self.ratio, eff, self.motors, self.radius_m]);
        let air = self.air_n(speed_m_s, w);
        let net = w.apply(&crate::physics::road_load::NET, [force, air]);
        let grade = w.apply(&STEEPEST, [net, self.mass_kg, self.rolling]);
        if grade < most.grade { Steepest { grade, speed_m_s, limit } } else { most }
    }
}

/// The working of the hill that the windings hold for ever at a speed.
#[must_use]
pub fn explain_for_ever(build: &crate::build::Build, speed_m_s: f64) -> Vec<Step> {
    let mut w = Working::on();
    let drive = Drive::explained(build, &mut w);
    drive.for_ever_explained(speed_m_s, &mut w);
    w.into_steps()
}
