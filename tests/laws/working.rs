//! The working ends where the answer is.

use crate::board::any_board;
use crate::cases;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Drive, Headline, Limit, Mode, Sag, Supply, TopSpeed, answers, explain};
use proptest::prelude::*;

const FULL: Mode = Mode { current_share: 1.0, speed_cap_m_s: None };

/// A top speed is where push and load cross; at an end of its range the push
/// may be more, and where the board cannot move it is less.
fn crosses(
    drive: &Drive,
    supply: &Supply,
    mode: &Mode,
    slope: Slope,
    top: TopSpeed,
) -> Result<(), TestCaseError> {
    let spare = |v: f64| drive.push(supply, mode, v, slope).force_n - drive.load_n(v, slope);
    if top.speed_m_s == 0.0 {
        prop_assert!(spare(0.02) <= 0.0, "it could move: {top:?}");
        return Ok(());
    }
    // Found to 1e-10 m/s: ten of those below there is push left.
    let (below, above) = (top.speed_m_s * (1.0 - 1e-9) - 1e-9, top.speed_m_s * (1.0 + 1e-9) + 1e-9);
    prop_assert!(spare(below) >= 0.0, "too fast: {top:?} {}", spare(below));
    if top.limit != Limit::ModeSpeed {
        prop_assert!(
            spare(above) <= 0.0 || pushed_along(drive, supply, above),
            "too slow: {top:?} {}",
            spare(above)
        );
    }
    Ok(())
}

/// Beyond what the motors can turn, wind or slope may carry a board on; its
/// own top speed ends there all the same.
fn pushed_along(drive: &Drive, supply: &Supply, speed: f64) -> bool {
    let b = &drive.build;
    let omega = b.wheel_pulley.teeth / b.motor_pulley.teeth * speed / b.wheel.radius_m();
    let rpm = omega * 30.0 / std::f64::consts::PI;
    rpm > b.controller.max_duty * supply.open_v * b.motor.kv_rpm_per_v
        || rpm * b.motor.pole_pairs > b.controller.erpm_limit
}

proptest! {
    #![proptest_config(cases(120))]

    #[test]
    fn a_top_speed_is_where_push_and_load_cross(board in any_board()) {
        let build = board.build();
        let (drive, found) = (Drive::new(&build), answers(&build).speed);
        let full = drive.supply(1.0, Sag::Burst);
        let low = drive.supply(build.ride.low_charge, Sag::Sustained);
        let hill = Slope::of_grade(build.ride.grade);
        let [one, two, three] = build.modes;
        for (headline, supply, mode, slope, top) in [
            (Headline::TopSpeed, &full, FULL, Slope::FLAT, found.flat_full),
            (Headline::TopSpeedLow, &low, FULL, Slope::FLAT, found.flat_low),
            (Headline::TopSpeedOnGrade, &full, FULL, hill, found.on_grade),
            (Headline::TopSpeedLowMode, &full, one, Slope::FLAT, found.modes[0]),
            (Headline::TopSpeedMidMode, &full, two, Slope::FLAT, found.modes[1]),
            (Headline::TopSpeedHighMode, &full, three, Slope::FLAT, found.modes[2]),
        ] {
            crosses(&drive, supply, &mode, slope, top)?;
            let steps = explain(&build, headline);
            let last = steps.last().expect("a working has steps");
            prop_assert_eq!(last.formula.symbol, "F_spare");
            let push = drive.push(supply, &mode, top.speed_m_s, slope).force_n;
            prop_assert_eq!(last.result, push - drive.load_n(top.speed_m_s, slope));
            if top.limit == Limit::ModeSpeed {
                prop_assert!(last.result >= 0.0);
            }
        }
    }

    /// The steps between are about the same ride: every speed in them is the
    /// speed asked about, and the load in them is what the push must meet.
    #[test]
    fn every_step_is_about_the_speed_asked(board in any_board()) {
        let build = board.build();
        let (drive, found) = (Drive::new(&build), answers(&build));
        for (headline, speed) in [
            (Headline::TopSpeed, found.speed.flat_full.speed_m_s),
            (Headline::TopSpeedLow, found.speed.flat_low.speed_m_s),
            (Headline::TopSpeedOnGrade, found.speed.on_grade.speed_m_s),
            (Headline::TopSpeedMidMode, found.speed.modes[1].speed_m_s),
            (Headline::ClimbCrawl, 2.0 / 3.6),
            (Headline::ClimbSlow, 10.0 / 3.6),
            (Headline::ClimbBrisk, 20.0 / 3.6),
            (Headline::ClimbSlowLow, 10.0 / 3.6),
            (Headline::Distance, build.ride.cruise_m_s.min(found.distance.cruise.wish_m_s)),
        ] {
            for step in explain(&build, headline) {
                for (symbol, value, _) in &step.inputs {
                    prop_assert!(*symbol != "v" || *value == speed, "{headline:?}: {step:?}");
                }
            }
        }
        // On the steepest hill the load is the push: the last step's net force
        // and the air's together.
        let steps = explain(&build, Headline::ClimbSlow);
        let load = steps.iter().find(|step| step.formula.symbol == "F").map(|step| step.result);
        let last = steps.last().and_then(|step| step.inputs.first()).map(|input| input.1);
        let air = steps.iter().find(|step| step.formula.symbol == "F_air").map(|step| step.result);
        if let (Some(load), Some(net), Some(air)) = (load, last, air) {
            let weight = 9.806_65 * build.mass_kg();
            // Beyond 45° either way no hill is looked for.
            let held = found.climb.slow.grade.abs() > 0.999 || (load - net - air).abs() < 1e-6 * weight;
            prop_assert!(held, "load {load}, net {net}, air {air}");
        } else {
            prop_assert!(false, "a step is missing: {load:?} {last:?} {air:?}");
        }
        let steps = explain(&build, Headline::TopSpeed);
        let load = steps.iter().find(|step| step.formula.symbol == "F").map(|step| step.result);
        prop_assert_eq!(load, Some(drive.load_n(found.speed.flat_full.speed_m_s, Slope::FLAT)));
    }

    #[test]
    fn a_hill_and_a_distance_are_the_last_step(board in any_board()) {
        let build = board.build();
        let found = answers(&build);
        for (headline, grade) in [
            (Headline::ClimbCrawl, found.climb.crawl.grade),
            (Headline::ClimbSlow, found.climb.slow.grade),
            (Headline::ClimbBrisk, found.climb.brisk.grade),
            (Headline::ClimbSlowLow, found.climb.slow_low.grade),
        ] {
            let steps = explain(&build, headline);
            let last = steps.last().expect("a working has steps");
            prop_assert_eq!((last.formula.symbol, last.result), ("grade", grade));
        }
        let steps = explain(&build, Headline::Distance);
        let last = steps.last().expect("a working has steps");
        // Where the speed cannot be held there is no distance to work out.
        if found.distance.cruise.distance_m > 0.0 {
            prop_assert_eq!(last.formula.symbol, "D");
            // Mean speed times time: the last digit may differ.
            let off = last.result / found.distance.cruise.distance_m - 1.0;
            prop_assert!(off.abs() < 1e-12, "{off}");
        } else {
            prop_assert_ne!(last.formula.symbol, "D");
        }
    }
}

proptest! {
    #![proptest_config(cases(400))]

    /// On the steepest hill, the push that there is on that hill just holds the
    /// board. Grip falls with the cosine of the hill, so it must be taken there.
    #[test]
    fn the_steepest_hill_is_just_held(
        board in any_board(),
        speed in 0.5..=10.0_f64,
        charge in 0.0..=1.0_f64,
    ) {
        let drive = board.drive();
        let supply = drive.supply(charge, Sag::Burst);
        let found = drive.steepest(&supply, speed);
        // Steeper than 45° either way is not looked at.
        prop_assume!(found.grade.abs() < 0.999);
        let slope = Slope::of_grade(found.grade);
        let push = drive.push(&supply, &FULL, speed, slope);
        let off = push.force_n - drive.load_n(speed, slope);
        let weight = 9.806_65 * drive.build.mass_kg();
        prop_assert!(off.abs() < 1e-6 * weight, "{off} N left of {weight}: {found:?} {push:?}");
        prop_assert_eq!(found.limit, push.limit);
    }
}
