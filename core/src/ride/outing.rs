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
    ///
    /// ```
    /// use pitchline_core::ride::Until;
    /// use pitchline_core::{Build, Draft, Drive, Outing};
    ///
    /// let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
    /// // A session in the hills: a stop and 40 m up and down for each kilometre.
    /// let ride = drive.ride_out(Outing::Hills, Until::distance(2000.0));
    /// assert!((ride.distance_m - 2000.0).abs() < 1.0);
    /// // After two rounds it is back at the height where it began: next to nothing of the 80 m that it
    /// // climbed in between is left. It had to stand twice for 20 s.
    /// let up_wh = drive.build.mass_kg() * 9.806_65 * 80.0 / 3600.0;
    /// assert!(ride.ledger.climb_wh.abs() < 0.02 * up_wh);
    /// assert!(ride.time_s > 2000.0 / drive.outing_m_s(Outing::Hills) + 20.0);
    /// ```
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
