//! A new build takes over when it is whole and the visitor agrees, and touches
//! nothing that belongs to somebody else.

use std::path::Path;
use std::time::Duration;

use pitchline_site::{self as site, Options, Server, serve};
use pitchline_tests::browser::{Browser, Fault, Outcome, Page, Size, Tab};
use pitchline_tests::dist;
use serde_json::json;

use crate::build::{Build, assert_shows, wait_ready, wait_shows};

const PREFIX: &str = "/tools/calc/";

fn serve_at(build: &Build, port: u16) -> Outcome<Server> {
    let options = Options { prefix: PREFIX.to_owned(), port, ..Options::new(build.path()) };
    Ok(serve(options)?)
}

#[track_caller]
fn open_tab(page: &Page, server: &Server) -> Outcome<Tab> {
    let tab = page.open_tab()?;
    page.goto(&server.url())?;
    Ok(tab)
}

/// Asks for a newer build, and gives the word on it: `waiting` once it has
/// waited for a second, `hasty` if it did not, `refused`, or `none`.
#[track_caller]
fn look_for_update(page: &Page) -> Outcome<String> {
    let script = "const registration = await navigator.serviceWorker.getRegistration();
        const settled = (worker) => new Promise((resolve) => {
          const look = () => {
            if (worker.state === 'installed') resolve('waiting');
            if (worker.state === 'redundant') resolve('refused');
          };
          worker.addEventListener('statechange', look);
          look();
        });
        if (!registration.waiting) await registration.update().catch(() => {});
        const fresh = registration.installing ?? registration.waiting;
        if (!fresh) return 'none';
        if (await settled(fresh) === 'refused') return 'refused';
        await new Promise((resolve) => setTimeout(resolve, 1000));
        return registration.waiting ? 'waiting' : 'hasty'";
    let word = page.eval(script, &[])?;
    Ok(word.as_str().unwrap_or_default().to_owned())
}

/// A open in one tab; B, broken in every way a host can break it, in another;
/// C in a third. All tabs must run all the time, and end on C.
fn updates(dist: &Path) -> Outcome {
    let a = Build::marked(dist, "A")?;
    let b = Build::marked(dist, "B")?;
    let c = Build::marked(dist, "C")?;
    let mut server = serve_at(&a, 0)?;
    let page = Browser::open(Size::Desktop)?;
    let first = page.tab()?;
    page.goto(&server.url())?;
    wait_ready(&page)?;
    assert_shows(&page, "A")?;

    server.set_dir(b.path());
    let wasm = b.wasm()?;
    let faults = [
        site::Fault::Missing,
        site::Fault::Body(b"the bytes of another build".to_vec()),
        site::Fault::Redirect(format!("{PREFIX}mark.txt")),
    ];
    let mut second = None;
    for fault in faults {
        let story = format!("{fault:?}");
        server.clear_requests();
        server.set_fault(&wasm, fault);
        second = Some(open_tab(&page, &server)?);
        assert_shows(&page, "A")?;
        let word = look_for_update(&page)?;
        // An update that began with the visit may be over by now.
        assert!(word == "refused" || word == "none", "{word}: {story}");
        let asked = format!("GET {PREFIX}{wasm} ");
        page.wait_for("the broken build is tried", |_| {
            Ok(server.requests().iter().any(|line| line.starts_with(&asked)))
        })?;
        page.wait_until(
            "const r = await navigator.serviceWorker.getRegistration();
             return !r.installing && !r.waiting && r.active.state === 'activated'",
        )?;
        page.reload()?;
        assert_shows(&page, "A")?;
    }
    let second = second.ok_or_else(|| Fault::new("no second tab"))?;

    // The host goes away and comes back with C.
    let port = server.port();
    server.stop();
    for tab in [&first, &second] {
        page.switch_to(tab)?;
        page.reload()?;
        assert_shows(&page, "A")?;
    }
    let mut server = serve_at(&c, port)?;
    let third = open_tab(&page, &server)?;
    assert_shows(&page, "A")?;
    assert_eq!(look_for_update(&page)?, "waiting");
    for tab in [&first, &second, &third] {
        page.switch_to(tab)?;
        page.wait_until("return document.documentElement.dataset.update === 'waiting'")?;
        // It waits for the visitor, however often the page is loaded.
        page.reload()?;
        assert_shows(&page, "A")?;
    }

    page.eval("dispatchEvent(new CustomEvent('pitchline:update-now'))", &[])?;
    for tab in [&first, &second, &third] {
        page.switch_to(tab)?;
        wait_shows(&page, "C")?;
    }
    wait_ready(&page)?;
    server.stop();
    for tab in [&first, &second, &third] {
        page.switch_to(tab)?;
        page.reload()?;
        assert_shows(&page, "C")?;
    }
    let builds = page.eval(
        "return (await caches.keys()).filter((name) => !name.endsWith('catalogue')).length",
        &[],
    )?;
    assert_eq!(builds, json!(1), "old builds are still kept");
    Ok(())
}

#[test]
fn a_broken_build_is_passed_over() -> Outcome {
    updates(&dist())
}

/// Without a word from the visitor, a new build takes over once no tab is left.
#[test]
fn the_next_visit_takes_the_new_build() -> Outcome {
    let (a, b) = (Build::marked(&dist(), "A")?, Build::marked(&dist(), "B")?);
    let server = serve_at(&a, 0)?;
    let page = Browser::open(Size::Phone)?;
    page.goto(&server.url())?;
    wait_ready(&page)?;
    server.set_dir(b.path());
    assert_eq!(look_for_update(&page)?, "waiting");
    page.reload()?;
    assert_shows(&page, "A")?;
    // The browser lets go of the old one in its own time.
    page.wait_for("the next visit shows B", |page| {
        page.goto("about:blank")?;
        std::thread::sleep(Duration::from_millis(300));
        page.goto(&server.url())?;
        assert_shows(page, "B").map(|()| true)
    })
}

/// One host often serves several sites; their storage is one.
#[test]
fn neighbours_keep_what_is_theirs() -> Outcome {
    let (a, b) = (Build::marked(&dist(), "A")?, Build::marked(&dist(), "B")?);
    let server = serve_at(&a, 0)?;
    let page = Browser::open(Size::Desktop)?;
    let neighbour = format!("http://127.0.0.1:{}/elsewhere", server.port());
    // Caches of a stranger, of a copy of this site below and one beside it. Each
    // holds an answer of its own for our file, which must never be given out.
    let names = json!([
        "someone-else",
        "0",
        "pitchline:/tools/calculus/:1",
        "pitchline:/tools/calc/old/:1",
        "pitchline:/tools/:1",
        "pitchline"
    ]);
    page.goto(&neighbour)?;
    page.eval(
        "for (const name of arguments[0]) {
           const cache = await caches.open(name);
           for (const path of ['', 'mark.txt', 'index.html']) {
             await cache.put('/tools/calc/' + path, new Response('not yours'));
           }
           localStorage.setItem(name, 'not yours');
         }",
        std::slice::from_ref(&names),
    )?;
    let check = |page: &Page, when: &str| -> Outcome {
        let script = "const lost = [];
            for (const name of arguments[0]) {
              const kept = await caches.has(name) && await (await caches.open(name)).match('/tools/calc/mark.txt');
              if (!kept || await kept.text() !== 'not yours') lost.push('cache ' + name);
              if (localStorage.getItem(name) !== 'not yours') lost.push('storage ' + name);
            }
            return lost";
        let lost = page.eval(script, std::slice::from_ref(&names))?;
        if lost == json!([]) {
            return Ok(());
        }
        Err(Fault::new(format!("lost {when}: {lost}")))
    };

    page.goto(&server.url())?;
    wait_ready(&page)?;
    page.reload()?;
    assert_shows(&page, "A")?;
    check(&page, "on the first visit")?;

    server.set_dir(b.path());
    assert_eq!(look_for_update(&page)?, "waiting");
    page.eval("dispatchEvent(new CustomEvent('pitchline:update-now'))", &[])?;
    wait_shows(&page, "B")?;
    wait_ready(&page)?;
    check(&page, "on the update")?;

    page.goto(&format!("{}?no-sw", server.url()))?;
    page.wait_until("return !(await navigator.serviceWorker.getRegistration())")?;
    page.wait_until("return (await caches.keys()).length === 6")?;
    check(&page, "on the way out")
}
