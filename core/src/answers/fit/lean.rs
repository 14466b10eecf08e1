//! Lean, turn, and where deck and tyre meet.

use super::deck::standing;
use super::{Row, assumed};
use crate::build::{Build, Draft};
use crate::parts::Slot;
use crate::physics::frame::{PulleyWidth, TIGHT_M};
use crate::physics::lean::{
    BiteCorner, BiteFace, BiteFlank, BiteTread, BushingHardness, ClearCorner, ClearTread,
    EdgeHeight, EdgeReach, EnoughRiser, FlankFront, FlankOuter, FlankRear, SteerFront, SteerRear,
    SteerSum, TurnRadius,
};
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// Which wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum WheelAt {
    /// A front wheel, with no pulley beside it.
    Front,
    /// A driven wheel, further out by its pulley.
    Rear,
}

/// A turn at one lean.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct Turn {
    /// Lean of the deck, degrees.
    pub lean_deg: f64,
    /// Steer of the front truck, degrees.
    pub steer_front_deg: f64,
    /// Steer of the rear truck, degrees, the other way.
    pub steer_rear_deg: f64,
    /// Radius, m; none where the trucks do not steer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub radius_m: Option<f64>,
}

/// How it turns, and what stops it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct Lean {
    /// The turn at the furthest lean that the trucks allow.
    pub furthest: Turn,
    /// Lean at which the deck meets a front tyre, degrees; none where it never does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bite_front_deg: Option<f64>,
    /// Lean at which the deck meets a rear tyre, degrees; none where it never does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bite_rear_deg: Option<f64>,
    /// Whether deck and tyres meet before the furthest lean.
    pub bites: bool,
    /// Riser that keeps them apart up to the furthest lean, m; negative where
    /// the deck could hang lower.
    pub riser_m: f64,
    /// Change of the riser, m, up or down, that is left before they meet; none
    /// where it is [`TIGHT_M`], 2 mm, or more, or where they meet already.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub left_m: Option<f64>,
    /// Hardness of the bushings for the rider, Shore A. Common practice, no source.
    pub bushing_shore_a: f64,
    /// Inputs that were assumed.
    pub assumed: Vec<Row>,
}

impl Lean {
    /// The wheel that the deck meets first as it leans, and where, degrees.
    #[must_use]
    pub fn first_bite(&self) -> Option<(WheelAt, f64)> {
        let front = self.bite_front_deg.map(|lean| (WheelAt::Front, lean));
        let rear = self.bite_rear_deg.map(|lean| (WheelAt::Rear, lean));
        match (front, rear) {
            (Some(front), Some(rear)) => Some(if front.1 < rear.1 { front } else { rear }),
            (front, rear) => front.or(rear),
        }
    }
}

const INPUTS: [(Slot, &str); 12] = [
    (Slot::Deck, "wheelbase_mm"),
    (Slot::Deck, "width_mm"),
    (Slot::Deck, "riser_mm"),
    (Slot::Deck, "thickness_mm"),
    (Slot::Truck, "hanger_width_mm"),
    (Slot::Truck, "height_mm"),
    (Slot::Truck, "pivot_front_deg"),
    (Slot::Truck, "pivot_rear_deg"),
    (Slot::Truck, "max_lean_deg"),
    (Slot::Wheel, "width_mm"),
    (Slot::Rider, "mass_kg"),
    (Slot::Rider, "gear_mass_kg"),
];

/// How it turns, and where deck and tyre meet.
///
/// ```
/// use pitchline_core::fit::lean;
/// use pitchline_core::{Build, Draft, Slot};
///
/// let mut draft = Draft::typical();
/// let build = Build::check(&draft).unwrap();
/// let found = lean(&draft, &build);
/// // Both trucks steer alike, so the middle of the turn is beside the middle of the board:
/// // half of the wheelbase over the tangent of the steer.
/// let steer = found.furthest.steer_front_deg.to_radians();
/// assert!((found.furthest.radius_m.unwrap() - 0.360 / steer.tan()).abs() < 1e-9);
/// // A riser a millimetre higher than what is enough keeps deck and tyres apart.
/// draft.set(Slot::Deck, "riser_mm", 1000.0 * found.riser_m + 1.0);
/// assert!(!lean(&draft, &Build::check(&draft).unwrap()).bites);
/// draft.set(Slot::Deck, "riser_mm", 1000.0 * found.riser_m - 1.0);
/// assert!(lean(&draft, &Build::check(&draft).unwrap()).bites);
/// ```
#[must_use]
pub fn lean(draft: &Draft, build: &Build) -> Lean {
    let w = &mut Working::off();
    let bites = bites(build);
    Lean {
        furthest: turn(build, build.truck.max_lean_deg),
        bite_front_deg: bite(build, WheelAt::Front, w),
        bite_rear_deg: bite(build, WheelAt::Rear, w),
        bites,
        left_m: if bites { None } else { left(build) },
        riser_m: riser(build, w),
        bushing_shore_a: bushing(build, w),
        assumed: assumed(draft, &INPUTS),
    }
}

/// Whether deck and tyres meet before the furthest lean.
fn bites(build: &Build) -> bool {
    let met = |at| bite(build, at, &mut Working::off()).unwrap_or(f64::INFINITY);
    met(WheelAt::Front).min(met(WheelAt::Rear)) < build.truck.max_lean_deg
}

/// The least change of the riser with which they meet, m; a deck between the
/// wheels meets them when it is higher, others when it is lower.
fn left(build: &Build) -> Option<f64> {
    let meets = |by: f64| {
        let with = |by: f64| {
            let mut other = *build;
            other.deck.riser_m += by;
            bites(&other)
        };
        with(-by) || with(by)
    };
    let (mut apart, mut meeting) = (0.0, TIGHT_M);
    if !meets(meeting) {
        return None;
    }
    // Halved to two nanometres.
    for _ in 0..20 {
        let middle = 0.5 * (apart + meeting);
        if meets(middle) {
            meeting = middle;
        } else {
            apart = middle;
        }
    }
    Some(apart)
}

/// The turn at a lean, degrees, from -90 to 90; a lean the other way turns the other way.
#[must_use]
pub fn turn(build: &Build, lean_deg: f64) -> Turn {
    turn_explained(build, lean_deg, &mut Working::off())
}

pub(super) fn turn_explained(build: &Build, lean_deg: f64, w: &mut Working) -> Turn {
    let steer_front_deg =
        w.apply(SteerFront { pivot: build.truck.pivot_front_deg, lean: lean_deg });
    let steer_rear_deg = w.apply(SteerRear { pivot: build.truck.pivot_rear_deg, lean: lean_deg });
    let sum = w.apply(SteerSum { front: steer_front_deg, rear: steer_rear_deg });
    // Less than this is a circle of more than a thousand kilometres.
    let steers = crate::math::abs(sum) > 1e-6;
    let radius_m = steers.then(|| w.apply(TurnRadius { base: build.deck.wheelbase_m, steer: sum }));
    Turn { lean_deg, steer_front_deg, steer_rear_deg, radius_m }
}

/// Inner flank of a wheel, from the middle of the board.
fn flank(build: &Build, at: WheelAt, w: &mut Working) -> f64 {
    let hanger = build.truck.hanger_width_m;
    match at {
        WheelAt::Front => w.apply(FlankFront { hanger }),
        WheelAt::Rear => {
            let pulley = w.apply(PulleyWidth { belt: build.belt.width_m });
            w.apply(FlankRear { hanger, pulley })
        }
    }
}

/// Outer flank of a wheel, from the middle of the board.
fn outer_flank(build: &Build, at: WheelAt, w: &mut Working) -> f64 {
    let inner = flank(build, at, w);
    w.apply(FlankOuter { flank: inner, wheel: build.wheel.width_m })
}

pub(super) fn bite(build: &Build, at: WheelAt, w: &mut Working) -> Option<f64> {
    let (deck, wheel) = (&build.deck, build.wheel.diameter_m);
    let height = w.apply(EdgeHeight { truck: build.truck.height_m, riser: deck.riser_m });
    let quiet = &mut Working::off();
    let (inner, outer) = (flank(build, at, quiet), outer_flank(build, at, quiet));
    let (half, radius) = (deck.width_m / 2.0, wheel / 2.0);
    // How far out the edge is, squared, when it has come down to the tread's height.
    let reach = half * half + height * height - radius * radius;
    let above = height > radius;
    if if above { reach < inner * inner } else { half <= inner } {
        let reach = EdgeReach { height, thickness: deck.thickness_m }.value();
        let corner = inner * inner + radius * radius - half * half;
        let inner = flank(build, at, w);
        if reach * reach >= corner {
            return Some(w.apply(BiteFace { deck: deck.width_m, wheel, flank: inner }));
        }
        let reach = w.apply(EdgeReach { height, thickness: deck.thickness_m });
        return (half * half + reach * reach >= inner * inner)
            .then(|| w.apply(BiteFlank { deck: deck.width_m, reach, flank: inner }));
    }
    if !above || reach <= outer * outer {
        return Some(w.apply(BiteTread { deck: deck.width_m, height, wheel }));
    }
    let corner = outer * outer + radius * radius;
    (height * height <= corner).then(|| {
        let outer = outer_flank(build, at, w);
        w.apply(BiteCorner { height, wheel, outer })
    })
}

pub(super) fn riser(build: &Build, w: &mut Working) -> f64 {
    let (deck, wheel) = (build.deck.width_m, build.wheel.diameter_m);
    let lean = build.truck.max_lean_deg;
    // Whatever clears the outer corner of the rear wheels clears the front's.
    let quiet = &mut Working::off();
    let outer = outer_flank(build, WheelAt::Rear, quiet);
    let tread = ClearTread { wheel, deck, lean }.value();
    let corner = ClearCorner { outer, wheel, lean }.value();
    let clear = if tread <= corner {
        w.apply(ClearTread { wheel, deck, lean })
    } else {
        let outer = outer_flank(build, WheelAt::Rear, w);
        w.apply(ClearCorner { outer, wheel, lean })
    };
    w.apply(EnoughRiser { clear, truck: build.truck.height_m })
}

pub(super) fn bushing(build: &Build, w: &mut Working) -> f64 {
    let mass = standing(build, w);
    w.apply(BushingHardness { mass })
}
