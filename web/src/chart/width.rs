//! How a chart is seen: how wide it may be, measured, so that a drawing is laid out for the pixels
//! it gets and its text never shrinks; and whether it is in sight, since what nobody sees can wait.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::js_sys::Array;
use web_sys::{
    Element, IntersectionObserver, IntersectionObserverEntry, IntersectionObserverInit,
    ResizeObserver,
};

/// Steps in which the width is told, up or down to the nearest: a drawing is not laid out anew for
/// every pixel.
pub(crate) const STEP: f64 = 20.0;
/// Logical pixels until the browser has told.
const FIRST: f64 = 340.0;
/// How far beyond the edge of the screen a drawing counts as in sight.
const MARGIN: &str = "50%";

/// What a chart knows of its reader.
#[derive(Clone, Copy)]
pub(crate) struct Seen {
    /// How wide the chart may be, in logical pixels.
    pub(crate) width: RwSignal<f64>,
    /// Whether it is in sight, or nearly.
    pub(crate) near: RwSignal<bool>,
}

impl Seen {
    pub(crate) fn new() -> Self {
        Self { width: RwSignal::new(FIRST), near: RwSignal::new(true) }
    }

    /// Measures an element until the chart goes.
    pub(crate) fn watch(self, element: &Element) {
        let measured = element.clone();
        let told = Closure::<dyn FnMut()>::new(move || {
            let now = (f64::from(measured.client_width()) / STEP).floor() * STEP;
            // Out of sight everything is 0 wide: keep the last drawing.
            if now > 0.0 && self.width.try_get_untracked().is_some_and(|width| width != now) {
                self.width.set(now);
            }
        });
        if let Ok(observer) = ResizeObserver::new(told.as_ref().unchecked_ref()) {
            observer.observe(element);
            keep(observer, told, ResizeObserver::disconnect);
        }
        let told = Closure::<dyn FnMut(Array)>::new(move |entries: Array| {
            // Of several the last is how it stands.
            let last: IntersectionObserverEntry = entries.pop().unchecked_into();
            let now = last.is_intersecting();
            if self.near.try_get_untracked().is_some_and(|near| near != now) {
                self.near.set(now);
            }
        });
        let margin = IntersectionObserverInit::new();
        margin.set_root_margin(MARGIN);
        let callback = told.as_ref().unchecked_ref();
        if let Ok(observer) = IntersectionObserver::new_with_options(callback, &margin) {
            observer.observe(element);
            keep(observer, told, IntersectionObserver::disconnect);
        }
    }
}

/// Keeps an observer and what it calls until the owner goes.
fn keep<O: 'static, C: 'static + ?Sized>(observer: O, told: Closure<C>, end: fn(&O)) {
    let kept = send_wrapper::SendWrapper::new((observer, told));
    on_cleanup(move || end(&kept.0));
}
