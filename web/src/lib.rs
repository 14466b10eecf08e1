//! The page: asks, draws and explains; computes nothing physical.

pub mod api;
pub mod ask;
pub mod browser;
pub mod chart;
pub mod component;
pub mod dom;
pub mod drawing;
pub mod later;
pub mod state;
pub mod text;

mod start;

pub use start::start;
