//! What never takes a board farther.
//!
//! Each pair of boards differs in one thing, or is ridden once steadily and once with something in
//! the way. Every ride ends by the one rule of the core.

use crate::board::{Board, End, any_board, likely_board};
use crate::cases;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::ride::{
    Course, END_SHARE, Ridden, RideEnd, Steps, Style, StyleFigures, Trip, Until,
};
use pitchline_core::{Limit, Reach, Slot, answers, by_age, by_temperature};
use proptest::prelude::*;

fn reach(board: &Board, speed: f64) -> Reach {
    board.drive().reach(speed)
}

/// A ride until its speed is lost.
fn ride(board: &Board, figures: &StyleFigures) -> Ridden {
    let (drive, legs) = (board.drive(), figures.legs());
    let charge = drive.build.ride.start_charge;
    let course = Course::Legs(&legs);
    let trip = Trip::new(&drive, course, figures.manner(), Until::EMPTY, charge, Steps::USUAL);
    let mut trip = trip.brief();
    while trip.advance(1000) {}
    trip.finish()
}

/// A speed that the board reaches and, for most of the ride, holds; no heat ends it, and neither
/// wind nor slope pushes it along.
fn holds(board: &Board, reach: &Reach) -> bool {
    let hot = matches!(reach.limit, Limit::WindingHot | Limit::ControllerHot);
    let pushed = board.drive().load_n(reach.speed_m_s, Slope::FLAT) <= 0.0;
    let full = reach.wish_m_s >= reach.speed_m_s && reach.full_wish_m > 0.5 * reach.distance_m;
    full && !hot && !pushed
}

/// Where both hold the wish for nearly all of it: a board that is slower for long goes farther for
/// that.
fn never_farther(easy: &Reach, hard: &Reach) -> Result<(), TestCaseError> {
    // Halving the steps of a ride moves its distance by a thousandth at most.
    let held = hard.full_wish_m > 0.97 * hard.distance_m;
    prop_assert!(!held || hard.distance_m <= easy.distance_m * 1.001 + 1.0, "{easy:?} {hard:?}");
    Ok(())
}

fn never_cheaper(easy: &Ridden, hard: &Ridden) -> Result<(), TestCaseError> {
    let (easy_wh, hard_wh) = (easy.ledger.stored_wh, hard.ledger.stored_wh);
    // It may not get up the first hill at all, and a climb at less speed saves air resistance.
    prop_assume!(hard.end == RideEnd::Slow && hard.full_wish_m > 0.9 * hard.distance_m);
    prop_assert!(hard.wh_per_km >= easy.wh_per_km * 0.999, "{easy:?} {hard:?}");
    let most_m = easy.distance_m * (hard_wh / easy_wh).max(1.0);
    prop_assert!(hard.distance_m <= most_m * 1.001 + 1.0, "{easy:?} {hard:?}");
    Ok(())
}

fn steady_speed() -> impl Strategy<Value = f64> {
    prop_oneof![4 => 1.5..=12.0_f64, 1 => 1.5..=30.0_f64]
}

proptest! {
    #![proptest_config(cases(120))]

    /// On the flat mass only adds load, whatever the wind.
    #[test]
    fn heavier(board in any_board(), speed in steady_speed(), by in 0.0..=1.0_f64) {
        let heavy = board.toward(Slot::Rider, "mass_kg", End::Most, by);
        let (light, heavy) = (reach(&board, speed), reach(&heavy, speed));
        prop_assume!(holds(&board, &light) && light.limit != Limit::Grip);
        never_farther(&light, &heavy)?;
    }

    /// Air resistance grows with the headwind everywhere, following winds included: a weaker push
    /// from behind is a loss too.
    #[test]
    fn windier(board in any_board(), speed in steady_speed(), by in 0.0..=1.0_f64) {
        let windy = board.toward(Slot::Place, "headwind_km_h", End::Most, by);
        let (calm, windy) = (reach(&board, speed), reach(&windy, speed));
        prop_assume!(holds(&board, &calm));
        never_farther(&calm, &windy)?;
    }

    /// Colder air is denser and cells are worse. Two things speak for cold and are kept out: a wind
    /// from behind faster than the board, which pushes harder when dense, and long thin leads, whose
    /// copper conducts better.
    #[test]
    fn colder(board in any_board(), speed in steady_speed(), by in 0.0..=1.0_f64) {
        let wind = board.value(Slot::Place, "headwind_km_h").abs();
        let board = board
            .with(Slot::Place, "headwind_km_h", wind)
            .with(Slot::Pack, "wire_m", 0.0);
        let cold = board.toward(Slot::Place, "air_c", End::Least, by);
        let (warm, cold) = (reach(&board, speed), reach(&cold, speed));
        prop_assume!(holds(&board, &warm));
        never_farther(&warm, &cold)?;
    }

    /// A pack that starts with less charge, is older or has fewer cells beside each other.
    #[test]
    fn emptier(board in any_board(), speed in steady_speed(), by in 0.0..=1.0_f64) {
        let full = reach(&board, speed);
        prop_assume!(holds(&board, &full));
        for (slot, key, end) in [
            (Slot::Ride, "start_charge_percent", End::Least),
            (Slot::Cell, "capacity_ah", End::Least),
        ] {
            let less = reach(&board.toward(slot, key, end, by), speed);
            never_farther(&full, &less)?;
        }
        let cycles = board.value(Slot::Pack, "cycles");
        let older = board.with(Slot::Pack, "cycles", (cycles + 1000.0 * by).round());
        never_farther(&full, &reach(&older, speed))?;
    }

    /// Stops and hills cost energy that braking and rolling down do not bring back. The distance
    /// may grow all the same, but only by the charge that rests let the cells give up: LFP at rest
    /// recovers, and at less current on average it ends with less charge left. Boards that spend
    /// most on the air are left out: a ride with stops is slower, and that saves more than they cost.
    #[test]
    fn stops_and_hills(
        board in likely_board(),
        speed in 2.0..=8.0_f64,
        stops_per_km in 0.2..=8.0_f64,
        climb_m_per_km in 1.0..=60.0_f64,
    ) {
        let steady = StyleFigures {
            cruise_m_s: speed,
            stops_per_m: 0.0,
            acceleration_m_s2: 1.0,
            climb_per_m: 0.0,
            rest_s: 10.0,
        };
        let straight = ride(&board, &steady);
        let reach = reach(&board, speed);
        prop_assert_eq!(straight.distance_m, reach.distance_m);
        let spent = &straight.ledger;
        prop_assume!(holds(&board, &reach) && spent.air_wh < 0.4 * spent.stored_wh);
        let stops = ride(&board, &StyleFigures { stops_per_m: stops_per_km / 1000.0, ..steady });
        never_cheaper(&straight, &stops)?;
        let hills = ride(&board, &StyleFigures { climb_per_m: climb_m_per_km / 1000.0, ..steady });
        never_cheaper(&straight, &hills)?;
    }
}

proptest! {
    #![proptest_config(cases(60))]

    /// All that means the same is the same number, to the last digit.
    #[test]
    fn one_account_of_distance(board in any_board()) {
        let (build, drive) = (board.build(), board.drive());
        let found = answers(&build).distance;
        let cruise = drive.reach(build.ride.cruise_m_s);
        prop_assert_eq!(found.cruise.distance_m, cruise.distance_m);
        let ridden = drive.ride_style(Style::Steady, Until::EMPTY);
        prop_assert_eq!(ridden.distance_m, cruise.distance_m);
        prop_assert_eq!(ridden.limp_m, found.cruise.limp_m);
        prop_assert_eq!(ridden.full_wish_m, found.cruise.full_wish_m);
        prop_assert_eq!(ridden.ledger, found.ledger);
        for point in &found.curve {
            prop_assert_eq!(drive.reach(point.speed_m_s).distance_m, point.distance_m);
        }
        for point in by_temperature(&build) {
            let there = board.with(Slot::Place, "air_c", point.air_c);
            prop_assert_eq!(reach(&there, build.ride.cruise_m_s).distance_m, point.distance_m);
        }
        for point in by_age(&build) {
            let there = board.with(Slot::Pack, "cycles", point.cycles);
            prop_assert_eq!(reach(&there, build.ride.cruise_m_s).distance_m, point.distance_m);
        }
    }

    /// Halving the steps moves no distance by more than a thousandth. A pack that disconnects, or a
    /// controller that lets go, before the cutback has begun is a wall that steps find less exactly.
    #[test]
    fn steps_of_a_steady_ride_are_fine_enough(board in likely_board(), speed in 2.0..=10.0_f64) {
        let drive = board.drive();
        let usual = drive.reach(speed);
        let (pack, c) = (&drive.build.pack, &drive.build.controller);
        let wall = c.cutback_end_v.max(pack.cut_off_v) >= c.cutback_start_v;
        prop_assume!(holds(&board, &usual) && !wall && usual.distance_m > 5000.0);
        let figures = StyleFigures { cruise_m_s: speed, ..Style::Steady.figures(&drive.build) };
        let (legs, charge) = (figures.legs(), drive.build.ride.start_charge);
        let (course, steps) = (Course::Legs(&legs), Steps::USUAL.halved());
        let half = drive.ride(course, figures.manner(), Until::EMPTY, charge, steps);
        let off = half.distance_m / usual.distance_m - 1.0;
        prop_assert!(off.abs() < 1e-3, "{off} {usual:?} {half:?}");
    }

    /// A ride ends where the board no longer holds its share of the wish, and not before.
    #[test]
    fn a_steady_ride_ends_at_its_share_of_the_wish(board in likely_board(), speed in 2.0..=12.0_f64) {
        let mut trip = Trip::steady(&board.drive(), speed).brief();
        while trip.advance(1) {}
        let last_m_s = trip.now().speed_m_s;
        let found = trip.finish();
        prop_assume!(found.distance_m > 1000.0 && found.end == RideEnd::Slow);
        // A pack that collapses leaves the board rolling: it ends faster than that, never slower.
        let share = last_m_s / found.wish_m_s;
        prop_assert!((END_SHARE - 0.02..=1.0).contains(&share), "{share}");
    }
}
