//! Wording, and how numbers and units are read and written.

pub mod board;
pub mod catalogue;
pub mod charge;
pub mod cure;
pub mod drawing;
pub mod fit;
pub mod hill;
pub mod keep;
pub mod limits;
pub mod number;
pub mod page;
pub mod range;
pub mod settings;
pub mod setup;
pub mod shell;
pub mod speed;
pub mod sure;
pub mod trip;
pub mod unit;
pub mod wires;
pub mod words;

pub mod answer;
pub mod change;
pub mod difference;
mod duration;
mod field;
mod sentence;

pub use answer::Answer;
pub use duration::{MINUTE, before_eight, duration, duration_span, minutes, span};
pub use field::{help, label, said};
pub use number::{Style, percent, whole};
pub use sentence::{THE_FILE, caveat, fault, notice, pick_another, reason, two_readings, unfilled};
pub use unit::{Shown, Units};
