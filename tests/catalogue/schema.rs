//! The generated schemas: fresh, valid themselves, and of one mind with the reader.

use crate::{build, demo, demo_text, text, written};
use jsonschema::Validator;
use pitchline_core::catalog::{Catalog, build_schema, catalogue_schema, read_build, write_build};
use serde_json::{Value, json};
use std::sync::LazyLock;

/// What a schema says against a value; empty if nothing.
pub(crate) fn complaints(schema: &Validator, value: &Value) -> Vec<String> {
    schema.iter_errors(value).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

/// The catalogue's schema, ready to judge.
pub(crate) fn catalogue() -> &'static Validator {
    static READY: LazyLock<Validator> =
        LazyLock::new(|| jsonschema::draft7::new(&catalogue_schema()).expect("a valid schema"));
    &READY
}

fn parsed(text: &str) -> Value {
    serde_json::from_str(text).unwrap_or_default()
}

fn fresh(path: &str, schema: &Value) {
    let text = serde_json::to_string_pretty(schema).expect("a value has a text") + "\n";
    // By value: the order of keys depends on what else is built alongside.
    written::keep(path, &text, |kept, fresh| parsed(kept) == parsed(fresh));
}

#[test]
fn the_catalogue_schema_is_fresh() {
    fresh("web/catalog/catalogue.schema.json", &catalogue_schema());
}

#[test]
fn the_build_schema_is_fresh() {
    fresh("web/catalog/build.schema.json", &build_schema());
}

#[test]
fn both_keep_to_draft_7() {
    for schema in [catalogue_schema(), build_schema()] {
        assert!(jsonschema::draft7::meta::is_valid(&schema));
        assert_eq!(schema["$schema"], "http://json-schema.org/draft-07/schema#");
    }
}

/// An editor shows these words beside each key.
#[test]
fn every_input_says_what_it_means() {
    fn walk(path: &str, value: &Value, found: &mut Vec<String>) {
        let Some(map) = value.as_object() else { return };
        if let Some(properties) = map.get("properties").and_then(Value::as_object) {
            for (key, property) in properties {
                let leaf = property.get("type").is_none_or(|t| t != "object" && t != "array");
                let fixed = property.get("const").is_some();
                let said = property["description"].as_str().is_some_and(|d| d.ends_with('.'));
                if leaf && !fixed && !said {
                    found.push(format!("{path}/{key}"));
                }
            }
        }
        map.iter().for_each(|(key, value)| walk(&format!("{path}/{key}"), value, found));
    }
    let mut silent = Vec::new();
    walk("catalogue", &catalogue_schema(), &mut silent);
    walk("build", &build_schema(), &mut silent);
    assert_eq!(silent, Vec::<String>::new());
}

#[test]
fn the_demo_keeps_to_the_schema_that_it_names() {
    let demo: Value = serde_json::from_str(&demo_text()).unwrap();
    let named = demo["$schema"].as_str().unwrap();
    let beside = text(&format!("web/catalog/{named}"));
    let schema = jsonschema::draft7::new(&serde_json::from_str(&beside).unwrap()).unwrap();
    assert_eq!(complaints(&schema, &demo), Vec::<String>::new());
}

#[test]
fn the_schema_refuses_what_it_should() {
    let schema = catalogue();
    let whole = json!({ "schema_version": 1, "maker": "M", "motor_pulleys": [
        { "id": "a", "name": "A", "teeth": 16 }
    ] });
    assert_eq!(complaints(schema, &whole), Vec::<String>::new());
    let pulley = "/motor_pulleys/0";
    for (pointer, key, value) in [
        (pulley, "teeth", json!(7)),
        (pulley, "teeth", json!(16.5)),
        (pulley, "teeth", json!("16")),
        (pulley, "teath", json!(16)),
        (pulley, "notes", json!("n".repeat(401))),
        ("", "weels", json!([])),
        ("", "wheels", json!({})),
        ("", "schema_version", json!(2)),
    ] {
        let mut bad = whole.clone();
        bad.pointer_mut(pointer).unwrap()[key] = value;
        assert!(!schema.is_valid(&bad), "{bad}");
    }
}

#[test]
fn a_build_survives_its_file_and_keeps_to_the_schema() {
    let schema = jsonschema::draft7::new(&build_schema()).unwrap();
    let catalog = demo();
    for kit in &catalog.kits {
        let mut draft = catalog.draft(&kit.id);
        draft.name = "Winter on the quay, the first".into();
        let file = write_build(&draft);
        assert_eq!(complaints(&schema, &file), Vec::<String>::new());
        let (back, ignored) = read_build(&file).unwrap();
        assert_eq!(ignored, []);
        assert_eq!(build(&back), build(&draft));
        assert_eq!((&back.name, &back.kit), (&draft.name, &draft.kit));
        assert_eq!(write_build(&back), file);
    }
}

/// A file that a maker starts from nothing is one that both accept.
#[test]
fn the_smallest_catalogue_is_enough() {
    let smallest = json!({ "schema_version": 1, "maker": "Somebody" });
    assert_eq!(complaints(catalogue(), &smallest), Vec::<String>::new());
    let (catalog, faults) = Catalog::read(&smallest.to_string()).unwrap();
    assert_eq!(faults, []);
    build(&catalog.draft(""));
}
