//! The working of a headline: the laws it went through, with the values put in.

use super::climb::{BRISK_M_S, CRAWL_M_S, SLOW_M_S};
use super::drive::{Drive, Sag};
use super::fit::explain_belt;
use super::push::FULL;
use crate::build::Build;
use crate::parts::Mode;
use crate::physics::road_load::{Slope, SpareForce};
use crate::working::{Step, Working};
use alloc::vec::Vec;

listed! {
    /// A headline that can show its working.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Headline {
        /// Top speed on the flat with a full pack.
        TopSpeed,
        /// Top speed on the flat with a pack nearly empty.
        TopSpeedLow,
        /// Top speed on the rider's slope.
        TopSpeedOnGrade,
        /// Top speed in the lowest ride mode.
        TopSpeedLowMode,
        /// Top speed in the middle ride mode.
        TopSpeedMidMode,
        /// Top speed in the highest ride mode.
        TopSpeedHighMode,
        /// Steepest hill at a crawl.
        ClimbCrawl,
        /// Steepest hill at 10 km/h.
        ClimbSlow,
        /// Steepest hill at 20 km/h.
        ClimbBrisk,
        /// Steepest hill at 10 km/h with a pack nearly empty.
        ClimbSlowLow,
        /// Distance at cruising speed.
        Distance,
        /// Centre distance that the belt on the board wants; where the pulleys
        /// touch if it is too short.
        BeltCentre,
        /// The belt's highest pull with its teeth in mesh.
        BeltRating,
        /// Greatest pull in the belt.
        BeltPull,
        /// Pull in the belt at cruising speed on the flat.
        BeltSteady,
        /// Pull in the belt up the rider's hill.
        BeltHill,
        /// Static tension aimed at, with deflection, note and the torque at which the belt may skip
        /// teeth.
        BeltTension,
    }
}

/// The steps that lead to a headline.
///
/// They are kept by the same calls that give the answer.
///
/// ```
/// use pitchline_core::{Build, Draft, Headline, answers, explain};
///
/// let build = Build::check(&Draft::typical()).unwrap();
/// let steps = explain(&build, Headline::Distance);
/// let result = |symbol: &str| steps.iter().find(|s| s.formula.symbol == symbol).unwrap().result;
/// // 36 teeth over 16.
/// assert_eq!(result("i"), 2.25);
/// // The last step is the answer: a speed times a time.
/// let last = steps.last().unwrap();
/// assert_eq!(last.inputs.iter().map(|input| input.1).product::<f64>(), last.result);
/// assert!((last.result / answers(&build).distance.cruise.distance_m - 1.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn explain(build: &Build, headline: Headline) -> Vec<Step> {
    let mut w = Working::on();
    if let Headline::BeltCentre | Headline::BeltRating = headline {
        // Geometry alone: nothing of motor, pack or road.
        explain_belt(&Drive::new(build), headline, &mut w);
        return w.into_steps();
    }
    let drive = Drive::explained(build, &mut w);
    let ride = &build.ride;
    let low = ride.low_charge;
    let slope = Slope::of_grade(ride.grade);
    let [low_mode, mid_mode, high_mode] = &build.modes;
    match headline {
        Headline::TopSpeed => top_speed(&drive, 1.0, Sag::Burst, Slope::FLAT, &FULL, &mut w),
        Headline::TopSpeedLow => {
            top_speed(&drive, low, Sag::Sustained, Slope::FLAT, &FULL, &mut w);
        }
        Headline::TopSpeedOnGrade => top_speed(&drive, 1.0, Sag::Burst, slope, &FULL, &mut w),
        Headline::TopSpeedLowMode => {
            top_speed(&drive, 1.0, Sag::Burst, Slope::FLAT, low_mode, &mut w);
        }
        Headline::TopSpeedMidMode => {
            top_speed(&drive, 1.0, Sag::Burst, Slope::FLAT, mid_mode, &mut w);
        }
        Headline::TopSpeedHighMode => {
            top_speed(&drive, 1.0, Sag::Burst, Slope::FLAT, high_mode, &mut w);
        }
        Headline::ClimbCrawl => steepest(&drive, 1.0, Sag::Burst, CRAWL_M_S, &mut w),
        Headline::ClimbSlow => steepest(&drive, 1.0, Sag::Burst, SLOW_M_S, &mut w),
        Headline::ClimbBrisk => steepest(&drive, 1.0, Sag::Burst, BRISK_M_S, &mut w),
        Headline::ClimbSlowLow => steepest(&drive, low, Sag::Sustained, SLOW_M_S, &mut w),
        Headline::Distance => super::distance::explain(&drive, &mut w),
        Headline::BeltCentre
        | Headline::BeltRating
        | Headline::BeltPull
        | Headline::BeltSteady
        | Headline::BeltHill
        | Headline::BeltTension => explain_belt(&drive, headline, &mut w),
    }
    w.into_steps()
}

fn top_speed(drive: &Drive, charge: f64, sag: Sag, slope: Slope, mode: &Mode, w: &mut Working) {
    let supply = drive.supply_explained(charge, sag, w);
    let top = drive.top_speed_explained(&supply, mode, slope, w);
    drive.hold_explained(&supply, top.speed_m_s, slope, w);
    let push = drive.push_explained(&supply, mode, top.speed_m_s, slope, w);
    w.apply(SpareForce { push: push.force_n, load: drive.load_n(top.speed_m_s, slope) });
}

pub(crate) fn steepest(drive: &Drive, charge: f64, sag: Sag, speed: f64, w: &mut Working) {
    let supply = drive.supply_explained(charge, sag, w);
    let found = drive.steepest(&supply, speed);
    drive.hold_explained(&supply, speed, Slope::of_grade(found.grade), w);
    drive.steepest_explained(&supply, speed, w);
}
