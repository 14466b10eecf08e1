//! The limit that binds the push, or the ride.

use crate::working::{Law, Working};
use serde::Serialize;

/// The limit that binds the push, or the ride.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Limit {
    /// The controller's motor current limit.
    ControllerMotorCurrent,
    /// The motor's own current rating.
    MotorCurrent,
    /// The controller's battery current limit.
    ControllerBatteryCurrent,
    /// The pack's protection circuit.
    PackProtection,
    /// The cells' discharge rating.
    CellRating,
    /// The most power that the pack's resistance lets through.
    PackPower,
    /// The controller limits power because the pack sags: it is low, cold or weak.
    Cutback,
    /// The pack would disconnect.
    CutOff,
    /// The motor's back-EMF meets the voltage there is.
    Voltage,
    /// The controller's ERPM limit.
    ElectricalSpeed,
    /// The belt's rating.
    Belt,
    /// The grip of the driven wheels.
    Grip,
    /// The ride mode's speed cap.
    ModeSpeed,
    /// Nothing: the charge is used up.
    Empty,
    /// The controller is hot and limits power.
    ControllerHot,
    /// The motor windings have reached their temperature limit.
    WindingHot,
    /// The controller's motor current limit for braking.
    BrakeCurrent,
    /// The controller's battery current limit for braking.
    RegenCurrent,
    /// A full pack takes no more.
    OverVoltage,
    /// Motors can't brake at a crawl.
    Crawl,
}

/// The least of what limits allow. Of their steps only those of the one limit
/// that is to be shown are kept, as a reader wants the one that binds.
pub(crate) struct Least<'a> {
    pub(crate) value: f64,
    pub(crate) limit: Limit,
    pub(crate) w: &'a mut Working,
    quiet: Working,
    shown: Option<Limit>,
}

impl<'a> Least<'a> {
    /// Of nothing yet.
    pub(crate) fn new(shown: Option<Limit>, w: &'a mut Working) -> Self {
        Self { value: f64::INFINITY, limit: Limit::Empty, w, quiet: Working::off(), shown }
    }

    /// Of nothing yet, with the same limit to be shown.
    pub(crate) fn anew(&mut self) -> Least<'_> {
        Least::new(self.shown, self.w)
    }

    /// The working for the steps of a limit.
    pub(crate) fn of(&mut self, limit: Limit) -> &mut Working {
        if self.shown == Some(limit) { self.w } else { &mut self.quiet }
    }

    /// Takes what a limit allows if it is less.
    pub(crate) fn take(&mut self, limit: Limit, value: f64) {
        if value < self.value {
            (self.value, self.limit) = (value, limit);
        }
    }

    /// Takes what a limit allows by a law.
    pub(crate) fn offer<L: Law>(&mut self, limit: Limit, law: L) {
        let value = self.of(limit).apply(law);
        self.take(limit, value);
    }
}
