//! A band in words.

use super::measure::Measure;
use crate::state::App;
use crate::text::Style;
use pitchline_core::band::{Band, Quantity};

/// What 8 of 10 boards do, the other two, and the middle.
pub(super) fn told(of: Quantity, band: &Band, app: App, style: Style) -> String {
    let measure = Measure::of(of, style);
    let ends = [band.p10, band.p90];
    let decimals = measure.decimals(ends);
    // No hill is climbed downward.
    let ends = ends.map(|value| measure.fixed(value.max(0.0), decimals));
    let middle = measure.fixed(band.p50.max(0.0), decimals);
    let (does, low, high) = match of {
        Quantity::TopSpeed => ("reach", "is slower", "faster"),
        Quantity::Hill => ("climb", "climbs less", "more"),
        Quantity::SteadyDistance | Quantity::StyleDistance(_) => {
            ("come", "comes less far", "farther")
        }
        Quantity::ChargeTime => ("take", "is quicker", "slower"),
    };
    let where_ = match of {
        Quantity::Hill => format!(" at {}", style.speed_unit(10.0 / 3.6)),
        Quantity::SteadyDistance => {
            let cruise = app.found().map_or(0.0, |found| found.build.ride.cruise_m_s);
            format!(" at {} without stops", style.speed_unit(cruise))
        }
        _ => String::new(),
    };
    let [from, to] = ends;
    let symbol = measure.symbol;
    if from == to {
        return format!(
            "Nearly all boards built and ridden like this {does} {from}\u{a0}{symbol}{where_}, give or take less than this figure shows."
        );
    }
    format!(
        "8 of 10 boards built and ridden like this {does} {from} to {to}\u{a0}{symbol}{where_}; 1 {low}, 1 {high}. Half {does} {middle}\u{a0}{symbol} or more."
    )
}
