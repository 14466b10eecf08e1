//! What a handler is told.

use wasm_bindgen::JsCast;
use web_sys::{HtmlDetailsElement, HtmlInputElement, HtmlSelectElement};

/// An event of the browser.
pub struct Event(pub(super) web_sys::Event);

impl Event {
    /// The browser's own event.
    #[must_use]
    pub fn raw(&self) -> &web_sys::Event {
        &self.0
    }

    /// The text of the input, or the value picked in the list, that it came from.
    #[must_use]
    pub fn value(&self) -> String {
        let Some(target) = self.0.target() else { return String::new() };
        if let Some(input) = target.dyn_ref::<HtmlInputElement>() {
            return input.value();
        }
        target.dyn_ref::<HtmlSelectElement>().map(HtmlSelectElement::value).unwrap_or_default()
    }

    /// Marks the whole text of the input, so that typing replaces it.
    pub fn select(&self) {
        let target = self.0.target();
        if let Some(input) = target.as_ref().and_then(|t| t.dyn_ref::<HtmlInputElement>()) {
            input.select();
        }
    }

    /// Whether the fold that it came from is open.
    #[must_use]
    pub fn open(&self) -> bool {
        let target = self.0.target();
        target.is_some_and(|t| t.dyn_ref::<HtmlDetailsElement>().is_some_and(|d| d.open()))
    }

    /// The key, and nothing while another key changes its meaning.
    #[must_use]
    pub fn key(&self) -> String {
        let key = self.0.dyn_ref::<web_sys::KeyboardEvent>();
        let key = key.filter(|e| !e.ctrl_key() && !e.alt_key() && !e.meta_key());
        key.map(web_sys::KeyboardEvent::key).unwrap_or_default()
    }

    /// Whether Shift was held.
    #[must_use]
    pub fn shift(&self) -> bool {
        let key = self.0.dyn_ref::<web_sys::KeyboardEvent>().map(web_sys::KeyboardEvent::shift_key);
        let mouse = self.0.dyn_ref::<web_sys::MouseEvent>().map(web_sys::MouseEvent::shift_key);
        key.or(mouse).unwrap_or(false)
    }

    /// Where in its element the pointer stands, in pixels.
    #[must_use]
    pub fn place(&self) -> Option<(f64, f64)> {
        let mouse = self.0.dyn_ref::<web_sys::MouseEvent>()?;
        Some((f64::from(mouse.offset_x()), f64::from(mouse.offset_y())))
    }

    /// How wide the element is that takes the pointer, in pixels.
    #[must_use]
    pub fn room(&self) -> Option<f64> {
        let target = self.0.current_target()?;
        let element = target.dyn_ref::<web_sys::Element>()?;
        Some(f64::from(element.client_width())).filter(|width| *width > 0.0)
    }

    /// Whether it came from a mouse.
    #[must_use]
    pub fn by_mouse(&self) -> bool {
        self.0.dyn_ref::<web_sys::PointerEvent>().is_some_and(|e| e.pointer_type() == "mouse")
    }

    /// Keeps the browser from doing what it would.
    pub fn prevent(&self) {
        self.0.prevent_default();
    }
}
