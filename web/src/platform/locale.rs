//! What the browser knows of its reader.

use wasm_bindgen::JsValue;

/// Whether this reader writes decimals behind a comma.
#[must_use]
pub fn decimal_comma() -> bool {
    let text = js_sys::Number::from(1.5).to_locale_string("default");
    // "default" is no language; browsers then fall back on the reader's own.
    String::from(text).contains(',')
}

/// Whether this reader's country measures in miles and pounds.
#[must_use]
pub fn imperial() -> bool {
    let language = web_sys::window().and_then(|w| w.navigator().language()).unwrap_or_default();
    ["-US", "-LR", "-MM"].iter().any(|country| language.ends_with(country))
}

/// Today's date, as `2026-11-25`.
#[must_use]
pub fn today() -> String {
    let text = js_sys::Date::new(&JsValue::from_f64(js_sys::Date::now())).to_iso_string();
    String::from(text).chars().take(10).collect()
}
