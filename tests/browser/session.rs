//! One WebDriver session: every command goes through [`Session::send`].

use std::fmt;
use std::path::{Path, PathBuf};

use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, ClientBuilder};
use http::Method;
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use tempfile::TempDir;
use tokio::runtime::{Builder, Runtime};
use url::{ParseError, Url};

use super::driver::Driver;
use super::{Browser, Fault, LIMIT, Outcome};

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

pub(crate) struct Session {
    runtime: Runtime,
    client: Client,
    open: bool,
    // Dropped in this order: the driver first, then the browser's folder.
    _driver: Driver,
    profile: TempDir,
}

impl Session {
    #[track_caller]
    pub(crate) fn start(browser: &Browser) -> Outcome<Self> {
        let driver = Driver::start()?;
        let profile = match tempfile::Builder::new().prefix("pitchline-").tempdir() {
            Ok(folder) => folder,
            Err(error) => return Err(Fault::new(format!("no temporary folder: {error}"))),
        };
        let runtime = match Builder::new_current_thread().enable_all().build() {
            Ok(runtime) => runtime,
            Err(error) => return Err(Fault::new(format!("no runtime: {error}"))),
        };
        let mut flags: Vec<String> = FLAGS.iter().map(|flag| (*flag).to_owned()).collect();
        flags.push(format!("--user-data-dir={}", profile.path().display()));
        flags.push(format!("--log-net-log={}", net_log(&profile).display()));
        flags.push(format!("--accept-lang={}", browser.locale));
        let wish = json!({
            "browserName": "chrome",
            "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
            "goog:chromeOptions": { "args": flags },
            "timeouts": { "script": 30_000, "pageLoad": 30_000, "implicit": 0 },
        });
        let wish = wish.as_object().cloned().unwrap_or_default();
        let opened = runtime.block_on(async {
            let mut builder = ClientBuilder::new(HttpConnector::new());
            let url = driver.url();
            tokio::time::timeout(LIMIT, builder.capabilities(wish).connect(&url)).await
        });
        match opened {
            Ok(Ok(client)) => Ok(Self { runtime, client, open: true, _driver: driver, profile }),
            Ok(Err(error)) => Err(Fault::new(format!(
                "Chromium does not start: {error}\ntests/run installs what the tests need"
            ))),
            Err(_) => Err(Fault::new(format!("Chromium is not up after {LIMIT:?}"))),
        }
    }

    /// One command of the W3C standard, or one of chromedriver's own; `path`
    /// is what follows the session.
    #[track_caller]
    pub(crate) fn send(&self, method: Method, path: &str, body: Value) -> Outcome<Value> {
        let command = Command { method, path: path.to_owned(), body };
        let answer = self
            .runtime
            .block_on(async { tokio::time::timeout(LIMIT, self.client.issue_cmd(command)).await });
        match answer {
            Ok(Ok(value)) => Ok(value),
            Ok(Err(error)) => Err(Fault::new(format!("{path}: {error}"))),
            Err(_) => Err(Fault::new(format!("{path}: no answer after {LIMIT:?}"))),
        }
    }

    /// One command of the DevTools protocol, to the tab in front.
    #[track_caller]
    pub(crate) fn devtools(&self, command: &str, params: Value) -> Outcome<Value> {
        let body = json!({ "cmd": command, "params": params });
        self.send(Method::POST, "goog/cdp/execute", body)
    }

    /// Ends the browser and waits until it is gone.
    #[track_caller]
    pub(crate) fn close(&mut self) -> Outcome {
        if !self.open {
            return Ok(());
        }
        self.open = false;
        self.send(Method::DELETE, "", Value::Null).map(drop)
    }

    pub(crate) fn folder(&self) -> &Path {
        self.profile.path()
    }

    /// Where Chromium writes down all its network traffic.
    pub(crate) fn net_log(&self) -> PathBuf {
        net_log(&self.profile)
    }
}

impl Drop for Session {
    fn drop(&mut self) {
        // The driver's end takes the browser along if this does not.
        let _ = self.close();
    }
}

fn net_log(profile: &TempDir) -> PathBuf {
    profile.path().join("net-log.json")
}

struct Command {
    method: Method,
    path: String,
    body: Value,
}

impl fmt::Debug for Command {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.method, self.path)
    }
}

impl WebDriverCompatibleCommand for Command {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, ParseError> {
        let session = session.unwrap_or_default();
        let tail = if self.path.is_empty() { "" } else { "/" };
        base.join(&format!("session/{session}{tail}{}", self.path))
    }

    fn method_and_body(&self, _: &Url) -> (Method, Option<String>) {
        let body = (self.method == Method::POST).then(|| self.body.to_string());
        (self.method.clone(), body)
    }
}
