//! The same board in the cold, and as it grows old.

use super::climb::SLOW_M_S;
use super::drive::{Drive, Sag};
use super::push::FULL;
use crate::build::Build;
use crate::math::round;
use crate::physics::road_load::Slope;
use crate::ride::Trip;
use alloc::vec::Vec;
use serde::Serialize;

/// The board at one temperature, or at one age.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SeasonPoint {
    /// Temperature of air and pack, °C.
    pub air_c: f64,
    /// Full cycles behind the pack, a count from 0 to 1000.
    pub cycles: f64,
    /// Distance at cruising speed on the flat, m.
    pub distance_m: f64,
    /// Of which at that speed, m; 0 where the board never reaches it.
    pub full_wish_m: f64,
    /// Energy that the controller gets on that ride, Wh.
    pub usable_wh: f64,
    /// Top speed on the flat with a full pack, m/s.
    pub top_m_s: f64,
    /// Steepest hill at 10 km/h with a full pack, as a share.
    pub grade: f64,
}

/// From the coldest to the warmest of a year's rides, °C, in steps of 5.
const COLDEST_C: f64 = -15.0;
const WARMEST_C: f64 = 40.0;
const STEP_C: f64 = 5.0;
/// Cycles of the last point, and between two.
const OLDEST: f64 = 1000.0;
const STEP_CYCLES: f64 = 50.0;

/// The build from -15 to 40 °C, everything else as entered. The pack is as cold
/// as the air; one kept indoors does better for as long as it stays warm.
///
/// ```
/// use pitchline_core::{Build, Draft, by_temperature};
///
/// let points = by_temperature(&Build::check(&Draft::typical()).unwrap());
/// assert_eq!((points[0].air_c, points[11].air_c, points.len()), (-15.0, 40.0, 12));
/// // In the cold cells give less, and the air is denser.
/// assert!(points.windows(2).all(|pair| pair[0].distance_m < pair[1].distance_m));
/// ```
#[must_use]
pub fn by_temperature(build: &Build) -> Vec<SeasonPoint> {
    let mut air_c = COLDEST_C;
    let mut points = Vec::with_capacity(12);
    while air_c <= WARMEST_C {
        let mut build = *build;
        build.place.air_c = air_c;
        points.push(point(&build));
        air_c += STEP_C;
    }
    points
}

/// The build from a new pack to one of 1000 full cycles, everything else as
/// entered. Common practice, no source.
///
/// ```
/// use pitchline_core::{Build, Draft, by_age};
///
/// let points = by_age(&Build::check(&Draft::typical()).unwrap());
/// assert_eq!((points[0].cycles, points[20].cycles, points.len()), (0.0, 1000.0, 21));
/// // Cells lose capacity and gain resistance: nothing gets better.
/// for pair in points.windows(2) {
///     assert!(pair[1].distance_m < pair[0].distance_m);
///     assert!(pair[1].top_m_s <= pair[0].top_m_s && pair[1].grade <= pair[0].grade);
/// }
/// ```
#[must_use]
pub fn by_age(build: &Build) -> Vec<SeasonPoint> {
    let mut cycles = 0.0;
    let mut points = Vec::with_capacity(21);
    while cycles <= OLDEST {
        let mut build = *build;
        build.pack.cycles = round(cycles);
        points.push(point(&build));
        cycles += STEP_CYCLES;
    }
    points
}

fn point(build: &Build) -> SeasonPoint {
    let drive = Drive::new(build);
    let full = drive.supply(1.0, Sag::Burst);
    let ride = Trip::steady(&drive, build.ride.cruise_m_s).brief().whole();
    let spent = &ride.ledger;
    SeasonPoint {
        air_c: build.place.air_c,
        cycles: build.pack.cycles,
        distance_m: ride.distance_m,
        full_wish_m: ride.full_wish_m,
        usable_wh: spent.stored_wh - spent.pack_wh - spent.wires_wh,
        top_m_s: drive.top_speed(&full, &FULL, Slope::FLAT).speed_m_s,
        grade: drive.steepest(&full, SLOW_M_S).grade,
    }
}
