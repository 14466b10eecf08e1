//! How far the deck sags, and what that leaves under the enclosure.

use super::{Row, assumed};
use crate::build::{Build, Draft};
use crate::math::abs;
use crate::parts::Slot;
use crate::physics::deck::{
    BoxRoad, BoxRoadBump, BreakOver, BumpSag, DeckSag, FootDistance, ScaledSag, StandingMass,
};
use crate::physics::frame::DeckHeight;
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// What a sag was worked out from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum SagFrom {
    /// One that was measured.
    Measured,
    /// The deck's stiffness.
    Stiffness,
}

/// Deck and enclosure under the rider.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct DeckFit {
    /// Sag in the middle, standing still, m.
    pub sag_m: f64,
    /// What it was worked out from.
    pub sag_from: SagFrom,
    /// Enclosure to the road, standing still, m; negative where it would drag.
    pub road_m: f64,
    /// Sag at the bottom of a bump, m.
    pub bump_sag_m: f64,
    /// Enclosure to the road at the bottom of a bump, m; negative where it strikes.
    pub bump_road_m: f64,
    /// Sharpest crest between two slopes that rolls through, degrees; none
    /// where the enclosure already drags on level ground.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub break_over_deg: Option<f64>,
    /// Where such a crest would touch, ahead of the middle between the axles, m.
    pub crest_m: f64,
    /// Inputs that were assumed.
    pub assumed: Vec<Row>,
}

impl DeckFit {
    /// Sag that there is room for, m: a deck that would sag farther lies with its enclosure on the road.
    #[must_use]
    pub fn sag_with_room_m(&self) -> f64 {
        (self.sag_m + self.road_m.min(0.0)).max(0.0)
    }
}

/// Sag, ground clearance and break-over angle.
///
/// ```
/// use pitchline_core::fit::{SagFrom, deck_fit};
/// use pitchline_core::{Build, Draft, Slot};
///
/// // 10 mm of sag under 80 kg are 10.25 mm under a rider of 78 kg with 4 kg of luggage.
/// let mut draft = Draft::typical();
/// draft.set(Slot::Deck, "sag_mm", 10.0);
/// draft.set(Slot::Deck, "sag_mass_kg", 80.0);
/// let found = deck_fit(&draft, &Build::check(&draft).unwrap());
/// assert_eq!(found.sag_from, SagFrom::Measured);
/// assert!((found.sag_m - 0.010_25).abs() < 1e-12);
/// // A riser 5 mm higher lifts the enclosure by as much.
/// draft.set(Slot::Deck, "riser_mm", 20.0);
/// let higher = deck_fit(&draft, &Build::check(&draft).unwrap());
/// assert!((higher.road_m - found.road_m - 0.005).abs() < 1e-12);
/// assert!(higher.break_over_deg > found.break_over_deg);
/// ```
#[must_use]
pub fn deck_fit(draft: &Draft, build: &Build) -> DeckFit {
    let w = &mut Working::off();
    let sag_m = sag(build, w);
    let bump_sag_m = w.apply(BumpSag { sag: sag_m, bump: build.place.bump_m });
    let road_m = road(build, sag_m, w);
    let measured = build.deck.sag_m.is_some();
    let mut inputs = Vec::from(INPUTS);
    inputs.extend(if measured { &MEASURED[..] } else { &STIFFNESS[..] });
    DeckFit {
        sag_m,
        sag_from: if measured { SagFrom::Measured } else { SagFrom::Stiffness },
        road_m,
        bump_sag_m,
        bump_road_m: bump_road(build, bump_sag_m, w),
        break_over_deg: (road_m > 0.0).then(|| break_over(build, road_m, w)),
        crest_m: crest(build),
        assumed: assumed(draft, &inputs),
    }
}

const MEASURED: [(Slot, &str); 1] = [(Slot::Deck, "sag_mass_kg")];
const STIFFNESS: [(Slot, &str); 2] = [(Slot::Deck, "stiffness_n_m2"), (Slot::Deck, "stance_mm")];
const INPUTS: [(Slot, &str); 11] = [
    (Slot::Rider, "mass_kg"),
    (Slot::Rider, "gear_mass_kg"),
    (Slot::Place, "bump_mm"),
    (Slot::Wheel, "deflection_mm"),
    (Slot::Truck, "height_mm"),
    (Slot::Deck, "wheelbase_mm"),
    (Slot::Deck, "riser_mm"),
    (Slot::Deck, "box_length_mm"),
    (Slot::Deck, "box_height_mm"),
    (Slot::Deck, "box_wall_mm"),
    (Slot::Deck, "box_ahead_mm"),
];

pub(super) fn sag(build: &Build, w: &mut Working) -> f64 {
    let deck = &build.deck;
    let mass = standing(build, w);
    match deck.sag_m {
        Some(sag) => w.apply(ScaledSag { measured: sag, mass, under: deck.sag_mass_kg }),
        None => {
            let foot = w.apply(FootDistance { base: deck.wheelbase_m, stance: deck.stance_m });
            w.apply(DeckSag { mass, foot, base: deck.wheelbase_m, stiffness: deck.stiffness_n_m2 })
        }
    }
}

pub(super) fn standing(build: &Build, w: &mut Working) -> f64 {
    w.apply(StandingMass { rider: build.rider.mass_kg, load: build.rider.gear_mass_kg })
}

pub(super) fn road(build: &Build, sag: f64, w: &mut Working) -> f64 {
    let under = under(build, w);
    w.apply(BoxRoad {
        deck: under,
        height: build.deck.box_height_m,
        wall: build.deck.box_wall_m,
        sag,
    })
}

pub(super) fn bump_road(build: &Build, sag: f64, w: &mut Working) -> f64 {
    let under = under(build, w);
    w.apply(BoxRoadBump {
        deck: under,
        height: build.deck.box_height_m,
        wall: build.deck.box_wall_m,
        sag,
    })
}

fn under(build: &Build, w: &mut Working) -> f64 {
    let radius = build.wheel.radius_explained(w);
    w.apply(DeckHeight { radius, truck: build.truck.height_m, riser: build.deck.riser_m })
}

/// Place of the enclosure's floor that is nearest the middle between the axles.
fn crest(build: &Build) -> f64 {
    let half = build.deck.box_length_m / 2.0 + build.deck.box_wall_m;
    let ahead = build.deck.box_ahead_m;
    let short = (abs(ahead) - half).max(0.0);
    if ahead < 0.0 { -short } else { short }
}

pub(super) fn break_over(build: &Build, road: f64, w: &mut Working) -> f64 {
    let radius = build.wheel.radius_explained(w);
    w.apply(BreakOver { radius, base: build.deck.wheelbase_m, height: road, crest: crest(build) })
}
