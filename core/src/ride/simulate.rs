//! The steps of a ride: along a leg, to a stop, at rest, after a trace.

use super::course::{Leg, Steps, TracePoint};
use super::ending::{END_SHARE, FLAT, LAST_S, Outcome};
use super::pace::even;
use super::plan::Plan;
use super::ridden::{Met, RideEnd};
use super::trip::{Bit, Going, Trip};
use crate::answers::Limit;
use crate::math::{abs, sqrt};
use crate::physics::road_load::Slope;

/// A speed below this share of the one wished for is told.
pub(super) const SHORT: f64 = 0.98;
/// A speed that changes no faster is settled, m/s².
const SETTLED_M_S2: f64 = 0.02;
/// While a board at its limit hardly changes its speed, steps grow to such a
/// change, m/s, and to this long, s.
const CREEP_M_S: f64 = 0.15;
const CREEP_S: f64 = 30.0;
/// Once the pack no longer holds the brakes back they jump: so many times finer from there.
const FINER: f64 = 8.0;
/// A course enters a few phases before it takes a step; one that enters more leads nowhere.
const PHASES: u32 = 1000;
/// Braking begins within so many metres of where it must.
const NEAR_M: f64 = 1e-6;

/// What is being done between two steps.
#[derive(Clone, Copy, Debug)]
pub(super) enum Phase {
    /// The next leg or ramp begins.
    Next,
    /// Along a leg, to where it ends or braking begins.
    Ride { leg: Leg, end_m: f64 },
    /// Braking evenly to rest.
    Stop { leg: Leg, from_m_s: f64, step_s: f64, done: f64, count: f64, finer: f64 },
    /// At rest.
    Rest { step_s: f64, done: f64, count: f64 },
    /// To a point of a trace.
    Ramp { from: TracePoint, to: TracePoint, end_s: f64 },
}

impl Trip {
    /// Takes the next step, unless something ends the ride.
    pub(super) fn step(&mut self) -> Going {
        for _ in 0..PHASES {
            let taken = match self.phase {
                Phase::Next => self.next()?,
                Phase::Ride { leg, end_m } => self.ride(leg, end_m)?,
                Phase::Stop { leg, from_m_s, step_s, done, count, finer } if done < count => {
                    let slope = Slope::of_grade(leg.grade);
                    let speed = from_m_s * (1.0 - (done + 1.0) / count);
                    let jumps = finer > 1.0 && self.brake_jumps(step_s, speed, slope);
                    let times = if jumps { finer } else { 1.0 };
                    let (step_s, count) = (step_s / times, count * times);
                    let done = done * times + 1.0;
                    let finer = finer / times;
                    self.phase = Phase::Stop { leg, from_m_s, step_s, done, count, finer };
                    let plan = self.plan(step_s, from_m_s * (1.0 - done / count), slope)?;
                    self.take(&plan)?
                }
                Phase::Stop { leg, .. } => self.rest(&leg),
                Phase::Rest { step_s, done, count } if done < count => {
                    self.phase = Phase::Rest { step_s, done: done + 1.0, count };
                    let plan = self.plan(step_s, 0.0, Slope::FLAT)?;
                    self.take(&plan)?
                }
                Phase::Rest { .. } => self.on(),
                Phase::Ramp { from, to, end_s } => self.ramp(from, to, end_s)?,
            };
            // A phase in which nothing is left to do took none, nor one that wants shorter steps.
            if taken {
                return Ok(());
            }
        }
        Err(RideEnd::Time)
    }

    /// Enters the next leg or ramp; at the end of the course the first.
    fn next(&mut self) -> Result<bool, RideEnd> {
        let now = &self.journey.now;
        match self.course.bit(self.at) {
            Some(Bit::Leg(leg)) => {
                self.at += 1;
                self.creep_s = self.steps.changing_s;
                self.steady_s = self.steps.steady_s;
                self.steady_most_s = self.steps.steady_growth * self.steps.steady_s;
                self.phase = Phase::Ride { leg, end_m: now.distance_m + leg.length_m };
            }
            Some(Bit::Ramp(from, to)) => {
                self.at += 1;
                self.creep_s = self.steps.changing_s;
                self.phase = Phase::Ramp { from, to, end_s: self.begun_s + to.time_s };
            }
            // A course without length would never end.
            None if now.time_s <= self.begun_s => return Err(RideEnd::Time),
            None => (self.at, self.begun_s) = (0, now.time_s),
        }
        Ok(false)
    }

    /// Goes on with the course.
    fn on(&mut self) -> bool {
        self.phase = Phase::Next;
        false
    }

    fn ride(&mut self, leg: Leg, end_m: f64) -> Result<bool, RideEnd> {
        let (v, at) = (self.journey.now.speed_m_s, self.journey.now.distance_m);
        let left = end_m.min(self.until.distance_m) - at;
        let stop = leg.rest_s.is_some() && end_m <= self.until.distance_m;
        // Way until braking must begin.
        let free = if stop { left - v * v / (2.0 * self.manner.braking_m_s2) } else { left };
        if free > NEAR_M {
            let slope = Slope::of_grade(leg.grade);
            let plan = self.think(leg.cruise_m_s, left, free, stop, slope)?;
            return self.go_on(&plan, leg.cruise_m_s);
        }
        if end_m > self.until.distance_m {
            return Err(RideEnd::Distance);
        }
        if leg.rest_s.is_none() {
            return Ok(self.on());
        }
        (self.sinking, self.creep_s) = (false, self.steps.changing_s);
        // Brakes evenly to its end.
        let left = end_m - at;
        if v <= 0.0 || left <= 0.0 {
            return Ok(self.rest(&leg));
        }
        let time = 2.0 * left / v;
        let count = steps_in(time, self.steps.changing_s.min(time / self.steps.changing));
        let step_s = time / count;
        self.phase = Phase::Stop { leg, from_m_s: v, step_s, done: 0.0, count, finer: FINER };
        Ok(false)
    }

    /// Whether the pack ceases to hold the brakes back in a step that ends at a speed.
    fn brake_jumps(&self, step_s: f64, speed_m_s: f64, slope: Slope) -> bool {
        let supply = self.journey.supply(&self.journey.decay(step_s));
        let by_pack = |v: f64| self.journey.drive.brake(&supply, v, slope).by_pack;
        by_pack(self.journey.now.speed_m_s) && !by_pack(speed_m_s)
    }

    fn rest(&mut self, leg: &Leg) -> bool {
        let rest_s = leg.rest_s.unwrap_or(0.0);
        if rest_s <= 0.0 {
            return self.on();
        }
        let count = steps_in(rest_s, 2.0 * self.steps.steady_s);
        self.phase = Phase::Rest { step_s: rest_s / count, done: 0.0, count };
        false
    }

    /// Follows speeds over time; where held back it catches up.
    fn ramp(&mut self, from: TracePoint, to: TracePoint, end_s: f64) -> Result<bool, RideEnd> {
        let (v, left) = (self.journey.now.speed_m_s, end_s - self.journey.now.time_s);
        if left <= 1e-9 {
            return Ok(self.on());
        }
        let change = to.speed_m_s - v;
        let flat = from.speed_m_s == to.speed_m_s;
        let steady = flat && abs(change) <= 1e-9;
        let most = if steady { self.steps.steady_s } else { self.steps.changing_s };
        let step = even(left, self.faded(most));
        // On a flat it catches up at once, on a ramp by its end.
        let span = if flat { step } else { left };
        let rate =
            (change / span).min(self.manner.acceleration_m_s2).max(-self.manner.braking_m_s2);
        let plan = self.push(step, (v + rate * step).max(0.0), Slope::FLAT)?;
        self.go_on(&plan, to.speed_m_s)
    }

    /// The next step toward a speed, before a stop or the end of a leg.
    fn think(
        &mut self,
        wished: f64,
        left: f64,
        free: f64,
        stop: bool,
        slope: Slope,
    ) -> Result<Plan, RideEnd> {
        let v = self.journey.now.speed_m_s;
        let (rate, braking) = (self.manner.acceleration_m_s2, self.manner.braking_m_s2);
        let change = wished - v;
        if abs(change) <= 1e-9 * wished {
            return self.hold(free / v.max(1e-3), wished, slope);
        }
        let rate = if change > 0.0 { rate } else { -braking };
        let mut step = if rate > 0.0 && self.creep_s > self.steps.changing_s {
            // At its limit it goes as fast as it can; should it gain on the wish, then gently.
            self.creep_s
        } else {
            let shortest = 0.05 * self.steps.changing_s;
            let few = abs(wished / rate) / self.steps.changing;
            even(change / rate, self.steps.changing_s.min(few)).max(shortest.min(few))
        };
        if stop && rate > 0.0 {
            // Speeding up evenly, then braking: where the two meet.
            let peak = (2.0 * rate * braking * left + braking * v * v) / (rate + braking);
            step = step.min(((sqrt(peak) - v) / rate).max(0.05 * self.steps.changing_s));
        } else {
            let there = v * v + 2.0 * rate * left;
            let there = 2.0 * left / (v + sqrt(there.max(0.0))).max(1e-3);
            step = step.min(there.max(1e-3));
        }
        let to = |step: f64| {
            let to = v + rate * step;
            if rate > 0.0 { to.min(wished) } else { to.max(wished) }
        };
        let plan = self.push(step, to(step), slope)?;
        let fall = (plan.speed_m_s - v) / plan.step_s;
        let made = 0.5 * (v + plan.speed_m_s) * plan.step_s;
        if made <= left && !stop {
            return Ok(plan);
        }
        if !stop {
            // Held back, and still beyond the end: as long as the way takes.
            let step = plan.step_s * left / made;
            return self.push(step, v + fall * step, slope);
        }
        if left - made >= plan.speed_m_s * plan.speed_m_s / (2.0 * braking) - NEAR_M {
            return Ok(plan);
        }
        // It would be too fast to stop: only as far as to where braking begins.
        let bend = 1.0 + fall / braking;
        let (a, b, c) = (0.5 * fall * bend, v * bend, -free);
        let square = (b * b - 4.0 * a * c).max(0.0);
        let step = 2.0 * -c / (b + sqrt(square)).max(1e-9);
        let step = step.max(1e-3).min(plan.step_s);
        self.push(step, v + fall * step, slope)
    }

    /// Takes a step toward a speed, unless the ride is over.
    fn go_on(&mut self, plan: &Plan, wished: f64) -> Result<bool, RideEnd> {
        let from = self.journey.now.speed_m_s;
        let outcome = self.outcome(plan);
        match (&outcome, plan.limit) {
            (Outcome::TooLong, _) => {
                self.creep_s = (0.25 * plan.step_s).max(LAST_S * self.fineness());
                return Ok(false);
            }
            (Outcome::Ends(last, end), limit) => {
                self.take(last)?;
                return self.over(*end, self.met(limit.unwrap_or(Limit::Empty), plan.slope));
            }
            _ => (),
        }
        self.take(plan)?;
        let now = &self.journey.now;
        let gained = (now.speed_m_s - from) / plan.step_s;
        let limit = match plan.limit {
            Some(limit) if plan.brake_n <= 0.0 && now.speed_m_s < wished => limit,
            _ => {
                self.sinking = false;
                return Ok(true);
            }
        };
        // The tail of a push at its limit is smooth: so long that the speed
        // changes by as much in each step.
        let scale = self.fineness();
        let growth = if matches!(outcome, Outcome::Goes) { 2.0 } else { 1.0 };
        let long = (CREEP_M_S / abs(gained).max(1e-3)).min(growth * plan.step_s / scale);
        self.creep_s = scale * long.clamp(Steps::USUAL.changing_s, CREEP_S);
        let met = self.met(limit, plan.slope);
        self.settled = None;
        if gained > SETTLED_M_S2 {
            self.sinking = false;
            return Ok(true);
        }
        self.settled = Some(limit);
        let slow = met.speed_m_s < SHORT * wished && !self.limping();
        if slow && self.ride.not_held.is_none() {
            (self.ride.not_held, self.sinking) = (Some(self.told(met)), true);
        } else if let (true, Some(first)) = (self.sinking, &mut self.ride.not_held) {
            first.speed_m_s = met.speed_m_s;
        }
        self.sinking = self.sinking && gained < -SETTLED_M_S2;
        if met.speed_m_s < 0.05 {
            return self.over(RideEnd::Stalled, met);
        }
        let flat = met.grade <= FLAT && self.until.is_open();
        if flat && !self.limping() && met.speed_m_s < END_SHARE * self.wish_m_s.min(wished) {
            return self.over(RideEnd::Slow, met);
        }
        Ok(true)
    }

    /// Where and when it is, and what binds there.
    pub(super) fn met(&self, limit: Limit, slope: Slope) -> Met {
        let now = &self.journey.now;
        Met {
            limit,
            time_s: now.time_s,
            distance_m: now.distance_m,
            speed_m_s: now.speed_m_s,
            grade: slope.sin / slope.cos,
            sag: None,
        }
    }

    /// The same, to be told: with the reason why the pack sags.
    pub(super) fn told(&self, met: Met) -> Met {
        let slope = Slope::of_grade(met.grade);
        Met { sag: self.journey.sag_cause(met.limit, slope), ..met }
    }

    fn take(&mut self, plan: &Plan) -> Result<bool, RideEnd> {
        let met = plan.limit.map(|limit| self.met(limit, plan.slope));
        let first = plan.brake_n <= 0.0 && self.ride.held_back.is_none() && !self.limping();
        let held_back = met.filter(|_| first).map(|met| self.told(met));
        self.journey.take(plan);
        let now = &self.journey.now;
        if self.limping() {
            let empty = now.charge <= 0.0;
            return if empty { Err(RideEnd::Empty) } else { Ok(true) };
        }
        let r = &mut self.ride;
        let h = &mut r.hottest;
        h.winding_c = h.winding_c.max(now.winding_c);
        h.case_c = h.case_c.max(now.case_c);
        h.controller_c = h.controller_c.max(now.controller_c);
        h.cell_c = h.cell_c.max(now.cell_c);
        r.top_m_s = r.top_m_s.max(now.speed_m_s);
        if let Some(met) = met {
            if plan.brake_n <= 0.0 {
                r.held_back = r.held_back.or(held_back);
            } else if met.limit != Limit::Crawl {
                r.brake_held_back.get_or_insert(met);
            }
        }
        if let Some(record) = &mut self.record {
            record.take(now, plan.step_s);
        }
        let hot = now.winding_c > self.journey.drive.build.motor.winding_limit_c;
        if hot && self.ride.winding_hot.is_none() {
            self.ride.winding_hot = Some(self.met(Limit::WindingHot, plan.slope));
        }
        if self.journey.now.charge <= 0.0 {
            return self.over(RideEnd::Empty, self.met(Limit::Empty, plan.slope));
        }
        Ok(true)
    }
}

/// How many even steps a time takes, at least one.
fn steps_in(time_s: f64, most_s: f64) -> f64 {
    let count = time_s / most_s;
    let whole = crate::math::round(count);
    (if whole < count { whole + 1.0 } else { whole }).max(1.0)
}
