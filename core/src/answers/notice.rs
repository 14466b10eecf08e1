//! What a person would want to be told about a build, though it computes.

use crate::build::{Build, Draft};
use crate::parts::{Record, Slot};
use crate::physics::{Basis, Chemistry};
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

/// Something that doesn't go together, or is near a limit.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Notice {
    /// The full pack's voltage is higher than the controller survives.
    PackAboveController {
        /// Full pack, V.
        pack_v: f64,
        /// Controller's limit, V.
        controller_v: f64,
    },
    /// The charger's output voltage isn't that of a full pack.
    ChargerVoltage {
        /// Charger, V.
        charger_v: f64,
        /// Full pack, V.
        pack_v: f64,
        /// The lowest and the highest voltage of a charger for this pack, V.
        fits_v: [f64; 2],
    },
    /// The full voltage entered for a cell is higher than its chemistry takes.
    FullVoltage {
        /// As entered, V.
        full_v: f64,
        /// The most that is usual for the chemistry, V, which is used in its place.
        highest_v: f64,
    },
    /// The pack weighs less than the cells in it.
    PackTooLight {
        /// Pack, kg.
        pack_kg: f64,
        /// Its cells, kg.
        cells_kg: f64,
    },
    /// Two parts carry tags that do not match.
    TagMismatch {
        /// The one part.
        one: Slot,
        /// Its tag.
        one_tag: String,
        /// The other part.
        other: Slot,
        /// Its tag.
        other_tag: String,
    },
}

/// Why a figure rests on weaker ground than the rest.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Caveat {
    /// The cells are colder than anything their class was checked against.
    ColdCells {
        /// Their class.
        chemistry: Chemistry,
        /// The air, °C.
        air_c: f64,
        /// What their figures rest on.
        basis: Basis,
    },
}

/// What stands on weaker ground than the rest.
///
/// ```
/// use pitchline_core::{Build, Caveat, Draft, Slot, caveats};
///
/// let mut draft = Draft::typical();
/// assert!(caveats(&Build::check(&draft).unwrap()).is_empty());
/// // No published run of such cells is as cold as that.
/// draft.set(Slot::Place, "air_c", -25.0);
/// let found = caveats(&Build::check(&draft).unwrap());
/// assert!(matches!(found[..], [Caveat::ColdCells { air_c: -25.0, .. }]));
/// ```
#[must_use]
pub fn caveats(build: &Build) -> Vec<Caveat> {
    let (chemistry, air_c) = (build.cell.chemistry, build.place.air_c);
    let basis = chemistry.basis(air_c);
    let cold = Caveat::ColdCells { chemistry, air_c, basis };
    if basis == Basis::PublishedModel { Vec::new() } else { Vec::from([cold]) }
}

/// Share of the cells' mass below which a pack is too light where that mass is assumed: cells of
/// one size differ by a sixth. Common practice, no source.
const ASSUMED_MASS_HOLDS: f64 = 0.85;

/// Which tag of which slot must equal which tag of which other slot.
const PAIRS: [(Slot, usize, Slot, usize); 5] = [
    (Slot::Motor, 0, Slot::MotorPulley, 0),
    (Slot::Wheel, 0, Slot::WheelPulley, 0),
    (Slot::Pack, 1, Slot::Charger, 0),
    (Slot::Pack, 0, Slot::Controller, 0),
    // The mounts come with the trucks, but for another hanger perhaps.
    (Slot::Truck, 0, Slot::Truck, 1),
];

/// What a person would want to be told.
///
/// ```
/// use pitchline_core::{Build, Draft, Notice, Slot, notices};
///
/// let mut draft = Draft::typical();
/// assert!(notices(&draft, &Build::check(&draft).unwrap()).is_empty());
/// // 10 in series are full at 42 V.
/// draft.set(Slot::Controller, "max_bus_v", 40.0);
/// let found = notices(&draft, &Build::check(&draft).unwrap());
/// assert_eq!(found, [Notice::PackAboveController { pack_v: 42.0, controller_v: 40.0 }]);
/// ```
#[must_use]
pub fn notices(draft: &Draft, build: &Build) -> Vec<Notice> {
    let mut found = Vec::new();
    let pack_v = build.full_pack_v();
    let controller_v = build.controller.max_bus_v;
    if pack_v > controller_v {
        found.push(Notice::PackAboveController { pack_v, controller_v });
    }
    let charger_v = build.charger.full_v;
    let fits_v = build.charger_fits_v();
    if !build.charger_fits(charger_v) {
        found.push(Notice::ChargerVoltage { charger_v, pack_v, fits_v });
    }
    let (full_v, highest_v) = (build.cell.full_v, build.cell.chemistry.highest_full_v());
    if full_v > highest_v {
        found.push(Notice::FullVoltage { full_v, highest_v });
    }
    let cells_kg = build.pack.series * build.pack.parallel * build.cell.mass_kg;
    let weighed = draft.value(Slot::Cell, "mass_kg").is_some();
    let least_kg = if weighed { cells_kg } else { ASSUMED_MASS_HOLDS * cells_kg };
    if let Some(pack_kg) = build.pack.mass_kg.filter(|pack_kg| *pack_kg < least_kg) {
        found.push(Notice::PackTooLight { pack_kg, cells_kg });
    }
    for (one, one_index, other, other_index) in PAIRS {
        let one_tag = draft.record(one).tag(one_index);
        let other_tag = draft.record(other).tag(other_index);
        if !meet(one_tag, other_tag) {
            found.push(Notice::TagMismatch {
                one,
                one_tag: String::from(one_tag),
                other,
                other_tag: String::from(other_tag),
            });
        }
    }
    found
}

/// Whether the tags of two parts allow them together; parts that never meet always may.
#[must_use]
pub fn fits(one: Slot, one_part: &Record, other: Slot, other_part: &Record) -> bool {
    PAIRS
        .iter()
        .filter(|pair| (pair.0, pair.2) == (one, other))
        .all(|(_, one_tag, _, other_tag)| meet(one_part.tag(*one_tag), other_part.tag(*other_tag)))
}

/// A tag that is not given meets every other.
fn meet(one: &str, other: &str) -> bool {
    one.is_empty() || other.is_empty() || one == other
}
