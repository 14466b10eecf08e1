//! The head of the page.

use crate::app::{App, Difference, see, use_app};
use crate::platform;
use crate::text::{page, shell};
use leptos::prelude::*;

/// The head: whose page it is, the way back, Undo and Redo.
#[component]
pub(super) fn Head() -> impl IntoView {
    let app = use_app();
    platform::on_undo_keys(move |again| if again { app.redo() } else { app.undo() });
    let offline = move || if app.offline() == "ready" { page::OFFLINE } else { "" };
    view! {
        <header class="top">
            <a class="brand" href=see::lead("")>
                <strong>{shell::NAME}</strong>
                " "
                <span class="maker">{move || app.catalog().maker.clone()}</span>
            </a>
            // Said once, by appearing. It can be read under More.
            <p class="unseen" role="status">
                {offline}
            </p>
            {turn("↶", shell::UNDO, App::done, App::undo)} {turn("↷", shell::REDO, App::undone, App::redo)}
        </header>
    }
}

/// A button that undoes or redoes an edit, and names it. Where there is none it stays a stop, so that
/// whoever has come to the last one does not lose the place.
fn turn(
    sign: &'static str,
    word: &'static str,
    edit: fn(App) -> Option<Difference>,
    act: fn(App),
) -> impl IntoView {
    let app = use_app();
    let edit = Memo::new(move |_| {
        let edit = edit(app)?;
        Some(edit.named(&app.catalog(), app.style()))
    });
    let name = move || shell::button(word, edit.get().as_deref());
    view! {
        <button
            type="button"
            class="undo"
            aria-label=name
            title=name
            aria-disabled=move || edit.with(Option::is_none).then_some("true")
            on:click=move |_| act(app)
        >
            {sign}
        </button>
    }
}
