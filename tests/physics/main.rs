//! Numbers that the core must give and did not make: published tables and
//! worked examples, closed forms, and figures from a second program that solves
//! the raw equations of the model by bisection.
//!
//! Each module lists its checks as data, with the source of every number.

mod air;
mod battery;
mod belt;
mod board;
mod cell;
mod chain;
mod charge;
mod charge_steps;
mod check;
mod closed;
mod copper;
mod frame;
mod gear;
mod lean;
mod margins;
mod martin;
mod motor;
mod packing;
mod parts;
mod practice;
mod ride;
mod road_load;
mod run;
mod supply;
mod wire;
mod wiring;

use check::Check;
use std::collections::HashSet;

macro_rules! subjects {
    ($($subject:ident),* $(,)?) => {
        $(
            #[test]
            fn $subject() {
                check::all_hold(&$subject::checks());
            }
        )*

        /// Every check of every subject above.
        fn every_check() -> Vec<Check> {
            [$($subject::checks()),*].into_iter().flatten().collect()
        }
    };
}

subjects! {
    air, battery, belt, cell, chain, charge, closed, copper, frame, gear, lean, martin, motor, packing, parts, ride, road_load, run, supply, wire,
}

/// The lists above are what is tested; this keeps them from shrinking unseen.
#[test]
fn there_are_many_checks_each_with_a_source() {
    let checks = every_check();
    assert!(checks.len() >= 500, "only {} checks are left", checks.len());
    let mut names = HashSet::new();
    for check in &checks {
        assert!(names.insert(check.name.as_str()), "{} is there twice", check.name);
        assert!(check.source.len() > 10, "{} has no source", check.name);
        assert!(check.within <= 0.1 * check.want.abs().max(1.0), "{} is loose", check.name);
    }
}
