//! What a screen reader is told of an edit without being asked.

use std::time::Duration;

use pitchline_core::{Draft, Slot};
use pitchline_tests::browser::{Key, Outcome, Page, Size};

use crate::strip::{assert_answers, expected};
use crate::visit::{Visit, demo, open_build, pick};
use pitchline_web::text::Units;

/// Longer than an edit needs to settle.
const SETTLED: Duration = Duration::from_millis(1600);

/// Notes each text of the status, and how long after the last input it came.
const LISTEN: &str = "
    window.heard = [];
    let typed = 0;
    document.addEventListener('input', () => typed = performance.now(), true);
    const status = [...document.querySelectorAll('.aloud')];
    new MutationObserver(() => window.heard.push([status[0].textContent, performance.now() - typed]))
      .observe(status[0], { childList: true, characterData: true, subtree: true });
    return [status.length, status[0].computedRole, status[0].textContent]";

#[track_caller]
fn heard(page: &Page) -> Outcome<Vec<(String, f64)>> {
    Ok(serde_json::from_value(page.eval("return window.heard", &[])?).unwrap_or_default())
}

/// The three answers in a sentence.
fn sentence(draft: &Draft) -> String {
    let [speed, hill, far] = expected(draft, Units::Metric)
        .map(|tile| tile.split(" | ").next().unwrap_or_default().trim().replace('–', " to "));
    format!("Top speed {speed}, steepest hill {hill}, distance {far}.")
}

#[test]
fn the_answers_are_heard_once_an_edit_has_settled() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    open_build(page)?;
    assert_eq!(page.eval(LISTEN, &[])?, serde_json::json!([1, "status", ""]));
    std::thread::sleep(SETTLED);
    assert_eq!(heard(page)?, [], "the first screen is not an edit");

    // Its valid beginnings (20, 12) are passed over.
    let mass = page.by_css("#rider-mass_kg")?;
    mass.fill("120")?;
    draft.set(Slot::Rider, "mass_kg", 120.0);
    assert_answers(page, &draft)?;
    page.wait_for("the answers are heard", |page| Ok(!heard(page)?.is_empty()))?;
    std::thread::sleep(SETTLED);
    let once = heard(page)?;
    assert_eq!(once.len(), 1, "{once:?}");
    assert_eq!(once[0].0, sentence(&draft));
    assert!((900.0..2500.0).contains(&once[0].1), "{once:?}");

    // What was typed stands once the field is left.
    page.press(Key::Tab)?;
    // Not while a field is faulty, though another part changes the answers.
    mass.fill("1999")?;
    pick(page, &catalog, &mut draft, Slot::Wheel, 2)?;
    assert_answers(page, &draft)?;
    std::thread::sleep(SETTLED);
    assert_eq!(heard(page)?.len(), 1);
    mass.fill("120")?;
    page.wait_for("the answers are heard", |page| Ok(heard(page)?.len() == 2))?;
    assert_eq!(heard(page)?[1].0, sentence(&draft));

    // What changes none of the three says nothing.
    page.by_label("Wheel ×4")?.choose("Shingle 100")?;
    page.by_label("Wheel ×4")?.choose("Shingle 110")?;
    std::thread::sleep(SETTLED);
    assert_eq!(heard(page)?.len(), 2);

    // Heard, not seen, and in nobody's way.
    let seen = "const e = document.querySelector('.aloud'), r = e.getBoundingClientRect();
        return document.elementsFromPoint(r.x + r.width / 2, r.y + r.height / 2).includes(e)";
    page.eval("scrollTo(0, 0)", &[])?;
    assert_eq!(page.eval(seen, &[])?, serde_json::json!(false));
    visit.end()
}
