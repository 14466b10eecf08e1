//! The JSON Schema of the maker's file and of the build file, made from the
//! same tables that check the values.

use super::record::{HEAD, LONGEST};
use crate::bounds::{Field, Need};
use crate::parts::{Kind, Slot};
use alloc::string::ToString;
use alloc::vec::Vec;
use serde_json::{Map, Value, json};

/// Schema of the catalogue.
#[must_use]
pub fn catalogue_schema() -> Value {
    let mut properties = Map::new();
    let mut put = |key: &str, value: Value| properties.insert(key.to_string(), value);
    put("$schema", text("Where this schema lies."));
    put(
        "schema_version",
        json!({ "const": super::SCHEMA_VERSION, "description": "Form of this file." }),
    );
    put("catalogue_version", text("Your own version of this file."));
    put("updated", text("When it was last changed."));
    put("maker", text("Who offers these parts."));
    put("currency", text("Currency of every price, such as EUR."));
    put("notes", text("Anything a reader should know."));
    for kind in Kind::ALL.iter().filter(|kind| !kind.list_key().is_empty()) {
        put(kind.list_key(), json!({ "type": "array", "items": part(*kind, &["id", "name"]) }));
    }
    put("kits", json!({ "type": "array", "items": kit() }));
    json!({
        "$schema": "http://json-schema.org/draft-07/schema#",
        "title": "Pitchline catalogue",
        "description": "Parts and kits that the calculator offers. Units are in the key names.",
        "type": "object",
        "additionalProperties": false,
        "required": ["schema_version", "maker"],
        "properties": properties,
    })
}

/// Schema of the build file, which is also what `answers` takes.
#[must_use]
pub fn build_schema() -> Value {
    let mut properties = Map::new();
    properties.insert("format".to_string(), json!({ "const": "pitchline-build" }));
    properties.insert("version".to_string(), json!({ "const": super::build_file::VERSION }));
    for (key, meaning) in [
        ("app", "What wrote it."),
        ("created", "When it was written."),
        ("name", "Your name for the build."),
        ("kit", "Id of the kit that it started from."),
    ] {
        properties.insert(key.to_string(), text(meaning));
    }
    for slot in Slot::ALL {
        properties.insert(slot.key().to_string(), part(slot.kind(), &[]));
    }
    json!({
        "$schema": "http://json-schema.org/draft-07/schema#",
        "title": "Pitchline build",
        "description": "One part for each slot, in full; a slot left out gets typical values.",
        "type": "object",
        "additionalProperties": false,
        "properties": properties,
    })
}

fn text(meaning: &str) -> Value {
    json!({ "type": "string", "maxLength": LONGEST, "description": meaning })
}

fn part(kind: Kind, head_required: &[&str]) -> Value {
    let mut properties = Map::new();
    let mut required: Vec<&str> = head_required.to_vec();
    let meanings = [
        "Stable id, unique within its list; links and kits name it.",
        "Name for people.",
        "Where the figures come from.",
        "Anything a reader should know.",
    ];
    for (key, meaning) in HEAD.into_iter().zip(meanings) {
        properties.insert(key.to_string(), text(meaning));
    }
    for tag in kind.tags() {
        let meaning = "Compatibility tag: parts that meet must carry the same one, or none.";
        properties.insert((*tag).to_string(), text(meaning));
    }
    for field in kind.fields() {
        properties.insert(field.key.to_string(), number(field));
        if field.need == Need::Required {
            required.push(field.key);
        }
    }
    json!({
        "type": "object",
        "additionalProperties": false,
        "required": required,
        "properties": properties,
    })
}

fn number(field: &Field) -> Value {
    let doc = field.doc.trim();
    if !field.choices.is_empty() {
        return json!({ "enum": field.choices, "description": doc });
    }
    let form = if field.must_be_whole() { "integer" } else { "number" };
    let assumed = match field.need {
        Need::Assumed => alloc::format!("{doc} Assumed {} if left out.", field.typical),
        _ => doc.to_string(),
    };
    json!({ "type": form, "minimum": field.min, "maximum": field.max, "description": assumed })
}

fn kit() -> Value {
    let mut slots = Map::new();
    for slot in Slot::ALL.iter().filter(|slot| slot.holds_part()) {
        let offer = json!({
            "type": "object",
            "additionalProperties": false,
            "required": ["default"],
            "properties": {
                "default": text("Id of the part that the kit comes with."),
                "options": { "type": "array", "items": text("Id of a part on offer instead.") },
            },
        });
        slots.insert(slot.key().to_string(), offer);
    }
    let mut properties = Map::new();
    for (key, meaning) in HEAD.into_iter().zip([
        "Stable id; links name it.",
        "Name for people.",
        "Where the kit's figures come from.",
        "Anything a reader should know.",
    ]) {
        properties.insert(key.to_string(), text(meaning));
    }
    properties.insert(
        "slots".to_string(),
        json!({ "type": "object", "additionalProperties": false, "properties": slots }),
    );
    for slot in Slot::ALL.iter().filter(|slot| !slot.holds_part()) {
        properties.insert(slot.key().to_string(), part(slot.kind(), &[]));
    }
    json!({
        "type": "object",
        "additionalProperties": false,
        "required": ["id", "name", "slots"],
        "properties": properties,
    })
}
