//! The ratings of a board's parts.

use crate::build::Draft;
use crate::parts::Slot;
use serde::Serialize;

/// A rating of a part, as its maker gives it or as it is assumed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Rating {
    /// Continuous discharge current of one cell, A.
    CellDischarge,
    /// Charge current of one cell on the charger, A.
    CellCharge,
    /// The same while the motors brake, A.
    CellRegen,
    /// Voltage at which the protection circuit takes no more charge, V: 1.2 % above that of the full pack.
    /// Common practice, no source. The controller brakes less before that, so it is never exceeded;
    /// less than nothing left means that a full pack brakes less than is set.
    FullPackRegen,
    /// Current at which the protection circuit disconnects, A.
    Protection,
    /// Current of the main fuse, A, of which a share is for continuous use: [`FUSE_SHARE`](super::FUSE_SHARE).
    Fuse,
    /// DC voltage of the main fuse, V.
    FuseVoltage,
    /// Continuous current of the leads between pack and controller, A.
    Leads,
    /// Continuous current of wires and strips inside the pack, A.
    InnerWires,
    /// Continuous current of the connector to the controller, A.
    PackConnector,
    /// Continuous current of the charging port, A.
    ChargePort,
    /// Input voltage of the controller, V.
    ControllerVoltage,
    /// Motor current of one channel, A.
    ControllerMotorCurrent,
    /// Battery current of one channel, A.
    ControllerBatteryCurrent,
    /// ERPM of the controller.
    ControllerSpeed,
    /// Motor current at which the controller stays cool enough on a long hill, A.
    ControllerHeat,
    /// Motor current, A.
    MotorCurrent,
    /// Continuous motor current by the motor's maker, A.
    MotorContinuous,
    /// Motor current at which the windings stay cool enough on a long hill, A.
    WindingHeat,
    /// Continuous current of the motor's connectors, A RMS.
    MotorConnector,
    /// Pull in the belt, N.
    Belt,
    /// Speed of the wheel bearings, rpm.
    Bearings,
    /// Load on one wheel, kg.
    WheelLoad,
    /// Tyre pressure, Pa.
    TyrePressure,
    /// Load on the deck, kg.
    DeckLoad,
}

impl Rating {
    /// Every rating.
    pub const ALL: [Self; 25] = [
        Self::CellDischarge,
        Self::CellCharge,
        Self::CellRegen,
        Self::FullPackRegen,
        Self::Protection,
        Self::Fuse,
        Self::FuseVoltage,
        Self::Leads,
        Self::InnerWires,
        Self::PackConnector,
        Self::ChargePort,
        Self::ControllerVoltage,
        Self::ControllerMotorCurrent,
        Self::ControllerBatteryCurrent,
        Self::ControllerSpeed,
        Self::ControllerHeat,
        Self::MotorCurrent,
        Self::MotorContinuous,
        Self::WindingHeat,
        Self::MotorConnector,
        Self::Belt,
        Self::Bearings,
        Self::WheelLoad,
        Self::TyrePressure,
        Self::DeckLoad,
    ];

    /// Whether somebody gave it, so that it is not assumed.
    #[must_use]
    pub fn is_given(self, draft: &Draft) -> bool {
        let (slot, key) = self.input();
        draft.value(slot, key).is_some()
    }

    /// The input that gives it.
    #[must_use]
    pub const fn input(self) -> (Slot, &'static str) {
        match self {
            Self::CellDischarge => (Slot::Cell, "max_discharge_a"),
            Self::CellCharge | Self::CellRegen => (Slot::Cell, "max_charge_a"),
            // The voltage of a full cell is its chemistry's.
            Self::FullPackRegen => (Slot::Cell, "chemistry"),
            Self::Protection => (Slot::Pack, "protection_a"),
            Self::Fuse => (Slot::Pack, "fuse_a"),
            Self::FuseVoltage => (Slot::Pack, "fuse_v"),
            Self::Leads => (Slot::Pack, "wire_a"),
            Self::InnerWires => (Slot::Pack, "inner_wire_a"),
            Self::PackConnector => (Slot::Pack, "connector_a"),
            Self::ChargePort => (Slot::Pack, "charge_port_a"),
            Self::ControllerVoltage => (Slot::Controller, "max_bus_v"),
            Self::ControllerMotorCurrent => (Slot::Controller, "rated_motor_a"),
            Self::ControllerBatteryCurrent => (Slot::Controller, "rated_battery_a"),
            Self::ControllerSpeed => (Slot::Controller, "rated_erpm"),
            Self::ControllerHeat => (Slot::Controller, "cutback_start_c"),
            Self::MotorCurrent => (Slot::Motor, "max_current_a"),
            Self::MotorContinuous => (Slot::Motor, "continuous_a"),
            Self::WindingHeat => (Slot::Motor, "winding_limit_c"),
            Self::MotorConnector => (Slot::Motor, "connector_a"),
            Self::Belt => (Slot::Belt, "rating_n_per_mm"),
            Self::Bearings => (Slot::Wheel, "bearing_rpm"),
            Self::WheelLoad => (Slot::Wheel, "max_load_kg"),
            Self::TyrePressure => (Slot::Wheel, "max_pressure_bar"),
            Self::DeckLoad => (Slot::Deck, "max_load_kg"),
        }
    }
}
