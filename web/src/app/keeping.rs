//! Keeps the build, the named builds and the units, as they change, and follows the address.

use super::store::App;
use super::{link, saved};
use crate::platform::{self, Store};
use crate::text::page;
use leptos::prelude::*;
use pitchline_core::Draft;
use std::time::Duration;

/// After the last edit, until the address follows.
const ADDRESS_AFTER: Duration = Duration::from_millis(300);
/// In which a busy browser may still load the address before it.
const SETTLED_AFTER: Duration = Duration::from_millis(1000);

impl App {
    /// The build as a link's text; tracked.
    #[must_use]
    pub fn link(self) -> String {
        let catalog = self.catalog();
        self.draft(|draft| link::write(draft, &catalog))
    }

    /// The build as a file.
    #[must_use]
    pub fn file(self, created: &str) -> String {
        platform::json(&saved::write_file(&self.peek(Draft::clone), created))
    }

    /// Opens what was kept, and keeps what changes for as long as the page lives.
    ///
    /// A build is kept once it has been answered: should an answer break, or a part be missing, the
    /// last good build is the one that comes back.
    pub fn begin_keeping(self, store: Store) {
        let address = platform::hash();
        // An address that we wrote ourselves says less than what was kept: it may be an edit behind.
        let ours = store.get("address").is_some_and(|own| own.lines().any(|own| own == address));
        if !address.is_empty() && !ours && !platform::wants_demo() {
            self.open_link(&address);
        }
        if let Some(text) = store.get("builds") {
            let (builds, whole) = saved::read_all(&text);
            if !whole {
                // Not ours to throw away.
                store.set("builds:unreadable", &text);
            }
            self.restore_saved(builds);
        }
        // What is there already needs no keeping; so a look at the demo leaves the
        // last build alone until something is changed.
        let fresh = platform::wants_demo();
        self.keep(store.clone(), "current", fresh, move || {
            // The answers come first.
            let answered = self.found().is_some();
            let text = self.draft(|draft| platform::json(&saved::write_file(draft, "")));
            answered.then_some(text)
        });
        self.keep(store.clone(), "builds", fresh, move || {
            Some(platform::json(&saved::write_all(&self.saved())))
        });
        self.keep(store.clone(), "units", fresh, move || Some(self.units().key().into()));
        self.follow_address(store, address);
    }

    /// Keeps a text as it changes; what is there at the start only where it is not `fresh`.
    fn keep(
        self,
        store: Store,
        key: &'static str,
        fresh: bool,
        text: impl Fn() -> Option<String> + Send + Sync + 'static,
    ) {
        let text = Memo::new(move |_| text());
        Effect::new(move |before: Option<()>| {
            let text = text.get();
            if let Some(text) = text.filter(|_| before.is_some() || !fresh)
                && !store.set(key, &text)
            {
                self.say(page::NOT_KEPT);
            }
        });
    }

    /// The address follows the build, unless somebody else has just changed it: then a link is being
    /// opened, of which the page has not been told yet.
    fn follow_address(self, store: Store, address: String) {
        let known = StoredValue::new(address);
        platform::on_hash(move |address| {
            self.open_link(&address);
            known.set_value(address);
        });
        let text = Memo::new(move |_| self.found().is_some().then(|| self.link()));
        let timer = StoredValue::new(None::<TimeoutHandle>);
        Effect::new(move |_| {
            if let Some(timer) = timer.try_update_value(Option::take).flatten() {
                timer.clear();
            }
            // Without a part it says what was asked for.
            let Some(text) = text.get() else { return };
            let store = store.clone();
            let follow = move || {
                let now = platform::hash();
                if now != known.get_value() {
                    return;
                }
                if now == text {
                    store.set("address", &text);
                    return;
                }
                store.set("address", &format!("{now}\n{text}"));
                platform::set_hash(&text);
                known.set_value(platform::hash());
                let settled = move || _ = store.set("address", &text);
                timer.set_value(set_timeout_with_handle(settled, SETTLED_AFTER).ok());
            };
            timer.set_value(set_timeout_with_handle(follow, ADDRESS_AFTER).ok());
        });
    }
}
