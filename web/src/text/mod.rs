//! Wording, and how numbers and units are read and written.

pub mod number;
pub mod page;
pub mod unit;
pub mod words;

pub mod answer;
pub mod board;
mod duration;
mod field;
mod sentence;

pub use answer::Answer;
pub use duration::{before_eight, duration, duration_span, minutes, span};
pub use field::{help, label};
pub use number::{Style, percent, whole};
pub use sentence::{caveat, fault, notice, pick_another, reason, two_readings, unfilled};
pub use unit::{Shown, Units};
