//! The shell in the HTML: what stands there before any script runs, what it says while something is
//! awaited, and why the calculator cannot start.

use std::fs;
use std::time::{Duration, Instant};

use pitchline_site::Fault;
use pitchline_tests::browser::{Browser, Outcome, PATIENCE, Page, Size};

use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, wait_begun, wait_living};

/// What it is and what it asks, without a figure.
#[track_caller]
fn assert_shell(page: &Page) -> Outcome {
    let text = page.text()?;
    let asked = ["How fast?", "How steep?", "How far?", "How long on the charger?"];
    for part in asked.into_iter().chain(["Pitchline", "Does it go together?"]) {
        assert!(text.contains(part), "{part:?} is not in {text:?}");
    }
    // Of the shell itself: a report beside it may have an address.
    let shell = page.by_css(".page")?.text()?;
    assert!(!shell.contains(|c: char| c.is_ascii_digit()), "a figure in {shell:?}");
    Ok(())
}

#[test]
fn the_shell_says_what_it_is_without_scripts() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    page.set_scripts(false)?;
    page.goto(&visit.server.url())?;
    assert_shell(page)?;
    let text = page.text()?;
    assert!(text.contains("needs JavaScript"), "{text}");
    for false_hope in ["Getting the calculator ready", "Still waiting", "reload the page"] {
        assert!(!text.contains(false_hope), "{text}");
    }
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
    assert_eq!(page.all_by_css("a.tile")?.len(), 0, "too fast to be seen");
    page.screenshot("page-while-loading-Desktop")?;
    page.assert_accessible()?;
    wait_living(page)?;
    assert_answers(page, &demo().draft("kittiwake"))?;

    visit.server.set_fault(&wasm, Fault::Missing);
    let lost = Browser::open(Size::Phone)?;
    lost.goto(&visit.server.url())?;
    lost.by_text("The calculator didn't load")?;
    lost.by_role("button", "Try again")?;
    assert_shell(&lost)?;
    lost.screenshot("page-not-loaded-Phone")?;
    lost.assert_accessible()?;
    visit.server.mend();
    lost.by_role("button", "Try again")?.click()?;
    lost.wait_until("return document.querySelector('#view-title')")?;
    wait_living(&lost)?;
    visit.end()
}

/// What the browser saw of the start, once it stands still: the sum of the shifts, and when it
/// painted something first and at its largest.
const START: &str = "
    const seen = (type) => new Promise((go) => {
        new PerformanceObserver((list) => go(list.getEntries())).observe({ type, buffered: true });
        setTimeout(go, 500, []);
    });
    const [shifts, paints, largest] =
        await Promise.all(['layout-shift', 'paint', 'largest-contentful-paint'].map(seen));
    const first = paints.find((paint) => paint.name === 'first-contentful-paint');
    return [shifts.reduce((sum, shift) => sum + shift.value, 0), first.startTime, largest.at(-1).startTime];";

/// The sentence of the shell is the largest text of a first visit, so nobody waits for the wasm to
/// read it, and the page then takes the shell's place without pushing anything about.
#[test]
fn the_first_paint_is_the_largest_and_nothing_shifts() -> Outcome {
    for size in [Size::Phone, Size::Desktop] {
        let visit = Visit::before(Site::new()?, Browser::new(size))?;
        let wasm = visit.site.file("_bg.wasm")?;
        visit.server.set_fault(&wasm, Fault::Delay(Duration::from_secs(1)));
        visit.page.goto(&visit.server.url())?;
        wait_begun(&visit.page)?;
        let seen: [f64; 3] =
            serde_json::from_value(visit.page.eval(START, &[])?).expect("three numbers");
        let [shifted, first, largest] = seen;
        assert!(shifted < 0.005, "{size:?}: {shifted}");
        assert!(largest < first + 500.0, "{size:?}: first at {first} ms, largest at {largest} ms");
        visit.end()?;
    }
    Ok(())
}

/// Longer than anybody looks on here.
const NEVER: Fault = Fault::Delay(Duration::from_secs(90));

fn awaits(file: &str, what: &str, help: &str, size: Size) -> Outcome<Visit> {
    let visit = Visit::before(Site::new()?, Browser::new(size))?;
    let page = &visit.page;
    visit.server.set_fault(&visit.site.file(file)?, NEVER);
    page.goto(&visit.server.url())?;
    assert!(!page.text()?.contains("Still"), "too early");
    page.by_text(what)?;
    assert_shell(page)?;
    page.assert_accessible()?;
    page.by_text(help)?;
    page.by_role("button", "Reload")?;
    page.screenshot(&format!("page-awaits{}-{size:?}", file.replace('.', "-")))?;
    page.assert_accessible()?;
    Ok(visit)
}

#[test]
fn a_hanging_program_is_named() -> Outcome {
    let what = "Still waiting for the calculator's program.";
    awaits("_bg.wasm", what, "Check your connection and reload the page.", Size::Phone).map(drop)
}

/// In the end the demo stands in, with the reason.
#[test]
fn a_hanging_catalogue_is_named_and_done_without() -> Outcome {
    let what = "Still waiting for the maker's parts, catalogue.json.";
    let visit = awaits("catalogue.json", what, "the page starts without them", Size::Desktop)?;
    // Its thirty seconds began when the program had come, and half of them are left.
    let start = Instant::now();
    while wait_begun(&visit.page).is_err() && start.elapsed() < 2 * PATIENCE {}
    wait_living(&visit.page)?;
    assert!(visit.page.by_css(".told")?.text()?.contains("didn't arrive within 30\u{a0}s"));
    assert_answers(&visit.page, &demo().draft("kittiwake"))?;
    visit.end()
}

/// What stands in the HTML, for when no script says it: what is waited for, and what to do.
const LATE: [&str; 2] = [
    "Still waiting for the page's files.",
    "Check your connection and reload the page. If that doesn't help, a file may be missing on the host.",
];

/// What is hidden at first, so that it need not be said by a script.
#[test]
fn a_page_without_its_scripts_says_so_by_itself() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    for script in ["boot-", "recovery-"] {
        visit.server.break_path(&script_of(&visit.site, script)?);
    }
    page.goto(&visit.server.url())?;
    let text = page.text()?;
    assert!(!text.contains(LATE[0]) && !text.contains(LATE[1]), "too early: {text}");
    page.wait_until(&format!("return document.body.innerText.includes({:?})", LATE.join(" ")))?;
    page.assert_accessible()
}

/// The browser runs the script that starts the calculator after it, so all that can be said stands
/// in the HTML.
#[test]
fn a_hanging_recovery_script_is_told_by_the_page_itself() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    let script = script_of(&visit.site, "recovery-")?;
    visit.server.set_fault(&script, Fault::Delay(Duration::from_secs(18)));
    // The driver waits until the page is loaded, so the page itself writes down what is seen.
    page.before_each_page(
        "window.seen = {};
         for (const s of [4, 7, 16]) setTimeout(() => seen[s] = document.body.innerText, s * 1000)",
    )?;
    page.goto(&visit.server.url())?;
    for (second, said) in [(4, [false; 2]), (7, [true, false]), (16, [true; 2])] {
        let text = page.eval(&format!("return seen[{second}]"), &[])?;
        let text = text.as_str().unwrap_or_default();
        assert!(text.contains("Getting the calculator ready"), "after {second} s: {text}");
        assert_eq!(LATE.map(|words| text.contains(words)), said, "after {second} s: {text}");
    }
    wait_living(page)?;
    assert_answers(page, &demo().draft("kittiwake"))?;
    assert!(!page.text()?.contains(LATE[0]));
    page.assert_quiet()
}

fn script_of(site: &Site, start: &str) -> Outcome<String> {
    let names = fs::read_dir(site.path())?.flatten().map(|file| file.file_name());
    let mut names = names.map(|name| name.to_string_lossy().into_owned());
    names
        .find(|name| name.starts_with(start) && name.ends_with(".js"))
        .ok_or_else(|| pitchline_tests::browser::Fault::new(format!("no script {start}")))
}

#[track_caller]
fn assert_cannot_start(page: &Page, title: &str, words: &str) -> Outcome {
    let panel = page.by_role("alert", "")?;
    let said = panel.text()?;
    assert!(said.contains(title) && said.contains(words), "{said}");
    assert!(!page.text()?.contains("Getting the calculator ready"), "it is not");
    assert_shell(page)?;
    page.assert_accessible()
}

#[test]
fn a_missing_script_is_told() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Desktop))?;
    visit.server.break_path(&script_of(&visit.site, "boot-")?);
    visit.page.goto(&visit.server.url())?;
    assert_cannot_start(&visit.page, "The calculator didn't load", "didn't arrive or was blocked")
}

#[test]
fn a_browser_without_webassembly_is_told() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    page.before_each_page("delete window.WebAssembly")?;
    page.goto(&visit.server.url())?;
    assert_cannot_start(page, "The calculator can't start here", "no WebAssembly")?;
    page.screenshot("page-no-webassembly-Phone")?;
    page.assert_quiet()
}

#[test]
fn a_damaged_program_is_told() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    visit.server.set_fault(&visit.site.file("_bg.wasm")?, Fault::Body(b"no program".to_vec()));
    visit.page.goto(&visit.server.url())?;
    assert_cannot_start(
        &visit.page,
        "The calculator can't start here",
        "file on the host is probably damaged",
    )
}

#[test]
fn a_page_opened_from_a_file_says_so() -> Outcome {
    let site = Site::new()?;
    let page = Browser::open(Size::Desktop)?;
    page.goto(&format!("file://{}/index.html", site.path().display()))?;
    assert_cannot_start(&page, "The calculator can't start from a file", "on a web server")?;
    page.screenshot("page-from-a-file-Desktop").map(drop)
}

#[test]
fn a_frame_without_an_origin_says_so() -> Outcome {
    let site = Site::new()?;
    let frame = "<!DOCTYPE html><html lang=en><title>Shop</title><link rel=icon href='data:,'>
        <iframe sandbox=allow-scripts title=Calculator src='./' width=380 height=700></iframe>";
    fs::write(site.path().join("shop.html"), frame)?;
    let visit = Visit::before(site, Browser::new(Size::Desktop))?;
    let page = &visit.page;
    page.goto(&format!("{}shop.html#v=1", visit.server.url()))?;
    page.enter_frame(&page.by_css("iframe")?)?;
    let panel = page.by_role("alert", "")?.text()?;
    for words in
        ["can't start in this frame", "allow-scripts allow-same-origin", &visit.server.url()]
    {
        assert!(panel.contains(words), "{words:?} is not in {panel:?}");
    }
    page.by_role("button", "Copy link")?;
    assert_shell(page)?;
    page.screenshot("page-without-origin-Desktop").map(drop)
}
