//! Where in a file the reader is, and what it found wrong so far.

use crate::error::{Error, Reason};
use crate::near::by_nearness;
use alloc::string::String;
use alloc::vec::Vec;
use serde_json::{Map, Value};

/// An object of the file.
pub(super) type Object = Map<String, Value>;

/// Longest text that is read, in characters.
pub(super) const LONGEST: usize = 400;
/// Most entries of a list that are read.
pub(super) const MOST: usize = 2000;

/// What a text is.
const TEXT: &str = "text in quotes";

/// The keys that are not known and not comments.
pub(super) fn unknown_keys<'m>(map: &'m Object, known: &[&str]) -> impl Iterator<Item = &'m str> {
    let known = |key: &&str| !key.starts_with('$') && !known.contains(key);
    map.keys().map(String::as_str).filter(known)
}

/// The key that an unknown one stands for: the nearest, unless it is there too.
pub(super) fn misspelt<'k>(key: &str, map: &Object, known: &[&'k str]) -> Option<&'k str> {
    let (words, near) = by_nearness(key, known);
    words.into_iter().next().filter(|meant| near > 0 && !map.contains_key(*meant))
}

/// The name that a part or a kit gives itself, or else its id; empty without either.
pub(super) fn written_name(value: &Value) -> String {
    let text = |key: &str| value.get(key)?.as_str().filter(|text| !text.is_empty());
    text("name").or_else(|| text("id")).unwrap_or_default().chars().take(80).collect()
}

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
    part: String,
    pub(super) faults: &'a mut Vec<Error>,
}

impl<'a> Pointer<'a> {
    /// The whole file.
    pub(super) fn top(faults: &'a mut Vec<Error>) -> Self {
        Self { pointer: String::new(), part: String::new(), faults }
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
        Pointer { pointer, part: self.part.clone(), faults: self.faults }
    }

    /// The place of a part or a kit in a list, by its number; faults below it name it.
    pub(super) fn item(&mut self, list: &str, index: usize, value: &Value) -> Pointer<'_> {
        let pointer = alloc::format!("{}/{list}/{index}", self.pointer);
        Pointer { pointer, part: written_name(value), faults: self.faults }
    }

    /// The pointer itself, and the name of the part or kit that it is in.
    pub(super) fn place(&self) -> (String, String) {
        (self.pointer.clone(), self.part.clone())
    }

    /// An id of a list's that another of it has already: told once, however often it comes.
    pub(super) fn duplicate(&mut self, id: &str, key: &str, list: &[Value]) {
        let place = alloc::format!("/{key}/");
        let same = |fault: &&mut Error| {
            let other = matches!(&fault.reason, Reason::Duplicate { given, .. } if given == id);
            other && fault.field.starts_with(&place)
        };
        if let Some(Error { reason: Reason::Duplicate { times, .. }, .. }) =
            self.faults.iter_mut().find(same)
        {
            *times += 1;
            return;
        }
        let has_id = |part: &Value| part.get("id").and_then(Value::as_str) == Some(id);
        let first = list.iter().position(has_id).unwrap_or(0);
        let first = alloc::format!("{place}{first}").into();
        let (given, meant) = (id.into(), Default::default());
        self.at("id").fault(Reason::Duplicate { given, first, times: 2, meant });
    }

    /// Something is wrong here.
    pub(super) fn fault(&mut self, reason: Reason) {
        let (field, part) = (self.pointer.clone(), self.part.clone());
        self.faults.push(Error { field, part, reason });
    }

    /// A value as an object.
    pub(super) fn object<'v>(&mut self, value: &'v Value) -> Option<&'v Object> {
        let map = value.as_object();
        if map.is_none() {
            self.fault(Reason::wrong_form(AN_OBJECT));
        }
        map
    }

    /// The list under a key; empty if it is not there or faulty.
    pub(super) fn list<'v>(&mut self, map: &'v Object, key: &str) -> &'v [Value] {
        let reason = match map.get(key) {
            None => return &[],
            Some(Value::Array(list)) if list.len() <= MOST => return list,
            Some(Value::Array(_)) => Reason::TooLarge { most: MOST, what: "entries" },
            Some(_) => Reason::wrong_form("a list in square brackets"),
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
            Value::String(text) if text.is_empty() && must == Must::Be => Reason::missing(TEXT),
            Value::String(text) if text.chars().count() <= LONGEST => return text.clone(),
            Value::String(_) => Reason::TooLarge { most: LONGEST, what: "characters" },
            Value::Null => Reason::missing(TEXT),
            _ => Reason::wrong_form(TEXT),
        };
        self.fault(reason);
        String::new()
    }

    /// Names every key that is not known; one that begins with `$` is a comment. A key that is
    /// missing because it is misspelt is reported once.
    pub(super) fn keys(&mut self, map: &Object, known: &[&str]) {
        for key in unknown_keys(map, known) {
            if let Some(meant) = misspelt(key, map, known) {
                let place = self.at(meant).pointer;
                let missed = |fault: &Error| matches!(fault.reason, Reason::Missing { .. });
                self.faults.retain(|fault| fault.field != place || !missed(fault));
            }
            self.at(key).fault(Reason::unknown(key, known));
        }
    }
}
