//! The maker's check of a catalogue: its faults by part, what its parts leave out, and which
//! combinations of each kit do not fit.

mod cause;
mod kit;
mod part;
mod place;
mod report;

pub use cause::{Cause, Finding};
pub use kit::{KitCheck, MOST_CHECKED};
pub use part::{AssumedValue, PartCheck};
pub use place::Place;
pub use report::{Group, KitReport};
