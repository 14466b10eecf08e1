//! The build in a link: `v=1&model=2&kit=…` and whatever differs from the kit.
//!
//! `model` is the version of the model whose figures the sender saw.
//!
//! `slot=part_id` picks a part, `slot.key=value` changes one of its values, in the units of the
//! maker's file, or one of its texts: name, tags, source, notes. `slot.id=…` makes it a part of
//! the sender's own. It is meant to be read and edited by hand.

#[cfg(test)]
mod laws;
mod read;

use super::rest::{PLAIN, Whole};
use crate::text::number;
use percent_encoding::utf8_percent_encode;
use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, Field, MODEL, Record, Slot};

pub use read::read;
pub(super) use read::read_more;

/// Version of the link's form.
pub const VERSION: &str = "1";

/// Keys beside the slots.
const HEAD: [&str; 4] = ["v", "model", "kit", "name"];

/// Longest link that is read, in bytes.
pub const LONGEST: usize = 8192;

/// The board that a link changes: the kit as it is sold. Where the catalogue has no such kit, the
/// parts of its first one.
fn base(kit: &str, catalog: &Catalog) -> Draft {
    let first = || catalog.kits.first().map_or("", |kit| &kit.id);
    let mut draft = catalog.draft(catalog.kit(kit).map_or_else(first, |kit| &kit.id));
    draft.kit = kit.into();
    draft
}

/// A record of the sender's own in a slot whose part is not there.
fn own_record(slot: Slot) -> Record {
    Record::typical(slot.kind().fields(), slot.kind().tags())
}

fn is_unfilled(draft: &Draft, slot: Slot) -> bool {
    draft.unfilled().iter().any(|unfilled| unfilled.slot == slot)
}

/// Picks the catalogue's part; one that is not there leaves the slot unfilled.
fn pick(draft: &mut Draft, slot: Slot, id: &str, catalog: &Catalog) {
    catalog.fill(draft, slot, id);
    if slot == Slot::Pack {
        catalog.follow_pack(draft);
    }
}

/// Whether two links say the same, whatever the order.
pub(super) fn alike(one: &str, other: &str) -> bool {
    let mut left: Vec<&str> = other.split('&').collect();
    let mut taken = |piece: &str| {
        let place = left.iter().position(|other| *other == piece);
        place.map(|place| left.swap_remove(place)).is_some()
    };
    one.split('&').all(&mut taken) && left.is_empty()
}

/// The link's text, without the `#`. Where a part's figures come from, and its notes, are in it as
/// long as it stays one that can be read.
#[must_use]
pub fn write(whole: &Whole, catalog: &Catalog) -> String {
    let Whole { draft, rest } = whole;
    let mut out = rest.link_version().unwrap_or_else(|| format!("v={VERSION}"));
    push(&mut out, "model", &MODEL.to_string());
    push(&mut out, "kit", &draft.kit);
    if !draft.name.is_empty() {
        push(&mut out, "name", &draft.name);
    }
    let mut plain = base(&draft.kit, catalog);
    let mut remarks = Vec::new();
    for slot in Slot::ALL.iter().copied() {
        let key = slot.key();
        let record = draft.record(slot);
        let same = record.id == plain.record(slot).id;
        if is_unfilled(draft, slot) {
            // What was asked for stays in the link; a part that is not there has no values.
            if !same || !is_unfilled(&plain, slot) {
                push(&mut out, key, &record.id);
                pick(&mut plain, slot, &record.id, catalog);
            }
            continue;
        }
        if !same && catalog.part(slot.kind(), &record.id).is_some() {
            push(&mut out, key, &record.id);
            pick(&mut plain, slot, &record.id, catalog);
        }
        if is_unfilled(&plain, slot) {
            plain.set_record(slot, own_record(slot));
            push(&mut out, &format!("{key}.id"), &record.id);
        } else if record.id != plain.record(slot).id {
            push(&mut out, &format!("{key}.id"), &record.id);
        }
        let plain = plain.record(slot);
        for (index, field) in slot.kind().fields().iter().enumerate() {
            let value = record.value(index);
            if value != plain.value(index) {
                push(&mut out, &format!("{key}.{}", field.key), &written(field, value));
            }
        }
        if record.name != plain.name {
            push(&mut out, &format!("{key}.name"), &record.name);
        }
        for (index, tag) in slot.kind().tags().iter().enumerate() {
            if record.tag(index) != plain.tag(index) {
                push(&mut out, &format!("{key}.{tag}"), record.tag(index));
            }
        }
        let texts =
            [("source", &record.source, &plain.source), ("notes", &record.notes, &plain.notes)];
        for (text, own, plain) in texts {
            if own != plain {
                let mut remark = String::new();
                push(&mut remark, &format!("{key}.{text}"), own);
                remarks.push(remark);
            }
        }
    }
    for piece in rest.pieces() {
        out.push('&');
        out.push_str(&piece);
    }
    for remark in remarks {
        if out.len() + remark.len() <= LONGEST {
            out.push_str(&remark);
        }
    }
    out
}

fn push(out: &mut String, key: &str, value: &str) {
    out.push('&');
    out.push_str(key);
    out.push('=');
    out.extend(utf8_percent_encode(value, PLAIN));
}

fn written(field: &Field, value: Option<f64>) -> String {
    match value {
        None => String::new(),
        Some(value) if field.choices.is_empty() => number::exact(value),
        Some(value) => field.choice_name(value).to_string(),
    }
}
