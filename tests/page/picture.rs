//! The pictures in the README: the overview and a view, as they are on a phone.

use std::fs;
use std::path::Path;

use pitchline_tests::browser::{Fault, Outcome, Size};
use pitchline_tests::root;

use crate::visit::{Visit, drawn, link, see};

/// View and file of each.
const PICTURES: [(&str, &str); 2] = [("Overview", "overview"), ("How far?", "how-far")];

/// Width and height of a PNG: two big-endian words after its signature and the head of its first
/// chunk, IHDR (W3C, Portable Network Graphics, 5.2 and 11.2.1).
fn size_of(file: &Path) -> Outcome<[u32; 2]> {
    let bytes = fs::read(file)?;
    let word = |at: usize| bytes.get(at..at + 4).and_then(|four| four.try_into().ok());
    match (bytes.starts_with(b"\x89PNG\r\n\x1a\n"), word(16), word(20)) {
        (true, Some(width), Some(height)) => Ok([width, height].map(u32::from_be_bytes)),
        _ => Err(Fault::new(format!("{} is no PNG", file.display()))),
    }
}

/// `PITCHLINE_WRITE=1` takes them anew.
#[test]
fn the_readme_has_pictures() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    visit.open(&link("kit=kittiwake"))?;
    let readme = fs::read_to_string(root().join("README.md"))?;
    let write = std::env::var_os("PITCHLINE_WRITE").is_some_and(|value| value == "1");
    for (view, name) in PICTURES {
        see(page, view)?;
        drawn(page)?;
        page.wait_until("return !document.querySelector('.message')")?;
        let shot = page.screenshot(&format!("page-picture-{name}"))?;
        let kept = root().join(format!("pictures/{name}.png"));
        if write {
            fs::create_dir_all(root().join("pictures"))?;
            fs::copy(&shot, &kept)?;
        }
        assert!(readme.contains(&format!("(pictures/{name}.png)")), "no {name}.png in the README");
        assert_eq!(size_of(&kept)?, size_of(&shot)?, "{}", kept.display());
    }
    visit.end()
}
