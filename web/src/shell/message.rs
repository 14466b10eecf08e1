//! Short messages at the foot of the page, and the offer of a new version.

use crate::app::{Message, use_app};
use crate::platform;
use leptos::prelude::*;
use std::time::Duration;

/// For how long a message stands. What can be undone stays; the rest has been read by then.
const SAID_FOR: Duration = Duration::from_millis(8000);

/// What was said last, and what may be done about it.
#[component]
pub(super) fn Messages() -> impl IntoView {
    let app = use_app();
    let timer = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move |_| {
        if let Some(timer) = timer.try_update_value(Option::take).flatten() {
            timer.clear();
        }
        if app.message().is_some_and(|message| !message.undo) {
            timer.set_value(set_timeout_with_handle(move || app.hush(), SAID_FOR).ok());
        }
    });
    let said = move || {
        app.message().map(|Message { text, undo }| {
            let undo = undo.then(|| {
                view! {
                    <button type="button" on:click=move |_| app.undo()>
                        "Undo"
                    </button>
                }
            });
            view! {
                <div class="message">
                    <span>{text}</span>
                    {undo}
                    <button type="button" on:click=move |_| app.hush()>
                        "Close"
                    </button>
                </div>
            }
        })
    };
    let update = move || {
        app.update().then(|| {
            view! {
                <div class="message">
                    <span>"A new version is ready."</span>
                    <button type="button" on:click=|_| platform::tell("pitchline:update-now")>
                        "Reload"
                    </button>
                    <button type="button" on:click=move |_| app.put_off_update()>
                        "Later"
                    </button>
                </div>
            }
        })
    };
    view! {
        <div class="messages" role="status">
            {said}
            {update}
        </div>
    }
}
