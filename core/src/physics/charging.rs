//! Charging: constant current, then constant voltage.

use super::cell::{CellInTime, CellState, Decay, OpenCircuit};
use super::hold::{Between, Holding};
use crate::math::{cbrt, root};

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
    TaperCurrent = "Charger stops at", "I_taper" = "0.05 Q / 1 h", Ampere, PRACTICE;
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
/// Most steps of the constant-voltage part; 10 to 40 are taken.
const STEPS: u32 = 4000;
/// Its first step, s.
const FIRST_STEP_S: f64 = 5.0;
/// A step as short as this is taken whatever its error, s.
const LEAST_STEP_S: f64 = 1e-3;
/// Moments told of each.
const BETWEEN: u32 = 3;

/// Charges a rested cell, telling each moment on the way.
///
/// The constant current is in closed form, its end a root to 1e-6 of its time. The constant voltage
/// goes in implicit steps of the third order, as long as their error allows.
pub fn charge_cell<O: OpenCircuit>(
    cell: &CellInTime<O>,
    start: f64,
    charger: &CellCharger,
    mut tell: impl FnMut(ChargeMoment),
) -> CellCharge {
    let (state, mut found, holds) = constant_current(cell, start, charger, &mut tell);
    if holds && found.end.charge < charger.target && found.end.time_s < charger.until_s {
        constant_voltage(cell, &state, charger, &mut found, &mut tell);
    }
    found
}

/// Constant current from rest, until the target, the time, or the voltage is met; tells whether it
/// was the voltage.
fn constant_current<O: OpenCircuit>(
    cell: &CellInTime<O>,
    start: f64,
    charger: &CellCharger,
    tell: &mut impl FnMut(ChargeMoment),
) -> (CellState, CellCharge, bool) {
    let (rested, amps) = (CellState::rested(start), charger.current_a);
    let at = |time_s: f64| cell.after(&rested, &Decay::new(&cell.shape, time_s), -amps);
    let moment = |time_s: f64| {
        let state = at(time_s);
        // The end is a root: a hair beyond what the charger holds.
        let volts = cell.volts(&state, -amps).min(charger.hold_v);
        ChargeMoment { time_s, charge: state.charge, current_a: amps, volts }
    };
    let span_s = 3600.0 * cell.capacity_ah * (charger.target - start) / amps;
    let span_s = span_s.min(charger.until_s).max(0.0);
    let over = |time_s: f64| cell.volts(&at(time_s), -amps) - charger.hold_v;
    let (end_s, holds) = if over(0.0) >= 0.0 {
        (0.0, true)
    } else if over(span_s) <= 0.0 {
        (span_s, false)
    } else {
        (root(0.0, span_s, 1e-6 * span_s, over), true)
    };
    let mut joule = 0.0;
    for k in (0..=POINTS).filter(|_| end_s > 0.0) {
        // The last at the end itself, not a rounding beside it.
        let time_s = if k == POINTS { end_s } else { end_s * f64::from(k) / f64::from(POINTS) };
        let point = moment(time_s);
        let weight = match k {
            0 | POINTS => 1.0,
            k if k % 2 == 1 => 4.0,
            _ => 2.0,
        };
        joule += weight * point.volts * amps * end_s / f64::from(3 * POINTS);
        tell(point);
    }
    let end = moment(end_s);
    let found = CellCharge { hold: end, end, energy_wh: joule / 3600.0, tapered: false };
    (at(end_s), found, holds)
}

/// Constant voltage from a state, until the current has tapered off, the target or the time.
fn constant_voltage<O: OpenCircuit>(
    cell: &CellInTime<O>,
    state: &CellState,
    charger: &CellCharger,
    found: &mut CellCharge,
    tell: &mut impl FnMut(ChargeMoment),
) {
    let holding = Holding { cell, hold_v: charger.hold_v };
    let mut from = holding.at(state);
    let mut now = ChargeMoment { volts: charger.hold_v, ..found.end };
    if now.time_s <= 0.0 {
        now.current_a = from.current_a.max(0.0).min(charger.current_a);
        found.hold = now;
        tell(now);
    }
    let begun = now.charge;
    found.tapered = now.current_a <= charger.taper_a;
    let mut ended = found.tapered;
    let mut step_s = FIRST_STEP_S;
    for _ in 0..STEPS {
        if ended {
            break;
        }
        let left_s = charger.until_s - now.time_s;
        let taken_s = step_s.min(left_s);
        let (to, error) = holding.step(&from, taken_s);
        // By how much a step of the third order may grow or must shrink.
        step_s = taken_s * (0.9 / cbrt(error.max(1e-6))).clamp(0.2, 3.0);
        if error > 1.0 && taken_s > LEAST_STEP_S {
            continue;
        }
        let way = Between { from: &from, to: &to, step_s: taken_s };
        let (part, end) = way_taken(&way, charger);
        now = tell_way(&way, part, now, tell);
        match end {
            Some(Way::Target) => now.charge = charger.target,
            Some(Way::Taper) => found.tapered = true,
            None if taken_s >= left_s => now.time_s = charger.until_s,
            None => {}
        }
        ended = end.is_some() || taken_s >= left_s;
        tell(now);
        from = to;
    }
    found.end = now;
    found.energy_wh += charger.hold_v * cell.capacity_ah * (now.charge - begun);
}

/// Tells the moments within the part of a step that is taken; gives its end.
fn tell_way(
    way: &Between<'_>,
    part: f64,
    begin: ChargeMoment,
    tell: &mut impl FnMut(ChargeMoment),
) -> ChargeMoment {
    let mut now = begin;
    for k in 1..=BETWEEN {
        let at = part * f64::from(k) / f64::from(BETWEEN);
        now = ChargeMoment {
            time_s: begin.time_s + at * way.step_s,
            // A cubic between two ends may turn back by its own error.
            charge: way.charge(at).max(now.charge),
            current_a: way.current_a(at).max(0.0).min(now.current_a),
            ..begin
        };
        if k < BETWEEN {
            tell(now);
        }
    }
    now
}

/// What ends the constant voltage amid a step.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Way {
    Taper,
    Target,
}

/// The part of a step that is taken, and what ends it before it is whole.
fn way_taken(way: &Between<'_>, charger: &CellCharger) -> (f64, Option<Way>) {
    let mut found = (1.0, None);
    if way.to.current_a <= charger.taper_a {
        let part = root(0.0, 1.0, 1e-9, |part| way.current_a(part) - charger.taper_a);
        found = (part, Some(Way::Taper));
    }
    if way.to.charge() >= charger.target {
        let part = root(0.0, 1.0, 1e-9, |part| way.charge(part) - charger.target);
        if part < found.0 || found.1.is_none() {
            found = (part, Some(Way::Target));
        }
    }
    found
}
