//! Reading a catalogue, with every fault located by its JSON pointer.

use super::left_out::{LeftOut, Named, tell_unknown};
use super::pointer::{AN_OBJECT, Must, Object, Pointer, misspelt, unknown_keys};
use super::syntax::syntax_fault;
use super::{Catalog, Kit, Offer, PACK_CELL, SCHEMA_VERSION, record};
use crate::error::{Error, Reason};
use crate::parts::{Kind, Slot};
use alloc::string::{String, ToString};
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
    #[inline]
    pub fn read(json: &str) -> Result<(Self, Vec<Error>), Error> {
        if json.len() > LARGEST {
            return Err(Error::new("", Reason::TooLarge { most: LARGEST, what: "bytes" }));
        }
        // Some editors begin a file with a byte order mark.
        let json = json.strip_prefix('\u{feff}').unwrap_or(json);
        let value: Value =
            serde_json::from_str(json).map_err(|error| syntax_fault(json, &error))?;
        let Some(map) = value.as_object() else {
            return Err(Error::new("", Reason::wrong_form(AN_OBJECT)));
        };
        let mut faults = Vec::new();
        let catalog = Self::from_object(map, &mut Pointer::top(&mut faults));
        Ok((catalog, faults))
    }

    #[inline]
    fn from_object(map: &Object, top: &mut Pointer) -> Self {
        let version = map.get("schema_version").and_then(Value::as_f64);
        if version != Some(f64::from(SCHEMA_VERSION)) {
            let expected = "version 1; anything this page doesn't know was ignored";
            top.at("schema_version").fault(Reason::wrong_form(expected));
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
        known.extend(Kind::ALL.iter().map(|kind| kind.list_key()).filter(|key| !key.is_empty()));
        let mut named = Vec::new();
        for kind in Kind::ALL {
            catalog.parts.push(Vec::new());
            catalog.take_list(*kind, map, &mut named, top);
        }
        // Before the kits: a list under a misspelt key is told once.
        top.keys(map, &known);
        for key in unknown_keys(map, &known) {
            let meant = misspelt(key, map, &known);
            let kind = Kind::ALL.iter().find(|kind| Some(kind.list_key()) == meant);
            if let Some(kind) = kind {
                let why = Error::new(["/", key].concat(), Reason::unknown(key, &known));
                catalog.left_out.push(LeftOut::list(*kind, why));
            }
        }
        let kits = top.list(map, "kits");
        for (index, value) in kits.iter().enumerate() {
            let mut here = top.item("kits", index, value);
            let kit = catalog.kit_from(value, kits, &mut named, &mut here);
            catalog.kits.extend(kit);
        }
        tell_unknown(&catalog, map, &named, top);
        catalog
    }

    /// Reads the list of a kind.
    fn take_list(&mut self, kind: Kind, map: &Object, named: &mut Vec<Named>, top: &mut Pointer) {
        let key = kind.list_key();
        if key.is_empty() {
            return;
        }
        let before = top.faults.len();
        let list = top.list(map, key);
        if let Some(why) = top.faults.get(before) {
            self.left_out.push(LeftOut::list(kind, why.clone()));
        }
        for (index, value) in list.iter().enumerate() {
            let before = top.faults.len();
            let mut here = top.item(key, index, value);
            let kept = self.take_part(kind, value, list, named, &mut here);
            if let Some(why) = top.faults.get(before).filter(|_| !kept) {
                self.left_out.push(LeftOut::part(kind, value, index, why.clone()));
            }
        }
    }

    /// Reads a part and keeps it if it can be used.
    fn take_part(
        &mut self,
        kind: Kind,
        value: &Value,
        list: &[Value],
        named: &mut Vec<Named>,
        here: &mut Pointer,
    ) -> bool {
        let Some(part) = record::read(kind, value, Must::Be, here) else { return false };
        if let Some(same) = self.part(kind, &part.id) {
            // Which of the two is meant is only unclear where they differ.
            let alike = same.same_part(&part) && same.name == part.name;
            here.duplicate(&part.id, kind.list_key(), list);
            return alike;
        }
        if kind == Kind::Pack && !part.tag(PACK_CELL).is_empty() {
            named.push(Named::here(Kind::Cell, part.tag(PACK_CELL), &here.at("cell")));
        }
        if let Some(list) = self.parts.get_mut(kind as usize) {
            list.push(part);
        }
        true
    }

    /// Reads a kit. A slot that is faulty has no default.
    fn kit_from(
        &self,
        value: &Value,
        list: &[Value],
        named: &mut Vec<Named>,
        here: &mut Pointer,
    ) -> Option<Kit> {
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
        // Without its slots nobody knows what the kit is.
        let lost = unknown_keys(map, &known).any(|key| misspelt(key, map, &known) == Some("slots"));
        let usable = match map.get("slots") {
            Some(slots) => offers(&mut kit, slots, named, &mut here.at("slots")).is_some(),
            None => !lost,
        };
        if !usable || kit.id.is_empty() || kit.name.is_empty() {
            return None;
        }
        if self.kit(&kit.id).is_some() {
            here.duplicate(&kit.id, "kits", list);
            return None;
        }
        Some(kit)
    }
}

/// Reads what a kit offers; none where that is no object.
fn offers(kit: &mut Kit, value: &Value, named: &mut Vec<Named>, here: &mut Pointer) -> Option<()> {
    let slots = here.object(value)?;
    let holding = || Slot::ALL.iter().copied().filter(|slot| slot.holds_part());
    let known: Vec<&str> = holding().map(Slot::key).collect();
    here.keys(slots, &known);
    for slot in holding() {
        let key = slot.key();
        let Some(value) = slots.get(key) else {
            // What stands under a misspelt key was meant for this slot.
            if unknown_keys(slots, &known).any(|word| misspelt(word, slots, &known) == Some(key)) {
                kit.offers.push(Offer { slot, ids: Vec::from([String::new()]) });
            }
            continue;
        };
        let mut here = here.at(key);
        let mut ids = Vec::new();
        let mut take = |value: &Value, here: &mut Pointer| {
            let id = here.string(value, Must::Be);
            if !id.is_empty() {
                named.push(Named::here(slot.kind(), &id, here));
            }
            ids.push(id);
        };
        if let Some(offer) = here.object(value) {
            take(offer.get("default").unwrap_or(&Value::Null), &mut here.at("default"));
            for (index, value) in here.list(offer, "options").iter().enumerate() {
                take(value, &mut here.at("options").at(&index.to_string()));
            }
            here.keys(offer, &["default", "options"]);
        } else {
            ids.push(String::new());
        }
        kit.offers.push(Offer { slot, ids });
    }
    Some(())
}
