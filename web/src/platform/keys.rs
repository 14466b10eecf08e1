//! Keys that hold anywhere on the page.

use gloo_events::{EventListener, EventListenerOptions};
use wasm_bindgen::JsCast;
use web_sys::{Element, KeyboardEvent};

/// Calls back on the keys for Undo, and with true on those for Redo. Fields of text have their own.
pub fn on_undo_keys(then: impl Fn(bool) + 'static) {
    let Some(window) = web_sys::window() else { return };
    let pressed = move |event: &web_sys::Event| {
        let Some(key) = event.dyn_ref::<KeyboardEvent>() else { return };
        let element = event.target().and_then(|target| target.dyn_into::<Element>().ok());
        let in_text = element.is_some_and(|element| {
            matches!(element.closest("input, textarea, [contenteditable]"), Ok(Some(_)))
        });
        let with = key.ctrl_key() || key.meta_key();
        let asked = asked(&key.key(), with, key.shift_key(), key.alt_key());
        if let Some(again) = asked.filter(|_| !in_text) {
            event.prevent_default();
            then(again);
        }
    };
    let options = EventListenerOptions::enable_prevent_default();
    EventListener::new_with_options(&window, "keydown", options, pressed).forget();
}

/// Whether the keys ask for Redo; none where they ask for neither. `with` is Control, or Command.
fn asked(key: &str, with: bool, shift: bool, alt: bool) -> Option<bool> {
    match key {
        "z" | "Z" if with && !alt => Some(shift),
        "y" | "Y" if with && !alt && !shift => Some(true),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::asked;

    #[test]
    fn keys_as_everywhere() {
        assert_eq!(asked("z", true, false, false), Some(false));
        // With Shift, or with the capitals locked.
        assert_eq!(asked("Z", true, true, false), Some(true));
        assert_eq!(asked("Z", true, false, false), Some(false));
        assert_eq!(asked("y", true, false, false), Some(true));
        for (key, with, shift, alt) in [
            ("z", false, false, false),
            ("z", true, false, true),
            ("y", true, true, false),
            ("x", true, false, false),
        ] {
            assert_eq!(asked(key, with, shift, alt), None, "{key}");
        }
    }
}
