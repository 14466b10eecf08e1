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
/// weighs and what it is meant to. Some hosts only know gzip, which takes a quarter more.
const BROTLI: u64 = 500_000;
const GZIP: u64 = 625_000;

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
