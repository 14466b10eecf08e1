//! For other pages: the answers without the page.

use pitchline_core::catalog::Outcome;
use pitchline_core::{Error, Reason};
use serde::Serialize;
use serde_json::Value;
use wasm_bindgen::prelude::*;

/// Answers every question for a build. Never throws.
///
/// `pitchline.d.ts`, written by `pitchline_core::catalog::declarations`, says what goes in and what
/// comes out.
#[wasm_bindgen]
#[must_use]
pub fn answers(build: JsValue, options: JsValue) -> JsValue {
    // An option of wasm-bindgen's would take null, a slip, for nothing said.
    let said = |value: JsValue| (!value.is_undefined()).then_some(value);
    let options = said(options).map(|options| plain(&options).unwrap_or_default());
    let outcome = match said(build).map(|build| plain(&build)) {
        None => Outcome::of(None, options.as_ref()),
        Some(Some(build)) => Outcome::of(Some(&build), options.as_ref()),
        Some(None) => {
            let fault = Error::new("", Reason::wrong_form("a plain object"));
            Outcome::refused(vec![fault], Vec::new())
        }
    };
    let writer = serde_wasm_bindgen::Serializer::json_compatible();
    outcome.serialize(&writer).unwrap_or(JsValue::NULL)
}

/// A plain object as data; none if it is no such thing.
fn plain(value: &JsValue) -> Option<Value> {
    // Read as JSON text: a plain object is what JSON can say, and reading it
    // generically would bring a second reader into the page.
    // JSON would turn a number that is none into nothing at all; a word is refused by name.
    let finite = Closure::<dyn Fn(JsValue, JsValue) -> JsValue>::new(|_, value: JsValue| {
        let endless = value.as_f64().is_some_and(|value| !value.is_finite());
        if endless { "not a number".into() } else { value }
    });
    let text = js_sys::JSON::stringify_with_replacer(value, finite.as_ref()).ok()?.as_string()?;
    serde_json::from_str(&text).ok()
}

/// Version of this module, by semantic versioning.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").into()
}
