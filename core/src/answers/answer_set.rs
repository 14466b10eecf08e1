//! Every question answered at once, with what the figures were made by and under.

use super::fit::{BeltOffers, Together, together};
use super::{
    Answers, Caveat, ChargeRefusal, Charging, Climb, Distance, Drive, Limit, Margins, Notice,
    PushCurve, Recommended, Speed, Totals, answers, caveats, charging, margins, notices, settings,
};
use crate::band::{Band, Quantity};
use crate::build::{Build, Draft};
use crate::model::MODEL;
use crate::parts::Outing;
use crate::ride::{Hottest, RideEnd, SagCause, Steps, Trip, Until};
use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

/// Every question answered. All values are in SI, except degrees Celsius, degrees of angle, Wh
/// and Ah, as each says; grades and charges are fractions, 0.12 for 12 %.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct AnswerSet {
    /// What made the figures, and the conditions they hold under.
    pub made_by: MadeBy,
    /// What's on it?
    pub totals: Totals,
    /// How fast?
    pub speed: Speed,
    /// How steep?
    pub climb: Climb,
    /// How far at a steady speed?
    pub distance: Distance,
    /// Push and road load over speed.
    pub push: PushCurve,
    /// How far with stops, hills and heat? Every riding style, until the pack is empty.
    pub rides: Vec<OutingAnswer>,
    /// How long on the charger?
    pub charge: ChargeAnswer,
    /// Does it go together? Without alternatives from a catalogue.
    pub fit: Together,
    /// What gives first?
    pub margins: Margins,
    /// What do I set?
    pub settings: Vec<Recommended>,
    /// What doesn't go together, or is near a limit.
    pub notices: Vec<Notice>,
    /// Which figures rest on weaker ground than the rest.
    pub caveats: Vec<Caveat>,
    /// How sure? Only if asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bands: Option<Bands>,
}

/// What made the figures, and the conditions they hold under. Figures of one board can only be
/// compared if these agree.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct MadeBy {
    /// Version of the program, by semantic versioning.
    pub pitchline: &'static str,
    /// Version of the model, [`MODEL`].
    pub model: u32,
    /// Version of the catalogue that the parts come from, if given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub catalogue: Option<String>,
    /// Conditions that the figures hold under.
    pub conditions: Conditions,
}

/// Conditions that figures hold under, as entered or assumed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Conditions {
    /// Temperature of air and pack, °C.
    pub air_c: f64,
    /// Altitude above sea level, m.
    pub altitude_m: f64,
    /// Headwind, m/s; negative for a tailwind.
    pub headwind_m_s: f64,
    /// Surface, by its name in build files.
    pub surface: &'static str,
    /// Grip, as a share of the load on the driven wheels.
    pub grip: f64,
    /// Weight of rider and load, kg.
    pub load_kg: f64,
    /// Cruising speed, m/s.
    pub cruise_m_s: f64,
    /// Charge at the start of rides, as a share.
    pub start_charge: f64,
    /// Charge that counts as nearly empty, as a share.
    pub low_charge: f64,
}

/// How far a riding style goes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct OutingAnswer {
    /// The riding style, by its name in build files.
    pub outing: &'static str,
    /// Distance, m, until the board can no longer hold 80 % of the intended speed on the flat.
    pub distance_m: f64,
    /// Part of it at the full intended speed, m; 0 if the board never reaches that.
    pub full_wish_m: f64,
    /// How much farther it goes before it drops to walking pace, m.
    pub limp_m: f64,
    /// Time for the distance, rests included, s.
    pub time_s: f64,
    /// Charge at the start, as a share.
    pub start_charge: f64,
    /// Charge left at the end, as a share.
    pub end_charge: f64,
    /// What ends it.
    pub end: RideEnd,
    /// The limit that ends it; none if a whole day passes first.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Option<Limit>,
    /// Why the pack sags, if its voltage is the limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sag: Option<SagCause>,
    /// Whether the ride falls short of what was intended: the board doesn't move, or it loses the
    /// intended speed in the first 80 % of the distance.
    pub falls_short: bool,
    /// Energy out of the cells per kilometre, Wh/km; 0 if the board doesn't move.
    pub wh_per_km: f64,
    /// How warm it gets.
    pub hottest: Hottest,
}

/// How long it charges, or why this pack must not be charged this way.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum ChargeAnswer {
    /// It charges.
    Found(Box<Charging>),
    /// It must not be charged this way: the wrong charger can set a pack on fire.
    Refused(ChargeRefusal),
}

/// Answers as bands; missing where there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct Bands {
    /// Top speed on the flat with a full pack, m/s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub top_speed: Option<Band>,
    /// Steepest hill at 10 km/h with a full pack, as a share.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hill: Option<Band>,
    /// Distance at the rider's cruising speed on the flat, m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub steady_distance: Option<Band>,
    /// Distance of the rider's own riding style, m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outing_distance: Option<Band>,
    /// Time to charge until the charger ends, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub charge_time: Option<Band>,
    /// Time to charge to the level where the rider stops charging, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub enough_time: Option<Band>,
}

/// Answers every question for a build and the draft it was checked from, without bands.
///
/// Never fails: whatever a checked build holds, each answer is finite.
///
/// ```
/// use pitchline_core::{Build, ChargeAnswer, Draft, MODEL, answer_set, answers};
///
/// let draft = Draft::typical();
/// let build = Build::check(&draft).unwrap();
/// let all = answer_set(&draft, &build);
/// assert_eq!(all.made_by.model, MODEL);
/// assert_eq!(all.speed, answers(&build).speed);
/// let town = all.rides.iter().find(|ride| ride.outing == "stop_and_go_town").unwrap();
/// assert!(town.distance_m > 5000.0 && town.end_charge < 0.5);
/// assert!(matches!(all.charge, ChargeAnswer::Found(_)) && all.bands.is_none());
/// ```
#[must_use]
pub fn answer_set(draft: &Draft, build: &Build) -> AnswerSet {
    let drive = Drive::new(build);
    let Answers { totals, speed, climb, distance, push } = answers(build);
    let offers = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };
    AnswerSet {
        made_by: MadeBy::of(build),
        totals,
        speed,
        climb,
        distance,
        push,
        rides: Outing::ALL.into_iter().map(|outing| ride(&drive, outing)).collect(),
        charge: match charging(draft, build) {
            Ok(found) => ChargeAnswer::Found(Box::new(found)),
            Err(refusal) => ChargeAnswer::Refused(refusal),
        },
        fit: together(draft, &drive, &offers),
        margins: margins(build),
        settings: settings(draft, build),
        notices: notices(draft, build),
        caveats: caveats(build),
        bands: None,
    }
}

fn ride(drive: &Drive, outing: Outing) -> OutingAnswer {
    let ride = Trip::out(drive, outing, Until::EMPTY, Steps::USUAL).unrecorded().whole();
    OutingAnswer {
        outing: outing.name(),
        distance_m: ride.distance_m,
        full_wish_m: ride.full_wish_m,
        limp_m: ride.limp_m,
        time_s: ride.time_s,
        start_charge: ride.start_charge,
        end_charge: ride.end_charge,
        end: ride.end,
        limit: ride.stopped.map(|met| met.limit),
        sag: ride.stopped.and_then(|met| met.sag),
        falls_short: ride.falls_short(outing),
        wh_per_km: ride.wh_per_km,
        hottest: ride.hottest,
    }
}

impl MadeBy {
    /// Today's program and model, under a build's conditions; a build knows of no catalogue.
    #[must_use]
    pub fn of(build: &Build) -> Self {
        let (place, ride) = (&build.place, &build.ride);
        let conditions = Conditions {
            air_c: place.air_c,
            altitude_m: place.altitude_m,
            headwind_m_s: place.headwind_m_s,
            surface: place.surface.name(),
            grip: place.grip,
            load_kg: build.rider.mass_kg + build.rider.gear_mass_kg,
            cruise_m_s: ride.cruise_m_s,
            start_charge: ride.start_charge,
            low_charge: ride.low_charge,
        };
        Self { pitchline: env!("CARGO_PKG_VERSION"), model: MODEL, catalogue: None, conditions }
    }
}

impl Bands {
    /// The bands of a build, each of [`Quantity::samples`] boards like it.
    #[must_use]
    pub fn of(build: &Build) -> Self {
        let band = |quantity| Band::of(build, quantity);
        Self {
            top_speed: band(Quantity::TopSpeed),
            hill: band(Quantity::Hill),
            steady_distance: band(Quantity::SteadyDistance),
            outing_distance: band(Quantity::OutingDistance),
            charge_time: band(Quantity::ChargeTime),
            enough_time: band(Quantity::EnoughTime),
        }
    }
}
