//! When the calculator breaks: a panel that outlives it, and ways on.

use pitchline_tests::browser::{Outcome, Size};
use serde_json::json;

use crate::keep::save;
use crate::strip::assert_answers;
use crate::visit::{Visit, demo, kit_for, wait_living};

fn breaks(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    page.by_role("button", "Gannet")?.click()?;
    let gannet = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    assert_answers(page, &gannet)?;
    save(page, "Mine")?;
    page.by_text("Saved on this device.")?;
    let saved = "return Object.entries(localStorage).filter(([key]) => key.includes(':build:'))";
    let builds = page.eval(saved, &[])?;
    page.by_css(".message")?;
    page.wait_until("return location.hash.includes('kit=gannet')")?;

    let broke = "dispatchEvent(new CustomEvent('pitchline:panic', { detail: 'a tooth broke' }))";
    page.eval(broke, &[])?;
    let panel = page.by_role("alert", "")?;
    assert!(panel.text()?.contains("Something broke; your set-up is saved"));
    // What a message offers can no longer be had.
    assert!(page.all_by_css(".messages, .message")?.is_empty());
    for name in ["Reload", "Copy report", "Start with the demo"] {
        assert!(page.by_role("button", name)?.is_uncovered()?, "{name}");
    }
    assert_eq!(
        page.eval("return document.getElementById('pitchline-page').inert", &[])?,
        json!(true)
    );
    assert_eq!(page.focused()?.text()?, "Something broke; your set-up is saved");
    page.screenshot(&format!("page-recovery-{size:?}"))?;
    page.assert_accessible()?;
    page.permit("clipboard-write", true)?;
    page.permit("clipboard-read", true)?;
    page.by_role("button", "Copy report")?.click()?;
    page.by_text("Report copied")?;
    let report = page.eval("return await navigator.clipboard.readText()", &[])?;
    let report = report.as_str().unwrap_or_default().to_owned();
    assert!(report.contains("a tooth broke") && report.contains("kit=gannet"), "{report}");

    page.by_role("button", "Reload")?.click()?;
    page.wait_until("return !document.querySelector('.recovery')")?;
    wait_living(page)?;
    assert_answers(page, &gannet)?;

    page.eval(broke, &[])?;
    page.by_role("button", "Start with the demo")?.click()?;
    page.wait_until("return location.search === '?demo'")?;
    wait_living(page)?;
    assert_answers(page, &catalog.draft("kittiwake"))?;
    assert_eq!(page.eval(saved, &[])?, builds, "saved builds are left alone");
    page.by_role("button", "Open Mine")?;
    visit.end()
}

#[test]
fn a_broken_page_offers_three_ways_on_a_phone() -> Outcome {
    breaks(Size::Phone)
}

#[test]
fn a_broken_page_offers_three_ways_on_a_desktop() -> Outcome {
    breaks(Size::Desktop)
}

/// The panel promised that the set-up is saved: a look at the demo must not
/// write over it.
#[test]
fn the_demo_leaves_the_last_build_alone() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let catalog = demo();
    page.by_role("button", "Gannet")?.click()?;
    let gannet = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    assert_answers(page, &gannet)?;
    page.wait_until("return location.hash.includes('kit=gannet')")?;
    visit.open("?demo")?;
    assert_answers(page, &catalog.draft("kittiwake"))?;
    visit.open("")?;
    assert_answers(page, &gannet)?;
    visit.end()
}
