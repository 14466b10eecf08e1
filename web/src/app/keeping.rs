//! Keeps the build and the units as they change, hears of what other tabs save, and follows the
//! address. What to open and what to keep is worked out in `tab`, `shelf` and `document`.

use super::store::App;
use super::tab::{Start, Tab};
use super::{link, saved, see, shelf};
use crate::platform::{self, Store};
use crate::text::page;
use leptos::prelude::*;
use std::time::Duration;

/// After the last edit, until the address follows.
const ADDRESS_AFTER: Duration = Duration::from_millis(300);
/// In which a busy browser may still load the address before it.
const SETTLED_AFTER: Duration = Duration::from_millis(1000);

/// The browser's stores, and the tab's corner in them.
pub(super) struct Keeper {
    pub(super) local: Store,
    session: Store,
    tab: Tab,
    /// The fragment of which the page has been told, or that it wrote.
    known: String,
}

impl App {
    /// The build as a link's text; tracked.
    #[must_use]
    pub fn link(self) -> String {
        let catalog = self.catalog();
        self.document.with(|document| link::write(&document.build, &catalog))
    }

    /// The build as a file.
    #[must_use]
    pub fn file(self, created: &str) -> String {
        let file = self.document.with_untracked(|now| saved::write_file(&now.build, created));
        serde_json::to_string_pretty(&file).unwrap_or_default()
    }

    /// Reads the list of saved builds again.
    pub(super) fn look_at_shelf(self) {
        let list = self.keeper.with_value(|keeper| Some(shelf::list(&keeper.as_ref()?.local)));
        self.saved.set(list.unwrap_or_default());
    }

    /// Opens what the address asks for, and keeps what changes for as long as the page lives.
    pub fn begin_keeping(self, local: Store, session: Store, start: Start) {
        let Start { tab, told, link, fresh, .. } = start;
        platform::mark(tab.id());
        self.unread.set(told);
        let linked = link.is_some_and(|link| self.open_link(&link));
        if !fresh {
            shelf::take_over(&local);
        }
        let known = platform::hash();
        self.see.set(see::part(&known).1.unwrap_or_default());
        self.keeper.set_value(Some(Keeper { local: local.clone(), session, tab, known }));
        self.look_at_shelf();
        for event in ["storage", "pageshow"] {
            platform::heard(event, move || self.look_at_shelf());
        }
        self.keep_build(fresh, linked);
        let units = Memo::new(move |_| self.units().key());
        Effect::new(move |before: Option<()>| {
            let units = units.get();
            if (before.is_some() || !fresh) && !local.set("units", units) {
                self.say(page::NOT_KEPT);
            }
        });
        self.follow_address();
    }

    fn know(self, fragment: String) {
        self.keeper.update_value(|keeper| {
            if let Some(keeper) = keeper {
                keeper.known = fragment;
            }
        });
    }

    fn with_tab<T>(self, act: impl FnOnce(&Tab, &Store) -> T) -> Option<T> {
        self.keeper.with_value(|keeper| keeper.as_ref().map(|k| act(&k.tab, &k.session)))
    }

    /// Keeps the build once it has been answered: should an answer break, the last good build is the
    /// one that comes back. What is there at the start needs no keeping where it is `fresh`, so that a
    /// look at the demo leaves the last build alone; and it is no newer than other tabs' builds, unless
    /// it has just been opened.
    fn keep_build(self, fresh: bool, linked: bool) {
        Effect::new(move |before: Option<String>| {
            // The answers come first.
            let _ = self.found();
            let waits = self.waits();
            let build = self.document.with(|document| saved::write_file(&document.build, ""));
            let text = build.to_string();
            let first = before.is_none();
            if first && fresh {
                platform::tell_kept(!waits);
                return text;
            }
            let same = before.as_ref() == Some(&text);
            let kept = self.keeper.try_update_value(|keeper| {
                let Keeper { local, session, tab, known } = keeper.as_mut()?;
                let known = &see::part(known).0;
                let own = if same && tab.is_kept() {
                    tab.takes_in(session, known);
                    true
                } else {
                    tab.keep(session, &text, known)
                };
                let share = !same && (!first || linked || local.get("current").is_none());
                let common =
                    !share || tab.share(local, &text, platform::now() as u64, &platform::letters());
                Some((own, common))
            });
            let (own, common) = kept.flatten().unwrap_or_default();
            platform::tell_kept(own && !waits);
            let fails = !(own && common);
            if fails && !same {
                self.say(page::NOT_KEPT);
            }
            text
        });
    }

    /// The address follows the build, unless somebody else has just changed it: then a link is being
    /// opened, of which the page has not been told yet.
    fn follow_address(self) {
        // A new place in the history is this tab's too, also one of the same address.
        let mark = move || _ = self.with_tab(|tab, _| platform::mark(tab.id()));
        platform::heard("popstate", mark);
        platform::on_hash(move |address| {
            mark();
            let (build, view) = see::part(&address);
            // A link of earlier versions names no view, and a place on the page no build.
            let opened = self.open_link(&build);
            if let Some(view) = view.or_else(|| opened.then(String::new)) {
                self.look_at(&view);
            }
            self.know(address);
        });
        let text = Memo::new(move |_| {
            let _ = self.found();
            (self.link(), self.see())
        });
        let timer = StoredValue::new(None::<TimeoutHandle>);
        Effect::new(move |_| {
            if let Some(timer) = timer.try_update_value(Option::take).flatten() {
                timer.clear();
            }
            let (build, view) = text.get();
            let text = see::join(&build, &view);
            let follow = move || {
                let now = platform::hash();
                let told =
                    |keeper: &Option<Keeper>| keeper.as_ref().is_some_and(|k| k.known == now);
                if !self.keeper.with_value(told) || text.len() > link::LONGEST {
                    return;
                }
                if now == text {
                    self.with_tab(|tab, session| tab.writes(session, &[&build]));
                    return;
                }
                self.with_tab(|tab, session| {
                    tab.writes(session, &[&see::part(&now).0, &build]);
                    platform::set_hash(&text, tab.id());
                });
                self.know(platform::hash());
                let settled =
                    move || _ = self.with_tab(|tab, session| tab.writes(session, &[&build]));
                timer.set_value(set_timeout_with_handle(settled, SETTLED_AFTER).ok());
            };
            timer.set_value(set_timeout_with_handle(follow, ADDRESS_AFTER).ok());
        });
    }
}
