//! What was left out of a catalogue, and names that lead to nothing.

use super::Catalog;
use super::pointer::{Object, Pointer, written_name};
use crate::build::Unfilled;
use crate::error::{Error, Reason};
use crate::parts::{Kind, Slot};
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use serde_json::Value;

/// A part, or a whole list, that was left out for a fault.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct LeftOut {
    kind: Kind,
    /// Its id; none for a whole list.
    id: Option<String>,
    name: String,
    /// Whether it is the first of its list, with which a kit begins that names none.
    first: bool,
    pub(super) why: Error,
}

impl LeftOut {
    pub(super) fn list(kind: Kind, why: Error) -> Self {
        Self { kind, id: None, name: String::new(), first: true, why }
    }

    pub(super) fn part(kind: Kind, value: &Value, index: usize, why: Error) -> Self {
        let id = value.get("id").and_then(Value::as_str).unwrap_or_default();
        Self { kind, id: Some(id.into()), name: written_name(value), first: index == 0, why }
    }

    fn has(&self, kind: Kind, id: &str) -> bool {
        self.kind == kind && self.id.as_ref().is_none_or(|own| own == id)
    }

    fn unfilled(&self, slot: Slot, id: &str) -> Unfilled {
        let name = if self.name.is_empty() { id } else { &self.name };
        Unfilled { slot, id: id.into(), name: name.into(), why: Some(self.why.clone()) }
    }
}

impl Catalog {
    /// Why the part with that id does not go into the slot, although it is named for it: it was
    /// left out, or is not known. None where it is there and no other has its id.
    #[must_use]
    pub fn missing(&self, slot: Slot, id: &str) -> Option<Unfilled> {
        let kind = slot.kind();
        if let Some(left_out) = self.left_out.iter().find(|left_out| left_out.has(kind, id)) {
            return Some(left_out.unfilled(slot, id));
        }
        let unknown = || Unfilled { slot, id: id.into(), name: id.into(), why: None };
        self.part(kind, id).is_none().then(unknown)
    }

    /// The first of a kind, where that was left out.
    pub(super) fn first_missing(&self, slot: Slot) -> Option<Unfilled> {
        let kind = slot.kind();
        let first =
            self.left_out.iter().find(|left_out| left_out.kind == kind && left_out.first)?;
        Some(first.unfilled(slot, first.id.as_deref().unwrap_or_default()))
    }
}

/// A place in which a part is named.
pub(super) struct Named {
    kind: Kind,
    id: String,
    fault: Error,
}

impl Named {
    pub(super) fn here(kind: Kind, id: &str, here: &Pointer) -> Self {
        // The reason is put in once every part is known.
        let reason = Reason::Unused { why: "" };
        let (field, part) = here.place();
        Self { kind, id: id.into(), fault: Error { field, part, reason } }
    }
}

/// Tells of each name that leads to no part, once: unless the part was left out, which is told of
/// itself, or another part has taken its id.
pub(super) fn tell_unknown(catalog: &Catalog, file: &Object, named: &[Named], top: &mut Pointer) {
    let mut told: Vec<(Kind, &str, usize)> = Vec::new();
    for Named { kind, id, fault } in named {
        let (kind, list) = (*kind, kind.list_key());
        let known = catalog.part(kind, id).is_some();
        if known || catalog.left_out.iter().any(|left_out| left_out.has(kind, id)) {
            continue;
        }
        let list = format!("/{list}");
        let absent = !file.contains_key(kind.list_key());
        let same =
            |(other, name, _): &&(Kind, &str, usize)| *other == kind && (absent || name == id);
        if let Some((_, _, at)) = told.iter().find(same) {
            if let Some(Error { reason: Reason::Unknown { elsewhere, .. }, .. }) =
                top.faults.get_mut(*at)
            {
                *elsewhere += 1;
            }
            continue;
        }
        // A part that was copied, and not given the id by which it is asked for.
        let copied = top.faults.iter().position(|fault| {
            let unclear = |reason: &Reason| {
                matches!(reason, Reason::Duplicate { meant, .. } if meant.is_empty())
            };
            fault.field.starts_with(&format!("{list}/")) && unclear(&fault.reason)
        });
        if let Some(at) = copied {
            if let Some(Error { reason: Reason::Duplicate { meant, .. }, .. }) =
                top.faults.get_mut(at)
            {
                *meant = id.as_str().into();
            }
            told.push((kind, id, at));
            continue;
        }
        told.push((kind, id, top.faults.len()));
        if absent {
            let expected = format!("a list in square brackets with a part whose id is \"{id}\"");
            top.faults.push(Error::new(list, Reason::missing(expected)));
        } else {
            let ids: Vec<&str> = catalog.parts(kind).iter().map(|part| part.id.as_str()).collect();
            top.faults.push(Error { reason: Reason::unknown(id, &ids), ..fault.clone() });
        }
    }
}
