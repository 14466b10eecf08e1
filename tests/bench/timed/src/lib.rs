//! What the benches time in wasm as in native code: an hour of stop and go, and a band.
//!
//! Built with the page's profile for wasm, so that the page need not export it.

use pitchline_core::band::{Band, Quantity};
use pitchline_core::ride::{Course, Leg, Manner, Ridden, Steps, Until};
use pitchline_core::{Build, Draft, Drive, Slot};
use std::sync::OnceLock;

/// The board of `tests/fixture/ride`.
#[must_use]
pub fn board() -> Build {
    let mut draft = Draft::typical();
    let rows = include_str!("../../../fixture/ride/board.csv").lines().skip(1);
    for row in rows.filter(|row| !row.starts_with('#')) {
        let mut cells = row.split(',');
        let mut cell = || cells.next().expect("three cells in a row");
        let (slot, key, value) = (cell(), cell(), cell());
        let slot = Slot::from_key(slot).expect("a slot");
        draft.set(slot, key, value.parse().expect("a number"));
    }
    Build::check(&draft).expect("within limits")
}

/// The hour of `tests/fit/ride.py`: legs of 400 m, up and down, a stop and a rest.
#[must_use]
pub fn hour(build: &Build) -> Ridden {
    let leg = |grade, rest_s| Leg { length_m: 200.0, grade, cruise_m_s: 5.0, rest_s };
    let legs = [leg(0.02, None), leg(-0.02, Some(12.0))];
    let manner = Manner { acceleration_m_s2: 3.0, braking_m_s2: 3.0 };
    Drive::new(build).ride(Course::Legs(&legs), manner, Until::time(3600.0), 0.97, Steps::USUAL)
}

/// The band of the steady distance on the typical board.
///
/// # Panics
///
/// Never: the typical board has an answer.
#[must_use]
pub fn distance_band() -> Band {
    let build = Build::check(&Draft::typical()).expect("typical values are within their limits");
    Band::of(&build, Quantity::SteadyDistance).expect("it has an answer")
}

/// A figure of the hour: distance, charge left, hottest winding.
#[must_use]
pub fn of_hour(ridden: &Ridden) -> [f64; 3] {
    [ridden.distance_m, ridden.end_charge, ridden.hottest.winding_c]
}

/// A figure of the band: 10, 50 and 90 of a hundred.
#[must_use]
pub fn of_band(band: &Band) -> [f64; 3] {
    [band.p10, band.p50, band.p90]
}

/// Read once: reading is not what is timed.
static BOARD: OnceLock<Build> = OnceLock::new();

/// Rides the hour and gives the figure of this number.
#[unsafe(no_mangle)]
pub extern "C" fn ride(figure: usize) -> f64 {
    of_hour(&hour(BOARD.get_or_init(board))).get(figure).copied().unwrap_or(f64::NAN)
}

/// Works the band out and gives the figure of this number.
#[unsafe(no_mangle)]
pub extern "C" fn band(figure: usize) -> f64 {
    of_band(&distance_band()).get(figure).copied().unwrap_or(f64::NAN)
}
