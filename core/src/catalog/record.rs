//! One part as a JSON object, both ways.

use super::pointer::{Must, Object, Pointer};
use crate::bounds::{Field, Need};
use crate::error::Reason;
use crate::parts::{Kind, Record};
use alloc::string::ToString;
use alloc::vec::Vec;
use serde_json::{Map, Value};

/// Keys that every part has besides its values and tags.
pub(super) const HEAD: [&str; 4] = ["id", "name", "source", "notes"];

/// Reads a part, which must have an id and a name where `must` says so. Every
/// fault is told, and the part given only if it can be used.
#[inline]
pub(super) fn read(kind: Kind, value: &Value, must: Must, here: &mut Pointer) -> Option<Record> {
    let map = here.object(value)?;
    let before = here.faults.len();
    let record = Record {
        id: here.text(map, "id", must),
        name: here.text(map, "name", must),
        source: here.text(map, "source", Must::May),
        notes: here.text(map, "notes", Must::May),
        tags: kind.tags().iter().map(|tag| here.text(map, tag, Must::May)).collect(),
        values: kind.fields().iter().map(|field| number(field, map, here)).collect(),
    };
    let usable = here.faults.len() == before;
    let mut known: Vec<&str> = kind.fields().iter().map(|field| field.key).collect();
    known.extend(kind.tags());
    known.extend(HEAD);
    here.keys(map, &known);
    usable.then_some(record)
}

fn number(field: &Field, map: &Object, here: &mut Pointer) -> Option<f64> {
    let choice = !field.choices.is_empty();
    let read = match map.get(field.key) {
        None | Some(Value::Null) if field.need == Need::Required => {
            Err(Reason::missing(field.wanted()))
        }
        None | Some(Value::Null) => return None,
        Some(Value::String(name)) if choice => field.choice(name).map_err(|error| error.reason),
        Some(Value::Number(number)) if !choice => {
            field.check(number.as_f64().unwrap_or(f64::NAN)).map_err(|error| error.reason)
        }
        Some(Value::String(_)) => Err(Reason::wrong_form(field.wanted() + ", not in quotes")),
        _ if choice => Err(Reason::wrong_form(field.wanted() + ", in quotes")),
        _ => Err(Reason::wrong_form(field.wanted())),
    };
    read.map_err(|reason| here.at(field.key).fault(reason)).ok()
}

/// Writes a part.
pub(super) fn write(kind: Kind, record: &Record) -> Value {
    let mut map = Map::new();
    let texts = [&record.id, &record.name, &record.source, &record.notes];
    let tags = kind.tags().iter().copied().zip(&record.tags);
    for (key, text) in HEAD.into_iter().zip(texts).chain(tags) {
        if !text.is_empty() {
            map.insert(key.to_string(), Value::String(text.clone()));
        }
    }
    for (index, field) in kind.fields().iter().enumerate() {
        let Some(value) = record.value(index) else { continue };
        let written = if field.choices.is_empty() {
            // A value that is not finite has no JSON form and is left out.
            serde_json::Number::from_f64(value).map(Value::Number)
        } else {
            Some(Value::String(field.choice_name(value).to_string()))
        };
        if let Some(written) = written {
            map.insert(field.key.to_string(), written);
        }
    }
    Value::Object(map)
}
