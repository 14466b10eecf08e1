//! One folder a question; beside them what they share.

pub mod catalogue;
pub mod charge;
pub mod fit;
pub mod hill;
pub mod limits;
pub mod range;
pub mod registry;
pub mod settings;
pub mod setup;
pub mod speed;
pub mod sure;
pub mod trip;

mod answers;
mod change;
mod draws;
mod hint;
mod input;
mod plot;
mod regions;
mod task_line;
mod working;

/// Id of what does not go together by tags and volts.
pub const MISFITS: &str = "misfits";

pub use answers::{Answers, Say, Workings, changed, in_a_line, say};
pub use draws::{Draws, kept, sketch};
pub use hint::{fit_hint, hint};
pub use input::{
    ELSEWHERE, GEARS, Input, InputAs, Inputs, LeadToGears, LeadToWires, SUGGESTED, WIRES, lead_to,
    lead_to_part,
};
pub use plot::{Mark, Plot};
pub use regions::regions;
pub use sure::{OverSpeed, Sure};
pub use task_line::TaskLine;
pub use working::{Working, WorkingSteps};
