//! Everything that checks the whole from outside.
//!
//! [`browser`] drives a real Chromium; the tests themselves live in the
//! folders beside this file, one test program a folder.

pub mod browser;

use std::path::PathBuf;

/// The repository.
pub fn root() -> PathBuf {
    let mut folder = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    folder.pop();
    folder
}

/// The built site.
pub fn dist() -> PathBuf {
    root().join("dist")
}
