//! The physics of a belt-drive electric longboard: gearing, speed, hills and range.
//!
//! A board is a [`Draft`]: one [`Record`] for each [`Slot`], with values in the
//! units of the maker's file. [`Build::check`] turns it into typed parts in SI,
//! after which nothing can be out of range and nothing fails; [`answers`] then
//! answers how fast, how steep and how far ([`answer_set`] every question), and [`explain`]
//! shows the working of each.
//!
//! ```
//! use pitchline_core::{Build, Draft, Headline, Slot, answers, explain};
//!
//! // A plausible board, then a rider of 95 kg and a larger wheel pulley.
//! let mut draft = Draft::typical();
//! draft.set(Slot::Rider, "mass_kg", 95.0);
//! draft.set(Slot::WheelPulley, "teeth", 46.0);
//!
//! let build = Build::check(&draft).unwrap();
//! let found = answers(&build);
//! let km_h = found.speed.flat_full.speed_m_s * 3.6;
//! assert!(km_h > 25.0 && km_h < 50.0);
//!
//! // The working ends where push and road load are equal.
//! let steps = explain(&build, Headline::TopSpeed);
//! let spare = steps.last().unwrap();
//! assert_eq!(spare.formula.symbol, "F_spare");
//! assert!(spare.result.abs() < 1e-3);
//!
//! // A value out of range is refused by name, with its range and unit.
//! draft.set(Slot::WheelPulley, "teeth", 7.0);
//! let errors = Build::check(&draft).unwrap_err();
//! assert_eq!(
//!     errors[0].to_string(),
//!     "wheel_pulley.teeth: 7 teeth is outside the range 12 to 120 teeth",
//! );
//! ```
//!
//! # Units, ranges and sources
//!
//! All values are in SI, but for degrees Celsius, degrees of angle, Ah and Wh; the end of a name
//! says the unit (`_m`, `_m_s`, `_m_s2`, `_n`, `_n_m`, `_kg`, `_s`, `_v`, `_a`, `_w`, `_wh`, `_c`,
//! `_deg`). Charges, duties and efficiencies are shares from 0 to 1. A grade is rise over run,
//! positive uphill, and a share like them but of any size. Times, distances, speeds, masses and
//! prices are 0 or more. Temperatures, rooms and forces may be negative, as their docs say.
//! What a function is given may be any finite number where its docs name no range. What a build
//! holds is within the limits that stand beside each input of a part.
//!
//! Every figure comes from laws that name their source ([`source`], [`Formula::source`]), from a
//! checked input, or from a constant whose docs say where it is from: a published source, or
//! "common practice, no source". [`explain`] shows which laws an answer went through.
//!
//! Every ampere of motor current is in the convention that the controller's
//! record names; see [`physics::motor`].
// What makes declarations of the types writes for the standard library.
#![cfg_attr(not(feature = "schema"), no_std)]
#![cfg_attr(
    not(test),
    deny(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing,
        clippy::cast_possible_truncation,
        clippy::cast_possible_wrap,
        clippy::cast_sign_loss,
        clippy::unreachable,
        clippy::todo
    )
)]

extern crate alloc;
#[cfg(any(test, feature = "std"))]
extern crate std;

#[macro_use]
mod listed;
#[macro_use]
pub mod physics;

mod answers;
pub mod band;
mod bounds;
mod build;
#[cfg(feature = "catalog")]
pub mod catalog;
mod error;
pub mod guide;
mod math;
mod model;
mod near;
mod parts;
pub mod ride;
pub mod source;
mod working;

pub use answers::{
    AnswerSet, Answers, Bands, BeltCheck, BeltChoice, BeltFit, BeltList, BeltLoad, BeltMesh,
    BeltMiss, BeltOffers, BeltOnBoard, BeltTension, BenchFit, CLOSE, Caveat, CentreFrom, Charge,
    ChargeAnswer, ChargeEnd, ChargeLimit, ChargePoint, ChargeRefusal, ChargerFit, ChargerOffer,
    Charging, Climb, Conditions, Distance, DistancePoint, Drive, FIRST_RIDE, FUSE_SHARE, FUSES_A,
    FuseChoice, Gauge, GearCell, Grounds, HOT_DAY_C, Headline, LEAST_CHARGE_C, LEVERS, Leads,
    Level, Limit, MadeBy, Margin, Margins, MeasuredCentre, ModeSettings, Notice, Occasion,
    OutingAnswer, Point, PulleyPair, PulleySize, Push, PushCurve, PushPoint, RISE_K, Rating, Reach,
    Recommended, SLOW_M_S, Sag, SeasonPoint, Setting, Speed, Steepest, Street, Summary, Supply,
    Swap, Swapper, TooStrong, TopSpeed, Totals, Wiring, answer_set, answers, belt_fit, by_age,
    by_temperature, caveats, charger_offer, charging, explain, explain_charge, fit, fits, gauge,
    gear_map, margins, mode_settings, notices, settings, summary, totals, wiring, with_highest,
    with_settings,
};
pub use bounds::{Field, Need, Unit};
pub use build::{Build, Draft, Unfilled, WHEELS};
pub use error::{Error, Reason};
pub use math::{angle, sine_cosine};
pub use model::MODEL;
pub use parts::{
    Belt, Bench, Cell, CellClass, Charger, Controller, Convention, Deck, Kind, Mode, Motor,
    MotorPulley, Outing, Pack, Place, Posture, Record, Ride, Rider, Slot, Surface, Truck, Wheel,
    WheelPulley,
};
pub use working::{Definition, Formula, Law, Step, Working};
