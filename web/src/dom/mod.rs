//! The page's elements: a description in, living DOM out.
//!
//! Views are built from one plain type, [`Node`], whatever they show; what
//! changes is a closure that Leptos' reactive core runs again when a signal it
//! read has changed. Typed views would cost the page half its size budget.

mod event;
mod make;
mod node;

pub use event::Event;
pub use make::{Handle, mount};
pub use node::{Element, Node, Text, el, live, said, svg};
