//! Words of a change that cures something, or makes something better.

use super::{Style, percent, settings, setup, words};
use pitchline_core::Slot;

/// Over the changes that cure what is over.
pub const CURES: &str = "What to change";
/// What a change that cures something makes of the hill and of the top speed, m/s.
#[must_use]
pub fn then(grade: f64, top_m_s: f64, style: Style) -> String {
    let (grade, top) = (percent(grade.max(0.0)), style.speed_unit(top_m_s));
    format!("Then it climbs {grade} and reaches {top}.")
}

/// Where nothing on offer cures it.
pub const NO_CURE: &str = "No part in this catalogue fixes this.";

/// The button that makes a change.
#[must_use]
pub fn take(
    parts: &[(Slot, &str)],
    highest: bool,
    price: Option<f64>,
    currency: &str,
    style: Style,
) -> String {
    let [(slot, _), ..] = parts else { return settings::take(highest).into() };
    let names: Vec<&str> = parts.iter().map(|(_, name)| *name).collect();
    let take = setup::take(&names.join(" + "), false);
    let slot = words::small(words::slot(*slot));
    match price {
        Some(price) => format!("{take} ({slot}), {currency}\u{a0}{}", style.significant(price, 3)),
        None => format!("{take} ({slot})"),
    }
}
