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

/// The project's own budget for all that must arrive before the page can be
/// used, in bytes as a host sends them. Some hosts only know gzip.
const BROTLI: u64 = 150_000;
const GZIP: u64 = 180_000;
/// The same for the piece that follows once the page is usable.
const LATER_BROTLI: u64 = 130_000;
const LATER_GZIP: u64 = 155_000;

#[test]
fn the_first_visit_is_small() {
    let sizes = size(&dist()).expect("dist can be measured");
    let first = sizes.first;
    // An empty sum would fit any budget.
    assert!(sizes.files.iter().any(|file| file.first && file.path.ends_with(".wasm")));
    assert!(sizes.files.iter().any(|file| file.first && file.path.ends_with(".js")));
    let line =
        |file: &FileSize| format!("{:>8} {:>8}  {}", file.size.gzip, file.size.brotli, file.path);
    let list: Vec<String> = sizes.files.iter().filter(|file| file.first).map(line).collect();
    println!("    gzip   brotli\n{}", list.join("\n"));
    println!("{:>8} {:>8}  in all", first.gzip, first.brotli);
    assert!(first.brotli <= BROTLI, "{} > {BROTLI} bytes of brotli", first.brotli);
    assert!(first.gzip <= GZIP, "{} > {GZIP} bytes of gzip", first.gzip);
}

#[test]
fn the_later_piece_is_small() {
    let later = size(&dist()).expect("dist can be measured").later;
    println!("{:>8} {:>8}  later", later.gzip, later.brotli);
    // A piece that is not there would fit any budget.
    assert!(later.brotli > 0, "dist has no later piece");
    assert!(later.brotli <= LATER_BROTLI, "{} > {LATER_BROTLI} bytes of brotli", later.brotli);
    assert!(later.gzip <= LATER_GZIP, "{} > {LATER_GZIP} bytes of gzip", later.gzip);
}
