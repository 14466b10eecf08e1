//! Whether a stale or edited `dist` is found out.

use pitchline_site::{SOURCES, fingerprint, finish, freshness};

use crate::folder::repository;

#[test]
fn the_fingerprint_changes_with_every_source() {
    let folder = repository("fingerprint");
    let total = || fingerprint(folder.path()).expect("the sources can be read").total;
    let mut seen = vec![total()];
    for source in SOURCES {
        let path = match *source {
            file if file.contains('.') => file.to_owned(),
            tree => format!("{tree}/one/three.txt"),
        };
        folder.write(&path, format!("changed {source}"));
        let now = total();
        assert!(!seen.contains(&now), "{source}");
        seen.push(now);
    }
    assert_eq!(seen.len(), SOURCES.len() + 1);
}

#[test]
fn the_fingerprint_changes_when_content_moves_between_files() {
    let folder = repository("moved");
    let total = || fingerprint(folder.path()).expect("the sources can be read").total;
    folder.write("core/src/a.rs", "1").write("core/src/b.rs", "2");
    let before = total();
    folder.write("core/src/a.rs", "2").write("core/src/b.rs", "1");
    assert_ne!(before, total());
}

#[test]
fn line_ends_of_text_make_no_difference_but_those_of_pictures_do() {
    let folder = repository("line-ends");
    let total = || fingerprint(folder.path()).expect("the sources can be read").total;
    folder.write("core/src/a.rs", "one\ntwo\n");
    let before = total();
    folder.write("core/src/a.rs", "one\r\ntwo\r\n");
    assert_eq!(before, total());

    folder.write("web/public/a.png", b"\x89PNG\r\n\0");
    let before = total();
    folder.write("web/public/a.png", b"\x89PNG\n\0");
    assert_ne!(before, total());
}

#[test]
fn a_missing_source_is_an_error_that_names_it() {
    let folder = repository("missing-source");
    folder.remove("Trunk.toml");
    let error = fingerprint(folder.path()).expect_err("a source is missing");
    assert!(error.to_string().contains("Trunk.toml"), "{error}");
}

#[test]
fn a_finished_dist_is_fresh_until_something_changes() {
    let folder = repository("fresh");
    assert!(freshness(folder.path()).is_err(), "nothing was recorded yet");
    finish(folder.path(), &folder.path().join("dist")).expect("dist can be finished");
    assert_eq!(freshness(folder.path()), Ok(()));

    let mut expected = Vec::new();
    // A path, what is written there (nothing: it is removed), and what must be said of it.
    for (path, content, fault) in [
        ("dist/index.html", Some("by hand"), "dist/index.html was edited by hand"),
        ("dist/sw.js", Some("by hand"), "dist/sw.js was edited by hand"),
        ("dist/more.txt", Some(""), "dist/more.txt was not put there by the build"),
        ("dist/icon.svg", None, "dist/icon.svg is missing"),
        ("Cargo.lock", Some("newer"), "Cargo.lock changed since dist was built"),
        ("web/src/new.rs", Some(""), "web/src/new.rs is new since dist was built"),
        ("web/style/one/two.rs", None, "web/style/one/two.rs is gone since dist was built"),
    ] {
        match content {
            Some(content) => _ = folder.write(path, content),
            None => folder.remove(path),
        }
        let mut found = freshness(folder.path()).expect_err(path);
        found.sort();
        expected.push(fault.to_owned());
        expected.sort();
        assert_eq!(found, expected, "{path}");
    }
}

#[test]
fn an_edited_record_is_found_out() {
    let folder = repository("record");
    finish(folder.path(), &folder.path().join("dist")).expect("dist can be finished");
    let total = fingerprint(folder.path()).expect("the sources can be read").total;
    let record = folder.read("dist/build.json");
    folder.write("dist/build.json", record.replace(&total, "0"));
    assert_eq!(
        freshness(folder.path()),
        Err(vec!["dist/build.json was edited by hand".to_owned()])
    );
    folder.write("dist/build.json", "{}");
    assert!(freshness(folder.path()).is_err());
}
