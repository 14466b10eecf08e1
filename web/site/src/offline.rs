//! Which files a browser keeps for offline use, and the service worker that keeps them.

use std::io;
use std::path::Path;

use crate::{digest, tree};

/// Read from the network first, because its owner may edit it on the host without a build. The
/// worker keeps the last good copy apart from the build's own files and does not check its digest.
pub const LIVE: &str = "catalogue.json";

/// Not for offline use: the worker itself, its replacement, the build's own record, and what only
/// developers read.
const LEFT_OUT: &[&str] = &["sw.js", "kill-switch.sw.js", "build.json"];
const LEFT_OUT_ENDINGS: &[&str] = &[".map", ".d.ts"];
/// The answers for other pages, which this one does not load.
const LEFT_OUT_STARTS: &[&str] = &["pitchline.js", "pitchline-api-"];

/// One file to keep.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Listed {
    /// Where it is asked for, relative to the page: `./` for the page itself, `demo.json`.
    pub url: String,
    /// SHA-256 of its content, 64 hexadecimal digits.
    pub sha256: String,
}

/// Everything in `dist` that must be at hand without a network, sorted by address.
///
/// A page called `index.html` is listed as its folder (`./`), because some hosts redirect the
/// full name there and a redirected answer cannot be kept for a page.
///
/// # Errors
/// When `dist` cannot be read.
pub fn list(dist: &Path) -> io::Result<Vec<Listed>> {
    let mut listed = Vec::new();
    for name in tree::files(dist)? {
        if LEFT_OUT.contains(&name.as_str())
            || LEFT_OUT_ENDINGS.iter().any(|end| name.ends_with(end))
            || LEFT_OUT_STARTS.iter().any(|start| name.starts_with(start))
        {
            continue;
        }
        let sha256 = digest::sha256(&tree::read(&dist.join(&name))?);
        let url = match name.strip_suffix("index.html") {
            Some("") => "./".to_owned(),
            Some(folder) if folder.ends_with('/') => folder.to_owned(),
            _ => name,
        };
        listed.push(Listed { url, sha256 });
    }
    listed.sort_by(|a, b| a.url.cmp(&b.url));
    Ok(listed)
}

/// The line of `sw.js` that the build replaces.
const BLANK: &str = "const BUILD = { version: 'unbuilt', files: {} };";

/// The worker's source with the list filled in, and the version it goes by.
///
/// The version changes with any final byte of any listed file or of the worker, and with nothing
/// else. [`LIVE`] is not part of it.
///
/// # Errors
/// When `template` does not hold the line to fill exactly once.
pub fn worker(template: &str, listed: &[Listed]) -> io::Result<(String, String)> {
    if template.matches(BLANK).count() != 1 {
        return Err(io::Error::other(format!("sw.js must hold this line exactly once: {BLANK}")));
    }
    let kept = || listed.iter().filter(|file| file.url != LIVE);
    let own = digest::sha256(template.as_bytes());
    let named = kept().map(|file| (file.url.as_str(), file.sha256.as_str()));
    let mut version = digest::sha256_of_all(named.chain([("sw.js", own.as_str())]));
    version.truncate(16);

    let files: serde_json::Map<_, _> =
        kept().map(|file| (file.url.clone(), file.sha256.clone().into())).collect();
    let build = serde_json::json!({ "version": version.as_str(), "files": files });
    let filled = template.replace(BLANK, &format!("const BUILD = {build:#};"));
    Ok((filled, version))
}
