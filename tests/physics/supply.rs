//! What the pack's own limits leave, each where it alone binds: a hill is found
//! that takes all of the push, and the pack's current on it has a closed form.

use crate::board::board;
use crate::check::{Check, check, holds};
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Limit, Slot, Supply};

const OHM: &str = "Ohm's law: (V - V_cut) / R with 33 V, 30 V and 0.1 ohm";
const LINE: &str = "by hand: the cutback's line and the sag's line cross at 15.625 A, 30.9375 V";
const RATING: &str = "by hand: 4 cells in parallel at 9 A";
const GIVEN: &str = "the limit as entered";
const HALF: &str = "by hand: the most power comes at V / 2R with 24 V and 0.8 ohm";

/// One limit made to bind, and the pack current that it leaves.
struct Case {
    limit: Limit,
    changes: &'static [(Slot, &'static str, f64)],
    open_v: f64,
    resistance_ohm: f64,
    ampere: f64,
    by: &'static str,
}

const CASES: [Case; 6] = [
    Case {
        limit: Limit::CutOff,
        changes: &[(Slot::Pack, "series", 10.0), (Slot::Pack, "cut_off_v", 3.0)],
        open_v: 33.0,
        resistance_ohm: 0.1,
        ampere: 30.0,
        by: OHM,
    },
    Case {
        // 50 A at 3.3 V a group, nothing at 3.0 V.
        limit: Limit::Cutback,
        changes: &[
            (Slot::Pack, "series", 10.0),
            (Slot::Controller, "battery_current_a", 25.0),
            (Slot::Controller, "cutback_start_v", 3.3),
            (Slot::Controller, "cutback_end_v", 3.0),
        ],
        open_v: 32.5,
        resistance_ohm: 0.1,
        ampere: 15.625,
        by: LINE,
    },
    Case {
        limit: Limit::CellRating,
        changes: &[(Slot::Cell, "max_discharge_a", 9.0), (Slot::Pack, "parallel", 4.0)],
        open_v: 40.0,
        resistance_ohm: 0.1,
        ampere: 36.0,
        by: RATING,
    },
    Case {
        limit: Limit::PackProtection,
        changes: &[(Slot::Pack, "protection_a", 22.0)],
        open_v: 40.0,
        resistance_ohm: 0.1,
        ampere: 22.0,
        by: GIVEN,
    },
    Case {
        // 14 A for each of two motors.
        limit: Limit::ControllerBatteryCurrent,
        changes: &[(Slot::Controller, "battery_current_a", 14.0)],
        open_v: 40.0,
        resistance_ohm: 0.1,
        ampere: 28.0,
        by: GIVEN,
    },
    Case {
        limit: Limit::PackPower,
        changes: &[],
        open_v: 24.0,
        resistance_ohm: 0.8,
        ampere: 15.0,
        by: HALF,
    },
];

pub(crate) fn checks() -> Vec<Check> {
    let mut list = Vec::new();
    for Case { limit, changes, open_v, resistance_ohm, ampere, by } in CASES {
        let drive = board(changes);
        let supply = Supply { open_v, resistance_ohm, lead_ohm: 0.0 };
        let found = drive.steepest(&supply, 3.0);
        // A hair less of a hill: at the most power, rounding decides whether
        // there is an answer, and the current goes as a square root near it.
        let slope = Slope::of_grade(found.grade - 1e-12);
        let within = if limit == Limit::PackPower { 2e-4 } else { 1e-6 };
        let point = drive.hold(&supply, 3.0, slope).unwrap_or_default();
        let volt = open_v - ampere * resistance_ohm;
        list.push(holds(format!("{limit:?} binds on a hill"), found.limit == limit, by));
        list.push(check(format!("{limit:?}: pack"), point.pack_current_a, ampere, within, by));
        list.push(check(format!("{limit:?}: bus"), point.bus_v, volt, within, by));
    }
    list
}
