//! One element of the page.

use http::Method;
use serde_json::{Value, json};

use super::page::text;
use super::{Fault, Key, Outcome, Page};

/// The key under which the WebDriver standard hands out elements.
const HANDLE: &str = "element-6066-11e4-a52e-4f735466cecf";

/// An element of the page in front. It goes stale when the page replaces the
/// node; find it again then.
pub struct Element<'page> {
    page: &'page Page,
    id: String,
    what: String,
}

/// A box in CSS px, from the top left corner of the window.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rect {
    /// Left edge.
    pub x: f64,
    /// Top edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl<'page> Element<'page> {
    #[track_caller]
    pub(crate) fn from_json(page: &'page Page, json: &Value, what: &str) -> Outcome<Self> {
        match json.get(HANDLE).and_then(Value::as_str) {
            Some(id) => Ok(Self { page, id: id.to_owned(), what: what.to_owned() }),
            None => Err(Fault::new(format!("{what}: not an element: {json}"))),
        }
    }

    /// Brings it into the middle of the window, away from what sticks to the
    /// edges, and clicks it with a real pointer.
    ///
    /// # Errors
    /// Among others when something lies over it.
    #[track_caller]
    pub fn click(&self) -> Outcome {
        self.bring("{ block: 'center', inline: 'nearest' }")?;
        self.post("click", json!({})).map(drop)
    }

    /// Focuses it and types, after what is there already.
    ///
    /// # Errors
    /// When it takes no keys.
    #[track_caller]
    pub fn type_text(&self, keys: &str) -> Outcome {
        self.post("value", json!({ "text": keys })).map(drop)
    }

    /// Replaces what is there, as a person would: select all, then type.
    ///
    /// # Errors
    /// When it takes no keys.
    #[track_caller]
    pub fn fill(&self, keys: &str) -> Outcome {
        self.focus()?;
        self.page.chord(&[Key::Control, Key::Char('a')])?;
        if keys.is_empty() {
            return self.page.press(Key::Delete);
        }
        self.type_text(keys)
    }

    /// Chooses the option of a `<select>` that shows this text, the way the
    /// control does: value first, then `input` and `change`.
    ///
    /// # Errors
    /// When there is no such option.
    #[track_caller]
    pub fn choose(&self, option: &str) -> Outcome {
        let script = "const e = arguments[0];
            const o = [...e.options].find((o) => o.text.trim() === arguments[1]);
            if (!o) return [...e.options].map((o) => o.text.trim());
            e.focus(); o.selected = true;
            for (const kind of ['input', 'change']) e.dispatchEvent(new Event(kind, { bubbles: true }));
            return null";
        let others = self.page.eval(script, &[self.json(), json!(option)])?;
        if others.is_null() {
            return Ok(());
        }
        Err(Fault::new(format!("{}: no option {option:?} among {others}", self.what)))
    }

    /// Gives it the focus without a click.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn focus(&self) -> Outcome {
        self.eval("arguments[0].focus()").map(drop)
    }

    /// Moves the pointer over it: `(0.0, 0.0)` is its top left corner,
    /// `(1.0, 1.0)` the bottom right one.
    ///
    /// # Errors
    /// When it lies outside the window.
    #[track_caller]
    pub fn hover(&self, across: f64, down: f64) -> Outcome {
        self.bring("{ block: 'nearest' }")?;
        let at = self.rect()?;
        let (x, y) = (at.x + at.width * across, at.y + at.height * down);
        let body = json!({ "actions": [{
            "type": "pointer", "id": "mouse", "parameters": { "pointerType": "mouse" },
            "actions": [{ "type": "pointerMove", "duration": 0, "x": x.round(), "y": y.round() }],
        }] });
        self.page.post("actions", body).map(drop)
    }

    /// Taps it with a finger; places as for [`Element::hover`].
    ///
    /// # Errors
    /// When it lies outside the window.
    #[track_caller]
    pub fn tap(&self, across: f64, down: f64) -> Outcome {
        self.strike("touch", across, down)
    }

    /// Clicks it with the mouse; places as for [`Element::hover`].
    ///
    /// # Errors
    /// When it lies outside the window.
    #[track_caller]
    pub fn click_at(&self, across: f64, down: f64) -> Outcome {
        self.strike("mouse", across, down)
    }

    /// Brings it into view, and waits until it stands still for two frames, as a person would
    /// while what stands above it still comes in.
    #[track_caller]
    fn bring(&self, how: &str) -> Outcome {
        let script = format!(
            "let last = NaN;
             for (let still = 0, frame = 0; still < 2 && frame < 200; frame++) {{
                 arguments[0].scrollIntoView({how});
                 await new Promise(requestAnimationFrame);
                 const now = arguments[0].getBoundingClientRect().y;
                 still = now === last ? still + 1 : 0;
                 last = now;
             }}"
        );
        self.eval(&script).map(drop)
    }

    #[track_caller]
    fn strike(&self, pointer: &str, across: f64, down: f64) -> Outcome {
        self.bring("{ block: 'center' }")?;
        let at = self.rect()?;
        let (x, y) = (at.x + at.width * across, at.y + at.height * down);
        let body = json!({ "actions": [{
            "type": "pointer", "id": pointer, "parameters": { "pointerType": pointer },
            "actions": [
                { "type": "pointerMove", "duration": 0, "x": x.round(), "y": y.round() },
                { "type": "pointerDown", "button": 0 },
                { "type": "pointerUp", "button": 0 },
            ],
        }] });
        self.page.post("actions", body).map(drop)
    }

    /// The text a person can see in it.
    ///
    /// # Errors
    /// When it is gone.
    #[track_caller]
    pub fn text(&self) -> Outcome<String> {
        self.eval("return arguments[0].innerText ?? arguments[0].textContent").map(text)
    }

    /// What a field holds.
    ///
    /// # Errors
    /// When it is gone.
    #[track_caller]
    pub fn value(&self) -> Outcome<String> {
        self.eval("return String(arguments[0].value)").map(text)
    }

    /// An attribute as written; `None` when absent.
    ///
    /// # Errors
    /// When it is gone.
    #[track_caller]
    pub fn attribute(&self, name: &str) -> Outcome<Option<String>> {
        let args = [self.json(), json!(name)];
        let found = self.page.eval("return arguments[0].getAttribute(arguments[1])", &args)?;
        Ok(found.as_str().map(str::to_owned))
    }

    /// A computed CSS property.
    ///
    /// # Errors
    /// When it is gone.
    #[track_caller]
    pub fn style(&self, property: &str) -> Outcome<String> {
        let path = format!("element/{}/css/{property}", self.id);
        self.page.session.send(Method::GET, &path, Value::Null).map(text)
    }

    /// The ARIA role that the browser computes.
    ///
    /// # Errors
    /// When it is gone.
    #[track_caller]
    pub fn role(&self) -> Outcome<String> {
        self.heard_as("computedRole", "computedrole")
    }

    /// The accessible name that the browser computes.
    ///
    /// # Errors
    /// When it is gone.
    #[track_caller]
    pub fn name(&self) -> Outcome<String> {
        self.heard_as("computedName", "computedlabel")
    }

    /// What a screen reader would hear: the property is quick and Chromium's own, the command is
    /// the standard's.
    #[track_caller]
    fn heard_as(&self, property: &str, command: &str) -> Outcome<String> {
        if let Value::String(found) = self.eval(&format!("return arguments[0].{property}"))? {
            return Ok(found);
        }
        let path = format!("element/{}/{command}", self.id);
        self.page.session.send(Method::GET, &path, Value::Null).map(text)
    }

    /// Where it is on screen.
    ///
    /// # Errors
    /// When it is gone.
    #[track_caller]
    pub fn rect(&self) -> Outcome<Rect> {
        let script = "const r = arguments[0].getBoundingClientRect();
            return [r.x, r.y, r.width, r.height]";
        let found = self.eval(script)?;
        let side = |index: usize| found.get(index).and_then(Value::as_f64).unwrap_or(f64::NAN);
        Ok(Rect { x: side(0), y: side(1), width: side(2), height: side(3) })
    }

    /// Whether nothing lies over its middle, so that a person can see it.
    ///
    /// # Errors
    /// When it is gone.
    #[track_caller]
    pub fn is_uncovered(&self) -> Outcome<bool> {
        let script = "const e = arguments[0], r = e.getBoundingClientRect();
            const top = e.getRootNode().elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);
            return !!top && (e.contains(top) || top.contains(e) && top.matches('label'))";
        Ok(self.eval(script)? == Value::Bool(true))
    }

    /// The element as an argument for [`Page::eval`].
    pub fn json(&self) -> Value {
        json!({ HANDLE: self.id })
    }

    #[track_caller]
    fn eval(&self, script: &str) -> Outcome<Value> {
        self.page.eval(script, &[self.json()])
    }

    #[track_caller]
    fn post(&self, action: &str, body: Value) -> Outcome<Value> {
        let path = format!("element/{}/{action}", self.id);
        match self.page.post(&path, body) {
            Ok(value) => Ok(value),
            Err(fault) => Err(Fault::new(format!("{}: {fault}", self.what))),
        }
    }
}
