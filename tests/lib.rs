//! Everything that checks the whole from outside.
//!
//! [`browser`] drives a real Chromium; the tests themselves live in the
//! folders beside this file, one test program a folder.

pub mod browser;
