//! Gear train: pulleys, wheel and belt.

use crate::math::PI;

law! {
    /// Rolling radius under load, m: half the free diameter less the tread's deflection.
    RADIUS = "Rolling radius", "r" = "d_wheel / 2 − δ", Metre, MECHANICS;
    diameter: "d_wheel" Metre, deflection: "δ" Metre => diameter / 2.0 - deflection
}

law! {
    /// Gear ratio.
    RATIO = "Gear ratio", "i" = "Z_wheel / Z_motor", None, MECHANICS;
    wheel: "Z_wheel" Teeth, motor: "Z_motor" Teeth => wheel / motor
}

law! {
    /// Motor speed, rad/s, at a road speed.
    MOTOR_SPEED = "Motor speed", "ω" = "i v / r", RadianPerSecond, MECHANICS;
    ratio: "i" None, speed: "v" MetrePerSecond, radius: "r" Metre => ratio * speed / radius
}

law! {
    /// Electrical revolutions a minute.
    ///
    /// ```
    /// // 7 pole pairs at 1000 rad/s: 60 / 2π by definition.
    /// let erpm = pitchline_core::physics::gear::ERPM.of([1000.0, 7.0]);
    /// assert!((erpm - 66_845.0761).abs() < 1e-3);
    /// ```
    ERPM = "Electrical speed", "erpm" = "60 ω p / 2π", Rpm, MECHANICS;
    omega: "ω" RadianPerSecond, pairs: "p" Count => 60.0 * omega * pairs / (2.0 * PI)
}

law! {
    /// Shaft torque of one motor, N m, that a push at the wheels asks for.
    ///
    /// For a push forward; the belt's losses are on the motor's side.
    SHAFT_TORQUE = "Shaft torque of each motor", "T" = "F r / (i η n)", NewtonMetre, MECHANICS;
    force: "F" Newton, radius: "r" Metre, ratio: "i" None, efficiency: "η" None, motors: "n" Count =>
        force * radius / (ratio * efficiency * motors)
}

law! {
    /// Shaft torque of one motor, N m, where slope or wind push the board: what
    /// the belt brings, but no more than its own drag takes; brakes take the rest.
    ///
    /// ```
    /// use pitchline_core::physics::gear::DRIVEN_TORQUE;
    /// // By hand: -40 · 0.05 · 0.9 / (2 · 2), and no more than 0.2 N m of drag.
    /// assert!((DRIVEN_TORQUE.of([-40.0, 0.05, 0.9, 2.0, 2.0, 1.0]) + 0.45).abs() < 1e-12);
    /// assert_eq!(DRIVEN_TORQUE.of([-40.0, 0.05, 0.9, 2.0, 2.0, 0.2]), -0.2);
    /// ```
    DRIVEN_TORQUE = "Shaft torque of each motor, driven", "T" = "F r η / (i n), not below −T_0", NewtonMetre, MECHANICS;
    force: "F" Newton, radius: "r" Metre, efficiency: "η" None, ratio: "i" None, motors: "n" Count, iron: "T_0" NewtonMetre =>
        (force * radius * efficiency / (ratio * motors)).max(-iron)
}

law! {
    /// Push of all motors at the road, N: the inverse of [`SHAFT_TORQUE`]. A
    /// motor that drags is driven from the road, through the belt's losses.
    PUSH = "Push at the road", "F_push" = "T_lim i η n / r; T_lim i n / (r η) where the motors drag", Newton, MECHANICS;
    torque: "T_lim" NewtonMetre, ratio: "i" None, efficiency: "η" None, motors: "n" Count, radius: "r" Metre => {
        let efficiency = if torque >= 0.0 { efficiency } else { 1.0 / efficiency };
        torque * ratio * efficiency * motors / radius
    }
}

law! {
    /// Torque on the motor pulley, N m, at the belt's rated pull.
    BELT_TORQUE = "Torque that the belt holds", "T_hold" = "F_rated Z_motor pitch / 2π", NewtonMetre, MECHANICS;
    pull: "F_rated" Newton, teeth: "Z_motor" Teeth, pitch: "pitch" Metre => pull * teeth * pitch / (2.0 * PI)
}

law! {
    /// Shaft torque of one motor, N m, at the push that the tyres hold.
    GRIP_TORQUE = "Torque that the tyres hold", "T_hold" = "F_grip r / (i η n)", NewtonMetre, MECHANICS;
    force: "F_grip" Newton, radius: "r" Metre, ratio: "i" None, efficiency: "η" None, motors: "n" Count =>
        force * radius / (ratio * efficiency * motors)
}

law! {
    /// Road speed, m/s, at which the motors without load meet the voltage.
    UNLOADED_SPEED = "Speed without load", "v_end" = "D_max V_pack Kv (2π / 60) r / i", MetrePerSecond, MECHANICS;
    duty: "D_max" None, open: "V_pack" Volt, kv: "Kv" RpmPerVolt, radius: "r" Metre, ratio: "i" None =>
        duty * open * kv * PI / 30.0 * radius / ratio
}

law! {
    /// Road speed, m/s, at the controller's electrical speed limit: a hair
    /// inside, so that the limit itself is still allowed.
    ///
    /// ```
    /// // By hand: 10 000 rpm of the motor, 4000 of a wheel of 48 mm.
    /// let v = pitchline_core::physics::gear::COUNTED_SPEED.of([70_000.0, 7.0, 0.048, 2.5]);
    /// assert!((v - 20.106_193).abs() < 1e-6);
    /// ```
    COUNTED_SPEED = "Speed at the electrical limit", "v_end" = "2π erpm_max r / (60 p i)", MetrePerSecond, MECHANICS;
    erpm: "erpm_max" Rpm, pairs: "p" Count, radius: "r" Metre, ratio: "i" None =>
        erpm / pairs * PI / 30.0 * radius / ratio * (1.0 - 1e-12)
}

law! {
    /// Road speed, m/s, at which a ride mode stops pushing.
    CAPPED_SPEED = "Speed cap of the mode", "v_end" = "v_cap", MetrePerSecond, MECHANICS;
    cap: "v_cap" MetrePerSecond => cap
}

law! {
    /// Pull in a belt, N, from the torque on the motor pulley.
    ///
    /// ```
    /// // 2 N m on 16 teeth of 5 mm: pitch radius 12.7324 mm.
    /// let pull = pitchline_core::physics::gear::BELT_PULL.of([2.0, 16.0, 0.005]);
    /// assert!((pull - 157.0796).abs() < 1e-3);
    /// ```
    BELT_PULL = "Belt pull", "F_belt" = "2π T / (Z_motor pitch)", Newton, MECHANICS;
    torque: "T" NewtonMetre, teeth: "Z_motor" Teeth, pitch: "pitch" Metre =>
        2.0 * PI * torque / (teeth * pitch)
}
