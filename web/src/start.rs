//! The start of the page, and where its state meets the browser.

use crate::app::{App, Loaded, saved};
use crate::load::load;
use crate::platform::{self, Store};
use crate::shell::Page;
use crate::text::{Style, Units};
use leptos::prelude::*;
use pitchline_core::Draft;
use pitchline_core::catalog::Catalog;

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
        // Where a link leads was not there yet when the browser looked.
        platform::go_to(&platform::hash());
    });
}

fn begin(loaded: Loaded) {
    let store = Store::default();
    let comma = platform::decimal_comma();
    let units = match store.get("units").as_deref() {
        Some("imperial") => Units::Imperial,
        Some(_) => Units::Metric,
        None if platform::imperial() => Units::Imperial,
        None => Units::Metric,
    };
    let draft = last_build(&store, &loaded.catalog);
    let app = App::new(loaded, draft, Style { units, comma });
    app.begin_keeping(store);
    app.begin_bands();
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

/// The build of the last visit, or the first kit as it is sold.
fn last_build(store: &Store, catalog: &Catalog) -> Draft {
    let kept = store.get("current").filter(|_| !platform::wants_demo());
    let first = || catalog.draft(catalog.kits.first().map_or("", |kit| &kit.id));
    kept.and_then(|text| Some(saved::read_file(&text).ok()?.0)).unwrap_or_else(first)
}
