//! For other pages: the answers without the page.

use pitchline_core::catalog::read_build;
use pitchline_core::{AnswerSet, Bands, Build, Error, Reason, answer_set};
use serde::Serialize;
use serde_json::Value;
use wasm_bindgen::prelude::*;

/// What [`answers`] gives back: answers or errors, and what was ignored.
#[derive(Serialize)]
struct Outcome {
    #[serde(skip_serializing_if = "Option::is_none")]
    answers: Option<AnswerSet>,
    #[serde(skip_serializing_if = "Option::is_none")]
    errors: Option<Vec<Fault>>,
    ignored: Vec<Fault>,
}

/// An error as a plain object.
#[derive(Serialize)]
struct Fault {
    field: String,
    reason: String,
}

impl From<Error> for Fault {
    fn from(error: Error) -> Self {
        Self { field: error.field, reason: error.reason.to_string() }
    }
}

/// Answers every question for a build.
///
/// `build` is a plain object in the form of a build file: one object for each
/// slot, units in the key names; a slot left out gets typical values. Gives
/// `{ answers, ignored }` in SI, or `{ errors: [{ field, reason }], ignored }`.
/// `options` may be `{ bands: true }`: then `answers.bands` is there too, which takes
/// far longer than all else. `options.catalogue`, the version of the catalogue that the
/// parts are from, comes back in `answers.made_by`.
/// What is not understood, or has no effect here, is listed in `ignored` by
/// name, in the form of an error, and changes nothing. Never throws.
#[wasm_bindgen]
#[must_use]
pub fn answers(build: JsValue, options: Option<JsValue>) -> JsValue {
    let outcome = match plain(&build) {
        Some(build) => {
            let (options, mut ignored) = asked(options.map(|options| plain(&options)));
            let mut outcome = answered(&build, options);
            outcome.ignored.append(&mut ignored);
            outcome
        }
        None => {
            let fault = Fault { field: String::new(), reason: "is not a plain object".into() };
            Outcome { answers: None, errors: Some(vec![fault]), ignored: Vec::new() }
        }
    };
    let writer = serde_wasm_bindgen::Serializer::json_compatible();
    outcome.serialize(&writer).unwrap_or(JsValue::NULL)
}

/// A plain object as data; none if it is no such thing.
fn plain(value: &JsValue) -> Option<Value> {
    // Read as JSON text: a plain object is what JSON can say, and reading it
    // generically would bring a second reader into the page.
    // JSON would turn a number that is none into nothing at all; a word is refused by name.
    let finite = Closure::<dyn Fn(JsValue, JsValue) -> JsValue>::new(|_, value: JsValue| {
        let endless = value.as_f64().is_some_and(|value| !value.is_finite());
        if endless { "not a number".into() } else { value }
    });
    let text = js_sys::JSON::stringify_with_replacer(value, finite.as_ref()).ok()?.as_string()?;
    serde_json::from_str(&text).ok()
}

/// What is answered beyond the rest.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Options {
    bands: bool,
    catalogue: Option<String>,
}

/// Reads options, and what of them is not understood.
fn asked(options: Option<Option<Value>>) -> (Options, Vec<Fault>) {
    let mut read = Options::default();
    let mut ignored = Vec::new();
    let mut fault = |field: &str, reason| ignored.push(Error::new(field, reason).into());
    match options {
        None => {}
        Some(Some(Value::Object(map))) => {
            for (key, value) in &map {
                match (key.as_str(), value) {
                    ("bands", Value::Bool(bands)) => read.bands = *bands,
                    ("catalogue", Value::String(version)) => read.catalogue = Some(version.clone()),
                    ("bands", _) => fault("options/bands", Reason::wrong_form("true or false")),
                    ("catalogue", _) => fault("options/catalogue", Reason::wrong_form("text")),
                    _ => fault("options", Reason::unknown(key, &["bands", "catalogue"])),
                }
            }
        }
        Some(_) => fault("options", Reason::wrong_form("an object such as { bands: true }")),
    }
    (read, ignored)
}

fn answered(value: &Value, options: Options) -> Outcome {
    let faults = |errors: Vec<Error>| errors.into_iter().map(Fault::from).collect::<Vec<_>>();
    let refused = |errors, ignored| Outcome {
        answers: None,
        errors: Some(faults(errors)),
        ignored: faults(ignored),
    };
    let (draft, mut ignored) = match read_build(value) {
        Ok(read) => read,
        Err(errors) => return refused(errors, Vec::new()),
    };
    if !draft.kit.is_empty() {
        let why = "is not used: answers reads no catalogue. Give each part in full";
        ignored.push(Error::new("/kit", Reason::Unused { why }));
    }
    match Build::check(&draft) {
        Ok(build) => {
            let mut found = answer_set(&draft, &build);
            found.bands = options.bands.then(|| Bands::of(&build));
            found.made_by.catalogue = options.catalogue;
            Outcome { answers: Some(found), errors: None, ignored: faults(ignored) }
        }
        Err(errors) => refused(errors, ignored),
    }
}

/// Version of this module, by semantic versioning.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn named(faults: &[Fault]) -> Vec<&str> {
        faults.iter().map(|fault| fault.field.as_str()).collect()
    }

    #[test]
    fn what_has_no_effect_is_told_and_the_rest_is_answered() {
        for (build, fields) in [
            (json!({}), vec![]),
            (json!({ "kit": "moor" }), vec!["/kit"]),
            (json!({ "whel": {}, "$remark": 1 }), vec!["/whel"]),
            (json!({ "rider": { "mas_kg": 95 }, "version": 2 }), vec!["/version", "/rider/mas_kg"]),
            (json!({ "name": 5 }), vec!["/name"]),
        ] {
            let outcome = answered(&build, Options::default());
            assert!(outcome.answers.is_some() && outcome.errors.is_none(), "{build}");
            assert_eq!(named(&outcome.ignored), fields, "{build}");
        }
    }

    /// With another value in its place it would be another board.
    #[test]
    fn a_faulty_value_is_no_answer() {
        for (build, fields) in [
            (json!({ "motor_pulley": { "teeth": 7 } }), vec!["/motor_pulley/teeth"]),
            // A required value under a misspelt key is missing, and told once.
            (json!({ "motor_pulley": { "teth": 16 } }), vec!["/motor_pulley/teth"]),
            (
                json!({ "rider": { "posture": "asleep" }, "whel": {} }),
                vec!["/rider/posture", "/whel"],
            ),
            (json!({ "format": "another" }), vec!["/format"]),
        ] {
            let outcome = answered(&build, Options::default());
            assert!(outcome.answers.is_none(), "{build}");
            assert_eq!(named(&outcome.errors.unwrap_or_default()), fields, "{build}");
        }
    }

    #[test]
    fn options_that_are_not_understood_are_told() {
        for (options, bands, fields) in [
            (None, false, vec![]),
            (Some(Some(json!({}))), false, vec![]),
            (Some(Some(json!({ "bands": true }))), true, vec![]),
            (Some(Some(json!({ "bands": false }))), false, vec![]),
            (Some(Some(json!({ "bands": 1 }))), false, vec!["options/bands"]),
            (Some(Some(json!({ "band": true }))), false, vec!["options"]),
            (Some(Some(json!({ "catalogue": 5 }))), false, vec!["options/catalogue"]),
            (Some(Some(json!(true))), false, vec!["options"]),
            (Some(None), false, vec!["options"]),
        ] {
            let (read, ignored) = asked(options);
            assert_eq!((read.bands, named(&ignored)), (bands, fields));
        }
    }

    #[test]
    fn every_question_is_answered_and_bands_only_when_asked_for() {
        let answers = |options| {
            let outcome = answered(&json!({}), options);
            serde_json::to_value(outcome.answers.unwrap()).unwrap()
        };
        let found = answers(Options::default());
        let keys: Vec<&str> = found.as_object().unwrap().keys().map(String::as_str).collect();
        assert_eq!(
            keys,
            [
                "caveats", "charge", "climb", "distance", "fit", "made_by", "notices", "push",
                "rides", "speed", "totals",
            ]
        );
        assert_eq!(found["made_by"]["pitchline"], version());
        assert_eq!(found["made_by"].get("catalogue"), None);
        let with = answers(Options { bands: true, catalogue: Some("2026-11".into()) });
        assert_eq!(with["made_by"]["catalogue"], "2026-11");
        for (band, nominal) in [
            ("top_speed", &found["speed"]["flat_full"]["speed_m_s"]),
            ("hill", &found["climb"]["slow"]["grade"]),
            ("steady_distance", &found["distance"]["cruise"]["distance_m"]),
            ("charge_time", &found["charge"]["found"]["full"]["time_s"]),
            ("enough_time", &found["charge"]["found"]["enough"]["time_s"]),
        ] {
            let band = &with["bands"][band];
            let number = |key: &str| band[key].as_f64().unwrap();
            assert!(number("p10") < number("p50") && number("p50") < number("p90"), "{band}");
            let nominal = nominal.as_f64().unwrap();
            assert!((number("nominal") / nominal - 1.0).abs() < 1e-6, "{band}: {nominal}");
        }
    }
}
