//! Gear train: pulleys, wheel and belt.

use crate::math::PI;

law! {
    /// Rolling radius under load, m: half the free diameter less the tread's deflection.
    WheelRadius = "Rolling radius", "r" = "d_wheel / 2 − δ", Metre, MECHANICS;
    diameter: "d_wheel" Metre, deflection: "δ" Metre => diameter / 2.0 - deflection
}

law! {
    /// Gear ratio.
    GearRatio = "Gear ratio", "i" = "Z_wheel / Z_motor", None, MECHANICS;
    wheel: "Z_wheel" Teeth, motor: "Z_motor" Teeth => wheel / motor
}

law! {
    /// Motor speed, rad/s, at a road speed.
    MotorSpeed = "Motor speed", "ω" = "i v / r", RadianPerSecond, MECHANICS;
    ratio: "i" None, speed: "v" MetrePerSecond, radius: "r" Metre => ratio * speed / radius
}

law! {
    /// Electrical revolutions a minute.
    ///
    /// ```
    /// // 7 pole pairs at 1000 rad/s: 60 / 2π by definition.
    /// use pitchline_core::physics::gear::ElectricalRpm;
    /// let erpm = ElectricalRpm { omega: 1000.0, pairs: 7.0 }.value();
    /// assert!((erpm - 66_845.0761).abs() < 1e-3);
    /// ```
    ElectricalRpm = "Electrical speed", "erpm" = "60 ω p / 2π", Rpm, MECHANICS;
    omega: "ω" RadianPerSecond, pairs: "p" Count => 60.0 * omega * pairs / (2.0 * PI)
}

law! {
    /// Shaft torque of one motor, N·m, that a push at the wheels asks for.
    ///
    /// For a push forward; the belt's losses are on the motor's side.
    ShaftTorque = "Shaft torque of each motor", "T" = "F r / (i η n)", NewtonMetre, MECHANICS;
    force: "F" Newton, radius: "r" Metre, ratio: "i" None, efficiency: "η" None, motors: "n" Count =>
        force * radius / (ratio * efficiency * motors)
}

law! {
    /// Shaft torque of one motor, N·m, where slope or wind push the board: what
    /// the belt brings, but no more than its own drag takes; brakes take the rest.
    ///
    /// ```
    /// use pitchline_core::physics::gear::DrivenTorque;
    /// // By hand: -40 · 0.05 · 0.9 / (2 · 2), and no more than 0.2 N·m of drag.
    /// let (force, radius, efficiency) = (-40.0, 0.05, 0.9);
    /// let at = |iron| DrivenTorque { force, radius, efficiency, ratio: 2.0, motors: 2.0, iron };
    /// assert!((at(1.0).value() + 0.45).abs() < 1e-12);
    /// assert_eq!(at(0.2).value(), -0.2);
    /// ```
    DrivenTorque = "Shaft torque of each motor, driven", "T" = "F r η / (i n), not below −T_0", NewtonMetre, MECHANICS;
    force: "F" Newton, radius: "r" Metre, efficiency: "η" None, ratio: "i" None, motors: "n" Count, iron: "T_0" NewtonMetre =>
        (force * radius * efficiency / (ratio * motors)).max(-iron)
}

law! {
    /// Push of all motors at the road, N: the inverse of [`ShaftTorque`]. A
    /// motor that drags is driven from the road, through the belt's losses.
    PushForce = "Push at the road", "F_push" = "T_lim i η n / r; T_lim i n / (r η) where T_lim < 0", Newton, MECHANICS;
    torque: "T_lim" NewtonMetre, ratio: "i" None, efficiency: "η" None, motors: "n" Count, radius: "r" Metre => {
        let efficiency = if torque >= 0.0 { efficiency } else { 1.0 / efficiency };
        torque * ratio * efficiency * motors / radius
    }
}

law! {
    /// Torque on the motor pulley, N·m, at the belt's rated pull.
    BeltTorque = "Torque the belt can carry", "T_hold" = "F_rated Z_motor pitch / 2π", NewtonMetre, MECHANICS;
    pull: "F_rated" Newton, teeth: "Z_motor" Teeth, pitch: "pitch" Metre => pull * teeth * pitch / (2.0 * PI)
}

law! {
    /// Shaft torque of one motor, N·m, at the push that the tyres hold.
    GripTorque = "Torque the tyres can hold", "T_hold" = "F_grip r / (i η n)", NewtonMetre, MECHANICS;
    force: "F_grip" Newton, radius: "r" Metre, ratio: "i" None, efficiency: "η" None, motors: "n" Count =>
        force * radius / (ratio * efficiency * motors)
}

law! {
    /// Road speed, m/s, at which the motors without load meet the voltage.
    UnloadedSpeed = "No-load speed", "v_end" = "D_max V_pack Kv (2π / 60) r / i", MetrePerSecond, MECHANICS;
    duty: "D_max" None, open: "V_pack" Volt, kv: "Kv" RpmPerVolt, radius: "r" Metre, ratio: "i" None =>
        duty * open * kv * PI / 30.0 * radius / ratio
}

law! {
    /// Road speed, m/s, at the controller's ERPM limit: a hair
    /// inside, so that the limit itself is still allowed.
    ///
    /// ```
    /// // By hand: 10 000 rpm of the motor, 4000 of a wheel of 48 mm.
    /// use pitchline_core::physics::gear::CountedSpeed;
    /// let v = CountedSpeed { erpm: 70_000.0, pairs: 7.0, radius: 0.048, ratio: 2.5 }.value();
    /// assert!((v - 20.106_193).abs() < 1e-6);
    /// ```
    CountedSpeed = "Speed at the ERPM limit", "v_end" = "2π erpm_max r / (60 p i)", MetrePerSecond, MECHANICS;
    erpm: "erpm_max" Rpm, pairs: "p" Count, radius: "r" Metre, ratio: "i" None =>
        erpm / pairs * PI / 30.0 * radius / ratio * (1.0 - 1e-12)
}

law! {
    /// Road speed, m/s, at which a ride mode stops pushing.
    CappedSpeed = "Speed cap of the mode", "v_end" = "v_cap", MetrePerSecond, MECHANICS;
    cap: "v_cap" MetrePerSecond => cap
}

law! {
    /// Pull in a belt, N, from the torque on the motor pulley.
    ///
    /// ```
    /// // 2 N·m on 16 teeth of 5 mm: pitch radius 12.7324 mm.
    /// use pitchline_core::physics::gear::BeltPull;
    /// let pull = BeltPull { torque: 2.0, teeth: 16.0, pitch: 0.005 }.value();
    /// assert!((pull - 157.0796).abs() < 1e-3);
    /// ```
    BeltPull = "Belt pull", "F_belt" = "2π T / (Z_motor pitch)", Newton, MECHANICS;
    torque: "T" NewtonMetre, teeth: "Z_motor" Teeth, pitch: "pitch" Metre =>
        2.0 * PI * torque / (teeth * pitch)
}
