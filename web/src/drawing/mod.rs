//! Drawings to scale: millimetres in, a [`Drawing`](crate::chart::Drawing) out,
//! with the dimensions that a calliper can check.
//!
//! A drawing is a [`Plan`]: shapes, and dimensions that each have a name and a
//! value in words. The same dimensions make its table, so that the picture and
//! the numbers cannot differ. The whole board ([`BoardSide`]) has none: its parts
//! are there to be tapped.

mod belt_side;
mod board_area;
mod board_label;
mod board_side;
mod box_plan;
mod deck_side;
mod hanger_rear;
mod lettering;
mod plan;
mod pulley;
mod shape;

pub use belt_side::BeltSide;
pub use board_area::{Area, PARTS};
pub use board_side::{BoardDrawing, BoardSide};
pub use box_plan::{BoxPlan, Item};
pub use deck_side::DeckSide;
pub use hanger_rear::HangerRear;
pub use plan::{Dim, Note, Plan, Ruler};
pub use shape::{Place, Shape};

#[cfg(test)]
mod laws;
#[cfg(test)]
mod reach;
#[cfg(test)]
pub(crate) use reach::reach;
