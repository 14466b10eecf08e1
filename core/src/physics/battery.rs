//! The pack as a source: open circuit, resistance, and what a power draws.

use crate::math::sqrt;

law! {
    /// Current, A, that a constant power draws from a source with resistance.
    ///
    /// Not finite beyond the source's greatest power `V² / 4R`; ask
    /// [`GreatestPackPower`] first. Source: the smaller root of `P = I (V − I R)`,
    /// written so that it stays exact for small resistance.
    ///
    /// ```
    /// use pitchline_core::physics::battery::PackCurrent;
    /// let current = PackCurrent { open: 44.4, resistance: 0.072, power: 1500.0 };
    /// assert!((current.value() - 35.870_287_93).abs() < 1e-8);
    /// assert!(PackCurrent { open: 44.4, resistance: 0.072, power: 7000.0 }.value().is_nan());
    /// ```
    PackCurrent = "Pack current", "I_pack" = "(V_pack − √(V_pack² − 4 R_pack P_in)) / 2R_pack", Ampere, CIRCUIT;
    open: "V_pack" Volt, resistance: "R_pack" Ohm, power: "P_in" Watt =>
{
        let square = open * open - 4.0 * resistance * power;
        // At the very most, rounding may ask for a hair beyond it.
        let square = if square > -1e-12 * open * open { square.max(0.0) } else { square };
        2.0 * power / (open + sqrt(square))
    }
}

law! {
    /// The most power, W, that a source with resistance can give.
    ///
    /// ```
    /// use pitchline_core::physics::battery::GreatestPackPower;
    /// let p = GreatestPackPower { open: 36.0, resistance: 0.09 }.value();
    /// assert!((p - 3600.0).abs() < 1e-9);
    /// ```
    GreatestPackPower = "Maximum pack power", "P_max" = "V_pack² / 4R_pack", Watt, CIRCUIT;
    open: "V_pack" Volt, resistance: "R_pack" Ohm => open * open / (4.0 * resistance)
}

law! {
    /// Voltage at the controller, V.
    BusVoltage = "Voltage at the controller", "V_bus" = "V_pack − I_pack R_pack", Volt, CIRCUIT;
    open: "V_pack" Volt, current: "I_pack" Ampere, resistance: "R_pack" Ohm => open - current * resistance
}

law! {
    /// Open-circuit voltage of a pack, V, from one cell's.
    OpenCircuitVoltage = "Open-circuit voltage of the pack", "V_pack" = "N_s V_cell", Volt, CELL_MODEL;
    series: "N_s" Cells, cell: "V_cell" Volt => series * cell
}

law! {
    /// Current, A, that a cell has carried before it is asked for more: a rate in capacities an hour.
    ///
    /// ```
    /// // 4C of a pack of 9 Ah, three beside each other.
    /// use pitchline_core::physics::battery::CarriedCurrent;
    /// assert_eq!(CarriedCurrent { rate: 4.0, capacity: 9.0, parallel: 3.0 }.value(), 12.0);
    /// ```
    CarriedCurrent = "Current that each cell has carried", "I_carried" = "c_carried Q / N_p", Ampere, CELL_MODEL;
    rate: "c_carried" None, capacity: "Q" AmpereHour, parallel: "N_p" Cells => rate * capacity / parallel
}

law! {
    /// How far the charge at the particles' surface falls behind the charge at the start, for each
    /// ampere of a cell's current, 1/A: the lag of the two branches, and what the current spends.
    ///
    /// ```
    /// // By hand: 0.02 Ω · 1.5 · 1.1 (0.2 / V · 0.5 + 1 / V · 0.1) + 10 s · 3 / (3600 · 9 Ah).
    /// let l = pitchline_core::physics::battery::SurfaceLag {
    ///     rated: 0.02, cold: 1.5, age: 1.1, lag_1: 0.2, on_1: 0.5, lag_2: 1.0, on_2: 0.1,
    ///     time: 10.0, parallel: 3.0, capacity: 9.0,
    /// };
    /// assert!((l.value() - (0.0066 + 30.0 / 32_400.0)).abs() < 1e-12);
    /// ```
    SurfaceLag = "Lag of the charge at the surface, per ampere", "λ" = "R_10s k_lag k_age (l_1 g_1 + l_2 g_2) + t_carried N_p / (3600 Q)", PerAmpere, CELL_MODEL;
    rated: "R_10s" Ohm, cold: "k_lag" None, age: "k_age" None, lag_1: "l_1" PerVolt, on_1: "g_1" None,
    lag_2: "l_2" PerVolt, on_2: "g_2" None, time: "t_carried" Second, parallel: "N_p" Cells, capacity: "Q" AmpereHour =>
        rated * cold * age * (lag_1 * on_1 + lag_2 * on_2) + time * parallel / (3600.0 * capacity)
}

law! {
    /// Charge at the surface of the particles, which the open-circuit voltage follows: less than 0
    /// where the cell cannot have carried so much.
    ///
    /// ```
    /// use pitchline_core::physics::battery::SurfaceCharge;
    /// let z = SurfaceCharge { charge: 1.0, behind: 0.002, current: 10.0 };
    /// assert!((z.value() - 0.98).abs() < 1e-12);
    /// ```
    SurfaceCharge = "Charge at the particles' surface", "z_surface" = "z − λ I_carried", None, CELL_MODEL;
    charge: "z" None, behind: "λ" PerAmpere, current: "I_carried" Ampere => charge - behind * current
}

law! {
    /// The same of the second surface of a cell that has two, LFP: above a knee its voltage is read
    /// there.
    ///
    /// ```
    /// // By hand: 0.02 Ω · 1.5 · 1.1 · 0.2 / V · 0.5 + 10 s · 3 / (3600 · 9 Ah).
    /// let l = pitchline_core::physics::battery::TopLag {
    ///     rated: 0.02, cold: 1.5, age: 1.1, lag: 0.2, on: 0.5, time: 10.0, parallel: 3.0, capacity: 9.0,
    /// };
    /// assert!((l.value() - (0.0033 + 30.0 / 32_400.0)).abs() < 1e-12);
    /// ```
    TopLag = "Lag of charge at the second surface (LFP)", "λ_top" = "R_10s k_lag k_age l_top g_1 + t_carried N_p / (3600 Q)", PerAmpere, CELL_MODEL;
    rated: "R_10s" Ohm, cold: "k_lag" None, age: "k_age" None, lag: "l_top" PerVolt, on: "g_1" None,
    time: "t_carried" Second, parallel: "N_p" Cells, capacity: "Q" AmpereHour =>
        rated * cold * age * lag * on + time * parallel / (3600.0 * capacity)
}

law! {
    /// Charge at the second surface of a cell that has two.
    ///
    /// ```
    /// use pitchline_core::physics::battery::TopCharge;
    /// let z = TopCharge { charge: 1.0, behind: 0.002, current: 10.0 };
    /// assert!((z.value() - 0.98).abs() < 1e-12);
    /// ```
    TopCharge = "Charge at the second surface (LFP)", "z_top" = "z − λ_top I_carried", None, CELL_MODEL;
    charge: "z" None, behind: "λ_top" PerAmpere, current: "I_carried" Ampere => charge - behind * current
}

law! {
    /// Resistance of one cell, ohm: what is there at once, and what the two branches have built up.
    ///
    /// ```
    /// // By hand: 0.02 Ω · 1.1 (0.7 + 0.3 · 0.5 + 1 · 0.1).
    /// let r = pitchline_core::physics::battery::CellResistance {
    ///     rated: 0.02, cold: 1.0, age: 1.1, ohmic: 0.7, quick: 0.3, on_1: 0.5, slow: 1.0, on_2: 0.1,
    /// };
    /// assert!((r.value() - 0.0209).abs() < 1e-12);
    /// ```
    CellResistance = "Cell resistance", "R_cell" = "R_10s k_cold k_age (s_0 + s_1 g_1 + s_2 g_2)", Ohm, CELL_MODEL;
    rated: "R_10s" Ohm, cold: "k_cold" None, age: "k_age" None, ohmic: "s_0" None, quick: "s_1" None,
    on_1: "g_1" None, slow: "s_2" None, on_2: "g_2" None =>
        rated * cold * age * (ohmic + quick * on_1 + slow * on_2)
}

law! {
    /// Resistance between cells and controller, ohm.
    LeadResistance = "Resistance of joints and wires", "R_leads" = "R_joints + R_wire", Ohm, CIRCUIT;
    joints: "R_joints" Ohm, wire: "R_wire" Ohm => joints + wire
}

law! {
    /// Resistance of a pack with its leads, ohm.
    PackResistance = "Resistance of pack and leads", "R_pack" = "N_s R_cell / N_p + R_leads", Ohm, CIRCUIT;
    series: "N_s" Cells, parallel: "N_p" Cells, cell: "R_cell" Ohm, leads: "R_leads" Ohm =>
        series * cell / parallel + leads
}

law! {
    /// Capacity of a pack, Ah, as aged and as cold as it is.
    PackCapacity = "Capacity of the pack", "Q" = "N_p Q_cell q_cold q_age", AmpereHour, CELL_MODEL;
    parallel: "N_p" Cells, cell: "Q_cell" AmpereHour, cold: "q_cold" None, age: "q_age" None =>
        parallel * cell * cold * age
}

law! {
    /// Nameplate energy of a pack, Wh.
    ///
    /// ```
    /// // 12 in series, 15 Ah at 3.6 V nominal: 648 Wh.
    /// use pitchline_core::physics::battery::NameplateEnergy;
    /// let e = NameplateEnergy { series: 12.0, parallel: 3.0, cell: 5.0, nominal: 3.6 }.value();
    /// assert_eq!(e, 648.0);
    /// ```
    NameplateEnergy = "Nameplate energy", "E" = "N_s N_p Q_cell V_nominal", WattHour, MECHANICS;
    series: "N_s" Cells, parallel: "N_p" Cells, cell: "Q_cell" AmpereHour, nominal: "V_nominal" Volt =>
        series * parallel * cell * nominal
}

law! {
    /// Power into the controllers, W, with each motor at a current: work and
    /// iron, copper and switches that conduct, switching, idling.
    ///
    /// ```
    /// // By hand: 2 (200 + 6 + 4 + 1) W.
    /// use pitchline_core::physics::battery::InputPower;
    /// let p = InputPower {
    ///     motors: 2.0, constant: 0.05, current: 10.0, omega: 400.0, heat: 0.06,
    ///     switching: 0.01, bus: 40.0, idle: 1.0,
    /// }.value();
    /// assert!((p - 422.0).abs() < 1e-9);
    /// ```
    InputPower = "Power into the controllers", "P_in" = "n (k_T I ω + R_heat I² + k_sw V_bus I + P_idle)", Watt, CIRCUIT;
    motors: "n" Count, constant: "k_T" NewtonMetrePerAmpere, current: "I" Ampere, omega: "ω" RadianPerSecond,
    heat: "R_heat" Ohm, switching: "k_sw" None, bus: "V_bus" Volt, idle: "P_idle" Watt =>
        motors * (constant * current * omega + heat * current * current + switching * bus * current + idle)
}

law! {
    /// The controllers' limit of the pack current, A.
    ControllerPackLimit = "Battery current limit of the controllers", "I_max" = "n k_mode I_battery", Ampere, MECHANICS;
    motors: "n" Count, mode: "k_mode" None, set: "I_battery" Ampere => motors * mode * set
}

law! {
    /// The protection circuit's limit of the pack current, A.
    ProtectionLimit = "Protection circuit limit", "I_max" = "I_protection", Ampere, MECHANICS;
    set: "I_protection" Ampere => set
}

law! {
    /// The cells' limit of the pack current, A.
    CellLimit = "Current limit of the cells", "I_max" = "N_p I_cell", Ampere, MECHANICS;
    parallel: "N_p" Cells, cell: "I_cell" Ampere => parallel * cell
}

law! {
    /// Pack current, A, at which a pack gives its most power.
    PackPowerLimit = "Pack current at maximum power", "I_max" = "V_pack / 2R_pack", Ampere, CIRCUIT;
    open: "V_pack" Volt, resistance: "R_pack" Ohm => open / (2.0 * resistance)
}

law! {
    /// Pack current, A, at which the protection circuit would disconnect.
    CutOffLimit = "Pack current at cut-off", "I_max" = "(V_pack − N_s V_cut) / R_pack", Ampere, CIRCUIT;
    open: "V_pack" Volt, series: "N_s" Cells, cut: "V_cut" Volt, resistance: "R_pack" Ohm =>
        (open - series * cut) / resistance
}

law! {
    /// Pack current, A, at which the controllers' cutback settles: where its
    /// line, from the full limit down to nothing, crosses the sag of the pack.
    ///
    /// ```
    /// // 50 A fall to nothing from 33 V to 30 V: 15.625 A at 30.9375 V.
    /// use pitchline_core::physics::battery::CutbackLimit;
    /// let i = CutbackLimit {
    ///     motors: 2.0, mode: 1.0, set: 25.0, series: 10.0, start: 3.3, end: 3.0, open: 32.5,
    ///     resistance: 0.1,
    /// }.value();
    /// assert!((i - 15.625).abs() < 1e-9);
    /// ```
    CutbackLimit = "Pack current that voltage limiting allows", "I_max" =
        "A (V_pack − N_s V_end) / (1 + A R_pack), A = n k_mode I_battery / (N_s (V_start − V_end))", Ampere, CIRCUIT;
    motors: "n" Count, mode: "k_mode" None, set: "I_battery" Ampere, series: "N_s" Cells, start: "V_start" Volt, end: "V_end" Volt, open: "V_pack" Volt, resistance: "R_pack" Ohm => {
        // A cutback as steep as a step is taken as a hundredth of a volt wide.
        let slope = motors * mode * set / (series * (start - end).max(0.01));
        slope * (open - series * end) / (1.0 + slope * resistance)
    }
}

law! {
    /// Mean pack current of a ride, A, from the charge that it spent.
    ///
    /// ```
    /// // 80 % of 9 Ah in two hours.
    /// use pitchline_core::physics::battery::MeanPackCurrent;
    /// let i = MeanPackCurrent { capacity: 9.0, start: 1.0, end: 0.2, time: 7200.0 };
    /// assert!((i.value() - 3.6).abs() < 1e-12);
    /// ```
    MeanPackCurrent = "Average current of the ride", "I_mean" = "3600 Q (z_start − z_end) / t_ride", Ampere, MECHANICS;
    capacity: "Q" AmpereHour, start: "z_start" None, end: "z_end" None, time: "t_ride" Second =>
        3600.0 * capacity * (start - end) / time
}

law! {
    /// Distance, m, from the mean speed of a ride and its time, both of which come from the ride in
    /// steps of time.
    ///
    /// ```
    /// use pitchline_core::physics::battery::RideDistance;
    /// assert_eq!(RideDistance { speed: 6.0, time: 7200.0 }.value(), 43_200.0);
    /// ```
    RideDistance = "Distance", "D" = "v_mean t_ride", Metre, MECHANICS;
    speed: "v_mean" MetrePerSecond, time: "t_ride" Second => speed * time
}
