//! From rest as hard as the board pushes.

use super::journey::{Journey, Moment};
use crate::answers::{Drive, Limit};
use crate::math::{share, sqrt};
use crate::physics::road_load::Slope;
use alloc::vec::Vec;
use serde::Serialize;

/// The speed by which sprints are compared, m/s: 20 km/h. A convention of this model's.
pub const COMMON_M_S: f64 = 20.0 / 3.6;
/// The distance by which they are compared, m. A convention of this model's.
pub const COMMON_M: f64 = 100.0;

/// What a sprint is to reach.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Goal {
    /// A speed, m/s, above 0.
    Speed(f64),
    /// A distance, m, above 0.
    Distance(f64),
}

/// A sprint from rest.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Sprint {
    /// Whether the goal is reached at all.
    pub reached: bool,
    /// Time, s; to where the speed hardly grew if it is not reached.
    pub time_s: f64,
    /// Distance, m.
    pub distance_m: f64,
    /// Speed at the end, m/s.
    pub speed_m_s: f64,
    /// What binds at the start.
    pub limit: Limit,
    /// Moments on the way.
    pub moments: Vec<Moment>,
}

/// Length of a step, s.
const STEP_S: f64 = 0.1;
/// A speed that grows more slowly than this, m/s², is the top.
const STILL_M_S2: f64 = 0.01;
/// Most steps: no sprint takes longer than half an hour.
const STEPS: usize = 18_000;

impl Drive {
    /// A sprint from rest on a slope of any grade, rise over run, with warm windings, from a charge,
    /// a share held between 0 and 1.
    ///
    /// ```
    /// use pitchline_core::ride::{COMMON_M_S, Goal};
    /// use pitchline_core::{Build, Draft, Drive};
    ///
    /// let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
    /// let flat = drive.sprint(Goal::Speed(COMMON_M_S), 0.0, 1.0);
    /// assert!(flat.reached);
    /// // The push of 2 motors at 60 A each, by hand and without any loss, takes m v / F.
    /// let most_n = 2.0 * 60.0 * 0.043_53 * 2.25 / 0.0475;
    /// let least_s = drive.build.mass_kg() * COMMON_M_S / most_n;
    /// assert!(flat.time_s > least_s && flat.time_s < 2.0 * least_s);
    /// // Uphill it takes longer.
    /// assert!(drive.sprint(Goal::Speed(COMMON_M_S), 0.08, 1.0).time_s > flat.time_s);
    /// ```
    #[must_use]
    pub fn sprint(&self, goal: Goal, grade: f64, charge: f64) -> Sprint {
        let slope = Slope::of_grade(grade);
        let mut journey = Journey::new(self, share(charge));
        journey.set_warm(self.build.ride.winding_c);
        let mut sprint = Sprint {
            reached: false,
            time_s: 0.0,
            distance_m: 0.0,
            speed_m_s: 0.0,
            limit: Limit::Empty,
            moments: Vec::from([journey.now]),
        };
        for step in 0..STEPS {
            let from = journey.now;
            let Some(plan) = journey.plan(STEP_S, from.speed_m_s + 1e3, slope) else { break };
            if let (0, Some(limit)) = (step, plan.limit) {
                sprint.limit = limit;
            }
            journey.take(&plan);
            let now = journey.now;
            let gained = (now.speed_m_s - from.speed_m_s) / plan.step_s;
            // Speed changes evenly in a step.
            let part = match goal {
                Goal::Speed(speed) if now.speed_m_s >= speed => (speed - from.speed_m_s) / gained,
                Goal::Distance(way) if now.distance_m >= way => {
                    let (v, left) = (from.speed_m_s, way - from.distance_m);
                    2.0 * left / (v + sqrt((v * v + 2.0 * gained * left).max(0.0))).max(1e-9)
                }
                _ => f64::INFINITY,
            };
            if part.is_finite() {
                sprint.reached = true;
                let speed_m_s = from.speed_m_s + gained * part;
                sprint.moments.push(Moment {
                    time_s: from.time_s + part,
                    distance_m: from.distance_m + 0.5 * (from.speed_m_s + speed_m_s) * part,
                    speed_m_s,
                    ..now
                });
                break;
            }
            sprint.moments.push(now);
            if gained < STILL_M_S2 && (matches!(goal, Goal::Speed(_)) || now.speed_m_s < 0.05) {
                break;
            }
        }
        if let Some(last) = sprint.moments.last() {
            sprint.time_s = last.time_s;
            sprint.distance_m = last.distance_m;
            sprint.speed_m_s = last.speed_m_s;
        }
        thin(&mut sprint.moments);
        sprint
    }
}

/// Keeps at most 400 moments, the last among them.
pub(super) fn thin(moments: &mut Vec<Moment>) {
    while moments.len() > 400 {
        let last = moments.last().copied();
        let mut keep = false;
        moments.retain(|_| {
            keep = !keep;
            keep
        });
        if moments.last() != last.as_ref() {
            moments.extend(last);
        }
    }
}
