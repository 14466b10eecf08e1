//! Names by kind and by the place where they stand; the file of them, and how two are compared.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::PathBuf;

use pitchline_tests::browser::{Fault, Outcome};
use pitchline_tests::root;
use serde_json::Value;

/// Kind, place (a question, and the headings under it), names.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Entries(BTreeMap<String, BTreeMap<String, BTreeSet<String>>>);

/// A name that was changed on purpose.
pub(super) struct Renamed {
    pub(super) kind: &'static str,
    pub(super) old: &'static str,
    pub(super) new: &'static str,
    pub(super) reason: &'static str,
}

fn file() -> PathBuf {
    root().join("tests/fixture/inventory.json")
}

impl Entries {
    /// What the page gave.
    pub(super) fn from_page(value: Value) -> Outcome<Self> {
        match serde_json::from_value(value) {
            Ok(map) => Ok(Self(map)),
            Err(error) => Err(Fault::new(format!("not an inventory: {error}"))),
        }
    }

    /// What the file has.
    pub(super) fn read() -> Outcome<Self> {
        let text = fs::read_to_string(file())?;
        Self::from_page(serde_json::from_str(&text).unwrap_or_default())
    }

    /// Writes the file anew.
    pub(super) fn write(&self) -> Outcome {
        let text = serde_json::to_string_pretty(&self.0)
            .map_err(|error| Fault::new(format!("no JSON: {error}")))?;
        Ok(fs::write(file(), text + "\n")?)
    }

    pub(super) fn put(&mut self, kind: &str, place: &str, name: &str) {
        let places = self.0.entry(kind.to_owned()).or_default();
        places.entry(place.to_owned()).or_default().insert(name.to_owned());
    }

    /// Adds what another look found.
    pub(super) fn add(&mut self, other: &Self) {
        for [kind, place, name] in other.all() {
            self.put(kind, place, name);
        }
    }

    /// Kind, place and name of each.
    pub(super) fn all(&self) -> impl Iterator<Item = [&str; 3]> {
        self.0.iter().flat_map(|(kind, places)| {
            places.iter().flat_map(move |(place, names)| {
                names.iter().map(move |name| [kind.as_str(), place.as_str(), name.as_str()])
            })
        })
    }

    /// What is here and not there, a line each.
    pub(super) fn without(&self, other: &Self) -> Vec<String> {
        let there: BTreeSet<[&str; 3]> = other.all().collect();
        let lost = self.all().filter(|entry| !there.contains(entry));
        lost.map(|[kind, place, name]| format!("{kind} | {place} | {name}")).collect()
    }
}

/// The names as they are after these changes.
///
/// # Panics
/// Where a change has no reason or nothing to change.
#[track_caller]
pub(super) fn renamed(entries: &Entries, changes: &[Renamed]) -> Entries {
    let mut now: Vec<[String; 3]> = entries.all().map(|entry| entry.map(str::to_owned)).collect();
    for change in changes {
        assert!(!change.reason.is_empty(), "no reason for {}", change.old);
        let mut hits = 0;
        now.retain_mut(|[kind, place, name]| {
            let part = if change.kind == "places" {
                // A heading of the way there, or all of it.
                let mut way: Vec<&str> = place.split(" > ").collect();
                let Some(step) = way.iter_mut().find(|step| **step == change.old) else {
                    return true;
                };
                *step = change.new;
                *place = way.join(" > ");
                hits += 1;
                return !change.new.is_empty();
            } else if change.kind == "captions" {
                // What a table has is named after it.
                let of_table = kind == "tables" || kind == "rows";
                let rest = name.strip_prefix(change.old).filter(|_| of_table);
                if let Some(renamed) = rest.map(|rest| format!("{}{rest}", change.new)) {
                    *name = renamed;
                    hits += 1;
                }
                return true;
            } else if kind == change.kind && name == change.old {
                name
            } else {
                return true;
            };
            hits += 1;
            change.new.clone_into(part);
            !change.new.is_empty()
        });
        assert!(hits > 0, "{}: {:?} is not in the file", change.kind, change.old);
    }
    let mut entries = Entries::default();
    for [kind, place, name] in &now {
        entries.put(kind, place, name);
    }
    entries
}

/// Fails with what is missing of `wanted`, and with what is new.
///
/// # Errors
/// With both lists, a line each.
#[track_caller]
pub(super) fn compare(wanted: &Entries, found: &Entries) -> Outcome {
    let (missing, new) = (wanted.without(found), found.without(wanted));
    if missing.is_empty() && new.is_empty() {
        return Ok(());
    }
    Err(Fault::new(format!(
        "{} missing on the page:\n  {}\n{} new on the page:\n  {}\n\
         What was renamed or dropped on purpose goes into RENAMED with its reason; for what is new: \
         PITCHLINE_WRITE=1 cargo test -p pitchline-tests --test page inventory",
        missing.len(),
        missing.join("\n  "),
        new.len(),
        new.join("\n  "),
    )))
}
