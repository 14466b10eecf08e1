//! Keeps the build and the units as they change, and hears of what other tabs save. What to open and
//! what to keep is worked out in `tab`, `shelf` and `document`.

use super::address::Here;
use super::edits::Edits;
use super::store::App;
use super::tab::{Start, Tab};
use super::{link, saved, shelf};
use crate::platform::{self, Store};
use crate::text::keep;
use leptos::prelude::*;

/// The browser's stores, and the tab's corner in them.
pub(super) struct Keeper {
    pub(super) local: Store,
    pub(super) session: Store,
    pub(super) tab: Tab,
    pub(super) here: Here,
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
        self.document.with_untracked(|now| saved::file_text(&now.build, created))
    }

    /// Reads the list of saved builds again.
    pub(super) fn look_at_shelf(self) {
        let list = self.keeper.with_value(|keeper| Some(shelf::list(&keeper.as_ref()?.local)));
        self.saved.set(list.unwrap_or_default());
    }

    /// Opens what the address asks for, and keeps what changes for as long as the page lives.
    pub fn begin_keeping(self, local: Store, session: Store, start: Start) {
        let Start { tab, told, link, fresh, first, .. } = start;
        self.asks_kit.set(first && self.loaded.with_untracked(|l| l.catalog.kits.len() > 1));
        let here = Here::begin(&session, tab.id());
        self.unread.set(told);
        let linked = link.is_some_and(|link| self.open_link(&link));
        if !fresh {
            shelf::take_over(&local);
        }
        self.begin_at(&here);
        self.keeper.set_value(Some(Keeper { local: local.clone(), session, tab, here }));
        self.begin_theme();
        self.look_at_shelf();
        for event in ["storage", "pageshow"] {
            platform::heard(event, move || self.look_at_shelf());
        }
        self.keep_build(fresh, linked);
        let units = Memo::new(move |_| self.units().key());
        Effect::new(move |before: Option<()>| {
            let units = units.get();
            if (before.is_some() || !fresh) && !local.set("units", units) {
                self.say(keep::NOT_KEPT);
            }
        });
        self.follow_address();
    }

    /// Keeps the build once it has been answered: should an answer break, the last good build is the
    /// one that comes back. What is there at the start needs no keeping where it is `fresh`, so that a
    /// look at the demo leaves the last build alone; and it is no newer than other tabs' builds, unless
    /// it has just been opened.
    fn keep_build(self, fresh: bool, linked: bool) {
        Effect::new(move |before: Option<(String, Edits)>| {
            // The answers come first.
            let _ = self.found();
            let waits = self.waits();
            let (text, edits) =
                self.document.with(|document| (document.text(), document.edits().clone()));
            let first = before.is_none();
            if first && fresh {
                platform::tell_kept(!waits);
                return (text, edits);
            }
            let same = before.as_ref().is_some_and(|(before, _)| *before == text);
            let still = same && before.is_some_and(|(_, before)| before.is(&edits));
            let kept = self.keeper.try_update_value(|keeper| {
                let Keeper { local, session, tab, .. } = keeper.as_mut()?;
                let own = still && tab.is_kept() || tab.keep(session, &text, &edits);
                let share = !same && (!first || linked || local.get("current").is_none());
                let common =
                    !share || tab.share(local, &text, platform::now() as u64, &platform::letters());
                Some((own, common))
            });
            let (own, common) = kept.flatten().unwrap_or_default();
            platform::tell_kept(own && !waits);
            let fails = !(own && common);
            if fails && !same {
                self.say(keep::NOT_KEPT);
            }
            (text, edits)
        });
    }
}
