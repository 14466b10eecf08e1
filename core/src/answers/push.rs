//! The push that the board can give at a speed, and the limit that binds there.

use super::climb::{CRAWL_M_S, Steepest};
use super::drive::{Copper, Drive, Sag, Supply};
use super::limit::{Least, Limit};
use super::speed::Speed;
use crate::math::root_between;
use crate::parts::Mode;
use crate::physics::road_load::{GripForce, Slope};
use crate::physics::{battery, gear, motor};
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// The greatest push at one speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Push {
    /// Force at the road, N; negative when the motors drag.
    pub force_n: f64,
    /// Current of each motor, A, in the controller's convention.
    pub motor_current_a: f64,
    /// What binds.
    pub limit: Limit,
}

impl Drive {
    /// The greatest push at a speed, m/s, of 0 or more, for a supply, a ride mode and any slope.
    ///
    /// ```
    /// use pitchline_core::physics::road_load::Slope;
    /// use pitchline_core::{Build, Draft, Drive, Limit, Mode, Sag, Slot};
    ///
    /// let full_throttle = Mode { current_share: 1.0, speed_cap_m_s: None };
    /// let push = |teeth: f64| {
    ///     let mut draft = Draft::typical();
    ///     draft.set(Slot::WheelPulley, "teeth", teeth);
    ///     let drive = Drive::new(&Build::check(&draft).unwrap());
    ///     drive.push(&drive.supply(1.0, Sag::Burst), &full_throttle, 0.0, Slope::FLAT)
    /// };
    /// let found = push(36.0);
    /// assert_eq!((found.limit, found.motor_current_a), (Limit::ControllerMotorCurrent, 60.0));
    /// // At rest the push grows with the teeth of the wheel pulley.
    /// assert!((push(46.0).force_n / found.force_n - 46.0 / 36.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn push(&self, supply: &Supply, mode: &Mode, speed_m_s: f64, slope: Slope) -> Push {
        self.push_explained(supply, mode, speed_m_s, slope, &mut Working::off())
    }

    pub(crate) fn push_explained(
        &self,
        supply: &Supply,
        mode: &Mode,
        speed_m_s: f64,
        slope: Slope,
        w: &mut Working,
    ) -> Push {
        self.push_at(self.copper, supply, mode, speed_m_s, slope, w)
    }

    /// The same with windings at another temperature.
    pub(crate) fn push_at(
        &self,
        copper: Copper,
        supply: &Supply,
        mode: &Mode,
        speed_m_s: f64,
        slope: Slope,
        w: &mut Working,
    ) -> Push {
        let b = &self.build;
        let omega = w.apply(gear::MotorSpeed {
            ratio: self.ratio,
            speed: speed_m_s,
            radius: self.radius_m,
        });
        let erpm = w.apply(gear::ElectricalRpm { omega, pairs: b.motor.pole_pairs });
        let iron = self.iron_n_m(omega, w);
        // A quiet run tells which limit is to be shown.
        let shown = w.is_on().then(|| {
            self.push_at(copper, supply, mode, speed_m_s, slope, &mut Working::off()).limit
        });
        let mut least = Least::new(shown, w);
        least.offer(
            Limit::ElectricalSpeed,
            motor::SpeedLimit { erpm, most: b.controller.erpm_limit },
        );
        if least.value <= 0.0 {
            return self.push_of(0.0, iron, least.limit, least.w);
        }
        least.offer(Limit::MotorCurrent, motor::MotorLimit { rated: b.motor.max_current_a });
        let share = mode.current_share;
        least.offer(
            Limit::ControllerMotorCurrent,
            motor::ControllerMotorLimit { mode: share, set: b.controller.motor_current_a },
        );
        let held = least.of(Limit::Belt);
        let rated_n =
            if held.is_on() { self.belt_rated_explained(held) } else { self.belt_rated_n };
        let torque = held.apply(gear::BeltTorque {
            pull: rated_n,
            teeth: b.motor_pulley.teeth,
            pitch: b.belt.pitch_m,
        });
        let constant = self.torque_per_amp;
        least.offer(Limit::Belt, motor::HeldCurrent { torque, iron, constant });
        let torque = self.grip_n_m(slope, least.of(Limit::Grip));
        least.offer(Limit::Grip, motor::HeldCurrent { torque, iron, constant });
        let (pack_a, limit) = self.pack_current(supply, share, least.anew());
        let current = self.drawn_a(copper, supply, pack_a, omega, least.of(limit));
        least.take(limit, current);
        let Least { value: most, limit, w, .. } = least;
        // Quiet ones in place: a root asks for many.
        let off = Working::off;
        let spare = |current: f64| self.spare_volts(copper, supply, omega, current, &mut off());
        let spare_v = spare(most);
        if spare_v >= 0.0 {
            return self.push_of(most, iron, limit, w);
        }
        let still_v = spare(0.0);
        let ends = [(0.0, still_v), (most, spare_v)];
        let current = if still_v <= 0.0 { 0.0 } else { root_between(ends, 1e-9, spare) };
        if w.is_on() {
            self.spare_volts(copper, supply, omega, current, w);
        }
        self.push_of(current, iron, Limit::Voltage, w)
    }

    fn push_of(&self, current: f64, iron: f64, limit: Limit, w: &mut Working) -> Push {
        let torque =
            w.apply(motor::GreatestTorque { constant: self.torque_per_amp, current, iron });
        let efficiency = self.build.belt.efficiency;
        let force_n = w.apply(gear::PushForce {
            torque,
            ratio: self.ratio,
            efficiency,
            motors: self.motors,
            radius: self.radius_m,
        });
        Push { force_n, motor_current_a: current, limit }
    }

    /// Torque of each motor at the push that the driven wheels hold, N·m. The
    /// front may lift before that; the rider is taken to lean so that it stays
    /// down: common practice, no source.
    pub(crate) fn grip_n_m(&self, slope: Slope, w: &mut Working) -> f64 {
        let b = &self.build;
        let (height, base) = (b.rider.centre_height_m, b.deck.wheelbase_m);
        let force = w.apply(GripForce {
            grip: b.place.grip,
            motors: self.motors,
            mass: self.mass_kg,
            cos: slope.cos,
            height,
            base,
        });
        let efficiency = b.belt.efficiency;
        w.apply(gear::GripTorque {
            force,
            radius: self.radius_m,
            ratio: self.ratio,
            efficiency,
            motors: self.motors,
        })
    }

    /// The greatest pack current and what sets it.
    pub(crate) fn pack_current(
        &self,
        supply: &Supply,
        share: f64,
        mut least: Least,
    ) -> (f64, Limit) {
        let (b, c) = (&self.build, &self.build.controller);
        let (open, r) = (supply.open_v, supply.resistance_ohm.max(1e-9));
        let series = b.pack.series;
        let (motors, set) = (self.motors, c.battery_current_a);
        least.offer(
            Limit::ControllerBatteryCurrent,
            battery::ControllerPackLimit { motors, mode: share, set },
        );
        least.offer(Limit::PackProtection, battery::ProtectionLimit { set: b.pack.protection_a });
        least.offer(
            Limit::CellRating,
            battery::CellLimit { parallel: b.pack.parallel, cell: b.cell.max_discharge_a },
        );
        least.offer(Limit::PackPower, battery::PackPowerLimit { open, resistance: r });
        least.offer(
            Limit::CutOff,
            battery::CutOffLimit { open, series, cut: b.pack.cut_off_v, resistance: r },
        );
        least.offer(
            Limit::Cutback,
            battery::CutbackLimit {
                motors,
                mode: share,
                set,
                series,
                start: c.cutback_start_v,
                end: c.cutback_end_v,
                open,
                resistance: r,
            },
        );
        (least.value, least.limit)
    }

    /// Motor current at which the motors together draw `pack_a`.
    fn drawn_a(
        &self,
        copper: Copper,
        supply: &Supply,
        pack_a: f64,
        omega: f64,
        w: &mut Working,
    ) -> f64 {
        let c = &self.build.controller;
        w.apply(motor::DrawnCurrent {
            pack: pack_a,
            open: supply.open_v,
            resistance: supply.resistance_ohm,
            motors: self.motors,
            constant: self.torque_per_amp,
            omega,
            heat: copper.heat_ohm,
            switching: c.switching_share,
            idle: c.idle_w,
        })
    }

    /// Volts left over at a motor current: what the controller can apply less
    /// what the motor asks for.
    #[inline(always)]
    fn spare_volts(
        &self,
        copper: Copper,
        supply: &Supply,
        omega: f64,
        current: f64,
        w: &mut Working,
    ) -> f64 {
        let asked = self.motor_volts(copper, omega, current, &mut Working::off());
        let bus_v = self.bus_v(copper, supply, current, omega).unwrap_or(0.0);
        w.apply(motor::SpareVoltage {
            duty: self.build.controller.max_duty,
            bus: bus_v,
            asked,
            current,
        })
    }
}

/// Push and road load at one speed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct PushPoint {
    /// Speed, m/s.
    pub speed_m_s: f64,
    /// Greatest push of a full pack, N.
    pub push_n: f64,
    /// What binds there.
    pub limit: Limit,
    /// Road load on the flat, N.
    pub flat_n: f64,
    /// Steepest hill that it can hold at this speed, as a share.
    pub grade: f64,
    /// What binds on that hill: grip may there, though not on the flat.
    pub hill_limit: Limit,
}

/// Push and road load over speed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct PushCurve {
    /// From a crawl to beyond the top speed.
    pub points: Vec<PushPoint>,
    /// Grades, as shares, for which `loads` stand beside the flat.
    pub grades: Vec<f64>,
    /// For each grade the road load, N, at each point.
    pub loads: Vec<Vec<f64>>,
}

/// Points in the push curve.
pub(crate) const POINTS: usize = 73;

pub(crate) fn curve(drive: &Drive, speed: &Speed) -> PushCurve {
    let supply = drive.supply(1.0, Sag::Burst);
    let top = (speed.flat_full.speed_m_s * 1.12).max(4.0);
    let step = (top - CRAWL_M_S) / (POINTS - 1) as f64;
    let speeds = (0..POINTS).map(|i| CRAWL_M_S + step * i as f64).collect::<Vec<_>>();
    let points = speeds.iter().map(|&v| {
        let push = drive.push(&supply, &FULL, v, Slope::FLAT);
        let Steepest { grade, limit: hill_limit, .. } = drive.steepest(&supply, v);
        PushPoint {
            speed_m_s: v,
            push_n: push.force_n,
            limit: push.limit,
            flat_n: drive.load_n(v, Slope::FLAT),
            grade,
            hill_limit,
        }
    });
    let points = points.collect();
    let grades = Vec::from([0.10, 0.20]);
    let load = |g: &f64| {
        let slope = Slope::of_grade(*g);
        speeds.iter().map(|&v| drive.load_n(v, slope)).collect()
    };
    let loads = grades.iter().map(load).collect();
    PushCurve { points, grades, loads }
}

/// No ride mode: everything that the parts can give.
pub(crate) const FULL: Mode = Mode { current_share: 1.0, speed_cap_m_s: None };
