//! Fetching files beside the page.

use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, future_to_promise};
use web_sys::{RequestCache, RequestInit, Response};

/// Why a file could not be had.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unfetched {
    /// There was no answer.
    Failed,
    /// The host's answer was this number, and not the file.
    Refused(u16),
    /// It is no text.
    NotText,
}

/// The text of a file beside the page, as its host has it now: a cache's copy may be old.
///
/// # Errors
/// Why it could not be had.
pub async fn fetch(name: &str) -> Result<String, Unfetched> {
    let failed = |_: JsValue| Unfetched::Failed;
    let window = web_sys::window().ok_or(Unfetched::Failed)?;
    let init = RequestInit::new();
    init.set_cache(RequestCache::NoCache);
    let fetching = window.fetch_with_str_and_init(name, &init);
    let response: Response =
        JsFuture::from(fetching).await.map_err(failed)?.dyn_into().map_err(failed)?;
    if !response.ok() {
        return Err(Unfetched::Refused(response.status()));
    }
    let text = JsFuture::from(response.text().map_err(failed)?).await.map_err(failed)?;
    text.as_string().ok_or(Unfetched::NotText)
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
