//! The demo: whole, small, ours, and every combination that it offers goes together.

use crate::{build, choices, combinations, demo, demo_text};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Kind, Notice, Slot, notices};
use std::collections::BTreeSet;

/// It is part of what the page must fetch.
const LARGEST: usize = 14_000;

#[test]
fn it_is_small() {
    assert!(demo_text().len() <= LARGEST, "{} bytes", demo_text().len());
}

#[test]
fn it_tells_what_it_is() {
    let demo = demo();
    assert_eq!(demo.maker, "Ferry Lane Board Works");
    assert_eq!(demo.currency, "EUR");
    let kits: Vec<_> = demo.kits.iter().map(|kit| (&*kit.id, &*kit.name)).collect();
    assert_eq!(kits, [("kittiwake", "Kittiwake"), ("gannet", "Gannet")]);
    for kind in Kind::ALL {
        for part in demo.parts(*kind) {
            assert_eq!(part.source, "Invented for the demo", "{}", part.id);
            assert!(part.notes.ends_with('.') && part.notes.len() < 60, "{}", part.notes);
            assert!(!part.name.is_empty(), "{}", part.id);
        }
    }
}

/// Figures of the boards that the trade knows, as `tests/physics/practice.rs` checks
/// them. Common practice, no source.
const TRADE: &[(Slot, &str, &[f64])] = &[
    (Slot::Pack, "series", &[10.0]),
    (Slot::Pack, "parallel", &[3.0, 4.0]),
    (Slot::Cell, "capacity_ah", &[3.0]),
    (Slot::Motor, "kv_rpm_per_v", &[190.0]),
    (Slot::Wheel, "diameter_mm", &[90.0, 97.0, 107.0]),
    (Slot::WheelPulley, "teeth", &[36.0, 40.0, 44.0]),
    (Slot::MotorPulley, "teeth", &[14.0, 15.0, 16.0, 18.0, 20.0]),
    (Slot::Belt, "width_mm", &[15.0]),
];

/// Every kit has its own figures: at most one is one of the boards that the trade
/// knows, and no part is named for one.
pub(crate) fn has_figures_of_its_own(catalog: &Catalog) {
    for kit in &catalog.kits {
        let mut shared = BTreeSet::new();
        for (slot, key, figures) in TRADE {
            let index = slot.kind().field_index(key).unwrap();
            for part in catalog.offered(&kit.id, *slot) {
                let value = part.value(index).filter(|value| figures.contains(value));
                shared.extend(value.map(|value| format!("{} {key} {value}", slot.key())));
                for number in part.name.split(|c: char| !c.is_ascii_digit()) {
                    let same = |figure: &f64| figure.to_string() == number;
                    assert!(!figures.iter().any(same), "{}: {number}", part.name);
                }
            }
        }
        assert!(shared.len() <= 1, "{}: {shared:?}", kit.id);
    }
}

#[test]
fn the_figures_are_our_own() {
    has_figures_of_its_own(&demo());
}

#[test]
fn each_kit_leaves_a_real_choice() {
    let demo = demo();
    for kit in &demo.kits {
        for (slot, least) in [
            (Slot::Wheel, 3),
            (Slot::MotorPulley, 3),
            (Slot::WheelPulley, 3),
            (Slot::Pack, 2),
            (Slot::Charger, 2),
            (Slot::Motor, 2),
        ] {
            let names: BTreeSet<_> =
                demo.offered(&kit.id, slot).iter().map(|part| part.name.clone()).collect();
            assert!(names.len() >= least, "{} {}: {names:?}", kit.id, slot.key());
        }
        // A slot without an offer would offer the other kit's parts too.
        let open: Vec<_> = choices(&demo, &kit.id)
            .into_iter()
            .filter(|s| demo.offered(&kit.id, *s).len() == demo.parts(s.kind()).len())
            .filter(|s| *s != Slot::Belt)
            .map(Slot::key)
            .collect();
        assert_eq!(open, Vec::<&str>::new(), "{}", kit.id);
    }
}

#[test]
fn no_part_is_there_for_nothing() {
    let demo = demo();
    for kind in Kind::ALL.iter().filter(|kind| **kind != Kind::Cell) {
        for part in demo.parts(*kind) {
            let slots = || Slot::ALL.iter().filter(|slot| slot.kind() == *kind);
            let used = demo.kits.iter().any(|kit| {
                slots().any(|slot| demo.offered(&kit.id, *slot).iter().any(|p| p.id == part.id))
            });
            assert!(used, "{}", part.id);
        }
    }
    for cell in demo.parts(Kind::Cell) {
        let named = |pack: &&pitchline_core::Record| pack.tag(2) == cell.id;
        assert!(demo.parts(Kind::Pack).iter().any(|pack| named(&pack)), "{}", cell.id);
    }
}

#[test]
fn every_combination_goes_together() {
    let demo = demo();
    for kit in &demo.kits {
        let all = combinations(&demo, &kit.id);
        // Wheels, two kinds of pulley, packs, motors and chargers at the least.
        assert!(all.len() >= 3 * 3 * 3 * 2 * 2 * 2, "{}", all.len());
        for draft in &all {
            assert_eq!(notices(draft, &build(draft)), [], "{}: {draft:?}", kit.id);
        }
    }
}

#[test]
fn each_pack_brings_the_cell_that_it_names() {
    let demo = demo();
    for kit in &demo.kits {
        for pack in demo.offered(&kit.id, Slot::Pack) {
            let mut draft = demo.draft(&kit.id);
            draft.set_record(Slot::Pack, pack.clone());
            demo.follow_pack(&mut draft);
            assert_eq!(draft.record(Slot::Cell).id, pack.tag(2), "{}", pack.id);
        }
    }
}

/// The other kit's motor, wheel, controller or charger is noticed.
#[test]
fn a_mix_of_the_kits_does_not_go_together() {
    let demo = demo();
    for (kit, other) in [("kittiwake", "gannet"), ("gannet", "kittiwake")] {
        for (slot, meets) in [
            (Slot::Motor, Slot::MotorPulley),
            (Slot::MotorPulley, Slot::Motor),
            (Slot::Wheel, Slot::WheelPulley),
            (Slot::WheelPulley, Slot::Wheel),
            (Slot::Controller, Slot::Pack),
            (Slot::Charger, Slot::Pack),
        ] {
            for part in demo.offered(other, slot) {
                let mut draft = demo.draft(kit);
                draft.set_record(slot, part.clone());
                let found = notices(&draft, &build(&draft));
                let named = found.iter().any(|notice| {
                    matches!(notice, Notice::TagMismatch { one, other, .. }
                        if [*one, *other] == [slot, meets] || [*one, *other] == [meets, slot])
                });
                assert!(named, "{kit} with {}: {found:?}", part.id);
                let volts = |n: &Notice| matches!(n, Notice::ChargerVoltage { .. });
                assert_eq!(found.iter().any(volts), slot == Slot::Charger, "{}", part.id);
            }
        }
    }
}

#[test]
fn most_parts_have_a_price_and_a_mass_and_some_do_not() {
    let demo = demo();
    for (key, none) in [("price", 3..=6), ("mass_kg", 3..=12)] {
        let mut given = 0;
        let mut left_out = 0;
        for kind in Kind::ALL.iter().filter(|kind| **kind != Kind::Cell) {
            let Some(index) = kind.field_index(key) else { continue };
            for part in demo.parts(*kind) {
                *if part.value(index).is_some() { &mut given } else { &mut left_out } += 1;
            }
        }
        assert!(none.contains(&left_out), "{key}: {left_out} left out");
        assert!(given > 4 * left_out, "{key}: {given} given, {left_out} left out");
    }
}
