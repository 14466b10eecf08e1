//! The main walk through the page in WebKit, the engine of iPhones, and in Firefox.
//!
//! Answers are the core's, as in the tests of the page in Chromium; the page is the built one.
//!
//! `WebKit` (`MiniBrowser` on its own Xvfb) and Firefox have no console, touch, second device pixel or
//! paper: the walk puts the rules for paper on the screen. `WebKit` gets no narrower than 334 px.
//! Firefox's driver reloads past the service worker, so the page reloads itself.

#![allow(dead_code, reason = "the page's own tests use the rest of what they share with these")]

#[path = "../page/strip.rs"]
mod strip;
#[path = "../page/visit.rs"]
mod visit;

use pitchline_core::Slot;
use pitchline_tests::browser::{Browser, Engine, Outcome, Page, Size};
use serde_json::json;

use strip::assert_answers;
use visit::{
    Site, Visit, demo, drawn, kit_for, open_build, pick, put, see, unfold, views, wait_living,
};

/// A test in each engine.
macro_rules! walk {
    ($($step:ident)*) => {
        mod webkit {
            $(#[test] fn $step() -> super::Outcome { super::$step(super::Engine::WebKit) })*
        }
        mod firefox {
            $(#[test] fn $step() -> super::Outcome { super::$step(super::Engine::Firefox) })*
        }
    };
}

walk! {
    it_opens_on_a_phone
    it_opens_on_a_desktop
    an_edit_is_answered_and_its_link_opens_elsewhere
    a_build_is_saved_and_opened_again
    it_works_without_a_signal
    the_rules_for_paper_hold
}

fn browser(engine: Engine, size: Size) -> Browser {
    Browser::new(size).engine(engine)
}

#[track_caller]
fn visit(engine: Engine, size: Size) -> Outcome<Visit> {
    Visit::of(Site::new()?, browser(engine, size))
}

/// Nothing broke, and the page complained about nothing.
#[track_caller]
fn assert_well(page: &Page) -> Outcome {
    let script = "return [document.documentElement.dataset.app,
        document.querySelectorAll('.recovery, .told li').length]";
    assert_eq!(page.eval(script, &[])?, json!(["running", 0]));
    page.assert_quiet()
}

/// Opens, answers, draws in every view, and shows how an answer was worked out.
fn opens(engine: Engine, size: Size) -> Outcome {
    let visit = visit(engine, size)?;
    let page = &visit.page;
    assert_answers(page, &demo().draft("kittiwake"))?;
    let mut pictures = 0;
    for view in views(page)? {
        see(page, &view)?;
        drawn(page)?;
        let found = page.eval(
            "return [...document.querySelectorAll('figure svg[role=img]')].map((svg) => {
                const box = svg.getBoundingClientRect();
                const length = [...svg.querySelectorAll('path')].map((path) => path.getTotalLength());
                return box.left >= 0 && box.right <= innerWidth && box.width > 200 && box.height > 60
                    && Math.max(...length) > 100
            })",
            &[],
        )?;
        let found = found.as_array().cloned().unwrap_or_default();
        assert!(found.iter().all(|well| *well == true), "{view}: {found:?}");
        pictures += found.len();
        let wide = page.eval("return document.documentElement.scrollWidth - innerWidth", &[])?;
        let out = "return [...document.querySelectorAll('body *')]
            .filter((e) => e.getBoundingClientRect().right > innerWidth + 1)
            .map((e) => `${e.localName}.${e.getAttribute('class')}`).slice(0, 8)";
        if wide.as_f64() > Some(0.0) {
            page.screenshot(&format!("walk-{engine:?}-too-wide"))?;
            panic!("{view}: {wide} px too wide, by {}", page.eval(out, &[])?);
        }
        page.screenshot(&format!("walk-{engine:?}-{view}-{size:?}").replace([' ', '?'], ""))?;
    }
    assert!(pictures >= 3, "only {pictures} pictures");

    see(page, "How fast?")?;
    unfold(page, "Working")?;
    let workings = page.all_by_css(".view details.working > summary")?;
    workings.first().expect("a working").click()?;
    let formula = page.by_css(".view details.working[open] .step-formula")?.text()?;
    assert!(formula.contains('='), "{formula}");
    assert_well(page)
}

fn it_opens_on_a_phone(engine: Engine) -> Outcome {
    opens(engine, Size::Phone)
}

fn it_opens_on_a_desktop(engine: Engine) -> Outcome {
    opens(engine, Size::Desktop)
}

fn an_edit_is_answered_and_its_link_opens_elsewhere(engine: Engine) -> Outcome {
    let visit = visit(engine, Size::Phone)?;
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
    let parts = ["&kit=gannet", "&wheel=buoy-185", "&rider.mass_kg=91.5", "=crouched"];
    page.wait_for("the address follows", |page| {
        let address = page.url()?;
        Ok(parts.iter().all(|part| address.contains(part)))
    })?;
    // By the clipboard, or where a browser refuses that, by hand.
    see(page, "Share")?;
    page.by_role("button", "Copy link")?.click()?;
    page.wait_until(
        "return document.querySelector('.messages').innerText.includes('Link copied')
            || [...document.querySelectorAll('input')].some((e) => e.value === location.href)",
    )?;

    // The address brings the view too.
    see(page, "Build")?;
    page.wait_for("the address follows", |page| Ok(page.url()?.contains("see=build")))?;
    let other = browser(engine, Size::Phone).start()?;
    other.goto(&page.url()?)?;
    wait_living(&other)?;
    assert_answers(&other, &draft)?;
    assert_eq!(other.by_css("#rider-mass_kg")?.value()?, "91.5");
    other.by_text("Build opened from the link.")?;
    assert_well(&other)?;
    assert_well(page)
}

fn a_build_is_saved_and_opened_again(engine: Engine) -> Outcome {
    let visit = visit(engine, Size::Phone)?;
    let page = &visit.page;
    let mut saved = demo().draft("kittiwake");
    see(page, "Build")?;
    page.by_css("#rider-mass_kg")?.fill("88.25")?;
    saved.set(Slot::Rider, "mass_kg", 88.25);
    assert_answers(page, &saved)?;
    see(page, "Share")?;
    page.by_label("Name")?.fill("Sunday & hills")?;
    page.by_role("button", "Save on this device")?.click()?;
    page.by_text("Saved on this device.")?;
    see(page, "Build")?;
    page.by_css("#rider-mass_kg")?.fill("60")?;
    let mut other = saved.clone();
    other.set(Slot::Rider, "mass_kg", 60.0);
    assert_answers(page, &other)?;

    visit.reload()?;
    let page = &visit.page;
    assert_answers(page, &other)?;
    see(page, "Share")?;
    page.by_role("button", "Open Sunday & hills")?.click()?;
    see(page, "Build")?;
    assert_answers(page, &saved)?;
    assert_eq!(page.by_css("#rider-mass_kg")?.value()?, "88.25");
    assert_well(page)
}

fn it_works_without_a_signal(engine: Engine) -> Outcome {
    let mut visit = visit(engine, Size::Phone)?;
    visit.page.by_text("Ready offline")?;
    visit.server.stop();
    visit.reload()?;
    let page = &visit.page;
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    assert_answers(page, &draft)?;
    pick(page, &catalog, &mut draft, Slot::Wheel, 2)?;
    assert_answers(page, &draft)?;
    visit.reload()?;
    assert_answers(&visit.page, &draft)?;
    assert_well(&visit.page)
}

/// A driver neither pretends to print nor shows what it prints, so the rules for paper are put on the screen, on
/// which this is the width of A4: 210 mm at 96 px an inch.
fn the_rules_for_paper_hold(engine: Engine) -> Outcome {
    let visit = visit(engine, Size::Pixels(794, 1123))?;
    let page = &visit.page;
    assert_answers(page, &demo().draft("kittiwake"))?;
    see(page, "How fast?")?;
    page.by_text("In each ride mode, and uphill")?.click()?;
    let look = "const shown = (name) => document.querySelector(name).checkVisibility();
        return ['.bar', '.undo', '.view .evidence:not([open])', '.paper', '.view .evidence[open] td', '.view figure']
            .map(shown)";
    assert_eq!(page.eval(look, &[])?, json!([true, true, true, false, true, true]));
    let answer = page.by_css(".lead")?.text()?;
    let sheets = page.eval(
        "const rules = [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules])
            .filter((rule) => rule.media?.mediaText === 'print');
        for (const rule of rules) rule.media.mediaText = 'all';
        return new Set(rules.map((rule) => rule.parentStyleSheet)).size",
        &[],
    )?;
    assert!(sheets.as_u64() > Some(2), "{sheets}");
    // Controls and what is folded away stay off the paper; the build comes on it.
    assert_eq!(page.eval(look, &[])?, json!([false, false, false, true, true, true]));
    drawn(page)?;
    let wide = page.eval("return document.documentElement.scrollWidth", &[])?;
    assert_eq!(wide, json!(794));
    page.screenshot(&format!("walk-{engine:?}-paper"))?;
    assert_eq!(page.by_css(".lead")?.text()?, answer);
    assert_well(page)
}
