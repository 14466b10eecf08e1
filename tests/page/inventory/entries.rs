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

/// What the page shows, by the last run that wrote it.
pub(super) const NOW: &str = "inventory.json";

fn file(name: &str) -> PathBuf {
    root().join("tests/fixture").join(name)
}

impl Entries {
    /// What the page gave.
    pub(super) fn from_page(value: Value) -> Outcome<Self> {
        match serde_json::from_value(value) {
            Ok(map) => Ok(Self(map)),
            Err(error) => Err(Fault::new(format!("not an inventory: {error}"))),
        }
    }

    /// What the fixture of that name has.
    pub(super) fn read(name: &str) -> Outcome<Self> {
        let text = fs::read_to_string(file(name))?;
        Self::from_page(serde_json::from_str(&text).unwrap_or_default())
    }

    /// Writes the fixture anew.
    pub(super) fn write(&self) -> Outcome {
        let text = serde_json::to_string_pretty(&self.0)
            .map_err(|error| Fault::new(format!("no JSON: {error}")))?;
        Ok(fs::write(file(NOW), text + "\n")?)
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

    /// Kind and name of each, wherever it stands.
    pub(super) fn names(&self) -> BTreeSet<(&str, &str)> {
        self.all().map(|[kind, _, name]| (kind, name)).collect()
    }

    /// What is here and not there, a line each.
    pub(super) fn without(&self, other: &Self) -> Vec<String> {
        let there: BTreeSet<[&str; 3]> = other.all().collect();
        let lost = self.all().filter(|entry| !there.contains(entry));
        lost.map(|[kind, place, name]| format!("{kind} | {place} | {name}")).collect()
    }
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
         Where that is meant: PITCHLINE_WRITE=1 cargo test -p pitchline-tests --test page inventory",
        missing.len(),
        missing.join("\n  "),
        new.len(),
        new.join("\n  "),
    )))
}
