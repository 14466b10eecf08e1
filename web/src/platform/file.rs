//! Files out and in.

use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, Event, HtmlAnchorElement, HtmlInputElement, Url};

/// Offers a text to be kept as a file.
pub fn offer(name: &str, text: &str) {
    let _ = try_offer(name, text);
}

fn try_offer(name: &str, text: &str) -> Option<()> {
    let options = BlobPropertyBag::new();
    options.set_type("application/json");
    let parts = js_sys::Array::of1(&text.into());
    let blob = Blob::new_with_str_sequence_and_options(&parts, &options).ok()?;
    let url = Url::create_object_url_with_blob(&blob).ok()?;
    let document = web_sys::window()?.document()?;
    let anchor: HtmlAnchorElement = document.create_element("a").ok()?.dyn_into().ok()?;
    anchor.set_href(&url);
    anchor.set_download(name);
    anchor.click();
    // The click has begun the download; the address is no longer needed after this turn.
    Url::revoke_object_url(&url).ok()
}

/// Reads the file that was chosen in an input, and hands over its text.
pub fn read(event: &Event, then: impl FnOnce(String) + 'static) {
    let input = event.target().and_then(|t| t.dyn_into::<HtmlInputElement>().ok());
    let Some(input) = input else { return };
    let chosen = input.files().and_then(|files| files.get(0));
    // So that the same file can be chosen again.
    input.set_value("");
    let text = chosen.map(|file| JsFuture::from(file.text()));
    if let Some(text) = text {
        super::spawn(async move {
            let text = text.await.ok().and_then(|text| text.as_string());
            then(text.unwrap_or_default());
        });
    }
}
