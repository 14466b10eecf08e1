//! One file a question, and what they all stand on: the drive, an operating
//! point, and the push that the board can give.

mod answer_set;
mod charge;
mod charger;
mod climb;
mod distance;
mod drive;
mod explain;
pub mod fit;
mod gear_map;
mod limit;
mod margins;
mod notice;
mod point;
mod push;
mod season;
mod settings;
mod speed;
mod summary;
mod swap;
mod wiring;

pub use answer_set::{
    AnswerSet, Bands, ChargeAnswer, Conditions, MadeBy, OutingAnswer, answer_set,
};
pub use charge::{Charge, ChargeEnd, ChargeLimit, ChargePoint, explain_charge};
pub use charger::{
    ChargeRefusal, ChargerFit, ChargerOffer, Charging, LEAST_CHARGE_C, TooStrong, charger_offer,
    charging,
};
pub use climb::{Climb, SLOW_M_S, Steepest};
pub use distance::{Distance, DistancePoint, Reach};
pub(crate) use explain::steepest;
pub use explain::{Headline, explain};
pub use fit::{
    BeltCheck, BeltChoice, BeltFit, BeltList, BeltLoad, BeltMesh, BeltMiss, BeltOffers,
    BeltOnBoard, BeltTension, BenchFit, CentreFrom, MeasuredCentre, PulleyPair, PulleySize,
    belt_fit,
};
pub use gear_map::{GearCell, gear_map};
pub(crate) use limit::Least;
pub use limit::Limit;
pub use margins::{
    CLOSE, FUSE_SHARE, HOT_DAY_C, Level, Margin, Margins, Occasion, Rating, margins,
};
pub use notice::{Caveat, Notice, caveats, fits, notices};
pub use point::Point;
pub(crate) use push::FULL;
pub use push::{Push, PushCurve, PushPoint};
pub use season::{SeasonPoint, by_age, by_temperature};
pub use settings::{
    FIRST_RIDE, Grounds, LEVERS, ModeSettings, Recommended, Setting, mode_settings, settings,
    with_highest, with_settings,
};
pub use speed::{Speed, TopSpeed};
pub use summary::{Street, Summary, summary};
pub use swap::{Swap, Swapper};
pub use wiring::{FUSES_A, FuseChoice, Gauge, Leads, RISE_K, Wiring, gauge, wiring};

pub(crate) use drive::Copper;
pub use drive::{Drive, Sag, Supply};

use crate::build::Build;
use crate::physics::battery;
use serde::Serialize;

/// What the parts add up to.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Totals {
    /// Board without rider, kg.
    pub board_mass_kg: f64,
    /// Board, rider and what is carried, kg.
    pub total_mass_kg: f64,
    /// Nameplate energy of the pack, Wh.
    pub nameplate_wh: f64,
    /// Wheel pulley teeth over motor pulley teeth.
    pub gear_ratio: f64,
    /// Sum of the prices given, in the catalogue's currency.
    pub price: f64,
    /// Slots without a price, a count.
    pub unpriced: usize,
}

/// Speed, hills and distance answered, with their curves.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Answers {
    /// What's on it?
    pub totals: Totals,
    /// How fast?
    pub speed: Speed,
    /// How steep?
    pub climb: Climb,
    /// How far?
    pub distance: Distance,
    /// Push and road load over speed.
    pub push: PushCurve,
}

/// Answers how fast, how steep and how far for a checked build; [`answer_set`] answers all.
///
/// Never fails: whatever a checked build holds, each answer is finite.
///
/// ```
/// use pitchline_core::{Build, Draft, answers};
/// use std::f64::consts::TAU;
///
/// let found = answers(&Build::check(&Draft::typical()).unwrap());
/// // 42 V at 95 % duty and 190 rpm/V, geared 36 to 16, on wheels of 97 mm that give by 1 mm:
/// // without any load the board would be so fast.
/// let unloaded_m_s = 42.0 * 0.95 * 190.0 / 60.0 * TAU * 0.0475 * 16.0 / 36.0;
/// let top = found.speed.flat_full.speed_m_s;
/// assert!(top > 0.7 * unloaded_m_s && top < unloaded_m_s);
/// // A pack nearly empty is slower, and climbs less.
/// assert!(found.speed.flat_low.speed_m_s < top);
/// assert!(found.climb.slow_low.grade < found.climb.slow.grade);
/// // All energy of the ride is accounted for.
/// let sinks: f64 = found.distance.ledger.sinks_wh().iter().sum();
/// assert!((sinks / found.distance.ledger.stored_wh - 1.0).abs() < 1e-6);
/// ```
#[must_use]
pub fn answers(build: &Build) -> Answers {
    let drive = Drive::new(build);
    let speed = speed::answer(&drive);
    let push = push::curve(&drive, &speed);
    Answers {
        totals: totals(build),
        climb: climb::answer(&drive),
        distance: distance::answer(&drive, speed.flat_full.speed_m_s),
        speed,
        push,
    }
}

/// What the parts add up to.
///
/// ```
/// use pitchline_core::{Build, Draft, totals};
///
/// let found = totals(&Build::check(&Draft::typical()).unwrap());
/// // A rider of 78 kg with 4 kg of luggage.
/// assert!((found.total_mass_kg - found.board_mass_kg - 82.0).abs() < 1e-9);
/// // 10 in series and 3 in parallel of 3 Ah at 3.6 V; 36 teeth over 16.
/// assert!((found.nameplate_wh - 324.0).abs() < 1e-9);
/// assert_eq!(found.gear_ratio, 2.25);
/// ```
#[must_use]
pub fn totals(build: &Build) -> Totals {
    let (price, unpriced) = build.price();
    Totals {
        board_mass_kg: build.board_mass_kg(),
        total_mass_kg: build.mass_kg(),
        nameplate_wh: battery::NameplateEnergy {
            series: build.pack.series,
            parallel: build.pack.parallel,
            cell: build.cell.capacity_ah,
            nominal: build.cell.nominal_v,
        }
        .value(),
        gear_ratio: build.wheel_pulley.teeth / build.motor_pulley.teeth,
        price,
        unpriced,
    }
}
