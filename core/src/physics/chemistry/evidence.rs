//! Against what the figures of a class were checked, and how sure they are.

use super::Chemistry;
use serde::Serialize;

/// What a figure rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// Runs of a published parameter set: outputs of a model, not measurements.
    PublishedModel,
    /// The same, carried on beyond the temperatures of those runs.
    Extrapolated,
    /// Common practice: there is no run to hold it to.
    CommonPractice,
}

/// Against what the figures of a class were checked. Every run is one of a
/// published parameter set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evidence {
    /// Lowest and highest current at 25 °C, as multiples of what empties the
    /// cell in an hour.
    pub rate_c: [f64; 2],
    /// Lowest and highest voltage at which a discharge stopped, V.
    pub stop_v: [f64; 2],
    /// The largest error of the energy over all of these at 25 °C, as a share.
    pub energy_error: f64,
    /// Coldest and warmest whole discharge, °C.
    pub discharge_c: [f64; 2],
    /// Highest current of a discharge that was not at 25 °C; 0 if there is none.
    pub cold_rate_c: f64,
    /// Coldest and warmest pulse, °C.
    pub pulse_c: [f64; 2],
    /// What figures rest on that are colder than the coldest discharge.
    pub colder: Basis,
}

/// Half of the width within which the resistance of a cell may lie, as a share
/// of it. Common practice, no source.
const USUAL_SPREAD: f64 = 0.20;

/// How much that grows with each kelvin below the coldest discharge. Common
/// practice: at −10 °C it takes LFP from one to the other of the figures that
/// `tests/fit/cold.py` lists.
const SPREAD_PER_K: f64 = 0.008;

/// Kelvins below the coldest discharge that still count as that.
const NEAR_K: f64 = 10.0;

impl Chemistry {
    /// Against what the figures of this class were checked.
    ///
    /// ```
    /// use pitchline_core::physics::{Basis, Chemistry};
    /// // Nothing published runs an LFP cell in the cold and agrees with cells.
    /// assert_eq!(Chemistry::Lfp.evidence().discharge_c, [25.0, 25.0]);
    /// assert_eq!(Chemistry::Lfp.basis(-5.0), Basis::CommonPractice);
    /// ```
    #[must_use]
    pub const fn evidence(self) -> Evidence {
        match self {
            Self::Energy => Evidence {
                rate_c: [0.2, 2.0],
                stop_v: [2.5, 3.0],
                energy_error: 0.0105,
                discharge_c: [0.0, 40.0],
                cold_rate_c: 0.5,
                pulse_c: [25.0, 25.0],
                colder: Basis::Extrapolated,
            },
            Self::Power => Evidence {
                rate_c: [0.2, 1.0],
                stop_v: [2.5, 2.5],
                energy_error: 0.001,
                discharge_c: [0.0, 25.0],
                cold_rate_c: 1.0,
                pulse_c: [25.0, 25.0],
                colder: Basis::Extrapolated,
            },
            Self::Lfp => Evidence {
                rate_c: [0.2, 2.0],
                stop_v: [2.0, 3.0],
                energy_error: 0.008,
                discharge_c: [25.0, 25.0],
                cold_rate_c: 0.0,
                pulse_c: [-20.0, 25.0],
                colder: Basis::CommonPractice,
            },
        }
    }

    /// What the figures of a cell at a temperature, °C, rest on. Ten kelvins
    /// below the coldest run still count as that run.
    #[must_use]
    pub fn basis(self, cell_c: f64) -> Basis {
        let evidence = self.evidence();
        if cell_c < evidence.discharge_c[0] - NEAR_K {
            evidence.colder
        } else {
            Basis::PublishedModel
        }
    }

    /// Half of the width within which resistance and lag of a cell may lie at a
    /// temperature, °C, as a share of them: 0.2, and more where it is colder
    /// than any run, up to 0.6.
    ///
    /// Source: common practice, no source.
    #[must_use]
    pub fn resistance_spread(self, cell_c: f64) -> f64 {
        let colder = (self.evidence().discharge_c[0] - cell_c).max(0.0);
        (USUAL_SPREAD + SPREAD_PER_K * colder).min(0.6)
    }
}
