//! Keeping a build: by link, by name on this device, by file.

use super::summary::InALine;
use crate::app::shelf::{Entry, State};
use crate::app::{App, link, use_app};
use crate::component::keyed;
use crate::platform;
use crate::text::keep;
use leptos::prelude::*;
use pitchline_core::Draft;

/// Keeping a build.
#[component]
pub(super) fn Builds() -> impl IntoView {
    let app = use_app();
    let copy = move |_| {
        let text = untrack(|| app.link());
        if text.len() > link::LONGEST {
            app.say(keep::LINK_TOO_LONG);
            return;
        }
        platform::copy_text(&platform::link(&text), move |copied| {
            if copied {
                app.say(keep::COPIED);
            } else {
                app.show_link();
            }
        });
    };
    let export = move |_| {
        if let Some(missing) = untrack(|| app.missing()).first() {
            app.say(missing);
            return;
        }
        let named =
            |draft: &Draft| if draft.name.is_empty() { &draft.kit } else { &draft.name }.clone();
        platform::offer(&file_name(&app.peek(named)), &app.file(&platform::today()));
    };
    view! {
        <section class="block" aria-labelledby="builds-title">
            <h2 id="builds-title">{keep::TITLE}</h2>
            <div class="summary">
                <InALine />
            </div>
            <div class="row">
                <button type="button" on:click=copy>
                    {keep::COPY_LINK}
                </button>
                <button type="button" on:click=export>
                    {keep::SAVE_FILE}
                </button>
            </div>
            <Show when=move || app.by_hand()>
                <div class="field">
                    <label for="link">{keep::BY_HAND}</label>
                    <input
                        id="link"
                        type="text"
                        readonly
                        prop:value=move || platform::link(&app.link())
                    />
                </div>
            </Show>
            <div class="field save">
                <label for="build-name">{keep::NAME}</label>
                <input
                    id="build-name"
                    type="text"
                    maxlength="80"
                    autocomplete="off"
                    prop:value=move || app.draft(|draft| draft.name.clone())
                    on:input=move |e| app.name(&event_target_value(&e))
                    on:blur=move |_| app.leave_name()
                />
                <button type="button" on:click=move |_| app.save()>
                    {keep::SAVE}
                </button>
            </div>
            <ul class="saved">
                {keyed(move || app.saved(), |entry| entry.key.clone(), move |entry| saved(app, entry))}
            </ul>
            <div class="field">
                <label for="build-file">{keep::OPEN_FILE}</label>
                <input
                    id="build-file"
                    type="file"
                    accept=".json,application/json"
                    on:change=move |e| platform::read(&e, move |text| app.open_file(&text))
                />
            </div>
        </section>
    }
}

/// A saved build; what it holds is read when it is opened. One that is not understood in full can be
/// had as the file that it is.
fn saved(app: App, entry: Entry) -> AnyView {
    let Entry { name, state, .. } = entry.clone();
    let (opened, kept, forgotten) = (entry.clone(), entry.clone(), entry);
    let open = (state != State::Unreadable).then(|| {
        view! {
            <button
                type="button"
                aria-label=keep::open(&name)
                on:click=move |_| app.open_saved(&opened)
            >
                {keep::OPEN}
            </button>
        }
    });
    let save = (state != State::Whole).then(|| {
        let save = move |_| {
            if let Some(text) = app.saved_text(&kept) {
                platform::offer(&file_name(&kept.name), &text);
            }
        };
        view! {
            <button type="button" aria-label=keep::save_file(&name) on:click=save>
                {keep::SAVE_FILE}
            </button>
        }
    });
    let words = match state {
        State::Whole => name.clone(),
        State::Part => keep::in_part(&name),
        State::Unreadable => keep::unreadable(&name),
    };
    view! {
        <li>
            <span>{words}</span>
            {open}
            {save}
            <button
                type="button"
                aria-label=keep::delete(&name)
                on:click=move |_| app.forget(&forgotten)
            >
                {keep::DELETE}
            </button>
        </li>
    }
    .into_any()
}

/// A file name from a build's own name, in letters that every system takes.
fn file_name(name: &str) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
    let name: String = name.chars().map(plain).take(40).collect();
    let name = name.trim_matches('-');
    format!("{}.pitchline.json", if name.is_empty() { "build" } else { name })
}
