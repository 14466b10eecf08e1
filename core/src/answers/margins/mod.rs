//! What gives first? Every rating of a build against what the build and its rider ask of it.

mod rating;

pub use rating::Rating;

use super::climb::CRAWL_M_S;
use super::drive::{Drive, Sag, Supply};
use super::push::FULL;
use crate::build::Build;
use crate::math::PI;
use crate::physics::gear;
use crate::physics::road_load::Slope;
use crate::ride::OVER_VOLTAGE;
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// The occasion at which a rating is asked for the most.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Occasion {
    /// Full throttle, at whatever speed asks for the most.
    FullThrottle,
    /// The rider's hill at cruising speed, or as fast as the board climbs it, for as long as it lasts.
    Hill,
    /// The same on a hot day: [`HOT_DAY_C`].
    HotDay,
    /// Top speed on the flat with a full pack.
    TopSpeed,
    /// Braking with the motors.
    Braking,
    /// With a full pack.
    FullPack,
    /// On the charger.
    Charging,
    /// Standing on the board.
    Standing,
}

/// How much is left of a rating.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Level {
    /// More is asked than the part bears.
    Over,
    /// Less than [`CLOSE`] is left.
    Close,
    /// More than that is left.
    Fine,
}

/// A rating against what is asked of it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct Margin {
    /// The rating.
    pub rating: Rating,
    /// What the part bears, in the unit of the rating; of a fuse what it bears for long.
    pub bears: f64,
    /// What is asked of it, in the same unit.
    pub asked: f64,
    /// When.
    pub occasion: Occasion,
    /// For seconds at full throttle, in the same unit, where the rating is for continuous use and that
    /// is more.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub briefly: Option<f64>,
    /// Share of the rating that is left; negative where too much is asked.
    pub left: f64,
    /// What that comes to.
    pub level: Level,
}

/// What gives first?
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Margins {
    /// Every rating that is known, the one with the least left first.
    pub list: Vec<Margin>,
    /// Ratings that nobody has given.
    pub missing: Vec<Rating>,
}

/// Share of its rated current that a fuse bears for long, 75 %. Common practice, no source.
pub const FUSE_SHARE: f64 = 0.75;
/// Less than this share left is close. Common practice, no source.
pub const CLOSE: f64 = 0.1;
/// A hot day, °C. Common practice, no source.
pub const HOT_DAY_C: f64 = 35.0;
/// Charge on a long hill.
const HALF: f64 = 0.5;
/// Speeds at which full throttle is tried, from a crawl to the top speed.
const SPEEDS: usize = 25;
/// Wheels that share the load.
const WHEELS: f64 = 4.0;
/// Share of a rating by which two ways of working out the same may differ.
const HAIR: f64 = 1e-9;
/// More than any rating: what nothing on the board keeps to by itself doesn't hold it back here.
const UNRATED: f64 = 1e9;

/// The board as its controller drives it, whatever its other parts are rated for.
fn unrated(build: &Build) -> Drive {
    let mut b = *build;
    b.motor.max_current_a = UNRATED;
    b.cell.max_discharge_a = UNRATED;
    b.pack.protection_a = UNRATED;
    b.belt.rating_n_per_m = UNRATED;
    Drive::new(&b)
}

/// What full throttle asks for at the most.
struct Peak {
    pack_a: f64,
    motor_a: f64,
}

impl Drive {
    /// The most that a supply gives and the motors take at full throttle, from a crawl to a speed, m/s.
    fn peak(&self, supply: &Supply, top_m_s: f64) -> Peak {
        let mut peak = Peak { pack_a: 0.0, motor_a: 0.0 };
        for at in 0..SPEEDS {
            let share = at as f64 / (SPEEDS - 1) as f64;
            let speed = CRAWL_M_S + share * (top_m_s - CRAWL_M_S).max(0.0);
            let push = self.push(supply, &FULL, speed, Slope::FLAT);
            let current = push.motor_current_a;
            peak.motor_a = peak.motor_a.max(current);
            if let Some(bus_v) = self.bus_v(self.copper, supply, current, self.motor_rad_s(speed)) {
                let pack_a = (supply.open_v - bus_v) / supply.resistance_ohm.max(1e-9);
                peak.pack_a = peak.pack_a.max(pack_a);
            }
        }
        peak
    }

    /// The same with a full pack and one nearly empty.
    fn peak_of_all(&self, full: &Supply, top_m_s: f64) -> Peak {
        let low = self.supply(self.build.ride.low_charge, Sag::Burst);
        let (full, low) = (self.peak(full, top_m_s), self.peak(&low, top_m_s));
        Peak { pack_a: full.pack_a.max(low.pack_a), motor_a: full.motor_a.max(low.motor_a) }
    }

    /// Motor and pack current on the rider's hill at cruising speed, or as fast as it climbs, A, and
    /// that speed, m/s; at full throttle where it does not climb at all.
    fn on_hill(&self) -> [f64; 3] {
        let ride = &self.build.ride;
        let slope = Slope::of_grade(ride.grade);
        let supply = self.supply(HALF, Sag::Sustained);
        let most = self.top_speed(&supply, &FULL, slope).speed_m_s;
        let speed = ride.cruise_m_s.min(most);
        match self.hold(&supply, speed, slope).filter(|_| speed > 0.0) {
            Some(point) => [point.motor_current_a.max(0.0), point.pack_current_a.max(0.0), speed],
            None => {
                let Peak { pack_a, motor_a } = self.peak(&supply, CRAWL_M_S);
                [motor_a, pack_a, CRAWL_M_S]
            }
        }
    }
}

/// What a build draws from its pack, A: on the rider's hill, and for seconds at full throttle.
pub(crate) fn drawn(build: &Build) -> [f64; 2] {
    let free = unrated(build);
    let full = free.supply(1.0, Sag::Burst);
    let top_m_s = free.top_speed(&full, &FULL, Slope::FLAT).speed_m_s;
    let [_, hill_a, _] = free.on_hill();
    [hill_a, free.peak_of_all(&full, top_m_s).pack_a]
}

/// What gives first: every rating of a checked build against what build and rider ask of it.
///
/// Full throttle is what the controller's own limits let through. Ratings that nothing on the board
/// keeps to by itself do not hold it back here, since they are what is to be found out.
///
/// ```
/// use pitchline_core::{Build, Draft, Level, Rating, Slot, margins};
///
/// let mut draft = Draft::typical();
/// let fuse = |draft: &Draft| {
///     let found = margins(&Build::check(draft).unwrap());
///     found.list.into_iter().find(|margin| margin.rating == Rating::Fuse)
/// };
/// assert!(fuse(&draft).is_none());
/// // Three quarters of 10 A are less than a hill of 8 % takes.
/// draft.set(Slot::Pack, "fuse_a", 10.0);
/// assert_eq!(fuse(&draft).unwrap().level, Level::Over);
/// draft.set(Slot::Pack, "fuse_a", 80.0);
/// assert_eq!((fuse(&draft).unwrap().bears, fuse(&draft).unwrap().level), (60.0, Level::Fine));
/// ```
#[must_use]
pub fn margins(build: &Build) -> Margins {
    let b = build;
    let drive = Drive::new(b);
    let free = unrated(b);
    let full = free.supply(1.0, Sag::Burst);
    let top_m_s = free.top_speed(&full, &FULL, Slope::FLAT).speed_m_s;
    let peak = free.peak_of_all(&full, top_m_s);
    let [hill_motor_a, hill_pack_a, _] = free.on_hill();
    let hot = {
        let mut hot = *b;
        hot.place.air_c = hot.place.air_c.max(HOT_DAY_C);
        hot.ride.winding_c = hot.winding_held_c();
        hot
    };
    let [hot_motor_a, _, hot_m_s] = unrated(&hot).on_hill();
    let hot_drive = Drive::new(&hot);
    let hot_v = hot_drive.supply(HALF, Sag::Sustained).open_v;

    let mut found = Margins { list: Vec::new(), missing: Vec::new() };
    let mut put = |rating: Rating, bears: Option<f64>, asked: f64, occasion: Occasion| {
        found.put(rating, bears, asked, occasion, None);
    };
    let parallel = b.pack.parallel;
    put(
        Rating::CellDischarge,
        Some(b.cell.max_discharge_a),
        peak.pack_a / parallel,
        Occasion::FullThrottle,
    );
    let charged_a = b.charger.current_a;
    let regained_a = free.motors * b.controller.regen_current_a;
    let charge_a = Some(b.cell.max_charge_a);
    put(Rating::CellCharge, charge_a, charged_a / parallel, Occasion::Charging);
    put(Rating::CellRegen, charge_a, regained_a / parallel, Occasion::Braking);
    put(
        Rating::FullPackRegen,
        Some(b.full_pack_v() * OVER_VOLTAGE),
        b.full_pack_v() + regained_a * full.resistance_ohm,
        Occasion::Braking,
    );
    put(Rating::Protection, Some(b.pack.protection_a), peak.pack_a, Occasion::FullThrottle);
    put(Rating::FuseVoltage, b.pack.fuse_v, b.full_pack_v(), Occasion::FullPack);
    put(Rating::ChargePort, b.pack.charge_port_a, charged_a, Occasion::Charging);
    put(
        Rating::ControllerVoltage,
        Some(b.controller.max_bus_v),
        b.full_pack_v(),
        Occasion::FullPack,
    );
    let braked_a = b.controller.brake_current_a;
    let (motor_a, when) = if peak.motor_a >= braked_a {
        (peak.motor_a, Occasion::FullThrottle)
    } else {
        (braked_a, Occasion::Braking)
    };
    put(Rating::ControllerMotorCurrent, b.controller.rated_motor_a, motor_a, when);
    put(Rating::MotorCurrent, Some(b.motor.max_current_a), motor_a, when);
    put(
        Rating::ControllerBatteryCurrent,
        b.controller.rated_battery_a,
        peak.pack_a / free.motors,
        Occasion::FullThrottle,
    );
    let top_rad_s = free.motor_rad_s(top_m_s);
    let erpm = gear::ElectricalRpm { omega: top_rad_s, pairs: b.motor.pole_pairs }.value();
    put(Rating::ControllerSpeed, b.controller.rated_erpm, erpm, Occasion::TopSpeed);
    let off = &mut Working::off();
    put(
        Rating::ControllerHeat,
        Some(hot_drive.cool_controller_a(hot_v, off)),
        hot_motor_a,
        Occasion::HotDay,
    );
    put(Rating::WindingHeat, Some(hot_drive.continuous_a(hot_m_s)), hot_motor_a, Occasion::HotDay);
    let [(pushed_n, _), (braked_n, _)] = free.belt_pulls(off);
    let (pull_n, when) = if pushed_n >= braked_n {
        (pushed_n, Occasion::FullThrottle)
    } else {
        (braked_n, Occasion::Braking)
    };
    put(Rating::Belt, Some(drive.belt_rated_n), pull_n, when);
    let wheel_rpm = top_m_s / drive.radius_m * 30.0 / PI;
    put(Rating::Bearings, b.wheel.bearing_rpm, wheel_rpm, Occasion::TopSpeed);
    put(Rating::WheelLoad, b.wheel.max_load_kg, b.mass_kg() / WHEELS, Occasion::Standing);
    let rider_kg = b.rider.mass_kg + b.rider.gear_mass_kg;
    put(Rating::DeckLoad, b.deck.max_load_kg, rider_kg, Occasion::Standing);
    if let Some(pressure) = b.wheel.pressure_pa {
        put(Rating::TyrePressure, b.wheel.max_pressure_pa, pressure, Occasion::Standing);
    }
    let rms = b.controller.convention.rms_factor();
    for (rating, bears, asked, peak) in [
        (Rating::Fuse, b.pack.fuse_a.map(|a| FUSE_SHARE * a), hill_pack_a, peak.pack_a),
        (Rating::Leads, b.pack.wire_a, hill_pack_a, peak.pack_a),
        (Rating::InnerWires, b.pack.inner_wire_a, hill_pack_a, peak.pack_a),
        (Rating::PackConnector, b.pack.connector_a, hill_pack_a, peak.pack_a),
        (Rating::MotorContinuous, b.motor.continuous_a, hill_motor_a, peak.motor_a),
        (Rating::MotorConnector, b.motor.connector_a, rms * hill_motor_a, rms * peak.motor_a),
    ] {
        found.put(rating, bears, asked, Occasion::Hill, Some(peak).filter(|peak| *peak > asked));
    }
    found
}

impl Margins {
    fn put(
        &mut self,
        rating: Rating,
        bears: Option<f64>,
        asked: f64,
        occasion: Occasion,
        briefly: Option<f64>,
    ) {
        let Some(bears) = bears else {
            self.missing.push(rating);
            return;
        };
        // A board that never overheats has no end of it.
        if !bears.is_finite() {
            return;
        }
        let left = if bears > 0.0 { 1.0 - asked / bears } else { -1.0 };
        let level = match left {
            // The controller lets go of the brakes before.
            left if rating == Rating::FullPackRegen && left < CLOSE => Level::Close,
            // What is set to just that is not over it by its last bits.
            left if left < -HAIR => Level::Over,
            left if left < CLOSE => Level::Close,
            _ => Level::Fine,
        };
        let margin = Margin { rating, bears, asked, occasion, briefly, left, level };
        let place = self.list.iter().position(|other| left < other.left);
        self.list.insert(place.unwrap_or(self.list.len()), margin);
    }
}
