//! How wide a chart may be: measured, so that a drawing is laid out for the
//! pixels it gets and its text never shrinks.

use reactive_graph::prelude::*;
use reactive_graph::signal::RwSignal;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::ResizeObserver;

/// Steps in which the width is told: a drawing is not laid out anew for every
/// pixel.
const STEP: f64 = 20.0;

/// What a chart knows of its reader: how wide it may be, and where the cursor
/// stands.
#[derive(Clone, Copy)]
pub struct Width(pub(super) RwSignal<Seen>);

/// Where the cursor stands, and whether a key put it there: only then is it
/// read out aloud.
pub(super) type At = Option<(usize, bool)>;

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Seen {
    pub(super) width: f64,
    pub(super) at: At,
}

impl Width {
    /// Sets something, if it is something else.
    pub(super) fn change(self, change: impl Fn(&mut Seen)) {
        let before = self.0.try_get_untracked();
        if let Some(before) = before {
            let mut next = before;
            change(&mut next);
            if next != before {
                self.0.set(next);
            }
        }
    }

    /// Measures an element for as long as it lives.
    pub(super) fn watch(self, element: &web_sys::Element) {
        let measured = element.clone();
        let told = Closure::<dyn FnMut()>::new(move || {
            let now = stepped(f64::from(measured.client_width()));
            // Out of sight everything is 0 wide: keep the last drawing.
            if now > 0.0 {
                self.change(|seen| seen.width = now);
            }
        });
        if let Ok(observer) = ResizeObserver::new(told.as_ref().unchecked_ref()) {
            observer.observe(element);
            // Charts are made once and live as long as the page.
            told.forget();
        }
    }
}

/// Measures a chart, beginning with `first` logical pixels until the browser
/// has told.
pub fn use_width(first: f64) -> Width {
    Width(RwSignal::new(Seen { width: stepped(first), at: None }))
}

fn stepped(width: f64) -> f64 {
    (width / STEP).round() * STEP
}
