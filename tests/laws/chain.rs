//! The steps of a working hang together: a symbol means one thing in it, and
//! every number put in is a result of an earlier step or was given.

use crate::board::{any_board, likely_board};
use crate::cases;
use crate::charge::chargeable;
use pitchline_core::physics::symbol::SYMBOLS;
use pitchline_core::ride::explain_for_ever;
use pitchline_core::{
    Build, ChargeLimit, Drive, Headline, Limit, Step, answers, explain, explain_charge,
};
use proptest::prelude::*;
use std::collections::HashMap;
use std::fmt::Debug;

/// What may be put in without a step before it: figures of the parts, the
/// rider, the place and the ride, and what a table or a search gives.
const GIVEN: &[&str] = &[
    // Parts.
    "Z_wheel",
    "Z_motor",
    "Kv",
    "R_20",
    "p",
    "L",
    "I_0",
    "k_h",
    "ω_0",
    "I_rated",
    "d_wheel",
    "δ",
    "C_smooth",
    "k_rough",
    "η",
    "pitch",
    // Belt, its pulleys and its mount.
    "f_rated",
    "b",
    "Z_1",
    "Z_2",
    "Z_belt",
    "m_belt",
    "ρ_belt",
    "C_min",
    "C_max",
    "C_measured",
    "k_t",
    "F_test",
    "gauge",
    "L_wire",
    "R_joints",
    "N_s",
    "N_p",
    "Q_cell",
    "R_10s",
    "I_cell",
    "I_protection",
    "V_cut",
    "L_base",
    "n",
    "m_board",
    // The controller.
    "D_max",
    "erpm_max",
    "I_set",
    "I_brake",
    "I_battery",
    "V_start",
    "V_end",
    "k_sw",
    "P_idle",
    "R_switch",
    "k_Cu",
    "k_on",
    "t_hot",
    "R_sink",
    // Heat of a motor.
    "R_still",
    "R_inner",
    "t_most",
    // Rider, place and ride.
    "m_rider",
    "m_load",
    "h_c",
    "CdA",
    "h",
    "t",
    "t_w",
    "s",
    "μ",
    "w",
    "k_mode",
    "v_cap",
    "z_start",
    "cos α",
    "sin α",
    // The charger and what the wall costs.
    "I_charger",
    "I_take",
    "η_charger",
    "price",
    // Tables of the cell's chemistry.
    "V_cell",
    "q_cold",
    "q_age",
    "k_cold",
    "k_age",
    "s_0",
    "s_1",
    "s_2",
    "g_1",
    "g_2",
    "l_1",
    "l_2",
    "l_top",
    "k_lag",
    "z",
    // For how long, and at which current, a supply is asked for.
    "c_carried",
    "t_carried",
    // The speed asked about or found, and what is searched for below: the
    // greatest current where the voltage binds, and where a charge ends.
    "v",
    "z_end",
    "V_bus_lim",
    "V_motor_lim",
    // What a ride and a charge in steps of time give.
    "t_ride",
    "v_mean",
    "z_hold",
    "I_hold",
    "V_charge",
];

/// Whether a working of this limit may put in its greatest current unexplained.
fn searched(symbol: &str, steps: &[Step]) -> bool {
    symbol == "I_lim" && steps.iter().any(|step| step.formula.symbol == "V_spare")
}

fn hangs_together(headline: impl Debug, steps: &[Step]) -> Result<(), TestCaseError> {
    let mut results: HashMap<&str, f64> = HashMap::new();
    let mut values: HashMap<&str, f64> = HashMap::new();
    for step in steps {
        for (symbol, value, unit) in &step.inputs {
            prop_assert!(SYMBOLS.contains(&(*symbol, *unit)), "{headline:?}: {step:?}");
            match results.get(symbol) {
                Some(result) => {
                    prop_assert_eq!(value, result, "{:?}: {} in {:?}", headline, symbol, step)
                }
                // The bus voltage is solved with the power that it takes part in;
                // the step after next shows that it is right.
                None => prop_assert!(
                    GIVEN.contains(symbol) || *symbol == "V_bus" || searched(symbol, steps),
                    "{headline:?}: where does {symbol} come from? {step:?}"
                ),
            }
            one_value(&mut values, symbol, *value, &headline)?;
        }
        let (symbol, unit) = (step.formula.symbol, step.formula.unit);
        prop_assert!(SYMBOLS.contains(&(symbol, unit)), "{headline:?}: {step:?}");
        prop_assert!(!GIVEN.contains(&symbol), "{headline:?}: {symbol} is a result: {step:?}");
        prop_assert!(results.insert(symbol, step.result).is_none(), "{headline:?}: {symbol} twice");
        one_value(&mut values, symbol, step.result, &headline)?;
    }
    Ok(())
}

/// A symbol has one value; `V_bus` may differ in its last digits, as near the
/// most power of a pack a root is found from a small difference.
fn one_value(
    values: &mut HashMap<&'static str, f64>,
    symbol: &'static str,
    value: f64,
    headline: &impl Debug,
) -> Result<(), TestCaseError> {
    let known = *values.entry(symbol).or_insert(value);
    let within = if symbol == "V_bus" { 1e-5 } else { 1e-9 };
    let same = (known - value).abs() <= within * known.abs();
    prop_assert!(same, "{headline:?}: {symbol} is {known} and {value}");
    Ok(())
}

/// The name of the step that shows a limit's own number.
fn own_step(limit: Limit) -> &'static str {
    match limit {
        Limit::ControllerMotorCurrent => "Motor current limit of the controller",
        Limit::MotorCurrent => "Motor's current rating",
        Limit::ControllerBatteryCurrent => "Battery current limit of the controllers",
        Limit::PackProtection => "Protection circuit limit",
        Limit::CellRating => "Current limit of the cells",
        Limit::PackPower => "Pack current at maximum power",
        Limit::Cutback => "Pack current that voltage limiting allows",
        Limit::CutOff => "Pack current at cut-off",
        Limit::Voltage => "Voltage left over at maximum current",
        Limit::ElectricalSpeed => "ERPM limit",
        Limit::Belt => "Torque the belt can carry",
        Limit::Grip => "Push the tyres can hold",
        Limit::ModeSpeed => "Speed cap of the mode",
        Limit::Empty
        | Limit::ControllerHot
        | Limit::WindingHot
        | Limit::BrakeCurrent
        | Limit::RegenCurrent
        | Limit::OverVoltage
        | Limit::Crawl => "none",
    }
}

const OWN: [Limit; 13] = [
    Limit::ControllerMotorCurrent,
    Limit::MotorCurrent,
    Limit::ControllerBatteryCurrent,
    Limit::PackProtection,
    Limit::CellRating,
    Limit::PackPower,
    Limit::Cutback,
    Limit::CutOff,
    Limit::Voltage,
    Limit::ElectricalSpeed,
    Limit::Belt,
    Limit::Grip,
    Limit::ModeSpeed,
];

/// What a limit's own step must give, from the build alone where it is a figure of a part.
fn own_number(build: &Build, limit: Limit) -> Option<f64> {
    let motors = build.truck.motor_count;
    match limit {
        Limit::ControllerMotorCurrent => Some(build.controller.motor_current_a),
        Limit::MotorCurrent => Some(build.motor.max_current_a),
        Limit::ControllerBatteryCurrent => Some(motors * build.controller.battery_current_a),
        Limit::PackProtection => Some(build.pack.protection_a),
        Limit::CellRating => Some(build.pack.parallel * build.cell.max_discharge_a),
        Limit::ElectricalSpeed => Some(0.0),
        _ => None,
    }
}

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn every_working_hangs_together(board in any_board()) {
        let build = board.build();
        for headline in Headline::ALL {
            hangs_together(headline, &explain(&build, headline))?;
        }
    }

    #[test]
    fn the_working_of_a_likely_board_hangs_together(board in likely_board()) {
        let build = board.build();
        for headline in Headline::ALL {
            hangs_together(headline, &explain(&build, headline))?;
        }
    }

    /// So does that of a charge, from anywhere to anywhere.
    #[test]
    fn the_working_of_a_charge_hangs_together(
        board in any_board(),
        from in 0.0..=1.0_f64,
        to in 0.0..=1.0_f64,
    ) {
        let board = chargeable(&board);
        let (build, drive) = (board.build(), board.drive());
        let steps = explain_charge(&build, from, to).expect("the charger is the pack's");
        hangs_together("charge", &steps)?;
        // It says what the answer says.
        let found = drive.charge(from, to).expect("as before");
        let result = |symbol| steps.iter().find(|s| s.formula.symbol == symbol).map(|s| s.result);
        prop_assert_eq!(result("t_charge"), Some(found.time_s));
        prop_assert_eq!(result("E_wall"), Some(found.wall_wh));
        prop_assert_eq!(result("cost"), found.cost);
        // The lesser of the two sets the current, and the answer names it.
        let cells = build.pack.parallel * build.cell.max_charge_a;
        let by_charger = found.limit == ChargeLimit::Charger;
        prop_assert_eq!(by_charger, build.charger.current_a <= cells);
    }

    /// The hill that is held for ever: its working leads to it where the windings are what limits it.
    #[test]
    fn the_working_of_a_hill_held_for_ever_hangs_together(
        board in prop_oneof![any_board(), likely_board()],
        speed in 1.0..=15.0_f64,
    ) {
        let build = board.build();
        let steps = explain_for_ever(&build, speed);
        hangs_together("for ever", &steps)?;
        let found = Drive::new(&build).steepest_for_ever(speed);
        let last = steps.last().map(|step| step.result);
        prop_assert_eq!(last, Some(found.grade), "{:?}", found);
        let own = match found.limit {
            Limit::WindingHot => "Continuous motor current, limited by winding heat",
            Limit::ControllerHot => "Continuous motor current, limited by controller heat",
            limit => own_step(limit),
        };
        prop_assert!(steps.iter().any(|step| step.formula.name == own), "{found:?}");
    }

    /// Of all limits a hill's working shows the one that binds, with its number.
    #[test]
    fn the_limit_that_binds_is_shown_and_no_other(board in any_board()) {
        let build = board.build();
        let climb = answers(&build).climb;
        for (headline, found) in [
            (Headline::ClimbCrawl, climb.crawl),
            (Headline::ClimbSlow, climb.slow),
            (Headline::ClimbBrisk, climb.brisk),
            (Headline::ClimbSlowLow, climb.slow_low),
        ] {
            let steps = explain(&build, headline);
            for limit in OWN {
                let own = steps.iter().find(|step| step.formula.name == own_step(limit));
                prop_assert_eq!(own.is_some(), limit == found.limit, "{:?} {:?}", found, limit);
                if let (Some(step), Some(number)) = (own, own_number(&build, limit)) {
                    let near = (step.result - number).abs() <= 1e-12 * number;
                    prop_assert!(near, "{limit:?}: {step:?} {number}");
                }
            }
        }
    }

    /// A top speed ends where a limit of the push lets it, or at the end of what
    /// motors, controller or mode allow; its working shows which.
    #[test]
    fn the_limit_of_a_top_speed_is_shown(board in any_board()) {
        let build = board.build();
        let speed = answers(&build).speed;
        for (headline, found) in [
            (Headline::TopSpeed, speed.flat_full),
            (Headline::TopSpeedLow, speed.flat_low),
            (Headline::TopSpeedOnGrade, speed.on_grade),
            (Headline::TopSpeedLowMode, speed.modes[0]),
        ] {
            let steps = explain(&build, headline);
            let own = steps.iter().any(|step| step.formula.name == own_step(found.limit));
            let end = steps.iter().find(|step| step.formula.symbol == "v_end");
            let ends_there = end.is_some_and(|step| step.result == found.speed_m_s);
            // Where a board cannot move, the limit is that of a hair's breadth of speed.
            let stands = found.speed_m_s == 0.0;
            prop_assert!(own || ends_there || stands, "{found:?} {steps:?}");
        }
    }
}
