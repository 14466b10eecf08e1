//! The build in the address: kept, handed on, and typed by hand.

use std::time::Duration;

use pitchline_core::Slot;
use pitchline_tests::browser::{Browser, Outcome, Page, Size};
use serde_json::Value;

use crate::strip::{assert_answers, strip};
use crate::visit::{Site, Visit, demo, kit_for, link, open_build, put, see, wait_living};

/// How long the address may lag behind the last edit.
const AFTER: Duration = Duration::from_millis(500);

#[track_caller]
fn hash(page: &Page) -> Outcome<String> {
    std::thread::sleep(AFTER);
    let found = page.eval("return location.hash", &[])?;
    Ok(found.as_str().unwrap_or_default().to_owned())
}

/// A fragment without the view, as a link to the build has it.
fn build_of(hash: &str) -> &str {
    hash.split("&see=").next().unwrap_or_default()
}

/// What the page says of faults, a line each.
#[track_caller]
pub(crate) fn told(page: &Page) -> Outcome<Vec<String>> {
    let script = "return [...document.querySelectorAll('.told li')].map((e) => e.textContent)";
    let found = page.eval(script, &[])?;
    Ok(serde_json::from_value(found).unwrap_or_default())
}

/// At the end of a view nothing is below the bar, which would hide a part of it from a finger.
#[track_caller]
pub(crate) fn at_end(page: &Page) -> Outcome {
    page.eval("scrollTo(0, document.body.scrollHeight)", &[]).map(drop)
}

fn travels(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    page.by_label("Wheel ×4")?.choose("Buoy 185")?;
    page.by_css("#rider-mass_kg")?.fill("91.5")?;
    page.by_label("Posture")?.choose("Crouched")?;
    let mut draft = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    put(&mut draft, &catalog, Slot::Wheel, "buoy-185");
    draft.set(Slot::Rider, "mass_kg", 91.5);
    draft.set(Slot::Rider, "posture", 2.0);
    assert_answers(page, &draft)?;

    let hash = hash(page)?;
    for part in
        ["#v=1&model=", "&kit=gannet", "&wheel=buoy-185", "&rider.mass_kg=91.5", "=crouched"]
    {
        assert!(hash.contains(part), "{part} is not in {hash}");
    }
    // Only what differs from the kit, and nothing of the catalogue's own values.
    assert!(!hash.contains("motor") && !hash.contains("diameter"), "{hash}");

    let address = format!("{}{}", visit.server.url(), build_of(&hash));
    // The button, where the page may write to the clipboard and where not.
    page.permit("clipboard-write", true)?;
    page.permit("clipboard-read", true)?;
    see(page, "Share")?;
    page.by_role("button", "Copy link")?.click()?;
    page.by_text("Link copied")?;
    let copied = page.eval("return await navigator.clipboard.readText()", &[])?;
    assert_eq!(copied, Value::from(address.clone()));
    page.permit("clipboard-write", false)?;
    page.by_role("button", "Copy link")?.click()?;
    let field = page.by_label("Copy this link")?;
    assert_eq!(field.value()?, address);
    // The field goes on to say what the build is now.
    open_build(page)?;
    page.by_css("#rider-mass_kg")?.fill("92")?;
    see(page, "Share")?;
    page.wait_for("the offered link follows the build", |page| {
        Ok(page.by_label("Copy this link")?.value()?.contains("rider.mass_kg=92"))
    })?;

    let fresh = Browser::open(size)?;
    fresh.goto(&address)?;
    wait_living(&fresh)?;
    fresh.by_text("Build opened from the link.")?;
    assert_answers(&fresh, &draft)?;
    open_build(&fresh)?;
    assert_eq!(fresh.by_css("#rider-mass_kg")?.value()?, "91.5");
    assert_eq!(told(&fresh)?, Vec::<String>::new());
    fresh.close_own(&visit.server.url())?;
    visit.end()
}

#[test]
fn a_link_carries_the_build_from_a_phone() -> Outcome {
    travels(Size::Phone)
}

#[test]
fn a_link_carries_the_build_from_a_desktop() -> Outcome {
    travels(Size::Desktop)
}

/// Typed by hand, with slips: each is told where it is, the rest works.
#[test]
fn slips_in_a_link_are_located() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    visit.open(&link(
        "kit=gannet&motor_pulley=m10-21&rider.mass_kg=900\
         &ride.grade=5&hat=red&place.air_c=1e999&place.surface=ice&wheel_pulley.teeth=60.5\
         &ride.cruise_km_h=20&name=%3Cimg%20src%3Dx%20onerror%3D%22document.title%3D1%22%3E",
    ))?;
    let catalog = demo();
    let mut draft = catalog.draft("gannet");
    put(&mut draft, &catalog, Slot::MotorPulley, "m10-21");
    draft.set(Slot::Ride, "cruise_km_h", 20.0);
    assert_answers(page, &draft)?;
    let told = told(page)?;
    let wanted = [
        ("rider.mass_kg:", "900"),
        ("ride:", "\"grade\" is not known"),
        ("link:", "hat"),
        ("place.air_c:", "must be a number"),
        ("place.surface:", "ice"),
        ("wheel_pulley.teeth:", "60.5"),
    ];
    for (place, what) in wanted {
        let found = told.iter().filter(|line| line.starts_with(place) && line.contains(what));
        assert_eq!(found.count(), 1, "{place} {what}: {told:#?}");
    }
    assert_eq!(told.len(), wanted.len(), "{told:#?}");
    let mass = told.iter().find(|line| line.starts_with("rider.mass_kg")).map(String::as_str);
    assert_eq!(mass, Some("rider.mass_kg: 900\u{a0}kg is outside the range 20 to 180\u{a0}kg"));
    // A name is text, whatever it looks like.
    see(page, "Share")?;
    page.by_role("button", "Save on this device")?.click()?;
    page.by_text("Saved on this device.")?;
    page.by_text("<img src=x onerror=\"document.title=1\">")?;
    let drawn = page.eval("return [document.images.length, document.title]", &[])?;
    assert_eq!(drawn, serde_json::json!([0, "Share – Pitchline"]));
    page.screenshot("page-link-faults-Phone")?;
    page.by_css(".told button")?.click()?;
    page.wait_until("return !document.querySelector('.told')")?;
    visit.end()
}

/// A part that is gone, as in a link from last year: nothing else takes its place.
#[test]
fn a_link_to_a_part_that_is_gone_waits_for_a_pick() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    let catalog = demo();
    let kit = &catalog.kits[0];
    visit.open(&link(&format!("kit={}&wheel=nonesuch&rider.mass_kg=95", kit.id)))?;
    open_build(page)?;
    page.by_text("wheel: \"nonesuch\" isn't in this catalogue. Pick another to see figures.")?;
    assert_eq!(strip(page)?.map(|tile| tile.split(' ').next() == Some("–")), [true; 3]);
    // The link still says what was asked for.
    assert!(hash(page)?.contains("wheel=nonesuch"));
    let mut draft = catalog.draft(&kit.id);
    draft.set(Slot::Rider, "mass_kg", 95.0);
    let wheel = catalog.offered(&kit.id, Slot::Wheel)[1].clone();
    page.by_label("Wheel")?.choose(&wheel.name)?;
    draft.set_record(Slot::Wheel, wheel);
    assert_answers(page, &draft)?;
    visit.end()
}

/// A place on the page, or a word that means nothing: no build and no view, so what is in hand and
/// in sight stays.
#[test]
fn a_fragment_that_sets_nothing_is_no_build() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let catalog = demo();
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    let gannet = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    assert_answers(page, &gannet)?;
    std::thread::sleep(AFTER);
    let fragments = ["far", "steep", "rubbish", "v%3D1", "&&"];
    for fragment in fragments {
        visit.open(&format!("#{fragment}"))?;
        assert_answers(page, &gannet)?;
        assert_eq!(told(page)?, Vec::<String>::new(), "{fragment}");
        assert!(page.all_by_css(".message")?.is_empty(), "{fragment}");
    }
    open_build(page)?;
    for fragment in fragments {
        page.eval("location.hash = arguments[0]", &[fragment.into()])?;
        let hash = hash(page)?;
        assert!(hash.contains("kit=gannet") && hash.ends_with("&see=build"), "{hash}");
    }
    assert_answers(page, &gannet)?;
    assert!(page.all_by_css(".message")?.is_empty());
    visit.end()
}

/// As long as no honest link is: refused, and the build in hand stays.
#[test]
fn a_link_without_end_is_refused() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let catalog = demo();
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    let gannet = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    assert_answers(page, &gannet)?;
    visit.open(&link(&format!("kit=kittiwake&name={}", "x".repeat(9000))))?;
    let told = told(page)?;
    assert!(told.len() == 1 && told[0].contains("8192"), "{told:?}");
    assert_answers(page, &gannet)?;
    visit.end()
}

/// The address follows edits a moment later; a reload in that moment must not
/// bring back the build of before.
#[test]
fn an_edit_just_before_a_reload_is_kept() -> Outcome {
    keeps_an_edit("setTimeout(() => location.reload(), 50)")
}

/// A busy browser may load the last address again although the page has just given it another.
#[test]
fn an_edit_outlives_a_reload_of_the_last_address() -> Outcome {
    keeps_an_edit(
        "const before = location.hash;
         const look = setInterval(() => {
           if (location.hash === before) return;
           clearInterval(look);
           history.replaceState(history.state, '', before);
           location.reload();
         }, 1)",
    )
}

/// A wheel is chosen, then the script loads the page anew.
#[track_caller]
fn keeps_an_edit(reload: &str) -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let catalog = demo();
    open_build(page)?;
    page.wait_until("return location.hash.endsWith('see=build')")?;
    page.wait_until("return location.hash.includes('kit=kittiwake')")?;
    let choose = "const list = document.getElementById('pick-wheel');
        list.value = 'shingle-110';
        list.dispatchEvent(new Event('change', { bubbles: true }));";
    page.eval(&format!("{choose} {reload}"), &[])?;
    page.wait_until("return performance.getEntriesByType('navigation')[0].type === 'reload'")?;
    wait_living(page)?;
    let mut draft = catalog.draft("kittiwake");
    put(&mut draft, &catalog, Slot::Wheel, "shingle-110");
    assert_answers(page, &draft)?;
    visit.end()
}

/// The first visit of all is often by a link. What is said of offline use must
/// not take away the offer to undo it.
#[test]
fn an_offer_to_undo_outlives_other_words() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    visit.open(&link("kit=gannet"))?;
    std::thread::sleep(AFTER);
    page.by_text("Build opened from the link.")?;
    page.by_role("button", "Undo")?.click()?;
    assert_answers(page, &demo().draft("kittiwake"))?;
    visit.end()
}

/// Another link, pasted over the address of the open page, and the way back.
#[test]
fn a_link_opens_in_the_open_page() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let catalog = demo();
    let pasted = link("kit=gannet&wheel_pulley=w74");
    page.eval("location.hash = arguments[0]", &[pasted.as_str().into()])?;
    let mut draft = catalog.draft("gannet");
    put(&mut draft, &catalog, Slot::WheelPulley, "w74");
    assert_answers(page, &draft)?;
    page.by_text("Build opened from the link.")?;
    page.by_role("button", "Undo")?.click()?;
    assert_answers(page, &catalog.draft("kittiwake"))?;
    // A newer form of link: what is known is read, and the page says so.
    let newer = pasted.replace("v=1", "v=2");
    page.eval("location.hash = arguments[0]", &[newer.into()])?;
    assert_answers(page, &draft)?;
    let told = told(page)?;
    assert!(told.len() == 1 && told[0].starts_with("v:"), "{told:?}");
    visit.end()
}

/// Its figures were others: the build is opened, and the page says so until it is closed.
#[test]
fn a_link_of_another_model_is_opened_and_told() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    let mut draft = demo().draft("gannet");
    draft.set(Slot::Rider, "mass_kg", 81.0);
    for (model, said) in [("&model=1", "older version"), ("&model=9999", "newer version")] {
        visit.open(&format!("#v=1{model}&kit=gannet&rider.mass_kg=81"))?;
        assert_answers(page, &draft)?;
        let told = told(page)?;
        assert!(told.len() == 1 && told[0].contains(said), "{told:?}");
        page.by_text("The whole link was read.")?;
        at_end(page)?;
        page.assert_accessible()?;
        page.by_css(".told button")?.click()?;
        page.wait_until("return !document.querySelector('.told')")?;
    }
    visit.end()
}

/// The address follows an edit a moment later, but never over a link that is just being opened.
#[test]
fn a_link_opened_just_after_an_edit_is_opened() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    open_build(page)?;
    hash(page)?;
    // The moment passes while the link is put into the address, so both are due at once.
    let script = "const input = document.getElementById('rider-mass_kg');
        input.value = '77';
        input.dispatchEvent(new Event('input', { bubbles: true }));
        await null;
        const start = performance.now();
        while (performance.now() - start < 400);
        location.hash = 'v=1&kit=gannet&rider.mass_kg=81';";
    page.eval(script, &[])?;
    page.by_text("Build opened from the link.")?;
    assert!(hash(page)?.contains("rider.mass_kg=81"));
    page.by_role("button", "Undo")?.click()?;
    // The link named no view, so the overview is in sight.
    open_build(page)?;
    assert_eq!(page.by_css("#rider-mass_kg")?.value()?, "77");
    page.wait_until("return location.hash.includes('rider.mass_kg=77')")?;
    visit.end()
}
