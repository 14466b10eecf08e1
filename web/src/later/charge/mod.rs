//! How long on the charger?

use crate::dom::Node;
use crate::state::App;

pub(super) fn charge(_: App) -> Node {
    Node::None
}
