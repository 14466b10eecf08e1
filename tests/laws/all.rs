//! Every question at once says what each says alone, and nothing else.

use crate::board::any_board;
use crate::cases;
use crate::finite::null_in;
use pitchline_core::fit::{Severity, together};
use pitchline_core::ride::Until;
use pitchline_core::{
    BeltOffers, ChargeAnswer, MODEL, Outing, answer_set, answers, caveats, charging, margins,
    notices, settings, summary,
};
use proptest::prelude::*;
use serde_json::to_value;

proptest! {
    #![proptest_config(cases(40))]

    #[test]
    fn all_at_once_is_what_the_questions_say(board in any_board()) {
        let (draft, build, drive) = (&board.0, board.build(), board.drive());
        let (all, plain) = (answer_set(draft, &build), answers(&build));
        prop_assert_eq!(&all.totals, &plain.totals);
        prop_assert_eq!(&all.speed, &plain.speed);
        prop_assert_eq!(&all.climb, &plain.climb);
        prop_assert_eq!(&all.distance, &plain.distance);
        prop_assert_eq!(&all.push, &plain.push);
        prop_assert_eq!(all.rides.len(), Outing::ALL.len());
        for (found, outing) in all.rides.iter().zip(Outing::ALL) {
            let ride = drive.ride_out(outing, Until::EMPTY);
            prop_assert_eq!(Some(&found.outing), Outing::NAMES.get(outing as usize));
            prop_assert_eq!(found.distance_m, ride.distance_m);
            prop_assert_eq!(found.full_wish_m, ride.full_wish_m);
            prop_assert_eq!(found.limp_m, ride.limp_m);
            prop_assert_eq!(found.time_s, ride.time_s);
            prop_assert_eq!(found.end, ride.end);
            prop_assert_eq!(found.wh_per_km, ride.wh_per_km);
            prop_assert_eq!(found.falls_short, ride.falls_short(outing));
            prop_assert_eq!(found.hottest, ride.hottest);
        }
        // One account of distance: the steady outing is the headline's ride.
        let steady = all.rides.iter().find(|ride| ride.outing == "steady_cruise");
        prop_assert_eq!(steady.map(|ride| ride.distance_m), Some(plain.distance.cruise.distance_m));
        match (all.charge, charging(draft, &build)) {
            (ChargeAnswer::Found(all), Ok(alone)) => prop_assert_eq!(*all, alone),
            (ChargeAnswer::Refused(all), Err(alone)) => prop_assert_eq!(all, alone),
            (all, alone) => prop_assert!(false, "{all:?}, alone {alone:?}"),
        }
        let none = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };
        prop_assert_eq!(&all.fit, &together(draft, &drive, &none));
        prop_assert_eq!(&all.margins, &margins(&build));
        prop_assert_eq!(&all.settings, &settings(draft, &build));
        prop_assert_eq!(all.fit.count(Severity::DoesNotFit), summary(draft, &build).does_not_fit);
        prop_assert_eq!(all.notices, notices(draft, &build));
        prop_assert_eq!(all.caveats, caveats(&build));
        prop_assert_eq!(all.made_by.model, MODEL);
    }

    /// What is not there is left out, so a null is a number that is none.
    #[test]
    fn all_at_once_has_no_number_that_is_none(board in any_board()) {
        let all = answer_set(&board.0, &board.build());
        prop_assert_eq!(null_in(&to_value(all).expect("it has a JSON form"), ""), None);
    }
}

/// What figures hold under is the build's own, in SI.
#[test]
fn the_conditions_are_those_of_the_build() {
    use pitchline_core::{Build, Draft, Slot};
    let mut draft = Draft::typical();
    for (slot, key, value) in [
        (Slot::Place, "air_c", -4.0),
        (Slot::Place, "altitude_m", 900.0),
        (Slot::Place, "headwind_km_h", 18.0),
        (Slot::Place, "surface", 3.0),
        (Slot::Place, "grip_percent", 40.0),
        (Slot::Rider, "mass_kg", 91.0),
        (Slot::Rider, "gear_mass_kg", 6.0),
        (Slot::Ride, "cruise_km_h", 27.0),
        (Slot::Ride, "start_charge_percent", 90.0),
        (Slot::Ride, "low_charge_percent", 15.0),
    ] {
        draft.set(slot, key, value);
    }
    let found = answer_set(&draft, &Build::check(&draft).unwrap()).made_by.conditions;
    // By definition of the units: 18 km/h is 5 m/s, 27 km/h is 7.5 m/s.
    let numbers = [
        (found.air_c, -4.0),
        (found.altitude_m, 900.0),
        (found.headwind_m_s, 5.0),
        (found.grip, 0.4),
        (found.load_kg, 97.0),
        (found.cruise_m_s, 7.5),
        (found.start_charge, 0.9),
        (found.low_charge, 0.15),
    ];
    for (found, wanted) in numbers {
        assert!((found - wanted).abs() < 1e-9, "{found}, not {wanted}");
    }
    assert_eq!(found.surface, "pavers");
}
