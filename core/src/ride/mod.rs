//! A ride in time: what is ridden, the board on its way, and where the energy went.
//!
//! ```
//! use pitchline_core::ride::{Style, Until};
//! use pitchline_core::{Build, Draft, Drive};
//!
//! let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
//! let ride = drive.ride_style(Style::Town, Until::distance(1000.0));
//! let sinks: f64 = ride.ledger.sinks_wh().iter().sum();
//! assert!((ride.ledger.stored_wh - sinks).abs() < 1e-6 * ride.ledger.passed_wh);
//! ```

mod braking;
mod course;
mod cutback;
mod descent;
mod ending;
mod flow;
mod journey;
mod ledger;
mod long_climb;
mod outing;
mod pace;
mod plan;
mod record;
mod ridden;
mod sag;
mod simulate;
mod sprint;
mod style;
mod trip;
mod urban;

pub use braking::{BrakeCase, Braking, LET_GO_M_S, REACTION_S, WET};
pub use course::{Course, Leg, Manner, Steps, TracePoint, Until};
pub use descent::Descent;
pub use ending::{END_SHARE, WALK_M_S};
pub(crate) use flow::OVER_VOLTAGE;
pub use journey::Moment;
pub use ledger::Ledger;
pub use long_climb::{LongClimb, explain_for_ever};
pub use ridden::{EARLY_SHARE, Extent, GOING_M, Hottest, Met, Ridden, RideEnd};
pub use sag::SagCause;
pub use sprint::{COMMON_M, COMMON_M_S, Goal, Sprint};
pub use style::{Style, StyleFigures};
pub use trip::Trip;
pub use urban::{URBAN, URBAN_M_S, UrbanFit, urban};
