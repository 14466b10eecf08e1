//! A band in words.

use super::measure::Measure;
use crate::app::{Banded, Found};
use crate::text::sure::{self as said, Range};
use crate::text::{Style, duration, hill, page};
use pitchline_core::band::Band;
use pitchline_core::{Build, SLOW_M_S};

/// What is said of a board that does not do it at all: others of its kind might, but a range of
/// those would read as if it did.
pub(super) fn still(of: Banded, found: &Found) -> Option<&'static str> {
    let answers = &found.answers;
    match of {
        Banded::Speed => (answers.speed.flat_full.speed_m_s <= 0.0).then_some(page::STILL),
        Banded::Hill if answers.climb.slow.grade >= 0.0 => None,
        Banded::Hill if answers.speed.flat_full.speed_m_s > 0.0 => Some(hill::TOO_FAST),
        Banded::Hill => Some(page::STILL),
        Banded::Distance | Banded::Outing => {
            (answers.distance.cruise.distance_m <= 0.0).then_some(page::STILL)
        }
        Banded::Charge | Banded::Enough => None,
    }
}

/// What 8 in 10 boards do, the other two, and the middle.
pub(super) fn told(of: Banded, band: &Band, build: &Build, style: Style) -> String {
    let measure = Measure::of(of, style);
    let ends = [band.p10, band.p90];
    let decimals = measure.decimals(ends);
    let write = |value: f64| match of {
        Banded::Charge | Banded::Enough => duration(value),
        // No hill is climbed downward.
        _ => measure.fixed(value.max(0.0), decimals),
    };
    let ([from, to], middle) = (ends.map(write), write(band.p50));
    let unit = match of {
        Banded::Charge | Banded::Enough => String::new(),
        _ => format!("\u{a0}{}", measure.symbol),
    };
    let verb = match of {
        Banded::Speed => said::FAST,
        Banded::Hill => said::CLIMBS,
        Banded::Distance | Banded::Outing => said::GOES,
        Banded::Charge | Banded::Enough => said::CHARGES,
    };
    let place = match of {
        Banded::Hill => said::at(SLOW_M_S, style),
        Banded::Distance => said::at_without_stops(build.ride.cruise_m_s, style),
        Banded::Charge => said::TO_FULL.into(),
        _ => String::new(),
    };
    let range = Range { from: &from, to: &to, middle: &middle, unit: &unit, place: &place, verb };
    range.said()
}
