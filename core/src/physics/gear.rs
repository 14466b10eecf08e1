//! Gear train: pulleys, wheel and belt.

use crate::math::PI;

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
    /// Push of all motors at the road, N: the inverse of [`SHAFT_TORQUE`].
    PUSH = "Push at the road", "F" = "T i η n / r", Newton, MECHANICS;
    torque: "T" NewtonMetre, ratio: "i" None, efficiency: "η" None, motors: "n" Count, radius: "r" Metre =>
        torque * ratio * efficiency * motors / radius
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
