//! Back and Forward change the view, Undo and Redo the build, and neither the other's.

use pitchline_core::catalog::read_build;
use pitchline_core::{Draft, Slot};
use pitchline_tests::browser::{Browser, Fault, Key, Outcome, Page, Size};
use serde_json::{Value, json};

use crate::link::at_end;
use crate::visit::{Site, Visit, demo, kit_for, link, open_build, see, wait_living};

/// The build that the tab keeps, as the core reads it.
#[track_caller]
fn kept(page: &Page) -> Outcome<Draft> {
    let script = "return sessionStorage.getItem(
        'pitchline:' + new URL('.', location).pathname + ':tab:' + history.state.tab)";
    let text = page.eval(script, &[])?;
    let value: Value = serde_json::from_str(text.as_str().unwrap_or_default())
        .map_err(|error| Fault::new(format!("{error}: {text}")))?;
    let (draft, _) = read_build(&value).map_err(|faults| Fault::new(format!("{faults:?}")))?;
    Ok(draft)
}

#[track_caller]
pub(crate) fn assert_build(page: &Page, wanted: &Draft, what: &str) -> Outcome {
    page.wait_for(&format!("{what}: the build"), |page| Ok(kept(page)? == *wanted))
}

#[track_caller]
pub(crate) fn assert_view(page: &Page, title: &str) -> Outcome {
    page.wait_until(&format!(
        "return document.querySelector('#view-title')?.textContent === {}",
        Value::from(title)
    ))
}

/// Types a number and leaves the field.
#[track_caller]
pub(crate) fn fill(page: &Page, selector: &str, text: &str) -> Outcome {
    page.by_css(selector)?.fill(text)?;
    page.press(Key::Enter)
}

#[track_caller]
pub(crate) fn forward(page: &Page) -> Outcome {
    page.eval("history.forward()", &[]).map(drop)
}

/// The name of the button for Undo or Redo, or nothing where there is nothing to do.
#[track_caller]
pub(crate) fn offered(page: &Page, word: &str) -> Outcome<String> {
    let script =
        "const button = document.querySelector(`.top button[aria-label^='${arguments[0]}']`);
        return button.ariaDisabled ? '' : button.ariaLabel";
    Ok(page.eval(script, &[word.into()])?.as_str().unwrap_or_default().into())
}

#[track_caller]
pub(crate) fn turn(page: &Page, word: &str) -> Outcome {
    page.by_css(&format!(".top button[aria-label^='{word}']"))?.click()
}

/// What is typed until the field is left is one edit, and so are steps in a row.
#[test]
fn an_edit_is_what_a_person_calls_one() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let first = demo().draft("kittiwake");
    open_build(page)?;
    assert_eq!(offered(page, "Undo")?, "");
    fill(page, "#rider-mass_kg", "91.5")?;
    let before = first.value(Slot::Rider, "mass_kg").unwrap_or_default();
    let name = format!("Undo – your weight: 91.5 instead of {before}\u{a0}kg");
    page.wait_for("it is named", |page| Ok(offered(page, "Undo")? == name))?;
    page.eval(
        "const more = document.querySelector(\"button[aria-label='Your weight: more']\");
         for (let n = 0; n < 5; n++) more.click()",
        &[],
    )?;
    let mut draft = first.clone();
    draft.set(Slot::Rider, "mass_kg", 97.0);
    assert_build(page, &draft, "five steps")?;
    turn(page, "Undo")?;
    draft.set(Slot::Rider, "mass_kg", 91.5);
    assert_build(page, &draft, "undone at once")?;
    // A field of text has an Undo of its own.
    page.by_css("#rider-mass_kg")?.focus()?;
    page.chord(&[Key::Control, Key::Char('z')])?;
    assert_build(page, &draft, "the page's is left alone")?;
    turn(page, "Undo")?;
    assert_build(page, &first, "back at the start")?;
    assert_eq!(offered(page, "Undo")?, "");
    visit.end()
}

/// Loaded anew before its address has followed, the page still has the last edit.
#[test]
fn a_reload_right_after_an_edit_loses_nothing() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let mut draft = demo().draft("kittiwake");
    open_build(page)?;
    for step in 0..12 {
        let mass = 70.5 + f64::from(step);
        fill(page, "#rider-mass_kg", &format!("{mass}"))?;
        draft.set(Slot::Rider, "mass_kg", mass);
        assert_build(page, &draft, "typed")?;
        // The address is due 300 ms after the edit.
        let wait = format!("await new Promise((done) => setTimeout(done, {}))", 190 + 10 * step);
        page.eval(&wait, &[])?;
        page.reload()?;
        wait_living(page)?;
        assert_build(page, &draft, &format!("loaded anew, {step}"))?;
    }
    visit.end()
}

/// The address is still that of before where the page is left at once.
#[test]
fn leaving_right_after_an_edit_loses_nothing() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let mut draft = demo().draft("kittiwake");
    open_build(page)?;
    for (step, mass) in [71.5, 72.5, 73.5].into_iter().enumerate() {
        fill(page, "#rider-mass_kg", &format!("{mass}"))?;
        draft.set(Slot::Rider, "mass_kg", mass);
        page.goto("about:blank")?;
        page.back()?;
        wait_living(page)?;
        assert_build(page, &draft, &format!("back, {step}"))?;
        page.wait_until(&format!("return location.hash.includes('rider.mass_kg={mass}')"))?;
    }
    visit.end()
}

/// A new view begins with its heading; Back leads to where the reader was.
#[test]
fn back_leads_to_where_the_reader_was() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let places = |page: &Page| page.eval("return history.length", &[]);
    page.by_css(".list a[href='#see=charge']")?.focus()?;
    page.wait_until("scrollTo(0, 40); return scrollY === 40")?;
    let before = places(page)?;
    page.press(Key::Enter)?;
    assert_view(page, "How long on the charger?")?;
    page.wait_until("return document.activeElement.id === 'view-title' && scrollY === 0")?;
    page.wait_until("return document.title.startsWith('How long on the charger?')")?;
    assert_eq!(places(page)?, json!(before.as_u64().unwrap_or_default() + 1));
    // The link to what is in sight makes no place.
    page.eval(
        "const link = document.createElement('a');
         link.href = '#see=charge';
         link.textContent = 'here';
         document.querySelector('main').append(link);
         link.click()",
        &[],
    )?;
    assert_eq!(places(page)?, json!(before.as_u64().unwrap_or_default() + 1));
    page.wait_until("scrollTo(0, 80); return scrollY === 80")?;
    page.back()?;
    assert_view(page, "Overview")?;
    let there = "return [scrollY, document.activeElement.matches(\".list a[href='#see=charge']\")]";
    let mut seen = Value::Null;
    let waited = page.wait_for("where the reader was", |page| {
        seen = page.eval(there, &[])?;
        Ok(seen == json!([40, true]))
    });
    assert!(waited.is_ok(), "{seen}");
    forward(page)?;
    assert_view(page, "How long on the charger?")?;
    page.wait_until("return scrollY === 80")?;
    // A reload too.
    page.reload()?;
    wait_living(page)?;
    assert_view(page, "How long on the charger?")?;
    page.wait_until("return scrollY === 80")?;
    page.back()?;
    assert_view(page, "Overview")?;
    page.wait_until("return scrollY === 40")?;
    visit.end()
}

/// A link brings its build and its view; the places before it keep their views, and say that build.
#[test]
fn a_link_brings_build_and_view_and_back_the_view_alone() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let catalog = demo();
    see(page, "How fast?")?;
    page.wait_until("return location.hash.includes('kit=kittiwake')")?;
    let paste =
        |tail: &str| page.eval("location.hash = arguments[0]", &[link(tail).into()]).map(drop);
    paste("kit=gannet&rider.mass_kg=81&see=far")?;
    let mut gannet = catalog.draft("gannet");
    gannet.set(Slot::Rider, "mass_kg", 81.0);
    assert_build(page, &gannet, "of the link")?;
    assert_view(page, "How far?")?;
    page.by_text("Build opened from the link.")?;
    page.back()?;
    assert_view(page, "How fast?")?;
    page.wait_until(
        "return location.hash.includes('kit=gannet') && location.hash.endsWith('see=fast')",
    )?;
    assert_build(page, &gannet, "Back leaves it")?;
    forward(page)?;
    assert_view(page, "How far?")?;
    turn(page, "Undo")?;
    assert_build(page, &catalog.draft("kittiwake"), "of before the link")?;
    assert_view(page, "How far?")?;
    page.wait_until(
        "return location.hash.includes('kit=kittiwake') && location.hash.endsWith('see=far')",
    )?;
    // A link of earlier versions names no view.
    paste("kit=gannet")?;
    assert_view(page, "Overview")?;
    assert_build(page, &catalog.draft("gannet"), "of the older link")?;
    page.back()?;
    page.reload()?;
    wait_living(page)?;
    assert_view(page, "How far?")?;
    assert_build(page, &catalog.draft("gannet"), "after a reload where Back led")?;
    visit.end()
}

/// A message undoes what it names. Once there was another edit, that would take both.
#[test]
fn a_message_undoes_no_more_than_it_names() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let catalog = demo();
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    page.by_text("Switched to the standard Gannet.")?;
    assert!(page.by_css(".message")?.is_uncovered()?);
    let buttons = |page: &Page| {
        let script =
            "return [...document.querySelectorAll('.message button')].map((b) => b.textContent)";
        page.eval(script, &[])
    };
    assert_eq!(buttons(page)?, json!(["Undo", "Close"]));
    fill(page, "#rider-mass_kg", "91.5")?;
    page.wait_for("it offers no more", |page| Ok(buttons(page)? == json!(["Close"])))?;
    turn(page, "Undo")?;
    // What it does to the build, not what the edit did.
    page.by_text(" instead of 91.5\u{a0}kg.")?;
    let gannet = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    assert_build(page, &gannet, "the kit is still there")?;
    see(page, "More")?;
    at_end(page)?;
    page.assert_accessible()?;
    // Gone after ten seconds, but not while someone points at it.
    page.by_css(".message")?.hover(0.5, 0.5)?;
    std::thread::sleep(std::time::Duration::from_millis(10_500));
    page.by_css(".message")?;
    page.by_css("#view-title")?.hover(0.5, 0.5)?;
    std::thread::sleep(std::time::Duration::from_millis(9_000));
    page.by_css(".message")?;
    page.wait_until("return !document.querySelector('.message')")?;
    visit.end()
}

/// Where the tab's store is full the oldest edits go; the build stays.
#[test]
fn a_full_store_drops_the_oldest_edits() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Desktop))?;
    let page = &visit.page;
    visit.open("")?;
    open_build(page)?;
    for mass in 81..89 {
        fill(page, "#rider-mass_kg", &mass.to_string())?;
    }
    page.wait_until("return location.hash.includes('rider.mass_kg=88')")?;
    // All but the last few letters of the store.
    page.eval(
        "let size = 1 << 22;
         for (let n = 0; size; n++) {
           try { sessionStorage.setItem('other' + n, 'x'.repeat(size)) } catch { size >>= 1 }
         }",
        &[],
    )?;
    for mass in 91..94 {
        fill(page, "#rider-mass_kg", &mass.to_string())?;
    }
    page.wait_until("return document.documentElement.dataset.kept === 'yes'")?;
    let mut draft = demo().draft("kittiwake");
    draft.set(Slot::Rider, "mass_kg", 93.0);
    assert_build(page, &draft, "of the last edit")?;
    page.reload()?;
    wait_living(page)?;
    assert_build(page, &draft, "after a reload")?;
    turn(page, "Undo")?;
    draft.set(Slot::Rider, "mass_kg", 92.0);
    assert_build(page, &draft, "the one before")?;
    let mut undone = 1;
    while !offered(page, "Undo")?.is_empty() {
        turn(page, "Undo")?;
        undone += 1;
    }
    assert!((2..11).contains(&undone), "{undone} of 11 were kept");
    visit.end()
}
