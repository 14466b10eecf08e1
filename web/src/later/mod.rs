//! What the questions share and what stands below their first answers.

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
pub fn builds(app: App) -> Node {
    builds::builds(app)
}

/// How long on the charger.
pub fn charge(app: App) -> Node {
    charge::charge(app)
}

/// Where what stands.
pub fn contents() -> Node {
    contents::contents()
}

/// What goes together.
pub fn fit(app: App) -> Node {
    fit::fit(app)
}

/// Every pairing of pulleys.
pub fn gear_map(app: App) -> Node {
    gear_map::gear_map(app)
}

/// How long a hill can be climbed before something gets hot.
pub fn long_climb(app: App) -> Node {
    long_climb::long_climb(app)
}

/// A ride in time, by style.
pub fn ride(app: App) -> Node {
    ride::ride(app)
}

/// Speeding up and braking.
pub fn runs(app: App) -> Node {
    runs::runs(app)
}

/// The board in the cold, and as it grows old.
pub fn season(app: App) -> Node {
    season::season(app)
}

/// How sure an answer is, and what moves it most.
pub fn sure(app: App, of: Quantity) -> Node {
    sure::sure(app, of)
}

/// The steps that lead to a headline.
pub fn working(app: App, which: Headline) -> Node {
    working::steps(app, which)
}
