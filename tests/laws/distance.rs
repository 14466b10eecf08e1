//! What never takes a board farther.
//!
//! Each pair of boards differs in one thing, at one steady speed. A ride that
//! grip ends is left out where mass or slope changes: a heavier board has more
//! grip, so there it may truly go on where the lighter one spins.

use crate::board::{Board, End, any_board, likely_board};
use crate::cases;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Limit, Mode, Reach, Sag, Slot, answers};
use proptest::prelude::*;

fn reach(board: &Board, speed: f64, grade: f64) -> Reach {
    board.drive().reach(speed, Slope::of_grade(grade))
}

fn never_farther(easy: &Reach, hard: &Reach) -> Result<(), TestCaseError> {
    // The charge at the end is found to 1e-9.
    let slack = 1e-6 * easy.distance_m;
    prop_assert!(hard.distance_m <= easy.distance_m + slack, "{easy:?} {hard:?}");
    Ok(())
}

fn steady_speed() -> impl Strategy<Value = f64> {
    prop_oneof![4 => 1.0..=12.0_f64, 1 => 1.0..=30.0_f64]
}

proptest! {
    #![proptest_config(cases(120))]

    /// On the flat and uphill mass only adds load, whatever the wind. Downhill
    /// it pulls, so downhill is not in this law.
    #[test]
    fn heavier(
        board in any_board(), speed in steady_speed(), grade in 0.0..=0.3_f64, by in 0.0..=1.0_f64,
    ) {
        let heavy = board.toward(Slot::Rider, "mass_kg", End::Most, by);
        let (light, heavy) = (reach(&board, speed, grade), reach(&heavy, speed, grade));
        prop_assume!(light.distance_m > 0.0 && light.limit != Limit::Grip);
        never_farther(&light, &heavy)?;
    }

    /// Rolling and slope together grow with the slope until its tangent is
    /// 1 / Crr, at least 1.6 here. Grip falls uphill, which is on the law's side.
    #[test]
    fn steeper(
        board in any_board(),
        speed in steady_speed(),
        grade in 0.0..=0.3_f64,
        more in 0.0..=0.3_f64,
    ) {
        let (flat, steep) = (reach(&board, speed, grade), reach(&board, speed, grade + more));
        prop_assume!(flat.distance_m > 0.0);
        never_farther(&flat, &steep)?;
    }

    /// Air resistance grows with the headwind everywhere, following winds
    /// included: a weaker push from behind is a loss too.
    #[test]
    fn windier(board in any_board(), speed in steady_speed(), by in 0.0..=1.0_f64) {
        let windy = board.toward(Slot::Place, "headwind_km_h", End::Most, by);
        let (calm, windy) = (reach(&board, speed, 0.0), reach(&windy, speed, 0.0));
        prop_assume!(calm.distance_m > 0.0);
        never_farther(&calm, &windy)?;
    }

    /// Colder air is denser and cells are worse. Two things speak for cold and
    /// are kept out: a wind from behind faster than the board, which pushes
    /// harder when dense, and long thin leads, whose copper conducts better.
    #[test]
    fn colder(board in any_board(), speed in steady_speed(), by in 0.0..=1.0_f64) {
        let wind = board.value(Slot::Place, "headwind_km_h").abs();
        let board = board
            .with(Slot::Place, "headwind_km_h", wind)
            .with(Slot::Pack, "wire_m", 0.0);
        let cold = board.toward(Slot::Place, "air_c", End::Least, by);
        let (warm, cold) = (reach(&board, speed, 0.0), reach(&cold, speed, 0.0));
        prop_assume!(warm.distance_m > 0.0);
        never_farther(&warm, &cold)?;
    }

    /// A pack that starts with less charge, is older or has fewer cells beside
    /// each other.
    #[test]
    fn emptier(board in any_board(), speed in steady_speed(), by in 0.0..=1.0_f64) {
        let full = reach(&board, speed, 0.0);
        prop_assume!(full.distance_m > 0.0);
        for (slot, key, end) in [
            (Slot::Ride, "start_charge_percent", End::Least),
            (Slot::Cell, "capacity_ah", End::Least),
        ] {
            let less = reach(&board.toward(slot, key, end, by), speed, 0.0);
            never_farther(&full, &less)?;
        }
        let cycles = board.value(Slot::Pack, "cycles");
        let older = board.with(Slot::Pack, "cycles", (cycles + 1000.0 * by).round());
        never_farther(&full, &reach(&older, speed, 0.0))?;
    }
}

/// Slices of a sum made here, by midpoints.
const SLICES: u32 = 500;

proptest! {
    #![proptest_config(cases(60))]

    /// The ride once more, in another way: the seconds and watt-hours that each
    /// of many thin slices of charge gives, added up.
    #[test]
    fn a_ride_is_the_sum_of_its_slices(board in likely_board()) {
        let (build, drive) = (board.build(), board.drive());
        let found = answers(&build).distance;
        let Reach { speed_m_s, distance_m, end_charge, .. } = found.cruise;
        prop_assume!(distance_m > 0.0 && build.ride.start_charge - end_charge > 0.02);
        let chemistry = build.cell.chemistry;
        let left = chemistry.fade(build.pack.cycles).0 * chemistry.capacity_factor(build.place.air_c);
        let slice = (build.ride.start_charge - end_charge) / f64::from(SLICES);
        let slice_ah = build.pack.parallel * build.cell.capacity_ah * left * slice;
        let (mut hours, mut watt_hours) = (0.0, 0.0);
        for index in 0..SLICES {
            let charge = end_charge + slice * (f64::from(index) + 0.5);
            let supply = drive.supply(charge, Sag::Sustained);
            let point = drive.hold(&supply, speed_m_s, Slope::FLAT);
            prop_assert!(point.is_some(), "not held at {charge}");
            hours += slice_ah / point.unwrap_or_default().pack_current_a;
            watt_hours += slice_ah * supply.open_v;
        }
        let off = distance_m / (speed_m_s * 3600.0 * hours) - 1.0;
        // What the core promises of its own coarser sum.
        prop_assert!(off.abs() < 1e-3, "distance is off by {off}: {found:?}");
        let off = found.energy_wh.chemical_w / watt_hours - 1.0;
        prop_assert!(off.abs() < 1e-3, "energy is off by {off}: {found:?}");
    }
}

proptest! {
    #![proptest_config(cases(120))]

    /// A ride ends where the push of a long ride no longer holds the speed, and
    /// not before.
    #[test]
    fn a_ride_ends_where_the_push_does(board in any_board(), speed in steady_speed()) {
        let drive = board.drive();
        let found = drive.reach(speed, Slope::FLAT);
        prop_assume!(found.distance_m > 0.0);
        let full = Mode { current_share: 1.0, speed_cap_m_s: None };
        let spare = |charge: f64| {
            let supply = drive.supply(charge, Sag::Sustained);
            drive.push(&supply, &full, speed, Slope::FLAT).force_n
                - drive.load_n(speed, Slope::FLAT)
        };
        if found.limit == Limit::Empty {
            prop_assert_eq!(found.end_charge, 0.0);
            prop_assert!(spare(0.0) >= 0.0);
        } else {
            // Found to 1e-9 of charge.
            prop_assert!(spare(found.end_charge + 1e-8) >= 0.0, "ends too late: {found:?}");
            prop_assert!(spare(found.end_charge - 1e-8) <= 0.0, "ends too soon: {found:?}");
        }
    }
}
