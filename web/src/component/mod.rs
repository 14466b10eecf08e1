//! Small pieces of the page, fed with plain data: they know no state and no physics.

mod answer;
mod choice;
mod fold;
mod keyed;
mod notice;
mod number_field;
mod paged;
mod working;

pub use answer::{AnswerView, Lead, SideBySide};
pub use choice::{Choice, Options};
pub use fold::Fold;
pub use keyed::keyed;
pub use notice::{Caution, Notice};
pub use number_field::{Done, NumberField, Shown};
pub use paged::{PagedTable, Row, SHOWN};
pub use working::{Steps, Written};
