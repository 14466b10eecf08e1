//! Parts that do not agree, each with the nearest on offer that would.

use super::amiss::Amiss;
use super::cure::{Mend, Mending};
use crate::app::{App, use_app};
use crate::component::Notice;
use crate::question::AMISS;
use crate::text;
use leptos::prelude::*;
use pitchline_core::fit::remedy;
use pitchline_core::{Record, Slot};

/// All that does not fit.
#[component]
pub(super) fn Agree() -> impl IntoView {
    let app = use_app();
    let notices = Memo::new(move |_| notices(app));
    let told = move || {
        let one = |(text, mend): (String, Option<Mend>)| {
            let mends = match mend {
                Some(mend) => view! { <Mending mend /> }.into_any(),
                None => view! { <p class="facts">"Nothing on offer mends it."</p> }.into_any(),
            };
            view! { <Notice text /> {mends} }
        };
        let agree = "Shafts, bores, cores, plugs and volts agree.";
        match notices.get() {
            none if none.is_empty() => view! { <p class="facts">{agree}</p> }.into_any(),
            some => some.into_iter().map(one).collect_view().into_any(),
        }
    };
    view! {
        // Not a stop of its own; the strip leads here.
        <div id=AMISS tabindex="-1">
            <h3>"Parts that meet"</h3>
            <div role="status">{told}</div>
            <Amiss />
        </div>
    }
}

/// What is said of each, and what mends it.
fn notices(app: App) -> Vec<(String, Option<Mend>)> {
    let (Some(found), catalog, style) = (app.found(), app.catalog(), app.style()) else {
        return Vec::new();
    };
    let draft = &found.draft;
    let offered = |slot: Slot| -> Vec<&Record> { catalog.offered(&draft.kit, slot) };
    let one = |told| {
        let mend = remedy(draft, told, &offered).map(|found| Mend::take(found.slot, found.part));
        (text::notice(told, style), mend)
    };
    found.notices.iter().map(one).collect()
}
