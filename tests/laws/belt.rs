//! Which belts fit: laws of the finder, of the tension and of its limits.

use crate::board::{Board, any_board, likely_board};
use crate::cases;
use pitchline_core::physics::belt_geometry::{
    JumpTorque, SpanDeflection, SpanFrequency, centre_m, length_m,
};
use pitchline_core::{
    Belt, BeltFit, BeltList, BeltOffers, BeltOnBoard, CentreFrom, Drive, Headline, Limit,
    MeasuredCentre, MotorPulley, PulleyPair, Slot, WheelPulley, answers, belt_fit, explain,
};
use proptest::prelude::*;
use serde_json::Value;
use std::f64::consts::PI;

const NOTHING: BeltOffers = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };

/// Every whole number of teeth, of the board's own pitch and width.
fn every_belt(belt: &Belt) -> Vec<Belt> {
    (20..=400).map(|teeth| Belt { teeth: Some(f64::from(teeth)), ..*belt }).collect()
}

fn fit_of(drive: &Drive, belts: &[Belt]) -> BeltFit {
    belt_fit(drive, &BeltOffers { belts, ..NOTHING })
}

/// Numbers in an answer; one that is not finite has no JSON form and fails.
fn numbers(value: &Value, found: &mut usize) {
    match value {
        Value::Number(_) => *found += 1,
        Value::Array(list) => list.iter().for_each(|v| numbers(v, found)),
        Value::Object(map) => map.values().for_each(|v| numbers(v, found)),
        _ => {}
    }
}

fn rider(centre_mm: f64) -> Board {
    let mut draft = pitchline_core::Draft::typical();
    draft.set(Slot::MotorPulley, "teeth", 16.0);
    draft.set(Slot::WheelPulley, "teeth", 44.0);
    draft.set(Slot::Bench, "measured_centre_mm", centre_mm);
    Board(draft)
}

/// 71 mm measured between 16 and 44 teeth: the belt of 60 teeth, which wants
/// 71.499 mm by a second program that halves the exact length.
#[test]
fn at_71_mm_16_and_44_teeth_take_the_belt_of_300_mm() {
    let fit = belt_fit(&rider(71.0).drive(), &NOTHING);
    assert_eq!(fit.list, BeltList::Usual);
    let first = fit.bench.nearest[0];
    assert_eq!(first.teeth, 60.0);
    assert!((first.length_m - 0.3).abs() < 1e-12);
    assert!((first.mesh.centre_m - 0.071_499_16).abs() < 1e-8, "{first:?}");
    assert!((first.off_measured_m.unwrap() - 0.000_499_16).abs() < 1e-8);
    assert_eq!(first.mesh.whole_teeth, 6.0);
    assert!(first.in_slot);
    assert_eq!(fit.run_from, CentreFrom::Measured);
    assert_eq!(fit.on_board, BeltOnBoard::NoTeeth);
    // Nearest first.
    let off: Vec<f64> = fit.bench.nearest.iter().map(|c| c.off_measured_m.unwrap().abs()).collect();
    assert!(off.len() == 4 && off.windows(2).all(|pair| pair[0] <= pair[1]), "{off:?}");
}

/// 200 mm between the same pulleys are far from all in stock; 552.482 mm by the
/// exact length, Shigley and Budynas, eq. 17-2: between 110 and 111 teeth.
#[test]
fn a_belt_out_of_reach_is_not_told() {
    let bench = belt_fit(&rider(200.0).drive(), &NOTHING).bench;
    let MeasuredCentre::Length { length_m, teeth } = bench.measured else { panic!("{bench:?}") };
    let slant = (14.0 * 5.0 / (PI * 200.0)).asin();
    let want = 400.0 * slant.cos() + 150.0 + 2.0 * slant * 14.0 * 5.0 / PI;
    assert!((1000.0 * length_m - want).abs() < 1e-9, "{length_m} {want}");
    assert_eq!(teeth, [110.0, 111.0]);
    assert!(bench.nearest.is_empty(), "{bench:?}");
}

/// With that belt in hand, of the pulleys on offer only those go that want
/// about 71 mm; centre distances from the same second program.
#[test]
fn the_belt_in_hand_finds_its_pulleys() {
    let mut board = rider(71.0);
    board.0.set(Slot::Bench, "belt_in_hand_teeth", 60.0);
    let drive = board.drive();
    let motor = |teeth: f64| MotorPulley { teeth, ..drive.build.motor_pulley };
    let wheel = |teeth: f64| WheelPulley { teeth, ..drive.build.wheel_pulley };
    let fit = belt_fit(
        &drive,
        &BeltOffers {
            belts: &[],
            motor_pulleys: &[motor(15.0), motor(16.0)],
            wheel_pulleys: &[wheel(36.0), wheel(40.0), wheel(44.0), wheel(60.0)],
        },
    );
    let BeltOnBoard::Taut(in_hand) = fit.bench.in_hand else { panic!("{:?}", fit.bench) };
    assert!((in_hand.mesh.centre_m - 0.071_499_16).abs() < 1e-8);
    let pairs = &fit.bench.pairs;
    let first: PulleyPair = pairs[0];
    assert_eq!((first.motor_pulley, first.wheel_pulley), (1, 2));
    // 15/40 wants 78.723 mm, beyond the far stop at 78; 15/36 more; 60 teeth less than 66.
    let named: Vec<_> = pairs.iter().map(|p| (p.motor_pulley, p.wheel_pulley)).collect();
    assert_eq!(named, [(1, 2), (0, 2), (1, 1)]);
}

#[test]
fn pulleys_that_would_overlap_are_refused() {
    // 16 and 44 teeth touch at 47.746 mm.
    let fit = belt_fit(&rider(47.0).drive(), &NOTHING);
    assert!((fit.touching_m - 0.15 / PI).abs() < 1e-12);
    assert_eq!(fit.bench.measured, MeasuredCentre::Overlap);
    assert!(fit.bench.nearest.is_empty() && fit.run.is_none());
    assert!(fit.load.tensions.iter().all(|tension| tension.check.is_none()));
    // A belt of 45 teeth would need them nearer still.
    let board = rider(71.0).with(Slot::Belt, "teeth", 45.0);
    let fit = belt_fit(&board.drive(), &NOTHING);
    assert_eq!(fit.on_board, BeltOnBoard::TooShort);
    let steps = explain(&board.build(), Headline::BeltCentre);
    assert!(steps.iter().all(|step| step.formula.symbol != "C"));
}

/// Where no belt fits, it is told by how much the nearest two miss. 15 and 36
/// teeth: 53 teeth want 66.644 mm and 54 want 69.223 mm, by the second program.
#[test]
fn a_miss_is_told_in_millimetres() {
    let mut board = rider(68.0);
    for (slot, key, value) in [
        (Slot::MotorPulley, "teeth", 15.0),
        (Slot::WheelPulley, "teeth", 36.0),
        (Slot::Truck, "centre_min_mm", 67.0),
        (Slot::Truck, "centre_max_mm", 69.0),
    ] {
        board = board.with(slot, key, value);
    }
    let drive = board.drive();
    let fit = fit_of(&drive, &every_belt(&drive.build.belt));
    assert_eq!(fit.list, BeltList::Offered);
    assert!(fit.fitting.is_empty());
    let (short, long) = (fit.shorter.unwrap(), fit.longer.unwrap());
    assert_eq!((short.belt.teeth, long.belt.teeth), (53.0, 54.0));
    assert!((short.miss_m - 0.000_356_42).abs() < 1e-8, "{short:?}");
    assert!((long.miss_m - 0.000_222_87).abs() < 1e-8, "{long:?}");
}

/// 12 and 52 teeth in the middle of the assumed slot have four whole teeth in
/// mesh; but a slot that nobody measured takes nothing from a rating of 450 N.
/// 72 mm measured does: three fifths are left.
#[test]
fn only_a_known_centre_distance_takes_from_the_rating() {
    let mut board =
        rider(72.0).with(Slot::MotorPulley, "teeth", 12.0).with(Slot::WheelPulley, "teeth", 52.0);
    let measured = belt_fit(&board.drive(), &NOTHING);
    assert_eq!(measured.run.unwrap().whole_teeth, 4.0);
    assert!((measured.load.rated_n - 270.0).abs() < 1e-9);
    board.0.set_value(Slot::Bench, 0, None);
    let guessed = belt_fit(&board.drive(), &NOTHING);
    assert_eq!(guessed.run_from, CentreFrom::Slot);
    assert_eq!(guessed.run, measured.run);
    assert!((guessed.load.rated_n - 450.0).abs() < 1e-9);
}

/// A belt that does not fit runs nowhere; until another is chosen its teeth in
/// mesh are those at the stop next to where it wants to be.
#[test]
fn a_belt_out_of_reach_is_taken_at_the_nearest_stop() {
    for (teeth, stop) in [(53.0, 0.066), (90.0, 0.078)] {
        let board = rider(71.0).with(Slot::Belt, "teeth", teeth);
        let fit = belt_fit(&board.drive(), &NOTHING);
        let BeltOnBoard::Taut(belt) = fit.on_board else { panic!("{fit:?}") };
        assert!(!belt.in_slot && !(0.0..=1.0).contains(&belt.place));
        assert_eq!(fit.run_from, CentreFrom::Belt);
        assert_eq!(fit.run.unwrap().centre_m, stop);
    }
}

proptest! {
    #![proptest_config(cases(100))]

    /// The finder's centre distance, put back, is the belt.
    #[test]
    fn a_centre_distance_put_back_is_the_belt(board in any_board()) {
        let drive = board.drive();
        let [one, other] =
            [drive.build.motor_pulley.teeth, drive.build.wheel_pulley.teeth];
        let radius = |teeth: f64| teeth * drive.build.belt.pitch_m / (2.0 * PI);
        let (small, large) = (radius(one.min(other)), radius(one.max(other)));
        for belt in every_belt(&drive.build.belt) {
            let length = belt.length_m().unwrap();
            let Ok(centre) = centre_m(length, small, large) else { continue };
            prop_assert!(centre > small + large);
            let back = length_m(centre, small, large).expect("it does not overlap");
            prop_assert!((back - length).abs() <= 1e-9 * length, "{length} {back}");
        }
    }

    #[test]
    fn a_longer_slot_never_offers_fewer_belts(
        board in any_board(),
        near in 0.0..=1.0_f64,
        far in 0.0..=1.0_f64,
    ) {
        let drive = board.drive();
        let belts = every_belt(&drive.build.belt);
        let before = fit_of(&drive, &belts);
        let [least, most] = before.slot_m.map(|stop| 1e3 * stop);
        let longer = board
            .with(Slot::Truck, "centre_min_mm", least - near * (least - 20.0))
            .with(Slot::Truck, "centre_max_mm", most + far * (400.0 - most));
        let after = fit_of(&longer.drive(), &belts);
        prop_assert!(after.fitting.len() >= before.fitting.len());
        for belt in &before.fitting {
            prop_assert!((0.0..=1.0).contains(&belt.place) && belt.travel_left_m >= 0.0);
            prop_assert!(after.fitting.iter().any(|other| other.teeth == belt.teeth));
        }
        // Sorted, without one twice, and the misses are outside.
        prop_assert!(before.fitting.windows(2).all(|pair| pair[0].teeth < pair[1].teeth));
        for miss in before.shorter.iter().chain(&before.longer) {
            prop_assert!(miss.miss_m > 0.0 && !miss.belt.in_slot);
        }
    }

    #[test]
    fn every_answer_about_belts_is_a_number(board in any_board()) {
        let drive = board.drive();
        let build = &drive.build;
        let fit = belt_fit(&drive, &BeltOffers {
            belts: &every_belt(&build.belt),
            motor_pulleys: &[build.motor_pulley],
            wheel_pulleys: &[build.wheel_pulley],
        });
        let load = &fit.load;
        for number in [
            fit.touching_m, load.drive_n, load.brake_n, load.peak_n, load.steady_n, load.hill_n,
            load.rated_n, load.used,
        ] {
            prop_assert!(number.is_finite(), "{load:?}");
        }
        prop_assert!(load.peak_n > 0.0 && load.rated_n > 0.0);
        for tension in &load.tensions {
            prop_assert!(tension.force_n.is_finite() && tension.jump_n_m.is_finite());
            prop_assert_eq!(tension.check.is_some(), fit.run.is_some());
            if let Some(check) = tension.check {
                prop_assert!(check.deflection_m.is_finite() && check.frequency_hz.is_finite());
            }
            // The slack span keeps something at the greatest pull.
            prop_assert!(tension.force_n > 0.5 * load.peak_n);
            let jump = 2.0 * PI * tension.jump_n_m
                / (build.motor_pulley.teeth * build.belt.pitch_m);
            prop_assert!(jump > load.peak_n, "{tension:?}");
        }
        let [near, far] = fit.slot_m;
        for belt in &fit.bench.nearest {
            // Ten millimetres are what any mount may be off.
            prop_assert!(belt.off_measured_m.unwrap().abs() <= (far - near).max(0.01));
        }
        if let MeasuredCentre::Length { length_m, teeth: [fewer, more] } = fit.bench.measured {
            let teeth = length_m / build.belt.pitch_m;
            prop_assert!(fewer <= teeth + 1e-6 && teeth <= more + 1e-6 && more - fewer <= 1.0);
            prop_assert!(fewer.fract() == 0.0 && more.fract() == 0.0);
        }
        for belt in fit.fitting.iter().chain(&fit.bench.nearest) {
            let value = serde_json::to_value(belt).expect("a belt has a JSON form");
            let mut found = 0;
            numbers(&value, &mut found);
            let given = [belt.offer.is_some(), belt.price.is_some(), belt.off_measured_m.is_some()];
            // Seven of its own and six of its mesh.
            prop_assert_eq!(found, 13 + given.iter().filter(|is| **is).count(), "{}", value);
        }
    }

    /// The pull of the fit is that of the push: no speed on the curve asks for
    /// more, and where the belt's rating does not bind the push is the same.
    #[test]
    fn no_speed_pulls_harder_than_the_greatest_pull(board in likely_board()) {
        let drive = board.drive();
        let build = &drive.build;
        let load = belt_fit(&drive, &NOTHING).load;
        for point in answers(build).push.points {
            let torque = point.push_n * build.wheel.radius_m() * build.motor_pulley.teeth
                / (build.wheel_pulley.teeth * build.truck.motor_count * build.belt.efficiency);
            let pull = 2.0 * PI * torque / (build.motor_pulley.teeth * build.belt.pitch_m);
            prop_assert!(pull <= load.drive_n * (1.0 + 1e-9) + 1e-6, "{pull} {load:?}");
        }
        // A motor braked at no less than the current that drives it pulls
        // harder: iron and bearings help.
        let c = &build.controller;
        if load.drive_limit == Limit::ControllerMotorCurrent
            && load.brake_limit == Limit::BrakeCurrent
            && c.brake_current_a >= c.motor_current_a
        {
            prop_assert!(load.brake_n >= load.drive_n);
        }
    }

    /// Where the belt binds, the push pulls just what the rating leaves.
    #[test]
    fn the_push_takes_the_teeth_in_mesh(
        board in any_board(),
        small in 8..=14_u32,
        belt in 50..=200_u32,
    ) {
        let board = board
            .with(Slot::MotorPulley, "teeth", f64::from(small))
            .with(Slot::Belt, "teeth", f64::from(belt))
            .with(Slot::Belt, "rating_n_per_mm", 2.0);
        let drive = board.drive();
        let supply = drive.supply(1.0, pitchline_core::Sag::Burst);
        let full = pitchline_core::Mode { current_share: 1.0, speed_cap_m_s: None };
        let flat = pitchline_core::physics::road_load::Slope::FLAT;
        let push = drive.push(&supply, &full, 0.5, flat);
        prop_assume!(push.limit == Limit::Belt && push.force_n > 0.0);
        let build = &drive.build;
        let torque = push.force_n * build.wheel.radius_m() * build.motor_pulley.teeth
            / (build.wheel_pulley.teeth * build.truck.motor_count * build.belt.efficiency);
        let pull = 2.0 * PI * torque / (build.motor_pulley.teeth * build.belt.pitch_m);
        let fit = belt_fit(&drive, &NOTHING);
        prop_assert!((pull / fit.load.rated_n - 1.0).abs() < 1e-9, "{pull} {fit:?}");
        let share = fit.run.map_or(1.0, |run| run.rating_share);
        let plain = build.belt.rating_n_per_m * build.belt.width_m;
        prop_assert!((fit.load.rated_n - share * plain).abs() < 1e-9 * plain);
        if let Some(run) = fit.run {
            let fewer = (6.0 - run.teeth.floor()).clamp(0.0, 4.0);
            prop_assert!((share - (1.0 - 0.2 * fewer)).abs() < 1e-9, "{run:?}");
        }
    }

    /// Equal pulleys: two free spans and one whole pulley of belt.
    #[test]
    fn equal_pulleys_need_two_centres_and_one_pulley(
        teeth in 8..=120_u32,
        pitch in 0.002..=0.014_f64,
        apart in 1.001..=8.0_f64,
    ) {
        let radius = f64::from(teeth) * pitch / (2.0 * PI);
        let centre = 2.0 * radius * apart;
        let want = 2.0 * centre + f64::from(teeth) * pitch;
        let length = length_m(centre, radius, radius).expect("they do not overlap");
        prop_assert!((length - want).abs() < 1e-12 * want);
    }

    /// A belt put on tighter sings higher, gives way less and jumps later; a
    /// longer span does the opposite of the first two.
    #[test]
    fn tension_sings_and_gives_way_as_a_string(
        tension in 5.0..=2000.0_f64,
        more in 1.001..=5.0_f64,
        mass in 0.005..=0.5_f64,
        span in 0.02..=0.4_f64,
        force in 1.0..=50.0_f64,
    ) {
        let note = |tension, span| SpanFrequency { tension, mass, span }.value();
        let (low, high) = (note(tension, span), note(more * tension, span));
        prop_assert!((high / low - more.sqrt()).abs() < 1e-12);
        let gives = |tension, span| SpanDeflection { force, span, tension }.value();
        let (soft, hard) = (gives(tension, span), gives(more * tension, span));
        prop_assert!((soft / hard - more).abs() < 1e-12);
        prop_assert!(note(tension, more * span) < low);
        prop_assert!(gives(tension, more * span) > soft);
        let jump = |tension| JumpTorque { tension, teeth: 16.0, pitch: 0.005 }.value();
        prop_assert!(jump(more * tension) > jump(tension));
        // The travelling wave: there and back in one period.
        let wave = (tension / mass).sqrt();
        prop_assert!((low * 2.0 * span - wave).abs() < 1e-9 * wave);
    }

    /// A working ends where the answer is.
    #[test]
    fn the_workings_end_at_the_answers(board in any_board()) {
        let build = board.build();
        let drive = board.drive();
        let fit = belt_fit(&drive, &NOTHING);
        let last = |headline, symbol: &str| {
            let steps = explain(&build, headline);
            steps.iter().rev().find(|step| step.formula.symbol == symbol).map(|step| step.result)
        };
        prop_assert_eq!(last(Headline::BeltRating, "F_rated"), Some(fit.load.rated_n));
        prop_assert_eq!(last(Headline::BeltPull, "F_peak"), Some(fit.load.peak_n));
        let [_, tension, _] = fit.load.tensions;
        prop_assert_eq!(last(Headline::BeltTension, "F_t"), Some(tension.force_n));
        prop_assert_eq!(last(Headline::BeltTension, "T_jump"), Some(tension.jump_n_m));
        let check = tension.check;
        prop_assert_eq!(last(Headline::BeltTension, "q"), check.map(|c| c.deflection_m));
        prop_assert_eq!(last(Headline::BeltTension, "f"), check.map(|c| c.frequency_hz));
        for (headline, pull) in
            [(Headline::BeltSteady, fit.load.steady_n), (Headline::BeltHill, fit.load.hill_n)]
        {
            prop_assert_eq!(last(headline, "F_belt").unwrap_or(0.0), pull);
        }
        if let BeltOnBoard::Taut(belt) = fit.on_board {
            prop_assert_eq!(last(Headline::BeltCentre, "C"), Some(belt.mesh.centre_m));
        }
    }
}
