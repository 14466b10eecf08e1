//! A build as a file, and as what other programs hand over.

use super::near::nearest;
use super::record;
use crate::build::Draft;
use crate::error::{Error, Reason};
use crate::parts::Slot;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde_json::{Map, Value};

/// Version of the build file's form.
pub(super) const VERSION: u32 = 1;

/// What the file says it is.
const FORMAT: &str = "pitchline-build";

/// Keys beside the slots.
const HEAD: [&str; 6] = ["format", "version", "app", "created", "name", "kit"];

/// Reads a build. A slot that is not there gets typical values.
///
/// # Errors
/// One for each fault, with the JSON pointer of where it is.
pub fn read_build(value: &Value) -> Result<Draft, Vec<Error>> {
    let Some(map) = value.as_object() else {
        let reason = Reason::WrongForm { expected: "an object in braces" };
        return Err(Vec::from([Error::new("", reason)]));
    };
    let mut faults = Vec::new();
    if map.get("format").is_some_and(|format| format != FORMAT) {
        let reason = Reason::WrongForm { expected: "\"pitchline-build\"" };
        faults.push(Error::new("/format", reason));
    }
    let version = map.get("version").map_or(Some(u64::from(VERSION)), Value::as_u64);
    if version.is_none_or(|version| version > u64::from(VERSION)) {
        faults.push(Error::new("/version", Reason::WrongForm { expected: "version 1" }));
    }
    let mut draft = Draft::typical();
    let mut take = |key: &str| {
        record::text(map, key).unwrap_or_else(|fault| {
            faults.push(fault.under("/"));
            String::new()
        })
    };
    draft.name = take("name");
    draft.kit = take("kit");
    for (key, value) in map {
        let Some(slot) = Slot::from_key(key) else {
            if !HEAD.contains(&key.as_str()) && !key.starts_with('$') {
                let known = Slot::ALL.iter().map(|slot| slot.key());
                let nearest = nearest(key, known.chain(HEAD));
                let reason = Reason::Unknown { given: key.clone(), nearest };
                faults.push(Error::new(format!("/{key}"), reason));
            }
            continue;
        };
        let (record, found) = record::read(slot.kind(), value);
        faults.extend(found.into_iter().map(|fault| fault.under(&format!("/{key}/"))));
        if let Some(record) = record {
            draft.set_record(slot, record);
        }
    }
    if faults.is_empty() { Ok(draft) } else { Err(faults) }
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
