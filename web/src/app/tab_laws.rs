//! Tabs, their histories, their stores and the one that they share, in any order of events, against a
//! plain record of what people were shown and told was kept: nothing of it may be lost.

use super::document::{Document, Linked};
use super::link;
use super::rest::Whole;
use super::saved;
use super::shelf::tests::Map;
use super::shelf::{self, Keep, State};
use super::tab::{self, Arrival, Tab};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, Slot};

/// Steps of the long walk.
const STEPS: usize = 10_000;
const NAMES: [&str; 4] = ["Mine", "Pier & back", "Été", "Heavy"];
/// What a later version's links may say.
const LATER: [&str; 5] =
    ["v=2", "hat=red", "place.surface=ice", "rider.mood=%FF", "lights.front=3"];

/// Draws by the generator of Steele, Lea and Flood, "Fast splittable pseudorandom number
/// generators", 2014.
struct Draws(u64);

impl Draws {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    fn below(&mut self, count: usize) -> usize {
        (self.next() % count as u64) as usize
    }
}

/// A place in a tab's history, and the build that it must bring; none where it names none.
#[derive(Clone)]
struct Entry {
    address: String,
    state: Option<String>,
    build: Option<Whole>,
}

/// A tab of the browser, with the page that it shows.
struct Browsed {
    session: Map,
    entries: Vec<Entry>,
    at: usize,
    page: Page,
    /// What the reader saw last.
    seen: Whole,
    /// Whether its address asks for the demo.
    demo: bool,
}

struct Page {
    document: Document,
    tab: Tab,
    known: String,
    text: String,
    fresh: bool,
}

/// A saved build as the record has it.
struct Saved {
    name: String,
    text: String,
    /// Whether saving under its name may replace it.
    ours: bool,
}

struct World {
    catalog: Catalog,
    local: Map,
    tabs: Vec<Browsed>,
    clock: u64,
    saved: Vec<Saved>,
    /// What a new tab must begin with; none where that is not known.
    last: Option<Whole>,
    draws: Draws,
}

/// All of a build that can be compared.
fn said(whole: &Whole) -> (Draft, Vec<String>) {
    let mut pieces: Vec<String> = whole.rest.pieces().chain(whole.rest.link_version()).collect();
    pieces.sort();
    (whole.draft.clone(), pieces)
}

#[track_caller]
fn assert_same(found: &Whole, wanted: &Whole, what: &str) {
    assert_eq!(said(found), said(wanted), "{what}");
}

impl World {
    fn new(seed: u64) -> Self {
        let catalog = Catalog::read(include_str!("../../catalog/catalogue.json")).unwrap().0;
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
        world.new_tab(String::new(), None, false);
        world
    }

    fn first(&self) -> Whole {
        self.catalog.draft(&self.catalog.kits[0].id).into()
    }

    fn now(&mut self) -> (u64, String) {
        // Clocks stand still and jump back.
        self.clock = match self.draws.below(20) {
            0 => self.clock - 1000,
            1 => self.clock,
            _ => self.clock + 17,
        };
        (self.clock, format!("{:x}", self.draws.next()))
    }

    /// What the page does when it is loaded: see `start.rs` and `keeping.rs`.
    fn load(&mut self, session: &Map, entry: &mut Entry, demo: bool) -> Page {
        let (now, letters) = self.now();
        let arrival =
            Arrival { id: entry.state.clone(), address: entry.address.clone(), demo, now, letters };
        let start = tab::begin(&self.local, session, &arrival, &self.catalog);
        entry.state = Some(start.tab.id().into());
        let mut document = Document::from(start.build);
        let opened = start.link.map(|link| document.open_link(&link, &self.catalog));
        if !start.fresh {
            shelf::take_over(&self.local);
        }
        let known = entry.address.clone();
        let text = String::new();
        let mut page = Page { document, tab: start.tab, known, text, fresh: start.fresh };
        let linked = matches!(opened, Some(Linked::Opened(_)));
        self.keep(session, &mut page, true, linked);
        page
    }

    /// What it does after every change of the build.
    fn keep(&mut self, session: &Map, page: &mut Page, first: bool, linked: bool) {
        let text = saved::write_file(&page.document.build, "").to_string();
        let same = page.text == text;
        page.text = text.clone();
        if first && page.fresh {
            return;
        }
        if same && page.tab.is_kept() {
            page.tab.takes_in(session, &page.known);
        } else {
            page.tab.keep(session, &text, &page.known);
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

    fn new_tab(&mut self, address: String, build: Option<Whole>, demo: bool) {
        let session = Map::default();
        let mut entry = Entry { address, state: None, build: build.clone() };
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
        self.tabs.push(Browsed { session, entries: vec![entry], at: 0, page, seen, demo });
    }

    /// The page is loaded anew, at this place of the history.
    fn load_again(&mut self, n: usize, at: usize) {
        let mut tab = self.tabs.swap_remove(n);
        let before = &tab.entries[tab.at];
        // Once the address has followed it needs no store.
        let followed = before.build.as_ref().is_some_and(|build| said(build) == said(&tab.seen));
        let kept = tab.page.tab.is_kept();
        let stays = at == tab.at;
        if !stays && tab.session.get(&format!("tab:{}:address", tab.page.tab.id())).is_some() {
            // Whoever goes elsewhere has been here for more than a second.
            tab.page.tab.writes(&tab.session, &[&tab.page.known]);
        }
        let mut entry = tab.entries[at].clone();
        // Places that a copied tab brought along may say a little less than their store.
        let own = entry.state.as_deref() == Some(tab.page.tab.id());
        tab.page = self.load(&tab.session, &mut entry, tab.demo);
        let build = &tab.page.document.build;
        if stays && (kept || followed && !tab.demo) {
            assert_same(build, &tab.seen, "a reload brings what was kept");
        }
        if let (false, false, Some(wanted)) = (stays || !own, tab.demo, &entry.build)
            && tab.entries[tab.at].address != entry.address
        {
            assert_same(build, wanted, "a place in the history brings its build");
            let past = tab.page.document.past.last();
            let there =
                said(build) == said(&tab.seen) || past.is_some_and(|p| said(p) == said(&tab.seen));
            assert!(
                there || !kept || tab.entries[tab.at].state != entry.state,
                "what was left can be had back"
            );
        }
        tab.seen = build.clone();
        tab.entries[at] = entry;
        tab.at = at;
        self.tabs.push(tab);
    }

    /// Back or forward within the loaded page.
    fn travel(&mut self, n: usize, at: usize) {
        let mut tab = self.tabs.swap_remove(n);
        let moved = tab.entries[at].address != tab.entries[tab.at].address;
        tab.at = at;
        tab.entries[at].state = Some(tab.page.tab.id().into());
        if moved {
            self.hash_change(&mut tab);
        }
        self.tabs.push(tab);
    }

    /// Someone put another fragment into the address.
    fn paste(&mut self, n: usize, address: String, build: Option<Whole>) {
        let mut tab = self.tabs.swap_remove(n);
        if address != tab.entries[tab.at].address {
            tab.entries.truncate(tab.at + 1);
            tab.entries.push(Entry { address, state: None, build });
            tab.at += 1;
            self.hash_change(&mut tab);
        }
        self.tabs.push(tab);
    }

    fn hash_change(&mut self, tab: &mut Browsed) {
        let entry = &mut tab.entries[tab.at];
        let document = &mut tab.page.document;
        let opened = matches!(document.open_link(&entry.address, &self.catalog), Linked::Opened(_));
        if opened {
            let past = document.past.last().expect("the build before");
            assert_same(past, &tab.seen, "undo brings back what a link took the place of");
        }
        if let Some(wanted) = &entry.build {
            assert_same(&document.build, wanted, "a link brings its build");
        } else {
            assert_same(&document.build, &tab.seen, "a place on the page is no build");
        }
        entry.state = Some(tab.page.tab.id().into());
        tab.page.known = entry.address.clone();
        tab.seen = document.build.clone();
        let Browsed { session, page, .. } = tab;
        self.keep(session, page, false, false);
    }

    /// The address follows the build.
    fn follow(&mut self, n: usize, settled: bool) {
        let tab = &mut self.tabs[n];
        let text = link::write(&tab.page.document.build, &self.catalog);
        let entry = &mut tab.entries[tab.at];
        assert_eq!(entry.address, tab.page.known);
        if text.len() > link::LONGEST {
            return;
        }
        if entry.address != text {
            tab.page.tab.writes(&tab.session, &[&entry.address, &text]);
        }
        entry.address = text.clone();
        entry.build = Some(tab.page.document.build.clone());
        tab.page.known = text.clone();
        if settled {
            tab.page.tab.writes(&tab.session, &[&text]);
        }
    }

    fn change(&mut self, n: usize, change: impl FnOnce(&mut Document, &Catalog)) {
        let mut tab = self.tabs.swap_remove(n);
        change(&mut tab.page.document, &self.catalog);
        tab.seen = tab.page.document.build.clone();
        let Browsed { session, page, .. } = &mut tab;
        self.keep(session, page, false, false);
        self.tabs.push(tab);
    }

    /// Some build, and the link to it, of this version or a later one.
    fn some_link(&mut self) -> (String, Whole) {
        let kit = self.draws.below(self.catalog.kits.len());
        let mut whole = Whole::from(self.catalog.draft(&self.catalog.kits[kit].id));
        let places = self.draws.below(4);
        let mut document = Document::from(whole.clone());
        for _ in 0..places {
            self.edit(&mut document);
        }
        whole.draft = document.build.draft;
        for piece in LATER {
            if self.draws.below(4) == 0 {
                whole.rest.piece(piece, false);
            }
        }
        (link::write(&whole, &self.catalog), whole)
    }

    fn edit(&mut self, document: &mut Document) {
        let slot = Slot::ALL[self.draws.below(Slot::ALL.len())];
        let fields = slot.kind().fields();
        let at = self.draws.below(fields.len());
        let field = &fields[at];
        let share = self.draws.below(1000) as f64 / 999.0;
        let value = field.min + share * (field.max - field.min);
        document.set((slot, at), Some(if field.must_be_whole() { value.round() } else { value }));
    }

    fn save(&mut self, n: usize) {
        let name = NAMES[self.draws.below(NAMES.len())];
        self.change(n, |document, _| document.name(name));
        let build = self.tabs.last().expect("just changed").page.document.build.clone();
        let (now, letters) = self.now();
        let before = self.local.texts.borrow().clone();
        if !shelf::save(&self.local, &build, now, &letters) {
            assert_eq!(*self.local.texts.borrow(), before, "a full store loses nothing");
            return;
        }
        let new: Vec<String> = {
            let texts = self.local.texts.borrow();
            texts
                .iter()
                .filter(|(key, _)| !before.contains_key(*key))
                .map(|(_, t)| t.clone())
                .collect()
        };
        assert_eq!(new.len(), 1, "a record of its own");
        let (back, _) = saved::read_kept(&new[0], &self.catalog).expect("what was saved");
        assert_same(&back, &build, "what was saved");
        self.saved.retain(|saved| saved.name != name || !saved.ours);
        let ours = build.rest.is_empty();
        self.saved.push(Saved { name: name.into(), text: new[0].clone(), ours });
    }

    fn forget(&mut self) {
        let list = shelf::list(&self.local);
        let Some(entry) = list.get(self.draws.below(list.len().max(1))) else { return };
        let Some(text) = self.local.get(&entry.key).filter(|_| entry.key.starts_with("build:"))
        else {
            return;
        };
        self.local.remove(&entry.key);
        let at = self.saved.iter().position(|saved| saved.text == text);
        let gone = at.map(|at| self.saved.swap_remove(at));
        if self.draws.below(2) == 0 && self.local.set(&entry.key, &text) {
            self.saved.extend(gone);
        }
    }

    fn open_saved(&mut self, n: usize) {
        let list = shelf::list(&self.local);
        let Some(entry) = list.get(self.draws.below(list.len().max(1))) else { return };
        if entry.state == State::Unreadable {
            return;
        }
        let text = self.local.get(&entry.key).expect("it is listed");
        let (build, _) = saved::read_kept(&text, &self.catalog).expect("it can be read");
        self.change(n, |document, _| document.replace(build));
    }

    /// What another version, or harm, leaves in the store.
    fn by_other_hands(&mut self) {
        if self.saved.len() > 12 {
            return;
        }
        let n = self.draws.next();
        let name = NAMES[self.draws.below(NAMES.len())];
        let plain = format!(
            "{{\"format\":\"pitchline-build\", \"name\": \"{name}\", \"created\": \"{n:x}\"}}"
        );
        let later = format!(
            "{{\"format\":\"pitchline-build\",\"version\":2, \"name\":\"{name}\",\"n\":\"{n:x}\", \"place\":{{\"surface\":\"ice\"}}}}"
        );
        let wild = format!("{{\"format\":\"another\", \"n\": \"{n:x}\"}}");
        let saved = |text: &String, ours| Saved { name: name.into(), text: text.clone(), ours };
        match self.draws.below(4) {
            0 => {
                let list = format!("[{later},\n  {plain},{wild}]");
                if self.local.get("builds").is_none() && self.local.set("builds", &list) {
                    let texts = [(&later, false), (&plain, true), (&wild, false)];
                    self.saved.extend(texts.map(|(text, ours)| saved(text, ours)));
                }
            }
            1 => {
                if self.local.set(&format!("build:{:013}-hand{n:x}", self.clock), &later) {
                    self.saved.push(saved(&later, false));
                }
            }
            2 => {
                if self.local.set(&format!("build:{n:x}"), &format!("{wild}%")) {
                    self.saved.push(saved(&format!("{wild}%"), false));
                }
            }
            _ => {
                let readable =
                    self.local.get("current").is_none_or(|there| saved::look(&there).is_some());
                if readable && self.local.set("current", &wild) {
                    self.saved.push(saved(&wild, false));
                    self.last = Some(self.first());
                }
            }
        }
    }

    fn step(&mut self) {
        let n = self.draws.below(self.tabs.len());
        match self.draws.below(26) {
            0..5 => {
                let mut document = self.tabs[n].page.document.clone();
                self.edit(&mut document);
                self.change(n, |now, _| *now = document);
            }
            5 => {
                let slot = Slot::ALL[self.draws.below(Slot::ALL.len())];
                let parts: Vec<_> =
                    self.catalog.parts(slot.kind()).iter().map(|part| part.id.clone()).collect();
                if let Some(id) = parts.get(self.draws.below(parts.len().max(1))) {
                    self.change(n, |document, catalog| _ = document.pick(slot, id, catalog));
                }
            }
            6 => {
                let kit = self.catalog.kits[self.draws.below(self.catalog.kits.len())].id.clone();
                self.change(n, |document, catalog| document.start_from(&kit, catalog));
            }
            7 => self.change(n, |document, _| _ = document.undo()),
            8 | 9 => self.save(n),
            10 => self.forget(),
            11 => self.open_saved(n),
            12 => {
                let (address, build) = self.some_link();
                self.paste(n, address, Some(build));
            }
            13 => self.paste(n, "far".into(), None),
            14..18 => {
                let settled = self.draws.below(2) == 0;
                self.follow(n, settled);
            }
            18 => {
                let at = self.tabs[n].at;
                self.load_again(n, at);
            }
            19 => {
                let at = self.draws.below(self.tabs[n].entries.len());
                self.load_again(n, at);
            }
            20 => {
                let at = self.draws.below(self.tabs[n].entries.len());
                self.travel(n, at);
            }
            21 if self.tabs.len() < 6 => self.duplicate(n),
            22 if self.tabs.len() < 6 => match self.draws.below(3) {
                0 => self.new_tab(String::new(), None, true),
                1 => self.new_tab(String::new(), None, false),
                _ => {
                    let (address, build) = self.some_link();
                    self.new_tab(address, Some(build), false);
                }
            },
            23 if self.tabs.len() > 1 => {
                self.tabs.swap_remove(n);
            }
            24 => self.by_other_hands(),
            25 => {
                let room = |map: &Map, draws: &mut Draws| {
                    let used: usize =
                        map.texts.borrow().iter().map(|(k, t)| k.len() + t.len()).sum();
                    map.room.set(if draws.below(3) == 0 {
                        used + draws.below(6000)
                    } else {
                        usize::MAX
                    });
                };
                room(&self.local, &mut self.draws);
                room(&self.tabs[n].session, &mut self.draws);
            }
            _ => {}
        }
    }

    /// A tab with all that it holds is copied; both are open.
    fn duplicate(&mut self, n: usize) {
        let Browsed { session, entries, at, seen, demo, .. } = &self.tabs[n];
        let (session, mut entries, at, seen, demo) =
            (session.clone(), entries.clone(), *at, seen.clone(), *demo);
        let kept = self.tabs[n].page.tab.is_kept();
        let page = self.load(&session, &mut entries[at], demo);
        if kept {
            assert_same(&page.document.build, &seen, "a copy shows the same");
        }
        let seen = page.document.build.clone();
        self.tabs.push(Browsed { session, entries, at, page, seen, demo });
    }

    fn check(&self) {
        let texts = self.local.texts.borrow();
        for saved in &self.saved {
            let there = texts.iter().any(|(key, text)| {
                let whole = *text == saved.text && (key.starts_with("build:") || key == "current");
                whole || (key.starts_with("builds") && text.contains(&saved.text))
            });
            assert!(there, "{} is lost: {}", saved.name, saved.text);
        }
        for tab in &self.tabs {
            assert_same(&tab.page.document.build, &tab.seen, "no tab changes another");
        }
    }
}

#[test]
fn nothing_is_lost_in_any_order_of_events() {
    let mut world = World::new(12);
    for step in 0..STEPS {
        if step % 500 == 0 {
            // Another browser, so that its histories do not grow without end.
            world = World::new(step as u64);
        }
        world.step();
        world.check();
    }
}
