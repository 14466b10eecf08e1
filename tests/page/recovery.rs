//! When the calculator breaks: a panel that outlives it, and ways on.

use pitchline_site::Fault;
use pitchline_tests::browser::{Browser, Outcome, Size, Theme};
use serde_json::json;

use crate::keep::save;
use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, kit_for, see, wait_living};

const BROKE: &str =
    "dispatchEvent(new CustomEvent('pitchline:panic', { detail: 'a tooth broke' }))";

fn breaks(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    see(page, "Build")?;
    page.by_role("button", "Gannet")?.click()?;
    let gannet = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    assert_answers(page, &gannet)?;
    see(page, "Share")?;
    save(page, "Mine")?;
    page.by_text("Saved on this device.")?;
    let saved = "return Object.entries(localStorage).filter(([key]) => key.includes(':build:'))";
    let builds = page.eval(saved, &[])?;
    page.by_css(".message")?;
    page.wait_until("return location.hash.includes('kit=gannet')")?;

    page.eval("document.documentElement.dataset.kept = 'yes'", &[])?;
    page.eval(BROKE, &[])?;
    let panel = page.by_role("alert", "")?;
    assert!(panel.text()?.contains("Something broke, but your build is saved"));
    // What a message offers can no longer be had.
    assert!(page.all_by_css(".messages, .message")?.is_empty());
    for name in ["Reload", "Copy report", "Start with the first kit"] {
        assert!(page.by_role("button", name)?.is_uncovered()?, "{name}");
    }
    assert_eq!(
        page.eval("return document.getElementById('pitchline-page').inert", &[])?,
        json!(true)
    );
    assert_eq!(page.focused()?.text()?, "Something broke, but your build is saved");
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
    see(page, "Overview")?;
    assert_answers(page, &gannet)?;

    page.eval(BROKE, &[])?;
    page.by_role("button", "Start with the first kit")?.click()?;
    page.wait_until("return location.search === '?demo'")?;
    wait_living(page)?;
    assert_answers(page, &catalog.draft("kittiwake"))?;
    assert_eq!(page.eval(saved, &[])?, builds, "saved builds are left alone");
    see(page, "Share")?;
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
    see(page, "Build")?;
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

/// Saved is said only of what is; else the address is what is left.
#[test]
fn what_may_be_lost_is_said_and_the_link_is_offered() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    see(page, "Build")?;
    page.by_role("button", "Gannet")?.click()?;
    page.wait_until("return location.hash.includes('kit=gannet')")?;
    page.eval("document.documentElement.dataset.kept = 'no'", &[])?;
    page.eval(BROKE, &[])?;
    let panel = page.by_role("alert", "")?.text()?;
    assert!(panel.contains("your last edit may be lost") && !panel.contains("saved"), "{panel}");
    page.permit("clipboard-write", true)?;
    page.permit("clipboard-read", true)?;
    page.by_role("button", "Copy link")?.click()?;
    page.by_text("Link copied")?;
    let link = page.eval("return await navigator.clipboard.readText()", &[])?;
    assert!(link.as_str().is_some_and(|link| link.contains("kit=gannet")), "{link}");
    page.assert_accessible()?;
    page.screenshot("page-recovery-lost-Phone").map(drop)
}

/// The exports of the wasm that the page itself uses.
const EXPORTS: &str = "const module = await import(new URL(document.querySelector('meta[name=app-module]').content, document.baseURI));
    const wasm = await module.default();";

/// Listeners, timers and calls from outside: nothing enters what has broken.
#[test]
fn after_a_panic_the_wasm_is_left_alone() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let script = format!(
        "{EXPORTS}
        const strip = () => document.querySelector('.strip').textContent;
        const before = strip();
        // The address would follow in a moment.
        document.querySelector('.kits button:not([aria-pressed=\"true\"])').click();
        {BROKE};
        const at = location.href, edited = strip();
        await new Promise((done) => setTimeout(done, 1000));
        const followed = location.href !== at;
        location.hash = '#v=1&kit=gannet&wheel=buoy-210';
        dispatchEvent(new CustomEvent('pitchline:offline-ready'));
        await new Promise((done) => setTimeout(done, 1000));
        return [before === '', followed, strip() !== edited, wasm.__wbindgen_malloc(8, 8)]"
    );
    assert_eq!(page.eval(&script, &[])?, json!([false, false, false, []]));
    visit.end()
}

/// Not played: memory that nobody has.
#[test]
fn a_trap_breaks_the_page_and_shuts_the_wasm() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let script = format!(
        "{EXPORTS}
        setTimeout(() => wasm.__wbindgen_malloc(0xffffffff, 1));
        await new Promise((done) => setTimeout(done, 500));
        return wasm.__wbindgen_malloc(8, 8)"
    );
    let given = page.eval(&script, &[])?;
    page.by_role("alert", "")?;
    assert_eq!(given, json!([]));
    visit.end_but(&["RuntimeError"])
}

#[test]
fn the_panel_can_be_read_in_the_dark() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone).theme(Theme::Dark))?;
    let page = &visit.page;
    let wasm = visit.site.file("_bg.wasm")?;
    visit.server.set_fault(&wasm, Fault::Missing);
    page.goto(&visit.server.url())?;
    page.by_css(".recovery summary")?.click()?;
    page.assert_accessible()?;
    page.screenshot("page-not-loaded-dark-Phone")?;
    visit.server.mend();
    visit.open("")?;
    page.eval(BROKE, &[])?;
    page.by_css(".recovery summary")?.click()?;
    page.assert_accessible()?;
    page.screenshot("page-recovery-dark-Phone")?;
    let paper = page.eval(
        "return getComputedStyle(document.querySelector('.recovery')).backgroundColor",
        &[],
    )?;
    assert_eq!(paper, json!("rgb(16, 24, 28)"), "a light panel on a dark page");
    Ok(())
}

/// `demo` is a key, not a word that may stand anywhere.
#[test]
fn a_link_in_a_campaign_opens() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Desktop))?;
    visit.open("?campaign=demolition#v=1&kit=gannet")?;
    assert_answers(&visit.page, &demo().draft("gannet"))?;
    visit.end()
}
