//! Reading a catalogue, with every fault located by its JSON pointer.

use super::near::nearest;
use super::{Catalog, Kit, Offer, SCHEMA_VERSION, record};
use crate::error::{Error, Reason};
use crate::parts::{Kind, Record, Slot};
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use serde_json::{Map, Value};

/// Largest file that is read, in bytes.
const LARGEST: usize = 1 << 20;
/// Most parts of one kind, or kits, that are read.
const MOST: usize = 2000;

/// Keys of the file besides the lists of parts.
const HEAD: [&str; 7] =
    ["schema_version", "catalogue_version", "updated", "maker", "currency", "notes", "kits"];

type Object = Map<String, Value>;

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
        let value: Value = serde_json::from_str(json).map_err(|error| {
            Error::new("", Reason::Syntax { line: error.line(), column: error.column() })
        })?;
        let Some(map) = value.as_object() else {
            return Err(Error::new("", Reason::WrongForm { expected: "an object in braces" }));
        };
        let mut faults = Vec::new();
        let catalog = Self::from_object(map, &mut faults);
        Ok((catalog, faults))
    }

    fn from_object(map: &Object, faults: &mut Vec<Error>) -> Self {
        match map.get("schema_version").and_then(Value::as_u64) {
            Some(version) if version <= u64::from(SCHEMA_VERSION) => {}
            _ => faults.push(Error::new(
                "/schema_version",
                Reason::WrongForm { expected: "version 1; what is known of it was read" },
            )),
        }
        let mut catalog = Self {
            maker: top_text(map, "maker", faults),
            currency: top_text(map, "currency", faults),
            version: top_text(map, "catalogue_version", faults),
            notes: top_text(map, "notes", faults),
            ..Self::default()
        };
        for kind in Kind::ALL {
            catalog.parts.push(parts(map, *kind, faults));
        }
        catalog.kits = list(map, "kits", faults)
            .iter()
            .enumerate()
            .filter_map(|(index, value)| catalog.kit_from(value, &format!("/kits/{index}"), faults))
            .collect();
        for key in map.keys() {
            let lists = || Kind::ALL.iter().map(|kind| kind.list_key()).filter(|k| !k.is_empty());
            if !key.starts_with('$') && !lists().chain(HEAD).any(|known| known == key) {
                let nearest = nearest(key, lists().chain(HEAD));
                let reason = Reason::Unknown { given: key.clone(), nearest };
                faults.push(Error::new(format!("/{key}"), reason));
            }
        }
        catalog
    }

    /// Reads a kit; a slot that is faulty is left to every part of its kind.
    fn kit_from(&self, value: &Value, at: &str, faults: &mut Vec<Error>) -> Option<Kit> {
        let mut fault = |path: &str, reason| faults.push(Error::new(format!("{at}{path}"), reason));
        let Some(map) = value.as_object() else {
            fault("", Reason::WrongForm { expected: "an object in braces" });
            return None;
        };
        let mut texts = ["id", "name", "notes", "source"].into_iter().map(|key| {
            record::text(map, key).unwrap_or_else(|error| {
                faults.push(error.under(&format!("{at}/")));
                String::new()
            })
        });
        let mut kit = Kit {
            id: texts.next().unwrap_or_default(),
            name: texts.next().unwrap_or_default(),
            notes: texts.next().unwrap_or_default(),
            ..Kit::default()
        };
        // The source is read for its faults; a kit's figures are its parts'.
        drop(texts);
        kit.offers.resize(Slot::ALL.len(), Offer::default());
        let mut fault =
            |path: String, reason| faults.push(Error::new(format!("{at}{path}"), reason));
        if kit.id.is_empty() {
            fault("/id".into(), Reason::Missing);
            return None;
        }
        let known = ["id", "name", "notes", "source", "slots", "rider", "place", "ride"];
        for key in map.keys().filter(|key| !known.contains(&key.as_str())) {
            let nearest = nearest(key, known.into_iter());
            fault(format!("/{key}"), Reason::Unknown { given: key.clone(), nearest });
        }
        let slots = map.get("slots").and_then(Value::as_object);
        for (key, offer) in slots.into_iter().flatten() {
            let slot = Slot::from_key(key).filter(|slot| slot.holds_part());
            let Some(slot) = slot else {
                let known = Slot::ALL.iter().filter(|s| s.holds_part()).map(|slot| slot.key());
                let nearest = nearest(key, known);
                fault(format!("/slots/{key}"), Reason::Unknown { given: key.clone(), nearest });
                continue;
            };
            let mut offered = Offer::default();
            for (path, id) in offered_ids(offer) {
                if self.part(slot.kind(), id).is_some() {
                    if !offered.ids.iter().any(|known| known == id) {
                        offered.ids.push(id.into());
                    }
                } else {
                    let ids = self.parts(slot.kind()).iter().map(|part| part.id.as_str());
                    let reason = Reason::Unknown { given: id.into(), nearest: nearest(id, ids) };
                    fault(format!("/slots/{key}{path}"), reason);
                }
            }
            if let Some(place) = kit.offers.get_mut(slot as usize) {
                *place = offered;
            }
        }
        for slot in Slot::ALL.iter().copied().filter(|slot| !slot.holds_part()) {
            let Some(value) = map.get(slot.key()) else { continue };
            let (record, found) = record::read(slot.kind(), value);
            let prefix = format!("{at}/{}/", slot.key());
            faults.extend(found.into_iter().map(|fault| fault.under(&prefix)));
            kit.settings.extend(record.map(|record| (slot, record)));
        }
        Some(kit)
    }
}

/// The ids of an offer with their paths: the default first, then the options.
fn offered_ids(offer: &Value) -> Vec<(String, &str)> {
    let default = offer.get("default").and_then(Value::as_str).map(|id| ("/default".into(), id));
    let options = offer.get("options").and_then(Value::as_array).map_or(&[][..], Vec::as_slice);
    let options = options
        .iter()
        .enumerate()
        .filter_map(|(index, value)| value.as_str().map(|id| (format!("/options/{index}"), id)));
    default.into_iter().chain(options).collect()
}

fn top_text(map: &Object, key: &str, faults: &mut Vec<Error>) -> String {
    record::text(map, key).unwrap_or_else(|fault| {
        faults.push(fault.under("/"));
        String::new()
    })
}

/// The list under a key; empty, and a fault, if it is something else.
fn list<'a>(map: &'a Object, key: &str, faults: &mut Vec<Error>) -> &'a [Value] {
    let reason = match map.get(key) {
        None => return &[],
        Some(Value::Array(list)) if list.len() <= MOST => return list,
        Some(Value::Array(_)) => Reason::TooLarge { most: MOST, what: "entries" },
        Some(_) => Reason::WrongForm { expected: "a list in square brackets" },
    };
    faults.push(Error::new(format!("/{key}"), reason));
    &[]
}

fn parts(map: &Object, kind: Kind, faults: &mut Vec<Error>) -> Vec<Record> {
    let key = kind.list_key();
    let mut records: Vec<Record> = Vec::new();
    if key.is_empty() {
        return records;
    }
    for (index, value) in list(map, key, faults).iter().enumerate() {
        let prefix = format!("/{key}/{index}/");
        let (record, found) = record::read(kind, value);
        faults.extend(found.into_iter().map(|fault| fault.under(&prefix)));
        let Some(record) = record else { continue };
        if record.id.is_empty() {
            faults.push(Error::new(format!("{prefix}id"), Reason::Missing));
        } else if records.iter().any(|known| known.id == record.id) {
            faults.push(Error::new(format!("{prefix}id"), Reason::Duplicate { given: record.id }));
        } else {
            records.push(record);
        }
    }
    records
}
