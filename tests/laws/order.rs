//! Which answer may never exceed which.

use crate::board::{any_board, any_sag, any_speed};
use crate::cases;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Mode, Sag, answers};
use proptest::prelude::*;

const FULL: Mode = Mode { current_share: 1.0, speed_cap_m_s: None };

/// Speeds are found to 1e-10 m/s.
const SPEED: f64 = 1e-9;
/// Where voltage binds the current is found to 1e-9 A.
const GRADE: f64 = 1e-6;

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn answers_of_one_board(board in any_board()) {
        let found = answers(&board.build());
        let (speed, climb) = (&found.speed, &found.climb);
        let top = speed.flat_full.speed_m_s;
        // After the same steady ride: ten seconds at 4C can take more from cold cells than half of
        // their charge does.
        let drive = board.drive();
        let settled = drive.top_speed(&drive.supply(1.0, Sag::Sustained), &FULL, Slope::FLAT);
        let low = speed.flat_low.speed_m_s;
        prop_assert!(low <= settled.speed_m_s + SPEED, "nearly empty: {speed:?}, {settled:?}");
        for mode in speed.modes {
            prop_assert!(mode.speed_m_s <= top + SPEED, "mode: {speed:?}");
        }
        prop_assert!(speed.on_grade.speed_m_s <= top + SPEED, "uphill: {speed:?}");
        let mut last = top;
        for (grade, found) in &speed.by_grade {
            prop_assert!(found.speed_m_s <= last + SPEED, "{grade}: {speed:?}");
            last = found.speed_m_s;
        }
        let settled = drive.steepest(&drive.supply(1.0, Sag::Sustained), climb.slow.speed_m_s);
        prop_assert!(climb.slow_low.grade <= settled.grade + GRADE, "{climb:?}, {settled:?}");
        prop_assert!(climb.brisk.grade <= climb.slow.grade + GRADE, "{climb:?}");
        prop_assert!(climb.slow.grade <= climb.crawl.grade + GRADE, "{climb:?}");
        let mut last = f64::INFINITY;
        for point in &found.push.points {
            prop_assert!(point.push_n <= last + GRADE * point.push_n.abs(), "{point:?}");
            last = point.push_n;
        }
    }

    #[test]
    fn a_mode_that_leaves_less_is_never_faster(
        board in any_board(),
        share in 0.05..=1.0_f64,
        less in 0.05..=1.0_f64,
        cap in prop::option::of(0.9..=33.0_f64),
        charge in 0.0..=1.0_f64,
        sag in any_sag(),
    ) {
        let drive = board.drive();
        let supply = drive.supply(charge, sag);
        let top = |mode| drive.top_speed(&supply, &mode, Slope::FLAT).speed_m_s;
        let free = top(Mode { current_share: share, speed_cap_m_s: None });
        let held = top(Mode { current_share: share * less, speed_cap_m_s: cap });
        prop_assert!(free <= top(FULL) + SPEED);
        prop_assert!(held <= free + SPEED);
        prop_assert!(cap.is_none_or(|cap| held <= cap));
    }
}

proptest! {
    #![proptest_config(cases(300))]

    #[test]
    fn a_fuller_pack_never_pushes_less(
        board in any_board(),
        speed in any_speed(),
        low in 0.0..=1.0_f64,
        high in 0.0..=1.0_f64,
        sag in any_sag(),
    ) {
        let drive = board.drive();
        let (low, high) = (low.min(high), low.max(high));
        let at = |charge| drive.push(&drive.supply(charge, sag), &FULL, speed, Slope::FLAT).force_n;
        prop_assert!(at(low) <= at(high) + GRADE * at(high).abs());
    }
}
