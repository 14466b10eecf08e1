//! What a maker is told of a slip: which part, what is wrong, what would be right, and each slip
//! once. On a small catalogue of its own.

use pitchline_core::catalog::Catalog;
use pitchline_core::{Kind, Slot};
use serde_json::{Value, json};

/// A whole catalogue, with a part for each slot of its one kit, and two packs.
pub(crate) fn whole() -> Value {
    let mode = |id: &str| json!({ "id": id, "name": id, "current_percent": 80 });
    let pack = |id: &str, name: &str, parallel: u32| {
        json!({ "id": id, "name": name, "cell": "limpet", "series": 10,
            "parallel": parallel, "protection_a": 60, "mass_kg": 3.4 })
    };
    let slot = |id: &str| json!({ "default": id });
    json!({
        "schema_version": 1,
        "maker": "Ferry Lane Board Works",
        "cells": [{ "id": "limpet", "name": "Limpet", "chemistry": "energy", "capacity_ah": 4.1,
            "resistance_10s_mohm": 25, "max_discharge_a": 15 }],
        "packs": [pack("quay-41", "Quay 41", 4), pack("quay-51", "Quay 51", 5)],
        "motors": [{ "id": "reel", "name": "Reel", "kv_rpm_per_v": 170,
            "resistance_ll_mohm": 60, "max_current_a": 70 }],
        "controllers": [{ "id": "mate", "name": "Mate", "motor_current_a": 55,
            "battery_current_a": 25 }],
        "motor_pulleys": [{ "id": "p15", "name": "15 teeth", "teeth": 15 }],
        "wheel_pulleys": [{ "id": "w44", "name": "44 teeth", "teeth": 44 }],
        "belts": [{ "id": "b12", "name": "12 mm", "width_mm": 12 }],
        "wheels": [{ "id": "pebble", "name": "Pebble", "diameter_mm": 95,
            "rolling_smooth": 0.012 }],
        "trucks": [{ "id": "cross", "name": "Cross", "motor_count": 2 }],
        "decks": [{ "id": "plank", "name": "Plank", "mass_kg": 2.1 }],
        "chargers": [{ "id": "tide", "name": "Tide", "full_v": 42, "current_a": 4 }],
        "modes": [mode("calm"), mode("brisk"), mode("full")],
        "kits": [{ "id": "dinghy", "name": "Dinghy", "slots": {
            "pack": { "default": "quay-41", "options": ["quay-51"] },
            "motor": slot("reel"), "controller": slot("mate"), "motor_pulley": slot("p15"),
            "wheel_pulley": slot("w44"), "belt": slot("b12"), "wheel": slot("pebble"),
            "truck": slot("cross"), "deck": slot("plank"), "charger": slot("tide"),
            "mode_low": slot("calm"), "mode_mid": slot("brisk"), "mode_high": slot("full"),
        } }],
    })
}

/// The catalogue, and what is said of it.
pub(crate) fn read(file: &Value) -> (Catalog, Vec<String>) {
    let (catalog, faults) = Catalog::read(&file.to_string()).unwrap();
    (catalog, faults.iter().map(ToString::to_string).collect())
}

fn rename(part: &mut Value, from: &str, to: &str) {
    let map = part.as_object_mut().unwrap();
    let value = map.remove(from).unwrap();
    map.insert(to.into(), value);
}

#[test]
fn the_whole_one_is_whole() {
    let (catalog, said) = read(&whole());
    assert_eq!(said, Vec::<String>::new());
    assert_eq!(catalog.draft("dinghy").unfilled(), []);
}

/// Eight kinds of slip in one file make eight messages: which part, what is wrong, what is right.
#[test]
fn eight_slips_are_eight_messages() {
    let mut file = whole();
    // A value out of range: grams for kilograms.
    file["packs"][1]["mass_kg"] = json!(3400);
    // A number in quotes.
    file["wheels"][0]["diameter_mm"] = json!("95");
    // A misspelt key of a value that is required.
    rename(&mut file["motors"][0], "kv_rpm_per_v", "kv_rpm_v");
    // A misspelt key of a value that is not.
    file["decks"][0]["wheelbase"] = json!(700);
    // A required value forgotten.
    file["belts"][0].as_object_mut().unwrap().remove("width_mm");
    // A word that is none of the choices.
    file["cells"][0]["chemistry"] = json!("li-ion");
    // A copied part that kept its id; the kit asks for the one it should have.
    let mut copy = file["chargers"][0].clone();
    (copy["name"], copy["current_a"]) = (json!("Spring tide"), json!(8));
    file["chargers"].as_array_mut().unwrap().push(copy);
    file["kits"][0]["slots"]["charger"]["options"] = json!(["spring-tide"]);
    // A kit that names a part by a misspelt id, for two slots.
    file["kits"][0]["slots"]["mode_mid"]["default"] = json!("brisc");
    file["kits"][0]["slots"]["mode_high"]["options"] = json!(["brisc"]);

    let (_, said) = read(&file);
    assert_eq!(said.len(), 8, "{said:#?}");
    for (part, words) in [
        ("Quay 51", &["/packs/1/mass_kg", "3400 kg is outside the range", "0.1 to 60 kg"][..]),
        (
            "Pebble",
            &["/wheels/0/diameter_mm", "expected a number from 50 to 400 mm", "not in quotes"],
        ),
        (
            "Reel",
            &["/motors/0/kv_rpm_v", "\"kv_rpm_v\" is not known", "did you mean \"kv_rpm_per_v\"?"],
        ),
        (
            "Plank",
            &[
                "/decks/0/wheelbase",
                "is not known",
                "did you mean \"wheelbase_mm\"?",
                "Other names: ",
            ],
        ),
        ("12 mm", &["/belts/0/width_mm", "is required but missing", "a number from 5 to 50 mm"]),
        ("Limpet", &["/cells/0/chemistry", "\"li-ion\" is not one of", "energy, power, lfp"]),
        (
            "Spring tide",
            &[
                "/chargers/1/id",
                "\"tide\" appears twice, first at /chargers/0",
                "did you mean \"spring-tide\", which is used but missing?",
            ],
        ),
        (
            "Dinghy",
            &[
                "/kits/0/slots/mode_mid/default",
                "\"brisc\" is not known (also used in 1 other place)",
                "did you mean \"brisk\"?",
                "Other names: calm, full",
            ],
        ),
    ] {
        let own: Vec<_> = said.iter().filter(|s| s.starts_with(&format!("\"{part}\": "))).collect();
        let [own] = own.as_slice() else { panic!("{part}: {said:#?}") };
        for word in words {
            assert!(own.contains(word), "{word:?} is not in {own:?}");
        }
    }
}

/// The nearest first, not more than a glance takes in, and the number of the others.
#[test]
fn known_words_are_listed() {
    let mut file = whole();
    file["controllers"][0]["motor_curent_a"] = json!(55);
    file["motor_pulleys"][0]["colour"] = json!("red");
    let (_, said) = read(&file);
    let of = |part: &str| said.iter().find(|s| s.starts_with(part)).unwrap().clone();
    let long = of("\"Mate\"");
    assert!(long.contains("did you mean \"motor_current_a\"? Other names: "), "{long}");
    assert!(long.ends_with(" more"), "{long}");
    assert!(long.len() < 260, "{long}");
    let short = of("\"15 teeth\"");
    for known in ["bore", "id", "mass_kg", "name", "notes", "price", "source", "teeth"] {
        assert!(short.contains(known), "{short}");
    }
    assert!(!short.ends_with(" more"), "{short}");
}

/// One cause, one message.
#[test]
fn each_cause_is_told_once() {
    // An id asked for in three places, of a part that was copied and kept the other's.
    let mut file = whole();
    file["packs"][1]["id"] = json!("quay-41");
    let mut kit = file["kits"][0].clone();
    (kit["id"], kit["name"]) = (json!("skiff"), json!("Skiff"));
    kit["slots"]["pack"] = json!({ "default": "quay-51" });
    file["kits"].as_array_mut().unwrap().push(kit);
    let (_, said) = read(&file);
    assert_eq!(said.len(), 1, "{said:#?}");
    assert!(said[0].starts_with("\"Quay 51\": /packs/1/id: \"quay-41\" appears twice"), "{said:?}");
    assert!(said[0].contains("did you mean \"quay-51\""), "{said:?}");

    // The same id three times.
    let mut file = whole();
    let copy = file["modes"][0].clone();
    file["modes"].as_array_mut().unwrap().extend([copy.clone(), copy]);
    let (_, said) = read(&file);
    assert_eq!(said.len(), 1, "{said:#?}");
    assert!(said[0].contains("\"calm\" appears 3 times, first at /modes/0"), "{said:?}");

    // A list under a misspelt key, and no list at all.
    let mut file = whole();
    rename(&mut file, "wheels", "weels");
    let (_, said) = read(&file);
    assert_eq!(said.len(), 1, "{said:#?}");
    assert!(said[0].contains("did you mean \"wheels\"?"), "{said:?}");
    let mut file = whole();
    file.as_object_mut().unwrap().remove("modes");
    let (_, said) = read(&file);
    assert_eq!(said.len(), 1, "{said:#?}");
    assert!(said[0].starts_with("/modes: is required but missing"), "{said:?}");

    // A misspelt key of a kit.
    let mut file = whole();
    rename(&mut file["kits"][0]["slots"]["deck"], "default", "defalt");
    let (_, said) = read(&file);
    assert_eq!(said.len(), 1, "{said:#?}");
    assert!(said[0].contains("did you mean \"default\"?"), "{said:?}");
}

/// Damage to a part of a list.
type ToPart = fn(&mut Value, usize);
/// Damage to a list.
type ToList = fn(&mut Value);

/// Nothing takes the place of the part that a kit names: whatever becomes of it, the kit has
/// that part or none.
#[test]
fn a_kit_has_the_part_that_its_maker_chose_or_none() {
    let damage: [(&str, ToPart); 5] = [
        ("taken away", |list, at| drop(list.as_array_mut().unwrap().remove(at))),
        ("renamed", |list, at| list[at]["id"] = json!("another")),
        ("damaged", |list, at| list[at]["mass_kg"] = json!("heavy")),
        ("without a name", |list, at| drop(list[at].as_object_mut().unwrap().remove("name"))),
        ("no object", |list, at| list[at] = json!(null)),
    ];
    let lists: [(&str, ToList); 3] = [
        ("list taken away", |list| *list = json!([])),
        ("list damaged", |list| *list = json!({})),
        ("list too long", |list| *list = json!(vec![0; 2001])),
    ];
    for file in [whole(), crate::fault::demo_value()] {
        let (sound, said) = read(&file);
        assert_eq!(said, Vec::<String>::new());
        for kind in Kind::ALL.iter().filter(|kind| !kind.list_key().is_empty()) {
            let key = kind.list_key();
            for at in 0..sound.parts(*kind).len() {
                for (what, change) in damage {
                    let mut broken = file.clone();
                    change(&mut broken[key], at);
                    // A mode has no mass, so nothing would be wrong with it but an unknown key.
                    same_or_none(&sound, &broken, &format!("{key}/{at} {what}"));
                }
            }
            for (what, change) in lists {
                let mut broken = file.clone();
                change(&mut broken[key]);
                same_or_none(&sound, &broken, &format!("{key}: {what}"));
            }
        }
        // And whatever becomes of a kit's own words for it.
        for kit in 0..sound.kits.len() {
            for slot in Slot::ALL.iter().filter(|slot| slot.holds_part()) {
                if file["kits"][kit]["slots"].get(slot.key()).is_none() {
                    continue;
                }
                for value in [json!(null), json!({}), json!("x"), json!({ "default": 5 })] {
                    let mut broken = file.clone();
                    broken["kits"][kit]["slots"][slot.key()] = value.clone();
                    same_or_none(&sound, &broken, &format!("{kit} {}: {value}", slot.key()));
                }
                let mut broken = file.clone();
                let misspelt = format!("{}_", slot.key());
                rename(&mut broken["kits"][kit]["slots"], slot.key(), &misspelt);
                same_or_none(&sound, &broken, &misspelt);
            }
        }
    }
}

/// Every kit of the damaged file has each part as in the sound one, or says that it is missing
/// and cannot be built.
fn same_or_none(sound: &Catalog, broken: &Value, what: &str) {
    let (catalog, _) = read(broken);
    for kit in &catalog.kits {
        let (was, is) = (sound.draft(&kit.id), catalog.draft(&kit.id));
        let mut missing = false;
        for slot in Slot::ALL.iter().copied().filter(|slot| slot.holds_part()) {
            let unfilled = is.unfilled().iter().any(|unfilled| unfilled.slot == slot);
            missing |= unfilled;
            let same = is.record(slot).id == was.record(slot).id;
            // The cell is the pack's: without the pack nobody knows it.
            let of_pack = slot == Slot::Cell && missing;
            let other = is.record(slot).id.clone();
            assert!(unfilled || same || of_pack, "{what}: {} has {other:?}", slot.key());
        }
        let built = pitchline_core::Build::check(&is);
        assert_eq!(built.is_err(), missing, "{what}: {built:?}");
    }
}

/// Which of two different parts with one id is meant, nobody can tell.
#[test]
fn an_id_of_two_parts_is_no_choice() {
    let mut file = whole();
    file["packs"][1]["id"] = json!("quay-41");
    file["kits"][0]["slots"]["pack"] = json!({ "default": "quay-41" });
    let (catalog, _) = read(&file);
    let draft = catalog.draft("dinghy");
    let [unfilled] = draft.unfilled() else { panic!("{:?}", draft.unfilled()) };
    assert_eq!((unfilled.slot, unfilled.id.as_str()), (Slot::Pack, "quay-41"));
    // The same part twice is the same part.
    let copy = file["packs"][0].clone();
    file["packs"][1] = copy;
    let (catalog, _) = read(&file);
    assert_eq!(catalog.draft("dinghy").unfilled(), []);
}

/// It names the part and why it is missing, and a pick mends it.
#[test]
fn a_missing_part_is_named_until_another_is_picked() {
    let mut file = whole();
    file["packs"][0]["mass_kg"] = json!(3400);
    let (catalog, _) = read(&file);
    let mut draft = catalog.draft("dinghy");
    let [unfilled] = draft.unfilled() else { panic!("{:?}", draft.unfilled()) };
    assert_eq!((unfilled.slot, unfilled.name.as_str()), (Slot::Pack, "Quay 41"));
    let why = unfilled.why.as_ref().unwrap().to_string();
    assert!(why.contains("/packs/0/mass_kg") && why.contains("0.1 to 60 kg"), "{why}");
    let errors = pitchline_core::Build::check(&draft).unwrap_err();
    assert_eq!(errors.len(), 1);
    assert_eq!(errors[0].to_string(), "pack: \"Quay 41\" isn't available; pick another part");
    // The other pack is on offer, and fills the slot.
    let offered: Vec<_> = catalog.offered("dinghy", Slot::Pack).iter().map(|p| &p.id).collect();
    assert_eq!(offered, ["quay-51"]);
    catalog.fill(&mut draft, Slot::Pack, "quay-51");
    catalog.follow_pack(&mut draft);
    assert_eq!(draft.unfilled(), []);
    assert!(pitchline_core::Build::check(&draft).is_ok());
}

/// A pack's own cell is part of it: another cell would be another pack.
#[test]
fn a_pack_without_its_cell_has_no_other() {
    let mut file = whole();
    file["cells"][0]["capacity_ah"] = json!(0);
    let other = json!({ "id": "other", "name": "Other", "chemistry": "power",
        "capacity_ah": 2.5, "resistance_10s_mohm": 15, "max_discharge_a": 25 });
    file["cells"].as_array_mut().unwrap().push(other);
    let (catalog, said) = read(&file);
    assert_eq!(said.len(), 1, "{said:?}");
    let draft = catalog.draft("dinghy");
    let names: Vec<_> = draft.unfilled().iter().map(|u| (u.slot, u.name.as_str())).collect();
    assert_eq!(names, [(Slot::Cell, "Limpet")]);
}
