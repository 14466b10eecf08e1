//! What may come after the page is usable, in a second file.
//!
//! Each function here is a door: the build cuts the page's wasm at these functions, and what only
//! they reach, here, in the core and elsewhere, goes into the later piece by itself. A door is
//! never inlined, else what is behind it would come first. It may be opened only once
//! [`Model::later`](crate::state::Model) is `Ready`; `ask::late` sees to that.

mod builds;
mod fit;
mod working;

use crate::dom::Node;
use crate::state::App;
use pitchline_core::Headline;

/// Keeping a build.
#[inline(never)]
pub fn builds(app: App) -> Node {
    builds::builds(app)
}

/// What goes together.
#[inline(never)]
pub fn fit(app: App) -> Node {
    fit::fit(app)
}

/// The steps that lead to a headline.
#[inline(never)]
pub fn working(app: App, which: Headline) -> Node {
    working::steps(app, which)
}
