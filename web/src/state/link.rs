//! The build in a link: `v=1&kit=…` and whatever differs from the kit.
//!
//! `slot=part_id` picks a part, `slot.key=value` changes one of its values, in
//! the units of the maker's file. It is meant to be read and edited by hand.

use crate::text::number;
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_decode_str, utf8_percent_encode};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, Error, Field, Reason, Record, Slot};

/// Version of the link's form.
pub const VERSION: &str = "1";

/// Longest link that is read, in bytes.
const LONGEST: usize = 8192;

/// Letters that need no escape in a fragment.
const PLAIN: &AsciiSet =
    &NON_ALPHANUMERIC.remove(b'-').remove(b'_').remove(b'.').remove(b'~').remove(b',');

/// The link's text, without the `#`.
#[must_use]
pub fn write(draft: &Draft, catalog: &Catalog) -> String {
    let mut out = format!("v={VERSION}");
    push(&mut out, "kit", &draft.kit);
    if !draft.name.is_empty() {
        push(&mut out, "name", &draft.name);
    }
    let mut plain = catalog.draft(&draft.kit);
    for slot in Slot::ALL.iter().copied() {
        let record = draft.record(slot);
        let other = record.id != plain.record(slot).id;
        if let Some(part) = catalog.part(slot.kind(), &record.id).filter(|_| other) {
            push(&mut out, slot.key(), &record.id);
            plain.set_record(slot, part.clone());
            if slot == Slot::Pack {
                catalog.follow_pack(&mut plain);
            }
        }
        for (index, field) in slot.kind().fields().iter().enumerate() {
            let value = record.value(index);
            if value != plain.record(slot).value(index) {
                push(&mut out, &format!("{}.{}", slot.key(), field.key), &written(field, value));
            }
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

/// Reads a link. What cannot be read is reported and left as the kit has it.
#[must_use]
pub fn read(link: &str, catalog: &Catalog) -> (Draft, Vec<Error>) {
    let mut faults = Vec::new();
    let first_kit = catalog.kits.first().map_or("", |kit| &kit.id);
    if link.len() > LONGEST {
        faults.push(Error::new("link", Reason::TooLarge { most: LONGEST, what: "letters" }));
        return (catalog.draft(first_kit), faults);
    }
    let pairs: Vec<(String, String)> =
        link.split('&').filter_map(|pair| pair.split_once('=')).map(decoded).collect();
    let find = |key: &str| pairs.iter().find(|(k, _)| k == key).map(|(_, v)| v.as_str());
    if find("v").is_some_and(|version| version != VERSION) {
        faults.push(Error::new("v", Reason::WrongForm { expected: "version 1" }));
    }
    let kit = find("kit").unwrap_or(first_kit);
    if catalog.kit(kit).is_none() && !kit.is_empty() {
        faults.push(unknown("kit", kit));
    }
    let kit = catalog.kit(kit).map_or(first_kit, |kit| &kit.id);
    let mut draft = catalog.draft(kit);
    draft.name = find("name").unwrap_or("").chars().take(80).collect();
    for slot in Slot::ALL.iter().copied().filter(|slot| slot.holds_part()) {
        let Some(id) = find(slot.key()) else { continue };
        match catalog.part(slot.kind(), id) {
            Some(part) => draft.set_record(slot, part.clone()),
            None => faults.push(unknown(slot.key(), id)),
        }
        if slot == Slot::Pack {
            catalog.follow_pack(&mut draft);
        }
    }
    for (key, value) in &pairs {
        if let Err(fault) = set(&mut draft, key, value) {
            faults.push(fault);
        }
    }
    (draft, faults)
}

/// Sets one value; keys without a dot have been read before.
fn set(draft: &mut Draft, key: &str, value: &str) -> Result<(), Error> {
    let Some((slot_key, field_key)) = key.split_once('.') else {
        let known = Slot::from_key(key).is_some() || ["v", "kit", "name"].contains(&key);
        return if known { Ok(()) } else { Err(unknown("link", key)) };
    };
    let slot = Slot::from_key(slot_key).ok_or_else(|| unknown("link", key))?;
    let kind = slot.kind();
    let index = kind.field_index(field_key).ok_or_else(|| unknown("link", key))?;
    let field = kind.fields().get(index).ok_or_else(|| unknown("link", key))?;
    let at = |error: Error| error.under(&format!("{slot_key}."));
    let value = if value.is_empty() {
        None
    } else if field.choices.is_empty() {
        let number = number::from_exact(value);
        let number = number.ok_or_else(|| at(Error::new(field.key, Reason::NotANumber)))?;
        Some(field.check(number).map_err(at)?)
    } else {
        Some(field.choice(value).map_err(at)?)
    };
    let mut record: Record = draft.record(slot).clone();
    record.set(index, value);
    record
        .checked(kind.fields())
        .map_err(|errors| errors.into_iter().next().map_or_else(|| unknown("link", key), at))?;
    draft.set_record(slot, record);
    Ok(())
}

fn decoded((key, value): (&str, &str)) -> (String, String) {
    let text = |part: &str| percent_decode_str(part).decode_utf8_lossy().into_owned();
    (text(key), text(value))
}

fn unknown(field: &str, given: &str) -> Error {
    let given = given.chars().take(60).collect();
    Error::new(field, Reason::Unknown { given, nearest: String::new() })
}
