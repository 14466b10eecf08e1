//! Wording, and how numbers and units are read and written.

pub mod number;
pub mod page;
pub mod unit;
pub mod words;

mod field;
mod sentence;

pub use field::{help, label};
pub use number::Style;
pub use sentence::{fault, notice, reason};
pub use unit::{Shown, Units};
