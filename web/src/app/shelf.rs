//! Saved builds: each a record of its own in the browser's store, so that no tab writes over what
//! another has saved. What cannot be read stays as it is until the reader forgets it.

use super::rest::Whole;
use super::saved;
use crate::platform::Store;
use serde_json::value::RawValue;

/// A place for texts by key. It may be closed or full, and others may write to it.
pub trait Keep {
    /// Every key.
    fn keys(&self) -> Vec<String>;
    /// The text under a key.
    fn get(&self, key: &str) -> Option<String>;
    /// Keeps a text under a key; whether it was kept. What was there stays if not.
    fn set(&self, key: &str, text: &str) -> bool;
    /// Takes a key away.
    fn remove(&self, key: &str);
}

impl Keep for Store {
    fn keys(&self) -> Vec<String> {
        self.keys()
    }

    fn get(&self, key: &str) -> Option<String> {
        self.get(key)
    }

    fn set(&self, key: &str, text: &str) -> bool {
        self.set(key, text)
    }

    fn remove(&self, key: &str) {
        self.remove(key);
    }
}

/// Before the id of a saved build.
const RECORD: &str = "build:";
/// Lists of earlier versions: all builds in one array, and a copy of one that could not be read.
const LISTS: [&str; 2] = ["builds", "builds:unreadable"];

/// A saved build, as far as a list tells of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Its key in the store.
    pub key: String,
    /// Its name; its key where no name can be read.
    pub name: String,
    /// What can be done with it.
    pub state: State,
}

/// How much of a saved build is understood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// All of it.
    Whole,
    /// Some of it: the rest was written by a later version, or came to harm.
    Part,
    /// It is no build that this page knows.
    Unreadable,
}

/// Saved builds, the newest first.
#[must_use]
pub fn list(store: &impl Keep) -> Vec<Entry> {
    let kept = |key: &String| key.starts_with(RECORD) || LISTS.contains(&key.as_str());
    let order = |key: &String| (key.starts_with(RECORD), key.clone());
    let mut keys: Vec<String> = Vec::new();
    for key in store.keys().into_iter().filter(kept) {
        let place = keys.partition_point(|other| order(other) > order(&key));
        keys.insert(place, key);
    }
    let entry = |key: String| {
        let text = store.get(&key)?;
        Some(match saved::look(&text) {
            Some((name, whole)) => {
                let name = if name.is_empty() { key.clone() } else { name };
                Entry { key, name, state: if whole { State::Whole } else { State::Part } }
            }
            None => Entry { name: key.clone(), key, state: State::Unreadable },
        })
    };
    keys.into_iter().filter_map(entry).collect()
}

/// Saves a build; `now` in milliseconds, `letters` by chance. The older ones of its name go once it
/// is kept, but for those that hold more than this page can read.
pub fn save(store: &impl Keep, whole: &Whole, now: u64, letters: &str) -> bool {
    let text = saved::write_file(whole, "").to_string();
    let Some(key) = add(store, &text, now, letters) else { return false };
    for older in list(store) {
        if older.name == whole.draft.name && older.state == State::Whole && older.key != key {
            store.remove(&older.key);
        }
    }
    true
}

/// The build that is saved under a name, and its text: saving another one replaces it.
pub fn named(store: &impl Keep, name: &str) -> Option<(Entry, String)> {
    let entry =
        list(store).into_iter().find(|entry| entry.name == name && entry.state == State::Whole)?;
    let text = store.get(&entry.key)?;
    Some((entry, text))
}

/// Keeps a text as a record of its own; its key, or none where there is no room.
pub fn add(store: &impl Keep, text: &str, now: u64, letters: &str) -> Option<String> {
    let key = |at: u64| format!("{RECORD}{at:013}-{letters}");
    let free = (now..).map(key).find(|key| store.get(key).is_none())?;
    store.set(&free, text).then_some(free)
}

/// Whether some record holds this very text.
fn holds(store: &impl Keep, text: &str) -> bool {
    let records = store.keys().into_iter().filter(|key| key.starts_with(RECORD));
    records.into_iter().any(|key| store.get(&key).as_deref() == Some(text))
}

/// Keeps a text as a record, unless one holds it already; whether it is there.
pub fn put_aside(store: &impl Keep, text: &str, now: u64, letters: &str) -> bool {
    holds(store, text) || add(store, text, now, letters).is_some()
}

/// Takes over the lists of earlier versions, each entry as its own text. A list goes once every
/// entry of it has a record; one that is no list stays.
pub fn take_over(store: &impl Keep) {
    for key in LISTS {
        let Some(text) = store.get(key) else { continue };
        let Ok(list) = serde_json::from_str::<Vec<&RawValue>>(&text) else { continue };
        // The newest stood first, and all of them are older than any record.
        let count = list.len() as u64;
        let mut numbered = (0..).zip(&list);
        let all = numbered.all(|(n, entry)| put_aside(store, entry.get(), count - n, "list"));
        if all && store.get(key).as_ref() == Some(&text) {
            store.remove(key);
        }
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use pitchline_core::Draft;
    use std::cell::RefCell;
    use std::collections::BTreeMap;

    /// A store with room for so many letters.
    #[derive(Clone, Debug)]
    pub(in crate::app) struct Map {
        pub(in crate::app) texts: RefCell<BTreeMap<String, String>>,
        pub(in crate::app) room: std::cell::Cell<usize>,
    }

    impl Default for Map {
        fn default() -> Self {
            Self { texts: RefCell::default(), room: usize::MAX.into() }
        }
    }

    impl Keep for Map {
        fn keys(&self) -> Vec<String> {
            self.texts.borrow().keys().cloned().collect()
        }

        fn get(&self, key: &str) -> Option<String> {
            self.texts.borrow().get(key).cloned()
        }

        fn set(&self, key: &str, text: &str) -> bool {
            let mut texts = self.texts.borrow_mut();
            let others = texts.iter().filter(|(other, _)| *other != key);
            let used: usize = others.map(|(key, text)| key.len() + text.len()).sum();
            let fits = used + key.len() + text.len() <= self.room.get();
            if fits {
                texts.insert(key.into(), text.into());
            }
            fits
        }

        fn remove(&self, key: &str) {
            self.texts.borrow_mut().remove(key);
        }
    }

    fn named(name: &str) -> Whole {
        let mut draft = Draft::typical();
        draft.name = name.into();
        draft.into()
    }

    fn names(store: &Map) -> Vec<String> {
        list(store).into_iter().map(|entry| entry.name).collect()
    }

    #[test]
    fn no_number_of_saves_drops_one() {
        let store = Map::default();
        for n in 0..200 {
            assert!(save(&store, &named(&format!("Board {n}")), 1_700_000_000_000, "abc"));
        }
        let found = names(&store);
        assert_eq!((found.len(), found[0].as_str()), (200, "Board 199"));
        assert!(list(&store).iter().all(|entry| entry.state == State::Whole));
    }

    #[test]
    fn the_same_name_is_written_over_but_never_what_cannot_be_read() {
        let store = Map::default();
        let later = r#"{"format":"pitchline-build","version":2,"name":"Mine","wings":2}"#;
        store.set("build:1600000000000-x", later);
        store.set("build:1600000000001-y", "Mine");
        save(&store, &named("Mine"), 1_700_000_000_000, "a");
        save(&store, &named("Mine"), 1_700_000_000_001, "b");
        let found: Vec<_> = list(&store).into_iter().map(|e| (e.key, e.state)).collect();
        let wanted = [
            ("build:1700000000001-b", State::Whole),
            ("build:1600000000001-y", State::Unreadable),
            ("build:1600000000000-x", State::Part),
        ];
        assert_eq!(found, wanted.map(|(key, state)| (key.to_owned(), state)));
        assert_eq!(store.get("build:1600000000000-x").as_deref(), Some(later));
    }

    #[test]
    fn a_full_store_loses_nothing() {
        let store = Map::default();
        assert!(save(&store, &named("Mine"), 1_700_000_000_000, "a"));
        let before = store.clone();
        store.room.set(store.texts.borrow().values().map(String::len).sum::<usize>() + 100);
        assert!(!save(&store, &named("Mine"), 1_700_000_000_001, "b"));
        assert_eq!(*store.texts.borrow(), *before.texts.borrow());
    }

    #[test]
    fn an_old_list_is_taken_over_entry_by_entry() {
        let mine = saved::write_file(&named("Mine"), "").to_string();
        let later = r#"{ "format": "pitchline-build",  "name": "Later", "glow": 1.50 }"#;
        let old = format!("[{mine}, {later},\n 7]");
        let store = Map::default();
        store.set("builds", &old);
        // No room: it stays as it is.
        store.room.set(old.len() + 20);
        take_over(&store);
        assert_eq!(store.get("builds"), Some(old.clone()));
        store.room.set(usize::MAX);
        take_over(&store);
        assert_eq!(store.get("builds"), None);
        let texts: Vec<_> = list(&store).iter().map(|e| store.get(&e.key).unwrap()).collect();
        assert_eq!(texts, [mine.as_str(), later, "7"]);
        // Once more, as from a tab that still runs the version before.
        store.set("builds", &old);
        store.set("builds:unreadable", "[{\"format\": \"pitch");
        take_over(&store);
        assert_eq!(
            names(&store),
            ["Mine", "Later", "build:0000000000001-list", "builds:unreadable"]
        );
    }
}
