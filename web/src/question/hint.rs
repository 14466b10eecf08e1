//! What a closed fold holds, in a few words.

use crate::app::{Found, Job, Task, use_app};
use crate::text::Style;
use leptos::prelude::*;

/// A live answer for a fold's summary. It may take a few milliseconds: it is worked out after an
/// edit has been painted, and the last one stands until then.
pub fn hint(says: fn(&Found, Style) -> String) -> Signal<String> {
    let (app, said) = (use_app(), RwSignal::new(String::new()));
    let follow = move || _ = (app.found(), app.style());
    Task::new(follow, move || {
        let now = app.found().map(|found| says(&found, app.style()));
        Some(Box::new(move || {
            said.set(now.clone().unwrap_or_default());
            1.0
        }) as Job)
    });
    said.into()
}
