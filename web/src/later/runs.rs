//! Speeding up and braking.

use crate::dom::Node;
use crate::state::App;

pub(super) fn runs(_: App) -> Node {
    Node::None
}
