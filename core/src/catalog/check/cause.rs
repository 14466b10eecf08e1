//! Why a combination does not fit, and which parts decide it.

use crate::answers::Notice;
use crate::answers::fit::{Between, Misfit, MisfitKind, Severity};
use crate::parts::Slot;

/// Why a combination does not fit, whatever its sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// A slot whose part is not there.
    Missing(Slot),
    /// A full pack has more volts than the controller survives.
    PackAboveController,
    /// The charger ends at other volts than a full pack has.
    ChargerVoltage,
    /// A full cell is said to have more volts than its chemistry bears.
    FullVoltage,
    /// The pack weighs less than the cells in it.
    PackTooLight,
    /// Two parts carry tags that do not match.
    Tags(Slot, Slot),
    /// No belt on offer wants a centre distance that the mount reaches.
    BeltTravel,
    /// The belt must pull more than it is rated for.
    BeltOverload,
    /// Two parts meet, or nearly.
    Clearance(Between),
    /// The enclosure drags on the road under the standing rider.
    BoxDrags,
    /// The enclosure strikes the road off a bump, or nearly.
    BoxStrikes,
    /// Pack and controller do not go in the enclosure, or only just.
    PackInBox,
    /// Deck and tyre meet before the trucks' furthest lean, or nearly.
    WheelBite,
}

/// What was found of one combination, with its sizes.
#[derive(Clone, Debug, PartialEq)]
pub enum Finding {
    /// A slot whose part is not there.
    Missing(Slot),
    /// Parts that do not agree.
    Notice(Notice),
    /// Parts that do not fit by their sizes, or only just.
    Misfit(Misfit),
}

impl Cause {
    /// The slots whose parts decide it, the likeliest to be changed first. Others move the sizes,
    /// as a pulley moves the motor; a belt goes with its pulleys and is never among them.
    #[must_use]
    pub fn slots(self) -> &'static [Slot] {
        use Slot::{
            Charger, Controller, Deck, Motor, MotorPulley, Pack, Truck, Wheel, WheelPulley,
        };
        match self {
            Self::Missing(Slot::Cell) | Self::FullVoltage | Self::PackTooLight => &[Pack],
            Self::Missing(_) => &[],
            Self::PackAboveController => &[Controller, Pack],
            Self::ChargerVoltage => &[Charger, Pack],
            Self::Tags(one, other) => match (one, other) {
                (Motor, MotorPulley) => &[Motor, MotorPulley],
                (Wheel, WheelPulley) => &[Wheel, WheelPulley],
                (Pack, Charger) => &[Pack, Charger],
                (Pack, Controller) => &[Pack, Controller],
                (Truck, _) => &[Truck],
                _ => &[],
            },
            Self::BeltTravel => &[MotorPulley, WheelPulley, Truck],
            Self::BeltOverload => &[Motor, Controller, MotorPulley, WheelPulley],
            Self::Clearance(between) => match between {
                Between::PulleyRoad | Between::BeltRoad => &[WheelPulley, Wheel],
                Between::MotorRoad => &[Motor, Wheel, Truck],
                Between::MotorWheel => &[Motor, Wheel],
                Between::MotorDeck | Between::MotorBox => &[Motor, Deck, Truck],
                Between::MotorMotor | Between::Hanger => &[Motor, Truck],
                Between::Axle => &[Wheel, Truck],
            },
            Self::BoxDrags | Self::BoxStrikes | Self::WheelBite => &[Wheel, Deck, Truck],
            Self::PackInBox => &[Pack, Controller, Deck],
        }
    }
}

impl Finding {
    /// What causes it.
    #[must_use]
    pub const fn cause(&self) -> Cause {
        match self {
            Self::Missing(slot) => Cause::Missing(*slot),
            Self::Notice(notice) => match notice {
                Notice::PackAboveController { .. } => Cause::PackAboveController,
                Notice::ChargerVoltage { .. } => Cause::ChargerVoltage,
                Notice::FullVoltage { .. } => Cause::FullVoltage,
                Notice::PackTooLight { .. } => Cause::PackTooLight,
                Notice::TagMismatch { one, other, .. } => Cause::Tags(*one, *other),
            },
            Self::Misfit(misfit) => match misfit.kind {
                MisfitKind::BeltTooShort { .. } | MisfitKind::BeltOutOfSlot { .. } => {
                    Cause::BeltTravel
                }
                MisfitKind::BeltOverload { .. } => Cause::BeltOverload,
                MisfitKind::Clearance { between, .. } => Cause::Clearance(between),
                MisfitKind::BoxDrags { .. } => Cause::BoxDrags,
                MisfitKind::BoxStrikes { .. } => Cause::BoxStrikes,
                MisfitKind::PackInBox { .. } => Cause::PackInBox,
                MisfitKind::WheelBite { .. } | MisfitKind::NearWheelBite { .. } => Cause::WheelBite,
            },
        }
    }

    /// Whether it does not fit, or is tight.
    #[must_use]
    pub const fn severity(&self) -> Severity {
        match self {
            Self::Misfit(misfit) => misfit.severity,
            _ => Severity::DoesNotFit,
        }
    }

    /// How bad it is: more is worse, among findings of one cause and severity.
    pub(super) fn size(&self) -> f64 {
        match self {
            Self::Missing(_) => 0.0,
            Self::Notice(notice) => match notice {
                Notice::PackAboveController { pack_v, controller_v } => pack_v - controller_v,
                Notice::ChargerVoltage { charger_v, pack_v, .. } => {
                    crate::math::abs(charger_v - pack_v)
                }
                Notice::FullVoltage { full_v, highest_v } => full_v - highest_v,
                Notice::PackTooLight { pack_kg, cells_kg } => cells_kg - pack_kg,
                Notice::TagMismatch { .. } => 0.0,
            },
            Self::Misfit(misfit) => match misfit.kind {
                // Pulleys that would overlap are worse than any travel.
                MisfitKind::BeltTooShort { touching_m } => 10.0 + touching_m,
                MisfitKind::BeltOutOfSlot { miss_m, .. } => miss_m,
                MisfitKind::BeltOverload { used, .. } => used,
                MisfitKind::Clearance { room_m, .. }
                | MisfitKind::BoxDrags { room_m }
                | MisfitKind::BoxStrikes { room_m, .. } => -room_m,
                MisfitKind::PackInBox { left_m, tightest, .. } => {
                    -left_m.get(tightest).copied().unwrap_or(0.0)
                }
                MisfitKind::WheelBite { riser_m, .. } => riser_m,
                MisfitKind::NearWheelBite { left_m } => -left_m,
            },
        }
    }
}
