//! What is assumed of cells, packs and controllers that do not say: by the class and the size of
//! the cell.

use pitchline_core::catalog::{Catalog, catalogue_schema};
use pitchline_core::{Build, ChargeRefusal, Draft, Drive, Notice, Slot, notices};
use serde_json::{Value, json};

/// A kit that gives no voltage and no mass of a cell, with a charger that ends at `charger_v`.
fn kit(cell: &Value, series: u32, charger_v: f64) -> Draft {
    let mut whole = json!({ "id": "cell", "name": "Cell", "capacity_ah": 3,
        "resistance_10s_mohm": 20, "max_discharge_a": 20 });
    for (key, value) in cell.as_object().unwrap() {
        whole[key] = value.clone();
    }
    let file = json!({
        "schema_version": 1, "maker": "Ferry Lane Board Works",
        "cells": [whole],
        "packs": [{ "id": "pack", "name": "Pack", "cell": "cell",
            "series": series, "parallel": 4, "protection_a": 80 }],
        "controllers": [{ "id": "two", "name": "Two", "motor_current_a": 60,
            "battery_current_a": 25 }],
        "chargers": [{ "id": "charger", "name": "Charger", "full_v": charger_v, "current_a": 4 }],
        "kits": [{ "id": "kit", "name": "Kit" }],
    });
    let (catalog, faults) = Catalog::read(&file.to_string()).unwrap();
    assert_eq!(faults, []);
    catalog.draft("kit")
}

fn build(draft: &Draft) -> Build {
    Build::check(draft).unwrap()
}

/// Whether the charger is noticed, and whether it is refused.
fn refused(draft: &Draft) -> [bool; 2] {
    let built = build(draft);
    let noticed = |n: &Notice| matches!(n, Notice::ChargerVoltage { .. });
    let charge = Drive::new(&built).charge(0.2, 1.0);
    [
        notices(draft, &built).iter().any(noticed),
        matches!(charge, Err(ChargeRefusal::WrongVolts { .. })),
    ]
}

/// Common practice, no source: LFP is full at 3.6 V, at 3.2 V for its nameplate, stops at 2.5 V,
/// and is held back from 2.8 V on; the others 4.2, 3.6, 3.0, and 3.3 to 3.0 V.
#[test]
fn voltages_follow_the_class() {
    for (class, full, nominal, cut_off, cutback) in [
        ("energy", 4.2, 3.6, 3.0, (3.3, 3.0)),
        ("power", 4.2, 3.6, 3.0, (3.3, 3.0)),
        ("lfp", 3.6, 3.2, 2.5, (2.8, 2.5)),
    ] {
        let b = build(&kit(&json!({ "chemistry": class }), 12, 12.0 * full));
        let found = (b.cell.full_v, b.cell.nominal_v, b.pack.cut_off_v);
        assert_eq!(found, (full, nominal, cut_off), "{class}");
        assert_eq!((b.controller.cutback_start_v, b.controller.cutback_end_v), cutback, "{class}");
    }
}

/// What the page shows beside "assumed" is the value that is used.
#[test]
fn what_is_shown_is_what_is_used() {
    for (number, class) in [(0.0, "energy"), (1.0, "power"), (2.0, "lfp")] {
        for format in ["", "18650", "32700"] {
            let mut draft = kit(&json!({ "chemistry": class, "format": format }), 12, 50.4);
            assert_eq!(draft.value(Slot::Cell, "chemistry"), Some(number));
            let used = build(&draft);
            let mut assumed = 0;
            for slot in Slot::ALL {
                for index in 0..slot.kind().fields().len() {
                    let value = draft.assumed(*slot, index);
                    let given = draft.record(*slot).value(index).is_some();
                    if let Some(value) = value.filter(|_| !given) {
                        draft.set_value(*slot, index, Some(value));
                        assumed += 1;
                    }
                }
            }
            // Entered by hand, the same values make the same board.
            assert!(assumed > 20, "{assumed}");
            assert_eq!(build(&draft), used, "{class} {format}");
        }
    }
}

/// 12 LFP cells in series are full at 43.2 V. A charger for 12 of another class would burn them.
#[test]
fn a_charger_for_another_class_is_refused() {
    let lfp = json!({ "chemistry": "lfp" });
    assert_eq!(refused(&kit(&lfp, 12, 50.4)), [true, true]);
    assert_eq!(refused(&kit(&lfp, 12, 43.2)), [false, false]);
    // Common practice, no source: LFP chargers end at 3.6 or at 3.65 V a cell.
    assert_eq!(refused(&kit(&lfp, 12, 43.8)), [false, false]);
    // Half a per cent beside is a rounded label, more is another charger.
    for (charger_v, wrong) in [(42.9, true), (43.0, false), (44.0, false), (44.1, true)] {
        assert_eq!(refused(&kit(&lfp, 12, charger_v)), [wrong; 2], "{charger_v} V");
    }
    for class in ["energy", "power"] {
        let cell = json!({ "chemistry": class });
        assert_eq!(refused(&kit(&cell, 12, 50.4)), [false, false]);
        assert_eq!(refused(&kit(&cell, 12, 43.2)), [true, true]);
    }
}

/// A figure that no cell of the class bears does not open the door to a wrong charger.
#[test]
fn a_full_voltage_of_another_class_is_not_believed() {
    let cell = json!({ "chemistry": "lfp", "full_v": 4.2 });
    let draft = kit(&cell, 12, 50.4);
    assert_eq!(refused(&draft), [true, true]);
    // What a maker gives below the usual is held to: 3.5 V a cell is 42 V.
    let gentle = json!({ "chemistry": "lfp", "full_v": 3.5 });
    assert_eq!(refused(&kit(&gentle, 12, 43.2)), [true, true]);
    assert_eq!(refused(&kit(&gentle, 12, 42.0)), [false, false]);
    // Common practice, no source: some cells of the energy class are made for 4.35 V.
    let high = json!({ "chemistry": "energy", "full_v": 4.35 });
    assert_eq!(refused(&kit(&high, 10, 43.5)), [false, false]);
}

/// The same where somebody picks the class on the page.
#[test]
fn another_class_brings_its_voltages() {
    let mut draft = Draft::typical();
    draft.set(Slot::Cell, "chemistry", 2.0);
    let b = build(&draft);
    assert_eq!((b.cell.full_v, b.controller.cutback_end_v), (3.6, 2.5));
    // Ten in series with the typical charger of 42 V.
    assert_eq!(refused(&draft), [true, true]);
}

/// Common practice, no source: masses of usual cells, in grams.
#[test]
fn a_cell_weighs_what_its_size_weighs() {
    for (format, class, least, most) in [
        ("14500", "energy", 18.0, 24.0),
        ("18650", "energy", 44.0, 50.0),
        ("18650", "power", 44.0, 50.0),
        ("18650", "lfp", 38.0, 43.0),
        ("21700", "power", 66.0, 72.0),
        ("26650", "lfp", 82.0, 92.0),
        ("32700", "lfp", 135.0, 150.0),
    ] {
        let cell = json!({ "chemistry": class, "format": format });
        let grams = 1000.0 * build(&kit(&cell, 12, 43.2)).cell.mass_kg;
        assert!((least..=most).contains(&grams), "{format} {class}: {grams} g");
    }
    // Size as entered goes before the format.
    let cell =
        json!({ "chemistry": "energy", "format": "21700", "diameter_mm": 18, "length_mm": 65 });
    let grams = 1000.0 * build(&kit(&cell, 12, 50.4)).cell.mass_kg;
    assert!((44.0..=50.0).contains(&grams), "{grams} g");
    // And a mass as entered before both.
    let cell = json!({ "chemistry": "energy", "format": "18650", "mass_kg": 0.0455 });
    assert_eq!(build(&kit(&cell, 12, 50.4)).cell.mass_kg, 0.0455);
}

/// Common practice, no source: a cell that does not say is charged at 1C at the most.
#[test]
fn the_charge_current_follows_the_capacity() {
    for (capacity_ah, rated_a) in [(1.5, 1.5), (5.0, 5.0), (100.0, 100.0)] {
        let cell = json!({ "chemistry": "energy", "capacity_ah": capacity_ah });
        let draft = kit(&cell, 12, 50.4);
        assert_eq!(build(&draft).cell.max_charge_a, rated_a);
        // As entered goes before it.
        let cell = json!({ "chemistry": "lfp", "capacity_ah": capacity_ah, "max_charge_a": 2 });
        assert_eq!(build(&kit(&cell, 12, 43.2)).cell.max_charge_a, 2.0);
    }
}

/// 48 cells of 18 by 65 mm weigh 2.1 to 2.4 kg (common practice, no source), and a pack of them
/// a little more: nothing is amiss with 2.6 kg, but with 1 kg there is.
#[test]
fn a_light_pack_of_small_cells_is_no_misfit() {
    let noticed = |pack_kg: f64| {
        let mut draft = kit(&json!({ "chemistry": "energy", "format": "18650" }), 12, 50.4);
        draft.set(Slot::Pack, "mass_kg", pack_kg);
        let found = notices(&draft, &build(&draft));
        found.iter().any(|n| matches!(n, Notice::PackTooLight { .. }))
    };
    assert!(!noticed(2.6));
    // The cells' mass is a guess: a pack of 2.2 kg may well be one of light cells.
    assert!(!noticed(2.2));
    assert!(noticed(1.0));
}

/// What an editor shows beside the key is what is taken.
#[test]
fn the_schema_says_what_is_assumed() {
    let schema = catalogue_schema();
    let said = |list: &str, key: &str| {
        let property = &schema["properties"][list]["items"]["properties"][key];
        property["description"].as_str().unwrap().to_string()
    };
    for (list, key, usual, lfp) in [
        ("cells", "full_v", "4.2", "3.6"),
        ("cells", "nominal_v", "3.6", "3.2"),
        ("packs", "cut_off_v", "3", "2.5"),
        ("controllers", "cutback_start_v", "3.3", "2.8"),
        ("controllers", "cutback_end_v", "3", "2.5"),
    ] {
        let text = said(list, key);
        let wanted = format!("If left out, {usual} ({lfp} with lfp cells) is assumed.");
        assert!(text.ends_with(&wanted), "{text}");
    }
    let mass = said("cells", "mass_kg");
    assert!(mass.contains("size") && mass.contains("for a typical cell"), "{mass}");
    let charge = said("cells", "max_charge_a");
    assert!(charge.contains("1C") && charge.contains("3 for a typical cell"), "{charge}");
}
