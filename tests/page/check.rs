//! The maker's check of the catalogue in force.

use std::fs;

use pitchline_tests::browser::{Browser, Outcome, Page, Size};
use pitchline_tests::root;

use crate::catalogue::slips;
use crate::visit::{Site, Visit, see};

/// The check, once every combination has been tried.
fn check(page: &Page) -> Outcome<String> {
    see(page, "More")?;
    page.by_role("link", "Check this catalogue")?.click()?;
    page.by_css("#view-catalogue")?;
    page.wait_until(
        "return !document.querySelector('#view-catalogue .busy').textContent
           && document.querySelector('#view-catalogue [role=status]').textContent.length > 0",
    )?;
    let said = page.eval("return document.querySelector('#view-catalogue').innerText", &[])?;
    Ok(said.as_str().unwrap_or_default().to_owned())
}

/// Rows of the table of that name, their cells with a bar between.
fn rows(page: &Page, caption: &str) -> Outcome<Vec<String>> {
    let script = "const table = [...document.querySelectorAll('#view-catalogue table')]
          .find((table) => table.caption.textContent === arguments[0]);
        return [...table.tBodies[0].rows].map((row) => [...row.cells].map((c) => c.textContent).join(' | '))";
    // What a fold holds is made once it has been opened.
    page.by_text(caption)?;
    let found = page.eval(script, &[caption.into()])?;
    Ok(serde_json::from_value(found).unwrap_or_default())
}

const FAULTS: &str = "Each fault, and what to write instead";

fn has(said: &str, words: &[&str]) {
    for words in words {
        assert!(said.contains(words), "{words:?} is not in {said}");
    }
}

fn demo_is_checked(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let said = check(page)?;
    // One motor of 2 with one pulley of 3 asks too much of the belt: 36 of 216, and none of the
    // other kit's (tests/catalogue/check.rs).
    has(
        &said,
        &["No faults.", "36 of 432 combinations don't fit.", "Every entry in the file was read"],
    );
    page.by_text("Kittiwake: 1 misfit")?.click()?;
    let found = rows(page, "Kittiwake: what doesn't fit, worst cases")?;
    let [row] = &found[..] else { panic!("{found:?}") };
    has(
        row,
        &["Capstan 135 + 13 teeth, 8 mm | Belt overloaded: 112\u{a0}% of its rating | all 36"],
    );
    page.by_text("Prices and weights:")?.click()?;
    assert!(
        rows(page, "Parts without a price or a weight")?
            .contains(&"Capstan 135 (motor) | price".into())
    );
    page.by_text("Assumed values:")?.click()?;
    let assumed = rows(page, "Keys that parts leave out, and the value assumed for each")?;
    assert!(assumed.iter().any(|row| row.starts_with("Capstan 165 (motor) | ")), "{assumed:?}");
    page.assert_accessible()?;
    page.eval("document.querySelector('#view-catalogue').scrollIntoView()", &[])?;
    page.screenshot(&format!("page-check-demo-{size:?}"))?;
    visit.end()
}

#[test]
fn check_of_the_demo_on_a_phone() -> Outcome {
    demo_is_checked(Size::Phone)
}

#[test]
fn check_of_the_demo_on_a_desktop() -> Outcome {
    demo_is_checked(Size::Desktop)
}

#[test]
fn check_names_each_fault_with_what_would_be_right() -> Outcome {
    let text = fs::read_to_string(root().join("tests/fixture/three-faults.json"))?;
    let visit = Visit::of(Site::with_catalogue(&text)?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    has(&check(page)?, &["3 faults, 1 entry not used."]);
    let mut found = rows(page, FAULTS)?;
    found.sort();
    assert_eq!(
        found,
        [
            "7 teeth, 8 mm (motor pulley) | teeth: 7\u{a0}teeth. Not used. | 8 to 60\u{a0}teeth",
            "Capstan 165 (motor) | noload_a: not a known key. Ignored. | Did you mean \"no_load_a\"?",
            "Kittiwake (kit) | slots/wheel/options/0: unknown name \"shingle-9Z\". Ignored. | Did you mean \"shingle-92\"?",
        ]
    );
    page.assert_accessible()?;
    page.eval("document.querySelector('#view-catalogue').scrollIntoView()", &[])?;
    page.screenshot("page-check-three-faults-Phone")?;
    visit.end()
}

/// Fifty at a time, in a page that stays as light as it was.
#[test]
fn check_of_hundreds_of_faults_stays_light() -> Outcome {
    let visit = Visit::of(Site::with_catalogue(&slips(400))?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    has(&check(page)?, &["400 faults, 0 entries not used.", "1 to 50 of 400"]);
    assert_eq!(rows(page, FAULTS)?.len(), 50);
    let nodes = "return document.querySelectorAll('#view-catalogue *').length";
    let before = page.eval(nodes, &[])?.as_u64().unwrap_or(u64::MAX);
    assert!(before < 500, "{before} elements");
    for from in [51, 101, 151] {
        page.by_role("button", "Show the next 50")?.click()?;
        page.by_text(&format!("{from} to {} of 400", from + 49))?;
    }
    let after = page.eval(nodes, &[])?.as_u64().unwrap_or(u64::MAX);
    assert!(after <= before, "{before} elements became {after}");
    page.by_role("button", "Show the previous 50")?.click()?;
    page.by_text("101 to 150 of 400")?;
    page.assert_accessible()?;
    page.screenshot("page-check-400-faults-Phone")?;
    visit.end()
}

/// Of another maker's file there is nothing to correct.
#[test]
fn check_of_another_maker_is_of_that_file() -> Outcome {
    let text = fs::read_to_string(root().join("tests/fixture/other-maker.json"))?;
    let visit = Visit::of(Site::with_catalogue(&text)?, Browser::new(Size::Desktop))?;
    let said = check(&visit.page)?;
    has(&said, &["Saltmarsh Lane Workshop", "No faults.", "Dunlin"]);
    assert!(!said.contains("Ferry Lane"), "{said}");
    visit.end()
}
