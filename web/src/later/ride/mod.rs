//! A ride in time: stops, hills, heat.

use crate::dom::Node;
use crate::state::App;

pub(super) fn ride(_: App) -> Node {
    Node::None
}
