//! The JSON Schema of the maker's file and of the build file, made from the
//! same tables that check the values.

use super::pointer::LONGEST;
use super::record::HEAD;
use crate::bounds::{Field, Need};
use crate::parts::{Cell, CellClass, Kind, Slot};
use crate::physics::Chemistry;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde_json::{Map, Value, json};

/// What a part and a kit must have, as their reader asks.
const PART: &[&str] = &["id", "name"];

/// What the keys of [`HEAD`] mean.
pub(super) const HEAD_MEANINGS: [&str; 4] = [
    "Stable id, unique within its list. Links and kits refer to it.",
    "Name shown to riders.",
    "Where the figures come from.",
    "Anything a rider should know.",
];

/// What a compatibility tag means.
pub(super) const TAG_MEANING: &str =
    "Compatibility tag. Parts that connect must have the same tag, or none.";

/// What the keys of a build file mean that stand beside its slots.
pub(super) const BUILD_MEANINGS: [(&str, &str); 4] = [
    ("app", "Program that wrote this file."),
    ("created", "When this file was written."),
    ("name", "Your name for the build."),
    ("kit", "Id of the kit that the build started from."),
];

/// Schema of the catalogue.
#[must_use]
pub fn catalogue_schema() -> Value {
    let mut properties = Map::new();
    let mut put = |key: &str, value: Value| properties.insert(key.to_string(), value);
    put("$schema", text("Path of this schema."));
    put(
        "schema_version",
        json!({ "const": super::SCHEMA_VERSION, "description": "Version of the file format." }),
    );
    put("catalogue_version", text("Your own version of this file."));
    put("updated", text("When this file was last changed."));
    put("maker", needed("Who offers these parts."));
    put("currency", text("Currency of every price, such as EUR."));
    put("notes", text("Anything a rider should know."));
    for kind in Kind::ALL.iter().filter(|kind| !kind.list_key().is_empty()) {
        put(kind.list_key(), json!({ "type": "array", "items": part(*kind, PART) }));
    }
    put("kits", json!({ "type": "array", "items": kit() }));
    let meaning = "Parts and kits that the calculator offers. Units are in the key names.";
    file("Pitchline catalogue", meaning, object(properties, &["schema_version", "maker"]))
}

/// Schema of the build file, which is also what `answers` takes.
#[must_use]
pub fn build_schema() -> Value {
    let mut properties = Map::new();
    properties.insert("format".to_string(), json!({ "const": "pitchline-build" }));
    properties.insert("version".to_string(), json!({ "const": super::build_file::VERSION }));
    for (key, meaning) in BUILD_MEANINGS {
        properties.insert(key.to_string(), text(meaning));
    }
    for slot in Slot::ALL {
        properties.insert(slot.key().to_string(), part(slot.kind(), &[]));
    }
    let meaning = "One part for each slot, in full. A slot left out gets typical values.";
    file("Pitchline build", meaning, object(properties, &[]))
}

/// The schema of a whole file.
fn file(title: &str, meaning: &str, mut schema: Value) -> Value {
    if let Some(map) = schema.as_object_mut() {
        map.insert("$schema".to_string(), json!("http://json-schema.org/draft-07/schema#"));
        map.insert("title".to_string(), json!(title));
        map.insert("description".to_string(), json!(meaning));
    }
    schema
}

/// An object of these properties and no others; a key that begins with `$` is a comment.
fn object(properties: Map<String, Value>, required: &[&str]) -> Value {
    json!({
        "type": "object",
        "additionalProperties": false,
        "patternProperties": { "^\\$": {} },
        "required": required,
        "properties": properties,
    })
}

/// Text that must have a letter at least.
fn needed(meaning: &str) -> Value {
    json!({ "type": "string", "minLength": 1, "maxLength": LONGEST, "description": meaning })
}

fn text(meaning: &str) -> Value {
    json!({ "type": "string", "maxLength": LONGEST, "description": meaning })
}

/// The keys that every part and kit has; `must` of them be there.
fn head(must: &[&str]) -> Map<String, Value> {
    let texts = HEAD.into_iter().zip(HEAD_MEANINGS).map(|(key, meaning)| {
        (key.to_string(), if must.contains(&key) { needed(meaning) } else { text(meaning) })
    });
    texts.collect()
}

fn part(kind: Kind, must: &[&str]) -> Value {
    let mut properties = head(must);
    let mut required: Vec<&str> = must.to_vec();
    for tag in kind.tags() {
        properties.insert((*tag).to_string(), text(TAG_MEANING));
    }
    for field in kind.fields() {
        properties.insert(field.key.to_string(), number(field));
        if field.need == Need::Required {
            required.push(field.key);
        }
    }
    object(properties, &required)
}

fn number(field: &Field) -> Value {
    let meaning = meaning(field);
    if !field.choices.is_empty() {
        return json!({ "enum": field.choices, "description": meaning });
    }
    let form = if field.must_be_whole() { "integer" } else { "number" };
    json!({ "type": form, "minimum": field.min, "maximum": field.max, "description": meaning })
}

/// What an input means, and what is assumed if it is left out.
pub(super) fn meaning(field: &Field) -> String {
    let doc = field.doc.trim();
    if field.need == Need::Assumed && field.choices.is_empty() {
        return alloc::format!("{doc} If left out, {} is assumed.", assumed(field));
    }
    doc.to_string()
}

/// The assumed value, and that of each class of cell that has another; for a typical cell if it
/// depends on the cell's size or capacity.
fn assumed(field: &Field) -> String {
    let mut said = field.typical.to_string();
    let usual = CellClass::usual(Chemistry::default());
    let small = CellClass {
        diameter_m: 0.5 * usual.diameter_m,
        capacity_ah: 0.5 * usual.capacity_ah,
        ..usual
    };
    if field.assumed(small) != field.assumed(usual) {
        said.push_str(" for a typical cell");
    }
    for class in Chemistry::ALL {
        let value = field.assumed(CellClass::usual(class));
        if value != field.typical {
            let name = Cell::CLASSES.get(class as usize).copied().unwrap_or_default();
            said.push_str(&alloc::format!(" ({value} with {name} cells)"));
        }
    }
    said
}

fn kit() -> Value {
    let mut slots = Map::new();
    for slot in Slot::ALL.iter().filter(|slot| slot.holds_part()) {
        let mut offer = Map::new();
        let default = needed("Id of the part that the kit comes with.");
        let option = needed("Id of an alternative part.");
        offer.insert("default".to_string(), default);
        offer.insert("options".to_string(), json!({ "type": "array", "items": option }));
        slots.insert(slot.key().to_string(), object(offer, &["default"]));
    }
    let mut properties = head(PART);
    properties.insert("slots".to_string(), object(slots, &[]));
    for slot in Slot::ALL.iter().filter(|slot| !slot.holds_part()) {
        properties.insert(slot.key().to_string(), part(slot.kind(), &[]));
    }
    object(properties, PART)
}
