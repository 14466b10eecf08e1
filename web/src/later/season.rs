//! The board in the cold, and as it grows old.

use crate::dom::Node;
use crate::state::App;

pub(super) fn season(_: App) -> Node {
    Node::None
}
