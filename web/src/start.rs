//! The start of the page, and where its state meets the browser.

use crate::ask;
use crate::browser::{self, Store};
use crate::dom;
use crate::state::{App, Loaded, Model, link, saved};
use crate::text::{Style, Units, fault, page};
use any_spawner::Executor;
use gloo_timers::callback::Timeout;
use pitchline_core::Draft;
use pitchline_core::catalog::Catalog;
use reactive_graph::effect::RenderEffect;
use reactive_graph::owner::Owner;
use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;

/// Id of the element that becomes the page. A host that loads the module for
/// its answers has no such thing.
const PLACE: &str = "pitchline-page";
/// The maker's file.
const CATALOGUE: &str = "catalogue.json";
/// The demo, which stands in where the maker's file cannot be read. The build
/// puts it beside that file.
const DEMO: &str = "demo.json";

/// Milliseconds after the last edit at which the address follows.
const ADDRESS_AFTER: u32 = 300;
/// Milliseconds in which a busy browser may still load the address before it.
const SETTLED_AFTER: u32 = 1000;

/// Starts the page: reads the maker's parts, finds the last build, and draws.
/// Does nothing where there is no page, as when another program loads the module.
pub fn start() {
    if !browser::exists(PLACE) {
        return;
    }
    browser::watch_panics();
    // Already there only if the page was started twice.
    let _ = Executor::init_wasm_bindgen();
    browser::spawn(async {
        let loaded = load().await;
        let owner = Owner::new();
        owner.with(|| {
            let (app, keepers) = begin(loaded);
            // The first screen in the HTML makes way for the living one.
            if let Some(place) = browser::clear(PLACE) {
                // As long as the page lives.
                std::mem::forget((dom::mount(&place, ask::page(app)), keepers));
                // Where a link leads was not there yet when the browser looked.
                browser::go_to(&browser::hash());
            }
        });
        std::mem::forget(owner);
    });
}

fn begin(loaded: Loaded) -> (App, Vec<RenderEffect<()>>) {
    let store = Store::default();
    let comma = browser::decimal_comma();
    let units = match store.get("units").as_deref() {
        Some("imperial") => Units::Imperial,
        Some(_) => Units::Metric,
        None if browser::imperial() => Units::Imperial,
        None => Units::Metric,
    };
    let style = Style { units, comma };
    let draft = last_build(&store, &loaded.catalog);
    let app = App::new(loaded, draft, style);
    let address = browser::hash();
    // An address that we wrote ourselves says less than what was kept: it may
    // be an edit behind, and a part from elsewhere does not fit into it.
    let ours = store.get("address").is_some_and(|own| own.lines().any(|own| own == address));
    if !address.is_empty() && !ours && !browser::wants_demo() {
        app.open_link(&address);
    }
    let known = Rc::new(RefCell::new(address));
    let keepers = keep(app, store, known.clone());
    listen(app, known);
    (app, keepers)
}

/// The maker's catalogue, or the demo and why.
async fn load() -> Loaded {
    let read = |text: String| Catalog::read(&text).map_err(|e| fault(&e, Style::default()));
    let (read, refused) = match browser::fetch(CATALOGUE).await.and_then(read) {
        Ok(read) => (read, None),
        Err(why) => {
            let demo = browser::fetch(DEMO).await.and_then(read);
            // An empty catalogue still works: every part is then typed in.
            (demo.unwrap_or_default(), Some(why))
        }
    };
    Loaded { catalog: Arc::new(read.0), faults: read.1, refused }
}

/// The build of the last visit, or the first kit as it is sold.
fn last_build(store: &Store, catalog: &Catalog) -> Draft {
    let kept = store.get("current").filter(|_| !browser::wants_demo());
    let first = || catalog.draft(catalog.kits.first().map_or("", |kit| &kit.id));
    kept.and_then(|text| Some(saved::read_file(&text).ok()?.0)).unwrap_or_else(first)
}

/// Keeps the build, the named builds and the units, as they change.
///
/// A build is kept once it has been answered: should an answer break, or a part be missing, the
/// last good build is the one that comes back.
///
/// The address follows too, unless somebody else has just changed it: then a link is being opened,
/// of which the page has not been told yet.
fn keep(app: App, store: Store, known: Rc<RefCell<String>>) -> Vec<RenderEffect<()>> {
    if let Some(text) = store.get("builds") {
        let (builds, whole) = saved::read_all(&text);
        if !whole {
            // Not ours to throw away.
            store.set("builds:unreadable", &text);
        }
        app.change(|model| model.saved = builds);
    }
    let kept = |model: &Model| {
        [
            browser::json(&saved::write_file(&model.draft, "")),
            browser::json(&saved::write_all(&model.saved)),
            model.style.units.key().to_string(),
        ]
    };
    // What is there already needs no keeping; so a look at the demo leaves the
    // last build alone until something is changed.
    let last = RefCell::new(if browser::wants_demo() {
        app.peek(kept)
    } else {
        [String::new(), String::new(), String::new()]
    });
    let timer = RefCell::new(None::<Timeout>);
    let settling = Rc::new(RefCell::new(None::<Timeout>));
    let keeper: Box<dyn Fn(Option<()>)> = Box::new(move |_| {
        let now = app.read(kept);
        let mut last = last.borrow_mut();
        let keys = ["current", "builds", "units"];
        let mut refused = false;
        let whole = app.read(|model| model.draft.unfilled().is_empty());
        for ((key, now), before) in keys.into_iter().zip(now).zip(&mut *last) {
            if *before != now && (whole || key != "current") {
                refused |= !store.set(key, &now);
                *before = now;
            }
        }
        if refused {
            // Said after this run: what runs here may not change what it reads.
            browser::later(0, move || app.say(page::NOT_KEPT));
        }
        settling.take();
        timer.take();
        if !whole {
            // The address says what was asked for.
            return;
        }
        let (store, known, settling) = (store.clone(), known.clone(), settling.clone());
        let later = Timeout::new(ADDRESS_AFTER, move || {
            let now = browser::hash();
            if now != *known.borrow() {
                return;
            }
            let text = app.peek(|model| link::write(&model.draft, &model.loaded.catalog));
            if now == text {
                store.set("address", &text);
                return;
            }
            store.set("address", &format!("{now}\n{text}"));
            browser::set_hash(&text);
            known.replace(browser::hash());
            let settled = Timeout::new(SETTLED_AFTER, move || _ = store.set("address", &text));
            settling.replace(Some(settled));
        });
        timer.replace(Some(later));
    });
    vec![RenderEffect::new(keeper)]
}

/// Follows the address, and what the page's script says of offline use.
fn listen(app: App, known: Rc<RefCell<String>>) {
    browser::on_hash(move |address| {
        app.open_link(&address);
        known.replace(address);
    });
    let look = move || {
        let (state, waiting) = browser::offline_state();
        app.change(|model| {
            model.offline = state;
            model.update = waiting;
        });
    };
    look();
    browser::heard("pitchline:offline-ready", look);
    browser::heard("pitchline:update-waiting", look);
    browser::heard("pitchline:started", look);
}
