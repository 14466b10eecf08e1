//! What stands around the questions.

mod about;
mod aloud;
mod board;
#[cfg(test)]
mod board_laws;
mod builds;
mod contents;
mod head;
#[cfg(test)]
mod laws;
mod message;
mod strip;
mod told;

use crate::app::use_app;
use crate::question::registry::{ANSWERED, SETUP};
use about::About;
use aloud::Aloud;
pub use board::Board;
use builds::Builds;
use contents::Contents;
use head::Head;
use leptos::prelude::*;
use message::Messages;
use strip::Strip;
use told::Told;

/// The whole page.
#[component]
pub fn Page() -> impl IntoView {
    let app = use_app();
    // Without a part there is nothing to say.
    let nothing = Memo::new(move |_| app.found().is_none());
    view! {
        <div class="page">
            <Head />
            <Strip />
            <Told />
            <main>
                <div class="column">{SETUP.whole()}</div>
                <div class="column" hidden=nothing>
                    {ANSWERED.iter().map(|question| question.whole()).collect_view()}
                </div>
            </main>
            <footer>
                <Builds />
                <About />
            </footer>
            <Contents />
            <Messages />
            <Aloud />
        </div>
    }
}
