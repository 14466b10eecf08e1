//! Words of "Does it go together?".

mod belt;
mod bench;
mod board;
mod concern;
mod drive;
mod length;

use crate::text::page::Warning;

pub use belt::*;
pub use bench::*;
pub use board::*;
pub use concern::*;
pub use drive::*;
pub use length::*;

/// The fold of the belts that fit.
pub const BELTS: &str = "Belts that fit";
/// The fold of their other figures, within it.
pub const BELTS_MORE: &str = "More about these belts";
/// The fold of the belt's tension.
pub const TIGHT: &str = "How tight should the belt be?";
/// The fold of what was measured.
pub const BENCH: &str = "At the workbench";
/// The fold of the rear hanger.
pub const HANGER: &str = "Hanger and axle";
/// The fold of deck and enclosure.
pub const DECK: &str = "Deck, enclosure and road";
/// Over the cells, within it.
pub const CELLS: &str = "Cells in the enclosure";
/// Over the room below, within it.
pub const UNDER: &str = "Enclosure and road";
/// The fold of lean and turn.
pub const LEAN: &str = "Riser, lean and wheel bite";
/// The fold of parts that must match.
pub const MEET: &str = "Connections";
/// Over the working of all clearances.
pub const CLEARANCES: &str = "Clearances around the drive";
/// What the arrow keys do on a drawing.
pub const ALONG_DIMENSIONS: &str = "Arrow keys move between the dimensions";
/// Heads of every table of dimensions but the second, which is the unit.
pub const DIMENSION_HEADS: [&str; 2] = ["Dimension", "Note"];
/// Opens the dimensions of the belt drive.
pub const DRIVE_TABLE: &str = "Dimensions of the belt drive";
/// Of the rear hanger.
pub const HANGER_TABLE: &str = "Dimensions of the rear hanger";
/// Of the board.
pub const BOARD_TABLE: &str = "Dimensions of deck and enclosure";
/// Of the enclosure from above.
pub const CELLS_TABLE: &str = "Dimensions inside the enclosure";
/// Caution by the cells.
pub const CAUTION_CELLS: Warning = Warning {
    short: "Never press cells in: a crushed or chafed cell can burn days later.",
    more: "Insulate and pad the pack, and have packs built by qualified people.",
};
