//! The settings of each ride mode, and how they feel.

use super::{Recommended, Setting, with_settings};
use crate::answers::climb::SLOW_M_S;
use crate::answers::drive::{Drive, Sag};
use crate::build::{Build, Draft};
use crate::parts::Mode;
use crate::physics::gear::{ElectricalRpm, MotorSpeed};
use crate::physics::road_load::Slope;
use alloc::vec::Vec;

/// A first ride: 30 % of the current, at most 12 km/h. Common practice, no source.
pub const FIRST_RIDE: Mode = Mode { current_share: 0.3, speed_cap_m_s: Some(12.0 / 3.6) };
/// Positions of throttle and brake, as shares of their travel.
pub const LEVERS: [f64; 4] = [0.25, 0.5, 0.75, 1.0];
/// Share of the braking current on a first ride. Common practice, no source.
const FIRST_BRAKE: f64 = 0.5;
/// Charge at which the acceleration is felt.
const HALF: f64 = 0.5;

/// What one ride mode comes to. Limits are per motor; none where the settings have none.
#[derive(Clone, Debug, PartialEq)]
pub struct ModeSettings {
    /// The mode.
    pub mode: Mode,
    /// Motor current limit, driving, A.
    pub motor_a: Option<f64>,
    /// Motor current limit, braking, A.
    pub brake_a: Option<f64>,
    /// Battery current limit, driving, A.
    pub battery_a: Option<f64>,
    /// ERPM at the mode's speed cap; the board's own limit where it has none.
    pub erpm: Option<f64>,
    /// Acceleration on the flat at 10 km/h, m/s², for each of [`LEVERS`].
    pub push_m_s2: [f64; 4],
    /// Deceleration there by the motors, m/s², likewise.
    pub brake_m_s2: [f64; 4],
}

/// The settings of the build's three ride modes, the strong one first, and of a [`FIRST_RIDE`].
///
/// What is felt is for the recommended values where there are any, else for the board as it is set;
/// the pack is half full. Throttle and brake are taken to be linear: common practice, no source.
#[must_use]
pub fn mode_settings(draft: &Draft, build: &Build, found: &[Recommended]) -> Vec<ModeSettings> {
    let set = Build::check(&with_settings(draft, found)).unwrap_or(*build);
    let drive = Drive::new(&set);
    let [low, mid, high] = build.modes;
    let one = |(mode, brake)| one(&drive, found, mode, brake);
    [(high, 1.0), (mid, 1.0), (low, 1.0), (FIRST_RIDE, FIRST_BRAKE)].map(one).into()
}

fn one(drive: &Drive, found: &[Recommended], mode: Mode, brake: f64) -> ModeSettings {
    let value = |setting| found.iter().find(|one| one.setting == setting).and_then(|one| one.value);
    let shared =
        |setting| value(setting).map(|value| super::rounded_down(mode.current_share * value));
    let supply = drive.supply(HALF, Sag::Sustained);
    let mass_kg = drive.effective_kg();
    let load_n = drive.load_n(SLOW_M_S, Slope::FLAT);
    let push_m_s2 = LEVERS.map(|lever| {
        let mode = Mode { current_share: lever * mode.current_share, speed_cap_m_s: None };
        let push = drive.push(&supply, &mode, SLOW_M_S, Slope::FLAT);
        (push.force_n - load_n) / mass_kg
    });
    let most_a = drive.brake(&supply, SLOW_M_S, Slope::FLAT).current_a;
    let set_a = drive.build.controller.brake_current_a;
    let brake_m_s2 = LEVERS.map(|lever| {
        let current_a = (lever * brake * set_a).min(most_a);
        (load_n - drive.braked_n(current_a, SLOW_M_S)) / mass_kg
    });
    let erpm_at = |speed: f64| {
        let (ratio, radius) = (drive.ratio, drive.radius_m);
        let omega = MotorSpeed { ratio, speed, radius }.value();
        ElectricalRpm { omega, pairs: drive.build.motor.pole_pairs }.value()
    };
    let most_erpm = value(Setting::Erpm);
    let erpm = match mode.speed_cap_m_s {
        Some(cap) if value(Setting::PolePairs).is_some() => {
            let capped = super::rounded_down(erpm_at(cap));
            Some(most_erpm.map_or(capped, |most| most.min(capped)))
        }
        Some(_) => None,
        None => most_erpm,
    };
    ModeSettings {
        mode,
        motor_a: shared(Setting::MotorDrive),
        brake_a: value(Setting::MotorBrake).map(|value| super::rounded_down(brake * value)),
        battery_a: shared(Setting::BatteryDraw),
        erpm,
        push_m_s2,
        brake_m_s2,
    }
}
