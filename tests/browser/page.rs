//! The page in front: going places, waiting, reading, looking.

use std::cell::RefCell;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use http::Method;
use serde_json::{Value, json};

use super::record::Record;
use super::session::Session;
use super::{Browser, Element, Engine, Fault, Key, Outcome, PATIENCE};

/// One browser and the tab of it that is in front.
pub struct Page {
    pub(crate) session: Session,
    pub(crate) settings: RefCell<Browser>,
    pub(crate) record: RefCell<Record>,
}

impl Page {
    #[track_caller]
    pub(crate) fn start(browser: Browser) -> Outcome<Self> {
        let page = Self {
            session: Session::start(&browser)?,
            settings: RefCell::new(browser),
            record: RefCell::new(Record::default()),
        };
        page.emulate()?;
        // What the browser's own start page did is not ours to judge.
        page.discard_record()?;
        Ok(page)
    }

    /// Opens an address and waits for its load event.
    ///
    /// # Errors
    /// When the address cannot be reached.
    #[track_caller]
    pub fn goto(&self, url: &str) -> Outcome {
        self.leave_for("url", json!({ "url": url }))
    }

    /// Loads the page anew, as the button does.
    ///
    /// # Errors
    /// When the address cannot be reached.
    #[track_caller]
    pub fn reload(&self) -> Outcome {
        if self.session.engine == Engine::Firefox {
            return self.reload_by_script();
        }
        self.leave_for("refresh", json!({}))
    }

    /// One step back in the tab's history.
    ///
    /// # Errors
    /// When the address cannot be reached.
    #[track_caller]
    pub fn back(&self) -> Outcome {
        self.leave_for("back", json!({}))
    }

    /// Goes to another page. But in Chromium, what this one complained about would go with it.
    #[track_caller]
    fn leave_for(&self, command: &str, body: Value) -> Outcome {
        if self.session.engine != Engine::Chromium {
            self.console()?;
        }
        self.post(command, body)?;
        self.listen()
    }

    /// The address in the address bar.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn url(&self) -> Outcome<String> {
        self.session.send(Method::GET, "url", Value::Null).map(text)
    }

    /// All the text a person can see.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn text(&self) -> Outcome<String> {
        self.eval("return document.body.innerText", &[]).map(text)
    }

    /// Runs the body of an async function in the page and gives back what it
    /// returns; it may `await`, and finds `args` in `arguments`.
    ///
    /// # Errors
    /// When the script throws, or has not finished after 30 s.
    #[track_caller]
    pub fn eval(&self, script: &str, args: &[Value]) -> Outcome<Value> {
        let script = format!("return (async function () {{ {script}\n}}).apply(null, arguments)");
        self.post("execute/sync", json!({ "script": script, "args": args }))
    }

    /// Waits until a script of the same kind as for [`Page::eval`] returns
    /// something truthy. A throw counts as "not yet".
    ///
    /// # Errors
    /// When that has not happened after [`PATIENCE`].
    #[track_caller]
    pub fn wait_until(&self, script: &str) -> Outcome {
        let tried = format!(
            "try {{ return await (async () => {{ {script}\n}})() ? '' : 'false' }} catch (e) {{ return String(e) }}"
        );
        let start = Instant::now();
        loop {
            // A page on its way to the next one cannot answer.
            let last = match self.eval(&tried, &[]) {
                Ok(value) => text(value),
                Err(fault) => fault.to_string(),
            };
            if last.is_empty() {
                return Ok(());
            }
            if start.elapsed() > PATIENCE {
                return Err(Fault::new(format!(
                    "after {PATIENCE:?} still not so: {script}\n  last answer: {last}{}",
                    self.errors()
                )));
            }
            pause();
        }
    }

    /// Waits until `holds` says yes; `what` names the hope in the failure.
    ///
    /// # Errors
    /// When that has not happened after [`PATIENCE`], with the last error of
    /// `holds` if it gave one.
    #[track_caller]
    pub fn wait_for(&self, what: &str, mut holds: impl FnMut(&Self) -> Outcome<bool>) -> Outcome {
        let start = Instant::now();
        loop {
            let answer = holds(self);
            if matches!(answer, Ok(true)) {
                return Ok(());
            }
            if start.elapsed() > PATIENCE {
                let why = answer.err().map_or(String::new(), |fault| format!("\n  {fault}"));
                return Err(Fault::new(format!("after {PATIENCE:?} still not: {what}{why}")));
            }
            pause();
        }
    }

    /// Presses and releases one key, wherever the focus is.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn press(&self, key: Key) -> Outcome {
        self.chord(&[key])
    }

    /// Presses keys one upon the other and releases them in reverse:
    /// `&[Key::Shift, Key::Tab]`.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn chord(&self, keys: &[Key]) -> Outcome {
        let step = |kind: &str, key: &Key| json!({ "type": kind, "value": key.value() });
        let down = keys.iter().map(|key| step("keyDown", key));
        let up = keys.iter().rev().map(|key| step("keyUp", key));
        let steps: Vec<Value> = down.chain(up).collect();
        let body = json!({ "actions": [{ "type": "key", "id": "keys", "actions": steps }] });
        self.post("actions", body).map(drop)
    }

    /// The element that has the focus; the body when none has.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn focused(&self) -> Outcome<Element<'_>> {
        let script = "let e = document.activeElement;
            while (e && e.shadowRoot && e.shadowRoot.activeElement) e = e.shadowRoot.activeElement;
            return e || document.body";
        let found = self.eval(script, &[])?;
        Element::from_json(self, &found, "the focused element")
    }

    /// A picture of what is on screen, as `target/screens/<name>.png`.
    ///
    /// # Errors
    /// When the browser takes none or the file cannot be written.
    #[track_caller]
    pub fn screenshot(&self, name: &str) -> Outcome<PathBuf> {
        self.capture(name, false)
    }

    /// A picture of the page from top to bottom, in the same place.
    ///
    /// # Errors
    /// As [`Page::screenshot`].
    #[track_caller]
    pub fn screenshot_whole(&self, name: &str) -> Outcome<PathBuf> {
        self.capture(name, true)
    }

    #[track_caller]
    fn capture(&self, name: &str, whole: bool) -> Outcome<PathBuf> {
        let data = if self.session.engine != Engine::Chromium && !whole {
            text(self.session.send(Method::GET, "screenshot", Value::Null)?)
        } else {
            let params = json!({ "format": "png", "captureBeyondViewport": whole });
            let mut answer = self.session.devtools("Page.captureScreenshot", params)?;
            text(answer.get_mut("data").map(Value::take).unwrap_or_default())
        };
        let Ok(bytes) = STANDARD.decode(data) else {
            return Err(Fault::new("the picture is not base64"));
        };
        let folder = target().join("screens");
        let file = folder.join(format!("{name}.png"));
        let written = std::fs::create_dir_all(&folder).and_then(|()| std::fs::write(&file, bytes));
        match written {
            Ok(()) => Ok(file),
            Err(error) => Err(Fault::new(format!("{}: {error}", file.display()))),
        }
    }

    /// The browser's own folder, gone once the page is dropped.
    pub fn folder(&self) -> &Path {
        self.session.folder()
    }

    #[track_caller]
    pub(crate) fn post(&self, path: &str, body: Value) -> Outcome<Value> {
        self.session.send(Method::POST, path, body)
    }
}

/// The build's own folder, which git ignores.
pub(crate) fn target() -> PathBuf {
    crate::root().join("target")
}

/// Between two looks at something that is awaited.
pub(crate) fn pause() {
    std::thread::sleep(Duration::from_millis(50));
}

/// A JSON string's text; nothing for anything else.
pub(crate) fn text(value: Value) -> String {
    match value {
        Value::String(text) => text,
        _ => String::new(),
    }
}
