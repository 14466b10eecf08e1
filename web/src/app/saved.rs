//! Named builds as text for the store, and a build as a file.

use pitchline_core::catalog::{read_build, syntax_fault, write_build};
use pitchline_core::{Draft, Error, Reason};
use serde_json::Value;

/// Largest build file that is read, in bytes.
const LARGEST: usize = 256 * 1024;
/// Most builds that are kept.
pub const MOST: usize = 60;

/// Reads a build file, and what of it is not understood.
///
/// # Errors
/// One for each fault, located by line and column or by JSON pointer.
pub fn read_file(text: &str) -> Result<(Draft, Vec<Error>), Vec<Error>> {
    if text.len() > LARGEST {
        let reason = Reason::TooLarge { most: LARGEST, what: "bytes" };
        return Err(vec![Error::new("", reason)]);
    }
    let value = serde_json::from_str(text)
        .map_err(|error: serde_json::Error| vec![syntax_fault(text, &error)])?;
    read_build(&value)
}

/// A build file. `created` is the date, as the browser tells it.
#[must_use]
pub fn write_file(draft: &Draft, created: &str) -> Value {
    let mut value = write_build(draft);
    if let Value::Object(map) = &mut value {
        map.insert("app".into(), "Pitchline".into());
        if !created.is_empty() {
            map.insert("created".into(), created.into());
        }
    }
    value
}

/// Named builds for the store.
#[must_use]
pub fn write_all(builds: &[Draft]) -> Value {
    Value::Array(builds.iter().map(write_build).collect())
}

/// Named builds from text, and whether that is all of it: one that cannot be read, or not in
/// full, would be lost when the builds are kept again, so the caller keeps a copy of the text.
#[must_use]
pub fn read_all(text: &str) -> (Vec<Draft>, bool) {
    let Ok(Value::Array(list)) = serde_json::from_str(text) else { return (Vec::new(), false) };
    let mut whole = list.len() <= MOST;
    let mut read = |value| match read_build(value) {
        Ok((draft, ignored)) => {
            whole &= ignored.is_empty();
            Some(draft)
        }
        Err(_) => {
            whole = false;
            None
        }
    };
    let builds = list.iter().filter_map(&mut read).take(MOST).collect();
    (builds, whole)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A later version's key is no reason to lose a build.
    #[test]
    fn what_a_file_has_beyond_is_told() {
        let text = r#"{ "format": "pitchline-build", "version": 1, "name": "Mine",
            "rider": { "mass_kg": 95, "mood": "good" }, "lights": {} }"#;
        let (draft, ignored) = read_file(text).unwrap();
        assert_eq!(
            (draft.name.as_str(), draft.value(pitchline_core::Slot::Rider, "mass_kg")),
            ("Mine", Some(95.0))
        );
        let fields: Vec<_> = ignored.iter().map(|fault| fault.field.as_str()).collect();
        assert_eq!(fields, ["/rider/mood", "/lights"]);
    }

    #[test]
    fn a_slip_of_the_pen_is_told_where_it_is() {
        let faults = read_file("{\n  \"name\": \"Mine\"\n  \"version\": 1\n}").unwrap_err();
        let said: Vec<_> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(said, [": is not valid JSON at line 2, column 17: a comma is missing here"]);
    }

    /// So that the caller keeps a copy before the list is written anew.
    #[test]
    fn kept_builds_that_are_not_read_in_full_are_noticed() {
        let good = write_all(&[Draft::typical()]).to_string();
        assert_eq!(read_all(&good), (vec![Draft::typical()], true));
        let mut list: Value = serde_json::from_str(&good).unwrap();
        list[0]["lights"] = serde_json::json!({});
        assert_eq!(read_all(&list.to_string()), (vec![Draft::typical()], false));
        list[0]["rider"]["mass_kg"] = serde_json::json!(-1);
        assert_eq!(read_all(&list.to_string()), (vec![], false));
        assert_eq!(read_all("no list"), (vec![], false));
    }
}
