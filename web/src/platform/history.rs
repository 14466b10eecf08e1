//! The tab's places in the browser's history: whose they are, and where the reader was in each.

use super::place;
use serde::{Deserialize, Serialize};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, Event, HtmlElement, MouseEvent, Node, ScrollRestoration};

/// What a place in the history holds of ours. One that has none was come to by a link, or typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Id of the tab's build.
    pub tab: String,
    /// Id of the place, by which the reader's spot in it is known.
    pub place: String,
}

/// Names in the history's state.
const TAB: &str = "tab";
const PLACE: &str = "place";

impl Mark {
    /// That of the place that the tab is at.
    #[must_use]
    pub fn read() -> Option<Self> {
        let state = web_sys::window()?.history().ok()?.state().ok()?;
        let text = |name: &str| js_sys::Reflect::get(&state, &name.into()).ok()?.as_string();
        Some(Self { tab: text(TAB)?, place: text(PLACE).unwrap_or_default() })
    }

    /// Has the place that the tab is at hold it, and say `fragment` where one is given.
    pub fn write(&self, fragment: Option<&str>) {
        let state = js_sys::Object::new();
        for (name, text) in [(TAB, &self.tab), (PLACE, &self.place)] {
            let _ = js_sys::Reflect::set(&state, &name.into(), &JsValue::from(text.as_str()));
        }
        let url = fragment.map(|fragment| format!("#{fragment}"));
        if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
            let _ = history.replace_state_with_url(&state, "", url.as_deref());
        }
    }
}

/// Milliseconds after which a view has all that it holds.
const FILLED: u32 = 200;

/// Where the reader is in a place.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Spot {
    /// How far down, in pixels.
    scroll: f64,
    /// What has the focus, as a selector; empty where nothing of a name has it.
    focus: String,
}

impl Spot {
    /// Where the reader is now.
    #[must_use]
    pub fn read() -> Self {
        let Some(window) = web_sys::window() else { return Self::default() };
        let focused = window.document().and_then(|document| document.active_element());
        Self {
            scroll: window.scroll_y().unwrap_or_default(),
            focus: focused.and_then(|element| selector(&element)).unwrap_or_default(),
        }
    }

    /// Brings the reader there; `otherwise` is the id of what has the focus where nothing of that
    /// name is there.
    pub fn restore(self, otherwise: &str) {
        let find = |selector: &str| -> Option<HtmlElement> {
            web_sys::window()?.document()?.query_selector(selector).ok()??.dyn_into().ok()
        };
        let named = Some(&self.focus).filter(|focus| !focus.is_empty());
        let found = named.and_then(|focus| find(focus));
        if let Some(element) = found.or_else(|| find(&format!("#{otherwise}"))) {
            let options = web_sys::FocusOptions::new();
            options.set_prevent_scroll(true);
            let _ = element.focus_with_options(&options);
        }
        if !self.scroll() {
            // What the view holds is not all there yet.
            place::later(FILLED, move || _ = self.scroll());
        }
    }

    /// Whether the view was long enough.
    fn scroll(&self) -> bool {
        let Some(window) = web_sys::window() else { return true };
        window.scroll_to_with_x_and_y(0.0, self.scroll);
        window.scroll_y().is_ok_and(|scroll| scroll + 1.0 >= self.scroll)
    }
}

/// What finds an element again: its id, where it leads, or its name; within the view, where it
/// stands there.
fn selector(element: &Element) -> Option<String> {
    let quoted = |text: &str| text.replace('\\', "\\\\").replace('"', "\\\"");
    let by = |name: &str| Some(format!("[{name}=\"{}\"]", quoted(&element.get_attribute(name)?)));
    let own = by("id").or_else(|| by("href")).or_else(|| by("aria-label"))?;
    let main = matches!(element.closest("main"), Ok(Some(_)));
    Some(if main { format!("main {own}") } else { own })
}

/// Leaves it to us where the reader is after Back and Forward: views are made anew.
pub fn keep_spots() {
    if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
        let _ = history.set_scroll_restoration(ScrollRestoration::Manual);
    }
}

/// Calls back when the tab is at another place, by whatever way: more than once for some.
pub fn on_arrival(then: impl Fn() + Clone + 'static) {
    for event in ["popstate", "hashchange"] {
        place::heard(event, then.clone());
    }
}

/// Calls back with the fragment of a link of this page that is about to be followed, by a plain
/// click. Where it says so, the browser does not.
pub fn on_link(stays: impl Fn(&str) -> bool + 'static) {
    let Some(window) = web_sys::window() else { return };
    let follow = move |event: &Event| {
        let link = || {
            let click = event.dyn_ref::<MouseEvent>()?;
            let keys = [click.ctrl_key(), click.meta_key(), click.shift_key(), click.alt_key()];
            if keys.contains(&true) || click.button() != 0 {
                return None;
            }
            let node: Node = event.target()?.dyn_into().ok()?;
            let element = node.dyn_into::<Element>().ok()?;
            element.closest("a[href^=\"#\"]").ok()??.get_attribute("href")
        };
        if link().is_some_and(|href| stays(href.trim_start_matches('#'))) {
            event.prevent_default();
        }
    };
    let options = gloo_events::EventListenerOptions::enable_prevent_default();
    gloo_events::EventListener::new_with_options(&window, "click", options, follow).forget();
}
