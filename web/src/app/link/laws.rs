//! What holds for every link.

use super::*;
use pitchline_core::Kind;
use pitchline_core::{Error, Reason};
use proptest::prelude::*;

fn demo() -> Catalog {
    Catalog::read(include_str!("../../../catalog/catalogue.json")).unwrap().0
}

/// Reads a link, of which only the understood part is of interest.
fn read(text: &str, catalog: &Catalog) -> (Draft, Vec<Error>) {
    let (whole, faults) = super::read(text, catalog);
    (whole.draft, faults)
}

fn write(draft: &Draft, catalog: &Catalog) -> String {
    super::write(&draft.clone().into(), catalog)
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
    assert_eq!(faults, []);
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
    // So is what the link says of it, for a catalogue that has it.
    let more = text.clone() + "&wheel.width_mm=50";
    let (whole, faults) = super::read(&more, &catalog);
    assert_eq!(faults, []);
    assert_eq!(super::write(&whole, &catalog), more);
    let mut draft = whole.draft;
    let missing: Vec<_> = draft.unfilled().iter().map(|u| (u.slot, u.id.as_str())).collect();
    assert_eq!(missing, [(Slot::Wheel, "w-none")]);
    assert!(pitchline_core::Build::check(&draft).is_err());
    assert_eq!(write(&draft, &catalog), text);
    // A pick mends it.
    let other = catalog.offered(kit, Slot::Wheel)[0].id.clone();
    catalog.fill(&mut draft, Slot::Wheel, &other);
    assert!(pitchline_core::Build::check(&draft).is_ok());
    assert_eq!(write(&draft, &catalog), format!("v=1&model={MODEL}&kit={kit}&rider.mass_kg=70"));
}

/// Nor is what a kit is missing replaced by opening its link.
#[test]
fn a_kit_without_its_pack_is_a_link_without_one() {
    let text = include_str!("../../../catalog/catalogue.json");
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
    // Written by hand, it quotes no figures.
    assert_eq!(read(&format!("v=1&{rest}"), &catalog), (plain.clone(), vec![]));
    for (model, said) in [
        ("&model=1".into(), "older version of the calculation"),
        (format!("&model={}", MODEL - 1), "older version of the calculation"),
        (format!("&model={}", MODEL + 1), "newer version of the calculation"),
        ("&model=4294967295".into(), "newer version of the calculation"),
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

/// Texts as people and other programs write them, some long.
fn text() -> impl Strategy<Value = String> {
    prop_oneof![Just(String::new()), "[a-zA-Z0-9 &=#%äé,.\"{}\\[\\]\\\\]{0,20}", "[ -~]{60,90}"]
}

/// One change of a build: which slot, which of its inputs or texts, and what.
type Change = (prop::sample::Index, prop::sample::Index, f64, String);

fn change() -> impl Strategy<Value = Change> {
    (any::<prop::sample::Index>(), any::<prop::sample::Index>(), 0.0..1.3_f64, text())
}

/// Changes a value, empties one that may be empty, or changes a text.
fn put(draft: &mut Draft, (slot, which, share, text): &Change) {
    let slot = Slot::ALL[slot.index(Slot::ALL.len())];
    if is_unfilled(draft, slot) {
        return;
    }
    let (fields, tags) = (slot.kind().fields(), slot.kind().tags());
    let at = which.index(fields.len() + tags.len() + 4);
    let mut record = draft.record(slot).clone();
    record.tags.resize(tags.len(), String::new());
    match at.checked_sub(fields.len()) {
        None if *share > 1.0 => {
            if fields[at].need != pitchline_core::Need::Required {
                record.set(at, None);
            }
        }
        None => {
            let field = &fields[at];
            let value = field.min + share * (field.max - field.min);
            record.set(at, Some(if field.must_be_whole() { value.round() } else { value }));
        }
        Some(0) => record.id = text.clone(),
        Some(1) => record.name = text.clone(),
        Some(2) => record.source = text.clone(),
        Some(3) => record.notes = text.clone(),
        Some(tag) => record.tags[tag - 4] = text.clone(),
    }
    draft.set_record(slot, record);
}

/// The demo, whose first pack and second wheel are left out for a fault.
fn with_gaps() -> Catalog {
    let text = include_str!("../../../catalog/catalogue.json");
    let mut file: serde_json::Value = serde_json::from_str(text).unwrap();
    file["packs"][0]["mass_kg"] = "heavy".into();
    file["wheels"][1]["diameter_mm"] = 1.into();
    Catalog::read(&file.to_string()).unwrap().0
}

/// What is said of a build: notices, and what does not fit.
fn said(draft: &Draft, catalog: &Catalog) -> Option<String> {
    let build = pitchline_core::Build::check(draft).ok()?;
    let offered = |slot| catalog.offered(&draft.kit, slot).into_iter().cloned().collect();
    let offers = [Slot::Belt, Slot::MotorPulley, Slot::WheelPulley].map(offered);
    let fit = crate::app::Fit::of(draft.clone(), build, offers);
    Some(format!("{:?} {:?}", pitchline_core::notices(draft, &build), fit.together.misfits))
}

/// All of a build, whatever the order in which its slots were emptied.
fn parts(draft: &Draft) -> (&str, &str, Vec<String>) {
    let part = |slot: &Slot| {
        let unfilled = draft.unfilled().iter().find(|unfilled| unfilled.slot == *slot);
        format!("{:?} {unfilled:?}", draft.record(*slot))
    };
    (&draft.kit, &draft.name, Slot::ALL.iter().map(part).collect())
}

const KITS: [&str; 4] = ["kittiwake", "gannet", "dunlin", ""];
/// Pieces that this page does not understand.
const STRANGE: [&str; 8] = [
    "hat=red",
    "place.surface=ice",
    "rider.mood=%FF",
    "flag",
    "a.b.c=1",
    "rider.mass_kg=9999",
    "wheel.glow=%7B%22a%22%3A1%7D",
    "v2%2Ex=",
];

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Any kit, parts picked, missing or the sender's own, values and texts altered, and pieces that
    /// are not understood: the link brings the same build, the same notices and misfits, and the rest.
    #[test]
    fn a_link_brings_the_same_build(
        kit in 0..KITS.len(),
        gaps in any::<bool>(),
        name in text(),
        picks in proptest::collection::vec((0..Slot::ALL.len(), any::<prop::sample::Index>()), 0..5),
        missing in proptest::option::of((0..Slot::ALL.len(), text())),
        changes in proptest::collection::vec(change(), 0..12),
        strange in proptest::collection::btree_set(0..STRANGE.len(), 0..4),
        typical in any::<prop::sample::Index>(),
    ) {
        let catalog = if gaps { with_gaps() } else { demo() };
        let kit = KITS[kit];
        let mut draft = base(kit, &catalog);
        draft.name = name;
        for (slot, index) in picks {
            let slot = Slot::ALL[slot];
            let offered = catalog.offered(kit, slot);
            if slot.holds_part() && !offered.is_empty() {
                let part = offered[index.index(offered.len())].clone();
                draft.set_record(slot, part);
            }
        }
        if let Some((slot, id)) = missing.filter(|(slot, _)| Slot::ALL[*slot].holds_part()) {
            pick(&mut draft, Slot::ALL[slot], &id, &catalog);
        }
        // A part that came in full with a file.
        let own = Slot::ALL[typical.index(Slot::ALL.len())];
        if own.holds_part() {
            draft.set_record(own, own_record(own));
        }
        for change in &changes {
            put(&mut draft, change);
        }
        let mut whole = Whole::from(draft.clone());
        for piece in strange {
            whole.rest.piece(STRANGE[piece], false);
        }
        let link = super::write(&whole, &catalog);
        prop_assume!(link.len() <= LONGEST);
        let (back, faults) = super::read(&link, &catalog);
        prop_assert_eq!(parts(&back.draft), parts(&draft), "{}", link);
        prop_assert_eq!(said(&back.draft, &catalog), said(&draft, &catalog));
        let sorted = |whole: &Whole| {
            let mut pieces: Vec<_> = whole.rest.pieces().collect();
            pieces.sort();
            pieces
        };
        prop_assert_eq!(sorted(&back), sorted(&whole), "{}", link);
        prop_assert!(faults.len() >= sorted(&whole).len());
        prop_assert_eq!(super::write(&back, &catalog).len(), link.len());
        // By way of the store too.
        let kept = crate::app::saved::write_file(&whole, "").to_string();
        let (kept, _) = crate::app::saved::read_kept(&kept, &catalog).unwrap();
        prop_assert_eq!(parts(&kept.draft), parts(&draft));
        prop_assert_eq!(sorted(&kept), sorted(&whole));
    }

    #[test]
    fn no_text_breaks_the_reader(text in ".{0,200}") {
        let catalog = demo();
        let (draft, _) = read(&text, &catalog);
        let built = pitchline_core::Build::check(&draft);
        prop_assert_eq!(built.is_err(), !draft.unfilled().is_empty());
    }
}

/// Every value of the build altered: still a link that can be read.
#[test]
fn the_longest_honest_link_is_read() {
    let catalog = demo();
    let mut draft = catalog.draft("gannet");
    for slot in Slot::ALL.iter().copied() {
        for (index, field) in slot.kind().fields().iter().enumerate() {
            let third = field.min + (field.max - field.min) / 3.0;
            let value = if field.must_be_whole() { third.round() } else { third };
            draft.set_value(slot, index, Some(value));
        }
        let mut record = draft.record(slot).clone();
        record.name = format!("{} of my own, as I measured it", record.name);
        record.tags = slot.kind().tags().iter().map(|tag| format!("my own {tag}")).collect();
        draft.set_record(slot, record);
    }
    let link = write(&draft, &catalog);
    assert!(link.len() <= LONGEST, "{}", link.len());
    assert_eq!(read(&link, &catalog), (draft, vec![]));
}

#[test]
fn what_stands_twice_or_says_nothing_is_told_by_name() {
    let catalog = demo();
    let text = format!(
        "v=1&model={MODEL}&kit=gannet&rider.mass_kg=70&rider.mass_kg=80&flag&&rider=5&kit=x"
    );
    let (whole, faults) = super::read(&text, &catalog);
    assert_eq!(fields(&faults), ["rider.mass_kg", "link", "kit", "rider"]);
    assert!(faults[1].to_string().contains("\"flag\""), "{}", faults[1]);
    assert_eq!(whole.draft.value(Slot::Rider, "mass_kg"), Some(70.0));
    let written = super::write(&whole, &catalog);
    assert_eq!(super::read(&written, &catalog).0, whole, "{written}");
    for piece in ["rider.mass_kg=80", "flag", "rider=5", "kit=x"] {
        assert!(written.split('&').any(|other| other == piece), "{piece}: {written}");
    }
}

#[test]
fn every_key_can_stand_in_a_link() {
    // A key with a letter that needs an escape would not be readable.
    for kind in Kind::ALL {
        for field in kind.fields() {
            assert!(
                field.key.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_')
            );
        }
    }
}
