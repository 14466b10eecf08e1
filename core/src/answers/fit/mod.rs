//! Does it go together? Belts, room between the parts, deck and enclosure, lean,
//! and what to take where two parts do not fit.

mod belt;
mod belt_bench;
mod belt_load;
mod box_plan;
mod cell_size;
mod clearance;
mod deck;
mod layout;
mod lean;
mod misfit;
mod remedy;
mod shown;
mod together;

pub(crate) use belt_load::explain as explain_belt;

pub use belt::{
    BeltChoice, BeltFit, BeltList, BeltMiss, BeltOffers, BeltOnBoard, PulleySize, belt_fit,
};
pub use belt_bench::{BenchFit, MeasuredCentre, PulleyPair, REACH_M};
pub use belt_load::{BeltCheck, BeltLoad, BeltMesh, BeltTension, CentreFrom};
pub use box_plan::{BoxPlan, Controller, Lie, Side, box_plan};
pub use cell_size::{CellSize, SizeFrom};
pub use clearance::{Between, Clearance, clearances};
pub use deck::{DeckFit, SagFrom, deck_fit};
pub use layout::{Layout, layout};
pub use lean::{Lean, Turn, WheelAt, lean, turn};
pub use misfit::{Cure, Misfit, MisfitKind, Severity};
pub(crate) use remedy::with_part;
pub use remedy::{Remedy, remedy, right_charger};
pub use shown::{FrameHeadline, frame_working};
pub use together::{Together, together};

use crate::bounds::Need;
use crate::build::Draft;
use crate::parts::Slot;
use alloc::vec::Vec;
use serde::Serialize;

/// An input, by its slot and its key in files.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Row {
    /// The slot.
    pub slot: Slot,
    /// The key, such as `hanger_width_mm`.
    pub key: &'static str,
}

/// The inputs among these for which nothing was entered, so that a typical
/// value went in.
fn assumed(draft: &Draft, inputs: &[(Slot, &'static str)]) -> Vec<Row> {
    let mut rows = Vec::new();
    for &(slot, key) in inputs {
        let Some(index) = slot.kind().field_index(key) else { continue };
        let need = slot.kind().fields().get(index).map(|field| field.need);
        if need == Some(Need::Assumed) && draft.record(slot).value(index).is_none() {
            rows.push(Row { slot, key });
        }
    }
    rows
}
