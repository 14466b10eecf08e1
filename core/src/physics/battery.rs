//! The pack as a source: open circuit, resistance, and what a power draws.

use crate::math::{exp, sqrt};

law! {
    /// Current, A, that a constant power draws from a source with resistance.
    ///
    /// Not finite beyond the source's greatest power `V² / 4R`; ask
    /// [`GREATEST_POWER`] first. Source: the smaller root of `P = I (V − I R)`,
    /// written so that it stays exact for small resistance.
    ///
    /// ```
    /// use pitchline_core::physics::battery::CURRENT;
    /// assert!((CURRENT.of([44.4, 0.072, 1500.0]) - 35.870_287_93).abs() < 1e-8);
    /// assert!(CURRENT.of([44.4, 0.072, 7000.0]).is_nan());
    /// ```
    CURRENT = "Pack current", "I_b" = "(V − √(V² − 4 R P)) / 2R", Ampere, CIRCUIT;
    open: "V" Volt, resistance: "R" Ohm, power: "P" Watt =>
        2.0 * power / (open + sqrt(open * open - 4.0 * resistance * power))
}

law! {
    /// The most power, W, that a source with resistance can give.
    ///
    /// ```
    /// let p = pitchline_core::physics::battery::GREATEST_POWER.of([36.0, 0.09]);
    /// assert!((p - 3600.0).abs() < 1e-9);
    /// ```
    GREATEST_POWER = "Most that the pack can give", "P_max" = "V² / 4R", Watt, CIRCUIT;
    open: "V" Volt, resistance: "R" Ohm => open * open / (4.0 * resistance)
}

law! {
    /// Voltage at the controller, V.
    BUS = "Voltage at the controller", "V_bus" = "V − I_b R", Volt, CIRCUIT;
    open: "V" Volt, current: "I_b" Ampere, resistance: "R" Ohm => open - current * resistance
}

law! {
    /// Open-circuit voltage of a pack, V, from one cell's.
    OPEN = "Open-circuit voltage of the pack", "V" = "S V_cell", Volt, CELL_MODEL;
    series: "S" Cells, cell: "V_cell" Volt => series * cell
}

law! {
    /// Resistance of one cell, ohm, about a minute into a push: the ohmic part
    /// and the quick branch of the cell model.
    CELL_BURST = "Cell resistance in a push", "R_push" = "R_10s k_temperature k_age (s_0 + s_1)", Ohm, CELL_MODEL;
    rated: "R_10s" Ohm, cold: "k_temperature" None, age: "k_age" None, ohmic: "s_0" None, quick: "s_1" None =>
        rated * cold * age * (ohmic + quick)
}

law! {
    /// Resistance of one cell, ohm, once the slow branch has settled too: the
    /// number for range, about twice the ten-second one, and growing toward empty.
    CELL_SUSTAINED = "Cell resistance held for long", "R_cell" = "R_push + R_10s k_temperature k_age s_2 (1 + a k_lag exp(−z / b))", Ohm, CELL_MODEL;
    push: "R_push" Ohm, rated: "R_10s" Ohm, cold: "k_temperature" None, age: "k_age" None,
    slow: "s_2" None, gain: "a" None, lag: "k_lag" None, charge: "z" None, scale: "b" None =>
        push + rated * cold * age * slow * (1.0 + gain * lag * exp(-charge / scale))
}

law! {
    /// Resistance between cells and controller, ohm.
    LEADS = "Resistance of joints and wires", "R_leads" = "R_joints + R_wire", Ohm, CIRCUIT;
    joints: "R_joints" Ohm, wire: "R_wire" Ohm => joints + wire
}

law! {
    /// Resistance of a pack with its leads, ohm.
    RESISTANCE = "Resistance of pack and leads", "R" = "S R_cell / P + R_leads", Ohm, CIRCUIT;
    series: "S" Cells, parallel: "P" Cells, cell: "R_cell" Ohm, leads: "R_leads" Ohm =>
        series * cell / parallel + leads
}

law! {
    /// Capacity of a pack, Ah, as aged and as cold as it is.
    CAPACITY = "Capacity of the pack", "Q" = "P Q_cell k_temperature k_age", AmpereHour, CELL_MODEL;
    parallel: "P" Cells, cell: "Q_cell" AmpereHour, cold: "k_temperature" None, age: "k_age" None =>
        parallel * cell * cold * age
}

law! {
    /// Nameplate energy of a pack, Wh.
    ///
    /// ```
    /// // 10 in series, 9 Ah at 3.6 V nominal: 324 Wh.
    /// let e = pitchline_core::physics::battery::NAMEPLATE.of([10.0, 3.0, 3.0, 3.6]);
    /// assert_eq!(e, 324.0);
    /// ```
    NAMEPLATE = "Nameplate energy", "E" = "S P Q_cell V_nominal", WattHour, MECHANICS;
    series: "S" Cells, parallel: "P" Cells, cell: "Q_cell" AmpereHour, nominal: "V_nominal" Volt =>
        series * parallel * cell * nominal
}

law! {
    /// Distance, m, at a steady speed from the charge spent and the mean
    /// current, which is the harmonic mean over that charge.
    DISTANCE = "Distance", "D" = "v 3600 Q (z_start − z_end) / I_mean", Metre, MECHANICS;
    speed: "v" MetrePerSecond, capacity: "Q" AmpereHour, start: "z_start" None, end: "z_end" None, mean: "I_mean" Ampere =>
        speed * 3600.0 * capacity * (start - end) / mean
}
