//! Fetching files beside the page.

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::Response;

/// The text of a file beside the page.
///
/// # Errors
/// Why it could not be had, in a few words.
pub async fn fetch(name: &'static str) -> Result<String, String> {
    let window = web_sys::window().ok_or("there is no window")?;
    let failed = |_: JsValue| format!("{name} could not be fetched.");
    let fetched = JsFuture::from(window.fetch_with_str(name)).await.map_err(failed)?;
    let response: Response = fetched.dyn_into().map_err(failed)?;
    if !response.ok() {
        return Err(format!("{name}: the host answered {}.", response.status()));
    }
    let text = JsFuture::from(response.text().map_err(failed)?).await.map_err(failed)?;
    text.as_string().ok_or_else(|| format!("{name} is not text."))
}
