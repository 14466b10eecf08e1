//! Charging: constant current, then constant voltage.

use super::cell::{CellInTime, CellState, Decay, OpenCircuit};
use crate::math::root;

law! {
    /// Charging current of the pack, A: what charger and cells both allow.
    ///
    /// ```
    /// // 5 A from the charger into 3 cells that take 1.5 A each.
    /// use pitchline_core::physics::charging::ChargeCurrent;
    /// let i = ChargeCurrent { charger: 5.0, parallel: 3.0, cell: 1.5 }.value();
    /// assert_eq!(i, 4.5);
    /// ```
    ChargeCurrent = "Charging current", "I_charge" = "the lesser of I_charger and N_p I_take", Ampere, MECHANICS;
    charger: "I_charger" Ampere, parallel: "N_p" Cells, cell: "I_take" Ampere => charger.min(parallel * cell)
}

law! {
    /// Current, A, at which a charger that holds the voltage ends: a twentieth
    /// of the capacity for each hour. Common practice, no source.
    TaperCurrent = "Charger ends at", "I_taper" = "0.05 Q / 1 h", Ampere, PRACTICE;
    capacity: "Q" AmpereHour => 0.05 * capacity
}

law! {
    /// Time, s, at constant current.
    ConstantCurrentTime = "Time at constant current", "t_current" = "3600 Q (z_hold − z_start) / I_charge", Second, MECHANICS;
    capacity: "Q" AmpereHour, hold: "z_hold" None, start: "z_start" None, current: "I_charge" Ampere =>
        3600.0 * capacity * (hold - start) / current
}

law! {
    /// Time, s, at constant voltage, from the mean current there, which comes
    /// from the cell model in steps of time.
    ConstantVoltageTime = "Time at constant voltage", "t_voltage" = "3600 Q (z_end − z_hold) / I_hold", Second, CELL_MODEL;
    capacity: "Q" AmpereHour, end: "z_end" None, hold: "z_hold" None, mean: "I_hold" Ampere =>
        if mean > 0.0 { 3600.0 * capacity * (end - hold) / mean } else { 0.0 }
}

law! {
    /// Time of a charge, s.
    ChargeTime = "Time to charge", "t_charge" = "t_current + t_voltage", Second, MECHANICS;
    current: "t_current" Second, voltage: "t_voltage" Second => current + voltage
}

law! {
    /// Energy into the pack, Wh, from its mean voltage on the way, which comes
    /// from the cell model in steps of time.
    ChargeEnergy = "Energy into the pack", "E_pack" = "V_charge Q (z_end − z_start)", WattHour, CELL_MODEL;
    mean: "V_charge" Volt, capacity: "Q" AmpereHour, end: "z_end" None, start: "z_start" None =>
        mean * capacity * (end - start)
}

law! {
    /// Energy from the wall, Wh.
    ///
    /// ```
    /// use pitchline_core::physics::charging::WallEnergy;
    /// assert_eq!(WallEnergy { pack: 330.0, efficiency: 0.88 }.value(), 375.0);
    /// ```
    WallEnergy = "Energy from the wall", "E_wall" = "E_pack / η_charger", WattHour, MECHANICS;
    pack: "E_pack" WattHour, efficiency: "η_charger" None => pack / efficiency
}

law! {
    /// What it costs, in the currency of the price.
    ChargeCost = "Cost of the charge", "cost" = "price E_wall / 1000", Money, MECHANICS;
    price: "price" Money, wall: "E_wall" WattHour => price * wall / 1000.0
}

/// A charger as one cell sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CellCharger {
    /// Constant current, A, into one cell; positive.
    pub current_a: f64,
    /// Volts that it holds, at the cell and its joint.
    pub hold_v: f64,
    /// Current at which it ends, A.
    pub taper_a: f64,
    /// Charge at which it is taken off.
    pub target: f64,
    /// Time at which it is taken off, s.
    pub until_s: f64,
}

/// A moment of a charge.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ChargeMoment {
    /// Time since the start, s.
    pub time_s: f64,
    /// Charge, as a share.
    pub charge: f64,
    /// Current into the cell, A; positive.
    pub current_a: f64,
    /// Volts at the cell and its joint.
    pub volts: f64,
}

/// A charge of one cell.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CellCharge {
    /// Where constant voltage takes over; the end if it never does.
    pub hold: ChargeMoment,
    /// The end.
    pub end: ChargeMoment,
    /// Energy into the cell and its joint, Wh.
    pub energy_wh: f64,
    /// Whether the current had tapered off.
    pub tapered: bool,
}

/// Points told of the constant-current part; its energy is their Simpson sum.
const POINTS: u32 = 48;
/// Most steps of the constant-voltage part; about 150 are taken.
const STEPS: u32 = 4000;

/// Charges a rested cell, telling each moment on the way.
///
/// The constant current is in closed form, its end a root to 1e-6 of its time.
/// The constant voltage goes in steps over which the current is a constant
/// such that the mean voltage is the one held; charge and filters are exact
/// then. Steps are as long as the current falls by 2 to 6 % in each: second
/// order, within 1e-4 of the time.
pub fn charge_cell<O: OpenCircuit>(
    cell: &CellInTime<O>,
    start: f64,
    charger: &CellCharger,
    mut tell: impl FnMut(ChargeMoment),
) -> CellCharge {
    let rested = CellState::rested(start);
    let amps = charger.current_a;
    let at = |time_s: f64| {
        let decay = Decay::new(&cell.shape, time_s);
        cell.after(&rested, &decay, -amps)
    };
    let moment = |time_s: f64| {
        let state = at(time_s);
        let volts = cell.volts(&state, -amps);
        ChargeMoment { time_s, charge: state.charge, current_a: amps, volts }
    };
    // Constant current: until the target, the time, or the voltage is met.
    let span = 3600.0 * cell.capacity_ah * (charger.target - start) / amps;
    let span = span.min(charger.until_s).max(0.0);
    let over = |time_s: f64| moment(time_s).volts - charger.hold_v;
    let (held_from, holds) = if over(0.0) >= 0.0 {
        (0.0, true)
    } else if over(span) <= 0.0 {
        (span, false)
    } else {
        (root(0.0, span, 1e-6 * span, over), true)
    };
    let mut joule = 0.0;
    if held_from > 0.0 {
        for k in 0..=POINTS {
            // The last at the end itself, not a rounding beside it.
            let time_s =
                if k == POINTS { held_from } else { held_from * f64::from(k) / f64::from(POINTS) };
            let point = moment(time_s);
            let weight = match k {
                0 | POINTS => 1.0,
                k if k % 2 == 1 => 4.0,
                _ => 2.0,
            };
            // The end is a root: a hair beyond what the charger holds.
            let point = ChargeMoment { volts: point.volts.min(charger.hold_v), ..point };
            joule += weight * point.volts * amps * held_from / f64::from(3 * POINTS);
            tell(point);
        }
    }
    let hold = if holds {
        ChargeMoment { volts: charger.hold_v, ..moment(held_from) }
    } else {
        moment(held_from)
    };
    let mut found = CellCharge { hold, end: hold, energy_wh: joule / 3600.0, tapered: false };
    if !holds || span <= 0.0 {
        return found;
    }
    // Constant voltage.
    let mut state = at(held_from);
    let now = |state: &CellState| {
        let current = (charger.hold_v - cell.behind_v(state)) / cell.ohmic_ohm().max(1e-9);
        current.max(0.0).min(amps)
    };
    let mut last = ChargeMoment { current_a: now(&state), ..hold };
    if held_from <= 0.0 {
        found.hold = last;
        tell(last);
    }
    let mut step_s = (0.002 * span).clamp(1e-3, 2.0);
    for _ in 0..STEPS {
        if last.current_a <= charger.taper_a {
            found.tapered = true;
            break;
        }
        if last.charge >= charger.target || last.time_s >= charger.until_s {
            break;
        }
        let decay = Decay::new(&cell.shape, step_s);
        // The mean that holds the voltage depends on itself, nearly in a straight line: by secants,
        // as going back and forth may not end where the resistance is great.
        let off = |mean: f64| {
            let source = cell.source(&state, &decay, -mean);
            (charger.hold_v - source.open_v) / source.resistance_ohm.max(1e-9) - mean
        };
        let (mut before, mut off_before) = (last.current_a, off(last.current_a));
        let mut mean = (before + off_before).max(0.0).min(amps);
        for _ in 0..2 {
            let off_now = off(mean);
            let slope = (off_now - off_before) / (mean - before);
            if !slope.is_finite() || slope >= 0.0 {
                break;
            }
            (before, off_before) = (mean, off_now);
            mean = (mean - off_now / slope).max(0.0).min(amps);
        }
        let after = cell.after(&state, &decay, -mean);
        let next = ChargeMoment {
            time_s: last.time_s + step_s,
            charge: after.charge,
            current_a: now(&after).min(last.current_a),
            volts: charger.hold_v,
        };
        // The share of the step that is needed.
        let mut share = 1.0_f64;
        if next.current_a < charger.taper_a {
            share = (last.current_a - charger.taper_a) / (last.current_a - next.current_a);
        }
        if next.charge > charger.target {
            share = share.min((charger.target - last.charge) / (next.charge - last.charge));
        }
        if next.time_s > charger.until_s {
            share = share.min((charger.until_s - last.time_s) / step_s);
        }
        let part = |a: f64, b: f64| a + share * (b - a);
        let fallen = next.current_a / last.current_a;
        last = ChargeMoment {
            time_s: part(last.time_s, next.time_s),
            charge: part(last.charge, next.charge),
            current_a: part(last.current_a, next.current_a),
            volts: charger.hold_v,
        };
        if share < 1.0 {
            found.tapered = last.current_a <= charger.taper_a * (1.0 + 1e-9);
            break;
        }
        tell(last);
        state = after;
        if fallen > 0.98 {
            step_s *= 1.5;
        } else if fallen < 0.94 {
            step_s *= 0.5;
        }
    }
    tell(last);
    found.end = last;
    found.energy_wh += charger.hold_v * cell.capacity_ah * (last.charge - found.hold.charge);
    found
}
