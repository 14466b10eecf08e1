//! How many bytes must arrive before the page is usable.

use std::io::{self, Write};
use std::path::Path;

use crate::{offline, tree};

/// Bytes as stored, and as a host sends them compressed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Size {
    /// Uncompressed.
    pub raw: u64,
    /// gzip at level 9.
    pub gzip: u64,
    /// brotli at quality 11.
    pub brotli: u64,
}

/// One file of `dist`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FileSize {
    /// Relative to `dist`.
    pub path: String,
    /// Its bytes.
    pub size: Size,
    /// Whether the page needs it before it is usable.
    pub first: bool,
}

/// All of `dist`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sizes {
    /// Every file, sorted by path.
    pub files: Vec<FileSize>,
    /// The sum of the files needed before the page is usable: `index.html`, the scripts, style
    /// sheets and wasm it names, what those import, and the catalogue. Icons, the manifest and
    /// the service worker come later.
    pub first: Size,
}

/// Measures `dist`.
///
/// # Errors
/// When a file cannot be read.
pub fn size(dist: &Path) -> io::Result<Sizes> {
    let page = tree::read_text(&dist.join("index.html"))?;
    let mut sizes = Sizes { files: Vec::new(), first: Size::default() };
    for path in tree::files(dist)? {
        let content = tree::read(&dist.join(&path))?;
        let size =
            Size { raw: content.len() as u64, gzip: gzip(&content)?, brotli: brotli(&content)? };
        let first = is_first(&path, &page);
        if first {
            sizes.first.raw += size.raw;
            sizes.first.gzip += size.gzip;
            sizes.first.brotli += size.brotli;
        }
        sizes.files.push(FileSize { path, size, first });
    }
    Ok(sizes)
}

fn is_first(path: &str, page: &str) -> bool {
    let is_code = [".js", ".css", ".wasm"].iter().any(|end| path.ends_with(end));
    path == "index.html"
        || path == offline::LIVE
        || path.starts_with("snippets/")
        || (is_code && page.contains(&format!("\"./{path}\"")))
}

fn gzip(content: &[u8]) -> io::Result<u64> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    encoder.write_all(content)?;
    Ok(encoder.finish()?.len() as u64)
}

fn brotli(content: &[u8]) -> io::Result<u64> {
    let mut compressed = Vec::new();
    let parameters = brotli::enc::BrotliEncoderParams { quality: 11, ..Default::default() };
    brotli::BrotliCompress(&mut &*content, &mut compressed, &parameters)?;
    Ok(compressed.len() as u64)
}
