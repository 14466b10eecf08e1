//! What is done by the standard alone, in WebKit and Firefox: the size is the window's, and the
//! console is heard by a script that enters each page once it is loaded, as neither gives it away.

use serde_json::{Value, json};

use super::{Engine, Fault, Outcome, Page};

/// Keeps what the page complains about until it is asked.
const HEAR: &str = "
if (window.heardByTests) return;
const heard = window.heardByTests = [];
const tell = (level, source, message) => heard.push({ level, source, message: String(message) });
for (const [level, name] of [['SEVERE', 'error'], ['WARNING', 'warn']]) {
  const say = console[name];
  console[name] = (...words) => { tell(level, 'console-api', words.join(' ')); say.apply(console, words) };
}
// Sizes that change once more while they are told are told in the next frame: no fault.
const late = 'ResizeObserver loop completed with undelivered notifications.';
addEventListener('error', (e) => e.message === late ||
  tell('SEVERE', 'javascript', e.message || `${e.target.src || e.target.href} is not there`), true);
addEventListener('unhandledrejection', (e) => tell('SEVERE', 'javascript', e.reason));
addEventListener('securitypolicyviolation', (e) =>
  tell('SEVERE', 'security', `${e.violatedDirective} forbids ${e.blockedURI}`));";

impl Page {
    /// Gives the window this size, in CSS px.
    #[track_caller]
    pub(crate) fn resize(&self, width: u32, height: u32) -> Outcome {
        self.post("window/rect", json!({ "width": width, "height": height }))?;
        self.wait_until(&format!("return innerWidth === {width} && innerHeight === {height}"))
    }

    /// Listens to the page that came.
    #[track_caller]
    pub(crate) fn listen(&self) -> Outcome {
        if self.session.engine == Engine::Chromium {
            return Ok(());
        }
        self.eval(HEAR, &[]).map(drop)
    }

    /// What the page in front complained about since it was asked last.
    #[track_caller]
    pub(crate) fn heard(&self) -> Outcome<Vec<Value>> {
        match self.eval("return (window.heardByTests || []).splice(0)", &[])? {
            Value::Array(lines) => Ok(lines),
            other => Err(Fault::new(format!("no console: {other}"))),
        }
    }
}
