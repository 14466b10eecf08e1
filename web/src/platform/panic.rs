//! When something breaks: tell the plain-JavaScript panel, which outlives us.

use web_sys::{CustomEvent, CustomEventInit};

/// Hands the message of a panic to the page.
pub fn watch_panics() {
    std::panic::set_hook(Box::new(|info| {
        let init = CustomEventInit::new();
        init.set_detail(&info.to_string().into());
        if let (Some(window), Ok(event)) =
            (web_sys::window(), CustomEvent::new_with_event_init_dict("pitchline:panic", &init))
        {
            let _ = window.dispatch_event(&event);
        }
    }));
}
