//! What a file is to a browser: its media type, and how long it may be kept.

use std::path::Path;

/// The media type a static host should send for a file, by its extension.
///
/// `application/wasm` matters most: with any other type a browser refuses to compile while
/// downloading. Unknown extensions give `application/octet-stream`.
///
/// Source: IANA media types; RFC 9239 for `text/javascript`; W3C Web Application Manifest for
/// `application/manifest+json`.
pub fn media_type(path: &str) -> &'static str {
    let extension = Path::new(path).extension().and_then(|text| text.to_str());
    match extension.unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "json" | "map" => "application/json",
        "webmanifest" => "application/manifest+json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        "txt" | "md" | "ts" => "text/plain; charset=utf-8",
        "csv" => "text/csv; charset=utf-8",
        "xml" | "gpx" => "application/xml",
        _ => "application/octet-stream",
    }
}

/// The `Cache-Control` value a host should send: a file whose name carries a hash of its content
/// never changes, everything else is asked for again each time.
pub fn cache_control(path: &str) -> &'static str {
    if has_hashed_name(path) { "public, max-age=31536000, immutable" } else { "no-cache" }
}

/// Whether a name ends in `-<hash>`, the way Trunk writes it: `main-1f2e3d4c5b6a7988.css`,
/// `pitchline-web-1f2e3d4c5b6a7988_bg.wasm`. The hash is 64 bits in hexadecimal without leading
/// zeros; fewer than twelve digits are one in 65,536 and are treated as an ordinary word.
fn has_hashed_name(path: &str) -> bool {
    let name = path.rsplit('/').next().unwrap_or_default();
    let stem = name.split('.').next().unwrap_or_default();
    let stem = stem.strip_suffix("_bg").unwrap_or(stem);
    stem.rsplit_once('-').is_some_and(|(_, hash)| {
        (12..=16).contains(&hash.len())
            && hash.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
    })
}

#[cfg(test)]
mod tests {
    use super::{cache_control, media_type};

    #[test]
    fn types_a_browser_is_strict_about() {
        assert_eq!(media_type("a/b-1_bg.wasm"), "application/wasm");
        assert_eq!(media_type("sw.js"), "text/javascript; charset=utf-8");
        assert_eq!(media_type("manifest.webmanifest"), "application/manifest+json");
        assert_eq!(media_type("noextension"), "application/octet-stream");
    }

    #[test]
    fn only_hashed_names_are_kept_for_ever() {
        let forever = "public, max-age=31536000, immutable";
        assert_eq!(cache_control("pitchline-web-1f2e3d4c5b6a7988.js"), forever);
        assert_eq!(cache_control("pitchline-web-1f2e3d4c5b6a7988_bg.wasm"), forever);
        assert_eq!(cache_control("main-f2e3d4c5b6a7988.css"), forever);
        for fresh in [
            "index.html",
            "sw.js",
            "catalogue.json",
            "manifest.webmanifest",
            "pitchline.js",
            "icon-512.png",
            "apple-touch-icon.png",
            "kill-switch.sw.js",
            "1f2e3d4c5b6a7988-page.html",
        ] {
            assert_eq!(cache_control(fresh), "no-cache", "{fresh}");
        }
    }
}
