//! The maker's file: parts by kind and kits, read with every fault located.
//!
//! ```
//! use pitchline_core::catalog::Catalog;
//!
//! let text = r#"{
//!   "schema_version": 1, "maker": "Ferry Lane Board Works",
//!   "motor_pulleys": [{ "id": "mp16", "name": "16 teeth", "teeth": 16 },
//!                     { "id": "mp7", "name": "7 teeth", "teeth": 7 }]
//! }"#;
//! let (catalog, faults) = Catalog::read(text).unwrap();
//! assert_eq!(catalog.parts(pitchline_core::Kind::MotorPulley).len(), 1);
//! assert_eq!(
//!     faults[0].to_string(),
//!     "\"7 teeth\": /motor_pulleys/1/teeth: 7 teeth is outside the range 8 to 60 teeth",
//! );
//! ```

// What reads files is `#[inline]`: it is then compiled where it is used, in the page for size.

mod build_file;
mod check;
#[cfg(feature = "schema")]
mod declarations;
mod left_out;
mod outcome;
mod pointer;
mod read;
mod record;
#[cfg(feature = "schema")]
mod schema;
mod syntax;

use left_out::LeftOut;

pub use build_file::{read_build, write_build};
pub use check::{
    AssumedValue, Cause, Finding, Group, KitCheck, KitReport, MOST_CHECKED, PartCheck, Place,
};
#[cfg(feature = "schema")]
pub use declarations::declarations;
pub use outcome::{Fault, Options, Outcome};
#[cfg(feature = "schema")]
pub use schema::{build_schema, catalogue_schema};
pub use syntax::syntax_fault;

use crate::build::Draft;
use crate::parts::{Kind, Record, Slot};
use alloc::string::String;
use alloc::vec::Vec;

/// Version of the catalogue's form that is written here and understood in full.
pub const SCHEMA_VERSION: u32 = 1;

/// A maker's parts and kits.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Catalog {
    /// Who made it.
    pub maker: String,
    /// Currency of every price, as the maker writes it.
    pub currency: String,
    /// The maker's own version of the file.
    pub version: String,
    /// Anything a reader should know.
    pub notes: String,
    /// Kits, in the maker's order.
    pub kits: Vec<Kit>,
    parts: Vec<Vec<Record>>,
    left_out: Vec<LeftOut>,
}

/// A kit: a default part for each slot, and what is offered for it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kit {
    /// Stable id.
    pub id: String,
    /// Name for people.
    pub name: String,
    /// Anything a reader should know.
    pub notes: String,
    offers: Vec<Offer>,
    settings: Vec<(Slot, Record)>,
}

/// What a kit offers for a slot.
#[derive(Clone, Debug, PartialEq)]
struct Offer {
    slot: Slot,
    /// By id, as written; the first is the default, and empty if it cannot be read.
    ids: Vec<String>,
}

impl Catalog {
    /// Every part of a kind.
    #[must_use]
    pub fn parts(&self, kind: Kind) -> &[Record] {
        self.parts.get(kind as usize).map_or(&[], Vec::as_slice)
    }

    /// The part of a kind with that id.
    #[must_use]
    pub fn part(&self, kind: Kind, id: &str) -> Option<&Record> {
        self.parts(kind).iter().find(|part| part.id == id)
    }

    /// The kit with that id.
    #[must_use]
    pub fn kit(&self, id: &str) -> Option<&Kit> {
        self.kits.iter().find(|kit| kit.id == id)
    }

    /// What a kit offers for a slot, its default first if it is there; where the kit offers
    /// nothing that is there, every part of the kind.
    #[must_use]
    pub fn offered(&self, kit: &str, slot: Slot) -> Vec<&Record> {
        let mut found: Vec<&Record> = Vec::new();
        for id in self.offer(kit, slot).map_or(&[][..], |offer| &offer.ids) {
            let new = found.iter().all(|part| part.id != *id);
            found.extend(self.part(slot.kind(), id).filter(|_| new));
        }
        if found.is_empty() { self.parts(slot.kind()).iter().collect() } else { found }
    }

    fn offer(&self, kit: &str, slot: Slot) -> Option<&Offer> {
        self.kit(kit)?.offers.iter().find(|offer| offer.slot == slot)
    }

    /// The kit as it is sold. A slot whose default part was left out, or is not known, stays
    /// unfilled ([`Draft::unfilled`]): another part in its place would be another board. A slot
    /// that the kit does not name begins with the first part of its kind, and with typical values
    /// where the catalogue lists none.
    #[inline]
    #[must_use]
    pub fn draft(&self, kit: &str) -> Draft {
        let mut draft = Draft::typical();
        draft.kit = String::from(kit);
        for slot in Slot::ALL.iter().copied().filter(|slot| slot.holds_part()) {
            let default = self.offer(kit, slot).and_then(|offer| offer.ids.first());
            if let Some(id) = default {
                self.fill(&mut draft, slot, id);
            } else if let Some(unfilled) = self.first_missing(slot) {
                draft.unfill(unfilled);
            } else if let Some(part) = self.parts(slot.kind()).first() {
                draft.set_record(slot, part.clone());
            }
        }
        self.follow_pack(&mut draft);
        for (slot, record) in self.kit(kit).map_or(&[][..], |kit| &kit.settings) {
            // What the kit does not set stays typical.
            for (index, value) in record.values.iter().enumerate() {
                if value.is_some() {
                    draft.set_value(*slot, index, *value);
                }
            }
        }
        draft
    }

    /// Puts the part with that id into a slot, or leaves the slot unfilled where there is none.
    pub fn fill(&self, draft: &mut Draft, slot: Slot, id: &str) {
        if let Some(unfilled) = self.missing(slot, id) {
            draft.unfill(unfilled);
        } else if let Some(part) = self.part(slot.kind(), id) {
            draft.set_record(slot, part.clone());
        }
    }

    /// Puts the pack's own cell into the cell slot, where the pack names one.
    pub fn follow_pack(&self, draft: &mut Draft) {
        let cell = String::from(draft.record(Slot::Pack).tag(PACK_CELL));
        if !cell.is_empty() {
            self.fill(draft, Slot::Cell, &cell);
        }
    }
}

/// Place of the tag by which a pack names its cell.
const PACK_CELL: usize = 2;
