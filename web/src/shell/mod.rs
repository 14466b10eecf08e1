//! What stands around the questions: one view in sight, the build beside it where there is room.

mod about;
mod aloud;
mod attention;
mod board;
#[cfg(test)]
mod board_laws;
mod builds;
mod differs;
mod head;
mod kits;
#[cfg(test)]
mod laws;
mod message;
mod more;
mod navigation;
mod overview;
mod paper;
mod sight;
mod summary;
mod tiles;
mod told;

use crate::app::use_app;
use crate::platform;
use crate::question::setup::Setup;
use crate::text::page;
use aloud::Aloud;
use head::Head;
use leptos::prelude::*;
use message::Messages;
use navigation::{Bar, Questions};
use paper::Paper;
use sight::{InSight, View};
use told::Told;

/// From this width on the build stands beside every view.
const WIDE: &str = "(min-width: 60rem)";

/// The whole page.
#[component]
pub fn Page() -> impl IntoView {
    let app = use_app();
    let wide = RwSignal::new(false);
    platform::on_media(WIDE, move |is| wide.set(is));
    // A first visit asks one thing.
    let asks = Memo::new(move |_| View::of(&app.see(), wide.get(), app.asks_kit()) == View::Kits);
    let beside = move || {
        (wide.get() && !asks.get()).then(|| {
            view! {
                <aside class="beside" aria-label=page::ON_IT>
                    <Setup />
                </aside>
            }
        })
    };
    view! {
        <div class="page">
            <Head />
            {beside}
            <main id="main">
                <Told />
                {move || wide.get().then(|| view! { <Questions /> })}
                <InSight wide />
            </main>
            <Paper />
            <div class="foot">
                <Messages />
                {move || (!wide.get()).then(|| view! { <Bar /> })}
            </div>
            <Aloud />
        </div>
    }
}
