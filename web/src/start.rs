//! The start of the page, and where its state meets the browser.

use crate::app::tab::{self, Arrival};
use crate::app::{App, Loaded};
use crate::platform::{self, Store};
use crate::shell::Page;
use crate::text::{Style, Units, fault};
use leptos::prelude::*;
use pitchline_core::catalog::Catalog;
use std::sync::Arc;

/// Id of the element that becomes the page. A host that loads the module for
/// its answers has no such thing.
const PLACE: &str = "pitchline-page";
/// The maker's file.
const CATALOGUE: &str = "catalogue.json";
/// The demo, which stands in where the maker's file cannot be read. The build
/// puts it beside that file.
const DEMO: &str = "demo.json";

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
        // Where a link leads was not there yet when the browser looked.
        platform::go_to(&platform::hash());
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
    let arrival = Arrival {
        id: platform::marked().or_else(platform::frame_id),
        address: platform::hash(),
        demo: platform::wants_demo(),
        now: platform::now() as u64,
        letters: platform::letters(),
    };
    let start = tab::begin(&local, &session, &arrival, &loaded.catalog);
    let app = App::new(loaded, start.build.clone(), Style { units, comma });
    app.begin_keeping(local, session, start);
    app.begin_bands();
    app.begin_announcing();
    let look = move || {
        let (state, waiting) = platform::offline_state();
        app.tell_offline(state, waiting);
    };
    look();
    for event in ["pitchline:offline-ready", "pitchline:update-waiting", "pitchline:started"] {
        platform::heard(event, look);
    }
}

/// The maker's catalogue, or the demo and why.
async fn load() -> Loaded {
    let read = |text: String| Catalog::read(&text).map_err(|e| fault(&e, Style::default()));
    let (read, refused) = match platform::fetch(CATALOGUE).await.and_then(read) {
        Ok(read) => (read, None),
        Err(why) => {
            let demo = platform::fetch(DEMO).await.and_then(read);
            // An empty catalogue still works: every part is then typed in.
            (demo.unwrap_or_default(), Some(why))
        }
    };
    Loaded { catalog: Arc::new(read.0), faults: read.1, refused }
}
