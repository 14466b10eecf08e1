//! The list of files for offline use.

use pitchline_site::offline::{Listed, list, worker};

use crate::folder::{Folder, WORKER};

#[test]
fn the_list_holds_every_file_of_the_site_and_no_other() {
    let folder = Folder::new("list");
    for kept in
        ["index.html", "app.js", "app_bg.wasm", "catalogue.json", "sub/index.html", "sub/b.css"]
    {
        folder.write(kept, "abc");
    }
    for left in [
        "sw.js",
        "kill-switch.sw.js",
        "build.json",
        "app.js.map",
        "sub/b.css.map",
        "app.d.ts",
        ".hidden",
        ".git/x",
    ] {
        folder.write(left, "abc");
    }
    let listed = list(folder.path()).expect("the folder can be read");
    let urls: Vec<&str> = listed.iter().map(|file| file.url.as_str()).collect();
    assert_eq!(urls, ["./", "app.js", "app_bg.wasm", "catalogue.json", "sub/", "sub/b.css"]);
    // The digest of "abc" published with FIPS 180-4.
    let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    assert!(listed.iter().all(|file| file.sha256 == abc));
}

fn file(url: &str, sha256: &str) -> Listed {
    Listed { url: url.to_owned(), sha256: sha256.to_owned() }
}

fn version(template: &str, listed: &[Listed]) -> String {
    worker(template, listed).expect("the template has its line").1
}

#[test]
fn the_worker_gets_the_list_and_a_version() {
    let listed = [file("./", "11"), file("catalogue.json", "22"), file("it's.js", "33")];
    let (filled, version) = worker(WORKER, &listed).expect("the template has its line");
    assert_eq!(version.len(), 16);
    for present in [version.as_str(), r#""./": "11""#, r#""it's.js": "33""#] {
        assert!(filled.contains(present), "{present}");
    }
    assert!(!filled.contains("unbuilt"));
    assert!(!filled.contains("\"22\""), "its owner may edit the catalogue on the host");
}

#[test]
fn the_version_changes_with_any_byte_that_is_kept_and_with_no_other() {
    let base = [file("./", "11"), file("a.js", "22"), file("catalogue.json", "33")];
    let first = version(WORKER, &base);
    assert_eq!(first, version(WORKER, &base));

    let mut edited = base.clone();
    edited[1].sha256 = "23".to_owned();
    assert_ne!(first, version(WORKER, &edited));
    let mut renamed = base.clone();
    renamed[1].url = "b.js".to_owned();
    assert_ne!(first, version(WORKER, &renamed));
    assert_ne!(first, version(WORKER, &base[..1]));
    assert_ne!(first, version(&format!("{WORKER}//"), &base));

    let mut catalogue = base.clone();
    catalogue[2].sha256 = "34".to_owned();
    assert_eq!(first, version(WORKER, &catalogue));
}

#[test]
fn a_worker_without_the_line_to_fill_is_refused() {
    assert!(worker("self.onfetch = null;", &[]).is_err());
    assert!(worker(&format!("{WORKER}{WORKER}"), &[]).is_err());
}
