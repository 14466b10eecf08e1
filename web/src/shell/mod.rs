//! What stands around the questions: one view in sight, the build beside it where there is room.

mod about;
mod aloud;
mod attention;
mod builds;
mod differs;
mod head;
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

use crate::platform;
use crate::question::setup::Setup;
use crate::text::page;
use aloud::Aloud;
use head::Head;
use leptos::prelude::*;
use message::Messages;
use navigation::{Bar, Questions};
use paper::Paper;
use sight::InSight;
use told::Told;

/// From this width on the build stands beside every view.
const WIDE: &str = "(min-width: 60rem)";

/// The whole page.
#[component]
pub fn Page() -> impl IntoView {
    let wide = RwSignal::new(false);
    platform::on_media(WIDE, move |is| wide.set(is));
    let beside = move || {
        wide.get().then(|| {
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
