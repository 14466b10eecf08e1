//! What does not fit, or only just, each with what cures it.

use super::{BeltFit, BeltOnBoard, Between, BoxPlan, Clearance, DeckFit, Lean, Together, WheelAt};
use crate::build::Build;
use crate::parts::Slot;
use crate::physics::frame::TIGHT_M;
use alloc::vec;
use alloc::vec::Vec;
use serde::Serialize;

/// How bad a misfit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// It does not fit, by the sizes entered or assumed.
    DoesNotFit,
    /// It fits with less than [`TIGHT_M`] to spare, less than such sizes are sure to.
    Tight,
}

/// What to do about a misfit: change an input, by its slot and its key in files, pick another
/// part for a slot, or use a belt, by its place among those on offer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Cure {
    /// Change an input, by its slot and its key in files.
    Change(Slot, &'static str),
    /// Pick another part.
    Pick(Slot),
    /// Use this belt, by its place among the belts on offer.
    Belt(usize),
}

/// What does not fit, with the sizes of it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
#[serde(rename_all = "snake_case")]
pub enum MisfitKind {
    /// The belt on the board is so short that the pulleys would overlap.
    BeltTooShort {
        /// Centre distance at which the pulleys touch, m.
        touching_m: f64,
    },
    /// The belt on the board wants a centre distance that the mount does not reach.
    BeltOutOfSlot {
        /// The centre distance that it wants, m.
        centre_m: f64,
        /// The mount's stops, m, the nearer first.
        slot_m: [f64; 2],
        /// From there to the nearer of them, m; positive.
        miss_m: f64,
    },
    /// The belt must pull more than it is rated for.
    BeltOverload {
        /// Greatest pull as a share of the rating; above 1.
        used: f64,
        /// Whether braking pulls harder than the push.
        braking: bool,
    },
    /// Two parts meet, or nearly. Never the belt and the road, as the pulley's flange reaches
    /// lower, nor the two motors, as the hanger has less room beside them.
    Clearance {
        /// Which two.
        between: Between,
        /// The room, m, below [`TIGHT_M`], 2 mm; negative is by how much they do not fit.
        room_m: f64,
    },
    /// The enclosure drags on the road under the standing rider.
    BoxDrags {
        /// Enclosure to the road, m; negative.
        room_m: f64,
    },
    /// The enclosure strikes the road at the bottom of a bump, or nearly; told only where it does not
    /// drag.
    BoxStrikes {
        /// Height of the bump, m.
        bump_m: f64,
        /// Enclosure to the road, m, below [`TIGHT_M`], 2 mm; negative where it strikes.
        room_m: f64,
    },
    /// Pack and controller do not go in the enclosure, or only just.
    PackInBox {
        /// Room left along, across and up, m; negative is too little.
        left_m: [f64; 3],
        /// The direction with the least room left, by its place: 0 along, 1 across, 2 up.
        tightest: usize,
        /// Least inside length of an enclosure as wide and as high that takes them, m; none where it is
        /// too narrow or too low for any.
        #[serde(skip_serializing_if = "Option::is_none")]
        length_for_m: Option<f64>,
    },
    /// Deck and tyre meet before the trucks' furthest lean.
    WheelBite {
        /// The wheel that the deck meets first.
        wheel: WheelAt,
        /// The lean at which it does, degrees.
        lean_deg: f64,
        /// The furthest lean, degrees.
        most_deg: f64,
        /// Riser that only just keeps them apart up to there, m.
        riser_m: f64,
    },
    /// Deck and tyre only just stay apart up to the furthest lean.
    NearWheelBite {
        /// Change of the riser, m, up or down, that is left before they meet.
        left_m: f64,
    },
}

/// Something that does not fit, or only just.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Misfit {
    /// What, with its sizes.
    pub kind: MisfitKind,
    /// Whether it does not fit, or is tight.
    pub severity: Severity,
    /// What to do about it, the likeliest first. A change cures if it goes far enough; one pick
    /// of many may not.
    pub cures: Vec<Cure>,
}

impl Misfit {
    fn new(kind: MisfitKind, cures: Vec<Cure>) -> Self {
        Self { kind, severity: Severity::DoesNotFit, cures }
    }

    /// By its room: below zero it does not fit.
    fn by_room(room_m: f64, kind: MisfitKind, cures: Vec<Cure>) -> Self {
        let severity = if room_m < 0.0 { Severity::DoesNotFit } else { Severity::Tight };
        Self { kind, severity, cures }
    }
}

/// Everything that does not fit, or only just.
pub(super) fn misfits(build: &Build, found: &Together) -> Vec<Misfit> {
    let mut list = Vec::new();
    list.extend(belt_length(&found.belt));
    list.extend(belt_load(&found.belt));
    list.extend(found.clearances.iter().filter_map(clearance));
    list.extend(box_over_road(build, &found.deck));
    list.extend(pack_in_box(&found.cells));
    list.extend(wheel_bite(build, &found.lean));
    list
}

fn belt_length(fit: &BeltFit) -> Option<Misfit> {
    let [near, far] = fit.slot_m;
    let kind = match fit.on_board {
        BeltOnBoard::TooShort => MisfitKind::BeltTooShort { touching_m: fit.touching_m },
        BeltOnBoard::Taut(belt) if !belt.in_slot => {
            let centre_m = belt.mesh.centre_m;
            let miss_m = (near - centre_m).max(centre_m - far);
            MisfitKind::BeltOutOfSlot { centre_m, slot_m: fit.slot_m, miss_m }
        }
        _ => return None,
    };
    let cures = match fit.pick().and_then(|belt| belt.offer) {
        Some(place) => vec![Cure::Belt(place), Cure::Pick(Slot::Belt)],
        None => vec![
            Cure::Pick(Slot::WheelPulley),
            Cure::Pick(Slot::Belt),
            Cure::Change(Slot::Truck, "centre_max_mm"),
        ],
    };
    Some(Misfit::new(kind, cures))
}

fn belt_load(fit: &BeltFit) -> Option<Misfit> {
    let load = &fit.load;
    if load.used <= 1.0 {
        return None;
    }
    let braking = load.brake_n > load.drive_n;
    let current = if braking { "brake_current_a" } else { "motor_current_a" };
    let cures = vec![Cure::Pick(Slot::Belt), Cure::Change(Slot::Controller, current)];
    Some(Misfit::new(MisfitKind::BeltOverload { used: load.used, braking }, cures))
}

fn clearance(c: &Clearance) -> Option<Misfit> {
    if c.room_m >= TIGHT_M {
        return None;
    }
    let change = Cure::Change;
    let cures = match c.between {
        // Both are told as others, with less room.
        Between::BeltRoad | Between::MotorMotor => return None,
        Between::Hanger => [change(Slot::Truck, "hanger_width_mm"), Cure::Pick(Slot::Motor)],
        Between::Axle => [change(Slot::Truck, "axle_mm"), Cure::Pick(Slot::Wheel)],
        Between::PulleyRoad => [Cure::Pick(Slot::WheelPulley), Cure::Pick(Slot::Wheel)],
        Between::MotorRoad => [change(Slot::Truck, "mount_angle_deg"), Cure::Pick(Slot::Wheel)],
        Between::MotorDeck => {
            [change(Slot::Deck, "riser_mm"), change(Slot::Truck, "mount_angle_deg")]
        }
        Between::MotorBox => {
            [change(Slot::Deck, "box_ahead_mm"), change(Slot::Deck, "box_length_mm")]
        }
        Between::MotorWheel => [Cure::Pick(Slot::Belt), Cure::Pick(Slot::Motor)],
    };
    let kind = MisfitKind::Clearance { between: c.between, room_m: c.room_m };
    Some(Misfit::by_room(c.room_m, kind, cures.into()))
}

fn box_over_road(build: &Build, deck: &DeckFit) -> Option<Misfit> {
    let raise =
        vec![Cure::Change(Slot::Deck, "riser_mm"), Cure::Change(Slot::Deck, "box_height_mm")];
    let room_m = deck.bump_road_m;
    if deck.road_m < 0.0 {
        Some(Misfit::new(MisfitKind::BoxDrags { room_m: deck.road_m }, raise))
    } else if room_m < TIGHT_M {
        let bump_m = build.place.bump_m;
        Some(Misfit::by_room(room_m, MisfitKind::BoxStrikes { bump_m, room_m }, raise))
    } else {
        None
    }
}

fn pack_in_box(cells: &BoxPlan) -> Option<Misfit> {
    let BoxPlan { left_m, tightest, length_for_m, .. } = *cells;
    let kind = MisfitKind::PackInBox { left_m, tightest, length_for_m };
    if cells.fits {
        let left = left_m.get(tightest).copied().unwrap_or(0.0);
        let cures = vec![Cure::Pick(Slot::Pack)];
        return (left < TIGHT_M).then_some(Misfit { kind, severity: Severity::Tight, cures });
    }
    let keys = ["box_length_mm", "box_width_mm", "box_height_mm"];
    let over = left_m.iter().zip(keys).filter(|(left, _)| **left < 0.0);
    let mut cures: Vec<_> = over.map(|(_, key)| Cure::Change(Slot::Deck, key)).collect();
    cures.push(Cure::Pick(Slot::Pack));
    Some(Misfit::new(kind, cures))
}

fn wheel_bite(build: &Build, lean: &Lean) -> Option<Misfit> {
    let cures = vec![Cure::Change(Slot::Deck, "riser_mm"), Cure::Pick(Slot::Wheel)];
    if let Some(left_m) = lean.left_m {
        let kind = MisfitKind::NearWheelBite { left_m };
        return Some(Misfit { kind, severity: Severity::Tight, cures });
    }
    let (wheel, lean_deg) = lean.first_bite().filter(|_| lean.bites)?;
    let (most_deg, riser_m) = (build.truck.max_lean_deg, lean.riser_m);
    Some(Misfit::new(MisfitKind::WheelBite { wheel, lean_deg, most_deg, riser_m }, cures))
}
