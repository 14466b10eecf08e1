//! The built site: whether it is of these sources, what it weighs, how it
//! looks to weak eyes and how it does without a network.

mod build;
mod contrast;
mod offline;
mod tokens;
mod update;

use pitchline_site::{FileSize, freshness, size};
use pitchline_tests::{dist, root};

#[test]
fn dist_is_built_from_these_sources() {
    if let Err(faults) = freshness(&root()) {
        panic!("dist is stale; `cargo site build` renews it:\n  {}", faults.join("\n  "));
    }
}

/// The compiler would write into panic messages where on this machine its sources lie.
#[test]
fn dist_names_no_folder_of_a_machine() {
    let sizes = size(&dist()).expect("dist can be measured");
    for file in &sizes.files {
        let content = std::fs::read(dist().join(&file.path)).expect("listed files can be read");
        for folder in ["/registry/src/", "/rustlib/src/", "/home/", "/Users/", "/root/"] {
            let named = content.windows(folder.len()).any(|part| part == folder.as_bytes());
            assert!(!named, "dist/{} names {folder}", file.path);
        }
    }
}

/// The project's budget for the whole page, in bytes as a host sends them; DEVELOPERS.md says what it
/// weighs and what it is meant to. Some hosts only know gzip, which takes 28 % more of the same page.
const BROTLI: u64 = 500_000;
const GZIP: u64 = 640_000;

#[test]
fn the_page_is_small() {
    let sizes = size(&dist()).expect("dist can be measured");
    let first = sizes.first;
    // An empty sum would fit any budget.
    assert!(sizes.files.iter().any(|file| file.first && file.path.ends_with(".wasm")));
    assert!(sizes.files.iter().any(|file| file.first && file.path.ends_with(".js")));
    let line =
        |file: &FileSize| format!("{:>8} {:>8}  {}", file.size.gzip, file.size.brotli, file.path);
    let list: Vec<String> = sizes.files.iter().filter(|file| file.first).map(line).collect();
    println!("    gzip   brotli\n{}", list.join("\n"));
    println!("{:>8} {:>8}  together", first.gzip, first.brotli);
    let (brotli, gzip) = (first.brotli, first.gzip);
    assert!(brotli <= BROTLI, "{brotli} > {BROTLI} bytes of brotli");
    assert!(gzip <= GZIP, "{gzip} > {GZIP} bytes of gzip");
}

/// A rule that is left open takes the ones after it into itself, and no tool of the build says so.
#[test]
fn every_rule_of_the_styles_is_closed() {
    let sheets = std::fs::read_dir(root().join("web/style")).expect("there are style sheets");
    let sheets: Vec<_> = sheets.flatten().map(|sheet| sheet.path()).collect();
    assert!(sheets.len() > 4, "{sheets:?}");
    for sheet in sheets {
        let text = std::fs::read_to_string(&sheet).expect("a style sheet can be read");
        // What stands before the end of a comment is part of it.
        let text: String = text
            .split("/*")
            .enumerate()
            .map(
                |(at, part)| if at == 0 { part } else { part.split_once("*/").map_or("", |p| p.1) },
            )
            .collect();
        let mut open = Vec::new();
        for (line, word) in text.lines().enumerate() {
            let word = word.trim();
            if word.contains('{')
                && open.last().is_some_and(|(_, rule): &(usize, &str)| !rule.starts_with('@'))
            {
                panic!("{}: {word:?} within {:?}", sheet.display(), open.last());
            }
            open.extend(word.matches('{').map(|_| (line, word)));
            for _ in word.matches('}') {
                assert!(open.pop().is_some(), "{}: nothing to close at {word:?}", sheet.display());
            }
        }
        assert!(open.is_empty(), "{}: never closed: {open:?}", sheet.display());
    }
}
