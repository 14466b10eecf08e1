//! A ride in time.

use super::course::{Course, Leg, Manner, Steps, TracePoint, Until};
use super::journey::{Journey, Moment, Plan};
use super::ledger::Ledger;
use super::ridden::{Hottest, Met, Ridden, RideEnd};
use super::style::Style;
use crate::answers::{Drive, Limit};
use crate::math::{abs, share, sqrt};
use crate::physics::road_load::Slope;
use alloc::vec::Vec;

/// Moments kept: from so many to twice as many.
const MOMENTS: usize = 200;
/// A ride ends below this share of the speed wished for.
const LIMP: f64 = 0.5;
/// While a board at its limit hardly changes its speed, steps grow to such a
/// change, m/s, and to this long, s.
const CREEP_M_S: f64 = 0.3;
const CREEP_S: f64 = 8.0;
/// Braking begins within so many metres of where it must.
const NEAR_M: f64 = 1e-6;

struct Rider<'a> {
    journey: Journey,
    manner: Manner,
    until: Until,
    steps: Steps,
    creep_s: f64,
    ride: Ridden,
    every_s: f64,
    watch: &'a mut dyn FnMut(&Moment) -> bool,
}

impl Drive {
    /// A ride on a course from a charge.
    #[must_use]
    pub fn ride(
        &self,
        course: Course,
        manner: Manner,
        until: Until,
        charge: f64,
        steps: Steps,
    ) -> Ridden {
        self.ride_watched(course, manner, until, charge, steps, &mut |_| true)
    }

    /// A ride in a style from the rider's start charge.
    #[must_use]
    pub fn ride_style(&self, style: Style, until: Until) -> Ridden {
        let figures = style.figures(&self.build);
        let charge = self.build.ride.start_charge;
        self.ride(Course::Legs(&figures.legs()), figures.manner(), until, charge, Steps::USUAL)
    }

    /// The same, told of each moment; it ends as by time where that says no.
    pub(crate) fn ride_watched(
        &self,
        course: Course,
        manner: Manner,
        until: Until,
        charge: f64,
        steps: Steps,
        watch: &mut dyn FnMut(&Moment) -> bool,
    ) -> Ridden {
        let journey = Journey::new(self, share(charge));
        let now = journey.now;
        let ride = Ridden {
            distance_m: 0.0,
            time_s: 0.0,
            start_charge: now.charge,
            end_charge: now.charge,
            end: RideEnd::Time,
            top_m_s: 0.0,
            wh_per_km: 0.0,
            ledger: Ledger::default(),
            hottest: Hottest {
                winding_c: now.winding_c,
                case_c: now.case_c,
                controller_c: now.controller_c,
                cell_c: now.cell_c,
            },
            held_back: None,
            brake_held_back: None,
            winding_hot_s: None,
            moments: Vec::from([now]),
        };
        let every_s = 1.0;
        let creep_s = steps.changing_s;
        let mut rider = Rider { journey, manner, until, steps, creep_s, ride, every_s, watch };
        let end = rider.whole(course);
        rider.finish(end)
    }
}

/// A ride goes on, or ends.
type Going = Result<(), RideEnd>;

impl Rider<'_> {
    /// Rides until something ends it.
    fn whole(&mut self, course: Course) -> RideEnd {
        loop {
            let begun = self.journey.now.time_s;
            let round = match course {
                Course::Legs(legs) => legs.iter().try_for_each(|leg| self.leg(leg)),
                Course::Trace(points) => self.trace(points),
            };
            if let Err(end) = round {
                return end;
            }
            if self.journey.now.time_s <= begun {
                // A course without length would never end.
                return RideEnd::Time;
            }
        }
    }

    fn leg(&mut self, leg: &Leg) -> Going {
        let slope = Slope::of_grade(leg.grade);
        let end_m = self.journey.now.distance_m + leg.length_m;
        let braking = self.manner.braking_m_s2;
        let wished = leg.cruise_m_s;
        loop {
            let (v, at) = (self.journey.now.speed_m_s, self.journey.now.distance_m);
            let left = end_m.min(self.until.distance_m) - at;
            let stop = leg.rest_s.is_some() && end_m <= self.until.distance_m;
            // Way until braking must begin.
            let free = if stop { left - v * v / (2.0 * braking) } else { left };
            if free <= NEAR_M {
                break;
            }
            let plan = self.think(wished, left, free, stop, slope)?;
            self.go_on(&plan, wished)?;
        }
        if end_m > self.until.distance_m {
            return Err(RideEnd::Distance);
        }
        let Some(rest_s) = leg.rest_s else { return Ok(()) };
        self.stop(end_m, slope)?;
        self.rest(rest_s)
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
            let step = even(free / v.max(1e-3), self.steps.steady_s);
            return self.plan(step, wished, slope);
        }
        let rate = if change > 0.0 { rate } else { -braking };
        let shortest = 0.05 * self.steps.changing_s;
        let few = abs(wished / rate) / self.steps.changing;
        let longest =
            if self.creep_s > self.steps.changing_s { self.creep_s } else { self.creep_s.min(few) };
        let mut step = even(change / rate, longest).max(shortest.min(few));
        if stop && rate > 0.0 {
            // Speeding up evenly, then braking: where the two meet.
            let peak = (2.0 * rate * braking * left + braking * v * v) / (rate + braking);
            step = step.min(((sqrt(peak) - v) / rate).max(shortest));
        } else {
            let there = v * v + 2.0 * rate * left;
            let there = 2.0 * left / (v + sqrt(there.max(0.0))).max(1e-3);
            step = step.min(there.max(1e-3));
        }
        let to = |step: f64| {
            let to = v + rate * step;
            if rate > 0.0 { to.min(wished) } else { to.max(wished) }
        };
        let plan = self.plan(step, to(step), slope)?;
        let fall = (plan.speed_m_s - v) / plan.step_s;
        let made = 0.5 * (v + plan.speed_m_s) * plan.step_s;
        if made <= left && !stop {
            return Ok(plan);
        }
        if !stop {
            // Held back, and still beyond the end: as long as the way takes.
            let step = plan.step_s * left / made;
            return self.plan(step, v + fall * step, slope);
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
        self.plan(step, v + fall * step, slope)
    }

    /// A step, within the time there is.
    fn plan(&self, step_s: f64, wish_m_s: f64, slope: Slope) -> Result<Plan, RideEnd> {
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

    /// Takes a step toward a speed, unless the ride is over.
    fn go_on(&mut self, plan: &Plan, wished: f64) -> Going {
        let from = self.journey.now.speed_m_s;
        self.take(plan)?;
        let now = &self.journey.now;
        let gained = (now.speed_m_s - from) / plan.step_s;
        self.creep_s = self.steps.changing_s;
        let Some(limit) = plan.limit else { return Ok(()) };
        if plan.brake_n > 0.0 || now.speed_m_s >= wished {
            return Ok(());
        }
        // The tail of a push at its limit is smooth: so long that the speed
        // changes by as much in each step.
        let scale = self.steps.changing_s / Steps::USUAL.changing_s;
        let long = (CREEP_M_S / abs(gained).max(1e-3)).min(2.0 * plan.step_s / scale);
        self.creep_s = scale * long.clamp(Steps::USUAL.changing_s, CREEP_S);
        let pack =
            matches!(limit, Limit::Cutback | Limit::CutOff | Limit::PackPower | Limit::Empty);
        if gained > 0.02 {
            return Ok(());
        }
        if pack && now.speed_m_s < LIMP * wished {
            return Err(RideEnd::Empty);
        }
        if now.speed_m_s < 0.05 {
            return Err(RideEnd::Stalled);
        }
        Ok(())
    }

    /// Brakes evenly to a place.
    fn stop(&mut self, end_m: f64, slope: Slope) -> Going {
        let v = self.journey.now.speed_m_s;
        let left = end_m - self.journey.now.distance_m;
        if v <= 0.0 || left <= 0.0 {
            return Ok(());
        }
        let time = 2.0 * left / v;
        let count = steps_in(time, self.steps.changing_s.min(time / self.steps.changing));
        let step = time / count;
        let mut done = 0.0;
        while done < count {
            done += 1.0;
            let plan = self.plan(step, v * (1.0 - done / count), slope)?;
            self.take(&plan)?;
        }
        Ok(())
    }

    fn rest(&mut self, rest_s: f64) -> Going {
        if rest_s <= 0.0 {
            return Ok(());
        }
        let count = steps_in(rest_s, 2.0 * self.steps.steady_s);
        let mut done = 0.0;
        while done < count {
            done += 1.0;
            let plan = self.plan(rest_s / count, 0.0, Slope::FLAT)?;
            self.take(&plan)?;
        }
        Ok(())
    }

    /// Follows speeds over time; where held back it catches up.
    fn trace(&mut self, points: &[TracePoint]) -> Going {
        let begun = self.journey.now.time_s;
        for (from, to) in points.iter().zip(points.iter().skip(1)) {
            let end = begun + to.time_s;
            loop {
                let (v, left) = (self.journey.now.speed_m_s, end - self.journey.now.time_s);
                if left <= 1e-9 {
                    break;
                }
                let change = to.speed_m_s - v;
                let flat = from.speed_m_s == to.speed_m_s;
                let most = if flat && abs(change) <= 1e-9 {
                    self.steps.steady_s
                } else {
                    self.steps.changing_s
                };
                let step = even(left, most);
                // On a flat it catches up at once, on a ramp by its end.
                let span = if flat { step } else { left };
                let rate = (change / span)
                    .min(self.manner.acceleration_m_s2)
                    .max(-self.manner.braking_m_s2);
                let plan = self.plan(step, (v + rate * step).max(0.0), Slope::FLAT)?;
                self.go_on(&plan, to.speed_m_s)?;
            }
        }
        Ok(())
    }

    fn take(&mut self, plan: &Plan) -> Going {
        let begun = self.journey.now.time_s;
        self.journey.take(plan);
        let now = &self.journey.now;
        let r = &mut self.ride;
        let h = &mut r.hottest;
        h.winding_c = h.winding_c.max(now.winding_c);
        h.case_c = h.case_c.max(now.case_c);
        h.controller_c = h.controller_c.max(now.controller_c);
        h.cell_c = h.cell_c.max(now.cell_c);
        r.top_m_s = r.top_m_s.max(now.speed_m_s);
        if now.winding_c > self.journey.drive.build.motor.winding_limit_c {
            r.winding_hot_s.get_or_insert(now.time_s);
        }
        if let Some(limit) = plan.limit {
            let met = Met { limit, time_s: begun };
            if plan.brake_n > 0.0 {
                if limit != Limit::Crawl {
                    r.brake_held_back.get_or_insert(met);
                }
            } else {
                r.held_back.get_or_insert(met);
            }
        }
        let due = r.moments.last().is_none_or(|last| now.time_s >= last.time_s + self.every_s);
        if due {
            if r.moments.len() >= 2 * MOMENTS {
                let mut keep = false;
                r.moments.retain(|_| {
                    keep = !keep;
                    keep
                });
                self.every_s *= 2.0;
            }
            r.moments.push(*now);
        }
        if !(self.watch)(now) {
            return Err(RideEnd::Time);
        }
        if now.charge <= 0.0 {
            return Err(RideEnd::Empty);
        }
        Ok(())
    }

    fn finish(mut self, end: RideEnd) -> Ridden {
        let now = self.journey.now;
        let r = &mut self.ride;
        r.end = end;
        r.distance_m = now.distance_m;
        r.time_s = now.time_s;
        r.end_charge = now.charge;
        r.ledger = self.journey.ledger;
        if now.distance_m > 0.0 {
            r.wh_per_km = r.ledger.stored_wh / (now.distance_m / 1000.0);
        }
        if r.moments.last() != Some(&now) {
            r.moments.push(now);
        }
        self.ride
    }
}

/// How many even steps a time takes, at least one.
fn steps_in(time_s: f64, most_s: f64) -> f64 {
    let count = time_s / most_s;
    let whole = crate::math::round(count);
    (if whole < count { whole + 1.0 } else { whole }).max(1.0)
}

/// The first of steps to a time: the longest, and the last two alike.
fn even(time_s: f64, most_s: f64) -> f64 {
    if time_s > 2.0 * most_s {
        most_s
    } else if time_s > most_s {
        0.5 * time_s
    } else {
        time_s
    }
}
