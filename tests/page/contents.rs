//! The way to every question from anywhere on a long page.

use pitchline_tests::browser::{Key, Outcome, Size};
use serde_json::json;

use crate::visit::{Visit, drawn};

/// Which heading has the focus, and whether it stands in sight below the strip.
const THERE: &str = "const at = document.activeElement, strip = document.querySelector('.strip');
    const top = at.getBoundingClientRect().top;
    return [at.textContent, top >= strip.getBoundingClientRect().bottom - 1 && top < innerHeight / 2];";

fn leads_anywhere(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    drawn(page)?;
    for heading in ["Lean and turn", "How far?", "With stops, hills and heat", "Keep this build"] {
        page.by_role("button", "Questions")?.click()?;
        page.by_role("button", heading)?.click()?;
        assert_eq!(page.eval(THERE, &[])?, json!([heading, true]));
        page.wait_until("return !document.querySelector(':popover-open')")?;
    }
    // Every heading that is seen is on the list, but those of how sure an answer is.
    page.by_role("button", "Questions")?.click()?;
    let missing =
        "const listed = [...document.querySelectorAll('#contents li')].map((e) => e.textContent);
        return [...document.querySelectorAll('h2, main h3')].filter((e) => e.checkVisibility()
          && !e.closest('.sure') && !listed.includes(e.textContent)).map((e) => e.textContent)";
    assert_eq!(page.eval(missing, &[])?, json!([]));
    page.screenshot(&format!("page-contents-{size:?}"))?;
    page.press(Key::Escape)?;
    page.wait_until("return !document.querySelector(':popover-open')")?;
    visit.end()
}

#[test]
fn a_phone_leads_to_any_question() -> Outcome {
    leads_anywhere(Size::Phone)
}

#[test]
fn a_desktop_leads_to_any_question() -> Outcome {
    leads_anywhere(Size::Desktop)
}
