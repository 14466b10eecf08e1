//! Words of what stands around the questions.

use super::{Style, page};
use crate::chart::plain;
use pitchline_core::MODEL;

/// Name of the page.
pub const NAME: &str = "Pitchline";
/// That with its version.
pub const NAME_AND_VERSION: &str = concat!("Pitchline ", env!("CARGO_PKG_VERSION"));

/// The browser's title of a view.
#[must_use]
pub fn title(view: &str) -> String {
    format!("{view} – {NAME}")
}

/// Leads to what is on the board.
pub const CHANGE: &str = "Change";
/// Over how the page writes.
pub const UNITS: &str = "Units";
/// Those of most of the world.
pub const METRIC: &str = "km, kg";
/// The others.
pub const IMPERIAL: &str = "mi, lb";
/// Over the page's colours.
pub const THEME: &str = "Theme";
/// Colours by what the device says.
pub const DEVICE: &str = "Same as device";
/// Dark ink on light paper.
pub const LIGHT: &str = "Light";
/// Light ink on dark paper.
pub const DARK: &str = "Dark";
/// Over paper.
pub const PRINT: &str = "Print";
/// Prints the view and the build.
pub const PRINT_BUILD: &str = "Print this build";

/// Over how far to trust the figures.
pub const TRUST: &str = "How far to trust it";
/// Leads to the maker's check.
pub const CHECK_CATALOGUE: &str = "Check this catalogue";
/// What a first visit asks.
pub const WHICH_KIT: &str = "Which kit do you have?";
/// Neither.
pub const OWN_BOARD: &str = "My own board";
/// What that means.
pub const OWN_BOARD_WHY: &str = "Enter the parts you have.";
/// Over what does not fit or is tight.
#[must_use]
pub fn check(count: usize) -> String {
    if count == 1 { "Check 1 thing".into() } else { format!("Check {count} things") }
}

/// Under the first of them.
#[must_use]
pub fn and_more(count: usize) -> String {
    format!("and {count} more")
}

/// Over rider, place and ride, on paper.
pub const CONDITIONS: &str = "Calculated for";

/// Of a catalogue without a version.
pub const NO_VERSION: &str = "catalogue version not given";

/// Whose parts they are.
#[must_use]
pub fn parts(maker: &str, version: &str, notes: &str) -> String {
    format!("Parts: {maker}, {}. {notes}", of_version(version))
}

fn of_version(version: &str) -> String {
    if version.is_empty() { NO_VERSION.into() } else { format!("catalogue {version}") }
}

/// Who made the figures, by what, and when; the date as `2026-11-02`.
#[must_use]
pub fn made(maker: &str, catalogue: &str, date: &str) -> String {
    let date = page::long_date(date).unwrap_or_else(|| date.into());
    let catalogue = of_version(catalogue);
    format!(
        "Parts: {maker}, {catalogue}. {NAME_AND_VERSION}, model {MODEL}. Date: {date}. Calculated, not measured: check before you rely on it."
    )
}

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

/// Wheels, which are called by whole millimetres everywhere.
#[must_use]
pub fn wheel(diameter_mm: f64, style: Style) -> String {
    format!("{}\u{a0}mm", style.fixed(diameter_mm, 0))
}

/// Takes back the last edit of the build.
pub const UNDO: &str = "Undo";
/// Makes again what was taken back.
pub const REDO: &str = "Redo";
/// Takes a message away.
pub const CLOSE: &str = "Close";

/// Offers a newer version of the page.
pub const UPDATE: &str = "A new version is ready.";
/// Takes it.
pub const RELOAD: &str = "Reload";
/// Puts it off.
pub const LATER: &str = "Later";

/// A button that undoes or redoes, by its word and the edit's name.
#[must_use]
pub fn button(word: &str, edit: Option<&str>) -> String {
    match edit {
        Some(edit) if !edit.is_empty() => format!("{word} – {edit}"),
        _ => word.into(),
    }
}
