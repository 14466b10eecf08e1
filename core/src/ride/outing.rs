//! What a rider may ask how far it goes: every style, and the urban cycle.

use super::course::{Steps, Until};
use super::ridden::Ridden;
use super::style::Style;
use super::trip::Trip;
use super::urban::UrbanFit;
use crate::answers::Drive;
use crate::parts::Outing;

impl Outing {
    /// The style, or how the urban cycle is made to suit the board.
    ///
    /// # Errors
    /// The fit, where it is the cycle.
    pub const fn style(self) -> Result<Style, UrbanFit> {
        match self {
            Self::Steady => Ok(Style::Steady),
            Self::Easy => Ok(Style::Easy),
            Self::Town => Ok(Style::Town),
            Self::Hills => Ok(Style::Hills),
            Self::Flatout => Ok(Style::Flatout),
            Self::Own => Ok(Style::Own),
            Self::CycleCut => Err(UrbanFit::Clipped),
            Self::CycleSlowed => Err(UrbanFit::Scaled),
        }
    }
}

impl Trip {
    /// At the start of an outing, from the rider's start charge.
    #[must_use]
    pub fn out(drive: &Drive, outing: Outing, until: Until, steps: Steps) -> Self {
        match outing.style() {
            Ok(style) => Self::in_style(drive, style, until, steps),
            Err(fit) => Self::on_urban(drive, fit, until, steps),
        }
    }
}

impl Drive {
    /// An outing from the rider's start charge.
    #[must_use]
    pub fn ride_out(&self, outing: Outing, until: Until) -> Ridden {
        Trip::out(self, outing, until, Steps::USUAL).whole()
    }

    /// The highest speed that an outing asks for, m/s.
    #[must_use]
    pub fn outing_m_s(&self, outing: Outing) -> f64 {
        match outing.style() {
            Ok(style) => style.figures(&self.build).cruise_m_s,
            Err(_) => self.urban_m_s(),
        }
    }
}
