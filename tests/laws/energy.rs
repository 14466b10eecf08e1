//! Where every watt goes.

use crate::board::{any_board, any_sag, any_speed, likely_board};
use crate::cases;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Point, answers};
use proptest::prelude::*;

/// What leaves the chemistry is what arrives. Downhill a hundred kilowatts of
/// slope and brake may stand against one watt of idle draw, so rounding is
/// judged against the largest term; where the board is driven that is the
/// chemistry itself, or no more than the few terms it feeds.
fn closes(point: &Point) -> Result<(), TestCaseError> {
    let sinks = point.sinks_w();
    let sum: f64 = sinks.iter().sum();
    let largest = sinks.iter().fold(point.chemical_w.abs(), |most, w| most.max(w.abs()));
    let off = (point.chemical_w - sum).abs();
    prop_assert!(off <= 1e-9 * largest, "{off} of {largest}: {point:?}");
    Ok(())
}

proptest! {
    #![proptest_config(cases(200))]

    #[test]
    fn an_operating_point_closes(
        board in any_board(),
        speed in any_speed(),
        grade in -0.6..=0.6_f64,
        charge in 0.0..=1.0_f64,
        sag in any_sag(),
    ) {
        let drive = board.drive();
        let supply = drive.supply(charge, sag);
        let point = drive.hold(&supply, speed, Slope::of_grade(grade));
        prop_assume!(point.is_some());
        let point = point.unwrap_or_default();
        closes(&point)?;
        // Only air and slope may give; every other sink takes.
        for (name, watt) in [
            ("cells", point.cells_w),
            ("leads", point.leads_w),
            ("controller", point.controller_w),
            ("copper", point.copper_w),
            ("iron", point.iron_w),
            ("belt", point.belt_w),
            ("rolling", point.rolling_w),
        ] {
            prop_assert!(watt >= 0.0, "{name}: {watt}");
        }
        let most = point.slope_w.abs() + point.air_w.abs();
        prop_assert!(point.brake_w >= -1e-12 * most, "brake: {}", point.brake_w);
        // Voltage and current of the pack belong to its chemistry and resistance.
        prop_assert!((point.bus_v - (supply.open_v - point.pack_current_a * supply.resistance_ohm)).abs() < 1e-9);
        prop_assert!(point.pack_current_a > 0.0);
    }

    /// Without brakes and downhill nothing cancels: relative to the chemistry.
    #[test]
    fn a_driven_point_closes_to_a_billionth_of_its_own(
        board in any_board(),
        speed in any_speed(),
        grade in 0.0..=0.6_f64,
        charge in 0.0..=1.0_f64,
        sag in any_sag(),
    ) {
        let drive = board.with(pitchline_core::Slot::Place, "headwind_km_h", board.value(pitchline_core::Slot::Place, "headwind_km_h").abs()).drive();
        let supply = drive.supply(charge, sag);
        let point = drive.hold(&supply, speed, Slope::of_grade(grade));
        prop_assume!(point.is_some());
        let point = point.unwrap_or_default();
        let sum: f64 = point.sinks_w().iter().sum();
        prop_assert!((point.chemical_w - sum).abs() <= 1e-9 * point.chemical_w, "{point:?}");
    }
}

proptest! {
    #![proptest_config(cases(100))]

    #[test]
    fn a_ride_closes(board in likely_board()) {
        let distance = answers(&board.build()).distance;
        let ledger = &distance.ledger;
        prop_assume!(distance.cruise.distance_m > 0.0);
        let sum: f64 = ledger.sinks_wh().iter().sum();
        prop_assert!((ledger.stored_wh - sum).abs() <= 1e-6 * ledger.passed_wh, "{ledger:?}");
        let km = distance.cruise.distance_m / 1000.0;
        let whole = distance.wh_per_km * km;
        prop_assert!((whole - ledger.stored_wh).abs() <= 1e-9 * whole);
        // Force times distance: newton metres of rolling are joules.
        let drive = board.drive();
        let roll = drive.load_n(0.0, Slope::FLAT) - drive.load_n(0.0, Slope { sin: 0.0, cos: 0.0 });
        let joule = roll * distance.cruise.distance_m;
        let off = (ledger.rolling_wh * 3600.0 / joule - 1.0).abs();
        prop_assert!(off < 1e-9, "rolling is off by {off}");
    }
}
