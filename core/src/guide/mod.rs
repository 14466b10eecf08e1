//! For who wants to know how it is done: nothing here but text. What each symbol of the formulas
//! stands for is in [`SYMBOLS`](crate::physics::symbol::SYMBOLS).

#[doc = include_str!("numerics.md")]
pub mod numerics {}

#[doc = include_str!("cell_model.md")]
pub mod cell_model {}
