//! Heat: where it goes, how warm it gets, and what can be held for ever.

use super::motor::COPPER_PER_K;
use crate::math::sqrt;

/// Share of a motor's mass that is copper. Common practice, no source.
const COPPER_SHARE: f64 = 0.2;
/// Specific heat of copper, J/(kg K), from memory.
const COPPER_J_KG_K: f64 = 385.0;
/// Specific heat of the rest of a motor, mostly steel, J/(kg K), from memory.
const STEEL_J_KG_K: f64 = 480.0;
/// How much better moving air cools a case, for each m/s. Common practice, no source.
const COOLING_PER_M_S: f64 = 0.12;

law! {
    /// Thermal resistance from case to air, K/W, falling with speed.
    Cooling = "Thermal resistance, case to air", "R_air" = "R_still / (1 + 0.12 v)", KelvinPerWatt, PRACTICE;
    still: "R_still" KelvinPerWatt, speed: "v" MetrePerSecond => still / (1.0 + COOLING_PER_M_S * speed)
}

law! {
    /// Squared motor current, A², at which the windings settle at a temperature;
    /// not positive where iron and air alone make them hotter.
    ///
    /// Source: heat balance of windings and case.
    ///
    /// ```
    /// // By hand: (100 K − 10 W · 1 K/W) / (1.5 K/W · 0.04 Ω) = 1500 A².
    /// use pitchline_core::physics::heat::ContinuousCurrentSquared;
    /// let i2 = ContinuousCurrentSquared {
    ///     most: 120.0, air: 20.0, iron: 10.0, inner: 0.5, outer: 1.0, copper: 0.04,
    /// }.value();
    /// assert!((i2 - 1500.0).abs() < 1e-9);
    /// ```
    ContinuousCurrentSquared = "Continuous current, squared", "I_held²" = "(t_most − t − P_iron R_air) / ((R_inner + R_air) R_Cu)", SquareAmpere, MECHANICS;
    most: "t_most" Celsius, air: "t" Celsius, iron: "P_iron" Watt, inner: "R_inner" KelvinPerWatt, outer: "R_air" KelvinPerWatt, copper: "R_Cu" Ohm =>
        (most - air - iron * outer) / ((inner + outer) * copper)
}

law! {
    /// Heat in iron and bearings of one motor, W.
    IronHeat = "Heat in iron and bearings of each motor", "P_iron" = "T_0 ω", Watt, MECHANICS;
    iron: "T_0" NewtonMetre, omega: "ω" RadianPerSecond => iron * omega
}

law! {
    /// What turns squared motor current into heat in the windings, Ω.
    CopperResistance = "Resistance that heats the windings", "R_Cu" = "k_Cu R_w", Ohm, MECHANICS;
    copper: "k_Cu" None, winding: "R_w" Ohm => copper * winding
}

law! {
    /// Current of each motor, A, that its windings hold for ever; 0 where iron
    /// and air alone make them too hot.
    HeldByWindings = "Continuous motor current, limited by winding heat", "I_lim" = "√I_held²; 0 where I_held² < 0", Ampere, MECHANICS;
    squared: "I_held²" SquareAmpere => continuous_a(squared)
}

law! {
    /// Heat that one channel of the controller may make for ever, W.
    CoolChannel = "Heat each channel can shed continuously", "P_cool" = "(t_hot − t) / (R_sink n) − P_idle", Watt, MECHANICS;
    hot: "t_hot" Celsius, air: "t" Celsius, sink: "R_sink" KelvinPerWatt, motors: "n" Count, idle: "P_idle" Watt =>
        (hot - air) / sink / motors - idle
}

law! {
    /// Current of each motor, A, at which the controller never holds back.
    ///
    /// ```
    /// // By hand: 4 W = 0.001 Ω (40 A)² + 0.0015 · 40 V · 40 A.
    /// use pitchline_core::physics::heat::HeldByController;
    /// let i = HeldByController {
    ///     cool: 4.0, switching: 0.0015, open: 40.0, on: 1.0, switch: 0.001,
    /// }.value();
    /// assert!((i - 40.0).abs() < 1e-9);
    /// ```
    HeldByController = "Continuous motor current, limited by controller heat", "I_lim" = "2 P_cool / (k_sw V_pack + √((k_sw V_pack)² + 4 k_on R_switch P_cool)); 0 where P_cool < 0", Ampere, MECHANICS;
    cool: "P_cool" Watt, switching: "k_sw" None, open: "V_pack" Volt, on: "k_on" None, switch: "R_switch" Ohm => {
        let linear = switching * open;
        let root = linear + sqrt((linear * linear + 4.0 * on * switch * cool).max(0.0));
        if cool <= 0.0 {
            0.0
        } else if root > 0.0 {
            2.0 * cool / root
        } else {
            f64::INFINITY
        }
    }
}

/// How a winding ends up under a steady current.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Settled {
    /// At a temperature, °C.
    At(f64),
    /// Nowhere: warmer copper makes more heat than the warmth drives out.
    Never,
}

/// Where windings settle that make `cold_w` watts at 20 °C, with a thermal
/// resistance to air, K/W, and the resistance of copper growing with warmth.
///
/// There is no such temperature where `cold_w · resistance · 0.00393 ≥ 1`.
///
/// ```
/// use pitchline_core::physics::heat::{Settled, settled};
/// let Settled::At(c) = settled(40.0, 1.8, 25.0) else { panic!() };
/// assert!((c - 127.385_920).abs() < 1e-6);
/// assert_eq!(settled(142.0, 1.8, 25.0), Settled::Never);
/// ```
#[must_use]
pub fn settled(cold_w: f64, resistance_k_w: f64, air_c: f64) -> Settled {
    let growth = cold_w * resistance_k_w * COPPER_PER_K;
    if growth >= 1.0 {
        return Settled::Never;
    }
    let rise = cold_w * resistance_k_w * (1.0 - 20.0 * COPPER_PER_K);
    Settled::At((air_c + rise) / (1.0 - growth))
}

/// A body that heat flows into, and out of to the air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Node {
    /// Heat capacity, J/K.
    pub capacity_j_k: f64,
    /// Conductance to the air, W/K.
    pub to_air_w_k: f64,
}

impl Node {
    /// Temperature, °C, after a step: implicit midpoint, second order.
    #[must_use]
    pub fn after(&self, from_c: f64, step_s: f64, heat_w: f64, air_c: f64) -> f64 {
        let at = place(self.capacity_j_k / self.to_air_w_k, step_s);
        let store = self.capacity_j_k / (at * step_s);
        let there = (store * from_c + heat_w + self.to_air_w_k * air_c) / (store + self.to_air_w_k);
        hold(from_c + (there - from_c) / at)
    }
}

/// Where in a step the flows are taken: its middle. In one longer than twice
/// the time constant later, so that the temperature does not swing.
fn place(tau_s: f64, step_s: f64) -> f64 {
    (1.0 - tau_s / step_s).max(0.5)
}

/// Windings in a case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MotorHeat {
    /// Heat capacity of the windings, J/K.
    pub winding_j_k: f64,
    /// Heat capacity of the case, J/K.
    pub case_j_k: f64,
    /// Conductance from windings to case, W/K.
    pub inner_w_k: f64,
}

/// Beyond this, °C, copper melts; temperatures are held there.
const HOTTEST_C: f64 = 1080.0;
const COLDEST_C: f64 = -100.0;

fn hold(celsius: f64) -> f64 {
    if celsius > COLDEST_C { celsius.min(HOTTEST_C) } else { COLDEST_C }
}

/// Temperatures of windings and case, °C.
pub type Pair = (f64, f64);

impl MotorHeat {
    /// From a motor's mass and the heat path inside it.
    #[must_use]
    pub fn of_mass(mass_kg: f64, inner_k_w: f64) -> Self {
        Self {
            winding_j_k: COPPER_SHARE * COPPER_J_KG_K * mass_kg,
            case_j_k: (1.0 - COPPER_SHARE) * STEEL_J_KG_K * mass_kg,
            inner_w_k: 1.0 / inner_k_w,
        }
    }

    /// Temperatures amid a step with `cold_w` watts in copper at 20 °C, which
    /// grow with warmth, and iron's watts in the case. Implicit midpoint:
    /// second order.
    #[must_use]
    pub fn amid(
        &self,
        from: Pair,
        step_s: f64,
        cold_w: f64,
        iron_w: f64,
        to_air_w_k: f64,
        air_c: f64,
    ) -> Pair {
        let span_s = self.place(step_s) * step_s;
        let (winding, case) = (self.winding_j_k / span_s, self.case_j_k / span_s);
        let growth = cold_w * COPPER_PER_K;
        let fixed = cold_w * (1.0 - 20.0 * COPPER_PER_K);
        // [a, −g; −g, c] (t_winding, t_case) = (p, q)
        let g = self.inner_w_k;
        let a = winding + g - growth;
        let c = case + g + to_air_w_k;
        let p = winding * from.0 + fixed;
        let q = case * from.1 + iron_w + to_air_w_k * air_c;
        let both = a * c - g * g;
        if a <= 0.0 || both <= 0.0 {
            // It runs away within the step.
            return (HOTTEST_C, hold((q + g * HOTTEST_C) / c));
        }
        (hold((p * c + g * q) / both), hold((a * q + g * p) / both))
    }

    /// Temperatures at the end of a step from those at its start and amid it.
    #[must_use]
    pub fn after(&self, from: Pair, amid: Pair, step_s: f64) -> Pair {
        let at = self.place(step_s);
        let end = |from: f64, amid: f64| hold(from + (amid - from) / at);
        (end(from.0, amid.0), end(from.1, amid.1))
    }

    fn place(&self, step_s: f64) -> f64 {
        place(self.winding_j_k / self.inner_w_k, step_s)
    }
}

/// Current of each motor, A, that can be held for ever at a speed; 0 where iron
/// and air alone make the windings too hot.
#[must_use]
pub fn continuous_a(squared: f64) -> f64 {
    if squared > 0.0 { sqrt(squared) } else { 0.0 }
}
