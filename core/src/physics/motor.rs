//! The motor, in both current conventions.
//!
//! Kv is defined from the peak line-to-line back-EMF. *Direct* current is that
//! of the textbook machine and of six-step drive; *peak phase* current is the
//! amplitude of the sinusoid, which field-oriented controllers limit. Torque
//! per ampere differs between them by √3/2.

use crate::math::{PI, SQRT_3, sqrt};
use crate::parts::Convention;
use crate::working::Working;

/// Temperature coefficient of copper's resistance at 20 °C, 1/K. Source: IEC 60028.
pub const COPPER_PER_K: f64 = 0.003_93;

law! {
    /// Torque for each direct ampere, N m/A.
    ///
    /// Source: Drela 2007.
    ///
    /// ```
    /// let kt = pitchline_core::physics::motor::TorqueConstantDirect { kv: 2760.0 }.value();
    /// assert!((kt - 0.003_459_89).abs() < 1e-8);
    /// ```
    TorqueConstantDirect = "Torque per direct ampere", "k_T" = "60 / (2π Kv)", NewtonMetrePerAmpere, DRELA;
    kv: "Kv" RpmPerVolt => 60.0 / (2.0 * PI * kv)
}

law! {
    /// Torque for each peak phase ampere, N m/A.
    ///
    /// Source: algebra, `3/2 p λ` with `λ = 60 / (2π √3 p Kv)`.
    ///
    /// ```
    /// let kt = pitchline_core::physics::motor::TorqueConstantPeak { kv: 165.0 }.value();
    /// assert!((kt * 165.0 - 8.269_933).abs() < 1e-6);
    /// ```
    TorqueConstantPeak = "Torque per peak phase ampere", "k_T" = "(√3 / 2) 60 / (2π Kv)", NewtonMetrePerAmpere, SINUSOIDAL;
    kv: "Kv" RpmPerVolt => SQRT_3 / 2.0 * 60.0 / (2.0 * PI * kv)
}

law! {
    /// Winding resistance between two wires, ohm, at a temperature.
    ///
    /// Source: IEC 60028.
    ///
    /// ```
    /// let r = pitchline_core::physics::motor::WarmResistance { cold: 1.0, celsius: 80.0 }.value();
    /// assert!((r - 1.2358).abs() < 1e-12);
    /// ```
    WarmResistance = "Winding resistance when warm", "R_w" = "R_20 (1 + 0.00393 (t_w − 20))", Ohm, IEC_60028;
    cold: "R_20" Ohm, celsius: "t_w" Celsius => cold * (1.0 + COPPER_PER_K * (celsius - 20.0))
}

law! {
    /// Torque lost in iron and bearings, N·m.
    ///
    /// Source: the no-load current of Drela 2007; its growth with speed is
    /// common practice, no source.
    IronTorque = "Torque lost in iron and bearings", "T_0" = "60 / (2π Kv) I_0 (k_h + (1 − k_h) ω / ω_0)", NewtonMetre, DRELA;
    kv: "Kv" RpmPerVolt, no_load: "I_0" Ampere, share: "k_h" None, omega: "ω" RadianPerSecond, at: "ω_0" RadianPerSecond =>
        60.0 / (2.0 * PI * kv) * no_load * (share + (1.0 - share) * omega / at)
}

law! {
    /// Motor current, A, for a shaft torque and what iron and bearings take.
    MotorCurrent = "Current of each motor", "I" = "(T + T_0) / k_T", Ampere, DRELA;
    torque: "T" NewtonMetre, iron: "T_0" NewtonMetre, constant: "k_T" NewtonMetrePerAmpere => (torque + iron) / constant
}

law! {
    /// Heat in one motor's copper, W. The factor is [`Convention::copper_factor`].
    CopperLoss = "Copper loss of each motor", "P_Cu" = "k_Cu I² R_w", Watt, SINUSOIDAL;
    factor: "k_Cu" None, current: "I" Ampere, resistance: "R_w" Ohm => factor * current * current * resistance
}

law! {
    /// Line-to-line peak volts that the motor asks for, direct drive.
    MotorVoltageDirect = "Voltage the motor needs", "V_motor" = "ω 60 / (2π Kv) + I R_w", Volt, DRELA;
    omega: "ω" RadianPerSecond, kv: "Kv" RpmPerVolt, current: "I" Ampere, resistance: "R_w" Ohm =>
        omega * 60.0 / (2.0 * PI * kv) + current * resistance
}

law! {
    /// Line-to-line peak volts that the motor asks for, sinusoidal drive:
    /// √3 times the phase voltage, the drop across the inductance at right angles.
    ///
    /// Source: algebra from the sinusoidal machine without field weakening.
    ///
    /// ```
    /// // 40 A at 40 000 erpm across 20 µH: √3 · 40 · 4188.79 · 20e-6 = 5.804 V
    /// let w = 40_000.0 / 7.0 * std::f64::consts::PI / 30.0;
    /// use pitchline_core::physics::motor::MotorVoltagePeak;
    /// let v = MotorVoltagePeak {
    ///     omega: w, kv: 1e12, current: 40.0, resistance: 1e-12, pairs: 7.0, inductance: 20e-6,
    /// }.value();
    /// assert!((v - 5.804).abs() < 1e-3);
    /// ```
    MotorVoltagePeak = "Voltage the motor needs", "V_motor" = "√((ω 60 / (2π Kv) + (√3 / 2) I R_w)² + 3 (p ω L I)²)", Volt, SINUSOIDAL;
    omega: "ω" RadianPerSecond, kv: "Kv" RpmPerVolt, current: "I" Ampere, resistance: "R_w" Ohm, pairs: "p" Count, inductance: "L" Henry => {
        let along = omega * 60.0 / (2.0 * PI * kv) + SQRT_3 / 2.0 * current * resistance;
        let across = SQRT_3 * pairs * omega * inductance * current;
        sqrt(along * along + across * across)
    }
}

law! {
    /// What turns squared motor current into heat, ohm: one motor's copper and
    /// the switches of its channel.
    ///
    /// ```
    /// // Peak phase amperes, by hand: ¾ · 80 mΩ + 1.5 · 2 mΩ.
    /// use pitchline_core::physics::motor::HeatResistance;
    /// let r = HeatResistance { copper: 0.75, winding: 0.08, on: 1.5, switch: 0.002 }.value();
    /// assert!((r - 0.063).abs() < 1e-12);
    /// ```
    HeatResistance = "Windings and transistors as one resistance", "R_heat" = "k_Cu R_w + k_on R_switch", Ohm, CIRCUIT;
    copper: "k_Cu" None, winding: "R_w" Ohm, on: "k_on" None, switch: "R_switch" Ohm =>
        copper * winding + on * switch
}

law! {
    /// The controller's limit of the current of each motor, A.
    ControllerMotorLimit = "Motor current limit of the controller", "I_lim" = "k_mode I_set", Ampere, MECHANICS;
    mode: "k_mode" None, set: "I_set" Ampere => mode * set
}

law! {
    /// The motor's own limit of its current, A.
    MotorLimit = "Motor's current rating", "I_lim" = "I_rated", Ampere, MECHANICS;
    rated: "I_rated" Ampere => rated
}

law! {
    /// No current, A, beyond the controller's ERPM limit.
    SpeedLimit = "ERPM limit", "I_lim" = "0 where erpm > erpm_max, else no limit", Ampere, MECHANICS;
    erpm: "erpm" Rpm, most: "erpm_max" Rpm => if erpm > most { 0.0 } else { f64::INFINITY }
}

law! {
    /// Motor current, A, at the torque that belt or tyres hold.
    HeldCurrent = "Motor current at that torque", "I_lim" = "(T_hold + T_0) / k_T", Ampere, DRELA;
    torque: "T_hold" NewtonMetre, iron: "T_0" NewtonMetre, constant: "k_T" NewtonMetrePerAmpere => (torque + iron) / constant
}

law! {
    /// Motor current, A, at which the motors together draw a pack current.
    ///
    /// Source: the larger root of the power balance of [`InputPower`](super::battery::InputPower),
    /// written so that it stays exact for small resistance; 0 where idling takes it all.
    ///
    /// ```
    /// // 10 A at 40 V are 400 W: 100 W idle, 20 W for each ampere, 1 Ω of heat.
    /// use pitchline_core::physics::motor::DrawnCurrent;
    /// let i = DrawnCurrent {
    ///     pack: 10.0, open: 40.0, resistance: 0.0, motors: 1.0, constant: 0.05, omega: 400.0,
    ///     heat: 1.0, switching: 0.0, idle: 100.0,
    /// }.value();
    /// assert!((i - 10.0).abs() < 1e-12);
    /// ```
    DrawnCurrent = "Motor current at that pack current", "I_lim" =
        "2C / (B + √(B² + 4 R_heat C)); 0 where C < 0, B = k_T ω + k_sw V, C = I_max V / n − P_idle, V = V_pack − I_max R_pack", Ampere, CIRCUIT;
    pack: "I_max" Ampere, open: "V_pack" Volt, resistance: "R_pack" Ohm, motors: "n" Count, constant: "k_T" NewtonMetrePerAmpere,
    omega: "ω" RadianPerSecond, heat: "R_heat" Ohm, switching: "k_sw" None, idle: "P_idle" Watt => {
        let volts = open - pack * resistance;
        let turning = constant * omega + switching * volts;
        let power = pack * volts / motors - idle;
        if power > 0.0 {
            2.0 * power / (turning + sqrt(turning * turning + 4.0 * heat * power))
        } else {
            0.0
        }
    }
}

law! {
    /// Volts left over at the greatest motor current, V: nothing where they bind.
    SpareVoltage = "Voltage left over at maximum current", "V_spare" = "D_max V_bus_lim − V_motor_lim, both at I_lim", Volt, CIRCUIT;
    duty: "D_max" None, bus: "V_bus_lim" Volt, asked: "V_motor_lim" Volt, current: "I_lim" Ampere => {
        // Named so that the working says at which current both are.
        let _ = current;
        duty * bus - asked
    }
}

law! {
    /// Torque on one motor's shaft, N·m, at its greatest current; negative where it drags.
    GreatestTorque = "Torque of each motor at maximum current", "T_lim" = "k_T I_lim − T_0", NewtonMetre, DRELA;
    constant: "k_T" NewtonMetrePerAmpere, current: "I_lim" Ampere, iron: "T_0" NewtonMetre => constant * current - iron
}

impl Convention {
    /// Torque for each ampere, N m/A, of a motor with a Kv in rpm/V.
    #[must_use]
    pub fn torque_per_amp(self, kv: f64, w: &mut Working) -> f64 {
        match self {
            Self::PeakPhase => w.apply(TorqueConstantPeak { kv }),
            Self::Direct => w.apply(TorqueConstantDirect { kv }),
        }
    }

    /// Copper loss as a factor on `I² R_w`: `3/2 R_phase` is `3/4 R` line to
    /// line, and a direct current meets all of it.
    #[must_use]
    pub const fn copper_factor(self) -> f64 {
        match self {
            Self::PeakPhase => 0.75,
            Self::Direct => 1.0,
        }
    }

    /// RMS current in each motor wire, as a share of the motor current: a sine's, or that of a current
    /// which each wire carries for two thirds of the time.
    #[must_use]
    pub const fn rms_factor(self) -> f64 {
        match self {
            Self::PeakPhase => core::f64::consts::FRAC_1_SQRT_2,
            // √(2/3)
            Self::Direct => 0.816_496_580_927_726,
        }
    }

    /// Conduction loss in the switches as a factor on `I² R_switch`: three
    /// sinusoidal phases through one switch each, or one current through two.
    #[must_use]
    pub const fn switch_factor(self) -> f64 {
        match self {
            Self::PeakPhase => 1.5,
            Self::Direct => 2.0,
        }
    }
}
