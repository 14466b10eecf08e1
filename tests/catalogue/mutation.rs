//! Random damage to the demo never panics, and what is read can be built.

use crate::fault::demo_value;
use crate::{demo_text, schema};
use pitchline_core::catalog::{Catalog, KitCheck};
use pitchline_core::physics::Chemistry;
use pitchline_core::{Build, CellClass, Error, Kind, Reason, Slot, notices};
use proptest::prelude::*;
use proptest::sample::Index;
use serde_json::{Value, json};

/// Damage to the text.
#[derive(Clone, Debug)]
enum Blow {
    Cut(Index, usize),
    Put(Index, String),
    Double(Index, usize),
}

fn blow() -> impl Strategy<Value = Blow> {
    let snippet = prop_oneof![
        prop::sample::select(vec![
            "{", "}", "[", "]", "\"", ",", ":", "-", "0", "1e308", "1e999", "-0.0", "null", "true",
            "\\", "\\u0000", "\u{0}", "é", "\"id\"", "[[", "{}", "[]", ".", "  ", "\n",
        ])
        .prop_map(String::from),
        ".{1,4}",
    ];
    prop_oneof![
        (any::<Index>(), 1..400_usize).prop_map(|(at, length)| Blow::Cut(at, length)),
        (any::<Index>(), snippet).prop_map(|(at, text)| Blow::Put(at, text)),
        (any::<Index>(), 1..400_usize).prop_map(|(at, length)| Blow::Double(at, length)),
    ]
}

fn strike(text: &mut Vec<char>, blow: &Blow) {
    if text.is_empty() {
        return;
    }
    let reach = |at: &Index, length: usize| {
        let start = at.index(text.len());
        start..text.len().min(start + length)
    };
    match blow {
        Blow::Cut(at, length) => drop(text.drain(reach(at, *length))),
        Blow::Put(at, snippet) => {
            let at = at.index(text.len());
            text.splice(at..at, snippet.chars());
        }
        Blow::Double(at, length) => {
            let copied = text[reach(at, *length)].to_vec();
            let at = at.index(text.len());
            text.splice(at..at, copied);
        }
    }
}

/// JSON pointers of everything in a value.
fn pointers(value: &Value) -> Vec<String> {
    fn walk(at: String, value: &Value, found: &mut Vec<String>) {
        match value {
            Value::Object(map) => map.iter().for_each(|(key, value)| {
                let key = key.replace('~', "~0").replace('/', "~1");
                walk(format!("{at}/{key}"), value, found);
            }),
            Value::Array(list) => list.iter().enumerate().for_each(|(index, value)| {
                walk(format!("{at}/{index}"), value, found);
            }),
            _ => {}
        }
        found.push(at);
    }
    let mut found = Vec::new();
    walk(String::new(), value, &mut found);
    found
}

fn anything() -> impl Strategy<Value = Value> {
    prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        (-2000..2000_i32).prop_map(Value::from),
        any::<u64>().prop_map(Value::from),
        ".{0,12}".prop_map(Value::from),
        Just(json!("x".repeat(401))),
        Just(json!([])),
        Just(json!({})),
        Just(json!([{}])),
        Just(json!({ "id": "a", "name": "A", "teeth": 16 })),
    ]
}

/// Puts something else in the place of something, or takes it away.
fn replace(file: &mut Value, at: &Index, with: Option<Value>) {
    let all = pointers(file);
    let pointer = at.get(&all).clone();
    match with {
        Some(with) => *file.pointer_mut(&pointer).unwrap() = with,
        None => {
            let Some((parent, key)) = pointer.rsplit_once('/') else { return };
            let key = key.replace("~1", "/").replace("~0", "~");
            match file.pointer_mut(parent).unwrap() {
                Value::Object(map) => drop(map.remove(&key)),
                Value::Array(list) => drop(list.remove(key.parse().unwrap())),
                _ => {}
            }
        }
    }
}

/// Whether the place that a fault names is there, or what lacks it.
fn there(file: &Value, fault: &Error) -> bool {
    let whole = match fault.reason {
        Reason::Missing { .. } => fault.field.rsplit_once('/').map(|(parent, _)| parent),
        _ => Some(fault.field.as_str()).filter(|place| *place != "/schema_version"),
    };
    whole.is_none_or(|place| file.pointer(place).is_some())
}

/// What was read makes a build, whole or in part.
fn judge(text: &str) -> Result<Option<Vec<Error>>, TestCaseError> {
    match Catalog::read(text) {
        Ok((catalog, faults)) => {
            let text = text.strip_prefix('\u{feff}').unwrap_or(text);
            let value: Value = serde_json::from_str(text).unwrap();
            for fault in &faults {
                prop_assert!(there(&value, fault), "{fault}");
            }
            let kits = catalog.kits.iter().map(|kit| kit.id.as_str());
            for kit in kits.chain(["", "no such kit"]) {
                let draft = catalog.draft(kit);
                match Build::check(&draft) {
                    Ok(build) => drop(notices(&draft, &build)),
                    // Nothing else than a part that is not there keeps it from being built.
                    Err(errors) => prop_assert!(
                        !draft.unfilled().is_empty()
                            && errors.iter().all(|e| matches!(e.reason, Reason::Unfilled { .. })),
                        "{kit}: {errors:?}"
                    ),
                }
                for slot in Slot::ALL {
                    let _ = catalog.offered(kit, *slot);
                }
            }
            for fault in &faults {
                let _ = catalog.place(fault);
            }
            let _ = (catalog.count_left_out(&faults), catalog.check_parts());
            for kit in &catalog.kits {
                let mut check = KitCheck::new(&catalog, kit);
                // Some thousand would take their time.
                for _ in 0..20 {
                    check.step();
                }
                prop_assert!(check.report().checked == check.planned().min(20));
            }
            for kind in Kind::ALL {
                for part in catalog.parts(*kind) {
                    let found = catalog.part(*kind, &part.id);
                    prop_assert!(
                        found == Some(part)
                            && part
                                .checked(kind.fields(), CellClass::usual(Chemistry::Energy))
                                .is_ok()
                    );
                }
            }
            Ok(Some(faults))
        }
        Err(error) => {
            let fair = match error.reason {
                Reason::Syntax { line, .. } => line <= text.split('\n').count(),
                Reason::WrongForm { .. } => true,
                Reason::TooLarge { most, .. } => text.len() > most,
                _ => false,
            };
            prop_assert!(fair, "{error}");
            Ok(None)
        }
    }
}

/// A schema cannot say these.
fn beyond_a_schema(fault: &Error) -> bool {
    match &fault.reason {
        Reason::Unknown { .. } => {
            let of_pack = fault.field.starts_with("/packs/") && fault.field.ends_with("/cell");
            of_pack || fault.field.contains("/slots/")
        }
        // A list that kits name parts of, and that is not there.
        Reason::Missing { .. } => fault.field.matches('/').count() == 1,
        Reason::Duplicate { .. } => true,
        _ => false,
    }
}

proptest! {
    #[test]
    fn damaged_text_is_read_or_refused(blows in prop::collection::vec(blow(), 1..6)) {
        let mut text: Vec<char> = demo_text().chars().collect();
        blows.iter().for_each(|blow| strike(&mut text, blow));
        judge(&text.into_iter().collect::<String>())?;
    }

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,80}") {
        judge(&text)?;
    }

    /// And the reader finds nothing wrong with what the schema allows.
    #[test]
    fn damaged_values_are_read(
        changes in prop::collection::vec((any::<Index>(), prop::option::of(anything())), 1..6),
    ) {
        let mut file = demo_value();
        changes.into_iter().for_each(|(at, with)| replace(&mut file, &at, with));
        let faults = judge(&file.to_string())?;
        if schema::complaints(schema::catalogue(), &file).is_empty() {
            let faults = faults.unwrap_or_default();
            prop_assert!(faults.iter().all(beyond_a_schema), "{faults:?}");
        }
    }
}
