//! Chromium, by chromedriver.

use std::path::{Path, PathBuf};

use http::Method;
use serde_json::{Value, json};

use super::process::{Process, missing, on_path};
use super::session::{Driver, Session};
use super::{Browser, Engine, Fault, Outcome};

/// Flags that keep Chromium still: no window, no network of its own.
const FLAGS: [&str; 15] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    // Ends the browser with its driver, and needs no port.
    "--remote-debugging-pipe",
    // No name but the loopback ones resolves: a foreign request fails at
    // once, and is recorded all the same.
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost",
    // Gives scripts the role and name that a screen reader would hear.
    "--enable-blink-features=ComputedAccessibilityInfo",
    "--disable-features=AutofillServerCommunication,OptimizationHints",
    "--hide-scrollbars",
    "--force-color-profile=srgb",
];

/// Starts chromedriver on a free port, for a browser that keeps its things in `folder`.
#[track_caller]
pub(crate) fn driver(browser: &Browser, folder: &Path) -> Outcome<Driver> {
    if on_path("chromium").is_none() {
        return Err(missing("chromium"));
    }
    let (process, port) = Process::start_somewhere("chromedriver", &["--port=0"], port_of)?;
    let mut flags: Vec<String> = FLAGS.iter().map(|flag| (*flag).to_owned()).collect();
    flags.push(format!("--user-data-dir={}", folder.display()));
    flags.push(format!("--log-net-log={}", net_log(folder).display()));
    flags.push(format!("--accept-lang={}", browser.locale));
    let wish = json!({
        "browserName": "chrome",
        "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
        "goog:chromeOptions": { "args": flags },
    });
    Ok(Driver { url: format!("http://127.0.0.1:{port}"), wish, processes: vec![process] })
}

/// `ChromeDriver was started successfully on port 40123.`
fn port_of(line: &str) -> Option<u16> {
    let (_, port) = line.split_once("successfully on port ")?;
    port.trim_end_matches('.').parse().ok()
}

/// Where Chromium writes down all its network traffic.
pub(crate) fn net_log(folder: &Path) -> PathBuf {
    folder.join("net-log.json")
}

impl Session {
    /// One command of the DevTools protocol, to the tab in front.
    #[track_caller]
    pub(crate) fn devtools(&self, command: &str, params: Value) -> Outcome<Value> {
        self.only_chromium(command)?;
        let body = json!({ "cmd": command, "params": params });
        self.send(Method::POST, "goog/cdp/execute", body)
    }

    /// Refuses what no standard gives.
    #[track_caller]
    pub(crate) fn only_chromium(&self, what: &str) -> Outcome {
        if self.engine == Engine::Chromium {
            return Ok(());
        }
        Err(Fault::new(format!("only Chromium has {what}")))
    }
}
