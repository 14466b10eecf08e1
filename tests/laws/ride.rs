//! What holds for every ride in time.

use crate::board::{Board, End, any_board, likely_board};
use crate::cases;
use crate::finite::null_in;
use pitchline_core::physics::gear::UnloadedSpeed;
use pitchline_core::ride::{
    Course, Goal, Leg, Manner, Met, Ridden, RideEnd, Steps, Style, Trip, Until, explain_for_ever,
};
use pitchline_core::{Draft, Drive, Limit, Outing, Slot};
use proptest::prelude::*;

/// Any course of a few legs.
fn any_legs() -> impl Strategy<Value = Vec<Leg>> {
    let leg = (10.0..=800.0_f64, -0.25..=0.25_f64, 1.0..=20.0_f64, 0.0..=60.0_f64, any::<bool>());
    let leg = leg.prop_map(|(length_m, grade, cruise_m_s, rest_s, stop)| Leg {
        length_m,
        grade,
        cruise_m_s,
        rest_s: stop.then_some(rest_s),
    });
    prop::collection::vec(leg, 1..5)
}

fn any_manner() -> impl Strategy<Value = Manner> {
    (0.2..=5.0_f64, 0.2..=5.0_f64)
        .prop_map(|(acceleration_m_s2, braking_m_s2)| Manner { acceleration_m_s2, braking_m_s2 })
}

fn ride(drive: &Drive, legs: &[Leg], manner: Manner, seconds: f64, charge: f64) -> Ridden {
    drive.ride(Course::Legs(legs), manner, Until::time(seconds), charge, Steps::USUAL)
}

/// Numbers, in order, within their bounds, and every watt-hour accounted for.
fn sound(ride: &Ridden) -> Result<(), TestCaseError> {
    let mut value = serde_json::to_value(ride).expect("a ride has a JSON form");
    for may_be_empty in ["held_back", "not_held", "stopped", "brake_held_back", "winding_hot"] {
        value.as_object_mut().expect("an object").remove(may_be_empty);
    }
    prop_assert_eq!(null_in(&value, ""), None);
    let ledger = &ride.ledger;
    let sum: f64 = ledger.sinks_wh().iter().sum();
    // Downhill the slope may give more than the chemistry passes.
    let passed = ledger.passed_wh + ledger.climb_wh.abs() + ledger.air_wh.abs() + 1e-6;
    prop_assert!(
        (ledger.stored_wh - sum).abs() <= 1e-6 * passed,
        "{ledger:?} is off by {}",
        ledger.stored_wh - sum
    );
    for wh in [
        ledger.wires_wh,
        ledger.controller_wh,
        ledger.winding_wh,
        ledger.iron_wh,
        ledger.belt_wh,
        ledger.rolling_wh,
        ledger.brake_wh,
        ledger.returned_wh,
    ] {
        prop_assert!(wh >= -1e-9 * passed, "{ledger:?}");
    }
    // Whatever stopped it is told, and where.
    let stopped = matches!(ride.end, RideEnd::Slow | RideEnd::Empty | RideEnd::Stalled);
    prop_assert_eq!(ride.stopped.is_some(), stopped, "{:?} {:?}", ride.end, ride.stopped);
    for met in [ride.held_back, ride.not_held, ride.brake_held_back, ride.winding_hot] {
        let Some(met) = met else { continue };
        prop_assert!((0.0..=ride.time_s).contains(&met.time_s), "{met:?}");
        prop_assert!((0.0..=ride.distance_m).contains(&met.distance_m), "{met:?}");
    }
    if let Some(stopped) = ride.stopped {
        prop_assert!((stopped.time_s, stopped.distance_m) == (ride.time_s, ride.distance_m));
    }
    for pair in ride.moments.windows(2) {
        prop_assert!(pair[1].time_s > pair[0].time_s, "{pair:?}");
        prop_assert!(pair[1].distance_m >= pair[0].distance_m, "{pair:?}");
    }
    // At even times, as far as steady steps of up to 320 s allow.
    let mean_s = ride.time_s / ride.moments.len() as f64;
    for pair in ride.moments.windows(2) {
        let gap_s = pair[1].time_s - pair[0].time_s;
        prop_assert!(gap_s < (4.0 * mean_s + 20.0).max(320.0 + 1e-9), "{gap_s} {mean_s}");
    }
    prop_assert_eq!(ride.extents.len(), ride.moments.len());
    let within = |[least, most]: [f64; 2], value: f64| least <= value && value <= most;
    for (moment, extent) in ride.moments.iter().zip(&ride.extents) {
        prop_assert!(within(extent.speed_m_s, moment.speed_m_s), "{moment:?} {extent:?}");
        prop_assert!(within(extent.bus_v, moment.bus_v), "{moment:?} {extent:?}");
        prop_assert!(within(extent.pack_a, moment.pack_a), "{moment:?} {extent:?}");
        prop_assert!(within(extent.motor_a, moment.motor_a), "{moment:?} {extent:?}");
    }
    let top = ride.extents.iter().fold(0.0_f64, |most, e| most.max(e.speed_m_s[1]));
    prop_assert_eq!(top, ride.top_m_s);
    for moment in &ride.moments {
        prop_assert!(moment.speed_m_s >= 0.0, "{moment:?}");
        prop_assert!((0.0..=1.0).contains(&moment.charge), "{moment:?}");
    }
    Ok(())
}

/// A speed that even a motor without load does not turn at cannot be had, unless it was never wished
/// for; nor can a climb of 30 % that needs more push than the motors' current limits give.
#[test]
fn what_cannot_be_had_falls_short() {
    let until = Until { distance_m: 3000.0, time_s: 1200.0 };
    let own = |board: &Board| board.drive().ride_out(Outing::Own, until);
    let typical = Board(Draft::typical());
    let b = typical.build();
    let unloaded = UnloadedSpeed {
        duty: b.controller.max_duty,
        open: 4.2 * b.pack.series,
        kv: b.motor.kv_rpm_per_v,
        radius: b.wheel.radius_m(),
        ratio: b.wheel_pulley.teeth / b.motor_pulley.teeth,
    };
    assert!(unloaded.value() < 90.0 / 3.6, "{}", unloaded.value());
    let fast = typical.with(Slot::Ride, "cruise_km_h", 90.0).with(Slot::Ride, "stops_per_km", 0.0);
    let ride = own(&fast);
    assert!(ride.falls_short(Outing::Own) && ride.lost_early().is_some(), "{:?}", ride.not_held);
    assert_ne!(ride.end, RideEnd::Stalled);
    // The same ride, had nobody wished for a speed.
    assert!(!ride.falls_short(Outing::Flatout));

    // 150 m up for each kilometre, half of which leads down.
    let steep = own(&typical.with(Slot::Ride, "climb_m_per_km", 150.0));
    assert!(steep.falls_short(Outing::Own), "{:?}", steep.stopped);

    let easy = own(&typical);
    assert!(!easy.falls_short(Outing::Own), "{:?}", easy.not_held);
}

/// A speed lost towards the end is how every pack ends; one lost before four fifths of the way is
/// told. A board that stalls falls short whatever was asked, and one that does not move is not going.
#[test]
fn losing_the_speed_early_is_told_from_losing_it_at_the_end() {
    let whole = Board(Draft::typical()).drive().ride_out(Outing::Steady, Until::distance(1000.0));
    assert!((whole.distance_m - 1000.0).abs() < 1e-3 && whole.gets_going());
    let lost = |distance_m: f64| {
        let met = Met {
            limit: Limit::Cutback,
            time_s: 100.0,
            distance_m,
            speed_m_s: 5.0,
            grade: 0.0,
            sag: None,
        };
        Ridden { not_held: Some(met), ..whole.clone() }
    };
    for (distance_m, early) in [(0.0, true), (799.0, true), (801.0, false), (1000.0, false)] {
        let ride = lost(distance_m);
        assert_eq!(ride.lost_early(), ride.not_held.filter(|_| early), "{distance_m}");
        assert_eq!(ride.falls_short(Outing::Town), early, "{distance_m}");
        assert!(!ride.falls_short(Outing::Flatout), "{distance_m}");
        let stalled = Ridden { end: RideEnd::Stalled, ..ride };
        assert!(Outing::ALL.into_iter().all(|outing| stalled.falls_short(outing)));
    }
    assert!(!Ridden { distance_m: 0.4, ..whole }.gets_going());
}

proptest! {
    #![proptest_config(cases(100))]

    #[test]
    fn any_ride_of_any_board_is_sound(
        board in any_board(),
        legs in any_legs(),
        manner in any_manner(),
        charge in prop_oneof![Just(0.0), Just(1.0), 0.0..=1.0_f64],
        seconds in 1.0..=900.0_f64,
    ) {
        let found = ride(&board.drive(), &legs, manner, seconds, charge);
        sound(&found)?;
        prop_assert!(found.time_s <= seconds * (1.0 + 1e-9));
        let fastest = legs.iter().fold(0.0_f64, |most, leg| most.max(leg.cruise_m_s));
        prop_assert!(found.top_m_s <= fastest * (1.0 + 1e-6), "{}", found.top_m_s);
        if found.end == RideEnd::Time {
            prop_assert!((found.time_s - seconds).abs() < 1e-6 * seconds);
        }
    }

    /// However few steps are taken at a time.
    #[test]
    fn a_trip_in_pieces_is_the_ride_in_one_go(
        board in any_board(),
        outing in prop::sample::select(&Outing::ALL[..]),
        piece in 1..300_u32,
    ) {
        let (drive, until) = (board.drive(), Until { distance_m: 2000.0, time_s: 600.0 });
        let mut trip = Trip::out(&drive, outing, until, Steps::USUAL);
        let mut last = 0.0;
        while trip.advance(piece) {
            let share = trip.share();
            prop_assert!(share < 1.0 && share >= last, "{share} after {last}");
            // Braking may fill the pack again, but time only passes.
            last = (trip.now().time_s / 600.0).min(0.99);
        }
        prop_assert_eq!(trip.share(), 1.0);
        prop_assert_eq!(trip.finish(), drive.ride_out(outing, until));
    }

    /// A wish that cannot be held is told with the speed that it came to.
    #[test]
    fn what_is_not_held_is_told(board in likely_board(), grade in 0.0..=0.4_f64, wish in 3.0..=25.0_f64) {
        let drive = board.drive();
        let leg = Leg { length_m: 400.0, grade, cruise_m_s: wish, rest_s: None };
        let manner = Manner { acceleration_m_s2: 1.0, braking_m_s2: 1.0 };
        let until = Until::distance(390.0);
        let found = drive.ride(Course::Legs(&[leg]), manner, until, 1.0, Steps::USUAL);
        match (found.end, found.not_held) {
            (RideEnd::Distance, None) => prop_assert!(
                found.held_back.is_none() || found.top_m_s > 0.9 * wish || found.time_s < 120.0
            ),
            (_, Some(met)) => {
                prop_assert!(met.speed_m_s < wish && (met.grade - grade).abs() < 1e-9, "{met:?}");
            }
            // A pack that collapses from the full wish.
            (end, None) => prop_assert!(matches!(end, RideEnd::Slow | RideEnd::Empty), "{end:?}"),
        }
        if let (RideEnd::Stalled, Some(met)) = (found.end, found.stopped) {
            // It stands where it cannot push itself up at a crawl, or where heat takes the push.
            let most = drive.steepest(&drive.supply(1.0, pitchline_core::Sag::Burst), 1.0);
            let c = &drive.build.controller;
            let (h, held) = (found.hottest, c.motor_cutback_start_c);
            let hot = match met.limit {
                Limit::WindingHot => held.is_some_and(|from| h.winding_c > from),
                Limit::ControllerHot => h.controller_c > c.cutback_start_c,
                _ => false,
            };
            prop_assert!(hot || most.grade < grade * 1.1 + 0.02, "{met:?} {most:?} {h:?}");
        }
    }

    #[test]
    fn any_style_is_sound(board in any_board(), style in prop::sample::select(&Style::ALL[..])) {
        let until = Until { distance_m: 3000.0, time_s: 900.0 };
        sound(&board.drive().ride_style(style, until))?;
    }

    /// Halving the steps moves no total by more than a thousandth.
    #[test]
    fn steps_are_fine_enough(board in likely_board(), style in prop::sample::select(&Style::ALL[..])) {
        let drive = board.drive();
        let figures = style.figures(&drive.build);
        let ride = |steps| {
            let legs = figures.legs();
            // No stop lies there, which a hair more or less would add.
            let until = Until::distance(1900.0);
            drive.ride(Course::Legs(&legs), figures.manner(), until, 0.9, steps)
        };
        let (usual, half) = (ride(Steps::USUAL), ride(Steps::USUAL.halved()));
        prop_assume!(usual.end == RideEnd::Distance && half.end == RideEnd::Distance);
        prop_assert!((half.time_s / usual.time_s - 1.0).abs() < 1e-3, "{} {}", half.time_s, usual.time_s);
        let passed = usual.ledger.passed_wh;
        let stored = half.ledger.stored_wh - usual.ledger.stored_wh;
        prop_assert!(stored.abs() < 1e-3 * passed, "{stored} of {passed}");
        for (one, two) in usual.ledger.sinks_wh().iter().zip(half.ledger.sinks_wh()) {
            prop_assert!((one - two).abs() < 1e-3 * passed, "{:?} {:?}", usual.ledger, half.ledger);
        }
    }

    /// A headwind never saves energy over the same stop and go.
    #[test]
    fn wind_costs(board in likely_board(), by in 0.0..=0.3_f64) {
        let calm = board.with(Slot::Place, "headwind_km_h", 0.0);
        let windy = calm.toward(Slot::Place, "headwind_km_h", End::Most, by);
        let spent = |board: &Board| board.drive().ride_style(Style::Town, Until::distance(1500.0));
        let (calm, windy) = (spent(&calm), spent(&windy));
        prop_assume!(calm.end == RideEnd::Distance && windy.end == RideEnd::Distance);
        prop_assert!(windy.ledger.stored_wh >= calm.ledger.stored_wh * (1.0 - 1e-3));
    }
}

proptest! {
    #![proptest_config(cases(60))]

    #[test]
    fn any_sprint_is_numbers(
        board in any_board(),
        speed in 1.0..=20.0_f64,
        grade in -0.1..=0.3_f64,
        charge in 0.0..=1.0_f64,
    ) {
        let drive = board.drive();
        for goal in [Goal::Speed(speed), Goal::Distance(10.0 * speed)] {
            let found = drive.sprint(goal, grade, charge);
            let value = serde_json::to_value(&found).expect("a sprint has a JSON form");
            prop_assert_eq!(null_in(&value, ""), None);
            prop_assert!(found.time_s >= 0.0 && found.distance_m >= 0.0 && found.speed_m_s >= 0.0);
            prop_assert!(!found.moments.is_empty() && found.moments.len() <= 401);
            match goal {
                Goal::Speed(to) if found.reached => {
                    prop_assert!((found.speed_m_s - to).abs() < 1e-6 * to, "{found:?}");
                }
                Goal::Distance(to) if found.reached => {
                    prop_assert!((found.distance_m - to).abs() < 1e-6 * to, "{found:?}");
                }
                _ => (),
            }
        }
    }

    /// Wet is never shorter than dry, and a motor less never shorter than all;
    /// but where a pack takes no more, the copper of one motor brakes harder
    /// than that of two.
    #[test]
    fn any_braking_is_numbers_in_order(board in any_board(), speed in 1.0..=20.0_f64) {
        let drive = board.drive();
        let cases = drive.braking_cases(speed);
        for found in &cases {
            let value = serde_json::to_value(found).expect("braking has a JSON form");
            prop_assert_eq!(null_in(&value, ""), None);
            prop_assert!(found.slowing_m >= 0.0 && found.rolling_m >= 0.0, "{found:?}");
            let sum = found.reaction_m + found.slowing_m + found.rolling_m;
            prop_assert!((found.total_m - sum).abs() < 1e-9 * sum);
        }
        let half = cases.len() / 2;
        for (dry, wet) in cases[..half].iter().zip(&cases[half..]) {
            prop_assert!(!dry.case.wet && wet.case.wet);
            if dry.stops && wet.stops {
                prop_assert!(wet.slowing_m >= dry.slowing_m * (1.0 - 1e-3), "{dry:?} {wet:?}");
            }
        }
        for pair in cases.windows(2) {
            let (more, less) = (&pair[0], &pair[1]);
            let full = more.limit == Limit::OverVoltage;
            if less.case.motors < more.case.motors && more.stops && less.stops && !full {
                prop_assert!(less.slowing_m >= more.slowing_m * (1.0 - 1e-3), "{more:?} {less:?}");
            }
        }
    }

    #[test]
    fn any_climb_is_numbers(
        board in any_board(), speed in 1.0..=10.0_f64, grade in 0.0..=0.3_f64,
    ) {
        let drive = board.drive();
        let for_ever = drive.steepest_for_ever(speed);
        prop_assert!(for_ever.grade.is_finite());
        prop_assert!(drive.continuous_a(speed).is_finite());
        let found = drive.long_climb(grade, speed);
        let value = serde_json::to_value(found).expect("a climb has a JSON form");
        prop_assert_eq!(null_in(&value, ""), None);
        prop_assert!(found.distance_m >= 0.0 && found.time_s <= 86_400.0 + 1.0);
        let steps = explain_for_ever(&drive.build, speed);
        prop_assert!(steps.iter().all(|step| step.result.is_finite()));
    }
}

/// The full top speed can be reached: a sprint in time on warm windings ends within 2 % of it.
#[test]
fn a_full_top_speed_is_reached_by_a_sprint() {
    let lfp: &[(Slot, &str, f64)] = &[
        (Slot::Cell, "chemistry", 2.0),
        (Slot::Cell, "capacity_ah", 3.0),
        (Slot::Cell, "resistance_10s_mohm", 20.0),
        (Slot::Cell, "max_discharge_a", 20.0),
        (Slot::Pack, "series", 12.0),
        (Slot::Pack, "parallel", 4.0),
        (Slot::Pack, "protection_a", 80.0),
        (Slot::Controller, "motor_current_a", 60.0),
        (Slot::Controller, "battery_current_a", 25.0),
    ];
    for changes in [&[][..], lfp] {
        for air_c in [0.0, 10.0, 25.0, 40.0] {
            let mut draft = pitchline_core::Draft::typical();
            for (slot, key, value) in changes {
                draft.set(*slot, key, *value);
            }
            draft.set(Slot::Place, "air_c", air_c);
            let build = pitchline_core::Build::check(&draft).expect("in range");
            let top = pitchline_core::answers(&build).speed.flat_full.speed_m_s;
            let sprint = Drive::new(&build).sprint(Goal::Speed(2.0 * top), 0.0, 1.0);
            let most = sprint.moments.iter().fold(0.0_f64, |most, m| most.max(m.speed_m_s));
            assert!((top / most - 1.0).abs() < 0.02, "{air_c} °C: {top} against {most}");
        }
    }
}
