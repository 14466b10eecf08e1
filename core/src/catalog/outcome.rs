//! Answers for other programs: plain data in, plain data out.

use super::read_build;
use crate::answers::{AnswerSet, Bands, answer_set};
use crate::build::Build;
use crate::error::{Error, Reason};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::Serialize;
use serde_json::{Map, Value};

/// What to answer beyond the rest, and where the parts come from.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct Options {
    /// Whether to work out `answers.bands` too, which takes far longer than everything else.
    pub bands: Option<bool>,
    /// Version of the catalogue that the parts come from. It is returned in `answers.made_by`.
    pub catalogue: Option<String>,
}

/// A faulty value, or something that was ignored.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Fault {
    /// Where: a JSON pointer into the build, or the path of an option.
    pub field: String,
    /// What is wrong, what is allowed and in which unit, in English.
    pub reason: String,
}

/// Answers or errors, and what was ignored.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct Outcome {
    /// The answers; missing if there are errors.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub answers: Option<AnswerSet>,
    /// Why the build can't be answered: one error for each faulty value.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub errors: Option<Vec<Fault>>,
    /// What was not understood or has no effect here. It changed nothing.
    pub ignored: Vec<Fault>,
}

impl From<Error> for Fault {
    fn from(error: Error) -> Self {
        Self { field: error.field, reason: error.reason.to_string() }
    }
}

fn faults(errors: Vec<Error>) -> Vec<Fault> {
    errors.into_iter().map(Fault::from).collect()
}

impl Options {
    /// Reads options, and what of them is not understood.
    fn read(value: &Value) -> (Self, Vec<Error>) {
        let mut read = Self::default();
        let mut ignored = Vec::new();
        let mut fault = |field: &str, reason| ignored.push(Error::new(field, reason));
        let Some(map) = value.as_object() else {
            fault("options", Reason::wrong_form("an object such as { bands: true }"));
            return (read, ignored);
        };
        for (key, value) in map {
            match (key.as_str(), value) {
                ("bands", Value::Bool(bands)) => read.bands = Some(*bands),
                ("catalogue", Value::String(version)) => read.catalogue = Some(version.clone()),
                ("bands", _) => fault("options/bands", Reason::wrong_form("true or false")),
                ("catalogue", _) => fault("options/catalogue", Reason::wrong_form("text")),
                _ => fault("options", Reason::unknown(key, &["bands", "catalogue"])),
            }
        }
        (read, ignored)
    }
}

impl Outcome {
    /// Answers a build in the form of a build file; the typical board where there is none.
    ///
    /// Never fails: what is wrong comes back in it.
    ///
    /// ```
    /// use pitchline_core::catalog::Outcome;
    /// use serde_json::json;
    ///
    /// let build = json!({ "rider": { "mass_kg": 95, "hat": 1 } });
    /// let found = Outcome::of(Some(&build), Some(&json!({ "catalogue": "2026-11" })));
    /// assert_eq!(found.answers.unwrap().made_by.catalogue.unwrap(), "2026-11");
    /// assert_eq!(found.ignored[0].field, "/rider/hat");
    /// ```
    #[inline]
    #[must_use]
    pub fn of(build: Option<&Value>, options: Option<&Value>) -> Self {
        let (options, unread) = options.map(Options::read).unwrap_or_default();
        let typical = Value::Object(Map::new());
        let mut outcome = Self::answered(build.unwrap_or(&typical), options);
        outcome.ignored.extend(faults(unread));
        outcome
    }

    fn answered(build: &Value, options: Options) -> Self {
        let (draft, mut ignored) = match read_build(build) {
            Ok(read) => read,
            Err(errors) => return Self::refused(errors, Vec::new()),
        };
        if !draft.kit.is_empty() {
            let why =
                "is ignored because answers() doesn't read a catalogue. Give each part in full.";
            ignored.push(Error::new("/kit", Reason::Unused { why }));
        }
        match Build::check(&draft) {
            Ok(build) => {
                let mut found = answer_set(&draft, &build);
                found.bands = options.bands.unwrap_or_default().then(|| Bands::of(&build));
                found.made_by.catalogue = options.catalogue;
                Self { answers: Some(found), errors: None, ignored: faults(ignored) }
            }
            Err(errors) => Self::refused(errors, ignored),
        }
    }

    /// What is said instead of answers.
    #[must_use]
    pub fn refused(errors: Vec<Error>, ignored: Vec<Error>) -> Self {
        Self { answers: None, errors: Some(faults(errors)), ignored: faults(ignored) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;
    use std::vec;

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
            let outcome = Outcome::of(Some(&build), None);
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
            let outcome = Outcome::of(Some(&build), None);
            assert!(outcome.answers.is_none(), "{build}");
            assert_eq!(named(&outcome.errors.unwrap_or_default()), fields, "{build}");
        }
    }

    #[test]
    fn options_that_are_not_understood_are_told() {
        for (options, bands, fields) in [
            (json!({}), false, vec![]),
            (json!({ "bands": true }), true, vec![]),
            (json!({ "bands": false }), false, vec![]),
            (json!({ "bands": 1 }), false, vec!["options/bands"]),
            (json!({ "band": true }), false, vec!["options"]),
            (json!({ "catalogue": 5 }), false, vec!["options/catalogue"]),
            (json!(true), false, vec!["options"]),
            (json!(null), false, vec!["options"]),
        ] {
            let found = Outcome::of(None, Some(&options));
            assert_eq!(
                (found.answers.unwrap().bands.is_some(), named(&found.ignored)),
                (bands, fields)
            );
        }
    }

    #[test]
    fn every_question_is_answered_and_bands_only_when_asked_for() {
        let answers = |options| {
            let outcome = Outcome::of(None, options);
            serde_json::to_value(outcome.answers.unwrap()).unwrap()
        };
        let found = answers(None);
        let keys: Vec<&str> = found.as_object().unwrap().keys().map(String::as_str).collect();
        assert_eq!(
            keys,
            [
                "caveats", "charge", "climb", "distance", "fit", "made_by", "margins", "notices",
                "push", "rides", "settings", "speed", "totals",
            ]
        );
        assert_eq!(found["made_by"]["pitchline"], env!("CARGO_PKG_VERSION"));
        assert_eq!(found["made_by"].get("catalogue"), None);
        let with = answers(Some(&json!({ "bands": true, "catalogue": "2026-11" })));
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
