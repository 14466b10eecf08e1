//! What a link, a file or a saved build says beyond what this page understands: a later version's
//! keys and values, and slips. Kept as it came, and written back wherever the build is written.

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_decode_str, utf8_percent_encode};
use pitchline_core::{Draft, Slot};
use serde_json::{Map, Value};

/// Letters that need no escape in a fragment.
pub(super) const PLAIN: &AsciiSet =
    &NON_ALPHANUMERIC.remove(b'-').remove(b'_').remove(b'.').remove(b'~').remove(b',');
/// The same for keys: a dot of their own is none between slot and key.
const PLAIN_KEY: &AsciiSet = &PLAIN.add(b'.');

/// Key in a file for pieces of a link that have no place elsewhere in it. They are read as in a link.
pub(super) const LINK: &str = "link";
/// Key in a file for pieces of a link whose key stood there before. They are only kept.
pub(super) const REPEATED: &str = "repeated";
/// Longest text that is read under a key, in characters, as in files.
pub(super) const LONGEST_TEXT: usize = 400;

/// A build, and what came with it that this page does not understand.
#[derive(Clone, Debug, PartialEq)]
pub struct Whole {
    /// Valid in all that is filled.
    pub draft: Draft,
    /// The rest.
    pub rest: Rest,
}

impl From<Draft> for Whole {
    fn from(draft: Draft) -> Self {
        Self { draft, rest: Rest::default() }
    }
}

/// What is not understood, in the order in which it came.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rest(Vec<Kept>);

#[derive(Clone, Debug, PartialEq)]
struct Kept {
    /// Empty for a key beside the slots.
    slot: String,
    key: String,
    raw: Raw,
}

#[derive(Clone, Debug, PartialEq)]
enum Raw {
    /// A piece of a link, escapes and all.
    Piece(String),
    /// A piece whose key stood in the link before.
    Again(String),
    /// A value of a file.
    Json(Value),
}

impl Kept {
    /// A remark in a file, which has no place in a link.
    fn is_remark(&self) -> bool {
        self.key.starts_with('$') && matches!(self.raw, Raw::Json(_))
    }
}

impl Rest {
    /// Whether all was understood.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Keeps a piece of a link; `again` where its key stood there before.
    pub(super) fn piece(&mut self, piece: &str, again: bool) {
        let raw = if again { Raw::Again(piece.into()) } else { Raw::Piece(piece.into()) };
        let (slot, key) = place(piece);
        self.0.push(Kept { slot, key, raw });
    }

    /// Keeps a value of a file; the slot is empty for a key beside the slots.
    pub(super) fn value(&mut self, slot: &str, key: &str, value: Value) {
        self.0.push(Kept { slot: slot.into(), key: key.into(), raw: Raw::Json(value) });
    }

    /// What stands in a place of a file was replaced by the reader.
    pub(super) fn forget(&mut self, slot: Slot, key: &str) {
        let slot = slot.key();
        self.0.retain(|kept| {
            let place = (kept.slot.as_str(), kept.key.as_str());
            place != (slot, key) && place != ("", slot)
        });
    }

    /// So was all that stands in a slot.
    pub(super) fn forget_slot(&mut self, slot: Slot) {
        self.0.retain(|kept| kept.slots_key() != slot.key());
    }

    /// So was a key beside the slots.
    pub(super) fn forget_key(&mut self, key: &str) {
        self.0.retain(|kept| !(kept.slot.is_empty() && kept.key == key));
    }

    /// Keeps only what belongs to these slots.
    pub(super) fn keep_slots(&mut self, keep: impl Fn(Slot) -> bool) {
        self.0.retain(|kept| Slot::from_key(kept.slots_key()).is_some_and(&keep));
    }

    /// The whole record of a slot, where it could not be read.
    pub(super) fn record(&self, slot: Slot) -> Option<&Value> {
        self.0.iter().find_map(|kept| match &kept.raw {
            Raw::Json(value) if kept.slot.is_empty() && kept.key == slot.key() => Some(value),
            _ => None,
        })
    }

    /// The version of the link's form, where it is another than ours.
    pub(super) fn link_version(&self) -> Option<String> {
        self.0.iter().find(|kept| kept.is_link_version()).map(Kept::piece)
    }

    /// What is written behind all that is understood. Remarks of files stay in files.
    pub(super) fn pieces(&self) -> impl Iterator<Item = String> {
        let told = |kept: &&Kept| !kept.is_remark() && !kept.is_link_version();
        self.0.iter().filter(told).map(Kept::piece)
    }

    /// Writes all of it into a file; what has no place there beside `link`.
    pub(super) fn write_into(&self, map: &mut Map<String, Value>, mut link: Vec<Value>) {
        let mut repeated = Vec::new();
        for kept in &self.0 {
            match &kept.raw {
                Raw::Again(piece) => repeated.push(piece.as_str().into()),
                _ if kept.put_into(map) => {}
                _ => link.push(kept.piece().into()),
            }
        }
        for (key, list) in [(LINK, link), (REPEATED, repeated)] {
            if !list.is_empty() {
                map.insert(key.into(), list.into());
            }
        }
    }
}

impl Kept {
    /// The slot that it belongs to, also where it is a slot's whole record.
    fn slots_key(&self) -> &str {
        if self.slot.is_empty() { &self.key } else { &self.slot }
    }

    fn is_link_version(&self) -> bool {
        let again = matches!(self.raw, Raw::Again(_));
        self.slot.is_empty() && self.key == "v" && !again
    }

    /// As a piece of a link.
    fn piece(&self) -> String {
        let value = match &self.raw {
            Raw::Piece(piece) | Raw::Again(piece) => return piece.clone(),
            Raw::Json(value) => value,
        };
        let mut piece = String::new();
        if self.slot.is_empty() {
            piece.extend(utf8_percent_encode(&self.key, PLAIN_KEY));
        } else {
            piece.extend(utf8_percent_encode(&self.slot, PLAIN_KEY));
            piece.push('.');
            piece.extend(utf8_percent_encode(&self.key, PLAIN));
        }
        if let Some(text) = text_of(value) {
            piece.push('=');
            piece.extend(utf8_percent_encode(&text, PLAIN));
        }
        piece
    }

    /// Puts it where it belongs in a file; whether there was room.
    fn put_into(&self, map: &mut Map<String, Value>) -> bool {
        let known_slot = Slot::from_key(&self.slot);
        let value = match &self.raw {
            Raw::Json(value) => value.clone(),
            // A link's own form of what is understood: another value has its place in the file.
            Raw::Piece(_) if known_slot.is_some_and(|slot| is_known(slot, &self.key)) => {
                return false;
            }
            Raw::Piece(piece) | Raw::Again(piece) => match value_of_piece(piece) {
                Some(value) => value,
                None => return false,
            },
        };
        let of_file = matches!(self.raw, Raw::Json(_));
        if self.slot.is_empty() {
            let empty = |now: &Value| now.as_str() == Some("");
            let free = match self.key.as_str() {
                LINK | REPEATED | "format" | "app" | "created" => false,
                "version" => true,
                key if Slot::from_key(key).is_some() => of_file,
                key => map.get(key).is_none_or(empty),
            };
            if free {
                map.insert(self.key.clone(), value);
            }
            return free;
        }
        if known_slot.is_some() && !map.contains_key(&self.slot) && !of_file {
            // A slot that is not filled must not look like one.
            return false;
        }
        let record = map.entry(self.slot.clone()).or_insert_with(|| Map::new().into());
        let Some(record) = record.as_object_mut() else { return false };
        let free = !record.contains_key(&self.key);
        if free {
            record.insert(self.key.clone(), value);
        }
        free
    }
}

/// Whether a key of a slot is one that this page reads.
pub(super) fn is_known(slot: Slot, key: &str) -> bool {
    let kind = slot.kind();
    let text = matches!(key, "id" | "name" | "source" | "notes");
    text || kind.field_index(key).is_some() || kind.tags().contains(&key)
}

/// Text of a link without its escapes.
pub(super) fn decoded(text: &str) -> String {
    percent_decode_str(text).decode_utf8_lossy().into_owned()
}

/// Slot and key of a link's piece.
fn place(piece: &str) -> (String, String) {
    let key = piece.split_once('=').map_or(piece, |(key, _)| key);
    match key.split_once('.') {
        Some((slot, key)) if !slot.is_empty() => (decoded(slot), decoded(key)),
        _ => (String::new(), decoded(key)),
    }
}

/// A value of a link as one of a file; none where it would not come back the same.
fn value_of_piece(piece: &str) -> Option<Value> {
    let (key, text) = piece.split_once('=').map_or((piece, None), |(k, v)| (k, Some(v)));
    percent_decode_str(key).decode_utf8().ok()?;
    let Some(text) = text else { return Some(Value::Null) };
    Some(value_of(&percent_decode_str(text).decode_utf8().ok()?))
}

/// A number or JSON where the text is exactly that, or else a string.
fn value_of(text: &str) -> Value {
    match serde_json::from_str::<Value>(text) {
        // Quoted only where it would else be something else.
        Ok(Value::String(inner)) if value_of(&inner) == *inner => text.into(),
        Ok(value) if !value.is_null() && format!("{value}") == text => value,
        _ => text.into(),
    }
}

/// The other way round; none for what a link says by a key alone.
fn text_of(value: &Value) -> Option<String> {
    match value {
        Value::Null => None,
        Value::String(text) if value_of(text) == *value => Some(text.clone()),
        other => Some(other.to_string()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use serde_json::json;

    #[test]
    fn a_value_reads_in_a_link_as_someone_would_write_it() {
        for (value, text) in [
            (json!("ice"), "ice"),
            (json!(3), "3"),
            (json!(0.25), "0.25"),
            (json!("3"), "\"3\""),
            (json!(true), "true"),
            (json!({ "a": [1, 2] }), "{\"a\":[1,2]}"),
            (json!("1.50"), "1.50"),
        ] {
            assert_eq!(text_of(&value).as_deref(), Some(text));
            assert_eq!(value_of(text), value);
        }
        assert_eq!(text_of(&Value::Null), None);
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        /// From a link into a file and back.
        #[test]
        fn text_comes_back_from_a_file(text in "[ -~é]{0,20}") {
            prop_assert_eq!(text_of(&value_of(&text)), Some(text));
        }
    }
}
