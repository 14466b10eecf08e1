//! Frame, deck and box of everything that the demo offers, and what to
//! take where the kits are mixed.

use crate::{build, combinations, demo};
use pitchline_core::catalog::Catalog;
use pitchline_core::fit::{SizeFrom, box_plan, clearances, deck_fit, lean, remedy};
use pitchline_core::{Draft, Notice, Slot, notices};

#[test]
fn every_combination_has_room() {
    let demo = demo();
    for kit in &demo.kits {
        let mut least = f64::INFINITY;
        for draft in combinations(&demo, &kit.id) {
            let build = build(&draft);
            let name = || {
                Slot::ALL.iter().map(|s| draft.record(*s).id.clone()).collect::<Vec<_>>().join(" ")
            };
            for centre_m in [build.truck.centre_min_m, build.truck.centre_max_m] {
                for clearance in clearances(&draft, &build, centre_m) {
                    assert!(clearance.room_m > 0.0, "{clearance:?}: {}", name());
                }
            }
            let plan = box_plan(&draft, &build);
            assert!(plan.fits, "{:?} {:?}: {}", plan.left_m, plan.counts, name());
            assert_eq!(plan.cell.from, SizeFrom::Format);
            let lean = lean(&draft, &build);
            assert!(!lean.bites, "{lean:?}: {}", name());
            let deck = deck_fit(&draft, &build);
            assert!(deck.bump_road_m > 0.0, "{deck:?}: {}", name());
            least = least.min(deck.bump_road_m);
        }
        println!("{}: {:.0} mm under the box at the least", kit.id, 1000.0 * least);
    }
}

/// The part to take for the first notice that names both slots.
fn mended(catalog: &Catalog, draft: &Draft, slots: [Slot; 2]) -> Option<(Slot, String)> {
    let found = notices(draft, &build(draft));
    let notice = found.iter().find(|n| slots.iter().all(|slot| n.slots().contains(slot)));
    let notice = notice.expect("it is noticed");
    remedy(draft, notice, &|slot| catalog.offered(&draft.kit, slot))
        .map(|remedy| (remedy.slot, remedy.part.id.clone()))
}

/// By reason: what the kit offers and fits, with the nearest figures.
#[test]
fn a_strange_part_is_mended_by_the_nearest_on_offer() {
    let demo = demo();
    for (kit, slot, part, meets, want) in [
        // 46 teeth are nearest to 68 of those with a spoked core.
        ("kittiwake", Slot::WheelPulley, "w68", Slot::Wheel, (Slot::WheelPulley, "w46")),
        // By the span of each input: 35 / 1980 + 12 / 1999 + 25 / 999 = 0.049 from 165 rpm/V,
        // 76 mΩ and 70 A; 5 / 1980 + 49 / 1999 + 35 / 999 = 0.062 from 135, 113 and 60.
        ("kittiwake", Slot::Motor, "windlass-130", Slot::MotorPulley, (Slot::Motor, "capstan-165")),
        ("gannet", Slot::MotorPulley, "m8-17", Slot::Motor, (Slot::MotorPulley, "m10-17")),
        ("gannet", Slot::Wheel, "shingle-110", Slot::WheelPulley, (Slot::Wheel, "buoy-165")),
        // Both chargers differ as much in amperes: the first on offer.
        ("kittiwake", Slot::Charger, "neap-54", Slot::Pack, (Slot::Charger, "neap-50")),
        ("gannet", Slot::Controller, "pilot-2", Slot::Pack, (Slot::Controller, "tug-2")),
    ] {
        let mut draft = demo.draft(kit);
        draft.set_record(slot, demo.part(slot.kind(), part).unwrap().clone());
        let found = mended(&demo, &draft, [slot, meets]);
        assert_eq!(found, Some((want.0, want.1.into())), "{kit} with {part}");
    }
}

#[test]
fn mounts_for_another_hanger_are_noticed_and_mended() {
    let demo = demo();
    let mut draft = demo.draft("gannet");
    let mut truck = draft.record(Slot::Truck).clone();
    truck.tags = vec!["wide".into(), "street".into()];
    draft.set_record(Slot::Truck, truck);
    let found = notices(&draft, &build(&draft));
    assert!(matches!(&found[..], [Notice::TagMismatch { one: Slot::Truck, .. }]), "{found:?}");
    let mended = mended(&demo, &draft, [Slot::Truck, Slot::Truck]);
    assert_eq!(mended, Some((Slot::Truck, "gantry".into())));
}

/// A charger is made for a pack, never a pack for a charger: 54.6 V on 12 in series is mended by
/// another charger, or by none, though a pack of 13 in series would agree with it.
#[test]
fn a_wrong_charger_is_never_mended_by_another_pack() {
    let demo = demo();
    let mut draft = demo.draft("kittiwake");
    draft.set_record(Slot::Charger, demo.part(Slot::Charger.kind(), "neap-54").unwrap().clone());
    let found = notices(&draft, &build(&draft));
    assert!(found.iter().any(|notice| matches!(notice, Notice::ChargerVoltage { .. })));
    let pack = demo.draft("gannet").record(Slot::Pack).clone();
    let packs_only = |slot| if slot == Slot::Pack { vec![&pack] } else { Vec::new() };
    for notice in &found {
        assert_eq!(remedy(&draft, notice, &packs_only), None, "{notice:?}");
    }
}

#[test]
fn where_nothing_on_offer_fits_there_is_no_remedy() {
    let demo = demo();
    let mut draft = demo.draft("kittiwake");
    draft.set_record(Slot::WheelPulley, demo.draft("gannet").record(Slot::WheelPulley).clone());
    let found = notices(&draft, &build(&draft));
    assert_eq!(remedy(&draft, &found[0], &|_| Vec::new()), None);
}
