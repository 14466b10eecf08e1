//! What a closed fold holds, in a few words.

use crate::app::{App, Fit, Found, Job, Task, use_app};
use crate::text::Style;
use leptos::prelude::*;

/// A live answer for a fold's summary. It may take a few milliseconds: it is worked out after an
/// edit has been painted, and the last one stands until then.
pub fn hint(says: fn(&Found, Style) -> String) -> Signal<String> {
    later(move |app| app.found().map(|found| says(&found, app.style())))
}

/// The same of what goes together.
pub fn fit_hint(says: fn(&Fit, Style) -> String) -> Signal<String> {
    later(move |app| app.fit().map(|fit| says(&fit, app.style())))
}

fn later(say: impl Fn(App) -> Option<String> + 'static) -> Signal<String> {
    let (app, said) = (use_app(), RwSignal::new(String::new()));
    let follow = move || _ = (app.found(), app.style());
    Task::new(follow, move || {
        let now = say(app);
        Some(Box::new(move || {
            said.set(now.clone().unwrap_or_default());
            1.0
        }) as Job)
    });
    said.into()
}
