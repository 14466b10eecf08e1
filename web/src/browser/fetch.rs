//! Fetching the maker's file.

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::Response;

/// The text of `catalogue.json` beside the page.
///
/// # Errors
/// Why it could not be had, in a few words.
pub async fn catalogue() -> Result<String, String> {
    let window = web_sys::window().ok_or("there is no window")?;
    let failed = |_: JsValue| "catalogue.json could not be fetched".to_string();
    let fetched = JsFuture::from(window.fetch_with_str("catalogue.json")).await.map_err(failed)?;
    let response: Response = fetched.dyn_into().map_err(failed)?;
    if !response.ok() {
        return Err(format!("catalogue.json: the host answered {}", response.status()));
    }
    let text = JsFuture::from(response.text().map_err(failed)?).await.map_err(failed)?;
    text.as_string().ok_or_else(|| "catalogue.json is not text".to_string())
}
