//! How large a cell is.

use crate::build::{Build, Draft};
use crate::parts::Slot;
use serde::Serialize;

/// Where the size of a cell comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
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
pub struct CellSize {
    /// Diameter, m.
    pub diameter_m: f64,
    /// Length, m.
    pub length_m: f64,
    /// Where they come from.
    pub from: SizeFrom,
}

/// Size of the cells of a build: as entered, from the format tag (two digits of
/// diameter and two of length in mm, with a fifth for tenths), or assumed.
pub(super) fn cell_size(draft: &Draft, build: &Build) -> CellSize {
    let (entered, format) = (
        (build.cell.diameter_m, build.cell.length_m),
        read_format(draft.record(Slot::Cell).tag(0)),
    );
    let from = match (entered, format) {
        ((Some(_), Some(_)), _) => SizeFrom::Entered,
        (_, Some(_)) => SizeFrom::Format,
        _ => SizeFrom::Assumed,
    };
    let (diameter, length) = format.unwrap_or((0.021, 0.070));
    CellSize {
        diameter_m: entered.0.unwrap_or(diameter),
        length_m: entered.1.unwrap_or(length),
        from,
    }
}

/// Diameter and length, m, from a format such as 18650, 21700 or 4680: its
/// first run of four or five digits.
fn read_format(tag: &str) -> Option<(f64, f64)> {
    let run = tag.split(|c: char| !c.is_ascii_digit()).find(|run| matches!(run.len(), 4 | 5))?;
    let number = |digits: &str| digits.bytes().fold(0.0, |n, d| 10.0 * n + f64::from(d - b'0'));
    let (diameter, length) = (number(run.get(..2)?), number(run.get(2..)?));
    let length = if run.len() == 5 { length / 10.0 } else { length };
    (diameter >= 8.0 && length >= 15.0).then_some((diameter / 1000.0, length / 1000.0))
}
