//! After one visit, the site works with its server gone.

use std::path::Path;

use pitchline_site::{Options, serve};
use pitchline_tests::browser::{Browser, Fault, Outcome, Size};
use pitchline_tests::dist;
use serde_json::json;

use crate::build::{Build, assert_shows, wait_ready};

/// Visits the site served at `prefix` by the address `entry` (relative to the
/// host), stops the server, and goes on: by the reload button and in a new tab.
fn works_without_server(dist: &Path, prefix: &str, entry: &str) -> Outcome {
    let build = Build::marked(dist, "A")?;
    let mut server = serve(Options { prefix: prefix.to_owned(), ..Options::new(build.path()) })?;
    let host = format!("http://127.0.0.1:{}", server.port());
    let page = Browser::open(Size::Phone)?;
    page.goto(&format!("{host}{entry}"))?;
    wait_ready(&page)?;
    assert_shows(&page, "A")?;
    let lost: Vec<String> =
        server.requests().into_iter().filter(|line| line.ends_with(" 404")).collect();
    assert!(lost.is_empty(), "not found: {lost:?}");
    page.assert_quiet()?;

    server.stop();
    let probe = "return await fetch('./not-listed').then(() => 'there', () => 'gone')";
    assert_eq!(page.eval(probe, &[])?, json!("gone"), "the server still answers");
    page.reload()?;
    assert_shows(&page, "A")?;
    let here = page.url()?;
    page.open_tab()?;
    page.goto(&here)?;
    assert_shows(&page, "A")?;
    // The folder itself, whichever way the visitor came in.
    page.goto(&format!("{host}{prefix}"))?;
    assert_shows(&page, "A")?;
    page.assert_quiet_but(&["not-listed", "catalogue.json", "sw.js"])?;
    page.close_own(&host)
}

#[test]
fn offline_at_the_root() -> Outcome {
    works_without_server(&dist(), "/", "/")
}

#[test]
fn offline_in_a_folder() -> Outcome {
    works_without_server(&dist(), "/tools/calc/", "/tools/calc/")
}

#[test]
fn offline_after_a_visit_without_the_last_slash() -> Outcome {
    works_without_server(&dist(), "/tools/calc/", "/tools/calc")
}

#[test]
fn offline_by_the_name_of_the_page() -> Outcome {
    works_without_server(&dist(), "/tools/calc/", "/tools/calc/index.html")
}

#[test]
fn offline_with_a_query() -> Outcome {
    works_without_server(&dist(), "/tools/calc/", "/tools/calc/?utm_source=x#v=1")
}

/// A browser short of room may throw the kept files away.
#[test]
fn thrown_away_files_are_kept_again() -> Outcome {
    let build = Build::marked(&dist(), "A")?;
    let mut server = serve(Options::new(build.path()))?;
    let page = Browser::open(Size::Phone)?;
    page.goto(&server.url())?;
    wait_ready(&page)?;
    let dropped = page.eval(
        "const names = await caches.keys();
         for (const name of names) await caches.delete(name);
         return names.length",
        &[],
    )?;
    if dropped == json!(0) {
        return Err(Fault::new("there was nothing to throw away"));
    }
    page.reload()?;
    assert_shows(&page, "A")?;
    wait_ready(&page)?;
    server.stop();
    page.reload()?;
    assert_shows(&page, "A")
}
