//! The start of the page, and where its state meets the browser.

use crate::ask;
use crate::browser::{self, Store};
use crate::state::{App, Loaded, link, saved};
use crate::text::{Style, Units, fault};
use gloo_timers::callback::Timeout;
use leptos::prelude::*;
use pitchline_core::Draft;
use pitchline_core::catalog::Catalog;
use std::sync::Arc;

/// The demo stands in where the maker's file cannot be read.
const DEMO: &str = include_str!("../catalog/catalogue.json");

/// Milliseconds after the last edit at which the address follows.
const ADDRESS_AFTER: u32 = 300;

/// Starts the page: reads the maker's parts, finds the last build, and draws.
pub fn start() {
    browser::watch_panics();
    leptos::task::spawn_local(async {
        let fetched = browser::catalogue().await;
        // The first screen in the HTML makes way for the living one.
        if let Some(place) = browser::clear("app") {
            leptos::mount::mount_to(place, move || {
                begin(fetched);
                ask::page()
            })
            .forget();
        }
    });
}

fn begin(fetched: Result<String, String>) {
    let store = Store::default();
    let comma = browser::decimal_comma();
    let units = match store.get("units").as_deref() {
        Some("imperial") => Units::Imperial,
        Some(_) => Units::Metric,
        None if browser::imperial() => Units::Imperial,
        None => Units::Metric,
    };
    let style = Style { units, comma };
    let loaded = load(fetched, style);
    let catalog = loaded.catalog.clone();
    let app = App::new(loaded, last_build(&store, &catalog), style);
    provide_context(app);
    let address = browser::hash();
    if !address.is_empty() && !browser::wants_demo() {
        app.open_link(&address);
    }
    keep(app, store);
    listen(app);
}

/// The maker's catalogue, or the demo and why.
fn load(fetched: Result<String, String>, style: Style) -> Loaded {
    let read = fetched.and_then(|text| {
        Catalog::read(&text)
            .map_err(|error| fault(&error, style).replacen("The file", "catalogue.json", 1))
    });
    match read {
        Ok((catalog, faults)) => Loaded { catalog: Arc::new(catalog), faults, refused: None },
        Err(why) => {
            // The demo is checked by the tests; an empty catalogue would still work.
            let (catalog, faults) = Catalog::read(DEMO).unwrap_or_default();
            Loaded { catalog: Arc::new(catalog), faults, refused: Some(why) }
        }
    }
}

/// The build of the last visit, or the first kit as it is sold.
fn last_build(store: &Store, catalog: &Catalog) -> Draft {
    let kept = store.get("current").filter(|_| !browser::wants_demo());
    let first = || catalog.draft(catalog.kits.first().map_or("", |kit| &kit.id));
    kept.and_then(|text| saved::read_file(&text).ok()).unwrap_or_else(first)
}

/// Keeps the build, the named builds and the units, as they change.
///
/// Made before the page is drawn, so that a build is kept before it is
/// answered: should an answer break, the build is still there.
fn keep(app: App, store: Store) {
    match store.get("builds").map(|text| (saved::read_all(&text), text)) {
        Some((Ok(builds), _)) => app.saved.set(builds),
        Some((Err(()), text)) => {
            store.set("builds:unreadable", &text);
        }
        None => {}
    }
    let copy = store.clone();
    Effect::new(move |_| {
        app.draft.with(|draft| copy.set("current", &saved::write_file(draft, "")))
    });
    let copy = store.clone();
    Effect::new(move |before: Option<()>| {
        let text = app.saved.with(|builds| saved::write_all(builds));
        // The first run has nothing new to keep.
        if before.is_some() && !copy.set("builds", &text) {
            app.unkept.set(true);
        }
    });
    Effect::new(move |_| store.set("units", app.units().key()));
    let timer = StoredValue::new_local(None::<Timeout>);
    Effect::new(move |_| {
        let catalog = app.catalog();
        let text = app.draft.with(|draft| link::write(draft, &catalog));
        let later = Timeout::new(ADDRESS_AFTER, move || {
            if browser::hash() != text {
                browser::set_hash(&text);
            }
        });
        timer.set_value(Some(later));
    });
}

/// Follows the address, and what the page's script says of offline use.
fn listen(app: App) {
    browser::on_hash(move |address| app.open_link(&address));
    let look = move || {
        let (state, waiting) = browser::offline_state();
        app.offline.set(state);
        app.update.set(waiting);
    };
    look();
    browser::heard("pitchline:offline-ready", move || {
        look();
        app.say("Ready offline: from now on it works without a signal.");
    });
    browser::heard("pitchline:update-waiting", look);
    browser::heard("pitchline:started", look);
}
