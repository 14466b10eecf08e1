//! Browsers that keep nothing: the page works, and does not claim otherwise.

use pitchline_core::Slot;
use pitchline_tests::browser::{Browser, Outcome, Size};
use serde_json::json;

use crate::keep::save;
use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, kit_for, open_build, put, see};

/// Cookies blocked: even asking for the store throws.
const CLOSED: &str = "Object.defineProperty(window, 'localStorage', {
    get() { throw new DOMException('Access is denied for this document.', 'SecurityError'); } });";

/// No room left: reading works, writing throws.
const FULL: &str = "Storage.prototype.setItem = function () {
    throw new DOMException('The quota has been exceeded.', 'QuotaExceededError'); };";

fn works_with(store: &str) -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    page.before_each_page(store)?;
    visit.open("")?;
    let throws = "try { localStorage.setItem('a', 'b'); return false } catch { return true }";
    assert_eq!(page.eval(throws, &[])?, json!(true));
    let catalog = demo();
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    page.by_label("Wheel ×4")?.choose("Buoy 185")?;
    let mut draft = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    put(&mut draft, &catalog, Slot::Wheel, "buoy-185");
    assert_answers(page, &draft)?;
    see(page, "More")?;
    page.by_role("button", "mi, lb")?.click()?;
    page.by_role("button", "km, kg")?.click()?;
    page.wait_until("return location.hash.includes('wheel=buoy-185')")?;
    // The address still holds the build.
    visit.reload()?;
    see(page, "Overview")?;
    assert_answers(page, &draft)?;

    save(&visit.page, "Mine")?;
    visit.page.wait_until("return document.querySelector('.message')")?;
    let said = visit.page.by_css(".messages")?.text()?;
    assert!(!said.contains("Saved on this device"), "nothing was saved, yet: {said}");
    visit.end()
}

#[test]
fn a_closed_store_is_no_harm() -> Outcome {
    works_with(CLOSED)
}

#[test]
fn a_full_store_is_no_harm() -> Outcome {
    works_with(FULL)
}

/// What the page kept came to harm; nothing of it is thrown away unasked.
#[test]
fn a_spoilt_store_is_kept_aside() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    visit.page.eval(
        "localStorage.setItem('pitchline:/:builds', '[{\"format\": \"pitch');
         localStorage.setItem('pitchline:/:current', '{\"wheel\": 7}');
         localStorage.setItem('pitchline:/:units', 'cubits');
         localStorage.setItem('someone:else', 'not yours')",
        &[],
    )?;
    visit.open("")?;
    let catalog = demo();
    assert_answers(&visit.page, &catalog.draft("kittiwake"))?;
    save(&visit.page, "New")?;
    visit.page.by_text("Saved on this device.")?;
    let kept = visit.page.eval(
        "const kept = Object.values(localStorage);
         return ['[{\"format\": \"pitch', '{\"wheel\": 7}', 'not yours'].map((text) => kept.includes(text))",
        &[],
    )?;
    assert_eq!(kept, json!([true, true, true]));
    visit.page.by_role("button", "Open New")?;
    visit.page.by_role("button", "Save as file: builds")?;
    visit.end()
}
