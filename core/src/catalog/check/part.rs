//! What a part of the catalogue leaves out.

use crate::bounds::{Field, Need};
use crate::catalog::{Catalog, PACK_CELL};
use crate::parts::{Cell, CellClass, Kind, Record};
use alloc::vec::Vec;

/// A value that a part leaves out, so that a usual one is taken.
#[derive(Clone, Copy, Debug)]
pub struct AssumedValue {
    /// The input.
    pub field: &'static Field,
    /// What is taken, in the unit of the field; none where that follows from the cells of the
    /// build, which the part alone does not tell.
    pub value: Option<f64>,
}

/// A part that leaves something out.
#[derive(Clone, Debug)]
pub struct PartCheck<'c> {
    /// Its kind.
    pub kind: Kind,
    /// The part.
    pub part: &'c Record,
    /// What is assumed in its place, in the order of the kind's table; without its mass.
    pub assumed: Vec<AssumedValue>,
    /// Whether it has no price, where parts of its kind have one. Cells come with the pack.
    pub no_price: bool,
    /// Whether it has no mass, where parts of its kind have one. Cells come with the pack.
    pub no_mass: bool,
}

impl Catalog {
    /// Every part that leaves something out, by kind, in the maker's order.
    ///
    /// ```
    /// use pitchline_core::catalog::Catalog;
    ///
    /// let text = r#"{ "schema_version": 1, "maker": "Ferry Lane Board Works",
    ///   "belts": [{ "id": "b320", "name": "320 mm", "width_mm": 12, "teeth": 64, "mass_kg": 0.01,
    ///               "pitch_mm": 5, "efficiency_percent": 96, "rating_n_per_mm": 30 }] }"#;
    /// let (catalog, _) = Catalog::read(text).unwrap();
    /// let belt = catalog.check_parts().remove(0);
    /// assert!(belt.no_price && !belt.no_mass && belt.assumed.is_empty());
    /// ```
    #[inline]
    #[must_use]
    pub fn check_parts(&self) -> Vec<PartCheck<'_>> {
        let mut found = Vec::new();
        for kind in Kind::ALL.iter().copied() {
            for part in self.parts(kind) {
                let lacks = |key: &str| {
                    let index = kind.field_index(key).filter(|_| kind != Kind::Cell);
                    index.is_some_and(|index| part.value(index).is_none())
                };
                let assumed = self.assumed_of(kind, part);
                let (no_price, no_mass) = (lacks("price"), lacks("mass_kg"));
                if no_price || no_mass || !assumed.is_empty() {
                    found.push(PartCheck { kind, part, assumed, no_price, no_mass });
                }
            }
        }
        found
    }

    fn assumed_of(&self, kind: Kind, part: &Record) -> Vec<AssumedValue> {
        let cell = match kind {
            Kind::Cell => Some(part),
            Kind::Pack => self.part(Kind::Cell, part.tag(PACK_CELL)),
            _ => None,
        };
        let class = cell.map(|cell| CellClass::of(Cell::FIELDS, Cell::TAGS, cell));
        let mut assumed = Vec::new();
        for (index, field) in kind.fields().iter().enumerate() {
            if field.need != Need::Assumed || part.value(index).is_some() {
                continue;
            }
            // The mass is told with the masses that are missing.
            if field.key == "mass_kg" && kind != Kind::Cell {
                continue;
            }
            let value = match (field.by_cell, class) {
                (None, _) => Some(field.typical),
                (Some(_), class) => class.map(|class| field.assumed(class)),
            };
            assumed.push(AssumedValue { field, value });
        }
        assumed
    }
}
