//! What may come after the page is usable, in a second file.
//!
//! Each function here is a door: the build cuts the page's wasm at these functions, and what only
//! they reach, here, in the core and elsewhere, goes into the later piece by itself. A door is
//! never inlined, else what is behind it would come first. It may be opened only once
//! [`Model::later`](crate::state::Model) is `Ready`; `ask::late` sees to that.

mod builds;
mod charge;
mod contents;
mod fit;
mod gear_map;
mod long_climb;
mod plot;
mod ride;
mod runs;
mod season;
mod sure;
mod work;
mod working;

use crate::dom::Node;
use crate::state::App;
use pitchline_core::Headline;
use pitchline_core::band::Quantity;

/// Keeping a build.
#[inline(never)]
pub fn builds(app: App) -> Node {
    builds::builds(app)
}

/// How long on the charger.
#[inline(never)]
pub fn charge(app: App) -> Node {
    charge::charge(app)
}

/// Where what stands.
#[inline(never)]
pub fn contents() -> Node {
    contents::contents()
}

/// What goes together.
#[inline(never)]
pub fn fit(app: App) -> Node {
    fit::fit(app)
}

/// Every pairing of pulleys.
#[inline(never)]
pub fn gear_map(app: App) -> Node {
    gear_map::gear_map(app)
}

/// How long a hill can be climbed before something gets hot.
#[inline(never)]
pub fn long_climb(app: App) -> Node {
    long_climb::long_climb(app)
}

/// A ride in time, by style.
#[inline(never)]
pub fn ride(app: App) -> Node {
    ride::ride(app)
}

/// Speeding up and braking.
#[inline(never)]
pub fn runs(app: App) -> Node {
    runs::runs(app)
}

/// The board in the cold, and as it grows old.
#[inline(never)]
pub fn season(app: App) -> Node {
    season::season(app)
}

/// How sure an answer is, and what moves it most.
#[inline(never)]
pub fn sure(app: App, of: Quantity) -> Node {
    sure::sure(app, of)
}

/// The steps that lead to a headline.
#[inline(never)]
pub fn working(app: App, which: Headline) -> Node {
    working::steps(app, which)
}
