//! Keeps the edits of a tab's build beside it, each a record of its own, so that an edit writes little.

use super::edits::Edits;
use super::shelf::Keep;
use std::collections::VecDeque;
use std::sync::Arc;

/// What the store holds of a tab's edits.
#[derive(Clone, Debug)]
pub(super) struct Trail {
    /// Before the number of each, and before the word `at`.
    prefix: String,
    /// Number and record of each, in order and without a gap.
    kept: Vec<(u64, Arc<str>)>,
    /// Those of lower numbers are no longer kept.
    from: u64,
}

impl Trail {
    /// Of an empty store.
    pub(super) fn new(tab: &str) -> Self {
        Self { prefix: format!("{tab}:edit:"), kept: Vec::new(), from: 0 }
    }

    /// Finds what was kept; records that belong to no chain go.
    pub(super) fn read(tab: &str, store: &impl Keep) -> (Self, Edits) {
        let mut trail = Self::new(tab);
        let at = store.get(&trail.key("at")).and_then(|text| text.parse::<u64>().ok());
        let record = |number: u64| Some((number, Arc::from(store.get(&trail.key(number))?)));
        if let Some(at) = at {
            let mut kept: Vec<_> = (0..at).rev().map_while(record).collect();
            kept.reverse();
            kept.extend((at..).map_while(record));
            trail.kept = kept;
        }
        trail.from = trail.kept.first().map_or(0, |(number, _)| *number);
        for key in store.keys() {
            let number = key.strip_prefix(&trail.prefix).and_then(|n| n.parse().ok());
            if number.is_some_and(|number| !trail.has(number)) {
                store.remove(&key);
            }
        }
        let list: VecDeque<Arc<str>> = trail.kept.iter().map(|(_, edit)| edit.clone()).collect();
        let done = at.map_or(0, |at| trail.kept.iter().filter(|(number, _)| *number < at).count());
        let edits = Edits::kept(at.unwrap_or_default() - done as u64, list, done);
        (trail, edits)
    }

    fn key(&self, what: impl std::fmt::Display) -> String {
        format!("{}{what}", self.prefix)
    }

    fn has(&self, number: u64) -> bool {
        self.kept.iter().any(|(kept, _)| *kept == number)
    }

    /// Makes room; whether there was anything to drop.
    pub(super) fn drop_oldest(&mut self, store: &impl Keep) -> bool {
        if self.kept.is_empty() {
            return false;
        }
        let (number, _) = self.kept.remove(0);
        store.remove(&self.key(number));
        self.from = number + 1;
        true
    }

    /// The store follows the edits; a full one drops the oldest. `whole` is whether it has the build
    /// that they lead to: without it they lead nowhere.
    pub(super) fn keep(&mut self, store: &impl Keep, edits: &Edits, whole: bool) {
        for (number, text) in std::mem::take(&mut self.kept) {
            if edits.get(number).is_some_and(|edit| Arc::ptr_eq(edit, &text)) {
                self.kept.push((number, text));
            } else {
                store.remove(&self.key(number));
            }
        }
        if let Some((last, _)) = edits.numbered().last() {
            self.from = self.from.min(last);
        }
        for (number, edit) in edits.numbered() {
            if number < self.from || self.has(number) {
                continue;
            }
            while !store.set(&self.key(number), edit) {
                if !self.drop_oldest(store) {
                    self.from = number + 1;
                    break;
                }
            }
            if number >= self.from {
                let place = self.kept.partition_point(|(kept, _)| *kept < number);
                self.kept.insert(place, (number, edit.clone()));
            }
        }
        let at = self.key("at");
        // As long as the one before, so that there is always room.
        if !whole || !store.set(&at, &format!("{:020}", edits.state())) {
            store.remove(&at);
        }
    }
}
