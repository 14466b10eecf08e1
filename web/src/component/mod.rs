//! Small pieces of the page that know no state and no physics.

mod button;
mod choice;
mod fold;
mod headline;
mod notice;
mod number_field;

pub use button::button;
pub use choice::{Options, choice};
pub use fold::{HOLDS, fold};
pub use headline::{Headline, headline};
pub use notice::{caution, notice};
pub use number_field::{Done, Shown, number_field};
