//! How a chart is seen: how wide it may be, measured, so that a drawing is laid out for the pixels
//! it gets and its text never shrinks; and whether it is in sight, since what nobody sees can wait.

use super::number::tenths;
use gloo_timers::callback::Timeout;
use reactive_graph::prelude::*;
use reactive_graph::signal::RwSignal;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::js_sys::Array;
use web_sys::{
    IntersectionObserver, IntersectionObserverEntry, IntersectionObserverInit, ResizeObserver,
};

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
    /// Whether it is in sight, or nearly.
    near: bool,
    /// Counts the rests after a change.
    rests: u32,
}

/// Milliseconds after the last change at which what is out of sight follows it.
const REST: u32 = 250;
/// How far beyond the edge of the screen a drawing counts as in sight.
const MARGIN: &str = "50%";

impl Width {
    /// `key` with the width.
    pub(super) fn with_width(self, key: Rc<dyn Fn() -> String>) -> Rc<dyn Fn() -> String> {
        Rc::new(move || key() + &tenths(self.0.get().width))
    }

    /// Follows a key; out of sight only once the reader rests, so that an edit costs no more than
    /// what is seen of it.
    pub(super) fn unhurried(self, key: Rc<dyn Fn() -> String>) -> Rc<dyn Fn() -> String> {
        let shown = RefCell::new((String::new(), 0));
        let waiting = RefCell::new((String::new(), None));
        Rc::new(move || {
            let Seen { near, rests, .. } = self.0.get();
            let now = key();
            let mut shown = shown.borrow_mut();
            if near || shown.0.is_empty() || shown.1 != rests {
                *shown = (now, rests);
            } else if shown.0 != now && waiting.borrow().0 != now {
                let rest = move || self.change(|seen| seen.rests += 1);
                waiting.replace((now, Some(Timeout::new(REST, rest))));
            }
            shown.0.clone()
        })
    }

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
        let told = Closure::<dyn FnMut(Array)>::new(move |entries: Array| {
            // Of several the last is how it stands.
            let last: IntersectionObserverEntry = entries.pop().unchecked_into();
            self.change(|seen| seen.near = last.is_intersecting());
        });
        let margin = IntersectionObserverInit::new();
        margin.set_root_margin(MARGIN);
        let callback = told.as_ref().unchecked_ref();
        if let Ok(observer) = IntersectionObserver::new_with_options(callback, &margin) {
            observer.observe(element);
            told.forget();
        }
    }
}

/// Measures a chart, beginning with `first` logical pixels until the browser
/// has told.
pub fn use_width(first: f64) -> Width {
    Width(RwSignal::new(Seen { width: stepped(first), at: None, near: true, rests: 0 }))
}

fn stepped(width: f64) -> f64 {
    (width / STEP).round() * STEP
}
