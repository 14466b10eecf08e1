//! A browser as far as keeping goes: tabs with histories, their stores, the shared one.

use super::super::document::{Document, Linked};
use super::super::edits::Edits;
use super::super::link;
use super::super::rest::Whole;
use super::super::saved;
use super::super::see::{self, Asked};
use super::super::shelf::tests::Map;
use super::super::shelf::{self, Keep};
use super::super::tab::{self, Arrival, Tab};
use pitchline_core::Draft;
use pitchline_core::catalog::Catalog;

/// Draws by the generator of Steele, Lea and Flood, "Fast splittable pseudorandom number
/// generators", 2014.
pub(super) struct Draws(pub(super) u64);

impl Draws {
    pub(super) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    pub(super) fn below(&mut self, count: usize) -> usize {
        (self.next() % count as u64) as usize
    }
}

/// A place in a tab's history.
#[derive(Clone)]
pub(super) struct Entry {
    pub(super) address: String,
    /// The tab's mark, once it has been there.
    pub(super) state: Option<String>,
    /// The build that the address says; none where it says none, or what nobody can read.
    pub(super) build: Option<Whole>,
    /// The view that it says.
    pub(super) view: Option<&'static str>,
}

/// What someone follows or types.
#[derive(Clone, Default)]
pub(super) struct Link {
    pub(super) address: String,
    pub(super) build: Option<Whole>,
    pub(super) view: Option<&'static str>,
}

/// A tab of the browser, with the page that it shows.
pub(super) struct Browsed {
    pub(super) session: Map,
    pub(super) entries: Vec<Entry>,
    pub(super) at: usize,
    pub(super) page: Page,
    /// What the reader saw last, and in which view.
    pub(super) seen: Whole,
    pub(super) view: &'static str,
    pub(super) record: Record,
    /// Whether its address asks for the demo.
    pub(super) demo: bool,
}

/// The builds that the reader has gone through, as somebody beside might have noted them.
#[derive(Clone, Default)]
pub(super) struct Record {
    pub(super) past: Vec<Whole>,
    /// The next one to be done again is the last.
    pub(super) future: Vec<Whole>,
    /// Whether the tab's store was ever short of room: then the oldest edits may be gone.
    pub(super) short: bool,
}

impl Record {
    /// The build was another before.
    pub(super) fn edited(&mut self, before: Whole) {
        self.past.push(before);
        self.future.clear();
    }

    /// Of a page that has just been loaded with all that was `kept`; what the page could bring back is
    /// checked against the builds when it does.
    pub(super) fn loaded(&mut self, document: &Document, kept: bool) {
        let edits = document.edits();
        let done =
            (edits.state() - edits.numbered().next().map_or(edits.state(), |(n, _)| n)) as usize;
        let undone = edits.numbered().count() - done;
        if !kept {
            // At most the link that was opened over an older build.
            assert!(done <= 1 && undone == 0);
            self.past = document.before().map(|before| (**before).clone()).into_iter().collect();
            self.future.clear();
            return;
        }
        if !self.short {
            assert_eq!(done, self.past.len(), "every edit is there after a reload");
            assert_eq!(undone, self.future.len(), "and every one that was undone");
        }
        assert!(done <= self.past.len() && undone <= self.future.len());
        self.past.drain(..self.past.len() - done);
        self.future.drain(..self.future.len() - undone);
    }
}

pub(super) struct Page {
    pub(super) document: Document,
    pub(super) tab: Tab,
    pub(super) see: String,
    pub(super) known: String,
    pub(super) text: String,
    pub(super) edits: Edits,
    pub(super) fresh: bool,
}

/// A saved build as the record has it.
pub(super) struct Saved {
    pub(super) name: String,
    pub(super) text: String,
    /// Whether saving under its name may replace it.
    pub(super) ours: bool,
}

pub(super) struct World {
    pub(super) catalog: Catalog,
    pub(super) local: Map,
    pub(super) tabs: Vec<Browsed>,
    pub(super) clock: u64,
    pub(super) saved: Vec<Saved>,
    /// What a new tab must begin with; none where that is not known.
    pub(super) last: Option<Whole>,
    pub(super) draws: Draws,
}

/// All of a build that can be compared.
pub(super) fn said(whole: &Whole) -> (Draft, Vec<String>) {
    let mut pieces: Vec<String> = whole.rest.pieces().chain(whole.rest.link_version()).collect();
    pieces.sort();
    (whole.draft.clone(), pieces)
}

#[track_caller]
pub(super) fn assert_same(found: &Whole, wanted: &Whole, what: &str) {
    assert_eq!(said(found), said(wanted), "{what}");
}

impl World {
    pub(super) fn new(seed: u64) -> Self {
        let catalog = Catalog::read(include_str!("../../../catalog/catalogue.json")).unwrap().0;
        let mut world = Self {
            catalog,
            local: Map::default(),
            tabs: Vec::new(),
            clock: 1_700_000_000_000,
            saved: Vec::new(),
            last: None,
            draws: Draws(seed),
        };
        world.last = Some(world.first());
        world.new_tab(Link::default(), false);
        world
    }

    pub(super) fn first(&self) -> Whole {
        self.catalog.draft(&self.catalog.kits[0].id).into()
    }

    pub(super) fn now(&mut self) -> (u64, String) {
        // Clocks stand still and jump back.
        self.clock = match self.draws.below(20) {
            0 => self.clock - 1000,
            1 => self.clock,
            _ => self.clock + 17,
        };
        (self.clock, format!("{:x}", self.draws.next()))
    }

    /// What the page does when it is loaded: see `start.rs` and `keeping.rs`.
    pub(super) fn load(&mut self, session: &Map, entry: &mut Entry, demo: bool) -> Page {
        let (now, letters) = self.now();
        let (address, view) = see::part(&entry.address);
        let (id, ours) = (entry.state.clone(), entry.state.is_some());
        let arrival = Arrival { id, ours, address, demo, now, letters };
        let start = tab::begin(&self.local, session, &arrival, &self.catalog);
        entry.state = Some(start.tab.id().into());
        let mut document = Document::kept(start.build, start.edits, &self.catalog);
        let opened = start.link.map(|link| document.open_link(&link, &self.catalog));
        if !start.fresh {
            shelf::take_over(&self.local);
        }
        let (known, text, fresh) = (entry.address.clone(), String::new(), start.fresh);
        let see = view.unwrap_or_default();
        let edits = Edits::default();
        let mut page = Page { document, tab: start.tab, see, known, text, edits, fresh };
        let linked = matches!(opened, Some(Linked::Opened(_)));
        self.keep(session, &mut page, true, linked);
        page
    }

    /// What it does after every change of the build.
    pub(super) fn keep(&mut self, session: &Map, page: &mut Page, first: bool, linked: bool) {
        let text = page.document.text();
        assert_eq!(text, saved::write_file(&page.document.build, "").to_string());
        let edits = page.document.edits().clone();
        let same = page.text == text;
        let still = same && page.edits.is(&edits);
        page.edits = edits.clone();
        page.text = text.clone();
        if first && page.fresh {
            return;
        }
        if !(still && page.tab.is_kept()) {
            page.tab.keep(session, &text, &edits);
        }
        if !same && (!first || linked || self.local.get("current").is_none()) {
            let (now, letters) = self.now();
            let there = self.local.get("current");
            if page.tab.share(&self.local, &text, now, &letters) {
                self.last = Some(page.document.build.clone());
            } else {
                assert_eq!(self.local.get("current"), there);
            }
        }
    }

    pub(super) fn new_tab(&mut self, link: Link, demo: bool) {
        let session = Map::default();
        let Link { address, build, view } = link;
        let mut entry = Entry { address, state: None, build: build.clone(), view };
        let last = self.last.clone();
        let page = self.load(&session, &mut entry, demo);
        let seen = page.document.build.clone();
        if demo {
            assert_same(&seen, &self.first(), "the demo");
        } else if let Some(build) = build {
            assert_same(&seen, &build, "a link in a new tab");
        } else if let Some(last) = last {
            assert_same(&seen, &last, "a new tab begins with the last build");
        }
        let (view, mut record) = (view.unwrap_or_default(), Record::default());
        record.loaded(&page.document, false);
        let entries = vec![entry];
        self.tabs.push(Browsed { session, entries, at: 0, page, seen, view, record, demo });
    }

    /// The page is loaded anew, at this place of the history.
    pub(super) fn load_again(&mut self, n: usize, at: usize) {
        let mut tab = self.tabs.swap_remove(n);
        let kept = tab.page.tab.is_kept();
        let mut entry = tab.entries[at].clone();
        // Once the address has followed it needs no store.
        let followed = entry.build.as_ref().is_some_and(|build| said(build) == said(&tab.seen));
        tab.page = self.load(&tab.session, &mut entry, tab.demo);
        let build = &tab.page.document.build;
        if kept || followed && !tab.demo {
            assert_same(build, &tab.seen, "wherever the page is loaded anew, it has what was kept");
        }
        tab.record.loaded(&tab.page.document, kept);
        tab.seen = build.clone();
        tab.view = entry.view.unwrap_or_default();
        tab.entries[at] = entry;
        tab.at = at;
        self.tabs.push(tab);
    }

    /// Back or forward within the loaded page.
    pub(super) fn travel(&mut self, n: usize, at: usize) {
        let mut tab = self.tabs.swap_remove(n);
        tab.at = at;
        self.arrive(&mut tab);
        self.tabs.push(tab);
    }

    /// Someone follows a link within the page, or puts another fragment into the address.
    pub(super) fn paste(&mut self, n: usize, link: Link) {
        let mut tab = self.tabs.swap_remove(n);
        let Link { address, build, view } = link;
        if address != tab.entries[tab.at].address {
            tab.entries.truncate(tab.at + 1);
            tab.entries.push(Entry { address, state: None, build, view });
            tab.at += 1;
            self.arrive(&mut tab);
        }
        self.tabs.push(tab);
    }

    /// The tab is at another place of its history: see `address.rs`.
    fn arrive(&mut self, tab: &mut Browsed) {
        let entry = &mut tab.entries[tab.at];
        let document = &mut tab.page.document;
        let before = entry.state.is_some();
        let Asked { build, view } = see::asked(&entry.address, before);
        if let Some(link) = build
            && matches!(document.open_link(&link, &self.catalog), Linked::Opened(_))
        {
            tab.record.edited(tab.seen.clone());
        }
        if let Some(view) = view {
            tab.page.see = view;
        }
        match (&entry.build, before) {
            (Some(wanted), false) => assert_same(&document.build, wanted, "a link has its build"),
            _ => assert_same(&document.build, &tab.seen, "no way to a view changes the build"),
        }
        // A link of earlier versions names no view; a place on the page leaves it as it is.
        tab.view = match entry.view {
            None if !before && entry.build.is_none() => tab.view,
            view => view.unwrap_or_default(),
        };
        entry.state = Some(tab.page.tab.id().into());
        tab.page.known = entry.address.clone();
        tab.seen = document.build.clone();
        let Browsed { session, page, .. } = tab;
        self.keep(session, page, false, false);
    }

    /// The address follows build and view.
    pub(super) fn follow(&mut self, n: usize) {
        let tab = &mut self.tabs[n];
        let text = see::join(&link::write(&tab.page.document.build, &self.catalog), &tab.page.see);
        let entry = &mut tab.entries[tab.at];
        assert_eq!(entry.address, tab.page.known);
        if text.len() > link::LONGEST {
            return;
        }
        entry.address = text.clone();
        entry.build = Some(tab.seen.clone());
        entry.view = Some(tab.view);
        tab.page.known = text;
    }

    pub(super) fn change(&mut self, n: usize, change: impl FnOnce(&mut Document, &Catalog)) {
        let mut tab = self.tabs.swap_remove(n);
        let (before, edits) = (tab.page.document.text(), tab.page.document.edits().clone());
        change(&mut tab.page.document, &self.catalog);
        if tab.page.document.text() != before {
            tab.record.edited(tab.seen);
        } else if !tab.page.document.edits().is(&edits) {
            // What was typed is what stood there before; all the same something was done.
            tab.record.future.clear();
        }
        tab.seen = tab.page.document.build.clone();
        let Browsed { session, page, .. } = &mut tab;
        self.keep(session, page, false, false);
        self.tabs.push(tab);
    }

    /// Undo, or Redo: the build is the one that the record has.
    pub(super) fn turn(&mut self, n: usize, again: bool) {
        let mut tab = self.tabs.swap_remove(n);
        let Browsed { page, record, session, seen, .. } = &mut tab;
        let (from, to) = if again {
            (&mut record.future, &mut record.past)
        } else {
            (&mut record.past, &mut record.future)
        };
        let document = &mut page.document;
        let done = if again { document.redo(&self.catalog) } else { document.undo(&self.catalog) };
        if let Some(wanted) = from.pop() {
            assert!(done, "it can be had");
            assert_same(&document.build, &wanted, "the build of the record");
            to.push(std::mem::replace(seen, document.build.clone()));
        } else {
            assert!(!done, "there is none");
        }
        self.keep(session, page, false, false);
        self.tabs.push(tab);
    }
}
