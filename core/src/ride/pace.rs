//! How long the next step is.

use super::course::Steps;
use super::plan::Plan;
use super::ridden::RideEnd;
use super::trip::Trip;
use crate::answers::Limit;
use crate::math::abs;
use crate::physics::road_load::Slope;

/// What a steady step may change: the pack's current from the step before, as a share; the windings
/// amid the step, K; the charge, as a share.
const STEADY_SHARE: f64 = 0.01;
const STEADY_K: f64 = 4.0;
const STEADY_CHARGE: f64 = 0.04;
/// By how much hot windings may warm or cool in a step, K.
const WARM_K: f64 = 0.5;

impl Trip {
    /// The next step at the speed wished for: as long as little changes in it and no limit is met.
    pub(super) fn hold(&mut self, left_s: f64, wished: f64, slope: Slope) -> Result<Plan, RideEnd> {
        let usual_s = self.steps.steady_s;
        let least_s = 0.25 * usual_s;
        let now = self.journey.now;
        let time_s = self.until.time_s - now.time_s;
        while self.steady_s > least_s && time_s > least_s {
            let step_s = even(left_s, self.steady_s).min(time_s);
            let plan = self.journey.steady(step_s, slope);
            let Some(plan) = plan else {
                // A limit is near: no longer steps from here on.
                self.steady_s = (0.25 * self.steady_s).max(least_s);
                self.steady_most_s = self.steady_s;
                continue;
            };
            let changed = self.changed(&plan);
            if changed > 2.0 && self.steady_s > usual_s {
                self.steady_s = (0.5 * self.steady_s).max(usual_s);
                continue;
            }
            if changed < 0.5 {
                self.steady_s = (2.0 * self.steady_s).min(self.steady_most_s);
            }
            return Ok(plan);
        }
        self.push(even(left_s, self.faded(usual_s)), wished, slope)
    }

    /// The longest step, s, or less where the pack fades within it.
    pub(super) fn faded(&self, most_s: f64) -> f64 {
        let fades = self.creep_s > self.steps.changing_s;
        if fades { most_s.min(self.creep_s) } else { most_s }
    }

    /// How much a steady step changes, against what it may.
    pub(super) fn changed(&self, plan: &Plan) -> f64 {
        let now = &self.journey.now;
        let pack_a = plan.flow.pack_a;
        let current = abs(pack_a - now.pack_a) / (abs(pack_a) + abs(now.pack_a)).max(1e-9);
        let spent = abs(pack_a) * plan.step_s / (3600.0 * self.journey.drive.capacity_ah);
        let warmed = abs(plan.amid.0 - now.winding_c);
        (current / STEADY_SHARE).max(spent / STEADY_CHARGE).max(warmed / STEADY_K)
    }

    /// A step of a push; a shorter one where hot windings hold it back and still warm up or cool.
    pub(super) fn push(&self, step_s: f64, wish_m_s: f64, slope: Slope) -> Result<Plan, RideEnd> {
        let plan = self.plan(step_s, wish_m_s, slope)?;
        let by_k = 2.0 * abs(plan.amid.0 - self.journey.now.winding_c);
        let from_c = self.journey.drive.build.controller.motor_cutback_start_c;
        let gets_hot = from_c.is_some_and(|from_c| self.journey.now.winding_c + by_k > from_c);
        if plan.limit != Some(Limit::WindingHot) && !(plan.limit.is_some() && gets_hot) {
            return Ok(plan);
        }
        let most_s =
            (self.fineness() * WARM_K / by_k * plan.step_s).max(0.5 * self.steps.changing_s);
        if most_s >= step_s {
            return Ok(plan);
        }
        let v = self.journey.now.speed_m_s;
        self.plan(most_s, v + (wish_m_s - v) * most_s / step_s, slope)
    }

    /// Length of the steps, as a share of the usual ones.
    pub(super) fn fineness(&self) -> f64 {
        self.steps.changing_s / Steps::USUAL.changing_s
    }

    /// A step, within the time there is.
    pub(super) fn plan(&self, step_s: f64, wish_m_s: f64, slope: Slope) -> Result<Plan, RideEnd> {
        let now = &self.journey.now;
        let left = self.until.time_s - now.time_s;
        if left <= 1e-9 {
            return Err(RideEnd::Time);
        }
        let (mut step, mut wish) = (step_s, wish_m_s);
        if left < step {
            wish = now.speed_m_s + (wish - now.speed_m_s) * left / step;
            step = left;
        }
        self.journey.plan(step, wish, slope).ok_or(RideEnd::Empty)
    }
}

/// The first of steps to a time: the longest, and the last two alike.
pub(super) fn even(time_s: f64, most_s: f64) -> f64 {
    if time_s > 2.0 * most_s {
        most_s
    } else if time_s > most_s {
        0.5 * time_s
    } else {
        time_s
    }
}
