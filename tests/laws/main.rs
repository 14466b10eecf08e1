//! Laws that hold for every board that may be entered, tried on random ones.
//!
//! Boards are drawn from the tables of limits themselves, so a new input is
//! under these laws from its first day. Seeds are fixed: a run repeats.

mod all;
mod band;
mod belt;
mod board;
mod chain;
mod charge;
mod charger;
mod cold;
mod curves;
mod distance;
mod energy;
mod file;
mod finite;
mod frame;
mod gearing;
mod limits;
mod margins;
mod misfit;
mod order;
mod printed;
mod refusal;
mod ride;
mod settings;
mod summary;
mod working;

use proptest::test_runner::{Config, RngSeed};

/// So many cases that count; a case set aside by `prop_assume` is drawn anew,
/// and too many of those fail, so no law passes for want of cases.
pub(crate) fn cases(count: u32) -> Config {
    Config {
        cases: count,
        max_global_rejects: 20 * count,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(0x5eed),
        ..Config::default()
    }
}
