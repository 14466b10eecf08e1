//! The browser harness itself: that it sees what is there and catches what is
//! wrong, on two small pages made for it.

use std::path::Path;

use pitchline_site::{Options, Server, serve};
use pitchline_tests::browser::{Browser, Engine, Fault, Key, Outcome, Size, Theme, running};
use serde_json::{Value, json};

fn fixture() -> Outcome<Server> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("harness/fixture");
    Ok(serve(Options::new(folder))?)
}

fn origin(server: &Server) -> String {
    server.url().trim_end_matches('/').to_owned()
}

#[track_caller]
fn complaint(outcome: Outcome) -> Outcome<String> {
    match outcome {
        Ok(()) => Err(Fault::new("nothing was found wrong")),
        Err(fault) => Ok(fault.to_string()),
    }
}

#[test]
fn a_person_can_use_a_good_page() -> Outcome {
    let server = fixture()?;
    let page = Browser::open(Size::Phone)?;
    page.goto(&format!("{}good.html", server.url()))?;

    page.by_label("Pack voltage")?.fill("37,5")?;
    page.by_role("button", "Save this board")?.click()?;
    page.by_text("Saved 37,5 V")?;
    page.by_label("Wheel")?.choose("Rough road")?;
    page.by_text("Rolls on Rough road")?;
    page.by_text("Here at last")?;
    page.wait_until("return document.getElementById('late').textContent !== ''")?;

    let text = page.text()?;
    assert!(text.contains("A page in order") && !text.contains("Nobody sees this"));
    assert_eq!(page.all_by_role("textbox")?.len(), 2);
    assert_eq!(page.by_role("status", "")?.text()?, "Rolls on Rough road");

    page.assert_accessible()?;
    page.assert_quiet()?;
    page.assert_own_requests(&origin(&server))?;
    let seen = page.requests()?;
    assert!(seen.iter().any(|url| url.ends_with("/good.css")), "{seen:?}");
    let picture = page.screenshot("harness-good")?;
    // Width and height stand at bytes 16..24 of a PNG: two device pixels each.
    let bytes = std::fs::read(picture)?;
    assert_eq!(bytes.get(16..24), Some([0, 0, 3, 12, 0, 0, 6, 152].as_slice()));
    page.close_own(&origin(&server))
}

#[test]
fn the_keyboard_walks_the_page() -> Outcome {
    let server = fixture()?;
    let page = Browser::open(Size::Desktop)?;
    page.goto(&format!("{}good.html", server.url()))?;
    let mut walk = Vec::new();
    for _ in 0..4 {
        page.press(Key::Tab)?;
        walk.push(page.focused()?.name()?);
    }
    assert_eq!(walk, ["Pack voltage", "Pack voltage under load", "Wheel", "Save this board"]);
    assert_eq!(page.focused()?.role()?, "button");
    page.press(Key::Enter)?;
    page.by_text("Saved 36 V")?;
    page.chord(&[Key::Shift, Key::Tab])?;
    page.press(Key::Down)?;
    page.by_text("Rolls on Rough road")?;
    Ok(())
}

#[test]
fn the_page_believes_the_device() -> Outcome {
    let server = fixture()?;
    let url = format!("{}good.html", server.url());
    let page =
        Browser::new(Size::Phone).theme(Theme::Dark).locale("de-DE").reduced_motion().start()?;
    let ask = "const m = (q) => matchMedia(q).matches;
        return [innerWidth, innerHeight, devicePixelRatio, m('(pointer: coarse)'),
            m('(prefers-color-scheme: dark)'), m('(prefers-reduced-motion: reduce)'),
            navigator.language, (1.5).toLocaleString()]";
    let phone = json!([390, 844, 2, true, true, true, "de-DE", "1,5"]);
    page.goto(&url)?;
    assert_eq!(page.eval(ask, &[])?, phone);
    page.reload()?;
    assert_eq!(page.eval(ask, &[])?, phone);
    let first = page.tab()?;
    page.open_tab()?;
    page.goto(&url)?;
    assert_eq!(page.eval(ask, &[])?, phone);
    page.close_tab(&first)?;

    page.set_theme(Theme::Light)?;
    page.set_size(Size::Desktop)?;
    let desk = json!([1280, 800, 1, false, false, true, "de-DE", "1,5"]);
    assert_eq!(page.eval(ask, &[])?, desk);
    page.set_size(Size::Narrow)?;
    assert_eq!(page.eval("return innerWidth", &[])?, json!(320));
    page.set_print(true)?;
    assert_eq!(page.eval("return matchMedia('print').matches", &[])?, Value::Bool(true));
    Ok(())
}

#[test]
fn a_bad_page_is_caught() -> Outcome {
    let server = fixture()?;
    let page = Browser::open(Size::Desktop)?;
    page.goto(&format!("{}bad.html", server.url()))?;
    page.wait_until("return (await navigator.serviceWorker.ready).active.state === 'activated'")?;

    let broken = complaint(page.assert_accessible())?;
    for rule in ["color-contrast", "label", "html-has-lang", "target-size"] {
        assert!(broken.contains(rule), "{rule} is not in: {broken}");
    }
    assert!(complaint(page.assert_quiet())?.contains("something broke"));
    page.discard_console()?;
    page.assert_quiet()?;

    let covered = page.by_role("button", "Covered")?;
    assert!(!covered.is_uncovered()?);
    assert!(complaint(covered.click())?.contains("click intercepted"));

    let asked = complaint(page.assert_own_requests(&origin(&server)))?;
    assert!(asked.contains("https://stranger.example/page"), "{asked}");
    // Only the whole record knows what the service worker did.
    let asked = complaint(page.close_own(&origin(&server)))?;
    assert!(asked.contains("https://stranger.example/page"), "{asked}");
    assert!(asked.contains("https://stranger.example/worker"), "{asked}");
    Ok(())
}

#[test]
fn webkit_sees_and_catches() -> Outcome {
    sees_and_catches(Engine::WebKit)
}

#[test]
fn firefox_sees_and_catches() -> Outcome {
    sees_and_catches(Engine::Firefox)
}

fn sees_and_catches(engine: Engine) -> Outcome {
    let server = fixture()?;
    let page = Browser::new(Size::Phone).engine(engine).theme(Theme::Dark).start()?;
    page.goto(&format!("{}good.html", server.url()))?;
    let device =
        "return [innerWidth, innerHeight, matchMedia('(prefers-color-scheme: dark)').matches]";
    assert_eq!(page.eval(device, &[])?, json!([390, 844, true]));

    page.by_label("Pack voltage")?.fill("37,5")?;
    page.by_role("button", "Save this board")?.click()?;
    page.by_text("Saved 37,5 V")?;
    page.by_label("Wheel")?.choose("Rough road")?;
    assert_eq!(page.by_role("status", "")?.text()?, "Rolls on Rough road");
    page.press(Key::Tab)?;
    let save = page.focused()?;
    assert_eq!((save.role()?, save.name()?), ("button".to_owned(), "Save this board".to_owned()));
    assert_eq!(page.all_by_role("textbox")?.len(), 2);
    page.assert_quiet()?;

    page.eval("dispatchEvent(new Event('complain'))", &[])?;
    let complaints = ["first", "second", "third", "img-src forbids", "fourth.png is not there"];
    page.wait_for("all complaints", |page| {
        let lines = page.console()?;
        Ok(complaints.iter().all(|words| lines.iter().any(|line| line.message.contains(words))))
    })?;
    // They are not lost with the page.
    page.reload()?;
    let loud = complaint(page.assert_quiet())?;
    for words in complaints {
        assert!(loud.contains(words), "{words} is not in: {loud}");
    }
    assert!(complaint(page.set_print(true))?.contains("only Chromium has"));
    assert!(complaint(page.close_own(&origin(&server)))?.contains("only Chromium has"));
    Ok(())
}

#[test]
fn nothing_outlives_the_page() -> Outcome {
    gone_with_the_page(Engine::Chromium)
}

#[test]
fn nothing_outlives_the_page_in_webkit() -> Outcome {
    gone_with_the_page(Engine::WebKit)
}

#[test]
fn nothing_outlives_the_page_in_firefox() -> Outcome {
    gone_with_the_page(Engine::Firefox)
}

fn gone_with_the_page(engine: Engine) -> Outcome {
    let page = Browser::new(Size::Phone).engine(engine).start()?;
    let folder = page.folder().to_owned();
    assert!(running(&folder)? > 0);
    drop(page);
    assert_eq!(running(&folder)?, 0);
    assert!(!folder.exists());
    Ok(())
}
