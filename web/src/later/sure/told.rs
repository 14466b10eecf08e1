//! A band in words.

use super::measure::Measure;
use crate::state::App;
use crate::text::{Style, duration};
use pitchline_core::SLOW_M_S;
use pitchline_core::band::{Band, Quantity};

/// What 8 of 10 boards do, the other two, and the middle.
pub(super) fn told(of: Quantity, band: &Band, app: App, style: Style) -> String {
    let measure = Measure::of(of, style);
    let ends = [band.p10, band.p90];
    let decimals = measure.decimals(ends);
    let write = |value: f64| match of {
        Quantity::ChargeTime | Quantity::EnoughTime => duration(value),
        // No hill is climbed downward.
        _ => measure.fixed(value.max(0.0), decimals),
    };
    let ([from, to], middle) = (ends.map(write), write(band.p50));
    let unit = match of {
        Quantity::ChargeTime | Quantity::EnoughTime => String::new(),
        _ => format!("\u{a0}{}", measure.symbol),
    };
    let (does, low, high) = match of {
        Quantity::TopSpeed => ("reach", "is slower", "faster"),
        Quantity::Hill => ("climb", "climbs less", "more"),
        Quantity::SteadyDistance | Quantity::OutingDistance => {
            ("come", "comes less far", "farther")
        }
        Quantity::ChargeTime | Quantity::EnoughTime => ("take", "is quicker", "slower"),
    };
    let place = match of {
        Quantity::Hill => format!(" at {}", style.speed_unit(SLOW_M_S)),
        Quantity::SteadyDistance => {
            let cruise = app.found().map_or(0.0, |found| found.build.ride.cruise_m_s);
            format!(" at {} without stops", style.speed_unit(cruise))
        }
        Quantity::ChargeTime => " to full".into(),
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
