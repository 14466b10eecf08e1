//! Small pieces of the page that know no state and no physics.

mod choice;
mod fold;
mod headline;
mod notice;
mod number_field;

pub use choice::{Choice, Options, choice};
pub use fold::fold;
pub use headline::{Headline, headline};
pub use notice::{caution, notice};
pub use number_field::{NumberField, number_field};
