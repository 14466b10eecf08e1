//! The working of a headline, folded away.

use crate::component::fold;
use crate::dom::Node;
use crate::later;
use crate::state::App;
use pitchline_core::Headline;

/// The working, folded away.
pub fn working(app: App, which: Headline) -> Node {
    fold("working", "Working", move || later::working(app, which)).into()
}
