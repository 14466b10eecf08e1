//! Words of what stands around the questions.

use crate::chart::plain;

/// Leads to what is on the board.
pub const CHANGE: &str = "Change";
/// Over how the page writes.
pub const UNITS: &str = "Units";
/// Over paper.
pub const PRINT: &str = "Print";
/// Prints the view and the build.
pub const PRINT_BUILD: &str = "Print this build";

/// Motors in a few words; Kv in rpm per volt.
#[must_use]
pub fn motors(count: f64, kv: f64) -> String {
    format!("{}\u{a0}×\u{a0}{}\u{a0}Kv", plain(count, 0), plain(kv, 0))
}

/// Teeth of motor pulley and wheel pulley.
#[must_use]
pub fn gearing(motor: f64, wheel: f64) -> String {
    format!("{}/{}\u{a0}teeth", plain(motor, 0), plain(wheel, 0))
}
