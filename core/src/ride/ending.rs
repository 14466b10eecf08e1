//! Where a distance ends: one rule for every ride.
//!
//! A distance counts until the board can no longer hold [`END_SHARE`] of the speed wished for on
//! the flat; where it never reaches the wish, of what it reaches with a full pack. What it then
//! makes down to walking pace is told apart. A ride to a given time or distance goes on where only
//! heat makes it so slow.

use super::plan::Plan;
use super::ridden::{Met, RideEnd};
use super::trip::Trip;
use crate::answers::{Drive, FULL, Limit, Sag};
use crate::physics::road_load::Slope;

/// Share of the speed wished for, of 0 to 1, down to which a distance counts. A judgement of this
/// model's, no source.
pub const END_SHARE: f64 = 0.8;
/// Walking pace, m/s, to which a board limps: 5 km/h. Common practice, no source.
pub const WALK_M_S: f64 = 5.0 / 3.6;
/// A slope that counts as flat, rise over run.
pub(super) const FLAT: f64 = 1e-4;

/// The end of a ride is looked for in steps no longer than this, s.
pub(super) const LAST_S: f64 = 1.0;

/// What becomes of a step.
pub(super) enum Outcome {
    /// The ride goes on.
    Goes,
    /// It goes on, but the pack fades: the next step is no longer.
    Fades,
    /// The pack fades too much in it: a shorter one is to be taken.
    TooLong,
    /// The ride ends with the part of it that this is.
    Ends(Plan, RideEnd),
}

impl Drive {
    /// A speed, m/s, or what the board reaches on the flat with a full pack where that is less: at
    /// full throttle, or at leisure where that would sag the pack further.
    #[must_use]
    pub fn reached_m_s(&self, wish_m_s: f64) -> f64 {
        let full = [Sag::Burst, Sag::Sustained].map(|sag| self.supply(1.0, sag));
        let holds = |supply| {
            let push = self.push(supply, &FULL, wish_m_s, Slope::FLAT);
            push.force_n >= self.load_n(wish_m_s, Slope::FLAT)
        };
        if full.iter().any(holds) {
            return wish_m_s;
        }
        let top = full.map(|supply| self.top_speed(&supply, &FULL, Slope::FLAT).speed_m_s);
        top.into_iter().fold(0.0, f64::max).min(wish_m_s)
    }
}

impl Trip {
    /// Whether the distance is complete, and only what it limps is still asked.
    pub(super) fn limping(&self) -> bool {
        self.ended.is_some()
    }

    /// The speed that is to be held on the flat for the ride to go on, m/s.
    fn end_m_s(&self) -> f64 {
        if self.limping() {
            WALK_M_S.min(END_SHARE * self.wish_m_s)
        } else {
            END_SHARE * self.wish_m_s
        }
    }

    /// Whether the pack no longer holds the wish where the board is, climbing or not.
    pub(super) fn sagged(&self) -> bool {
        let pack = self.settled.is_some_and(|limit| limit.is_sag() || limit == Limit::Empty);
        pack && self.now().speed_m_s < END_SHARE * self.course.wish_m_s()
    }

    /// What becomes of a step: whether it uses up the charge or, at a limit, loses the speed that the
    /// ride is to hold.
    pub(super) fn outcome(&self, plan: &Plan) -> Outcome {
        let now = &self.journey.now;
        let spent = plan.flow.pack_a * plan.step_s / (3600.0 * self.journey.drive.capacity_ah);
        if spent > now.charge {
            return Outcome::Ends(self.part(plan, now.charge / spent), RideEnd::Empty);
        }
        if plan.limit.is_none() || plan.brake_n > 0.0 {
            return Outcome::Goes;
        }
        let (end_m_s, from, to) = (self.end_m_s(), now.speed_m_s, plan.speed_m_s);
        let flat = plan.slope.sin <= FLAT * plan.slope.cos;
        let part = if flat && self.until.is_open() && to < end_m_s && end_m_s <= from {
            // It has become so slow, whatever holds it back.
            (from - end_m_s) / (from - to)
        } else {
            // What the pack could push more than that speed takes, were it on the flat.
            let after = self.journey.spare_after_n(plan, end_m_s, Slope::FLAT);
            let before = self.journey.spare_n(end_m_s).max(0.0);
            if after >= 0.0 {
                return if after > 0.5 * before { Outcome::Goes } else { Outcome::Fades };
            }
            before / (before - after)
        };
        // Within a long step the push would follow the pack's voltage as that falls.
        if plan.step_s > LAST_S * self.fineness() {
            return Outcome::TooLong;
        }
        Outcome::Ends(self.part(plan, part), RideEnd::Slow)
    }

    /// The first part of a step, a share of it.
    fn part(&self, plan: &Plan, part: f64) -> Plan {
        let (part, from) = (part.clamp(1e-3, 1.0), self.journey.now.speed_m_s);
        let wish = from + part * (plan.speed_m_s - from);
        self.journey.plan(part * plan.step_s, wish, plan.slope).unwrap_or(*plan)
    }

    /// Ends the ride, or the limping after it.
    pub(super) fn over<T>(&mut self, end: RideEnd, met: Met) -> Result<T, RideEnd> {
        if !self.limping() {
            self.ride.stopped = Some(self.told(met));
        }
        Err(end)
    }
}
