//! One name for everything `dist` is built from.

use std::collections::BTreeMap;
use std::io;
use std::path::Path;

use crate::{digest, tree};

/// What `dist` is built from, relative to the repository: files, and folders with all they hold.
pub const SOURCES: &[&str] = &[
    ".cargo/config.toml",
    "Cargo.lock",
    "Cargo.toml",
    "Trunk.toml",
    "rust-toolchain.toml",
    "core/Cargo.toml",
    "core/src",
    "web/Cargo.toml",
    "web/api",
    "web/boot",
    "web/catalog",
    "web/index.html",
    "web/public",
    "web/site/rustc.sh",
    "web/site/src",
    "web/src",
    "web/style",
];

/// The digests of the sources.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fingerprint {
    /// SHA-256 over the sorted paths and contents.
    pub total: String,
    /// SHA-256 of each file by its path, to say which one differs.
    pub files: BTreeMap<String, String>,
}

/// Digests everything in [`SOURCES`] below `root`.
///
/// Text is digested with line feeds alone, so that a checkout with carriage returns has the same
/// fingerprint.
///
/// # Errors
/// When a source is missing or cannot be read; the message names it.
pub fn fingerprint(root: &Path) -> io::Result<Fingerprint> {
    let mut files = BTreeMap::new();
    for source in SOURCES {
        let path = root.join(source);
        if path.is_dir() {
            for name in tree::files(&path)? {
                let content = tree::read(&path.join(&name))?;
                files.insert(format!("{source}/{name}"), digest_of(content));
            }
        } else {
            files.insert((*source).to_owned(), digest_of(tree::read(&path)?));
        }
    }
    let named = files.iter().map(|(path, sum)| (path.as_str(), sum.as_str()));
    Ok(Fingerprint { total: digest::sha256_of_all(named), files })
}

/// Git's own test for text: no zero byte.
fn digest_of(mut content: Vec<u8>) -> String {
    if !content.contains(&0) {
        content.retain(|byte| *byte != b'\r');
    }
    digest::sha256(&content)
}
