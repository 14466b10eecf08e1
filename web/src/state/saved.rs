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
