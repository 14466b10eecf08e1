//! A band in words.

use super::measure::Measure;
use crate::app::Banded;
use crate::text::{Style, duration};
use pitchline_core::band::Band;
use pitchline_core::{Build, SLOW_M_S};

/// What 8 of 10 boards do, the other two, and the middle.
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
    let (does, low, high) = match of {
        Banded::Speed => ("reach", "is slower", "faster"),
        Banded::Hill => ("climb", "climbs less", "more"),
        Banded::Distance | Banded::Outing => ("come", "comes less far", "farther"),
        Banded::Charge | Banded::Enough => ("take", "is quicker", "slower"),
    };
    let place = match of {
        Banded::Hill => format!(" at {}", style.speed_unit(SLOW_M_S)),
        Banded::Distance => {
            format!(" at {} without stops", style.speed_unit(build.ride.cruise_m_s))
        }
        Banded::Charge => " to full".into(),
        _ => String::new(),
    };
    if from == to {
        return format!(
            "Nearly all boards built and ridden like this {does} {from}{unit}{place}, give or take less than this figure shows."
        );
    }
    format!(
        "By reckoning, not by measuring, 8 of 10 boards built and ridden like this {does} {from} to {to}{unit}{place}; 1 {low}, 1 {high}. Half {does} {middle}{unit} or more."
    )
}
