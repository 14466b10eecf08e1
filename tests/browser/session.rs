//! One WebDriver session: every command goes through [`Session::send`].

use std::fmt;
use std::path::Path;
use std::time::{Duration, Instant};

use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, ClientBuilder};
use http::Method;
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use tempfile::TempDir;
use tokio::runtime::{Builder, Runtime};
use url::{ParseError, Url};

use super::page::pause;
use super::process::{Process, running};
use super::{Browser, Engine, Fault, LIMIT, Outcome, chromium, firefox, webkit};

/// How long a browser's helpers may take to end after it.
const GONE: Duration = Duration::from_secs(5);

/// A driver that waits for its one session.
pub(crate) struct Driver {
    pub(crate) url: String,
    /// The capabilities to ask for.
    pub(crate) wish: Value,
    /// Dropped in this order.
    pub(crate) processes: Vec<Process>,
}

pub(crate) struct Session {
    pub(crate) engine: Engine,
    runtime: Runtime,
    client: Client,
    open: bool,
    processes: Vec<Process>,
    profile: TempDir,
}

impl Session {
    #[track_caller]
    pub(crate) fn start(browser: &Browser) -> Outcome<Self> {
        let engine = browser.engine;
        let profile = match tempfile::Builder::new().prefix("pitchline-").tempdir() {
            Ok(folder) => folder,
            Err(error) => return Err(Fault::new(format!("no temporary folder: {error}"))),
        };
        let driver = match engine {
            Engine::Chromium => chromium::driver(browser, profile.path()),
            Engine::WebKit => webkit::driver(browser, profile.path()),
            Engine::Firefox => firefox::driver(browser, profile.path()),
        }?;
        let runtime = match Builder::new_current_thread().enable_all().build() {
            Ok(runtime) => runtime,
            Err(error) => return Err(Fault::new(format!("no runtime: {error}"))),
        };
        let mut wish = driver.wish.as_object().cloned().unwrap_or_default();
        let timeouts = json!({ "script": 30_000, "pageLoad": 30_000, "implicit": 0 });
        wish.insert("timeouts".to_owned(), timeouts);
        let opened = runtime.block_on(async {
            let mut builder = ClientBuilder::new(HttpConnector::new());
            tokio::time::timeout(LIMIT, builder.capabilities(wish).connect(&driver.url)).await
        });
        match opened {
            Ok(Ok(client)) => Ok(Self {
                engine,
                runtime,
                client,
                open: true,
                processes: driver.processes,
                profile,
            }),
            Ok(Err(error)) => Err(Fault::new(format!(
                "{engine:?} does not start: {error}\ntests/run installs what the tests need"
            ))),
            Err(_) => Err(Fault::new(format!("{engine:?} is not up after {LIMIT:?}"))),
        }
    }

    /// One command of the W3C standard, or one of a driver's own; `path` is
    /// what follows the session.
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
}

impl Drop for Session {
    fn drop(&mut self) {
        // The driver's end takes the browser along if this does not.
        let _ = self.close();
        self.processes.clear();
        // A browser's helpers may outlive it by a moment, and write to its folder until they end.
        let start = Instant::now();
        while running(self.folder()).is_ok_and(|count| count > 0) && start.elapsed() < GONE {
            pause();
        }
    }
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
