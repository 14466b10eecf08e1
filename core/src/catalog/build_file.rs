//! A build as a file, and as what other programs hand over.

use super::pointer::{Must, Pointer};
use super::record;
use crate::build::Draft;
use crate::error::{Error, Reason};
use crate::parts::Slot;
use alloc::string::ToString;
use alloc::vec::Vec;
use serde_json::{Map, Value};

/// Version of the build file's form.
pub(super) const VERSION: u32 = 1;

/// What the file says it is.
pub(super) const FORMAT: &str = "pitchline-build";

/// Keys beside the slots.
const HEAD: [&str; 6] = ["format", "version", "app", "created", "name", "kit"];

/// Reads a build, and what of it is not understood: a key that is not known changes nothing and
/// is told by name. A slot that is not there gets typical values.
///
/// # Errors
/// One for each value that is faulty, with the JSON pointer of where it is: with another in its
/// place it would be another build. What is not understood beside follows them.
#[inline]
pub fn read_build(value: &Value) -> Result<(Draft, Vec<Error>), Vec<Error>> {
    let mut ignored = Vec::new();
    let mut errors = Vec::new();
    let mut top = Pointer::top(&mut ignored);
    let mut draft = Draft::typical();
    let Some(map) = top.object(value) else { return Err(ignored) };
    if map.get("format").is_some_and(|format| format != FORMAT) {
        let mut top = Pointer::top(&mut errors);
        top.at("format").fault(Reason::wrong_form("\"pitchline-build\""));
    }
    let version = map.get("version").map_or(Some(VERSION.into()), Value::as_f64);
    if version != Some(f64::from(VERSION)) {
        let expected = "version 1; anything this page doesn't know was ignored";
        top.at("version").fault(Reason::wrong_form(expected));
    }
    top.text(map, "app", Must::May);
    top.text(map, "created", Must::May);
    draft.name = top.text(map, "name", Must::May);
    draft.kit = top.text(map, "kit", Must::May);
    let mut known = Vec::from(HEAD);
    for slot in Slot::ALL {
        let key = slot.key();
        known.push(key);
        let Some(value) = map.get(key) else { continue };
        let before = top.faults.len();
        if let Some(record) = record::read(slot.kind(), value, Must::May, &mut top.at(key)) {
            draft.set_record(*slot, record);
        } else {
            errors.extend(top.faults.drain(before..));
        }
    }
    top.keys(map, &known);
    if errors.is_empty() {
        return Ok((draft, ignored));
    }
    errors.append(&mut ignored);
    Err(errors)
}

/// Writes a build, every slot in full, so that it can be read beside any catalogue.
#[must_use]
pub fn write_build(draft: &Draft) -> Value {
    let mut map = Map::new();
    map.insert("format".to_string(), Value::from(FORMAT));
    map.insert("version".to_string(), Value::from(VERSION));
    map.insert("name".to_string(), Value::from(draft.name.as_str()));
    map.insert("kit".to_string(), Value::from(draft.kit.as_str()));
    for slot in Slot::ALL {
        map.insert(slot.key().to_string(), record::write(slot.kind(), draft.record(*slot)));
    }
    Value::Object(map)
}
