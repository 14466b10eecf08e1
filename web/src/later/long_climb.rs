//! A long climb, until something gets hot.

use crate::dom::Node;
use crate::state::App;

pub(super) fn long_climb(_: App) -> Node {
    Node::None
}
