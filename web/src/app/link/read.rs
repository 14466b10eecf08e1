//! Reading a link: what is understood is used, the rest is told by name and kept.

use super::super::rest::{LONGEST_TEXT, Rest, Whole, decoded, is_known};
use super::{HEAD, LONGEST, VERSION, base, is_unfilled, own_record, pick};
use crate::text::{keep, number};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, Error, MODEL, Reason, Record, Slot};

/// Reads a link. What cannot be read is reported and left as the kit has it; of a key that stands
/// there more than once the first one counts.
#[must_use]
pub fn read(link: &str, catalog: &Catalog) -> (Whole, Vec<Error>) {
    let mut faults = Vec::new();
    let first_kit = catalog.kits.first().map_or("", |kit| &kit.id);
    if link.len() > LONGEST {
        faults.push(Error::new("link", Reason::TooLarge { most: LONGEST, what: keep::CHARACTERS }));
        return (base(first_kit, catalog).into(), faults);
    }
    let mut rest = Rest::default();
    let pieces = link.split('&').filter(|piece| !piece.is_empty());
    let pieces = Piece::all(pieces, &mut rest, &mut faults);
    let find = |key| pieces.iter().find(|piece| piece.key == key);
    if let Some(version) = find("v").filter(|version| version.value != VERSION) {
        faults.push(Error::new("v", Reason::wrong_form(keep::VERSION)));
        rest.piece(version.raw, false);
    }
    faults.extend(other_model(find("model").map(|piece| piece.value.as_str())));
    for piece in ["kit", "name"].into_iter().filter_map(find) {
        if let Err(fault) = short_enough(&piece.key, &piece.value) {
            faults.push(fault);
            rest.piece(piece.raw, false);
        }
    }
    let text = |key| find(key).and_then(|piece| short_enough(key, &piece.value).ok());
    let (kit, name) = (text("kit").unwrap_or(first_kit), text("name").unwrap_or_default());
    if catalog.kit(kit).is_none() && !kit.is_empty() {
        let known: Vec<&str> = catalog.kits.iter().map(|kit| kit.id.as_str()).collect();
        faults.push(unknown("kit", kit, &known));
    }
    let mut draft = base(kit, catalog);
    draft.name = name.into();
    apply(&mut draft, &pieces, catalog, &mut rest, &mut faults);
    (Whole { draft, rest }, faults)
}

/// Reads pieces of a link into a build that stands already.
pub(in crate::app) fn read_more<'l>(
    whole: &mut Whole,
    pieces: impl Iterator<Item = &'l str>,
    catalog: &Catalog,
) -> Vec<Error> {
    let mut faults = Vec::new();
    let pieces = Piece::all(pieces, &mut whole.rest, &mut faults);
    for piece in pieces.iter().filter(|piece| HEAD.contains(&piece.key.as_str())) {
        // Text that was too long for a name.
        faults.extend(short_enough(&piece.key, &piece.value).err());
        whole.rest.piece(piece.raw, false);
    }
    apply(&mut whole.draft, &pieces, catalog, &mut whole.rest, &mut faults);
    faults
}

/// One `key=value` of a link.
struct Piece<'l> {
    raw: &'l str,
    key: String,
    value: String,
}

impl<'l> Piece<'l> {
    /// Those with a key that has not stood before; the others are told and kept.
    fn all(
        pieces: impl Iterator<Item = &'l str>,
        rest: &mut Rest,
        faults: &mut Vec<Error>,
    ) -> Vec<Self> {
        let mut found: Vec<Self> = Vec::new();
        for raw in pieces {
            let Some((key, value)) = raw.split_once('=') else {
                let expected = keep::piece(&short(&decoded(raw)));
                faults.push(Error::new("link", Reason::wrong_form(expected)));
                rest.piece(raw, false);
                continue;
            };
            let piece = Self { raw, key: decoded(key), value: decoded(value) };
            if found.iter().any(|other| other.key == piece.key) {
                faults.push(Error::new(short(&piece.key), Reason::wrong_form(keep::ONCE)));
                rest.piece(raw, true);
            } else {
                found.push(piece);
            }
        }
        found
    }
}

fn apply(
    draft: &mut Draft,
    pieces: &[Piece],
    catalog: &Catalog,
    rest: &mut Rest,
    faults: &mut Vec<Error>,
) {
    let find = |key: &str| pieces.iter().find(|piece| piece.key == key);
    let short_id = |piece: &&Piece| short_enough("", &piece.value).is_ok();
    for slot in Slot::ALL.iter().copied().filter(|slot| slot.holds_part()) {
        // A part that is not here is told by name, and no other taken for it.
        if let Some(picked) = find(slot.key()).filter(short_id) {
            pick(draft, slot, &picked.value, catalog);
        }
    }
    for slot in Slot::ALL.iter().copied() {
        if is_unfilled(draft, slot)
            && find(&format!("{}.id", slot.key())).is_some_and(|p| short_id(&p))
        {
            draft.set_record(slot, own_record(slot));
        }
    }
    for piece in pieces {
        match set(draft, &piece.key, &piece.value) {
            Ok(Set::Done) => {}
            Ok(Set::Waits) => rest.piece(piece.raw, false),
            Err(fault) => {
                faults.push(fault);
                rest.piece(piece.raw, false);
            }
        }
    }
}

/// What there is to say of the model that the figures beside a link were made by.
fn other_model(written: Option<&str>) -> Option<Error> {
    let why = match written.map(str::parse::<u32>) {
        // Whoever writes a link by hand quotes no figures beside it.
        None | Some(Ok(MODEL)) => return None,
        Some(Ok(version)) if version > MODEL => keep::NEWER_MODEL,
        Some(Ok(_)) => keep::OLDER_MODEL,
        Some(Err(_)) => return Some(Error::new("model", Reason::wrong_form(keep::WHOLE_NUMBER))),
    };
    Some(Error::new("model", Reason::Unused { why }))
}

enum Set {
    Done,
    /// It is of a part that is not there.
    Waits,
}

/// Sets one value or text; keys without a dot have been read before.
fn set(draft: &mut Draft, key: &str, value: &str) -> Result<Set, Error> {
    let Some((slot_key, field_key)) = key.split_once('.') else {
        return match Slot::from_key(key) {
            Some(slot) if slot.holds_part() => short_enough(key, value).map(|_| Set::Done),
            // It holds no part that could be picked.
            Some(_) => Err(Error::new(key, Reason::wrong_form(keep::dotted(key)))),
            None if HEAD.contains(&key) => Ok(Set::Done),
            None => Err(unknown("link", key, &keys())),
        };
    };
    let slot = Slot::from_key(slot_key).ok_or_else(|| unknown("link", key, &keys()))?;
    let kind = slot.kind();
    let at = |error: Error| error.under(&format!("{slot_key}."));
    if !is_known(slot, field_key) {
        return Err(misspelt(slot, field_key));
    }
    if is_unfilled(draft, slot) {
        return Ok(Set::Waits);
    }
    let mut record: Record = draft.record(slot).clone();
    let Some(index) = kind.field_index(field_key) else {
        set_text(&mut record, slot, field_key, value).map_err(at)?;
        draft.set_record(slot, record);
        return Ok(Set::Done);
    };
    let field = kind.fields().get(index).ok_or_else(|| misspelt(slot, field_key))?;
    let value = if value.is_empty() {
        None
    } else if field.choices.is_empty() {
        Some(field.check(number::from_exact(value).unwrap_or(f64::NAN)).map_err(at)?)
    } else {
        Some(field.choice(value).map_err(at)?)
    };
    record.set(index, value);
    record.checked(kind.fields(), draft.cell_class()).map_err(|errors| {
        errors.into_iter().next().map_or_else(|| misspelt(slot, field_key), at)
    })?;
    draft.set_record(slot, record);
    Ok(Set::Done)
}

/// Sets one of a record's texts.
fn set_text(record: &mut Record, slot: Slot, key: &str, value: &str) -> Result<(), Error> {
    let tags = slot.kind().tags();
    let place = match key {
        "id" => &mut record.id,
        "name" => &mut record.name,
        "source" => &mut record.source,
        "notes" => &mut record.notes,
        tag => {
            let index = tags.iter().position(|own| *own == tag);
            record.tags.resize(tags.len(), String::new());
            let Some(place) = index.and_then(|index| record.tags.get_mut(index)) else {
                return Ok(());
            };
            place
        }
    };
    *place = short_enough(key, value)?.into();
    Ok(())
}

fn misspelt(slot: Slot, key: &str) -> Error {
    let fields = slot.kind().fields().iter().map(|field| field.key);
    let known: Vec<&str> = fields.chain(slot.kind().tags().iter().copied()).collect();
    unknown(slot.key(), key, &known)
}

fn short_enough<'t>(key: &str, text: &'t str) -> Result<&'t str, Error> {
    if text.chars().count() <= LONGEST_TEXT {
        return Ok(text);
    }
    Err(Error::new(key, Reason::TooLarge { most: LONGEST_TEXT, what: keep::CHARACTERS }))
}

fn unknown(field: &str, given: &str, known: &[&str]) -> Error {
    Error::new(field, Reason::unknown(&short(given), known))
}

/// As much of a word as can be shown.
fn short(word: &str) -> String {
    word.chars().take(60).collect()
}

/// The keys without a dot.
fn keys() -> Vec<&'static str> {
    let slots = Slot::ALL.iter().map(|slot| slot.key());
    HEAD.into_iter().chain(slots).collect()
}
