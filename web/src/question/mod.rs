//! One folder a question; beside them what they share.

pub mod catalogue;
pub mod charge;
pub mod fit;
pub mod hill;
pub mod range;
pub mod registry;
pub mod setup;
pub mod speed;
pub mod sure;
pub mod trip;

mod answers;
mod draws;
mod input;
mod plot;
mod regions;
mod section;
mod task_line;
mod working;

/// Id of what does not fit by its size, with its cures.
pub const AMISS: &str = "amiss";
/// Id of what does not go together by tags and volts.
pub const MISFITS: &str = "misfits";

pub use answers::{AnswerRow, Say, say};
pub use draws::{ALONG_BARS, ALONG_CURVE, Draws, sketch, table};
pub use input::{Input, InputAs, Inputs, lead_to, lead_to_part};
pub use plot::{Mark, Plot};
pub use range::Range;
pub use regions::regions;
pub use sure::Sure;
pub use task_line::TaskLine;
pub use trip::Trip;
pub use working::{WorkingFold, WorkingSteps};
