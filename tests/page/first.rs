//! The shell in the HTML: what stands there before any script runs.

use std::time::Duration;

use pitchline_site::Fault;
use pitchline_tests::browser::{Browser, Outcome, Page, Size};
use pitchline_web::question::registry::{ANSWERED, SETUP};

use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, wait_living};

/// What it is and what it asks, without a figure.
#[track_caller]
fn assert_shell(page: &Page) -> Outcome {
    let text = page.text()?;
    let titles = [SETUP].iter().chain(ANSWERED).map(|question| question.title);
    for part in titles.chain(["Pitchline", "Top speed"]) {
        assert!(text.contains(part), "{part:?} is not in {text:?}");
    }
    let tiles = "return [...document.querySelectorAll('#pitchline-page .tile strong')].map((e) => e.textContent)";
    assert_eq!(page.eval(tiles, &[])?, serde_json::json!(["–", "–", "–"]));
    Ok(())
}

#[test]
fn the_shell_says_what_it_is_without_scripts() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    page.set_scripts(false)?;
    page.goto(&visit.server.url())?;
    assert_shell(page)?;
    assert!(page.text()?.contains("needs JavaScript"));
    page.screenshot("page-without-scripts-Phone")?;
    page.set_scripts(true)?;
    visit.open("")?;
    assert_answers(page, &demo().draft("kittiwake"))?;
    visit.end()
}

/// Scripts run, but the wasm is slow or lost: the shell stands and can be read.
#[test]
fn the_shell_stands_while_the_rest_loads() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Desktop))?;
    let page = &visit.page;
    let wasm = visit.site.file("_bg.wasm")?;
    visit.server.set_fault(&wasm, Fault::Delay(Duration::from_secs(3)));
    page.goto(&visit.server.url())?;
    assert_shell(page)?;
    assert_eq!(page.all_by_css("button.tile")?.len(), 0, "too fast to be seen");
    page.screenshot("page-while-loading-Desktop")?;
    page.assert_accessible()?;
    wait_living(page)?;
    assert_answers(page, &demo().draft("kittiwake"))?;

    visit.server.set_fault(&wasm, Fault::Missing);
    let lost = Browser::open(Size::Phone)?;
    lost.goto(&visit.server.url())?;
    lost.by_text("The calculator did not load")?;
    lost.by_role("button", "Try again")?;
    assert_shell(&lost)?;
    lost.screenshot("page-not-loaded-Phone")?;
    lost.assert_accessible()?;
    visit.server.mend();
    lost.by_role("button", "Try again")?.click()?;
    lost.wait_until("return document.querySelector('button.tile')")?;
    wait_living(&lost)?;
    visit.end()
}
