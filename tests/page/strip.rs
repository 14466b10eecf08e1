//! The three answers that stay in view: what the page shows, and what the core
//! says of the same build.

use pitchline_core::band::{Band, Quantity};
use pitchline_core::ride::SagCause;
use pitchline_core::{Build, Draft, Limit, Reach, answers};
use pitchline_tests::browser::{Fault, Outcome, Page};
use pitchline_web::text::{Units, words};
use serde_json::Value;

/// Figure, unit and what binds (the words behind the last colon), of each tile.
pub(crate) type Strip = [String; 3];

/// The living strip, as it is now.
#[track_caller]
pub(crate) fn strip(page: &Page) -> Outcome<Strip> {
    tiles(page, "a.tile")
}

/// The same of other tiles.
#[track_caller]
pub(crate) fn tiles(page: &Page, selector: &str) -> Outcome<Strip> {
    let script = "return [...document.querySelectorAll(arguments[0])].map((tile) => {
        const [strong, unit] = tile.querySelector('.headline-figure').children;
        const limit = tile.querySelector('.headline-limit');
        return `${strong.textContent} ${unit.textContent} | ${limit.textContent.split(': ').at(-1)}`;
      })";
    let found = page.eval(script, &[selector.into()])?;
    let list: Vec<String> = serde_json::from_value(found.clone()).unwrap_or_default();
    list.try_into().map_err(|_| Fault::new(format!("not three tiles: {found}")))
}

/// What the strip must show once it has settled: the bands of this draft, worked out here and
/// rounded here.
pub(crate) fn expected(draft: &Draft, units: Units) -> Strip {
    let build = Build::check(draft).expect("a valid draft");
    shown(&build, units, |quantity| {
        let band = Band::of(&build, quantity).expect("it has an answer");
        [band.p10, band.p90]
    })
}

/// What it shows before there are bands: the answers alone.
pub(crate) fn nominal(draft: &Draft, units: Units) -> Strip {
    let build = Build::check(draft).expect("a valid draft");
    let found = answers(&build);
    shown(&build, units, |quantity| match quantity {
        Quantity::TopSpeed => [found.speed.flat_full.speed_m_s; 2],
        Quantity::Hill => [found.climb.slow.grade; 2],
        _ => [found.distance.cruise.distance_m; 2],
    })
}

/// A low and a high figure with a dash, or one where they read alike.
fn between([low, high]: [f64; 2], decimals: usize) -> String {
    let (low, high) = (format!("{low:.decimals$}"), format!("{high:.decimals$}"));
    if low == high { low } else { format!("{low}–{high}") }
}

fn shown(build: &Build, units: Units, band: impl Fn(Quantity) -> [f64; 2]) -> Strip {
    let found = answers(build);
    // NIST SP 811, appendix B: 1 mile is 1609.344 m.
    let (mile, speed_unit, far_unit) = match units {
        Units::Metric => (1.0, "km/h", "km"),
        Units::Imperial => (1.609_344, "mph", "mi"),
    };
    let limit = |limit: Limit| words::limit_short(limit);
    // An empty pack is said by the charge at which it ends.
    let reach_limit = |reach: &Reach| match reach.sag {
        Some(SagCause::LowCharge) if reach.distance_m > 0.0 => {
            format!("Ends at {:.0}\u{a0}% charge", 100.0 * reach.end_charge)
        }
        sag => words::met(reach.limit, sag).to_owned(),
    };
    let top = found.speed.flat_full;
    let hill = found.climb.slow;
    let reach = found.distance.cruise;
    let speed = band(Quantity::TopSpeed).map(|v| v * 3.6 / mile);
    let grade = band(Quantity::Hill).map(|grade| grade.max(0.0) * 100.0);
    let km = band(Quantity::SteadyDistance).map(|distance| distance / 1000.0 / mile);
    // Ten and more, and what is not known to two, in whole numbers.
    let decimals = usize::from(km[1] < 9.95 && km[1] - km[0] < 2.0);
    [
        // A board that does not move has no range.
        if top.speed_m_s > 0.0 {
            format!("{} {speed_unit} | {}", between(speed, 0), limit(top.limit))
        } else {
            format!("0 {speed_unit} | {}", limit(top.limit))
        },
        if hill.grade < 0.0 {
            format!("can't hold this speed on the flat  | {}", limit(hill.limit))
        } else {
            format!("{} % | {}", between(grade, 0), limit(hill.limit))
        },
        if reach.distance_m > 0.0 {
            format!("{} {far_unit} | {}", between(km, decimals), reach_limit(&reach))
        } else {
            format!("0 {far_unit} | {}", reach_limit(&reach))
        },
    ]
}

/// Waits until the strip shows the answers to this draft.
#[track_caller]
pub(crate) fn assert_answers(page: &Page, draft: &Draft) -> Outcome {
    assert_answers_in(page, draft, Units::Metric)
}

#[track_caller]
pub(crate) fn assert_answers_in(page: &Page, draft: &Draft, units: Units) -> Outcome {
    let wanted = expected(draft, units);
    let waited = page.wait_for("the strip", |page| Ok(strip(page)? == wanted));
    if waited.is_ok() {
        return Ok(());
    }
    Err(Fault::new(format!("the strip shows {:#?}, not {wanted:#?}", strip(page)?)))
}

/// A JSON number at a pointer.
#[track_caller]
pub(crate) fn number(value: &Value, pointer: &str) -> f64 {
    let found = value.pointer(pointer).and_then(Value::as_f64);
    found.unwrap_or_else(|| panic!("no number at {pointer} of {value}"))
}
