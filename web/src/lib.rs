//! The page: asks, draws and explains; computes nothing physical.

#![allow(unreachable_pub, reason = "the macro of components makes theirs so")]

pub mod app;
pub mod chart;
pub mod component;
pub mod drawing;
pub mod platform;
pub mod question;
pub mod shell;
pub mod text;

mod load;
mod start;

pub use start::start;
