//! The check of a kit against every combination tried by hand, on random small catalogues.

use crate::check::report;
use pitchline_core::catalog::{Catalog, Cause, Finding};
use pitchline_core::fit::{BeltMiss, BeltOffers, BeltOnBoard, Severity, belt_fit, together};
use pitchline_core::{Belt, Build, Draft, Drive, Slot, notices};
use proptest::prelude::*;
use serde_json::{Value, json};

const CHOSEN: [Slot; 9] = [
    Slot::Charger,
    Slot::Deck,
    Slot::Wheel,
    Slot::WheelPulley,
    Slot::MotorPulley,
    Slot::Truck,
    Slot::Motor,
    Slot::Controller,
    Slot::Pack,
];

/// A combination: its parts by slot, and what is found of it.
struct Tried {
    parts: Vec<(Slot, String)>,
    found: Vec<(Cause, Severity)>,
}

/// The kit's own belt if the mount reaches it, else the one that fits best, else the nearest.
fn take_belt(catalog: &Catalog, draft: &mut Draft) {
    let belts: Vec<_> = catalog.offered(&draft.kit, Slot::Belt).into_iter().cloned().collect();
    let typed: Vec<_> =
        belts.iter().map(|belt| Belt::from_record(belt).expect("checked")).collect();
    let offers = BeltOffers { belts: &typed, motor_pulleys: &[], wheel_pulleys: &[] };
    let fit = belt_fit(&Drive::new(&Build::check(draft).expect("checked")), &offers);
    let fits = match fit.on_board {
        BeltOnBoard::NoTeeth => true,
        BeltOnBoard::TooShort => false,
        BeltOnBoard::Taut(belt) => belt.in_slot,
    };
    if fits {
        return;
    }
    let best = fit.pick().and_then(|belt| belt.offer);
    let miss = |found: Option<_>| found.map_or(f64::INFINITY, |miss: BeltMiss| miss.miss_m);
    let near = if miss(fit.longer) < miss(fit.shorter) { fit.longer } else { fit.shorter };
    if let Some(place) = best.or(near.and_then(|miss| miss.belt.offer)) {
        draft.set_record(Slot::Belt, belts[place].clone());
    }
}

fn all_tried(catalog: &Catalog) -> Vec<Tried> {
    let kit = &catalog.kits[0].id;
    let mut drafts = vec![catalog.draft(kit)];
    for slot in CHOSEN {
        let offered = catalog.offered(kit, slot);
        if offered.is_empty() {
            continue;
        }
        let with = |draft: &Draft| -> Vec<Draft> {
            let put = |part: &&pitchline_core::Record| {
                let mut draft = draft.clone();
                draft.set_record(slot, (*part).clone());
                if slot == Slot::Pack {
                    catalog.follow_pack(&mut draft);
                }
                draft
            };
            offered.iter().map(put).collect()
        };
        drafts = drafts.iter().flat_map(with).collect();
    }
    let none = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };
    let one = |mut draft: Draft| {
        let parts = CHOSEN.map(|slot| (slot, draft.record(slot).name.clone())).to_vec();
        take_belt(catalog, &mut draft);
        let build = Build::check(&draft).expect("checked");
        let misfits = together(&draft, &Drive::new(&build), &none).misfits;
        let found = misfits.into_iter().map(Finding::Misfit);
        let found = found.chain(notices(&draft, &build).into_iter().map(Finding::Notice));
        let found = found.map(|finding| (finding.cause(), finding.severity())).collect();
        Tried { parts, found }
    };
    drafts.into_iter().map(one).collect()
}

/// A list of parts, the numbers of which lie anywhere within these limits.
fn list(
    most: usize,
    keys: &'static [(&'static str, std::ops::RangeInclusive<i32>)],
    tag: &'static str,
) -> impl Strategy<Value = Vec<Value>> {
    let values: Vec<_> = keys.iter().map(|(_, range)| range.clone()).collect();
    let part = (values, prop::sample::select(vec!["", "a", "b"]));
    prop::collection::vec(part, 1..=most).prop_map(move |parts| {
        let make = |(place, (values, tagged)): (usize, (Vec<i32>, &str))| {
            let mut part =
                json!({ "id": format!("{tag}{place}"), "name": format!("{tag}{place}") });
            for ((key, _), value) in keys.iter().zip(values) {
                part[*key] = json!(value);
            }
            if !tagged.is_empty() && !tag.is_empty() {
                part[tag] = json!(tagged);
            }
            part
        };
        parts.into_iter().enumerate().map(make).collect()
    })
}

fn file() -> impl Strategy<Value = Value> {
    let drive = (
        list(
            2,
            &[
                ("kv_rpm_per_v", 100..=220),
                ("resistance_ll_mohm", 30..=120),
                ("max_current_a", 30..=90),
                ("can_diameter_mm", 50..=100),
            ],
            "shaft",
        ),
        list(2, &[("teeth", 10..=30)], "bore"),
        list(2, &[("teeth", 30..=70)], "core"),
        list(3, &[("teeth", 45..=90), ("width_mm", 9..=20)], "profile"),
        list(2, &[("diameter_mm", 80..=200), ("width_mm", 40..=70)], "core"),
    );
    let rest = (
        list(2, &[("series", 9..=13), ("parallel", 1..=5), ("protection_a", 30..=90)], "connector"),
        list(
            2,
            &[("motor_current_a", 20..=90), ("battery_current_a", 10..=50), ("max_bus_v", 40..=60)],
            "connector",
        ),
        list(
            2,
            &[
                ("motor_count", 1..=2),
                ("centre_min_mm", 60..=90),
                ("centre_max_mm", 70..=120),
                ("axle_mm", 55..=90),
            ],
            "hanger",
        ),
        list(
            2,
            &[("riser_mm", 0..=30), ("box_length_mm", 250..=500), ("box_height_mm", 40..=90)],
            "",
        ),
        list(2, &[("full_v", 40..=52), ("current_a", 2..=8)], "charge_port"),
    );
    (drive, rest).prop_map(|(mut drive, rest)| {
        for wheel in &mut drive.4 {
            wheel["rolling_smooth"] = json!(0.011);
        }
        json!({
            "schema_version": 1, "maker": "Ferry Lane Board Works",
            "motors": drive.0, "motor_pulleys": drive.1, "wheel_pulleys": drive.2,
            "belts": drive.3, "wheels": drive.4, "packs": rest.0, "controllers": rest.1,
            "trucks": rest.2, "decks": rest.3, "chargers": rest.4,
            "kits": [{ "id": "street", "name": "Street", "slots": {} }],
        })
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn the_counts_are_those_of_every_combination(file in file()) {
        let (catalog, faults) = Catalog::read(&file.to_string()).unwrap();
        prop_assert_eq!(faults, vec![]);
        let (found, tried) = (report(&catalog, 0), all_tried(&catalog));
        prop_assert_eq!(found.combinations, tried.len() as u64);
        prop_assert_eq!((found.checked, found.ungrouped), (found.combinations, 0));
        let has = |one: &Tried, severity| one.found.iter().any(|(_, found)| *found == severity);
        let misfits = tried.iter().filter(|one| has(one, Severity::DoesNotFit)).count();
        let tight = tried.iter().filter(|one| !has(one, Severity::DoesNotFit) && has(one, Severity::Tight));
        prop_assert_eq!((found.misfitting, found.tight), (misfits as u64, tight.count() as u64));
        let mut grouped = 0;
        for group in &found.groups {
            let with = |one: &&Tried| group.parts.iter().all(|part| one.parts.contains(part));
            let such = |one: &&Tried| one.found.contains(&(group.cause, group.severity));
            let with_parts = tried.iter().filter(with).count() as u64;
            let fail = tried.iter().filter(|one| with(one) && such(one)).count() as u64;
            prop_assert_eq!((group.combinations, group.with_parts), (fail, Some(with_parts)), "{:?}", group);
            prop_assert_eq!((group.worst.cause(), group.worst.severity()), (group.cause, group.severity));
            grouped += fail;
        }
        // Nothing is in two groups, or in none.
        let all: usize = tried.iter().map(|one| one.found.len()).sum();
        prop_assert_eq!(grouped, all as u64);

    }
}
