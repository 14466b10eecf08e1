//! The start of the page, and where its state meets the browser.

use crate::app::tab::{self, Arrival};
use crate::app::{App, Loaded, arrived, see};
use crate::load::load;
use crate::platform::{self, Store};
use crate::shell::Page;
use crate::text::{Style, Units};
use leptos::prelude::*;

/// Id of the element that becomes the page. A host that loads the module for
/// its answers has no such thing.
const PLACE: &str = "pitchline-page";

/// Starts the page: reads the maker's parts, finds the last build, and draws.
/// Does nothing where there is no page, as when another program loads the module.
pub fn start() {
    if !platform::exists(PLACE) {
        return;
    }
    platform::watch_panics();
    platform::spawn(async {
        let loaded = load().await;
        // The shell in the HTML makes way for the living page.
        let Some(place) = platform::clear(PLACE) else { return };
        let page = leptos::mount::mount_to(place, move || {
            begin(loaded);
            view! { <Page /> }
        });
        // As long as the page lives.
        page.forget();
        platform::tell("pitchline:started");
    });
}

fn begin(loaded: Loaded) {
    let (local, session) = (Store::local(), Store::session());
    let comma = platform::decimal_comma();
    let units = match local.get("units").as_deref() {
        Some("imperial") => Units::Imperial,
        Some(_) => Units::Metric,
        None if platform::imperial() => Units::Imperial,
        None => Units::Metric,
    };
    let (id, ours) = arrived(&session);
    let arrival = Arrival {
        ours,
        id,
        address: see::part(&platform::hash()).0,
        demo: platform::wants_demo(),
        now: platform::now() as u64,
        letters: platform::letters(),
    };
    let start = tab::begin(&local, &session, &arrival, &loaded.catalog);
    let style = Style { units, comma };
    let app = App::new(loaded, start.build.clone(), start.edits.clone(), style);
    app.begin_keeping(local, session, start);
    app.begin_bands();
    app.begin_margins();
    app.begin_comparing();
    app.begin_announcing();
    let look = move || {
        let (state, waiting) = platform::offline_state();
        app.tell_offline(state, waiting);
    };
    look();
    for event in ["pitchline:offline-ready", "pitchline:offline-told", "pitchline:update-waiting"] {
        platform::heard(event, look);
    }
}
