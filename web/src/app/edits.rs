//! The edits of a build, a small text each: what it took out of the build's file, and what it put in.

use super::typed::Place;
use serde_json::{Map, Value, json};
use std::collections::VecDeque;
use std::sync::Arc;

/// Edits that can be undone.
const DEPTH: usize = 200;
/// Milliseconds within which a step goes on with the one before.
const PAUSE: f64 = 1000.0;

/// What is done to a build: an edit may go on with the one before.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) enum Act {
    /// Whatever is one edit for itself.
    #[default]
    One,
    /// Typing into a field, until it is left.
    Type(Place),
    /// Typing the name, until it is left.
    Name,
    /// A step or a choice in a field, at that time in milliseconds.
    Step(Place, f64),
}

impl Act {
    /// Whether the next act is still the same edit.
    pub(super) fn goes_on(self, next: Self) -> bool {
        match (self, next) {
            (Self::Step(place, then), Self::Step(next, now)) => {
                place == next && (0.0..=PAUSE).contains(&(now - then))
            }
            (Self::One, _) => false,
            _ => self == next,
        }
    }
}

/// The edits, those done and those undone. Edit n leads from state n of the build to the next.
#[derive(Clone, Debug, Default)]
pub struct Edits {
    list: VecDeque<Arc<str>>,
    /// Number of the first that is known.
    first: u64,
    /// How many of the list are done.
    done: usize,
}

impl Edits {
    /// As they were kept.
    #[must_use]
    pub fn kept(first: u64, list: VecDeque<Arc<str>>, done: usize) -> Self {
        Self { list, first, done }
    }

    /// The state that the build is in, which is one behind its last edit.
    #[must_use]
    pub fn state(&self) -> u64 {
        self.first + self.done as u64
    }

    /// Each with its number.
    pub fn numbered(&self) -> impl Iterator<Item = (u64, &Arc<str>)> {
        (self.first..).zip(&self.list)
    }

    /// The edit of that number.
    #[must_use]
    pub fn get(&self, number: u64) -> Option<&Arc<str>> {
        self.list.get(usize::try_from(number.checked_sub(self.first)?).ok()?)
    }

    /// Whether they are the very same, and as many of them done.
    #[must_use]
    pub fn is(&self, other: &Self) -> bool {
        let all = |edits: &Self| (edits.first, edits.done, edits.list.len());
        let mut pairs = self.list.iter().zip(&other.list);
        all(self) == all(other) && pairs.all(|(one, other)| Arc::ptr_eq(one, other))
    }

    /// A new edit, in place of all that could have been done again.
    pub(super) fn push(&mut self, edit: &Value) {
        self.list.truncate(self.done);
        self.list.push_back(edit.to_string().into());
        if self.list.len() > DEPTH {
            self.list.pop_front();
            self.first += 1;
        }
        self.done = self.list.len();
    }

    /// Drops the last edit as if it had never been.
    pub(super) fn pop(&mut self) {
        self.list.truncate(self.done.saturating_sub(1));
        self.done = self.list.len();
    }

    /// One is undone.
    pub(super) fn back(&mut self) {
        self.done = self.done.saturating_sub(1);
    }

    /// One is done again.
    pub(super) fn forward(&mut self) {
        self.done = (self.done + 1).min(self.list.len());
    }

    /// The file before the last edit; none where there is none. One that does not fit is another
    /// build's: it and all before it go.
    pub(super) fn before(&mut self, file: &Value) -> Option<Value> {
        let last = self.list.get(self.done.checked_sub(1)?)?;
        let found = patched(file, last, [1, 0]);
        if found.is_none() {
            self.list.drain(..self.done);
            self.first += self.done as u64;
            self.done = 0;
        }
        found
    }

    /// The file after the next edit that can be done again. One that does not fit goes, with all
    /// behind it.
    pub(super) fn after(&mut self, file: &Value) -> Option<Value> {
        let found = patched(file, self.list.get(self.done)?, [0, 1]);
        if found.is_none() {
            self.list.truncate(self.done);
        }
        found
    }
}

/// What leads from one file to another: by key either `[[before], [after]]`, empty where the key is
/// not there, or the same for what stands under it.
pub(super) fn patch(from: &Value, to: &Value) -> Value {
    let none = Map::new();
    let [from, to] = [from, to].map(|value| value.as_object().unwrap_or(&none));
    let mut patch = Map::new();
    for key in from.keys().chain(to.keys().filter(|key| !from.contains_key(*key))) {
        let change = match (from.get(key), to.get(key)) {
            (before, after) if before == after => continue,
            (Some(before @ Value::Object(_)), Some(after @ Value::Object(_))) => {
                self::patch(before, after)
            }
            (before, after) => json!([Vec::from_iter(before), Vec::from_iter(after)]),
        };
        patch.insert(key.clone(), change);
    }
    patch.into()
}

/// The file with a patch, given as its text; none where it does not have what that takes out.
fn patched(file: &Value, patch: &str, way: [usize; 2]) -> Option<Value> {
    let patch: Value = serde_json::from_str(patch).ok()?;
    let mut file = file.clone();
    put(file.as_object_mut()?, patch.as_object()?, way)?;
    Some(file)
}

fn put(
    map: &mut Map<String, Value>,
    patch: &Map<String, Value>,
    [out, into]: [usize; 2],
) -> Option<()> {
    for (key, change) in patch {
        if let Value::Object(inner) = change {
            put(map.get_mut(key)?.as_object_mut()?, inner, [out, into])?;
            continue;
        }
        let side = |side: usize| Some(change.get(side)?.as_array()?.first());
        if map.get(key) != side(out)? {
            return None;
        }
        match side(into)? {
            Some(value) => _ = map.insert(key.clone(), value.clone()),
            None => _ = map.remove(key),
        }
    }
    Some(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use pitchline_core::Slot;

    #[test]
    fn a_patch_leads_there_and_back() {
        let one = json!({ "a": 1, "gone": null, "slot": { "x": 1, "y": 2 }, "was": { "z": 3 } });
        let two = json!({ "a": 2, "new": [7], "slot": { "x": 1, "y": "two" }, "was": 4 });
        let patch = patch(&one, &two);
        assert_eq!(
            patch,
            json!({ "a": [[1], [2]], "gone": [[null], []], "new": [[], [[7]]],
                    "slot": { "y": [[2], ["two"]] }, "was": [[{ "z": 3 }], [4]] })
        );
        let text = patch.to_string();
        assert_eq!(patched(&one, &text, [0, 1]), Some(two.clone()));
        assert_eq!(patched(&two, &text, [1, 0]), Some(one.clone()));
        // It is of these two alone.
        assert_eq!(patched(&one, &text, [1, 0]), None);
        assert_eq!(patched(&json!({}), &text, [0, 1]), None);
        assert_eq!(patched(&one, "no patch", [0, 1]), None);
    }

    #[test]
    fn typing_goes_on_until_the_field_is_left_and_steps_for_a_second() {
        let (here, there) = ((Slot::Rider, 0), (Slot::Rider, 1));
        assert!(Act::Type(here).goes_on(Act::Type(here)));
        assert!(!Act::Type(here).goes_on(Act::Type(there)));
        assert!(!Act::Type(here).goes_on(Act::Step(here, 0.0)));
        assert!(Act::Name.goes_on(Act::Name));
        assert!(!Act::One.goes_on(Act::One));
        let step = Act::Step(here, 5000.0);
        assert!(step.goes_on(Act::Step(here, 6000.0)));
        assert!(!step.goes_on(Act::Step(there, 5100.0)));
        assert!(!step.goes_on(Act::Step(here, 6001.0)));
        // A clock that was put back says nothing.
        assert!(!step.goes_on(Act::Step(here, 4999.0)));
    }

    #[test]
    fn the_oldest_go_first() {
        let mut edits = Edits::default();
        for n in 0..DEPTH + 5 {
            edits.push(&json!({ "n": [[n], [n + 1]] }));
        }
        assert_eq!(edits.numbered().count(), DEPTH);
        assert_eq!(edits.numbered().next().map(|(n, _)| n), Some(5));
        assert_eq!(edits.state(), DEPTH as u64 + 5);
        let mut file = json!({ "n": DEPTH + 5 });
        while let Some(before) = edits.before(&file) {
            edits.back();
            file = before;
        }
        assert_eq!(file, json!({ "n": 5 }));
        assert_eq!(edits.after(&json!({ "n": 6 })), None, "it is another's");
        assert_eq!(edits.after(&file), None, "and so are all behind it");
    }
}
