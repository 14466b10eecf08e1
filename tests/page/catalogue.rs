//! The maker's file put into the published folder: with faults, another
//! maker's, and one that is no JSON.

use std::fs;
use std::time::Duration;

use pitchline_core::Slot;
use pitchline_site::Fault as ServerFault;
use pitchline_tests::browser::{Browser, Outcome, Page, Size};
use pitchline_tests::root;

use crate::legible::open_folds;
use crate::link::told;
use crate::strip::{assert_answers, strip};
use crate::visit::{Site, Visit, demo, open_build, pick, put, read, see, views, wait_living};

fn fixture(name: &str) -> Outcome<String> {
    Ok(fs::read_to_string(root().join("tests/fixture").join(name))?)
}

fn visit(name: &str, size: Size) -> Outcome<Visit> {
    Visit::of(Site::with_catalogue(&fixture(name)?)?, Browser::new(size))
}

/// What a person can read in all views, with every fold open.
#[track_caller]
fn all_text(page: &Page) -> Outcome<String> {
    let mut text = String::new();
    for view in views(page)? {
        see(page, &view)?;
        open_folds(page)?;
        text += &page.text()?;
    }
    Ok(text)
}

fn three_faults(size: Size) -> Outcome {
    let visit = visit("three-faults.json", size)?;
    let page = &visit.page;
    // A rider reads one line; which they are stands in the maker's check.
    let said = page.by_css(".told")?.text()?;
    assert_eq!(said, "3 entries in this catalogue couldn't be used. See which");
    assert_eq!(page.by_text("See which")?.attribute("href")?.as_deref(), Some("#see=catalogue"));
    assert_eq!(told(page)?, Vec::<String>::new());
    page.screenshot(&format!("page-three-faults-{size:?}"))?;
    page.assert_accessible()?;

    // All that has no fault is there: the answers, the lists, the other kit.
    let catalog = read(&fixture("three-faults.json")?);
    let mut draft = catalog.draft("kittiwake");
    assert_answers(page, &draft)?;
    open_build(page)?;
    let names = "return [...arguments[0].options].map((o) => o.text)";
    let list = page.eval(names, &[page.by_label("Motor pulley ×2")?.json()])?;
    let wanted = ["17 teeth, 8 mm", "13 teeth, 8 mm", "19 teeth, 8 mm", "Use my own…"];
    assert_eq!(list, serde_json::json!(wanted));
    let list = page.eval(names, &[page.by_label("Wheel ×4")?.json()])?;
    assert_eq!(list, serde_json::json!(["Shingle 100", "Shingle 110", "Use my own…"]));
    pick(page, &catalog, &mut draft, Slot::Wheel, 1)?;
    assert_answers(page, &draft)?;
    page.by_role("button", "Gannet")?.click()?;
    open_build(page)?;
    page.by_label("Wheel ×4")?.choose("Buoy 210")?;
    visit.end()
}

#[test]
fn three_faults_are_one_line_on_a_phone() -> Outcome {
    three_faults(Size::Phone)
}

#[test]
fn three_faults_are_one_line_on_a_desktop() -> Outcome {
    three_faults(Size::Desktop)
}

/// However many there are, the answers stay where they were.
#[test]
fn hundreds_of_faults_are_one_line() -> Outcome {
    let visit = Visit::of(Site::with_catalogue(&slips(400))?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    let said = page.by_css(".told")?.text()?;
    assert_eq!(said, "400 entries in this catalogue couldn't be used. See which");
    let down = page
        .eval("return document.querySelector('main').getBoundingClientRect().top + scrollY", &[])?;
    assert!(down.as_f64().is_some_and(|down| down < 844.0), "{down} px");
    assert_answers(page, &demo().draft("kittiwake"))?;
    visit.end()
}

/// The demo with so many keys that are not known.
pub(crate) fn slips(number: usize) -> String {
    let text = fs::read_to_string(root().join("web/catalog/catalogue.json")).expect("the demo");
    let mut file: serde_json::Value = serde_json::from_str(&text).expect("the demo is JSON");
    let pulleys = file["motor_pulleys"].as_array_mut().expect("a list");
    for slip in 0..number {
        let place = slip % pulleys.len();
        pulleys[place][format!("slip_{slip}")] = slip.into();
    }
    file.to_string()
}

/// Figures of another pack would be figures of another board.
#[test]
fn a_kit_without_its_pack_waits_for_a_pick() -> Outcome {
    let sound = demo();
    let kit = &sound.kits[0];
    let mut draft = sound.draft(&kit.id);
    let pack = draft.record(Slot::Pack).clone();
    let mut file: serde_json::Value =
        serde_json::from_str(&fs::read_to_string(root().join("web/catalog/catalogue.json"))?)
            .expect("the demo is JSON");
    let packs = file["packs"].as_array_mut().expect("a list");
    let faulty = packs.iter_mut().find(|part| part["id"] == pack.id.as_str()).expect("it is there");
    faulty["mass_kg"] = 3400.into();
    let text = file.to_string();
    let visit = Visit::before(Site::with_catalogue(&text)?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    visit.open("")?;
    let said = format!(
        "{}, battery pack: \"{}\" can't be used \
         (mass_kg: 3400\u{a0}kg is outside the range 0.1 to 60\u{a0}kg). Pick another to see figures.",
        kit.name, pack.name
    );
    page.by_css(".attention")?;
    assert_eq!(strip(page)?.map(|tile| tile.split(' ').next() == Some("–")), [true; 3]);
    page.wait_until("return document.documentElement.dataset.offline === 'ready'")?;
    page.assert_accessible()?;
    page.screenshot("page-missing-pack-Phone")?;
    // It leads to the list; the other pack fills the place.
    page.by_css(".attention")?.click()?;
    page.wait_until("return document.activeElement.id === 'pick-pack'")?;
    page.by_text(&said)?;
    page.assert_accessible()?;
    let catalog = read(&text);
    let other = catalog.offered(&kit.id, Slot::Pack)[0].clone();
    page.by_label("Battery pack")?.choose(&other.name)?;
    draft.set_record(Slot::Pack, other);
    catalog.follow_pack(&mut draft);
    assert_answers(page, &draft)?;
    assert!(!page.text()?.contains("Pick another to see figures."));
    // The kit as it is sold has none again.
    page.by_role("button", &kit.name)?.click()?;
    page.wait_until("return document.querySelector('.strip strong').textContent === '–'")?;
    visit.end()
}

/// The demo says so, and what concerns makers alone stands in the file alone.
#[test]
fn a_rider_reads_what_concerns_riders() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let text = all_text(&visit.page)?;
    assert!(text.contains("Demo: maker and parts are made up."), "{text}");
    for word in ["For makers", "your own catalogue", "this file"] {
        assert!(!text.contains(word), "{word:?} is shown to riders");
    }
    let file = fs::read_to_string(visit.site.path().join("catalogue.json"))?;
    assert!(file.contains("put your own catalogue in this file's place"));
    visit.end()
}

#[test]
fn another_maker_replaces_the_demo() -> Outcome {
    let visit = visit("other-maker.json", Size::Phone)?;
    let page = &visit.page;
    let catalog = read(&fixture("other-maker.json")?);
    let mut draft = catalog.draft("dunlin");
    assert_answers(page, &draft)?;
    assert_eq!(told(page)?, Vec::<String>::new());
    page.by_text("Saltmarsh Lane Workshop")?;
    open_build(page)?;
    page.by_label("Motor pulley ×2")?.choose("Seventeen")?;
    put(&mut draft, &catalog, Slot::MotorPulley, "seventeen");
    assert_answers(page, &draft)?;
    let text = all_text(page)?;
    for stranger in ["Ferry Lane", "Kittiwake", "Shingle", "Capstan", "EUR"] {
        assert!(!text.contains(stranger), "{stranger} is still there");
    }
    assert!(text.contains("GBP"));
    see(page, "Overview")?;
    // What the bar covers half way down is no fault.
    page.eval("scrollTo(0, document.body.scrollHeight)", &[])?;
    page.assert_accessible()?;
    page.screenshot_whole("page-other-maker-Phone")?;
    visit.end()
}

#[test]
fn the_demo_stands_in_for_a_broken_file() -> Outcome {
    let visit = visit("broken.json", Size::Desktop)?;
    let page = &visit.page;
    assert_answers(page, &demo().draft("kittiwake"))?;
    let said = page.by_css(".told")?.text()?;
    for words in ["couldn't be read", "demo", "line 5", "a comma is missing here"] {
        assert!(said.contains(words), "{words:?} is not in {said:?}");
    }
    page.assert_accessible()?;
    page.screenshot("page-broken-catalogue-Desktop")?;
    // It still does when the worker brings the file.
    page.wait_until("return document.documentElement.dataset.offline === 'ready'")?;
    let before = strip(page)?;
    visit.reload()?;
    assert_eq!(strip(&visit.page)?, before);
    assert!(visit.page.by_css(".told")?.text()?.contains("line 5"));
    visit.end()
}

/// A file that is not there at all, as in a folder copied in haste.
#[test]
fn the_demo_stands_in_for_a_missing_file() -> Outcome {
    let site = Site::new()?;
    fs::remove_file(site.path().join("catalogue.json"))?;
    let visit = Visit::before(site, Browser::new(Size::Phone))?;
    visit.page.goto(&visit.server.url())?;
    wait_living(&visit.page)?;
    assert_answers(&visit.page, &demo().draft("kittiwake"))?;
    assert!(visit.page.by_css(".told")?.text()?.contains("404"));
    visit.end_but(&["catalogue.json"])
}

/// What a host may send by mistake in place of the catalogue, and a word of the reason given.
fn spoilt() -> Vec<(Vec<u8>, &'static str)> {
    vec![
        (b"null".to_vec(), "object"),
        (b"[]".to_vec(), "object"),
        (br#"{"error":"try again later"}"#.to_vec(), "no usable kit"),
        (vec![b' '; 2 << 20], "1048576 bytes"),
        (br#"{"schema_version":1e999}"#.to_vec(), "line 1"),
        (b"<!DOCTYPE html><title>Sign in</title>".to_vec(), "line 1"),
    ]
}

#[track_caller]
fn assert_kept(visit: &Visit, answers: &[String], reason: &str) -> Outcome {
    let page = &visit.page;
    let said = page.by_css(".told")?.text()?;
    let today = page.eval("return new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' }).replace(' ', '\u{a0}')", &[])?;
    for words in ["maker's parts as of", today.as_str().unwrap_or_default(), reason] {
        assert!(said.contains(words), "{words:?} is not in {said:?}");
    }
    // The bands come a moment after the answers.
    page.wait_for(reason, |page| Ok(strip(page)?.to_vec() == answers))?;
    see(page, "Build")?;
    page.by_role("button", "Dunlin")?;
    Ok(())
}

/// With a service worker, without the network, and without a worker.
#[test]
fn a_spoilt_file_never_replaces_a_good_one() -> Outcome {
    let mut visit = visit("other-maker.json", Size::Phone)?;
    visit.page.wait_until("return document.documentElement.dataset.offline === 'ready'")?;
    assert_answers(&visit.page, &read(&fixture("other-maker.json")?).draft("dunlin"))?;
    let answers = strip(&visit.page)?.to_vec();
    for (body, reason) in spoilt() {
        visit.server.set_fault("catalogue.json", ServerFault::Body(body));
        visit.reload()?;
        assert_kept(&visit, &answers, reason)?;
    }
    visit.page.assert_accessible()?;
    visit.page.screenshot("page-kept-catalogue-Phone")?;
    let address = visit.server.url();
    visit.page.goto(&format!("{address}?no-sw"))?;
    wait_living(&visit.page)?;
    assert_kept(&visit, &answers, "line 1")?;
    visit.page.goto(&address)?;
    visit.page.wait_until("return document.documentElement.dataset.offline === 'ready'")?;
    visit.server.stop();
    visit.reload()?;
    assert_kept(&visit, &answers, "couldn't be fetched")?;
    visit.end_but(&["catalogue.json", "sw.js"])
}

/// It is kept once it comes, however late.
#[test]
fn a_slow_host_is_not_waited_for_twice() -> Outcome {
    let visit = visit("other-maker.json", Size::Desktop)?;
    let page = &visit.page;
    let new = fixture("other-maker.json")?.replace("Saltmarsh Lane", "Weir House");
    fs::write(visit.site.path().join("catalogue.json"), new)?;
    visit.server.set_fault("catalogue.json", ServerFault::Delay(Duration::from_secs(6)));
    visit.reload()?;
    assert!(page.by_css(".told")?.text()?.contains("didn't arrive within 3\u{a0}s"));
    assert!(page.text()?.contains("Saltmarsh Lane Workshop"));
    page.wait_until("return Object.entries(localStorage).some(([key, text]) => key.endsWith(':catalogue') && text.includes('Weir House'))")?;
    visit.reload()?;
    assert!(page.text()?.contains("Weir House Workshop"));
    visit.end()
}

/// Some hosts let everything be kept for hours.
#[test]
fn a_new_file_is_seen_past_the_hosts_leave_to_keep_the_old() -> Outcome {
    let visit = Visit::before(
        Site::with_catalogue(&fixture("other-maker.json")?)?,
        Browser::new(Size::Desktop),
    )?;
    let page = &visit.page;
    visit.server.set_fault("catalogue.json", ServerFault::Stale);
    let without_worker = format!("{}?no-sw", visit.server.url());
    page.goto(&without_worker)?;
    wait_living(page)?;
    page.by_text("Saltmarsh Lane Workshop")?;
    let new = fixture("other-maker.json")?.replace("Saltmarsh Lane", "Weir House");
    fs::write(visit.site.path().join("catalogue.json"), new)?;
    page.goto("about:blank")?;
    page.goto(&without_worker)?;
    wait_living(page)?;
    page.by_text("Weir House Workshop")?;
    visit.end()
}
