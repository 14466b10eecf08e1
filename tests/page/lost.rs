//! The ways in which a build could be lost: later versions, unread links, full lists.

use std::fs;

use pitchline_core::Slot;
use pitchline_tests::browser::{Browser, Outcome, Page, Size};
use serde_json::{Value, json};

use crate::keep::save;
use crate::link::{at_end, told};
use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, kit_for, link, open_build, pick, see, wait_living};

/// After which the address has followed an edit.
pub(crate) const FOLLOWED: &str = "await new Promise((done) => setTimeout(done, 600))";

/// The texts that the page keeps, by key.
#[track_caller]
fn kept(page: &Page) -> Outcome<Vec<String>> {
    let found = page.eval("return Object.values(localStorage)", &[])?;
    Ok(serde_json::from_value(found).unwrap_or_default())
}

/// The names in the list of saved builds.
#[track_caller]
pub(crate) fn listed(page: &Page) -> Outcome<Vec<String>> {
    let script =
        "return [...document.querySelectorAll('.saved li span')].map((e) => e.textContent)";
    Ok(serde_json::from_value(page.eval(script, &[])?).unwrap_or_default())
}

#[track_caller]
fn put(page: &Page, key: &str, text: &str) -> Outcome {
    let script = "localStorage.setItem('pitchline:/:' + arguments[0], arguments[1])";
    page.eval(script, &[key.into(), text.into()]).map(drop)
}

fn build(inside: &str) -> String {
    format!("{{ \"format\": \"pitchline-build\", \"version\": 1{inside} }}")
}

/// One unknown key, or one entry that is none, cost every saved build.
#[test]
fn a_later_versions_builds_stay_byte_for_byte() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let plain = build(", \"name\": \"Plain\"");
    let later = build(", \"name\": \"Later\", \"rider\": { \"mass_kg\": 91, \"mood\": 1.50 }");
    let wild = "{ \"format\": \"another\",  \"wings\": 2 }";
    put(page, "builds", &format!("[{plain},\n {later}, {wild}]"))?;
    let entry = build(", \"name\": \"Much later\", \"place\": { \"surface\": \"ice\" }")
        .replace("1,", "2,");
    put(page, "build:1700000000000-z", &entry)?;
    for _ in 0..2 {
        visit.open("")?;
        see(page, "Share")?;
        let found = kept(page)?;
        for text in [&plain, &later, &entry, wild] {
            assert!(found.iter().any(|kept| kept == text), "{text}: {found:#?}");
        }
        assert_eq!(listed(page)?.len(), 4);
        page.by_role("button", "Open Plain")?;
    }
    // What is known of it opens, the rest is told and kept through an edit.
    page.by_role("button", "Open Later")?.click()?;
    page.by_text("Later opened.")?;
    open_build(page)?;
    assert_eq!(page.by_css("#rider-mass_kg")?.value()?, "91");
    assert!(told(page)?.iter().any(|line| line.contains("mood")), "{:?}", told(page)?);
    page.by_css(".message button:last-child")?.click()?;
    at_end(page)?;
    page.assert_accessible()?;
    page.by_css("#rider-mass_kg")?.fill("92")?;
    page.wait_until("return location.hash.includes('rider.mass_kg=92')")?;
    page.wait_until("return location.hash.includes('rider.mood=1.5')")?;
    see(page, "Share")?;
    page.by_role("button", "Open Much later")?.click()?;
    page.wait_until("return location.hash.includes('place.surface=ice')")?;
    page.by_role("button", "Save as file: Much later")?;
    // Forgotten only by the reader, and brought back as it was.
    page.by_role("button", "Delete Later")?.click()?;
    page.by_text("Later deleted.")?;
    assert!(!kept(page)?.contains(&later));
    page.by_role("button", "Undo")?.click()?;
    page.by_text("Later restored.")?;
    assert!(kept(page)?.contains(&later));
    visit.end()
}

/// What a later version's link says was gone from the address within a second.
#[test]
fn a_later_links_words_outlive_edits_and_reloads() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    let pieces =
        ["v=2", "hat=red%20felt", "place.surface=ice", "rider.mood=good", "flag", "lights.front=3"];
    visit.open(&format!("#{}&kit=gannet&rider.mass_kg=81&rider.mass_kg=82", pieces.join("&")))?;
    let faults = told(page)?;
    for name in ["v:", "hat", "surface", "mood", "flag", "lights.front", "rider.mass_kg"] {
        assert!(faults.iter().any(|line| line.contains(name)), "{name}: {faults:#?}");
    }
    let holds_all = || -> Outcome {
        page.eval(FOLLOWED, &[])?;
        let hash = page.eval("return location.hash.slice(1).split('&')", &[])?;
        let hash: Vec<String> = serde_json::from_value(hash).unwrap_or_default();
        for piece in pieces.iter().chain(&["rider.mass_kg=82"]) {
            assert!(hash.iter().any(|written| written == piece), "{piece}: {hash:?}");
        }
        Ok(())
    };
    open_build(page)?;
    assert_eq!(page.by_css("#rider-mass_kg")?.value()?, "81");
    holds_all()?;
    page.by_label("Wheel ×4")?.choose("Buoy 185")?;
    holds_all()?;
    visit.reload()?;
    holds_all()?;
    // What the reader sets is no longer what the link said.
    open_build(page)?;
    page.by_css("#rider-mass_kg")?.fill("83")?;
    page.by_label("Surface")?.choose("Pavers")?;
    page.eval(FOLLOWED, &[])?;
    let hash = page.eval("return location.hash", &[])?;
    let hash = hash.as_str().unwrap_or_default();
    assert!(!hash.contains("mass_kg=82") && !hash.contains("ice"), "{hash}");
    assert!(hash.contains("hat=red%20felt") && hash.contains("rider.mood=good"), "{hash}");
    visit.end()
}

/// A name that came with a link is perhaps that of another board, long saved.
#[test]
fn saving_over_another_build_can_be_undone() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    save(page, "Mine")?;
    page.by_text("Saved on this device.")?;
    let before = kept(page)?;
    visit.open(&link("kit=gannet&name=Mine&rider.mass_kg=120"))?;
    see(page, "Share")?;
    page.by_role("button", "Save on this device")?.click()?;
    page.by_text("It replaced the earlier \"Mine\".")?;
    assert_eq!(listed(page)?, ["Mine"]);
    page.by_css(".message button")?.click()?;
    page.wait_for("both are there", |page| Ok(listed(page)? == ["Mine", "Mine"]))?;
    let now = kept(page)?;
    let saved = before.iter().filter(|text| text.contains("\"Mine\""));
    assert!(saved.clone().count() > 0 && saved.clone().all(|text| now.contains(text)), "{now:?}");
    visit.end()
}

/// What cannot be read of a link stays in the address until something else is done than opening it.
#[test]
fn what_is_unread_stays_in_the_address() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let long = format!("#v=1&kit=gannet&name={}", "x".repeat(8200));
    visit.open(&long)?;
    page.by_text("has more than 8192 characters")?;
    page.eval(FOLLOWED, &[])?;
    assert_eq!(page.eval("return location.hash", &[])?, json!(long));
    open_build(page)?;
    page.by_css("#rider-mass_kg")?.fill("91")?;
    page.wait_until("return location.hash.includes('rider.mass_kg=91')")?;
    visit.open(&link("kit=gannet&$ref=abc&rider.$note=hi"))?;
    page.eval(FOLLOWED, &[])?;
    let hash = page.eval("return decodeURIComponent(location.hash)", &[])?;
    let hash = hash.as_str().unwrap_or_default();
    assert!(hash.contains("&$ref=abc") && hash.contains("&rider.$note=hi"), "{hash}");
    // A view is led to beside a link that is nearly too long, and the build stays in the address.
    let nearly = link(&format!("kit=gannet&later={}", "y".repeat(8120)));
    visit.open(&nearly)?;
    see(page, "How far?")?;
    page.wait_until(
        "return location.hash.includes('later=yyy') && location.hash.endsWith('&see=far')",
    )?;
    visit.end()
}

/// The sixty-first save dropped the oldest.
#[test]
fn no_number_of_saves_drops_one() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let old: Vec<String> = (0..60).map(|n| build(&format!(", \"name\": \"Board {n}\""))).collect();
    put(page, "builds", &format!("[{}]", old.join(",")))?;
    visit.open("")?;
    see(page, "Share")?;
    assert_eq!(listed(page)?.len(), 60);
    save(page, "One more")?;
    page.by_text("Saved on this device.")?;
    let names = listed(page)?;
    assert_eq!((names.len(), names[0].as_str()), (61, "One more"));
    visit.reload()?;
    let names = listed(page)?;
    assert_eq!((names.len(), names[60].as_str()), (61, "Board 59"));
    visit.end()
}

/// Names and tags of parts of one's own were not in the link, and so what does not fit was not told.
#[test]
fn a_link_holds_parts_of_ones_own() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let folder = tempfile::Builder::new().prefix("pitchline-page-").tempdir()?;
    let file = folder.path().join("own.json");
    let text = build(
        ", \"kit\": \"kittiwake\", \"wheel\": { \"id\": \"bulrush\", \"name\": \"Bulrush 100\",
          \"core\": \"reed core\", \"diameter_mm\": 100, \"rolling_smooth\": 0.013,
          \"notes\": \"Dries in the sun.\" }, \"wheel_pulley\": { \"id\": \"w40\",
          \"name\": \"40 teeth\", \"core\": \"spoked core\", \"teeth\": 40 }",
    );
    fs::write(&file, text)?;
    see(page, "Share")?;
    page.by_css("#build-file")?.type_text(&file.display().to_string())?;
    page.by_text("Build opened from the file.")?;
    open_build(page)?;
    page.wait_until("return location.hash.includes('reed%20core')")?;
    let said = "return [...document.querySelectorAll('#misfits, #notices, .strip-note')]
        .map((e) => e.textContent)";
    let wheel = "return document.getElementById('pick-wheel').selectedOptions[0].text";
    page.eval(FOLLOWED, &[])?;
    let (before, hash) = (page.eval(said, &[])?, page.eval("return location.hash", &[])?);
    assert!(before.to_string().contains("don't match"), "{before}");
    let fresh = Browser::open(Size::Phone)?;
    fresh.goto(&format!("{}{}", visit.server.url(), hash.as_str().unwrap_or_default()))?;
    wait_living(&fresh)?;
    open_build(&fresh)?;
    fresh.wait_until(&format!("{wheel} === 'Bulrush 100'"))?;
    fresh.eval(FOLLOWED, &[])?;
    assert_eq!(fresh.eval(said, &[])?, before);
    assert_eq!(fresh.eval("return location.hash", &[])?, hash);
    assert_eq!(told(&fresh)?, Vec::<String>::new());
    fresh.close_own(&visit.server.url())?;
    visit.end()
}

/// What stands in the fields is called kept only when it is.
#[test]
fn the_page_says_whether_it_is_kept() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let is = |state: &str| {
        page.wait_until(&format!("return document.documentElement.dataset.kept === '{state}'"))
    };
    is("yes")?;
    open_build(page)?;
    page.by_css("#rider-mass_kg")?.fill("81")?;
    is("yes")?;
    // Not in the build.
    page.by_css("#rider-mass_kg")?.fill("8100")?;
    is("no")?;
    page.by_css("#rider-mass_kg")?.fill("82")?;
    is("yes")?;
    page.eval(
        "Storage.prototype.setItem = function () { throw new DOMException('full', 'QuotaExceededError') }",
        &[],
    )?;
    page.by_css("#rider-mass_kg")?.fill("83")?;
    is("no")?;
    page.by_text("This browser can't save anything here")?;
    // The address still has it.
    visit.reload()?;
    assert_eq!(page.by_css("#rider-mass_kg")?.value()?, "83");
    visit.end()
}

/// Another word of the address turned the build away.
#[test]
fn only_demo_is_demo() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let catalog = demo();
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    let mut gannet = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    assert_answers(page, &gannet)?;
    for query in ["?campaign=demolition", "?demos", "?nodemo=1"] {
        visit.open(query)?;
        assert_answers(page, &gannet)?;
    }
    visit.open(&format!("?campaign=demolition{}", link("kit=gannet&rider.mass_kg=99")))?;
    open_build(page)?;
    assert_eq!(page.by_css("#rider-mass_kg")?.value()?, "99");
    // What is changed in the demo outlives a reload.
    visit.open("?demo")?;
    let mut draft = catalog.draft("kittiwake");
    assert_answers(page, &draft)?;
    open_build(page)?;
    pick(page, &catalog, &mut draft, Slot::Wheel, 2)?;
    assert_answers(page, &draft)?;
    visit.reload()?;
    assert_answers(page, &draft)?;
    gannet.set(Slot::Rider, "mass_kg", 99.0);
    // The address of the demo holds a build like any other, and it is opened elsewhere.
    visit.open(&format!("?demo{}", link("kit=gannet&rider.mass_kg=98")))?;
    open_build(page)?;
    assert_eq!(page.by_css("#rider-mass_kg")?.value()?, "98");
    assert_ne!(page.eval("return history.state", &[])?, Value::Null);
    assert_eq!(page.eval("return location.search", &[])?, json!("?demo"));
    visit.end()
}
