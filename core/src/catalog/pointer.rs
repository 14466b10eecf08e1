//! Where in a file the reader is, and what it found wrong so far.

use super::near::nearest;
use crate::error::{Error, Reason};
use alloc::string::String;
use alloc::vec::Vec;
use serde_json::{Map, Value};

/// An object of the file.
pub(super) type Object = Map<String, Value>;

/// Longest text that is read, in characters.
pub(super) const LONGEST: usize = 400;
/// Most entries of a list that are read.
pub(super) const MOST: usize = 2000;

/// What a file, a part and a kit are.
pub(super) const AN_OBJECT: &str = "an object in braces";

/// Whether something may be left out.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Must {
    /// It must be there, and not be empty.
    Be,
    /// It may be missing.
    May,
}

/// A place in the file, by its JSON pointer (RFC 6901), and the faults found so far.
pub(super) struct Pointer<'a> {
    pointer: String,
    pub(super) faults: &'a mut Vec<Error>,
}

impl<'a> Pointer<'a> {
    /// The whole file.
    pub(super) fn top(faults: &'a mut Vec<Error>) -> Self {
        Self { pointer: String::new(), faults }
    }

    /// The place of a key, or of a number in a list, below this one.
    pub(super) fn at(&mut self, key: &str) -> Pointer<'_> {
        let mut pointer = self.pointer.clone();
        pointer.push('/');
        for letter in key.chars() {
            match letter {
                '~' => pointer.push_str("~0"),
                '/' => pointer.push_str("~1"),
                letter => pointer.push(letter),
            }
        }
        Pointer { pointer, faults: self.faults }
    }

    /// Something is wrong here.
    pub(super) fn fault(&mut self, reason: Reason) {
        self.faults.push(Error::new(self.pointer.as_str(), reason));
    }

    /// A value as an object.
    pub(super) fn object<'v>(&mut self, value: &'v Value) -> Option<&'v Object> {
        let map = value.as_object();
        if map.is_none() {
            self.fault(Reason::WrongForm { expected: AN_OBJECT });
        }
        map
    }

    /// The list under a key; empty if it is not there or faulty.
    pub(super) fn list<'v>(&mut self, map: &'v Object, key: &str) -> &'v [Value] {
        let reason = match map.get(key) {
            None => return &[],
            Some(Value::Array(list)) if list.len() <= MOST => return list,
            Some(Value::Array(_)) => Reason::TooLarge { most: MOST, what: "entries" },
            Some(_) => Reason::WrongForm { expected: "a list in square brackets" },
        };
        self.at(key).fault(reason);
        &[]
    }

    /// The text under a key; empty if it is not there or faulty.
    pub(super) fn text(&mut self, map: &Object, key: &str, must: Must) -> String {
        self.at(key).string(map.get(key).unwrap_or(&Value::Null), must)
    }

    /// A value as text.
    pub(super) fn string(&mut self, value: &Value, must: Must) -> String {
        let reason = match value {
            Value::Null if must == Must::May => return String::new(),
            Value::String(text) if text.is_empty() && must == Must::Be => Reason::Missing,
            Value::String(text) if text.chars().count() <= LONGEST => return text.clone(),
            Value::String(_) => Reason::TooLarge { most: LONGEST, what: "characters" },
            Value::Null => Reason::Missing,
            _ => Reason::WrongForm { expected: "text in quotes" },
        };
        self.fault(reason);
        String::new()
    }

    /// Names every key that is not known; one that begins with `$` is a remark.
    pub(super) fn keys(&mut self, map: &Object, known: &[&str]) {
        for key in map.keys() {
            if !key.starts_with('$') && !known.contains(&key.as_str()) {
                self.at(key).unknown(key, known);
            }
        }
    }

    /// The name that stands here is not among the known ones.
    pub(super) fn unknown(&mut self, given: &str, known: &[&str]) {
        self.fault(Reason::Unknown { given: given.into(), nearest: nearest(given, known) });
    }
}
