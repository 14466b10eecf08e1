//! What is recommended, set back into the board, exceeds nothing; and what binds, binds.

use crate::board::{Board, field, likely_board};
use crate::cases;
use pitchline_core::ride::{Course, Leg, Manner, Steps, Trip, Until};
use pitchline_core::{
    Build, Draft, Drive, Grounds, Level, Margin, Margins, Occasion, Rating, Recommended, Setting,
    Slot, margins, mode_settings, settings, with_highest, with_settings,
};
use proptest::prelude::*;
use std::f64::consts::PI;
use std::sync::atomic::{AtomicUsize, Ordering};

/// The settings that ratings limit.
const LIMITS: [Setting; 5] = [
    Setting::MotorDrive,
    Setting::MotorBrake,
    Setting::BatteryDraw,
    Setting::BatteryRegen,
    Setting::Erpm,
];

/// How many settings bound in the boards drawn, so that the law is not empty.
static BOUND: AtomicUsize = AtomicUsize::new(0);

/// What a setting keeps to; the others are for the parts to bear.
const KEPT: [Rating; 12] = [
    Rating::CellDischarge,
    Rating::CellRegen,
    Rating::Protection,
    Rating::Fuse,
    Rating::Leads,
    Rating::InnerWires,
    Rating::PackConnector,
    Rating::ControllerMotorCurrent,
    Rating::ControllerBatteryCurrent,
    Rating::ControllerSpeed,
    Rating::MotorCurrent,
    Rating::Bearings,
];

/// A board on which every rating is given, each somewhere in the lower part of its range.
fn rated_board() -> impl Strategy<Value = Board> {
    let shares = prop::collection::vec(0.02..0.3_f64, 24);
    (likely_board(), shares).prop_map(|(mut board, shares)| {
        let ratings = Rating::ALL.iter().map(|rating| rating.input());
        let more = [(Slot::Pack, "cut_off_v"), (Slot::Motor, "pole_pairs")];
        for ((slot, key), share) in ratings.chain(more).zip(shares.iter().cycle()) {
            let field = field(slot, key);
            let given = board.0.value(slot, key).is_some();
            if !given && field.choices.is_empty() {
                let index = slot.kind().field_index(key).expect("an input");
                let assumed = board.0.assumed(slot, index).filter(|_| key.ends_with("_v"));
                let value = assumed.unwrap_or(field.min + share * (field.max - field.min));
                let whole = if field.must_be_whole() { value.round() } else { value };
                board.0.set(slot, key, whole);
            }
        }
        board
    })
}

fn of(found: &Margins, rating: Rating) -> &Margin {
    let at = found.list.iter().find(|margin| margin.rating == rating);
    at.unwrap_or_else(|| panic!("{rating:?} is not rated"))
}

fn checked(draft: &Draft) -> Build {
    Build::check(draft).expect("in range")
}

/// Whether every limit could be set low enough.
fn all_set(found: &[Recommended]) -> bool {
    found.iter().filter(|one| LIMITS.contains(&one.setting)).all(|one| one.value.is_some())
}

proptest! {
    #![proptest_config(cases(120))]

    #[test]
    fn set_back_they_exceed_no_rating(board in rated_board()) {
        let found = settings(&board.0, &board.build());
        prop_assume!(all_set(&found));
        for set in [with_settings(&board.0, &found), with_highest(&board.0, &found)] {
            let after = margins(&checked(&set));
            for rating in KEPT.into_iter().chain([Rating::Belt]) {
                let margin = of(&after, rating);
                prop_assert!(margin.level != Level::Over, "{margin:?}");
            }
        }
        for one in &found {
            prop_assert!(one.most.is_none() || one.value <= one.most, "{one:?}");
        }
    }

    /// What is recommended does not depend on what was set before.
    #[test]
    fn set_back_they_stay(board in rated_board()) {
        let found = settings(&board.0, &board.build());
        let set = with_settings(&board.0, &found);
        prop_assert_eq!(settings(&set, &checked(&set)), found);
    }

    /// A quarter more than recommended, and the rating that set it has less left, where the board
    /// comes up to it.
    fn what_binds_binds(mut board in rated_board()) {
        // All are set too high, so each is the highest that is allowed.
        for setting in LIMITS {
            let (slot, key) = setting.input().expect("a limit is an input");
            board.0.set(slot, key, field(slot, key).max);
        }
        let found = settings(&board.0, &board.build());
        prop_assume!(all_set(&found));
        let set = with_settings(&board.0, &found);
        let before = margins(&checked(&set));
        for Recommended { setting, value, basis, .. } in &found {
            let (Some(Grounds::Rating(rating)), Some((slot, key))) = (basis, setting.input()) else {
                continue;
            };
            let value = value.expect("all are set") * 1.25;
            let (least, most) = (field(slot, key).min, field(slot, key).max);
            if !(least..=most).contains(&value) {
                continue;
            }
            let mut relaxed = set.clone();
            relaxed.set(slot, key, value);
            let after = margins(&checked(&relaxed));
            let [before, after] = [&before, &after].map(|found| of(found, *rating));
            // What is for long is judged on the hill; there it is full throttle that is let through.
            let briefly = |margin: &Margin| margin.briefly.unwrap_or(margin.asked);
            // Another limit may come first, or the other of driving and braking ask for more.
            let reached = match setting {
                Setting::MotorDrive => before.occasion == Occasion::FullThrottle,
                Setting::MotorBrake => *rating != Rating::Belt || before.occasion == Occasion::Braking,
                _ => true,
            };
            if reached && briefly(before) > 0.98 * before.bears {
                let more = briefly(after) > briefly(before) * 1.001;
                prop_assert!(more, "{setting:?} {before:?} {after:?}");
                BOUND.fetch_add(1, Ordering::Relaxed);
            }
            prop_assert!(after.left <= before.left + 1e-9, "{setting:?} {before:?} {after:?}");
        }
    }

    #[test]
    fn modes_stay_below_the_limits(board in rated_board()) {
        let build = board.build();
        let found = settings(&board.0, &build);
        let value = |setting| found.iter().find(|one| one.setting == setting).and_then(|one| one.value);
        let modes = mode_settings(&board.0, &build, &found);
        prop_assert_eq!(modes.len(), 4);
        for mode in modes {
            for (of_mode, setting) in [
                (mode.motor_a, Setting::MotorDrive),
                (mode.brake_a, Setting::MotorBrake),
                (mode.battery_a, Setting::BatteryDraw),
            ] {
                prop_assert_eq!(of_mode.is_some(), value(setting).is_some());
                prop_assert!(of_mode <= value(setting));
            }
            prop_assert!(value(Setting::Erpm).is_none() || mode.erpm <= value(Setting::Erpm));
            for pair in mode.push_m_s2.windows(2).chain(mode.brake_m_s2.windows(2)) {
                prop_assert!(pair[1] >= pair[0] - 1e-9, "{mode:?}");
            }
        }
    }
}

#[test]
fn a_limit_that_binds_is_no_lower_than_it_must_be() {
    what_binds_binds();
    let bound = BOUND.load(Ordering::Relaxed);
    assert!(bound > 100, "only {bound} settings bound");
}

proptest! {
    #![proptest_config(cases(25))]

    /// The same in time: hard away, up a hill, and hard on the brakes with a full pack. Nothing
    /// but the settings holds the board back.
    #[test]
    fn ridden_with_them_nothing_is_exceeded(board in rated_board(), grade in 0.0..0.2_f64) {
        let build = board.build();
        let found = settings(&board.0, &build);
        prop_assume!(all_set(&found));
        let mut free = with_highest(&board.0, &found);
        for (slot, key) in [
            (Slot::Motor, "max_current_a"), (Slot::Cell, "max_discharge_a"),
            (Slot::Pack, "protection_a"), (Slot::Belt, "rating_n_per_mm"),
        ] {
            free.set(slot, key, field(slot, key).max);
        }
        let drive = Drive::new(&checked(&free));
        let (motors, cells) = (build.truck.motor_count, build.pack.parallel);
        let pack = &build.pack;
        let most_pack_a = [
            cells * build.cell.max_discharge_a,
            pack.protection_a,
            pack.fuse_a.expect("given"),
            pack.wire_a.expect("given"),
            pack.inner_wire_a.expect("given"),
            pack.connector_a.expect("given"),
            motors * build.controller.rated_battery_a.expect("given"),
        ];
        let most_pack_a = most_pack_a.into_iter().fold(f64::INFINITY, f64::min);
        let most_motor_a = build.motor.max_current_a.min(build.controller.rated_motor_a.expect("given"));
        let legs = [
            Leg { length_m: 60.0, grade: 0.0, cruise_m_s: 25.0, rest_s: Some(1.0) },
            Leg { length_m: 60.0, grade, cruise_m_s: 25.0, rest_s: Some(1.0) },
        ];
        let manner = Manner { acceleration_m_s2: 5.0, braking_m_s2: 5.0 };
        let until = Until::time(25.0);
        // Within a step the speed grows, and the power with it: short ones, and a thousandth beside.
        let steps = Steps { changing_s: 0.01, changing: 200.0, ..Steps::USUAL };
        let mut trip = Trip::new(&drive, Course::Legs(&legs), manner, until, 1.0, steps);
        let belt_n = |motor_a: f64| {
            // Peak phase or direct current: torque for each ampere from Kv.
            let factor = match build.controller.convention {
                pitchline_core::Convention::PeakPhase => 0.75_f64.sqrt(),
                pitchline_core::Convention::Direct => 1.0,
            };
            let torque = factor * 60.0 / (2.0 * PI * build.motor.kv_rpm_per_v) * motor_a;
            2.0 * PI * torque / (build.motor_pulley.teeth * build.belt.pitch_m)
        };
        let rated_n = of(&margins(&build), Rating::Belt).bears * 1.000_001;
        let mut steps = 0;
        loop {
            let on = trip.advance(1);
            let now = trip.now();
            prop_assert!(now.motor_a.abs() <= most_motor_a * 1.000_001, "{now:?}");
            prop_assert!(now.pack_a <= most_pack_a * 1.001, "{now:?}");
            prop_assert!(-now.pack_a <= cells * build.cell.max_charge_a * 1.001, "{now:?}");
            let pushed_up = now.pack_a < -1e-6 && now.bus_v > 1.012 * build.full_pack_v() * 1.000_001;
            prop_assert!(!pushed_up, "{} of {now:?}", now.bus_v / build.full_pack_v());
            let pull_n = belt_n(now.motor_a.abs());
            prop_assert!(pull_n <= rated_n, "{pull_n} N of {rated_n}: {found:?} {now:?}");
            steps += 1;
            if !on || steps > 4000 {
                break;
            }
        }
        prop_assert!(steps > 3, "{steps}");
    }
}
