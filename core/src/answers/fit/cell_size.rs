//! How large a cell is.

use crate::build::{Build, Draft};
use crate::parts::{Slot, USUAL_SIZE_M, size_of_format};
use serde::Serialize;

/// Where the size of a cell comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum SizeFrom {
    /// Diameter and length as entered.
    Entered,
    /// Its format, such as 21700; what was entered goes before it.
    Format,
    /// Neither: 21 by 70 mm is assumed for what is missing.
    Assumed,
}

/// Size of a cell.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct CellSize {
    /// Diameter, m.
    pub diameter_m: f64,
    /// Length, m.
    pub length_m: f64,
    /// Where they come from.
    pub from: SizeFrom,
}

/// Size of the cells of a build: as entered, from the format tag, or assumed.
pub(super) fn cell_size(draft: &Draft, build: &Build) -> CellSize {
    let (entered, format) = (
        (build.cell.diameter_m, build.cell.length_m),
        size_of_format(draft.record(Slot::Cell).tag(0)),
    );
    let from = match (entered, format) {
        ((Some(_), Some(_)), _) => SizeFrom::Entered,
        (_, Some(_)) => SizeFrom::Format,
        _ => SizeFrom::Assumed,
    };
    let (diameter, length) = format.unwrap_or(USUAL_SIZE_M);
    CellSize {
        diameter_m: entered.0.unwrap_or(diameter),
        length_m: entered.1.unwrap_or(length),
        from,
    }
}
