//! Words of what is on the board.

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
/// Every further figure of a part of the reader's own.
pub const MORE_FIGURES: &str = "More figures";
/// Every figure of a part of the catalogue.
pub const FIGURES: &str = "Figures";
/// Of a part of the catalogue with other figures.
pub const ALTERED: &str = "changed by you";
/// Takes the catalogue's figures again.
pub const PUT_BACK: &str = "Put back";
/// Name of a part that has none.
pub const TYPED_IN: &str = "My own";

/// Name of a part of the reader's own.
#[must_use]
pub fn my_own(part: &str) -> String {
    format!("My own {}", part.to_ascii_lowercase())
}
