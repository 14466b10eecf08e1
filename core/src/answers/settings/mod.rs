//! What do I set? The values for a controller, each by the part that it protects.

mod mode;
mod setting;

pub use mode::{FIRST_RIDE, LEVERS, ModeSettings, mode_settings};
pub use setting::Setting;

use super::drive::Drive;
use super::margins::{FUSE_SHARE, Rating, drawn};
use crate::bounds::Field;
use crate::build::{Build, Draft};
use crate::math::floor;
use crate::parts::Slot;
use crate::physics::Chemistry;
use crate::physics::gear::BeltTorque;
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// What a value was taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Grounds {
    /// The rating that allows the least.
    Rating(Rating),
    /// The part is like that, or its maker says so.
    Part,
    /// The pack's cut-off voltage, and a little above it. Common practice, no source.
    CutOff,
    /// The motor's winding limit, and a little below it. Common practice, no source.
    WindingLimit,
    /// Common practice, no source.
    Usual,
}

/// A value to set, or why there is none.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct Recommended {
    /// Of what.
    pub setting: Setting,
    /// The value, in the setting's unit; none while a figure is missing, or where not even the lowest that can be
    /// set is low enough for the rating named by `basis`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<f64>,
    /// The highest that the ratings allow, in the same unit; none for what is no limit, and with
    /// `value`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub most: Option<f64>,
    /// What it was taken from; none while a figure is missing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub basis: Option<Grounds>,
    /// Inputs that nobody gave and without which there is no value.
    pub missing: Vec<(Slot, &'static str)>,
    /// Ratings that nobody gave and that were left out of account.
    pub uncounted: Vec<Rating>,
}

/// Cells that are empty before the protection circuit disconnects them all: the controller cuts out
/// this much above, V. Common practice, no source.
const ABOVE_CUT_OFF_V: f64 = 0.1;
/// From there to where it starts to limit, V. Common practice, no source.
const CUTBACK_V: f64 = 0.3;
/// The same for LFP, whose voltage is flat, V. Common practice, no source.
const FLAT_CUTBACK_V: f64 = 0.2;
/// The controller cuts out this much below what the windings bear, K. Common practice, no source.
const BELOW_WINDING_K: f64 = 10.0;
/// It starts to limit this much below that, K. Common practice, no source.
const HOT_K: f64 = 20.0;

/// What limits a setting: a rating, and the setting that it allows.
type Bound = (Rating, Option<f64>);

/// The values to set in the controller of a checked build, `draft` being what it was checked from.
///
/// A limit stays as it is on this board, up to the highest that no rating forbids, rounded down. A
/// rating that is assumed, or that nobody gave, gives no value: its input is named in `missing`.
///
/// ```
/// use pitchline_core::{Grounds, Build, Draft, Rating, Setting, Slot, settings};
///
/// let mut draft = Draft::typical();
/// let drive = |draft: &Draft| {
///     let found = settings(draft, &Build::check(draft).unwrap());
///     found.into_iter().find(|one| one.setting == Setting::MotorDrive).unwrap()
/// };
/// assert_eq!(drive(&draft).value, None);
/// draft.set(Slot::Motor, "max_current_a", 70.0);
/// draft.set(Slot::Belt, "rating_n_per_mm", 60.0);
/// assert_eq!(drive(&draft).missing, [(Slot::Controller, "rated_motor_a")]);
/// draft.set(Slot::Controller, "rated_motor_a", 65.5);
/// draft.set(Slot::Controller, "motor_current_a", 80.0);
/// let found = drive(&draft);
/// assert_eq!((found.value, found.most), (Some(65.0), Some(65.0)));
/// assert_eq!(found.basis, Some(Grounds::Rating(Rating::ControllerMotorCurrent)));
/// ```
#[must_use]
pub fn settings(draft: &Draft, build: &Build) -> Vec<Recommended> {
    let mut ask = Ask { draft, build, drive: Drive::new(build), set: *build };
    let is_draw = |setting: &Setting| *setting == Setting::BatteryDraw;
    let others = Setting::ALL.into_iter().filter(|setting| !is_draw(setting));
    let others: Vec<_> = others.map(|setting| ask.recommend(setting)).collect();
    // What the hill draws from the pack depends on all the others.
    ask.set = Build::check(&with_highest(draft, &others)).unwrap_or(*build);
    let mut others = others.into_iter();
    let next = |setting: Setting| {
        if is_draw(&setting) { Some(ask.recommend(setting)) } else { others.next() }
    };
    Setting::ALL.into_iter().filter_map(next).collect()
}

/// The draft with every recommended value that it has an input for.
#[must_use]
pub fn with_settings(draft: &Draft, found: &[Recommended]) -> Draft {
    with(draft, found, |one| one.value)
}

/// The same with the highest that the ratings allow.
#[must_use]
pub fn with_highest(draft: &Draft, found: &[Recommended]) -> Draft {
    with(draft, found, |one| one.most.or(one.value))
}

fn with(draft: &Draft, found: &[Recommended], of: fn(&Recommended) -> Option<f64>) -> Draft {
    let mut set = draft.clone();
    for one in found {
        let Some(((slot, key), value)) = one.setting.input().zip(of(one)) else { continue };
        if slot == Slot::Controller {
            set.set(slot, key, value / unit_of(slot, key));
        }
    }
    set
}

struct Ask<'a> {
    draft: &'a Draft,
    build: &'a Build,
    drive: Drive,
    /// The build with what is recommended beside the battery current.
    set: Build,
}

impl Ask<'_> {
    fn is_given(&self, (slot, key): (Slot, &str)) -> bool {
        self.draft.value(slot, key).is_some()
    }

    fn recommend(&self, setting: Setting) -> Recommended {
        let b = self.build;
        let c = &b.controller;
        let motors = b.truck.motor_count;
        let each = |total: f64| Some(total / motors);
        match setting {
            Setting::MotorDrive => self.limit(setting, &self.motor_bounds(false), &[]),
            Setting::MotorBrake => self.limit(setting, &self.motor_bounds(true), &[]),
            Setting::BatteryDraw => {
                let rated = |rated: Option<f64>| rated.and_then(each);
                let must = [
                    (Rating::CellDischarge, each(b.cell.max_discharge_a * b.pack.parallel)),
                    (Rating::Protection, each(b.pack.protection_a)),
                    (Rating::Fuse, rated(b.pack.fuse_a.map(|a| self.fused_a(a)))),
                    (Rating::Leads, rated(b.pack.wire_a)),
                    (Rating::PackConnector, rated(b.pack.connector_a)),
                    (Rating::ControllerBatteryCurrent, c.rated_battery_a),
                ];
                self.limit(setting, &must, &[(Rating::InnerWires, rated(b.pack.inner_wire_a))])
            }
            Setting::BatteryRegen => {
                // A full pack takes less, and the controller then brakes less; set for that, the
                // brakes would be weak on every ride.
                let must = [(Rating::CellRegen, each(b.cell.max_charge_a * b.pack.parallel))];
                self.limit(setting, &must, &[])
            }
            Setting::Erpm => {
                let turns = b.wheel.bearing_rpm.map(|rpm| rpm * self.drive.ratio);
                let bearings = turns.map(|rpm| rpm * b.motor.pole_pairs);
                let must = [(Rating::ControllerSpeed, c.rated_erpm)];
                let found = self.limit(setting, &must, &[(Rating::Bearings, bearings)]);
                if self.is_given((Slot::Motor, "pole_pairs")) || bearings.is_none() {
                    return found;
                }
                self.lacking(setting, [(Slot::Motor, "pole_pairs")].into())
            }
            Setting::VoltageStart | Setting::VoltageEnd => {
                let flat = b.cell.chemistry == Chemistry::Lfp;
                let end_v = b.pack.cut_off_v + ABOVE_CUT_OFF_V;
                let value = match setting {
                    Setting::VoltageEnd => end_v,
                    _ => end_v + if flat { FLAT_CUTBACK_V } else { CUTBACK_V },
                };
                self.plain(setting, (Slot::Pack, "cut_off_v"), value, Grounds::CutOff)
            }
            Setting::ControllerHotStart => self.own(setting, c.cutback_start_c),
            Setting::ControllerHotEnd => self.own(setting, c.cutback_end_c),
            Setting::MotorHotStart | Setting::MotorHotEnd => {
                let end_c = b.motor.winding_limit_c - BELOW_WINDING_K;
                let value = if setting == Setting::MotorHotEnd { end_c } else { end_c - HOT_K };
                self.plain(setting, (Slot::Motor, "winding_limit_c"), value, Grounds::WindingLimit)
            }
            Setting::MaxDuty => {
                let given = self.is_given((Slot::Controller, "max_duty_percent"));
                let basis = if given { Grounds::Part } else { Grounds::Usual };
                found(setting, c.max_duty, basis)
            }
            Setting::PolePairs => self.own(setting, b.motor.pole_pairs),
            Setting::GearRatio => {
                let teeth = [Slot::WheelPulley, Slot::MotorPulley].map(|slot| (slot, "teeth"));
                match teeth.into_iter().find(|input| !self.is_given(*input)) {
                    Some(input) => self.lacking(setting, [input].into()),
                    None => found(setting, self.drive.ratio, Grounds::Part),
                }
            }
            Setting::WheelDiameter => self.own(setting, b.wheel.diameter_m),
            Setting::Series => self.own(setting, b.pack.series),
        }
    }

    /// Current, A, that a fuse of a rating, A, lets the pack give: all of it for seconds, but no more
    /// than its share for long where the rider's hill would take more.
    fn fused_a(&self, fuse_a: f64) -> f64 {
        let mut all = self.set;
        all.controller.battery_current_a = fuse_a / all.truck.motor_count;
        let [hill_a, _] = drawn(&all);
        if hill_a > FUSE_SHARE * fuse_a { FUSE_SHARE * fuse_a } else { fuse_a }
    }

    /// What motor, controller and belt allow the motors to push or brake with.
    fn motor_bounds(&self, braking: bool) -> [Bound; 3] {
        let b = self.build;
        let torque = BeltTorque {
            pull: self.drive.belt_rated_n,
            teeth: b.motor_pulley.teeth,
            pitch: b.belt.pitch_m,
        };
        // Iron and bearings help the belt when it drives, and pull at it when the motors brake.
        let omega = self.drive.motor_rad_s(super::climb::CRAWL_M_S);
        let iron = if braking { self.drive.iron_n_m(omega, &mut Working::off()) } else { 0.0 };
        let belt_a = (torque.value() - iron) / self.drive.torque_per_amp;
        [
            (Rating::MotorCurrent, Some(b.motor.max_current_a)),
            (Rating::ControllerMotorCurrent, b.controller.rated_motor_a),
            (Rating::Belt, Some(belt_a)),
        ]
    }

    /// The highest that every rating allows, rounded down. `must` are those without which there is
    /// none, `may` those that count where they are given.
    fn limit(&self, setting: Setting, must: &[Bound], may: &[Bound]) -> Recommended {
        let is_given = |rating: Rating| rating.is_given(self.draft);
        let missing = must.iter().map(|(rating, _)| *rating).filter(|rating| !is_given(*rating));
        let missing: Vec<_> = missing.map(Rating::input).collect();
        if !missing.is_empty() {
            return self.lacking(setting, missing);
        }
        let mut least = (f64::INFINITY, None);
        for (rating, bound) in must.iter().chain(may) {
            if let Some(bound) = bound.filter(|bound| *bound < least.0) {
                least = (bound, Some(Grounds::Rating(*rating)));
            }
        }
        let (bound, basis) = least;
        let lowest = setting.input().map_or(0.0, |(slot, key)| lowest(slot, key));
        let most = Some(rounded_down(bound)).filter(|most| *most >= lowest);
        let value = most.map(|most| most.min(self.now(setting)));
        let uncounted = may.iter().map(|(rating, _)| *rating).filter(|rating| !is_given(*rating));
        Recommended { setting, value, most, basis, missing, uncounted: uncounted.collect() }
    }

    /// What a limit is on this board, as set or as assumed: what every other answer goes by.
    fn now(&self, setting: Setting) -> f64 {
        let c = &self.build.controller;
        match setting {
            Setting::MotorDrive => c.motor_current_a,
            Setting::MotorBrake => c.brake_current_a,
            Setting::BatteryDraw => c.battery_current_a,
            Setting::BatteryRegen => c.regen_current_a,
            Setting::Erpm => c.erpm_limit,
            _ => f64::INFINITY,
        }
    }

    /// What the part itself says.
    fn own(&self, setting: Setting, value: f64) -> Recommended {
        match setting.input() {
            Some(input) => self.plain(setting, input, value, Grounds::Part),
            None => self.lacking(setting, Vec::new()),
        }
    }

    /// A value that follows from one input.
    fn plain(
        &self,
        setting: Setting,
        input: (Slot, &'static str),
        value: f64,
        basis: Grounds,
    ) -> Recommended {
        if self.is_given(input) {
            found(setting, value, basis)
        } else {
            self.lacking(setting, [input].into())
        }
    }

    fn lacking(&self, setting: Setting, missing: Vec<(Slot, &'static str)>) -> Recommended {
        Recommended {
            setting,
            value: None,
            most: None,
            basis: None,
            missing,
            uncounted: Vec::new(),
        }
    }
}

fn found(setting: Setting, value: f64, basis: Grounds) -> Recommended {
    let (missing, uncounted) = (Vec::new(), Vec::new());
    Recommended { setting, value: Some(value), most: None, basis: Some(basis), missing, uncounted }
}

/// Rounded down to what one sets: hundreds from a thousand on, whole from ten on, else tenths.
fn rounded_down(value: f64) -> f64 {
    let steps = match value {
        value if value >= 1000.0 => 0.01,
        value if value >= 10.0 => 1.0,
        _ => 10.0,
    };
    // What is a whole number but for the last bits is that number.
    floor(value * steps * (1.0 + 1e-12)) / steps
}

fn field(slot: Slot, key: &str) -> Option<&'static Field> {
    let kind = slot.kind();
    kind.fields().get(kind.field_index(key)?)
}

/// What one of an input's unit is in SI.
fn unit_of(slot: Slot, key: &str) -> f64 {
    field(slot, key).map_or(1.0, |field| field.unit.si())
}

/// The lowest value of an input, in SI.
fn lowest(slot: Slot, key: &str) -> f64 {
    field(slot, key).map_or(0.0, |field| field.min) * unit_of(slot, key)
}
