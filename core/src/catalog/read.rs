//! Reading a catalogue, with every fault located by its JSON pointer.

use super::pointer::{AN_OBJECT, MOST, Must, Object, Pointer};
use super::{Catalog, Kit, PACK_CELL, SCHEMA_VERSION, record};
use crate::error::{Error, Reason};
use crate::parts::{Kind, Slot};
use alloc::string::ToString;
use alloc::vec::Vec;
use serde_json::Value;

/// Largest file that is read, in bytes.
const LARGEST: usize = 1 << 20;

/// Keys of the file besides the lists of parts.
const HEAD: [&str; 7] =
    ["schema_version", "catalogue_version", "updated", "maker", "currency", "notes", "kits"];

impl Catalog {
    /// Reads a catalogue. What is faulty is left out and reported; the rest works.
    ///
    /// # Errors
    /// Only when nothing can be read: not JSON (with line and column), not an
    /// object, or larger than 1 MiB.
    #[inline(never)]
    pub fn read(json: &str) -> Result<(Self, Vec<Error>), Error> {
        if json.len() > LARGEST {
            return Err(Error::new("", Reason::TooLarge { most: LARGEST, what: "bytes" }));
        }
        // Some editors begin a file with a byte order mark.
        let json = json.strip_prefix('\u{feff}').unwrap_or(json);
        let value: Value = serde_json::from_str(json).map_err(|error| {
            Error::new("", Reason::Syntax { line: error.line(), column: error.column() })
        })?;
        let Some(map) = value.as_object() else {
            return Err(Error::new("", Reason::WrongForm { expected: AN_OBJECT }));
        };
        let mut faults = Vec::new();
        let catalog = Self::from_object(map, &mut Pointer::top(&mut faults));
        Ok((catalog, faults))
    }

    fn from_object(map: &Object, top: &mut Pointer) -> Self {
        let version = map.get("schema_version").and_then(Value::as_f64);
        if version != Some(f64::from(SCHEMA_VERSION)) {
            let expected = "version 1; what is known of it was read";
            top.at("schema_version").fault(Reason::WrongForm { expected });
        }
        top.text(map, "updated", Must::May);
        let mut catalog = Self {
            maker: top.text(map, "maker", Must::Be),
            currency: top.text(map, "currency", Must::May),
            version: top.text(map, "catalogue_version", Must::May),
            notes: top.text(map, "notes", Must::May),
            ..Self::default()
        };
        let mut known = Vec::from(HEAD);
        for kind in Kind::ALL {
            catalog.parts.push(Vec::new());
            let key = kind.list_key();
            if key.is_empty() {
                continue;
            }
            known.push(key);
            for (index, value) in top.list(map, key).iter().enumerate() {
                catalog.take_part(*kind, value, map, &mut top.at(key).at(&index.to_string()));
            }
        }
        for (index, value) in top.list(map, "kits").iter().enumerate() {
            let kit = catalog.kit_from(value, map, &mut top.at("kits").at(&index.to_string()));
            catalog.kits.extend(kit);
        }
        top.keys(map, &known);
        catalog
    }

    /// Reads a part and keeps it if it can be used.
    fn take_part(&mut self, kind: Kind, value: &Value, file: &Object, here: &mut Pointer) {
        let Some(part) = record::read(kind, value, Must::Be, here) else { return };
        if kind == Kind::Pack && !part.tag(PACK_CELL).is_empty() {
            self.known(Kind::Cell, part.tag(PACK_CELL), file, &mut here.at("cell"));
        }
        if self.part(kind, &part.id).is_some() {
            here.at("id").fault(Reason::Duplicate { given: part.id });
        } else if let Some(list) = self.parts.get_mut(kind as usize) {
            list.push(part);
        }
    }

    /// Whether a part named here is there. If not that is a fault, unless the
    /// part was left out for one of its own.
    fn known(&self, kind: Kind, id: &str, file: &Object, here: &mut Pointer) -> bool {
        let known = self.part(kind, id).is_some();
        let has_id = |part: &Value| part.get("id").and_then(Value::as_str) == Some(id);
        let told = match file.get(kind.list_key()) {
            Some(Value::Array(list)) if list.len() <= MOST => list.iter().any(has_id),
            list => list.is_some(),
        };
        if !known && !told {
            let ids: Vec<&str> = self.parts(kind).iter().map(|part| part.id.as_str()).collect();
            here.unknown(id, &ids);
        }
        known
    }

    /// Reads a kit; a slot that is faulty is left to every part of its kind.
    fn kit_from(&self, value: &Value, file: &Object, here: &mut Pointer) -> Option<Kit> {
        let map = here.object(value)?;
        let mut kit = Kit {
            id: here.text(map, "id", Must::Be),
            name: here.text(map, "name", Must::Be),
            notes: here.text(map, "notes", Must::May),
            ..Kit::default()
        };
        // The source is read for its faults; a kit's figures are its parts'.
        here.text(map, "source", Must::May);
        let mut known = Vec::from(record::HEAD);
        known.push("slots");
        for slot in Slot::ALL.iter().copied().filter(|slot| !slot.holds_part()) {
            let key = slot.key();
            known.push(key);
            let Some(value) = map.get(key) else { continue };
            let record = record::read(slot.kind(), value, Must::May, &mut here.at(key));
            kit.settings.extend(record.map(|record| (slot, record)));
        }
        here.keys(map, &known);
        if let Some(slots) = map.get("slots") {
            self.offers(&mut kit, slots, file, &mut here.at("slots"));
        }
        if kit.id.is_empty() || kit.name.is_empty() {
            return None;
        }
        if self.kit(&kit.id).is_some() {
            here.at("id").fault(Reason::Duplicate { given: kit.id });
            return None;
        }
        Some(kit)
    }

    /// Reads what a kit offers.
    fn offers(&self, kit: &mut Kit, value: &Value, file: &Object, here: &mut Pointer) {
        let Some(slots) = here.object(value) else { return };
        let mut known = Vec::new();
        for slot in Slot::ALL.iter().copied().filter(|slot| slot.holds_part()) {
            let key = slot.key();
            known.push(key);
            let Some(value) = slots.get(key) else { continue };
            let mut here = here.at(key);
            let Some(offer) = here.object(value) else { continue };
            here.keys(offer, &["default", "options"]);
            let mut ids = Vec::new();
            let mut take = |value: &Value, here: &mut Pointer| {
                let id = here.string(value, Must::Be);
                if !id.is_empty() && self.known(slot.kind(), &id, file, here) && !ids.contains(&id)
                {
                    ids.push(id);
                }
            };
            take(offer.get("default").unwrap_or(&Value::Null), &mut here.at("default"));
            for (index, value) in here.list(offer, "options").iter().enumerate() {
                take(value, &mut here.at("options").at(&index.to_string()));
            }
            kit.offers.push((slot, ids));
        }
        here.keys(slots, &known);
    }
}
