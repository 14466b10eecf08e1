//! Speeds, steepest hill and distance for every pairing of pulleys and wheel.

use super::climb::SLOW_M_S;
use super::drive::{Drive, Sag};
use super::limit::Limit;
use super::push::FULL;
use crate::build::Build;
use crate::parts::{MotorPulley, Wheel, WheelPulley};
use crate::physics::road_load::Slope;
use alloc::vec::Vec;
use serde::Serialize;

/// One pairing.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct GearCell {
    /// Place of the motor pulley in what was asked.
    pub motor_pulley: usize,
    /// Place of the wheel pulley in what was asked.
    pub wheel_pulley: usize,
    /// Place of the wheel in what was asked.
    pub wheel: usize,
    /// Top speed on the flat with a full pack, m/s.
    pub top_speed_m_s: f64,
    /// What binds there.
    pub limit: Limit,
    /// Steepest grade at 10 km/h with a full pack, as a share, from -1 to 1.
    pub grade: f64,
    /// Top speed on the rider's slope with a full pack, m/s.
    pub hill_speed_m_s: f64,
    /// Distance at the rider's cruising speed on the flat, m.
    pub distance_m: f64,
}

/// Every motor pulley × wheel pulley × wheel, wheels slowest to change.
///
/// ```
/// use pitchline_core::{Build, Draft, WheelPulley, gear_map};
///
/// let build = Build::check(&Draft::typical()).unwrap();
/// let wheel_pulleys = [36.0, 46.0].map(|teeth| WheelPulley { teeth, ..build.wheel_pulley });
/// let cells = gear_map(&build, &[build.motor_pulley], &wheel_pulleys, &[build.wheel]);
/// let [few, many] = cells[..] else { panic!("one for each pairing") };
/// assert_eq!((few.wheel_pulley, many.wheel_pulley), (0, 1));
/// // More teeth on the wheel pulley: less speed and more push.
/// assert!(many.top_speed_m_s < few.top_speed_m_s && many.grade > few.grade);
/// ```
#[must_use]
pub fn gear_map(
    build: &Build,
    motor_pulleys: &[MotorPulley],
    wheel_pulleys: &[WheelPulley],
    wheels: &[Wheel],
) -> Vec<GearCell> {
    let drive = Drive::new(build);
    let full = drive.supply(1.0, Sag::Burst);
    let hill = Slope::of_grade(build.ride.grade);
    let mut cells = Vec::with_capacity(motor_pulleys.len() * wheel_pulleys.len() * wheels.len());
    for (wheel, with_wheel) in wheels.iter().enumerate() {
        for (wheel_pulley, with_wheel_pulley) in wheel_pulleys.iter().enumerate() {
            for (motor_pulley, with_motor_pulley) in motor_pulleys.iter().enumerate() {
                let drive = drive.with_gear(&Build {
                    wheel: *with_wheel,
                    wheel_pulley: *with_wheel_pulley,
                    motor_pulley: *with_motor_pulley,
                    ..*build
                });
                let top = drive.top_speed(&full, &FULL, Slope::FLAT);
                cells.push(GearCell {
                    motor_pulley,
                    wheel_pulley,
                    wheel,
                    top_speed_m_s: top.speed_m_s,
                    limit: top.limit,
                    grade: drive.steepest(&full, SLOW_M_S).grade,
                    hill_speed_m_s: drive.top_speed(&full, &FULL, hill).speed_m_s,
                    distance_m: drive.reach(build.ride.cruise_m_s).distance_m,
                });
            }
        }
    }
    cells
}
