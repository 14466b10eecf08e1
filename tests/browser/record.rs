//! What the page complained about and what it asked the network for.

use std::fmt;

use serde_json::{Value, json};

use super::chromium::net_log;
use super::page::text;
use super::{Engine, Fault, Outcome, Page};

/// What was heard so far; the browser hands each piece out once.
#[derive(Default)]
pub(crate) struct Record {
    console: Vec<ConsoleEntry>,
    requests: Vec<String>,
}

/// One line of the browser's console, its own complaints included (a broken
/// content security policy, a file not found, an uncaught error).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConsoleEntry {
    /// `SEVERE`, `WARNING`, `INFO` or `DEBUG`.
    pub level: String,
    /// `console-api`, `javascript`, `network`, `security`, ...
    pub source: String,
    /// With the file and line in front.
    pub message: String,
}

impl fmt::Display for ConsoleEntry {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({}): {}", self.level, self.source, self.message)
    }
}

impl Page {
    /// The console so far, of all tabs: from Chromium every line, from the others the errors and
    /// warnings that came after a page was loaded.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn console(&self) -> Outcome<Vec<ConsoleEntry>> {
        let fresh = match self.session.engine {
            Engine::Chromium => self.drain("browser")?,
            Engine::WebKit | Engine::Firefox => self.heard()?,
        };
        let mut record = self.record.borrow_mut();
        record.console.extend(fresh.into_iter().map(|line| {
            let part = |key: &str| text(line.get(key).cloned().unwrap_or_default());
            ConsoleEntry { level: part("level"), source: part("source"), message: part("message") }
        }));
        Ok(record.console.clone())
    }

    /// Fails when the console holds an error or a warning.
    ///
    /// # Errors
    /// With the lines.
    #[track_caller]
    pub fn assert_quiet(&self) -> Outcome {
        self.assert_quiet_but(&[])
    }

    /// The same, but lines that contain one of these texts are expected: a
    /// server stopped on purpose makes the browser complain.
    ///
    /// # Errors
    /// With the other lines.
    #[track_caller]
    pub fn assert_quiet_but(&self, expected: &[&str]) -> Outcome {
        let loud: Vec<String> = self
            .console()?
            .iter()
            .filter(|line| line.level == "SEVERE" || line.level == "WARNING")
            .filter(|line| !expected.iter().any(|words| line.message.contains(words)))
            .map(ToString::to_string)
            .collect();
        if loud.is_empty() {
            return Ok(());
        }
        Err(Fault::new(format!("the console is not quiet:\n  {}", loud.join("\n  "))))
    }

    /// The console's errors, for the report of something that did not come.
    pub(crate) fn errors(&self) -> String {
        let lines = self.console().unwrap_or_default();
        let errors = lines.iter().filter(|line| line.level == "SEVERE");
        errors.map(|line| format!("\n  {line}")).collect()
    }

    /// Forgets the console so far, for a test that provoked something.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn discard_console(&self) -> Outcome {
        self.console()?;
        self.record.borrow_mut().console.clear();
        Ok(())
    }

    /// The addresses that pages (not their service workers) asked for so far.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn requests(&self) -> Outcome<Vec<String>> {
        let fresh = self.drain("performance")?;
        let mut record = self.record.borrow_mut();
        for line in fresh {
            let message = text(line.get("message").cloned().unwrap_or_default());
            let event: Value = serde_json::from_str(&message).unwrap_or_default();
            let event = event.get("message").cloned().unwrap_or_default();
            if event.get("method").and_then(Value::as_str) != Some("Network.requestWillBeSent") {
                continue;
            }
            if let Some(url) = event.pointer("/params/request/url").and_then(Value::as_str)
                && on_network(url)
            {
                record.requests.push(url.to_owned());
            }
        }
        Ok(record.requests.clone())
    }

    /// Fails when a page asked anyone but `origin` for anything so far.
    ///
    /// # Errors
    /// With the addresses.
    #[track_caller]
    pub fn assert_own_requests(&self, origin: &str) -> Outcome {
        refuse(&foreign(&self.requests()?, origin))
    }

    /// Ends the browser and fails when any page or service worker of it asked
    /// anyone but `origin` for anything in all its life.
    ///
    /// # Errors
    /// With the addresses; or when the browser's own record is not whole.
    #[track_caller]
    pub fn close_own(self, origin: &str) -> Outcome {
        refuse(&foreign(&self.close()?, origin))
    }

    /// Ends the browser and gives back every address that its pages and
    /// service workers asked for in all its life.
    ///
    /// # Errors
    /// When the browser's own record of its network is not whole.
    #[track_caller]
    pub fn close(mut self) -> Outcome<Vec<String>> {
        self.session.only_chromium("a record of its network")?;
        self.session.close()?;
        let log = match std::fs::read(net_log(self.session.folder())) {
            Ok(log) => log,
            Err(error) => return Err(Fault::new(format!("no network record: {error}"))),
        };
        match net_requests(&log) {
            Some(urls) => Ok(urls),
            None => Err(Fault::new("the network record is not whole")),
        }
    }

    /// Starts the record afresh.
    #[track_caller]
    pub(crate) fn discard_record(&self) -> Outcome {
        if self.session.engine == Engine::Chromium {
            self.drain("browser")?;
            self.drain("performance")?;
        }
        Ok(())
    }

    #[track_caller]
    fn drain(&self, kind: &str) -> Outcome<Vec<Value>> {
        self.session.only_chromium("a record of its network")?;
        match self.post("se/log", json!({ "type": kind }))? {
            Value::Array(lines) => Ok(lines),
            other => Err(Fault::new(format!("no {kind} log: {other}"))),
        }
    }
}

/// Those of `urls` that do not belong to `origin` (`http://127.0.0.1:8000`).
pub fn foreign(urls: &[String], origin: &str) -> Vec<String> {
    let home = url::Url::parse(origin).map(|url| url.origin());
    urls.iter()
        .filter(|url| url::Url::parse(url).map(|url| url.origin()) != home)
        .cloned()
        .collect()
}

#[track_caller]
fn refuse(strangers: &[String]) -> Outcome {
    if strangers.is_empty() {
        return Ok(());
    }
    Err(Fault::new(format!("asked strangers:\n  {}", strangers.join("\n  "))))
}

fn on_network(url: &str) -> bool {
    ["http:", "https:", "ws:", "wss:"].iter().any(|scheme| url.starts_with(scheme))
}

/// Requests out of a Chromium net log that a page or worker began; the
/// browser's own errands carry no origin.
fn net_requests(log: &[u8]) -> Option<Vec<String>> {
    let log: Value = serde_json::from_slice(log).ok()?;
    let start = log.pointer("/constants/logEventTypes/URL_REQUEST_START_JOB")?;
    let mut urls = Vec::new();
    for event in log.get("events")?.as_array()? {
        let part = |path: &str| event.pointer(path).and_then(Value::as_str);
        let (Some(url), Some(begun_by)) = (part("/params/url"), part("/params/initiator")) else {
            continue;
        };
        if event.get("type") == Some(start) && begun_by != "not an origin" && on_network(url) {
            urls.push(url.to_owned());
        }
    }
    Some(urls)
}
