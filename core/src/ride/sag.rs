//! Why the pack's voltage holds the push back.

use super::journey::Journey;
use crate::answers::{Drive, FULL, Limit, Sag};
use crate::physics::road_load::Slope;
use serde::Serialize;

/// Why the pack's voltage holds the push back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum SagCause {
    /// A full pack as warm as this one would not.
    LowCharge,
    /// A full pack would as well, unless it were at 25 °C.
    ColdCells,
    /// Even a full pack at 25 °C would: the cells are too weak for the push.
    WeakCells,
}

/// What the cells of a class are measured at, °C.
const ROOM_C: f64 = 25.0;

impl Limit {
    /// Whether it is the pack's voltage that sets it.
    #[must_use]
    pub const fn is_sag(self) -> bool {
        matches!(self, Self::Cutback | Self::CutOff | Self::PackPower)
    }
}

impl Drive {
    /// Why the pack's voltage holds back a full pack whose cells are at a temperature, °C, at a
    /// speed, m/s, on a slope; `None` where it does not.
    #[must_use]
    pub fn full_sag(&self, cell_c: f64, speed_m_s: f64, slope: Slope) -> Option<SagCause> {
        let sags = |cell_c: f64| {
            let mut drive = *self;
            drive.set_cells(cell_c);
            let full = drive.supply(1.0, Sag::Burst);
            drive.push(&full, &FULL, speed_m_s, slope).limit.is_sag()
        };
        match sags(cell_c) {
            false => None,
            true if sags(ROOM_C) => Some(SagCause::WeakCells),
            true => Some(SagCause::ColdCells),
        }
    }
}

impl Journey {
    /// Why the pack's voltage holds it back where it is; `None` where another limit does.
    pub(super) fn sag_cause(&self, limit: Limit, slope: Slope) -> Option<SagCause> {
        let full = || self.drive.full_sag(self.now.cell_c, self.now.speed_m_s, slope);
        limit.is_sag().then(|| full().unwrap_or(SagCause::LowCharge))
    }
}
