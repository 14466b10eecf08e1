//! Tabs, their histories, their stores and the one that they share, in any order of events, against a
//! plain record of what people were shown and told was kept: nothing of it may be lost.

mod browser;

use super::document::Document;
use super::edits::Act;
use super::link;
use super::rest::Whole;
use super::saved;
use super::shelf::tests::Map;
use super::shelf::{self, Keep, State};
use super::typed::Place;
use browser::{Browsed, Draws, Link, Saved, World, assert_same};
use pitchline_core::Slot;

/// Steps of the long walk.
const STEPS: usize = 10_000;
const VIEWS: [&str; 4] = ["", "fast", "far", "share"];
const NAMES: [&str; 4] = ["Mine", "Pier & back", "Été", "Heavy"];
/// What a later version's links may say.
const LATER: [&str; 5] =
    ["v=2", "hat=red", "place.surface=ice", "rider.mood=%FF", "lights.front=3"];

impl World {
    /// Some build, and the link to it, of this version or a later one, with or without a view.
    fn some_link(&mut self) -> Link {
        let kit = self.draws.below(self.catalog.kits.len());
        let mut whole = Whole::from(self.catalog.draft(&self.catalog.kits[kit].id));
        let places = self.draws.below(4);
        let mut document = Document::from(whole.clone());
        for _ in 0..places {
            self.edit(&mut document, Act::One);
        }
        whole.draft = document.build.draft;
        for piece in LATER {
            if self.draws.below(4) == 0 {
                whole.rest.piece(piece, false);
            }
        }
        let (mut address, mut view) = (link::write(&whole, &self.catalog), None);
        if self.draws.below(2) == 0 {
            view = Some(VIEWS[self.draws.below(VIEWS.len())]);
            address += &format!("&see={}", view.unwrap_or_default());
        }
        Link { address, build: Some(whole), view }
    }

    /// A link of the page to one of its views.
    fn view_link(&mut self) -> Link {
        let view = VIEWS[self.draws.below(VIEWS.len())];
        Link { address: format!("see={view}"), build: None, view: Some(view) }
    }

    /// An edit of some field.
    fn edit(&mut self, document: &mut Document, act: Act) {
        let slot = Slot::ALL[self.draws.below(Slot::ALL.len())];
        let at = self.draws.below(slot.kind().fields().len());
        self.set(document, (slot, at), act);
    }

    fn set(&mut self, document: &mut Document, place: Place, act: Act) {
        let field = &place.0.kind().fields()[place.1];
        let share = self.draws.below(1000) as f64 / 999.0;
        let value = field.min + share * (field.max - field.min);
        let value = if field.must_be_whole() { value.round() } else { value };
        document.set(place, Some(value), act, &self.catalog);
    }

    /// Typing into a field: one edit, however many letters. At times what stood there is typed again.
    fn type_in(&mut self, document: &mut Document) {
        let slot = Slot::ALL[self.draws.below(Slot::ALL.len())];
        let place = (slot, self.draws.below(slot.kind().fields().len()));
        let before = document.build.draft.record(slot).value(place.1);
        for _ in 0..self.draws.below(4) {
            self.set(document, place, Act::Type(place));
        }
        if self.draws.below(3) == 0 {
            document.set(place, before, Act::Type(place), &self.catalog);
        }
        document.rest();
    }

    fn save(&mut self, n: usize) {
        let name = NAMES[self.draws.below(NAMES.len())];
        self.change(n, |document, catalog| {
            document.name(name, catalog);
            document.rest();
        });
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
        self.change(n, |document, catalog| document.replace(build, catalog));
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
        match self.draws.below(31) {
            step @ 0..5 => {
                let mut document = self.tabs[n].page.document.clone();
                if step < 3 {
                    self.edit(&mut document, Act::One);
                } else {
                    self.type_in(&mut document);
                }
                self.change(n, |now, _| *now = document);
            }
            5 => {
                let slot = Slot::ALL[self.draws.below(Slot::ALL.len())];
                let parts: Vec<_> =
                    self.catalog.parts(slot.kind()).iter().map(|part| part.id.clone()).collect();
                if let Some(id) = parts.get(self.draws.below(parts.len().max(1))) {
                    self.change(n, |document, catalog| _ = document.pick(&[(slot, id)], catalog));
                }
            }
            6 => {
                let kit = self.catalog.kits[self.draws.below(self.catalog.kits.len())].id.clone();
                self.change(n, |document, catalog| document.start_from(&kit, catalog));
            }
            7 => self.turn(n, false),
            28..31 => {
                // Now and then a whole row of them.
                let again = self.draws.below(3) == 0;
                let last = self.tabs.len() - 1;
                self.tabs.swap(n, last);
                for _ in 0..=self.draws.below(6) {
                    self.turn(last, again);
                }
            }
            8 | 9 => self.save(n),
            10 => self.forget(),
            11 => self.open_saved(n),
            12 => {
                let link = self.some_link();
                self.paste(n, link);
            }
            13 => self.paste(n, Link { address: "main".into(), ..Link::default() }),
            14..18 => self.follow(n),
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
                0 => self.new_tab(Link::default(), true),
                1 => self.new_tab(Link::default(), false),
                _ => {
                    let link = self.some_link();
                    self.new_tab(link, false);
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
                        used + [0, 60, 6000][draws.below(3)]
                    } else {
                        usize::MAX
                    });
                };
                room(&self.local, &mut self.draws);
                room(&self.tabs[n].session, &mut self.draws);
                self.tabs[n].record.short = true;
            }
            26 | 27 => {
                let link = self.view_link();
                self.paste(n, link);
            }
            _ => {}
        }
    }

    /// A tab with all that it holds is copied; both are open.
    fn duplicate(&mut self, n: usize) {
        let Browsed { session, entries, at, seen, record, demo, .. } = &self.tabs[n];
        let (session, mut entries, at, seen, mut record, demo) =
            (session.clone(), entries.clone(), *at, seen.clone(), record.clone(), *demo);
        let view = entries[at].view.unwrap_or_default();
        let kept = self.tabs[n].page.tab.is_kept();
        let page = self.load(&session, &mut entries[at], demo);
        if kept {
            assert_same(&page.document.build, &seen, "a copy shows the same");
        }
        let seen = page.document.build.clone();
        record.loaded(&page.document, kept);
        self.tabs.push(Browsed { session, entries, at, page, seen, view, record, demo });
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
            assert_eq!(tab.page.see, tab.view, "the address names the view");
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
