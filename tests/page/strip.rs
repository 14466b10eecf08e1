//! The three answers that stay in view: what the page shows, and what the core
//! says of the same build.

use pitchline_core::{Build, Draft, Limit, answers};
use pitchline_tests::browser::{Fault, Outcome, Page};
use pitchline_web::text::{Units, words};
use serde_json::Value;

/// Figure, unit and what binds (the words behind the last colon), of each tile.
pub(crate) type Strip = [String; 3];

/// The living strip, as it is now.
#[track_caller]
pub(crate) fn strip(page: &Page) -> Outcome<Strip> {
    tiles(page, "button.tile")
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

/// What the strip must show: answered here, rounded here.
pub(crate) fn expected(draft: &Draft, units: Units) -> Strip {
    let found = answers(&Build::check(draft).expect("a valid draft"));
    // NIST SP 811, appendix B: 1 mile is 1609.344 m.
    let (mile, speed_unit, far_unit) = match units {
        Units::Metric => (1.0, "km/h", "km"),
        Units::Imperial => (1.609_344, "mph", "mi"),
    };
    let limit = |limit: Limit| words::limit(limit);
    let top = found.speed.flat_full;
    let hill = found.climb.slow;
    let reach = found.distance.cruise;
    let km = reach.distance_m / 1000.0 / mile;
    let decimals = usize::from(km < 9.95);
    [
        format!("{:.0} {speed_unit} | {}", top.speed_m_s * 3.6 / mile, limit(top.limit)),
        if hill.grade < 0.0 {
            format!("not even flat  | {}", limit(hill.limit))
        } else {
            format!("{:.0} % | {}", hill.grade * 100.0, limit(hill.limit))
        },
        if reach.distance_m > 0.0 {
            format!("{km:.decimals$} {far_unit} | {}", limit(reach.limit))
        } else {
            format!("0 {far_unit} | {}", limit(reach.limit))
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
