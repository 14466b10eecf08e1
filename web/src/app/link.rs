//! The build in a link: `v=1&model=2&kit=…` and whatever differs from the kit.
//!
//! `model` is the version of the model whose figures the sender saw.
//!
//! `slot=part_id` picks a part, `slot.key=value` changes one of its values, in
//! the units of the maker's file. It is meant to be read and edited by hand.

use crate::text::{number, page};
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_decode_str, utf8_percent_encode};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, Error, Field, MODEL, Reason, Record, Slot};

/// Version of the link's form.
pub const VERSION: &str = "1";

/// Keys beside the slots.
const HEAD: [&str; 4] = ["v", "model", "kit", "name"];

/// Longest link that is read, in bytes.
pub(super) const LONGEST: usize = 8192;

/// Letters that need no escape in a fragment.
const PLAIN: &AsciiSet =
    &NON_ALPHANUMERIC.remove(b'-').remove(b'_').remove(b'.').remove(b'~').remove(b',');

/// The link's text, without the `#`.
#[must_use]
pub fn write(draft: &Draft, catalog: &Catalog) -> String {
    let mut out = format!("v={VERSION}&model={MODEL}");
    push(&mut out, "kit", &draft.kit);
    if !draft.name.is_empty() {
        push(&mut out, "name", &draft.name);
    }
    let mut plain = catalog.draft(&draft.kit);
    for slot in Slot::ALL.iter().copied() {
        let record = draft.record(slot);
        let missing = |draft: &Draft| draft.unfilled().iter().any(|u| u.slot == slot);
        if missing(draft) {
            // What was asked for stays in the link; a part that is not there has no values.
            if record.id != plain.record(slot).id {
                push(&mut out, slot.key(), &record.id);
            }
            continue;
        }
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
        faults.push(Error::new("v", Reason::wrong_form("version 1")));
    }
    faults.extend(other_model(find("model")));
    let kit = find("kit").unwrap_or(first_kit);
    if catalog.kit(kit).is_none() && !kit.is_empty() {
        let known: Vec<&str> = catalog.kits.iter().map(|kit| kit.id.as_str()).collect();
        faults.push(unknown("kit", kit, &known));
    }
    let kit = catalog.kit(kit).map_or(first_kit, |kit| &kit.id);
    let mut draft = catalog.draft(kit);
    draft.name = find("name").unwrap_or("").chars().take(80).collect();
    for slot in Slot::ALL.iter().copied().filter(|slot| slot.holds_part()) {
        let Some(id) = find(slot.key()) else { continue };
        // A part that is not here is told by name, and no other taken for it.
        catalog.fill(&mut draft, slot, &short(id));
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

/// What there is to say of the model that the figures beside a link were made by.
fn other_model(written: Option<&str>) -> Option<Error> {
    let why = match written.map(str::parse::<u32>) {
        Some(Ok(MODEL)) => return None,
        Some(Ok(version)) if version > MODEL => page::NEWER_MODEL,
        // Links had no such key before model 2.
        None | Some(Ok(_)) => page::OLDER_MODEL,
        Some(Err(_)) => return Some(Error::new("model", Reason::wrong_form("a whole number"))),
    };
    Some(Error::new("model", Reason::Unused { why }))
}

/// Sets one value; keys without a dot have been read before.
fn set(draft: &mut Draft, key: &str, value: &str) -> Result<(), Error> {
    let Some((slot_key, field_key)) = key.split_once('.') else {
        let known = Slot::from_key(key).is_some() || HEAD.contains(&key);
        return if known { Ok(()) } else { Err(unknown("link", key, &keys())) };
    };
    let slot = Slot::from_key(slot_key).ok_or_else(|| unknown("link", key, &keys()))?;
    let kind = slot.kind();
    let misspelt = || {
        let known: Vec<&str> = kind.fields().iter().map(|field| field.key).collect();
        unknown(slot_key, field_key, &known)
    };
    let index = kind.field_index(field_key).ok_or_else(misspelt)?;
    let field = kind.fields().get(index).ok_or_else(misspelt)?;
    let at = |error: Error| error.under(&format!("{slot_key}."));
    let value = if value.is_empty() {
        None
    } else if field.choices.is_empty() {
        Some(field.check(number::from_exact(value).unwrap_or(f64::NAN)).map_err(at)?)
    } else {
        Some(field.choice(value).map_err(at)?)
    };
    if draft.unfilled().iter().any(|unfilled| unfilled.slot == slot) {
        // A value of the part that is not there.
        return Ok(());
    }
    let mut record: Record = draft.record(slot).clone();
    record.set(index, value);
    record
        .checked(kind.fields(), draft.cell_class())
        .map_err(|errors| errors.into_iter().next().map_or_else(misspelt, at))?;
    draft.set_record(slot, record);
    Ok(())
}

fn decoded((key, value): (&str, &str)) -> (String, String) {
    let text = |part: &str| percent_decode_str(part).decode_utf8_lossy().into_owned();
    (text(key), text(value))
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

#[cfg(test)]
mod tests {
    use super::*;
    use pitchline_core::Kind;
    use proptest::prelude::*;

    fn demo() -> Catalog {
        Catalog::read(include_str!("../../catalog/catalogue.json")).unwrap().0
    }

    fn fields(faults: &[Error]) -> Vec<&str> {
        faults.iter().map(|fault| fault.field.as_str()).collect()
    }

    /// Links that were once given out must be read for ever, to the same build.
    #[test]
    fn old_links_are_still_read() {
        let catalog = demo();
        let (draft, faults) = read(
            "v=1&kit=kittiwake&name=To%20the%20pier%2C%20%C3%A9t%C3%A9&wheel_pulley=w38&rider.mass_kg=95&place.surface=pavers&rider.drag_area_m2=0.4",
            &catalog,
        );
        // From before links told the model.
        assert_eq!(fields(&faults), ["model"]);
        assert_eq!(draft.name, "To the pier, été");
        assert_eq!(draft.record(Slot::WheelPulley).id, "w38");
        assert_eq!(draft.value(Slot::Rider, "mass_kg"), Some(95.0));
        assert_eq!(draft.value(Slot::Place, "surface"), Some(3.0));
        assert_eq!(draft.value(Slot::Rider, "drag_area_m2"), Some(0.4));
    }

    #[test]
    fn a_kit_as_sold_is_a_short_link() {
        let catalog = demo();
        for kit in &catalog.kits {
            let link = write(&catalog.draft(&kit.id), &catalog);
            assert_eq!(link, format!("v=1&model={MODEL}&kit={}", kit.id));
        }
    }

    #[test]
    fn what_cannot_be_read_is_said_and_the_rest_is_used() {
        let catalog = demo();
        let (draft, faults) = read(
            &format!(
                "v=1&model={MODEL}&kit=kittiwake&wheel=w-none&motor.kv_rpm_per_v=9000&motor.colour=3&place.surface=ice&nonsense=1&rider.mass_kg=70"
            ),
            &catalog,
        );
        assert_eq!(fields(&faults), ["motor.kv_rpm_per_v", "motor", "place.surface", "link"]);
        assert_eq!(draft.value(Slot::Rider, "mass_kg"), Some(70.0));
    }

    /// Another wheel would be another board.
    #[test]
    fn a_part_that_is_not_here_is_kept_in_the_link() {
        let catalog = demo();
        let kit = &catalog.kits[0].id;
        let text = format!("v=1&model={MODEL}&kit={kit}&wheel=w-none&rider.mass_kg=70");
        let (mut draft, faults) = read(&(text.clone() + "&wheel.width_mm=50"), &catalog);
        assert_eq!(faults, []);
        let missing: Vec<_> = draft.unfilled().iter().map(|u| (u.slot, u.id.as_str())).collect();
        assert_eq!(missing, [(Slot::Wheel, "w-none")]);
        assert!(pitchline_core::Build::check(&draft).is_err());
        assert_eq!(write(&draft, &catalog), text);
        // A pick mends it.
        let other = catalog.offered(kit, Slot::Wheel)[0].id.clone();
        catalog.fill(&mut draft, Slot::Wheel, &other);
        assert!(pitchline_core::Build::check(&draft).is_ok());
        assert_eq!(
            write(&draft, &catalog),
            format!("v=1&model={MODEL}&kit={kit}&rider.mass_kg=70")
        );
    }

    /// Nor is what a kit is missing replaced by opening its link.
    #[test]
    fn a_kit_without_its_pack_is_a_link_without_one() {
        let text = include_str!("../../catalog/catalogue.json");
        let mut file: serde_json::Value = serde_json::from_str(text).unwrap();
        file["packs"][0]["mass_kg"] = "heavy".into();
        let (catalog, _) = Catalog::read(&file.to_string()).unwrap();
        for kit in &catalog.kits {
            let link = write(&catalog.draft(&kit.id), &catalog);
            assert_eq!(link, format!("v=1&model={MODEL}&kit={}", kit.id));
            assert_eq!(read(&link, &catalog), (catalog.draft(&kit.id), vec![]));
        }
        let without =
            |kit: &&pitchline_core::catalog::Kit| !catalog.draft(&kit.id).unfilled().is_empty();
        assert!(catalog.kits.iter().any(|kit| without(&kit)));
        // One that picks another pack is whole.
        let kit = catalog.kits.iter().find(without).unwrap();
        let pack = &catalog.offered(&kit.id, Slot::Pack)[0].id;
        let (draft, faults) = read(&format!("model={MODEL}&kit={}&pack={pack}", kit.id), &catalog);
        assert_eq!((draft.unfilled(), faults), (&[][..], vec![]));
        let link = write(&draft, &catalog);
        assert_eq!(read(&link, &catalog), (draft, vec![]));
    }

    #[test]
    fn too_long_or_too_new_is_said() {
        let catalog = demo();
        let (_, faults) = read(&format!("v=1&name={}", "x".repeat(LONGEST)), &catalog);
        assert!(matches!(faults[0].reason, Reason::TooLarge { .. }));
        let (_, faults) = read(&format!("v=2&model={MODEL}&kit=kittiwake"), &catalog);
        assert_eq!(faults[0].field, "v");
    }

    #[test]
    fn figures_of_another_model_are_told_and_the_link_is_opened() {
        let catalog = demo();
        let rest = "kit=gannet&rider.mass_kg=81";
        let (plain, faults) = read(&format!("v=1&model={MODEL}&{rest}"), &catalog);
        assert_eq!(faults, []);
        for (model, said) in [
            (String::new(), "older model"),
            ("&model=1".into(), "older model"),
            (format!("&model={}", MODEL - 1), "older model"),
            (format!("&model={}", MODEL + 1), "newer model"),
            ("&model=4294967295".into(), "newer model"),
            ("&model=".into(), "expected a whole number"),
            ("&model=two".into(), "expected a whole number"),
            ("&model=-1".into(), "expected a whole number"),
        ] {
            let (draft, faults) = read(&format!("v=1{model}&{rest}"), &catalog);
            assert_eq!(draft, plain, "{model}");
            assert_eq!(fields(&faults), ["model"], "{model}");
            assert!(faults[0].to_string().contains(said), "{model}: {}", faults[0]);
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        /// Any kit, some parts picked, some values altered: the link brings the same build.
        #[test]
        fn a_link_brings_the_same_build(
            kit in 0..2_usize,
            name in "[a-zA-Z0-9 &=#%äé,.]{0,20}",
            picks in proptest::collection::vec((0..Slot::ALL.len(), any::<prop::sample::Index>()), 0..5),
            values in proptest::collection::vec((0..Slot::ALL.len(), any::<prop::sample::Index>(), 0.0..1.0_f64), 0..8),
        ) {
            let catalog = demo();
            let kit = &catalog.kits[kit].id;
            let mut draft = catalog.draft(kit);
            draft.name = name;
            for (slot, index) in picks {
                let slot = Slot::ALL[slot];
                let offered = catalog.offered(kit, slot);
                if slot.holds_part() && !offered.is_empty() {
                    let part = offered[index.index(offered.len())].clone();
                    draft.set_record(slot, part);
                }
            }
            for (slot, index, share) in values {
                let slot = Slot::ALL[slot];
                let fields = slot.kind().fields();
                let at = index.index(fields.len());
                let field = &fields[at];
                let value = field.min + share * (field.max - field.min);
                draft.set_value(slot, at, Some(if field.must_be_whole() { value.round() } else { value }));
            }
            let (read, faults) = read(&write(&draft, &catalog), &catalog);
            prop_assert_eq!(faults, vec![]);
            prop_assert_eq!(read, draft);
        }

        #[test]
        fn no_text_breaks_the_reader(text in ".{0,200}") {
            let catalog = demo();
            let (draft, _) = read(&text, &catalog);
            let built = pitchline_core::Build::check(&draft);
            prop_assert_eq!(built.is_err(), !draft.unfilled().is_empty());
        }
    }

    #[test]
    fn every_key_can_stand_in_a_link() {
        // A key with a letter that needs an escape would not be readable.
        for kind in Kind::ALL {
            for field in kind.fields() {
                assert!(
                    field
                        .key
                        .chars()
                        .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_')
                );
            }
        }
    }
}
