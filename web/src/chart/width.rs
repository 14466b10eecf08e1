//! How wide a chart may be: measured, so that a drawing is laid out for the
//! pixels it gets and its text never shrinks.

use leptos::html::Div;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::ResizeObserver;

/// Steps in which the width is told: a drawing is not laid out anew for every
/// pixel.
const STEP: f64 = 20.0;

/// The measured width of one chart. Hand it to the chart and lay the drawing
/// out for [`Width::get`].
#[derive(Clone, Copy)]
pub struct Width {
    pub(super) node: NodeRef<Div>,
    px: RwSignal<f64>,
}

impl Width {
    /// The width in logical pixels, a multiple of 20 and at most half a step
    /// from the room there is; tracked.
    pub fn get(&self) -> f64 {
        self.px.get()
    }
}

/// Measures a chart, beginning with `first` logical pixels until the browser
/// has told.
pub fn use_width(first: f64) -> Width {
    let node = NodeRef::<Div>::new();
    let px = RwSignal::new(stepped(first));
    let watch = StoredValue::new_local(None::<Watch>);
    Effect::new(move |_| {
        let Some(element) = node.get() else { return };
        let measured = element.clone();
        let told = Closure::<dyn FnMut()>::new(move || {
            let now = stepped(f64::from(measured.client_width()));
            // Out of sight everything is 0 wide: keep the last drawing.
            if now > 0.0 && px.try_get_untracked().is_some_and(|seen| seen != now) {
                px.set(now);
            }
        });
        if let Ok(observer) = ResizeObserver::new(told.as_ref().unchecked_ref()) {
            observer.observe(&element);
            watch.set_value(Some(Watch { observer, _told: told }));
        }
    });
    on_cleanup(move || watch.set_value(None));
    Width { node, px }
}

/// An observer with the closure it calls: they end together, the observer
/// first.
struct Watch {
    observer: ResizeObserver,
    _told: Closure<dyn FnMut()>,
}

impl Drop for Watch {
    fn drop(&mut self) {
        self.observer.disconnect();
    }
}

fn stepped(width: f64) -> f64 {
    (width / STEP).round() * STEP
}
