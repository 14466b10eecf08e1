//! The TypeScript declarations of the module: fresh, of one mind with what goes in and comes out,
//! and with a unit for each number.

use crate::declared_type::{Declared, Type, faults, fields, has_numbers, read};
use crate::{demo, written};
use pitchline_core::catalog::{Outcome, declarations, write_build};
use serde_json::{Value, json};

#[test]
fn the_declarations_are_fresh() {
    written::keep("web/catalog/pitchline.d.ts", &declarations(), |kept, fresh| kept == fresh);
}

/// Where a value is not what a declared name says.
fn against(declared: &Declared, name: &str, value: &Value) -> Vec<String> {
    faults(declared, &Type::Named(name.into()), value, name)
}

/// Builds that call for answers of many kinds.
fn builds() -> Vec<Value> {
    let plain = [
        json!({}),
        // A charger of other volts, a tag that does not match, and a full cell of too many volts.
        json!({ "charger": { "full_v": 42, "current_a": 4, "charge_port": "round" },
            "pack": { "series": 12, "parallel": 3, "protection_a": 60, "charge_port": "square" },
            "cell": { "capacity_ah": 3, "resistance_10s_mohm": 20, "max_discharge_a": 20,
                "chemistry": "lfp", "full_v": 4.2 } }),
        // Too cold to charge, colder than its class was checked, and a box that just clears a bump.
        json!({ "place": { "air_c": -20, "headwind_km_h": -20, "bump_mm": 200 },
            "deck": { "mass_kg": 2.6, "box_height_mm": 59 } }),
        // A belt that is too short, a box too small and too low, and wheels that bite.
        json!({ "belt": { "width_mm": 9, "teeth": 40 }, "bench": { "measured_centre_mm": 71,
            "belt_in_hand_teeth": 54 }, "truck": { "motor_count": 2, "max_lean_deg": 40,
            "hanger_width_mm": 120 }, "deck": { "mass_kg": 2, "box_length_mm": 80,
            "box_height_mm": 120, "riser_mm": 0, "sag_mm": 40 } }),
        // A belt out of the mount's reach, little grip, and a charger too strong for the cells.
        json!({ "belt": { "width_mm": 5, "teeth": 75 }, "ride": { "grade_percent": 60 },
            "place": { "grip_percent": 5, "surface": "packed_gravel" },
            "bench": { "measured_centre_mm": 20 },
            "pack": { "series": 12, "parallel": 3, "protection_a": 60 },
            "charger": { "full_v": 50.4, "current_a": 20 } }),
        json!({ "motor_pulley": { "teeth": 7 }, "whel": {} }),
    ];
    let catalog = demo();
    let kits = catalog.kits.iter().map(|kit| write_build(&catalog.draft(&kit.id)));
    plain.into_iter().chain(kits).collect()
}

#[test]
fn what_comes_out_is_what_is_declared() {
    let declared = read(&declarations());
    let options = json!({ "bands": true, "catalogue": "2" });
    assert_eq!(against(&declared, "Options", &options), Vec::<String>::new());
    let mut seen = String::new();
    for build in builds() {
        // Bands take long, and are the same for every board in form.
        let options = seen.is_empty().then_some(&options);
        let outcome = serde_json::to_value(Outcome::of(Some(&build), options)).unwrap();
        assert_eq!(against(&declared, "Outcome", &outcome), Vec::<String>::new(), "{build}");
        seen.push_str(&outcome.to_string());
    }
    // The builds do call for all these.
    for key in [
        "errors",
        "ignored",
        "found",
        "refused",
        "wrong_volts",
        "too_cold",
        "tag_mismatch",
        "full_voltage",
        "charger_voltage",
        "cold_cells",
        "belt_too_short",
        "belt_out_of_slot",
        "pack_in_box",
        "wheel_bite",
        "box_strikes",
        "clearance",
        "does_not_fit",
        "tight",
        "taut",
        "overlap",
        "movers",
        "sag",
        "too_strong",
    ] {
        assert!(seen.contains(&format!("\"{key}\"")), "no build has {key}");
    }
}

/// A name under which a number stands is only told by its comment.
#[test]
fn a_difference_is_found() {
    let declared = read(&declarations());
    let right = serde_json::to_value(Outcome::of(None, None)).unwrap();
    for (pointer, key, value) in [
        ("/answers/speed", "fastest", Some(json!(1))),
        ("/answers/speed/flat_full", "speed_m_s", None),
        ("/answers/speed/flat_full", "speed_m_s", Some(json!("fast"))),
        ("/answers/speed/flat_full", "limit", Some(json!("wind"))),
        ("/answers/fit/layout", "pulleys_m", Some(json!([1, 2, 3]))),
        ("/answers/charge", "refused", Some(json!("wrong_plug"))),
        ("", "answers", Some(json!([]))),
    ] {
        let mut wrong = right.clone();
        let object = wrong.pointer_mut(pointer).and_then(Value::as_object_mut).unwrap();
        match value {
            Some(value) => object.insert(key.into(), value),
            None => object.remove(key),
        };
        assert!(!against(&declared, "Outcome", &wrong).is_empty(), "{pointer}/{key}");
    }
}

#[test]
fn what_goes_in_is_what_is_declared() {
    let declared = read(&declarations());
    for build in builds().into_iter().filter(|build| build.get("whel").is_none()) {
        assert_eq!(against(&declared, "BuildFile", &build), Vec::<String>::new(), "{build}");
    }
    for wrong in [
        json!({ "whel": {} }),
        json!({ "motor_pulley": {} }),
        json!({ "motor_pulley": { "teeth": "16" } }),
        json!({ "rider": { "posture": "asleep" } }),
    ] {
        assert!(!against(&declared, "BuildFile", &wrong).is_empty(), "{wrong}");
    }
}

/// Ends of keys, longer before those that end alike, and what a comment then names.
const UNITS: &[(&str, &str)] = &[
    ("_rpm_per_v", "rpm/V"),
    ("_n_per_mm", "N/mm"),
    ("_k_per_w", "K/W"),
    ("_m_per_km", "m/km"),
    ("wh_per_km", "Wh/km"),
    ("_per_km", "1/km"),
    ("_km_h", "km/h"),
    ("_m_s2", "m/s²"),
    ("_m_s", "m/s"),
    ("_n_m2", "N·m²"),
    ("_n_m", "N·m"),
    ("_m2", "m²"),
    ("_shore_a", "Shore"),
    ("_price_kwh", "currency"),
    ("_wh", "Wh"),
    ("_ah", "Ah"),
    ("_uh", "µH"),
    ("_mohm", "mΩ"),
    ("_awg", "AWG"),
    ("_rpm", "rpm"),
    ("_hz", "Hz"),
    ("_rad", "rad"),
    ("_deg", "°|degrees"),
    ("_kg", "kg"),
    ("_mm", "mm"),
    ("_percent", "%"),
    ("_cycles", "cycles"),
    ("_teeth", "teeth"),
    ("_m", "m"),
    ("_s", "s"),
    ("_h", "h"),
    ("_bar", "bar"),
    ("_c", "°C"),
    ("_v", "V"),
    ("_a", "A"),
    ("_n", "N"),
    ("_w", "W"),
];

/// What a number may be where its key has no unit.
const OTHERWISE: &[&str] = &[
    "share", "shares", "ratio", "count", "rise", "place", "version", "currency", "teeth", "cells",
    "cycles", "rpm", "unit", "N", "V",
];

#[test]
fn every_number_says_its_unit() {
    let mut silent = Vec::new();
    let mut count = 0;
    for (path, field) in fields(&read(&declarations())) {
        if field.comment.is_empty() {
            silent.push(format!("{path}: no comment"));
        }
        if !has_numbers(&field.form) {
            continue;
        }
        count += 1;
        let words: Vec<String> =
            field.comment.split([' ', '(', ')', ',', ';', ':', '.']).map(str::to_owned).collect();
        let by_key = UNITS.iter().find(|(end, _)| field.key.ends_with(end));
        let said = match by_key {
            Some((_, unit)) => words.iter().any(|word| unit.split('|').any(|unit| unit == word)),
            None => words.iter().any(|word| {
                [word.as_str(), &word.to_lowercase()].iter().any(|word| OTHERWISE.contains(word))
            }),
        };
        if !said {
            silent.push(format!("{path}: {}", field.comment));
        }
    }
    assert!(count > 300, "{count} numbers");
    assert_eq!(silent, Vec::<String>::new());
}
