//! Short messages below the view, and the offer of a new version.

use crate::app::{Message, Undo, use_app};
use crate::platform;
use crate::text::shell;
use leptos::prelude::*;
use std::time::Duration;

/// For how long a message stands, once nobody points at it.
const SAID_FOR: Duration = Duration::from_secs(10);

/// What was said last, and what may be done about it.
#[component]
pub(super) fn Messages() -> impl IntoView {
    let app = use_app();
    let timer = StoredValue::new(None::<TimeoutHandle>);
    // Someone points at it, or has come to it by the keyboard.
    let (pointed, focused) = (RwSignal::new(false), RwSignal::new(false));
    Effect::new(move |_| {
        if let Some(timer) = timer.try_update_value(Option::take).flatten() {
            timer.clear();
        }
        if app.message().is_some() && !pointed.get() && !focused.get() {
            timer.set_value(set_timeout_with_handle(move || app.hush(), SAID_FOR).ok());
        }
    });
    let close = move || {
        // What goes is neither left nor blurred.
        pointed.set(false);
        focused.set(false);
    };
    let said = move || {
        app.message().map(|Message { text, undo }| {
            view! {
                <div
                    class="message"
                    on:mouseenter=move |_| pointed.set(true)
                    on:mouseleave=move |_| pointed.set(false)
                    on:focusin=move |_| focused.set(true)
                    on:focusout=move |_| focused.set(false)
                >
                    <span>{text}</span>
                    {undo.map(|undo| offer(undo, close))}
                    <button
                        type="button"
                        on:click=move |_| {
                            close();
                            app.hush();
                        }
                    >
                        {shell::CLOSE}
                    </button>
                </div>
            }
        })
    };
    let update = move || {
        app.update().then(|| {
            view! {
                <div class="message">
                    <span>{shell::UPDATE}</span>
                    <button type="button" on:click=|_| platform::tell("pitchline:update-now")>
                        {shell::RELOAD}
                    </button>
                    <button type="button" on:click=move |_| app.put_off_update()>
                        {shell::LATER}
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

/// Undoes what the message names, for as long as nothing else would go with it.
fn offer(undo: Undo, close: impl Fn() + Copy + Send + Sync + 'static) -> impl IntoView {
    let app = use_app();
    let can = {
        let undo = undo.clone();
        Memo::new(move |_| app.can_undo(&undo))
    };
    move || {
        let undo = undo.clone();
        can.get().then(|| {
            view! {
                <button
                    type="button"
                    on:click=move |_| {
                        close();
                        app.undo_this(&undo);
                    }
                >
                    {shell::UNDO}
                </button>
            }
        })
    }
}
