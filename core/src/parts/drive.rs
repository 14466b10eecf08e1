//! From the controller to the wheel pulley.

use super::Convention;
use crate::physics::belt_geometry::{
    BELT_DENSITY, BeltLength, BeltMassPerMetre, UsualBeltMassPerMetre,
};
use crate::working::Working;

part! {
    /// Brushless motor.
    Motor, tags ["shaft"];
    /// Mass of one motor.
    mass_kg: f64 = "mass_kg" Kilogram, 0.05..10.0, 0.75, Assumed;
    /// Price of one motor, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 90.0, Optional;
    /// Kv, the velocity constant: speed per volt of peak line-to-line back-EMF.
    kv_rpm_per_v: f64 = "kv_rpm_per_v" RpmPerVolt, 20.0..2000.0, 190.0, Required;
    /// Resistance between any two of the three motor wires, at 20 °C.
    resistance_ll_ohm: f64 = "resistance_ll_mohm" MilliOhm, 1.0..2000.0, 60.0, Required;
    /// Inductance of one phase.
    inductance_h: f64 = "inductance_uh" MicroHenry, 0.0..1000.0, 22.0, Assumed;
    /// Pole pairs: half the number of magnets.
    pole_pairs: f64 = "pole_pairs" Count, 1.0..40.0, 7.0, Assumed;
    /// No-load current: direct current that one motor draws with nothing on the shaft.
    no_load_a: f64 = "no_load_a" Ampere, 0.0..20.0, 1.2, Assumed;
    /// Speed at which the no-load current was measured.
    no_load_rpm: f64 = "no_load_rpm" Rpm, 100.0..60000.0, 5000.0, Assumed;
    /// Share of the no-load current that doesn't depend on speed: hysteresis and bearings.
    hysteresis_share: f64 = "hysteresis_percent" Percent, 0.0..100.0, 50.0, Assumed;
    /// Maximum motor current, in the controller's current convention.
    max_current_a: f64 = "max_current_a" Ampere, 1.0..1000.0, 80.0, Required;
    /// Motor current that the motor's maker rates for continuous use, in the controller's current
    /// convention.
    continuous_a: Option<f64> = "continuous_a" Ampere, 0.5..1000.0, 45.0, Optional;
    /// Continuous current rating of the connectors between motor and controller, RMS.
    connector_a: Option<f64> = "connector_a" Ampere, 0.5..1000.0, 50.0, Optional;
    /// Can diameter.
    can_diameter_m: f64 = "can_diameter_mm" Millimetre, 20.0..150.0, 63.0, Assumed;
    /// Can length, from the face of the motor mount.
    can_length_m: f64 = "can_length_mm" Millimetre, 20.0..250.0, 74.0, Assumed;
    /// Maximum winding temperature. Common practice, no source.
    winding_limit_c: f64 = "winding_limit_c" Celsius, 60.0..220.0, 120.0, Assumed;
    /// Thermal resistance, windings to case. Common practice, no source.
    winding_k_per_w: f64 = "winding_k_per_w" KelvinPerWatt, 0.01..10.0, 0.5, Assumed;
    /// Thermal resistance, case to still air. Common practice, no source.
    case_k_per_w: f64 = "case_k_per_w" KelvinPerWatt, 0.05..20.0, 1.6, Assumed;
}

part! {
    /// Motor controller with one channel per motor. Every limit is per motor.
    Controller, tags ["connector"];
    /// Mass of the whole controller, all channels together.
    mass_kg: f64 = "mass_kg" Kilogram, 0.02..10.0, 0.35, Assumed;
    /// Price, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 150.0, Optional;
    /// Current convention: how the controller counts motor current, as peak phase current
    /// (field-oriented control) or as direct current (six-step). At the same number of amps, peak
    /// phase gives 13 % less torque.
    convention: Convention = "convention" None, 0.0..1.0, 0.0, Assumed Convention::NAMES;
    /// Motor current limit per motor, in that convention.
    motor_current_a: f64 = "motor_current_a" Ampere, 1.0..1000.0, 60.0, Required;
    /// Battery current limit per motor.
    battery_current_a: f64 = "battery_current_a" Ampere, 0.5..500.0, 25.0, Required;
    /// Motor current that the controller's maker rates one channel for, in that convention.
    rated_motor_a: Option<f64> = "rated_motor_a" Ampere, 1.0..1000.0, 80.0, Optional;
    /// Battery current that the controller's maker rates one channel for.
    rated_battery_a: Option<f64> = "rated_battery_a" Ampere, 0.5..500.0, 40.0, Optional;
    /// ERPM that the controller's maker rates it for.
    rated_erpm: Option<f64> = "rated_erpm" Rpm, 1000.0..1000000.0, 120000.0, Optional;
    /// ERPM limit (motor rpm times pole pairs): above it the controller gives no power.
    erpm_limit: f64 = "erpm_limit" Rpm, 1000.0..1000000.0, 100000.0, Assumed;
    /// Maximum duty cycle.
    max_duty: f64 = "max_duty_percent" Percent, 50.0..100.0, 95.0, Assumed;
    /// Maximum input voltage. Higher voltages destroy the controller.
    max_bus_v: f64 = "max_bus_v" Volt, 10.0..150.0, 60.0, Assumed;
    /// Voltage per cell below which the controller starts limiting battery current.
    cutback_start_v: f64 = "cutback_start_v" Volt, 2.0..4.0, 3.3, Assumed => cutback_start_v;
    /// Voltage per cell at which the controller cuts out.
    cutback_end_v: f64 = "cutback_end_v" Volt, 2.0..4.0, 3.0, Assumed => cutback_end_v;
    /// On-resistance of one switching transistor.
    switch_ohm: f64 = "switch_mohm" MilliOhm, 0.0..50.0, 2.0, Assumed;
    /// Switching loss, as a share of input voltage times motor current.
    switching_share: f64 = "switching_percent" Percent, 0.0..10.0, 0.8, Assumed;
    /// Idle power per motor.
    idle_w: f64 = "idle_w" Watt, 0.1..20.0, 1.0, Assumed;
    /// Length of the controller's case.
    length_m: f64 = "length_mm" Millimetre, 20.0..300.0, 120.0, Assumed;
    /// Width of the controller's case.
    width_m: f64 = "width_mm" Millimetre, 15.0..200.0, 75.0, Assumed;
    /// Height of the controller's case.
    height_m: f64 = "height_mm" Millimetre, 5.0..100.0, 25.0, Assumed;
    /// Motor current limit when braking, per motor, in the controller's current convention.
    brake_current_a: f64 = "brake_current_a" Ampere, 0.0..1000.0, 40.0, Assumed;
    /// Battery current limit when braking (regen), per motor.
    regen_current_a: f64 = "regen_current_a" Ampere, 0.0..500.0, 8.0, Assumed;
    /// Controller temperature at which thermal limiting starts. Common practice, no source.
    cutback_start_c: f64 = "cutback_start_c" Celsius, 40.0..130.0, 80.0, Assumed;
    /// Controller temperature at which it cuts out. Common practice, no source.
    cutback_end_c: f64 = "cutback_end_c" Celsius, 50.0..150.0, 100.0, Assumed;
    /// Winding temperature at which thermal limiting of the motor starts, if the controller reads
    /// the motor's sensor. Common practice, no source.
    motor_cutback_start_c: Option<f64> = "motor_cutback_start_c" Celsius, 40.0..200.0, 85.0, Optional;
    /// Winding temperature at which the controller cuts out. If not given, the motor's maximum
    /// winding temperature. Common practice, no source.
    motor_cutback_end_c: Option<f64> = "motor_cutback_end_c" Celsius, 50.0..220.0, 110.0, Optional;
    /// Thermal resistance, switching transistors to air. Common practice, no source.
    heat_sink_k_per_w: f64 = "heat_sink_k_per_w" KelvinPerWatt, 0.05..20.0, 1.5, Assumed;
}

part! {
    /// Motor pulley.
    MotorPulley, tags ["bore"];
    /// Mass of one pulley.
    mass_kg: f64 = "mass_kg" Kilogram, 0.0..2.0, 0.04, Assumed;
    /// Price of one, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 12.0, Optional;
    /// Number of teeth.
    teeth: f64 = "teeth" Teeth, 8.0..60.0, 16.0, Required;
}

part! {
    /// Wheel pulley.
    WheelPulley, tags ["core"];
    /// Mass of one pulley.
    mass_kg: f64 = "mass_kg" Kilogram, 0.0..2.0, 0.12, Assumed;
    /// Price of one, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 25.0, Optional;
    /// Number of teeth.
    teeth: f64 = "teeth" Teeth, 12.0..120.0, 36.0, Required;
}

part! {
    /// Toothed belt.
    Belt, tags ["profile"];
    /// Mass of one. If not given, worked out from width and length.
    mass_kg: Option<f64> = "mass_kg" Kilogram, 0.0..1.0, 0.025, Optional;
    /// Price of one, in the catalogue's currency.
    price: Option<f64> = "price" Money, 0.0..1000000.0, 10.0, Optional;
    /// Teeth: pitch length divided by pitch.
    teeth: Option<f64> = "teeth" Teeth, 20.0..400.0, 56.0, Optional;
    /// Tooth pitch.
    pitch_m: f64 = "pitch_mm" Millimetre, 2.0..14.0, 5.0, Assumed;
    /// Belt width.
    width_m: f64 = "width_mm" Millimetre, 5.0..50.0, 15.0, Required;
    /// Rated pull per mm of width. Common practice, no source.
    rating_n_per_m: f64 = "rating_n_per_mm" NewtonPerMillimetre, 2.0..200.0, 30.0, Assumed;
    /// Efficiency: share of the motor's work that reaches the wheel.
    efficiency: f64 = "efficiency_percent" Percent, 50.0..100.0, 95.0, Assumed;
}

impl Belt {
    /// Pitch length, m, where its teeth are given.
    #[must_use]
    pub fn length_m(&self) -> Option<f64> {
        self.teeth.map(|teeth| BeltLength { teeth, pitch: self.pitch_m }.value())
    }

    /// Mass of one, kg: as given, or by its width and length, or that of a usual
    /// one. Common practice, no source.
    #[must_use]
    pub fn usual_mass_kg(&self) -> f64 {
        let by_length = || self.length_m().map(|length| length * self.mass_per_m());
        self.mass_kg.or_else(by_length).unwrap_or(0.025)
    }

    /// Mass for each metre, kg/m.
    #[must_use]
    pub fn mass_per_m(&self) -> f64 {
        self.mass_per_m_explained(&mut Working::off())
    }

    /// Whether that is by its weight and length, and not assumed by its width.
    #[must_use]
    pub fn is_weighed(&self) -> bool {
        self.teeth.is_some() && self.mass_kg.is_some_and(|mass| mass > 0.0)
    }

    pub(crate) fn mass_per_m_explained(&self, w: &mut Working) -> f64 {
        if let (Some(mass), Some(teeth), true) = (self.mass_kg, self.teeth, self.is_weighed()) {
            let length = w.apply(BeltLength { teeth, pitch: self.pitch_m });
            return w.apply(BeltMassPerMetre { mass, length });
        }
        w.apply(UsualBeltMassPerMetre {
            density: BELT_DENSITY,
            pitch: self.pitch_m,
            width: 1e3 * self.width_m,
        })
    }
}

part! {
    /// Ride mode, which limits current and speed.
    Mode, tags [];
    /// Share of the motor and battery current limits available in this mode.
    current_share: f64 = "current_percent" Percent, 5.0..100.0, 100.0, Required;
    /// Speed cap. If not given, the mode has none.
    speed_cap_m_s: Option<f64> = "speed_cap_km_h" KilometrePerHour, 3.0..120.0, 25.0, Optional;
}
