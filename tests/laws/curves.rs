//! Every curve and map gives what the single question gives.

use crate::board::any_board;
use crate::cases;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Build, Draft, Drive, Limit, Mode, Sag, Slot, answers, gear_map, totals};
use proptest::prelude::*;

const FULL: Mode = Mode { current_share: 1.0, speed_cap_m_s: None };

proptest! {
    #![proptest_config(cases(50))]

    #[test]
    fn a_point_of_a_curve_is_the_answer_there(board in any_board()) {
        let build = board.build();
        let (drive, found) = (Drive::new(&build), answers(&build));
        let full = drive.supply(1.0, Sag::Burst);

        for (index, point) in found.push.points.iter().enumerate() {
            let push = drive.push(&full, &FULL, point.speed_m_s, Slope::FLAT);
            prop_assert_eq!((point.push_n, point.limit), (push.force_n, push.limit));
            prop_assert_eq!(point.flat_n, drive.load_n(point.speed_m_s, Slope::FLAT));
            let hill = drive.steepest(&full, point.speed_m_s);
            prop_assert_eq!((point.grade, point.hill_limit), (hill.grade, hill.limit));
            for (grade, loads) in found.push.grades.iter().zip(&found.push.loads) {
                let load = drive.load_n(point.speed_m_s, Slope::of_grade(*grade));
                prop_assert_eq!(loads.get(index), Some(&load));
            }
        }
        let rising = found.push.points.windows(2).all(|two| two[0].speed_m_s < two[1].speed_m_s);
        prop_assert!(rising, "the speeds of the push curve do not rise");

        for (grade, top) in &found.speed.by_grade {
            prop_assert_eq!(*top, drive.top_speed(&full, &FULL, Slope::of_grade(*grade)));
        }
        for (top, mode) in found.speed.modes.iter().zip(&build.modes) {
            prop_assert_eq!(*top, drive.top_speed(&full, mode, Slope::FLAT));
        }
        prop_assert_eq!(found.totals, totals(&build));
    }

    /// The cell of the board's own gear is the board's own answer, and that of
    /// another gear is the answer of the board with that gear.
    #[test]
    fn a_cell_of_the_map_is_the_board_with_that_gear(one in any_board(), other in any_board()) {
        let (build, with) = (one.build(), other.build());
        let cells = gear_map(
            &build,
            &[build.motor_pulley, with.motor_pulley],
            &[build.wheel_pulley, with.wheel_pulley],
            &[build.wheel, with.wheel],
        );
        for cell in cells {
            let mut swapped = build;
            if cell.motor_pulley == 1 { swapped.motor_pulley = with.motor_pulley; }
            if cell.wheel_pulley == 1 { swapped.wheel_pulley = with.wheel_pulley; }
            if cell.wheel == 1 { swapped.wheel = with.wheel; }
            let found = answers(&swapped);
            prop_assert_eq!(cell.top_speed_m_s, found.speed.flat_full.speed_m_s);
            prop_assert_eq!(cell.limit, found.speed.flat_full.limit);
            prop_assert_eq!(cell.grade, found.climb.slow.grade);
        }
    }
}

/// Wet tyres on a steep hill: grip falls with the cosine of the hill, so the curve must be found on
/// the hill and not on the flat. By hand, moments about the front axle on a slope with tangent x:
/// push = ½ μ n W cos a / (2 − μ n h / L), at most ½ μ n W cos a once the front axle carries
/// nothing; it holds W (sin a + Crr cos a) and the air.
#[test]
fn a_hill_that_grip_limits_is_the_headline_in_the_curve() {
    let mut draft = Draft::typical();
    draft.set(Slot::WheelPulley, "teeth", 66.0);
    draft.set(Slot::Place, "grip_percent", 50.0);
    let build = Build::check(&draft).expect("in range");
    let (drive, found) = (Drive::new(&build), answers(&build));
    let full = drive.supply(1.0, Sag::Burst);
    let slow = found.push.points.iter().filter(|point| point.hill_limit == Limit::Grip);
    let share = 0.5 * 2.0;
    let (height, base) = (build.rider.centre_height_m, build.deck.wheelbase_m);
    let held = (0.5 * share / (2.0 - share * height / base)).min(0.5 * share);
    let mut seen = 0;
    for point in slow {
        assert_eq!(point.grade, drive.steepest(&full, point.speed_m_s).grade);
        // Rolling and air only take from it.
        assert!(point.grade < held && point.grade > held - 0.06, "{point:?} {held}");
        seen += 1;
    }
    assert!(seen > 5, "grip binds at {seen} speeds");
}
