//! What the road and the air ask of the board.

use super::air::G;
use crate::math::{abs, sqrt};

law! {
    /// Mass on the road, kg.
    TotalMass = "Mass of board, rider and bag", "m" = "m_board + m_rider + m_load", Kilogram, MECHANICS;
    board: "m_board" Kilogram, rider: "m_rider" Kilogram, load: "m_load" Kilogram => board + rider + load
}

law! {
    /// Rolling resistance coefficient of a wheel on a surface.
    ///
    /// Source: common practice, no source.
    RollingCoefficient = "Rolling resistance coefficient", "C_rr" = "C_smooth (1 + k_rough s)", None, PRACTICE;
    smooth: "C_smooth" None, share: "k_rough" None, roughness: "s" None => smooth * (1.0 + share * roughness)
}

law! {
    /// Rolling resistance, N, on a slope whose cosine is given.
    ///
    /// Source: Martin et al. 1998.
    ///
    /// ```
    /// use pitchline_core::physics::road_load::RollingForce;
    /// let force = RollingForce { mass: 90.0, rolling: 0.012, cos: 1.0 };
    /// assert!((force.value() - 10.591_182).abs() < 1e-6);
    /// ```
    RollingForce = "Rolling resistance", "F_roll" = "m g C_rr cos α", Newton, MARTIN;
    mass: "m" Kilogram, rolling: "C_rr" None, cos: "cos α" None => mass * G * rolling * cos
}

law! {
    /// Slope resistance, N, from the sine of the slope; negative downhill.
    ///
    /// Source: Martin et al. 1998.
    SlopeForce = "Slope resistance", "F_slope" = "m g sin α", Newton, MARTIN;
    mass: "m" Kilogram, sin: "sin α" None => mass * G * sin
}

law! {
    /// Air resistance, N; a headwind is positive, and a following wind may push.
    ///
    /// Source: Martin et al. 1998.
    AirForce = "Air resistance", "F_air" = "½ ρ CdA (v + w) |v + w|", Newton, MARTIN;
    density: "ρ" KilogramPerCubicMetre, area: "CdA" SquareMetre,
    speed: "v" MetrePerSecond, wind: "w" MetrePerSecond =>
        0.5 * density * area * (speed + wind) * abs(speed + wind)
}

law! {
    /// Everything together, N.
    ///
    /// Source: Martin et al. 1998.
    RoadLoad = "Road load", "F" = "F_roll + F_slope + F_air", Newton, MARTIN;
    roll: "F_roll" Newton, slope: "F_slope" Newton, air: "F_air" Newton => roll + slope + air
}

law! {
    /// Power at the wheel, W.
    WheelPower = "Power at the wheel", "P_wheel" = "F v", Watt, MECHANICS;
    force: "F" Newton, speed: "v" MetrePerSecond => force * speed
}

law! {
    /// Push, N, that the driven wheels hold: half the weight stands on the rear
    /// axle, more when pushing, and each motor drives one of its two wheels.
    ///
    /// Never more than with all the weight there, which is as the front lifts.
    /// The rider is taken to lean so that it stays down: common practice, no source.
    ///
    /// Source: moments about the front axle.
    ///
    /// ```
    /// use pitchline_core::physics::road_load::GripForce;
    /// let (motors, mass, cos, height, base) = (2.0, 90.0, 1.0, 0.95, 0.72);
    /// let held = |grip| GripForce { grip, motors, mass, cos, height, base }.value();
    /// // By hand, 90 kg: at 0.2 the rear axle carries 599.5 N of 882.6 N, and at
    /// // more than L / 2h = 0.38 all of it.
    /// assert!((held(0.2) - 119.900_17).abs() < 1e-4);
    /// assert!((held(0.7) - 617.818_95).abs() < 1e-4);
    /// ```
    GripForce = "Push the tyres can hold", "F_grip" = "½ μ n m g cos α / (the greater of 1 and 2 − μ n h_c / L_base)", Newton, MECHANICS;
    grip: "μ" None, motors: "n" Count, mass: "m" Kilogram, cos: "cos α" None, height: "h_c" Metre, base: "L_base" Metre => {
        let share = grip * motors;
        0.5 * share * mass * G * cos / (2.0 - share * height / base).max(1.0)
    }
}

law! {
    /// Push less what the air takes, N: what is left for rolling and the hill.
    NetForce = "Push minus air resistance", "F_net" = "F_push − F_air", Newton, MECHANICS;
    push: "F_push" Newton, air: "F_air" Newton => push - air
}

law! {
    /// Steepest grade (as a share) that a force, less the air's, can hold:
    /// the closed form of `F_net = m g (C_rr cos α + sin α)`.
    ///
    /// Never beyond ±100 %, where standing on a board has long ended.
    ///
    /// Source: algebra from Martin et al. 1998.
    ///
    /// ```
    /// use pitchline_core::physics::road_load::SteepestGrade;
    /// // 98.360453 N hold 90 kg on 10 %: from the forward formula.
    /// let grade = SteepestGrade { net: 98.360_453, mass: 90.0, rolling: 0.012 };
    /// assert!((grade.value() - 0.1).abs() < 1e-8);
    /// ```
    SteepestGrade = "Steepest grade", "grade" = "tan(asin(F_net / (m g √(1 + C_rr²))) − atan C_rr), from −1 to 1", None, MARTIN;
    net: "F_net" Newton, mass: "m" Kilogram, rolling: "C_rr" None => {
        // tan(a − b) from tan a and tan b: no trigonometry is needed.
        let sine = net / (mass * G * sqrt(1.0 + rolling * rolling));
        let sine = sine.clamp(-1.0, 1.0);
        let run = sqrt(1.0 - sine * sine);
        let (rise, run) = (sine - rolling * run, run + rolling * sine);
        // Beyond 45° the grade is held, before it grows without end.
        if abs(rise) >= run { if rise > 0.0 { 1.0 } else { -1.0 } } else { rise / run }
    }
}

law! {
    /// Push left over, N: nothing at top speed.
    SpareForce = "Push left over", "F_spare" = "F_push − F", Newton, MECHANICS;
    push: "F_push" Newton, load: "F" Newton => push - load
}

/// A slope's sine and cosine from its grade (rise over run).
///
/// ```
/// let slope = pitchline_core::physics::road_load::Slope::of_grade(0.10);
/// assert!((slope.sin - 0.099_503_72).abs() < 1e-8);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slope {
    /// Sine of the slope's angle.
    pub sin: f64,
    /// Cosine of the slope's angle.
    pub cos: f64,
}

impl Slope {
    /// No slope.
    pub const FLAT: Self = Self { sin: 0.0, cos: 1.0 };

    /// From rise over run.
    #[must_use]
    pub fn of_grade(grade: f64) -> Self {
        let cos = 1.0 / sqrt(1.0 + grade * grade);
        Self { sin: grade * cos, cos }
    }
}
