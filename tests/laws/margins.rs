//! Every rating is answered once, the one with the least left first, and what is left follows what
//! the part bears and what is asked.

use crate::board::any_board;
use crate::cases;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{
    CLOSE, Level, Limit, Margin, Margins, Mode, Rating, Sag, Slot, answers, margins,
};
use proptest::prelude::*;

fn of(found: &Margins, rating: Rating) -> Option<&Margin> {
    found.list.iter().find(|margin| margin.rating == rating)
}

/// Ratings that may stay out: a board that never gets hot has no current at which it does, and a
/// tyre whose pressure nobody gave is asked for nothing.
const MAY_STAY_OUT: [Rating; 3] =
    [Rating::WindingHeat, Rating::ControllerHeat, Rating::TyrePressure];

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn each_is_there_once_and_in_order(board in any_board()) {
        let found = margins(&board.build());
        for rating in Rating::ALL {
            let listed = found.list.iter().filter(|margin| margin.rating == rating).count();
            let missing = found.missing.iter().filter(|missing| **missing == rating).count();
            let least = usize::from(!MAY_STAY_OUT.contains(&rating));
            prop_assert!((least..=1).contains(&(listed + missing)), "{rating:?}: {found:?}");
            // Nothing is said of a rating that nobody gave.
            let (slot, key) = rating.input();
            prop_assert!(slot.kind().field_index(key).is_some(), "{key}");
        }
        for pair in found.list.windows(2) {
            prop_assert!(pair[0].left <= pair[1].left, "{pair:?}");
        }
        for margin in &found.list {
            let Margin { asked, bears, left, level, .. } = *margin;
            prop_assert!(asked.is_finite() && bears.is_finite() && left.is_finite(), "{margin:?}");
            let wanted = match left {
                left if margin.rating == Rating::FullPackRegen && left < CLOSE => Level::Close,
                left if left < -1e-9 => Level::Over,
                left if left < CLOSE => Level::Close,
                _ => Level::Fine,
            };
            prop_assert_eq!(level, wanted);
            let kept = margin.rating == Rating::FullPackRegen;
            prop_assert!(kept || bears <= 0.0 || (asked > bears * (1.0 + 1e-9)) == (level == Level::Over), "{margin:?}");
        }
    }

    /// What bears more has more left, and what is asked is the same.
    #[test]
    fn more_rated_is_more_left(board in any_board(), more in 1.05..2.0_f64) {
        for (slot, key, rating) in [
            (Slot::Cell, "max_discharge_a", Rating::CellDischarge),
            (Slot::Pack, "protection_a", Rating::Protection),
            (Slot::Motor, "max_current_a", Rating::MotorCurrent),
            (Slot::Controller, "max_bus_v", Rating::ControllerVoltage),
            (Slot::Controller, "rated_erpm", Rating::ControllerSpeed),
            (Slot::Belt, "rating_n_per_mm", Rating::Belt),
        ] {
            let now = board.value(slot, key);
            let board = board.with(slot, key, now);
            let better = board.with(slot, key, now * more);
            prop_assume!(better.value(slot, key) > now);
            let [before, after] = [&board, &better].map(|board| margins(&board.build()));
            let (before, after) = (of(&before, rating), of(&after, rating));
            let (before, after) = (before.expect("rated"), after.expect("rated"));
            prop_assert!(before.asked <= 0.0 || after.left > before.left, "{key}: {before:?} {after:?}");
            prop_assert!((after.asked - before.asked).abs() <= 1e-9 * before.asked.abs());
        }
    }

    /// A heavier rider asks no less of deck, wheels, windings and pack on the hill.
    #[test]
    fn a_heavier_rider_asks_for_more(board in any_board(), more in 5.0..40.0_f64) {
        let mut board = board;
        board.0.set(Slot::Deck, "max_load_kg", 100.0);
        board.0.set(Slot::Wheel, "max_load_kg", 50.0);
        let now = board.value(Slot::Rider, "mass_kg");
        let heavier = board.with(Slot::Rider, "mass_kg", now + more);
        prop_assume!(heavier.value(Slot::Rider, "mass_kg") > now);
        let [light, heavy] = [&board, &heavier].map(|board| margins(&board.build()));
        for rating in [Rating::DeckLoad, Rating::WheelLoad] {
            let asked = [&light, &heavy].map(|found| of(found, rating).expect("rated").asked);
            prop_assert!(asked[1] > asked[0], "{rating:?}: {asked:?}");
        }
    }

    /// Where a rating holds the push back at a crawl, full throttle asks for more than it bears.
    #[test]
    fn what_holds_the_push_back_is_over(board in any_board()) {
        let (build, drive) = (board.build(), board.drive());
        let full = Mode { current_share: 1.0, speed_cap_m_s: None };
        let supply = drive.supply(1.0, Sag::Burst);
        let push = drive.push(&supply, &full, 2.0 / 3.6, Slope::FLAT);
        let rating = match push.limit {
            Limit::MotorCurrent => Rating::MotorCurrent,
            Limit::CellRating => Rating::CellDischarge,
            Limit::PackProtection => Rating::Protection,
            Limit::Belt => Rating::Belt,
            _ => return Ok(()),
        };
        let found = margins(&build);
        let margin = of(&found, rating).expect("rated");
        prop_assert!(margin.left < 1e-6, "{:?}: {margin:?}", push.limit);
    }
}

proptest! {
    #![proptest_config(cases(30))]

    /// A rating is what a part bears, not what it does.
    #[test]
    fn what_is_only_a_rating_changes_no_answer(board in any_board(), share in 0.0..1.0_f64) {
        let mut rated = board.0.clone();
        for (slot, key) in [
            (Slot::Pack, "fuse_a"), (Slot::Pack, "fuse_v"), (Slot::Pack, "wire_a"),
            (Slot::Pack, "inner_wire_a"), (Slot::Pack, "connector_a"),
            (Slot::Pack, "charge_port_a"), (Slot::Motor, "continuous_a"),
            (Slot::Motor, "connector_a"), (Slot::Controller, "rated_motor_a"),
            (Slot::Controller, "rated_battery_a"), (Slot::Controller, "rated_erpm"),
            (Slot::Wheel, "max_load_kg"),
            (Slot::Wheel, "max_pressure_bar"), (Slot::Wheel, "bearing_rpm"),
            (Slot::Deck, "max_load_kg"),
        ] {
            let index = slot.kind().field_index(key).expect("an input");
            let field = slot.kind().fields()[index];
            rated.set(slot, key, field.min + share * (field.max - field.min));
        }
        let rated = pitchline_core::Build::check(&rated).expect("in range");
        prop_assert_eq!(answers(&board.build()), answers(&rated));
        prop_assert!(margins(&rated).missing.is_empty());
    }
}
