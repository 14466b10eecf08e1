//! For other pages: the answers without the page.

use pitchline_core::catalog::read_build;
use pitchline_core::{Answers, Build, Error, Reason, answers as find};
use serde::Serialize;
use wasm_bindgen::prelude::*;

/// What [`answers`] gives back: answers or errors, and what was ignored.
#[derive(Serialize)]
struct Outcome {
    #[serde(skip_serializing_if = "Option::is_none")]
    answers: Option<Answers>,
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

/// Answers the four questions for a build.
///
/// `build` is a plain object in the form of a build file: one object for each
/// slot, units in the key names; a slot left out gets typical values. Gives
/// `{ answers, ignored }` in SI, or `{ errors: [{ field, reason }], ignored }`.
/// What is not understood, or has no effect here, is listed in `ignored` by
/// name, in the form of an error, and changes nothing. Never throws.
#[wasm_bindgen]
#[must_use]
pub fn answers(build: JsValue) -> JsValue {
    // Read as JSON text: a plain object is what JSON can say, and reading it
    // generically would bring a second reader into the page.
    // JSON would turn a number that is none into nothing at all; a word is refused by name.
    let finite = Closure::<dyn Fn(JsValue, JsValue) -> JsValue>::new(|_, value: JsValue| {
        let endless = value.as_f64().is_some_and(|value| !value.is_finite());
        if endless { "not a number".into() } else { value }
    });
    let text = js_sys::JSON::stringify_with_replacer(&build, finite.as_ref());
    let text = text.ok().and_then(|text| text.as_string());
    let value = text.and_then(|text| serde_json::from_str(&text).ok());
    let outcome = match value {
        Some(value) => answered(&value),
        None => {
            let fault = Fault { field: String::new(), reason: "is not a plain object".into() };
            Outcome { answers: None, errors: Some(vec![fault]), ignored: Vec::new() }
        }
    };
    let writer = serde_wasm_bindgen::Serializer::json_compatible();
    outcome.serialize(&writer).unwrap_or(JsValue::NULL)
}

fn answered(value: &serde_json::Value) -> Outcome {
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
            Outcome { answers: Some(find(&build)), errors: None, ignored: faults(ignored) }
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
            let outcome = answered(&build);
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
            let outcome = answered(&build);
            assert!(outcome.answers.is_none(), "{build}");
            assert_eq!(named(&outcome.errors.unwrap_or_default()), fields, "{build}");
        }
    }
}
