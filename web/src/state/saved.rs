//! Named builds as text for the store, and a build as a file.

use pitchline_core::catalog::{read_build, write_build};
use pitchline_core::{Draft, Error, Reason};
use serde_json::Value;

/// Largest build file that is read, in bytes.
const LARGEST: usize = 256 * 1024;
/// Most builds that are kept.
pub const MOST: usize = 60;

/// Reads a build file.
///
/// # Errors
/// One for each fault, located by line and column or by JSON pointer.
pub fn read_file(text: &str) -> Result<Draft, Vec<Error>> {
    if text.len() > LARGEST {
        let reason = Reason::TooLarge { most: LARGEST, what: "bytes" };
        return Err(vec![Error::new("", reason)]);
    }
    let value = serde_json::from_str(text).map_err(|error: serde_json::Error| {
        let reason = Reason::Syntax { line: error.line(), column: error.column() };
        vec![Error::new("", reason)]
    })?;
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

/// Named builds from text; one that cannot be read is left out. `None` when
/// the text is no list at all, so that the caller can keep a copy of it.
#[must_use]
pub fn read_all(text: &str) -> Option<Vec<Draft>> {
    let Ok(Value::Array(list)) = serde_json::from_str(text) else { return None };
    Some(list.iter().filter_map(|value| read_build(value).ok()).take(MOST).collect())
}
