//! The bytes before the page is usable.

use pitchline_site::{finish, size};

use crate::folder::repository;

#[test]
fn what_the_page_needs_first_is_told_from_what_comes_later() {
    let folder = repository("size");
    finish(folder.path(), &folder.path().join("dist")).expect("dist can be finished");
    let sizes = size(&folder.path().join("dist")).expect("dist can be read");
    let named = |first| -> Vec<&str> {
        let files = sizes.files.iter().filter(|file| file.first == first);
        files.map(|file| file.path.as_str()).collect()
    };
    assert_eq!(
        named(true),
        [
            "catalogue.json",
            "index.html",
            "main-f2e3d4c5b6a7988.css",
            "pitchline-web-1f2e3d4c5b6a7988.js",
            "pitchline-web-1f2e3d4c5b6a7988_bg.wasm",
        ]
    );
    let later = named(false);
    assert_eq!(later[..3], ["build.json", "demo.json", "icon.svg"]);
    assert!(later[3].starts_with("pitchline-api-") && later[3].ends_with(".js"), "{later:?}");
    assert!(later[4].starts_with("pitchline-api-") && later[4].ends_with(".wasm"), "{later:?}");
    assert_eq!(later[5..], ["pitchline.js", "sw.js"]);
    let catalogue = &sizes.files[1];
    assert_eq!((catalogue.path.as_str(), catalogue.size.raw), ("catalogue.json", 2));
    let sum: u64 = sizes.files.iter().filter(|file| file.first).map(|file| file.size.raw).sum();
    assert_eq!(sizes.first.raw, sum);
}

/// Both formats can store repetition in a few bytes, and each adds a known frame to very little:
/// a gzip member has a 10-byte head and an 8-byte tail (RFC 1952).
#[test]
fn compression_is_measured() {
    let folder = repository("compression");
    folder.write("dist/long.txt", "belt ".repeat(20_000));
    folder.write("dist/empty.txt", "");
    let sizes = size(&folder.path().join("dist")).expect("dist can be read");
    let of = |path: &str| {
        let file = sizes.files.iter().find(|file| file.path == path);
        file.expect("the file is measured").size
    };
    let long = of("long.txt");
    assert_eq!(long.raw, 100_000);
    assert!(long.gzip < 1_000 && long.brotli < 100, "{long:?}");
    let empty = of("empty.txt");
    assert_eq!(empty.raw, 0);
    assert!((18..=30).contains(&empty.gzip) && empty.brotli <= 4, "{empty:?}");
}
