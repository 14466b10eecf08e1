//! Firefox, by geckodriver, without a window.

use std::fs;
use std::path::Path;

use serde_json::json;

use super::emulate::Theme;
use super::process::{Process, missing, on_path};
use super::session::Driver;
use super::{Browser, Outcome, Page};

/// The browser's own frame, which is wider than a phone: all of the window is the page's.
const FRAME: &str = ":root { min-width: 0 !important; min-height: 0 !important }
    #navigator-toolbox { display: none !important }";

/// Starts geckodriver on a free port, for a browser that keeps its things in `folder`.
#[track_caller]
pub(crate) fn driver(browser: &Browser, folder: &Path) -> Outcome<Driver> {
    let Some(binary) = on_path("firefox-esr").or_else(|| on_path("firefox")) else {
        return Err(missing("firefox"));
    };
    let chrome = folder.join("chrome");
    fs::create_dir(&chrome)?;
    fs::write(chrome.join("userChrome.css"), FRAME)?;
    let (process, port) = Process::start_somewhere("geckodriver", &["--port=0"], port_of)?;
    let wish = json!({
        "browserName": "firefox",
        "moz:firefoxOptions": {
            "binary": binary,
            "args": ["-headless", "-profile", folder],
            "env": { "HOME": folder, "XDG_CACHE_HOME": folder, "XDG_CONFIG_HOME": folder },
            "prefs": {
                "toolkit.legacyUserProfileCustomizations.stylesheets": true,
                "intl.accept_languages": browser.locale,
                "intl.locale.requested": browser.locale,
                "layout.css.prefers-color-scheme.content-override":
                    if browser.theme == Theme::Dark { 0 } else { 1 },
                // They take no room, as in the other engines here.
                "ui.useOverlayScrollbars": 1,
                "ui.prefersReducedMotion": i32::from(browser.reduced_motion),
            },
        },
    });
    Ok(Driver { url: format!("http://127.0.0.1:{port}"), wish, processes: vec![process] })
}

/// `1796055681841 geckodriver INFO Listening on 127.0.0.1:38665`
fn port_of(line: &str) -> Option<u16> {
    let (_, address) = line.split_once("Listening on ")?;
    address.rsplit_once(':')?.1.parse().ok()
}

impl Page {
    /// The driver's own command goes past the service worker, as only Shift and the button do.
    #[track_caller]
    pub(crate) fn reload_by_script(&self) -> Outcome {
        self.console()?;
        self.eval("window.leftByTests = true; location.reload()", &[])?;
        self.wait_until("return !window.leftByTests && document.readyState === 'complete'")?;
        self.listen()
    }
}
