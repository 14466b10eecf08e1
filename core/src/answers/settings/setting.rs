//! What a controller is told.

use crate::parts::Slot;
use serde::Serialize;

/// What a field-oriented controller asks to be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Setting {
    /// Motor current limit, driving, per motor, A in the controller's current convention.
    MotorDrive,
    /// Motor current limit, braking, per motor, A in the same.
    MotorBrake,
    /// Battery current limit, driving, per motor, A.
    BatteryDraw,
    /// Battery current limit, braking, per motor, A.
    BatteryRegen,
    /// ERPM limit.
    Erpm,
    /// Voltage per cell group at which it starts to limit, V.
    VoltageStart,
    /// Voltage per cell group at which it cuts out, V.
    VoltageEnd,
    /// Controller temperature at which it starts to limit, °C.
    ControllerHotStart,
    /// Controller temperature at which it cuts out, °C.
    ControllerHotEnd,
    /// Winding temperature at which it starts to limit, °C.
    MotorHotStart,
    /// Winding temperature at which it cuts out, °C.
    MotorHotEnd,
    /// Maximum duty cycle, a share.
    MaxDuty,
    /// Pole pairs of the motor.
    PolePairs,
    /// Teeth of the wheel pulley over those of the motor pulley.
    GearRatio,
    /// Diameter of the wheel, m.
    WheelDiameter,
    /// Cell groups in series.
    Series,
}

impl Setting {
    /// Every setting, in the order in which they are set.
    pub const ALL: [Self; 16] = [
        Self::MotorDrive,
        Self::MotorBrake,
        Self::BatteryDraw,
        Self::BatteryRegen,
        Self::Erpm,
        Self::VoltageStart,
        Self::VoltageEnd,
        Self::ControllerHotStart,
        Self::ControllerHotEnd,
        Self::MotorHotStart,
        Self::MotorHotEnd,
        Self::MaxDuty,
        Self::PolePairs,
        Self::GearRatio,
        Self::WheelDiameter,
        Self::Series,
    ];

    /// The input that holds it on this board; none for what follows from other parts.
    #[must_use]
    pub const fn input(self) -> Option<(Slot, &'static str)> {
        Some(match self {
            Self::MotorDrive => (Slot::Controller, "motor_current_a"),
            Self::MotorBrake => (Slot::Controller, "brake_current_a"),
            Self::BatteryDraw => (Slot::Controller, "battery_current_a"),
            Self::BatteryRegen => (Slot::Controller, "regen_current_a"),
            Self::Erpm => (Slot::Controller, "erpm_limit"),
            Self::VoltageStart => (Slot::Controller, "cutback_start_v"),
            Self::VoltageEnd => (Slot::Controller, "cutback_end_v"),
            Self::ControllerHotStart => (Slot::Controller, "cutback_start_c"),
            Self::ControllerHotEnd => (Slot::Controller, "cutback_end_c"),
            Self::MotorHotStart => (Slot::Controller, "motor_cutback_start_c"),
            Self::MotorHotEnd => (Slot::Controller, "motor_cutback_end_c"),
            Self::MaxDuty => (Slot::Controller, "max_duty_percent"),
            Self::PolePairs => (Slot::Motor, "pole_pairs"),
            Self::WheelDiameter => (Slot::Wheel, "diameter_mm"),
            Self::Series => (Slot::Pack, "series"),
            Self::GearRatio => return None,
        })
    }
}
