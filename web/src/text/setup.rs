//! Words of what is on the board.

use super::Style;

/// The kits to choose from.
pub const KITS: &str = "Start from a kit";
/// Inputs of rider, ride and place.
pub const RIDER: &str = "You and your ride";
/// Those that few people change.
pub const MORE_RIDER: &str = "More conditions";
/// What turns the wheels.
pub const DRIVE: &str = "Drive";
/// What rolls and steers.
pub const WHEELS: &str = "Wheels and trucks";
/// What holds the energy, and fills it.
pub const PACK: &str = "Pack and charger";
/// What the rider stands on.
pub const DECK: &str = "Deck";
/// What holds the motors back.
pub const CONTROLLER: &str = "Controller and ride modes";
/// The last entry of every list of parts.
pub const OWN: &str = "Use my own\u{2026}";
/// Said where a board of the reader's own begins.
pub const OWN_BEGINS: &str = "The parts have example figures. Replace them with yours.";
/// Every further figure of a part of the reader's own.
pub const MORE_FIGURES: &str = "More figures";
/// Every figure of a part of the catalogue.
pub const FIGURES: &str = "Figures";
/// Of a part of the catalogue with other figures.
pub const ALTERED: &str = "changed by you";
/// Takes the catalogue's figures again.
pub const PUT_BACK: &str = "Reset";

/// Puts a part on the board, or `back` as the catalogue has it where it is there with other values.
#[must_use]
pub fn take(name: &str, back: bool) -> String {
    if back { format!("{PUT_BACK} {name}") } else { format!("Use {name}") }
}
/// Mass of the board.
pub const BOARD: &str = "Board";
/// Mass of board, rider and bag.
pub const WITH_RIDER: &str = "With rider";
/// Energy of the pack by its label.
pub const ENERGY: &str = "Rated energy";
/// Teeth of the wheel pulley over those of the motor pulley.
pub const RATIO: &str = "Gear ratio";
/// Of all parts and the charger.
pub const PRICE: &str = "Price with charger";

/// A sum of prices, and how many parts have none.
#[must_use]
pub fn price(currency: &str, sum: f64, unpriced: usize, style: Style) -> String {
    let sum = format!("{currency}\u{a0}{}", style.fixed(sum, 0));
    match unpriced {
        0 => sum,
        1 => format!("{sum}, 1 part unpriced"),
        n => format!("{sum}, {n} parts unpriced"),
    }
}

/// A figure of a part at a glance, by its key. `value` has its unit.
#[must_use]
pub fn at_a_glance(key: &str, value: String) -> String {
    match key {
        "series" => format!("{value} in series"),
        "parallel" => format!("{value} in parallel"),
        "protection_a" => format!("{value} at most"),
        "speed_cap_km_h" => format!("up to {value}"),
        "current_percent" => format!("{value} of the current"),
        "battery_current_a" => format!("{value} from the pack per motor"),
        "motor_current_a" => format!("{value} to each motor"),
        _ => value,
    }
}

/// Where a part's figures are from.
#[must_use]
pub fn source(source: &str) -> String {
    format!("Source: {source}")
}

/// Name of a part that has none.
pub const TYPED_IN: &str = "My own";

/// Name of a part of the reader's own.
#[must_use]
pub fn my_own(part: &str) -> String {
    format!("My own {}", part.to_ascii_lowercase())
}
