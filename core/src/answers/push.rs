//! The push that the board can give at a speed, and the limit that binds there.

use super::climb::CRAWL_M_S;
use super::drive::{Drive, Sag, Supply};
use super::speed::Speed;
use crate::math::{PI, root, sqrt};
use crate::parts::Mode;
use crate::physics::air::G;
use crate::physics::gear;
use crate::physics::road_load::{STEEPEST, Slope};
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// What holds the push, or the ride, back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Limit {
    /// The controller's motor current limit.
    ControllerMotorCurrent,
    /// The motor's own current rating.
    MotorCurrent,
    /// The controller's battery current limit.
    ControllerBatteryCurrent,
    /// The pack's protection circuit.
    PackProtection,
    /// The cells' discharge rating.
    CellRating,
    /// The most power that the pack's resistance lets through.
    PackPower,
    /// The controller holds back because the pack is low.
    Cutback,
    /// The pack would disconnect.
    CutOff,
    /// The motor's back-EMF meets the voltage there is.
    Voltage,
    /// The controller's electrical speed limit.
    ElectricalSpeed,
    /// The belt's rating.
    Belt,
    /// The grip of the driven wheels.
    Grip,
    /// The ride mode's speed cap.
    ModeSpeed,
    /// Nothing: the charge is used up.
    Empty,
}

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

/// The smallest of what was offered so far, and who offered it.
struct Least {
    value: f64,
    limit: Limit,
}

impl Least {
    fn offer(&mut self, value: f64, limit: Limit) {
        if value < self.value {
            *self = Self { value, limit };
        }
    }
}

impl Drive {
    /// The greatest push at a speed, for a supply, a ride mode and a slope.
    #[must_use]
    pub fn push(&self, supply: &Supply, mode: &Mode, speed_m_s: f64, slope: Slope) -> Push {
        let (b, n) = (&self.build, self.motors);
        let omega = self.motor_rad_s(speed_m_s);
        let iron = self.iron_n_m(omega, &mut Working::off());
        if gear::ERPM.of([omega, b.motor.pole_pairs]) > b.controller.erpm_limit {
            return self.push_of(0.0, iron, Limit::ElectricalSpeed);
        }
        let share = mode.current_share;
        let mut least = Least { value: b.motor.max_current_a, limit: Limit::MotorCurrent };
        least.offer(b.controller.motor_current_a * share, Limit::ControllerMotorCurrent);
        let for_torque = |torque: f64| (torque + iron) / self.torque_per_amp;
        // The pull times the motor pulley's pitch radius.
        let belt = b.belt.rating_n_per_m * b.belt.width_m * b.motor_pulley.teeth * b.belt.pitch_m
            / (2.0 * PI);
        least.offer(for_torque(belt), Limit::Belt);
        let grip = gear::SHAFT_TORQUE.of([
            self.grip_n(slope),
            self.radius_m,
            self.ratio,
            b.belt.efficiency,
            n,
        ]);
        least.offer(for_torque(grip), Limit::Grip);
        let pack = self.pack_current(supply, share);
        least.offer(self.motor_current_for(supply, pack.value, omega), pack.limit);
        let most = least.value.max(0.0);
        if self.spare_volts(supply, omega, most) >= 0.0 {
            return self.push_of(most, iron, least.limit);
        }
        let current = if self.spare_volts(supply, omega, 0.0) <= 0.0 {
            0.0
        } else {
            root(0.0, most, 1e-9, |current| self.spare_volts(supply, omega, current))
        };
        self.push_of(current, iron, Limit::Voltage)
    }

    fn push_of(&self, current: f64, iron: f64, limit: Limit) -> Push {
        let torque = self.torque_per_amp * current - iron;
        let eff = self.build.belt.efficiency;
        // A motor that drags is driven through the belt from the road.
        let eff = if torque >= 0.0 { eff } else { 1.0 / eff };
        let force_n = gear::PUSH.of([torque, self.ratio, eff, self.motors, self.radius_m]);
        Push { force_n, motor_current_a: current, limit }
    }

    /// What the driven wheels can push with, N: half the weight stands on the
    /// rear axle, more when pushing, and each motor drives one of its wheels.
    fn grip_n(&self, slope: Slope) -> f64 {
        let (place, b) = (&self.build.place, &self.build);
        let weight = self.mass_kg * G * slope.cos;
        let grip = place.grip * (self.motors / 2.0).min(1.0);
        let lever = grip * b.rider.centre_height_m / b.deck.wheelbase_m;
        // Beyond this the front wheels lift and the rear axle carries it all.
        let all = grip * weight;
        if lever >= 1.0 { all } else { all.min(grip * weight * 0.5 / (1.0 - lever)) }
    }

    /// The greatest pack current and what sets it.
    fn pack_current(&self, supply: &Supply, share: f64) -> Least {
        let (b, r) = (&self.build, supply.resistance_ohm.max(1e-9));
        let series = b.pack.series;
        let controller = b.controller.battery_current_a * self.motors * share;
        let mut least = Least { value: controller, limit: Limit::ControllerBatteryCurrent };
        least.offer(b.pack.protection_a, Limit::PackProtection);
        least.offer(b.cell.max_discharge_a * b.pack.parallel, Limit::CellRating);
        least.offer(supply.open_v / (2.0 * r), Limit::PackPower);
        least.offer((supply.open_v - series * b.pack.cut_off_v) / r, Limit::CutOff);
        // The controller's limit falls in a line with the sagged voltage; where
        // the line and the sag cross is where it settles.
        let end = series * b.controller.cutback_end_v;
        let span = (series * b.controller.cutback_start_v - end).max(0.01 * series);
        let slope = controller / span;
        least.offer(slope * (supply.open_v - end) / (1.0 + slope * r), Limit::Cutback);
        least
    }

    /// Motor current at which the motors together draw `pack_a`.
    fn motor_current_for(&self, supply: &Supply, pack_a: f64, omega: f64) -> f64 {
        if pack_a <= 0.0 {
            return 0.0;
        }
        let bus_v = supply.open_v - pack_a * supply.resistance_ohm;
        let (copper, switch) = self.heat_per_square_amp();
        let a = copper + switch;
        let b = self.torque_per_amp * omega + self.build.controller.switching_share * bus_v;
        let c = self.build.controller.idle_w - pack_a * bus_v / self.motors;
        if c >= 0.0 {
            return 0.0;
        }
        -2.0 * c / (b + sqrt(b * b - 4.0 * a * c))
    }

    /// Volts left over at a motor current: what the controller can apply less
    /// what the motor asks for.
    fn spare_volts(&self, supply: &Supply, omega: f64, current: f64) -> f64 {
        let (copper, switch) = self.heat_per_square_amp();
        let fixed = self.motors
            * (self.torque_per_amp * current * omega
                + (copper + switch) * current * current
                + self.build.controller.idle_w);
        let asked = self.motor_volts(omega, current, &mut Working::off());
        let bus_v = self.draw(supply, current, fixed).map_or(0.0, |draw| draw.bus_v);
        self.build.controller.max_duty * bus_v - asked
    }
}

/// Push and road load at one speed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PushPoint {
    /// Speed, m/s.
    pub speed_m_s: f64,
    /// Greatest push of a full pack, N.
    pub push_n: f64,
    /// What binds there.
    pub limit: Limit,
    /// Road load on the flat, N.
    pub flat_n: f64,
    /// Grade that the push can just hold, as a share.
    pub grade: f64,
}

/// Push and road load over speed.
#[derive(Clone, Debug, PartialEq, Serialize)]
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
        let air = drive.air_n(v, &mut Working::off());
        PushPoint {
            speed_m_s: v,
            push_n: push.force_n,
            limit: push.limit,
            flat_n: drive.load_n(v, Slope::FLAT),
            grade: STEEPEST.of([push.force_n - air, drive.mass_kg, drive.rolling]),
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
