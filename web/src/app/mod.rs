//! What the page knows, as signals and memos, and everything that changes one.
//!
//! Draft text becomes a [`Draft`](pitchline_core::Draft) only where it is valid, so the draft always
//! checks into a build, and a build into answers.

pub mod link;
pub mod rest;
pub mod saved;
pub mod shelf;
pub mod tab;

mod action;
mod announce;
#[cfg(test)]
mod any;
mod bands;
mod document;
mod fit;
mod found;
mod keeping;
#[cfg(test)]
mod laws;
mod store;
mod sure;
#[cfg(test)]
mod tab_laws;
mod task;
mod typed;

#[cfg(test)]
pub(crate) use any::{any_fit, fit_of, kits};
pub use bands::{BandCurve, Banding};
pub use fit::Fit;
pub use found::Found;
pub use store::{App, Loaded, MapView, Message, use_app};
pub use sure::{Banded, Sure};
pub use task::{Job, Task};
pub use typed::{Entry, Place, Typed};
