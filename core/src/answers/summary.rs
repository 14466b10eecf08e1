//! A build at a glance: what a list of builds shows of each.

use super::climb::{SLOW_M_S, Steepest};
use super::distance::Reach;
use super::drive::{Drive, Sag};
use super::fit::{BeltOffers, Severity, together};
use super::push::FULL;
use super::speed::TopSpeed;
use crate::build::{Build, Draft};
use crate::physics::road_load::Slope;
use crate::ride::Descent;
use serde::Serialize;

/// The rider's steepest street, up and down at 10 km/h.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Street {
    /// Rise over run, from 0 to 0.6, as entered for the ride.
    pub grade: f64,
    /// Whether it is climbed at 10 km/h with a full pack.
    pub climbs_full: bool,
    /// Whether it is climbed at 10 km/h with a pack nearly empty, after a steady ride.
    pub climbs_low: bool,
    /// Riding down it at 10 km/h with a full pack, the motors alone braking.
    pub descent: Descent,
}

impl Street {
    /// Whether the board holds it uphill: with a full pack and with one nearly empty.
    #[must_use]
    pub const fn climbs(&self) -> bool {
        self.climbs_full && self.climbs_low
    }

    /// Whether it brakes on it: the motors alone hold 10 km/h down it with a full pack.
    ///
    /// A full pack may take nothing back: then it does not, and the descent's limit says so. No
    /// promise in either case: brakes are tried out on the road, where there is room.
    #[must_use]
    pub const fn brakes(&self) -> bool {
        self.descent.held
    }
}

/// A build at a glance.
///
/// Each figure is the one that its question gives, to the last digit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Summary {
    /// How many things do not fit, by the sizes entered or assumed: those of
    /// [`together`] with [`Severity::DoesNotFit`].
    pub does_not_fit: usize,
    /// How many fit with less to spare than such sizes are sure to: with [`Severity::Tight`].
    pub tight: usize,
    /// Top speed on the flat with a full pack, m/s, and what limits it: [`Drive::top_speed`].
    pub top_speed: TopSpeed,
    /// The steepest hill at 10 km/h with a full pack, rise over run, and what limits it; negative
    /// where that speed is not held on the flat: [`Drive::steepest`].
    pub slow: Steepest,
    /// The same with a pack nearly empty, after a steady ride.
    pub slow_low: Steepest,
    /// Distance at the rider's cruising speed on the flat, m, and what ends it: [`Drive::reach`].
    pub cruise: Reach,
    /// The rider's steepest street: [`Drive::steepest`] and [`Drive::descent`].
    pub street: Street,
}

/// A build at a glance, without the curves and tables of [`answers`](crate::answers), for a build
/// and the draft it was checked from.
///
/// Never fails: whatever a checked build holds, each figure is finite.
///
/// ```
/// use pitchline_core::{Build, Draft, answers, summary};
///
/// let draft = Draft::typical();
/// let build = Build::check(&draft).unwrap();
/// let (glance, full) = (summary(&draft, &build), answers(&build));
/// assert_eq!(glance.top_speed, full.speed.flat_full);
/// assert_eq!(glance.cruise.distance_m, full.distance.cruise.distance_m);
/// // A typical board climbs its rider's street, 8 %, but not with a pack nearly empty.
/// assert!(glance.street.climbs_full && !glance.street.climbs());
/// assert!(glance.street.brakes());
/// ```
#[must_use]
pub fn summary(draft: &Draft, build: &Build) -> Summary {
    let drive = Drive::new(build);
    // What is on offer cures misfits; how many there are does not hang on it.
    let offers = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };
    let found = together(draft, &drive, &offers);
    let ride = &build.ride;
    let full = drive.supply(1.0, Sag::Burst);
    let low = drive.supply(ride.low_charge, Sag::Sustained);
    let slow = drive.steepest(&full, SLOW_M_S);
    let slow_low = drive.steepest(&low, SLOW_M_S);
    Summary {
        does_not_fit: found.count(Severity::DoesNotFit),
        tight: found.count(Severity::Tight),
        top_speed: drive.top_speed(&full, &FULL, Slope::FLAT),
        slow,
        slow_low,
        cruise: drive.reach(ride.cruise_m_s),
        street: Street {
            grade: ride.grade,
            climbs_full: slow.grade >= ride.grade,
            climbs_low: slow_low.grade >= ride.grade,
            descent: drive.descent(ride.grade, SLOW_M_S, 1.0),
        },
    }
}
