//! Fetching files beside the page.

use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, future_to_promise};
use web_sys::{RequestCache, RequestInit, Response};

/// The text of a file beside the page, as its host has it now: a cache's copy may be old.
///
/// # Errors
/// Why it could not be had, in a few words.
pub async fn fetch(name: &'static str) -> Result<String, String> {
    let window = web_sys::window().ok_or("there is no window")?;
    let failed = |_: JsValue| format!("{name} couldn't be fetched.");
    let init = RequestInit::new();
    init.set_cache(RequestCache::NoCache);
    let fetching = window.fetch_with_str_and_init(name, &init);
    let response: Response =
        JsFuture::from(fetching).await.map_err(failed)?.dyn_into().map_err(failed)?;
    if !response.ok() {
        return Err(format!("{name}: the host answered {}.", response.status()));
    }
    let text = JsFuture::from(response.text().map_err(failed)?).await.map_err(failed)?;
    text.as_string().ok_or_else(|| format!("{name} is not text."))
}

/// What a task gives, if it is done within so many milliseconds. It goes on to its end either way.
pub async fn within<T: 'static>(
    milliseconds: u32,
    task: impl Future<Output = T> + 'static,
) -> Option<T> {
    let place = Rc::new(RefCell::new(None));
    let done = {
        let place = place.clone();
        future_to_promise(async move {
            let given = task.await;
            place.replace(Some(given));
            Ok(JsValue::UNDEFINED)
        })
    };
    let late = js_sys::Promise::new(&mut |resolve, _| {
        super::later(milliseconds, move || _ = resolve.call0(&JsValue::UNDEFINED));
    });
    let both = js_sys::Array::of2(&done, &late);
    JsFuture::from(js_sys::Promise::race(&both)).await.ok()?;
    place.take()
}
