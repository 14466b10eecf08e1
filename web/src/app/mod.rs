//! What the page knows, as signals and memos, and everything that changes one.
//!
//! Draft text becomes a [`Draft`](pitchline_core::Draft) only where it is valid, so the draft always
//! checks into a build, and a build into answers.

pub mod link;
pub mod rest;
pub mod saved;
pub mod see;
pub mod shelf;
pub mod tab;

mod action;
mod address;
mod announce;
#[cfg(test)]
mod any;
mod bands;
mod changes;
mod compared;
mod difference;
mod document;
mod edits;
mod fit;
mod found;
mod keeping;
#[cfg(test)]
mod laws;
mod stamp;
mod store;
mod sure;
#[cfg(test)]
mod tab_laws;
mod task;
mod theme;
mod trail;
mod typed;

pub use address::{Landing, arrived};
#[cfg(test)]
pub(crate) use any::{any_fit, fit_of, kits};
pub use bands::{BandCurve, Banding};
pub use changes::{Change, Changes};
pub use difference::{Difference, What};
pub use document::is_own;
pub use fit::Fit;
pub use found::Found;
pub use store::{App, Loaded, MapView, Message, Undo, use_app};
pub use sure::{Banded, Sure};
pub use task::{Job, Task};
pub use theme::Theme;
pub use typed::{Entry, Place, Typed};
