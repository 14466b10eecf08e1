//! One part as a JSON object, both ways.

use super::near::nearest;
use crate::bounds::Field;
use crate::error::{Error, Reason};
use crate::parts::{Kind, Record};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde_json::{Map, Value};

/// Longest text that is read, in characters.
pub(super) const LONGEST: usize = 400;

/// Keys that every part has besides its values and tags.
pub(super) const HEAD: [&str; 4] = ["id", "name", "source", "notes"];

/// A string under a key; empty if absent.
pub(super) fn text(map: &Map<String, Value>, key: &str) -> Result<String, Error> {
    match map.get(key) {
        None | Some(Value::Null) => Ok(String::new()),
        Some(Value::String(text)) if text.chars().count() <= LONGEST => Ok(text.clone()),
        Some(Value::String(_)) => {
            Err(Error::new(key, Reason::TooLarge { most: LONGEST, what: "characters" }))
        }
        Some(_) => Err(Error::new(key, Reason::WrongForm { expected: "text in quotes" })),
    }
}

/// Reads a part; every fault is returned, and the part only if it can be used.
pub(super) fn read(kind: Kind, value: &Value) -> (Option<Record>, Vec<Error>) {
    let Some(map) = value.as_object() else {
        let reason = Reason::WrongForm { expected: "an object in braces" };
        return (None, Vec::from([Error::new("", reason)]));
    };
    let mut faults = Vec::new();
    let mut record = Record::EMPTY;
    let mut take = |key: &str| {
        text(map, key).unwrap_or_else(|fault| {
            faults.push(fault);
            String::new()
        })
    };
    record.id = take("id");
    record.name = take("name");
    record.source = take("source");
    record.notes = take("notes");
    record.tags = kind.tags().iter().map(|tag| take(tag)).collect();
    for field in kind.fields() {
        let given = map.get(field.key).filter(|value| !value.is_null());
        record.values.push(given.and_then(|value| number(field, value, &mut faults)));
    }
    if let Err(found) = record.checked(kind.fields()) {
        // A value that could not be read has been reported already.
        for error in found {
            if !faults.iter().any(|fault| fault.field == error.field) {
                faults.push(error);
            }
        }
    }
    let usable = faults.is_empty();
    let known = || {
        let fields = kind.fields().iter().map(|field| field.key);
        fields.chain(kind.tags().iter().copied()).chain(HEAD)
    };
    for key in map.keys() {
        if !key.starts_with('$') && !known().any(|k| k == key) {
            let nearest = nearest(key, known());
            faults.push(Error::new(key.as_str(), Reason::Unknown { given: key.clone(), nearest }));
        }
    }
    (usable.then_some(record), faults)
}

fn number(field: &Field, value: &Value, faults: &mut Vec<Error>) -> Option<f64> {
    let read = match value {
        Value::String(name) if !field.choices.is_empty() => field.choice(name),
        Value::Number(number) if field.choices.is_empty() => {
            let finite = number.as_f64().filter(|n| n.is_finite());
            finite.ok_or_else(|| Error::new(field.key, Reason::NotANumber))
        }
        _ => {
            let expected = if field.choices.is_empty() { "a number" } else { "one of its names" };
            Err(Error::new(field.key, Reason::WrongForm { expected }))
        }
    };
    read.map_err(|fault| faults.push(fault)).ok()
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
