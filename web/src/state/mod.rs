//! Every signal of the page, and everything that changes one.
//!
//! Draft text becomes a [`Draft`] only where it is valid, so the draft always
//! checks into a build, and a build into answers.

pub mod link;
pub mod saved;

mod action;
mod app;
mod first;
mod kept;
mod sure;
mod typed;

pub use app::{App, Found, Loaded, MapView, Message, Model};
pub use first::FIRST;
pub use kept::Kept;
pub use sure::{Banded, Sure};
pub use typed::{Entry, Place, Typed};
