//! The first screen: the demo's answers in plain HTML, before any script runs.

use std::time::Duration;

use pitchline_site::Fault;
use pitchline_tests::browser::{Browser, Outcome, Page, Size};

use crate::strip::{Strip, expected, strip, tiles};
use crate::visit::{Site, Visit, demo, wait_living};
use pitchline_web::text::Units;

/// All words of the tiles, names included.
#[track_caller]
fn words(page: &Page, selector: &str) -> Outcome<Vec<String>> {
    let script = "return [...document.querySelectorAll(arguments[0])].map((e) => e.textContent.replace(/\\s+/g, ' ').trim())";
    let found = page.eval(script, &[selector.into()])?;
    Ok(serde_json::from_value(found).unwrap_or_default())
}

#[test]
fn the_first_screen_says_what_the_living_one_says() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    page.set_scripts(false)?;
    page.goto(&visit.server.url())?;
    let wanted: Strip = expected(&demo().draft("kittiwake"), Units::Metric);
    assert_eq!(tiles(page, "#pitchline-page .tile")?, wanted);
    let still = words(page, "#pitchline-page .tile")?;
    let text = page.text()?;
    for part in ["Pitchline", "Kittiwake", "needs JavaScript"] {
        assert!(text.contains(part), "{part:?} is not in {text:?}");
    }
    page.screenshot("page-without-scripts-Phone")?;
    page.set_scripts(true)?;
    visit.open("")?;
    assert_eq!(strip(page)?, wanted);
    assert_eq!(words(page, "button.tile")?, still);
    visit.end()
}

/// Scripts run, but the wasm is slow or lost: the answers stand and can be read.
#[test]
fn the_first_screen_stands_while_the_rest_loads() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Desktop))?;
    let page = &visit.page;
    let wasm = visit.site.file("_bg.wasm")?;
    let wanted: Strip = expected(&demo().draft("kittiwake"), Units::Metric);
    visit.server.set_fault(&wasm, Fault::Delay(Duration::from_secs(3)));
    page.goto(&visit.server.url())?;
    assert_eq!(tiles(page, "#pitchline-page .tile")?, wanted);
    assert_eq!(page.all_by_css("button.tile")?.len(), 0, "too fast to be seen");
    page.screenshot("page-while-loading-Desktop")?;
    page.assert_accessible()?;
    wait_living(page)?;
    assert_eq!(strip(page)?, wanted);

    visit.server.set_fault(&wasm, Fault::Missing);
    let lost = Browser::open(Size::Phone)?;
    lost.goto(&visit.server.url())?;
    lost.by_text("The calculator did not load")?;
    lost.by_role("button", "Try again")?;
    assert_eq!(tiles(&lost, "#pitchline-page .tile")?, wanted);
    lost.screenshot("page-not-loaded-Phone")?;
    lost.assert_accessible()?;
    visit.server.mend();
    lost.by_role("button", "Try again")?.click()?;
    lost.wait_until("return document.querySelector('button.tile')")?;
    wait_living(&lost)?;
    visit.end()
}
