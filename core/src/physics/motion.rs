//! Mass set in motion by a force that depends on speed.

use super::air::G;
use crate::math::{abs, exp, ln};

law! {
    /// Mass that is felt when speeding up, kg: wheels as discs, and rotors
    /// turning faster than the wheels by the gear.
    ///
    /// ```
    /// // By hand: 90 + 4 · 0.5 · 0.3 + 2 · 2e-4 · (2.5 / 0.05)².
    /// use pitchline_core::physics::motion::EffectiveMass;
    /// let m = EffectiveMass {
    ///     mass: 90.0, wheels: 4.0, wheel: 0.3, motors: 2.0, rotor: 2e-4, ratio: 2.5,
    ///     radius: 0.05,
    /// }.value();
    /// assert!((m - 91.6).abs() < 1e-12);
    /// ```
    EffectiveMass = "Effective mass", "m_eff" = "m + ½ n_wheels m_wheel + n J_rotor (i / r)²", Kilogram, MARTIN;
    mass: "m" Kilogram, wheels: "n_wheels" Count, wheel: "m_wheel" Kilogram, motors: "n" Count,
    rotor: "J_rotor" KilogramSquareMetre, ratio: "i" None, radius: "r" Metre =>
        mass + 0.5 * wheels * wheel + motors * rotor * (ratio / radius) * (ratio / radius)
}

law! {
    /// Inertia of a motor's rotor, kg m², from the motor's mass: a ring of 45 %
    /// of it, 30 mm from the axis for 750 g, and larger with its cube root.
    /// Common practice, no source.
    ///
    /// ```
    /// let j = pitchline_core::physics::motion::RotorInertia { mass: 0.75 }.value();
    /// assert!((j - 0.45 * 0.75 * 0.03 * 0.03).abs() < 1e-15);
    /// ```
    RotorInertia = "Inertia of a rotor", "J_rotor" = "0.45 m_motor (0.03 m (m_motor / 0.75 kg)^⅓)²", KilogramSquareMetre, PRACTICE;
    mass: "m_motor" Kilogram => 0.45 * mass * 0.03 * 0.03 * exp(2.0 / 3.0 * ln(mass / 0.75))
}

law! {
    /// Braking force, N, that the driven wheels hold: half the weight stands on
    /// the rear axle, less when braking.
    ///
    /// Source: moments about the front axle.
    ///
    /// ```
    /// // By hand, 90 kg: ½ · 0.8 · 882.6 / (2 + 0.8 · 0.95 / 0.72).
    /// use pitchline_core::physics::motion::BrakeGrip;
    /// let f = BrakeGrip {
    ///     grip: 0.4, motors: 2.0, mass: 90.0, cos: 1.0, height: 0.95, base: 0.72,
    /// }.value();
    /// assert!((f - 0.4 * 90.0 * 9.80665 / (2.0 + 0.8 * 0.95 / 0.72)).abs() < 1e-9);
    /// ```
    BrakeGrip = "Braking force the tyres can hold", "F_grip" = "½ μ n m g cos α / (2 + μ n h_c / L_base)", Newton, MECHANICS;
    grip: "μ" None, motors: "n" Count, mass: "m" Kilogram, cos: "cos α" None, height: "h_c" Metre, base: "L_base" Metre => {
        let share = grip * motors;
        0.5 * share * mass * G * cos / (2.0 + share * height / base)
    }
}

law! {
    /// Way, m, to stop from a speed at a steady deceleration.
    ///
    /// ```
    /// // 25 km/h at 3.5 m/s².
    /// use pitchline_core::physics::motion::StoppingDistance;
    /// let s = StoppingDistance { speed: 25.0 / 3.6, rate: 3.5 }.value();
    /// assert!((s - 6.889_329_81).abs() < 1e-8);
    /// ```
    StoppingDistance = "Stopping distance", "s_stop" = "v² / 2a_stop", Metre, MECHANICS;
    speed: "v" MetrePerSecond, rate: "a_stop" MetrePerSecondSquared => speed * speed / (2.0 * rate)
}

/// Speed and time after a step, or after the part of it until the mass stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moved {
    /// Speed, m/s; never negative.
    pub speed_m_s: f64,
    /// Time taken, s: the step, or less if it came to rest.
    pub time_s: f64,
}

impl Moved {
    /// Way made since a speed, m.
    #[must_use]
    pub fn way_m(&self, from_m_s: f64) -> f64 {
        0.5 * (from_m_s + self.speed_m_s) * self.time_s
    }
}

/// How near the speed at the end of a step is found, m/s.
const NEAR_M_S: f64 = 1e-8;

/// Moves a mass by a net force at each speed. The force may jump.
///
/// Implicit midpoint: `m (v1 − v0) = h F((v0 + v1) / 2)`, a bracketed secant to
/// 1e-8 m/s. Second order, stable for any step, and the work of the force is
/// the change of the kinetic energy.
pub fn moved(mass: f64, from_m_s: f64, step_s: f64, mut net: impl FnMut(f64) -> f64) -> Moved {
    let first = net(from_m_s);
    let reached = from_m_s + step_s * first / mass;
    if first == 0.0 || (first < 0.0 && from_m_s <= 0.0) {
        return Moved { speed_m_s: from_m_s.max(0.0), time_s: step_s };
    }
    // The excess of the change over what the force gives, by the speed at the end.
    let mut excess = |v: f64| mass * (v - from_m_s) - step_s * net(0.5 * (from_m_s + v));
    let (mut near, mut far) = ((from_m_s, -step_s * first), (reached.max(0.0), 0.0));
    far.1 = excess(far.0);
    for _ in 0..60 {
        if far.0 <= 0.0 || far.1 == 0.0 || (far.1 > 0.0) != (near.1 > 0.0) {
            break;
        }
        // Where a force grows on the way, as braking may, it gets farther.
        let v = (from_m_s + 2.0 * (far.0 - from_m_s)).max(0.0);
        far = (v, excess(v));
    }
    if far.0 <= 0.0 && far.1 >= 0.0 {
        // It comes to rest within the step.
        let stopping = (far.1 + mass * from_m_s) / step_s;
        return Moved { speed_m_s: 0.0, time_s: mass * from_m_s / stopping };
    }
    for _ in 0..60 {
        if near.1 == far.1 || abs(far.0 - near.0) < NEAR_M_S {
            break;
        }
        let v = far.0 - far.1 * (far.0 - near.0) / (far.1 - near.1);
        let new = (v, excess(v));
        let done = abs(v - far.0) < NEAR_M_S || abs(new.1) < NEAR_M_S * mass;
        if (new.1 > 0.0) == (far.1 > 0.0) {
            // The other end stays: half its weight, or it would stay for ever.
            near.1 *= 0.5;
        } else {
            near = far;
        }
        far = new;
        if done {
            break;
        }
    }
    Moved { speed_m_s: far.0.max(0.0), time_s: step_s }
}
