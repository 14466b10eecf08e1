//! How sure an answer is, and what moves it most.

use crate::dom::Node;
use crate::state::App;
use pitchline_core::band::Quantity;

pub(super) fn sure(_: App, _: Quantity) -> Node {
    Node::None
}
