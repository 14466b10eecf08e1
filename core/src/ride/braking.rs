//! How far until it stands, with the motors alone.

use super::journey::Journey;
use crate::answers::{Drive, Limit};
use crate::math::share;
use crate::physics::motion::moved;
use crate::physics::road_load::Slope;
use alloc::vec::Vec;
use serde::Serialize;

/// Time until a rider brakes, s. Common practice, no source.
pub const REACTION_S: f64 = 1.0;
/// Grip on a wet road as a share of that on a dry one. Common practice, no source.
pub const WET: f64 = 4.0 / 7.0;
/// Below this the motors do not brake in full, m/s: 5 km/h. Common practice, no source.
pub const LET_GO_M_S: f64 = 5.0 / 3.6;
const STEP_S: f64 = 0.05;
/// Most steps: coasting to rest is not followed for longer than ten minutes.
const STEPS: usize = 12_000;

/// What braking is asked about.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct BrakeCase {
    /// Speed at the start, m/s; less than 0 counts as 0.
    pub speed_m_s: f64,
    /// Rise over run; negative downhill.
    pub grade: f64,
    /// Charge of the pack, as a share; held between 0 and 1.
    pub charge: f64,
    /// Whether the road is wet: the grip is then [`WET`] of the dry road's.
    pub wet: bool,
    /// Motors that still brake, a count from 0 to the board's: fewer when a belt is gone, none
    /// when the pack or the controller is.
    pub motors: f64,
}

/// How far until it stands, with the motors alone.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Braking {
    /// What was asked.
    pub case: BrakeCase,
    /// Way until the rider brakes, m.
    pub reaction_m: f64,
    /// Way from there down to 5 km/h, m.
    pub slowing_m: f64,
    /// Way from there to rest, which the motors no longer shorten, m.
    pub rolling_m: f64,
    /// All of it, m.
    pub total_m: f64,
    /// Time from when the rider brakes, s.
    pub time_s: f64,
    /// Deceleration at the start, m/s²; negative where a slope speeds the board up.
    pub first_m_s2: f64,
    /// What keeps the motors from braking harder at the start; [`Limit::Empty`]
    /// where none is left to brake.
    pub limit: Limit,
    /// Whether it comes to rest at all.
    pub stops: bool,
}

impl Braking {
    /// Way down to 5 km/h, the rider's reaction with it, m.
    #[must_use]
    pub fn braked_m(&self) -> f64 {
        self.reaction_m + self.slowing_m
    }
}

impl Drive {
    /// Braking with the motors alone; the rider's foot comes on top.
    ///
    /// ```
    /// use pitchline_core::ride::BrakeCase;
    /// use pitchline_core::{Build, Draft, Drive};
    ///
    /// let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
    /// let case = BrakeCase { speed_m_s: 6.0, grade: 0.0, charge: 0.5, wet: false, motors: 2.0 };
    /// let found = drive.braking(case);
    /// // A second to react, and v² / 2a as long as no brake is stronger than at the start.
    /// assert_eq!(found.reaction_m, 6.0);
    /// assert!(found.total_m > 6.0 + 6.0 * 6.0 / (2.0 * 9.806_65 * drive.build.place.grip));
    /// // With a belt gone it takes longer, with both far longer.
    /// let with = |motors: f64| drive.braking(BrakeCase { motors, ..case }).total_m;
    /// assert!(with(1.0) > found.total_m && with(0.0) > 2.0 * with(1.0));
    /// ```
    #[must_use]
    pub fn braking(&self, case: BrakeCase) -> Braking {
        let mut drive = *self;
        if case.wet {
            drive.build.place.grip *= WET;
        }
        let working = case.motors.max(0.0).min(self.motors);
        drive.motors = working.max(1.0);
        let slope = Slope::of_grade(case.grade);
        let mut journey = Journey::new(&drive, share(case.charge));
        journey.set_warm(self.build.ride.winding_c);
        journey.effective_kg = self.effective_kg();
        journey.now.speed_m_s = case.speed_m_s.max(0.0);
        let from = journey.now.speed_m_s;
        let mut found = Braking {
            case,
            reaction_m: from * REACTION_S,
            slowing_m: 0.0,
            rolling_m: 0.0,
            total_m: 0.0,
            time_s: 0.0,
            first_m_s2: 0.0,
            limit: Limit::Empty,
            stops: from <= 0.0,
        };
        for step in 0..STEPS {
            let v = journey.now.speed_m_s;
            let decay = journey.decay(STEP_S);
            let supply = journey.supply(&decay);
            let drive = &journey.drive;
            let force = |v: f64| {
                if working < 1.0 {
                    return 0.0;
                }
                drive.braked_n(drive.brake(&supply, v, slope).current_a, v)
            };
            let net = |v: f64| force(v) - drive.load_n(v, slope);
            if step == 0 {
                found.first_m_s2 = -net(v) / journey.effective_kg;
                if working >= 1.0 {
                    found.limit = drive.brake(&supply, v, slope).limit;
                }
            }
            let next = moved(journey.effective_kg, v, STEP_S, net);
            let mean = 0.5 * (v + next.speed_m_s);
            let way = mean * next.time_s;
            if v > LET_GO_M_S {
                // The step that passes 5 km/h counts by its share.
                let part = ((v - LET_GO_M_S) / (v - next.speed_m_s).max(1e-9)).min(1.0);
                let slow = part * next.time_s * 0.5 * (v + v + part * (next.speed_m_s - v));
                found.slowing_m += slow;
                found.rolling_m += way - slow;
            } else {
                found.rolling_m += way;
            }
            found.time_s += next.time_s;
            if next.speed_m_s <= 0.0 {
                found.stops = true;
                break;
            }
            // The pack, and with it what it takes, follows the current.
            let current =
                if working < 1.0 { 0.0 } else { -drive.brake(&supply, mean, slope).current_a };
            let Some(plan) = journey.coast(&decay, &supply, next, current, slope) else { break };
            journey.take(&plan);
            if next.speed_m_s >= 2.0 * from.max(1.0) {
                break;
            }
        }
        found.total_m = found.reaction_m + found.slowing_m + found.rolling_m;
        found
    }

    /// Braking on the flat from a speed: dry and wet, a full and a half-full
    /// pack, with every belt, with one less, and with the motors off.
    #[must_use]
    pub fn braking_cases(&self, speed_m_s: f64) -> Vec<Braking> {
        self.cases(speed_m_s).into_iter().map(|case| self.braking(case)).collect()
    }

    /// What [`Drive::braking_cases`] asks, to be asked one by one.
    #[must_use]
    pub fn cases(&self, speed_m_s: f64) -> Vec<BrakeCase> {
        let mut cases = Vec::with_capacity(12);
        for wet in [false, true] {
            for charge in [1.0, 0.5] {
                let mut motors = self.motors;
                while motors >= 0.0 {
                    cases.push(BrakeCase { speed_m_s, grade: 0.0, charge, wet, motors });
                    motors -= 1.0;
                }
            }
        }
        cases
    }
}
