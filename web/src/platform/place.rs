//! Where the page stands: its address, its frame, its events.

use gloo_events::EventListener;
use gloo_timers::callback::Timeout;
use std::pin::Pin;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, Event, HtmlElement};

/// The fragment without its `#`.
#[must_use]
pub fn hash() -> String {
    let hash = web_sys::window().and_then(|w| w.location().hash().ok()).unwrap_or_default();
    hash.trim_start_matches('#').to_string()
}

/// The whole address with a fragment.
#[must_use]
pub fn link(fragment: &str) -> String {
    let href = web_sys::window().and_then(|w| w.location().href().ok()).unwrap_or_default();
    let base = href.split(['#', '?']).next().unwrap_or_default();
    format!("{base}#{fragment}")
}

/// Whether the address asks for a start from the demo, after something broke.
#[must_use]
pub fn wants_demo() -> bool {
    let search = web_sys::window().and_then(|w| w.location().search().ok());
    search.is_some_and(|search| asks(&search, "demo"))
}

/// Whether a query has this very key, with or without a value.
fn asks(search: &str, key: &str) -> bool {
    let pairs = search.trim_start_matches('?').split('&');
    pairs.filter_map(|pair| pair.split('=').next()).any(|given| given == key)
}

/// Whether the page stands in a frame of another page.
#[must_use]
pub fn embedded() -> bool {
    web_sys::window().is_some_and(|w| !w.parent().is_ok_and(|parent| parent.as_ref() == Some(&w)))
}

/// An id for the frame that the page stands in, the same when the page around it is loaded anew:
/// browsers then make its frames anew.
#[must_use]
pub fn frame_id() -> Option<String> {
    let window = web_sys::window().filter(|_| embedded())?;
    let parent = window.parent().ok()??;
    let this: &JsValue = window.as_ref();
    let own = |place: &u32| js_sys::Reflect::get_u32(&parent, *place).is_ok_and(|w| w == *this);
    let place = (0..parent.length()).find(own)?;
    Some(format!("frame-{place} of {}", window.document()?.referrer()))
}

/// Whether the page was loaded anew where it was.
#[must_use]
pub fn is_reload() -> bool {
    let found = || {
        let clock = web_sys::window()?.performance()?;
        let entry = clock.get_entries_by_type("navigation").get(0);
        js_sys::Reflect::get(&entry, &"type".into()).ok()?.as_string()
    };
    found().is_some_and(|kind| kind == "reload")
}

/// Calls back on an event of the window, for as long as the page lives.
pub fn heard(event: &'static str, then: impl Fn() + 'static) {
    if let Some(window) = web_sys::window() {
        EventListener::new(&window, event, move |_| then()).forget();
    }
}

/// Does something once, after so many milliseconds.
pub fn later(milliseconds: u32, then: impl FnOnce() + 'static) {
    Timeout::new(milliseconds, then).forget();
}

/// Milliseconds since 1970.
#[must_use]
pub fn now() -> f64 {
    js_sys::Date::now()
}

/// Some letters by chance, no two alike.
#[must_use]
pub fn letters() -> String {
    let letter = |_| char::from(b'a' + (js_sys::Math::random() * 26.0) as u8);
    (0..10).map(letter).collect()
}

/// Tells the page's own scripts whether what stands in the fields is kept.
pub fn tell_kept(kept: bool) {
    let root = web_sys::window().and_then(|w| w.document()).and_then(|d| d.document_element());
    if let Some(root) = root {
        let _ = root.set_attribute("data-kept", if kept { "yes" } else { "no" });
    }
}

/// What colours the page: `light`, `dark`, or nothing where the device decides.
#[must_use]
pub fn theme() -> String {
    of_root("data-theme").unwrap_or_default()
}

/// Colours the page by that.
pub fn tell_theme(theme: &str) {
    let root = web_sys::window().and_then(|w| w.document()).and_then(|d| d.document_element());
    if let Some(root) = root {
        let _ = root.set_attribute("data-theme", theme);
    }
    tell("pitchline:theme");
}

/// Sends an event to the page's own scripts.
pub fn tell(event: &str) {
    if let (Some(window), Ok(event)) = (web_sys::window(), Event::new(event)) {
        let _ = window.dispatch_event(&event);
    }
}

/// How the offline copy stands: `off`, `installing`, `slow`, `failed`, `ready` or `incomplete`,
/// and whether a newer build waits.
#[must_use]
pub fn offline_state() -> (String, bool) {
    (of_root("data-offline").unwrap_or_default(), of_root("data-update").is_some())
}

/// Why there is no offline copy, or none yet; empty where there is one or nothing is known.
#[must_use]
pub fn offline_why() -> String {
    of_root("data-offline-why").unwrap_or_default()
}

fn of_root(name: &str) -> Option<String> {
    web_sys::window()?.document()?.document_element()?.get_attribute(name)
}

/// The element of that id.
fn element(id: &str) -> Option<Element> {
    web_sys::window()?.document()?.get_element_by_id(id)
}

/// Whether the document has such an element, and is one at all.
#[must_use]
pub fn exists(id: &str) -> bool {
    element(id).is_some()
}

/// Empties an element, and gives it back.
#[must_use]
pub fn clear(id: &str) -> Option<HtmlElement> {
    let element: HtmlElement = element(id)?.dyn_into().ok()?;
    element.set_text_content(None);
    Some(element)
}

/// Runs something that waits. Boxed, so that the machinery is there once.
pub fn spawn(task: impl Future<Output = ()> + 'static) {
    let task: Pin<Box<dyn Future<Output = ()>>> = Box::pin(task);
    wasm_bindgen_futures::spawn_local(task);
}

/// Brings a section into view, and lets the keyboard go on from there.
pub fn go_to(id: &str) {
    if let Some(element) = element(id).and_then(|e| e.dyn_into::<HtmlElement>().ok()) {
        element.scroll_into_view();
        let _ = element.focus();
    }
}

/// Calls back with whether a media query holds, now and whenever that changes.
pub fn on_media(query: &str, then: impl Fn(bool) + 'static) {
    let list = web_sys::window().and_then(|window| window.match_media(query).ok()?);
    let Some(list) = list else { return };
    then(list.matches());
    let now = list.clone();
    EventListener::new(&list, "change", move |_| then(now.matches())).forget();
}

/// The title of the page's tab and of its places in the history.
pub fn set_title(title: &str) {
    if let Some(document) = web_sys::window().and_then(|window| window.document()) {
        document.set_title(title);
    }
}

/// Has the browser print the page.
pub fn print() {
    let _ = web_sys::window().map(|window| window.print());
}

/// Goes where a link within the page leads.
pub fn follow(href: &str) {
    if let Some(window) = web_sys::window() {
        let _ = window.location().set_hash(href);
    }
}

/// Milliseconds after which what was opened has been made.
const OPENED: u32 = 50;
/// How often it is looked for: the outer fold, the inner one, the view, and a busy browser.
const LOOKS: u32 = 20;

/// Leads to the element of that id. What a fold holds is made once it is open, so the folds that hold
/// `what` (`data-holds`) are opened, the outer one first. Where there is no such fold, it stands in
/// the view that `href` leads to.
pub fn reveal(what: &'static str, id: String, href: String) {
    look_for(what, id, Some(href), LOOKS);
}

fn look_for(what: &'static str, id: String, mut href: Option<String>, looks: u32) {
    if exists(&id) {
        return go_to(&id);
    }
    let closed = format!("details[data-holds~={what}]:not([open])");
    let window = web_sys::window();
    let fold = window.as_ref().and_then(|w| w.document()?.query_selector(&closed).ok()?);
    if let Some(fold) = fold {
        let _ = fold.set_attribute("open", "");
    } else if let (Some(href), Some(window)) = (href.take(), window) {
        // The view in sight needs no place of its own once more.
        if !hash().split('&').any(|piece| href == format!("#{piece}")) {
            let _ = window.location().set_hash(&href);
        }
    }
    if looks > 0 {
        later(OPENED, move || look_for(what, id, href, looks - 1));
    }
}

/// Copies a text; calls back with whether it worked.
pub fn copy_text(text: &str, then: impl FnOnce(bool) + 'static) {
    // Absent where the page is not served securely.
    let clipboard = web_sys::window().map(|w| w.navigator()).and_then(|navigator| {
        let held = js_sys::Reflect::get(&navigator, &"clipboard".into()).ok()?;
        (!held.is_undefined()).then(|| navigator.clipboard())
    });
    let Some(clipboard) = clipboard else { return then(false) };
    let written = wasm_bindgen_futures::JsFuture::from(clipboard.write_text(text));
    spawn(async move { then(written.await.is_ok()) });
}

#[cfg(test)]
mod tests {
    use super::asks;

    #[test]
    fn a_query_asks_by_the_whole_key() {
        for search in ["?demo", "?demo=1", "?utm_source=x&demo", "?demo&no-sw"] {
            assert!(asks(search, "demo"), "{search}");
        }
        for search in ["", "?", "?campaign=demolition", "?demos", "?x=demo", "?demo-day=1"] {
            assert!(!asks(search, "demo"), "{search}");
        }
    }
}
