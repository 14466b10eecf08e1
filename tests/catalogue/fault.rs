//! Faults in a catalogue: each found where it is, and nothing else lost by it.

use crate::{brief, demo_text, schema, shown};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Kind, Slot};
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;

/// What the demo holds, for counting on.
const MOTORS: usize = 4;
const MOTOR_PULLEYS: usize = 6;

/// One way to go wrong, and what must be said about it.
pub(crate) struct Slip {
    /// What the maker did.
    pub(crate) change: fn(&mut Value),
    /// Every fault, as shown.
    pub(crate) said: &'static [&'static str],
    /// Whether the schema can see it too.
    pub(crate) in_schema: bool,
}

/// The demo as a value.
pub(crate) fn demo_value() -> Value {
    serde_json::from_str(&demo_text()).unwrap()
}

fn add(file: &mut Value, list: &str, part: Value) {
    file[list].as_array_mut().unwrap().push(part);
}

fn object<'a>(file: &'a mut Value, pointer: &str) -> &'a mut Map<String, Value> {
    file.pointer_mut(pointer).unwrap().as_object_mut().unwrap()
}

fn rename(file: &mut Value, pointer: &str, from: &str, to: &str) {
    let map = object(file, pointer);
    let value = map.remove(from).unwrap();
    map.insert(to.into(), value);
}

/// A motor pulley for the end of the list, where no kit misses it.
fn add_pulley(file: &mut Value, key: &str, value: Value) {
    let mut part = json!({ "id": "added", "name": "Added", "teeth": 16 });
    part[key] = value;
    add(file, "motor_pulleys", part);
}

pub(crate) const SLIPS: &[Slip] = &[
    Slip {
        change: |file| rename(file, "/motors/0", "no_load_a", "noload_a"),
        said: &[
            r#""Capstan 165": /motors/0/noload_a: "noload_a" is not known; did you mean "no_load_a"?"#,
        ],
        in_schema: true,
    },
    Slip {
        change: |file| {
            let mut motor = file["motors"][0].clone();
            motor["id"] = json!("added");
            add(file, "motors", motor);
            rename(file, "/motors/4", "kv_rpm_per_v", "kv_rpm_v");
        },
        said: &[
            // A key that is missed because it is misspelt is one slip.
            r#""Capstan 165": /motors/4/kv_rpm_v: "kv_rpm_v" is not known; did you mean "kv_rpm_per_v"?"#,
        ],
        in_schema: true,
    },
    Slip {
        change: |file| add_pulley(file, "teeth", json!(7)),
        said: &[r#""Added": /motor_pulleys/6/teeth: 7 teeth is outside the range 8 to 60 teeth"#],
        in_schema: true,
    },
    Slip {
        change: |file| add_pulley(file, "teeth", json!(16.5)),
        said: &[
            r#""Added": /motor_pulleys/6/teeth: 16.5 teeth is not a whole number from 8 to 60 teeth"#,
        ],
        in_schema: true,
    },
    Slip {
        change: |file| add_pulley(file, "price", json!("twelve")),
        said: &[
            r#""Added": /motor_pulleys/6/price: expected a number from 0 to 1000000, not in quotes"#,
        ],
        in_schema: true,
    },
    Slip {
        change: |file| add_pulley(file, "name", json!(16)),
        said: &[r#""added": /motor_pulleys/6/name: expected text in quotes"#],
        in_schema: true,
    },
    Slip {
        change: |file| add(file, "motor_pulleys", json!({ "id": "added", "name": "Added" })),
        said: &[
            r#""Added": /motor_pulleys/6/teeth: is required but missing: a whole number from 8 to 60 teeth"#,
        ],
        in_schema: true,
    },
    Slip {
        change: |file| add(file, "motor_pulleys", json!({ "name": "Added", "teeth": 16 })),
        said: &[r#""Added": /motor_pulleys/6/id: is required but missing: text in quotes"#],
        in_schema: true,
    },
    Slip {
        change: |file| add(file, "motor_pulleys", json!({ "id": "added", "teeth": 16 })),
        said: &[r#""added": /motor_pulleys/6/name: is required but missing: text in quotes"#],
        in_schema: true,
    },
    Slip {
        change: |file| add_pulley(file, "id", json!("")),
        said: &[r#""Added": /motor_pulleys/6/id: is required but missing: text in quotes"#],
        in_schema: true,
    },
    Slip {
        change: |file| add_pulley(file, "id", json!(16)),
        said: &[r#""Added": /motor_pulleys/6/id: expected text in quotes"#],
        in_schema: true,
    },
    Slip {
        change: |file| add_pulley(file, "a/b~c", json!(16)),
        said: &[r#""Added": /motor_pulleys/6/a~1b~0c: "a/b~c" is not known"#],
        in_schema: true,
    },
    Slip {
        change: |file| add_pulley(file, "$remark", json!(["for the next order"])),
        said: &[],
        in_schema: false,
    },
    Slip {
        change: |file| drop(object(file, "").remove("maker")),
        said: &["/maker: is required but missing: text in quotes"],
        in_schema: true,
    },
    Slip {
        change: |file| drop(object(file, "/kits/0/slots/belt").remove("default")),
        said: &[
            r#""Kittiwake": /kits/0/slots/belt/default: is required but missing: text in quotes"#,
        ],
        in_schema: true,
    },
    Slip {
        change: |file| add(file, "kits", json!({ "id": "added", "slots": {} })),
        said: &[r#""added": /kits/2/name: is required but missing: text in quotes"#],
        in_schema: true,
    },
    Slip {
        change: |file| add(file, "kits", json!({ "id": "added", "name": "Added" })),
        said: &[],
        in_schema: false,
    },
    Slip {
        change: |file| add_pulley(file, "id", json!("m8-17")),
        said: &[
            r#""Added": /motor_pulleys/6/id: "m8-17" appears twice, first at /motor_pulleys/1; give each its own id"#,
        ],
        in_schema: false,
    },
    Slip {
        change: |file| add_pulley(file, "notes", json!("é".repeat(401))),
        said: &[r#""Added": /motor_pulleys/6/notes: has more than 400 characters"#],
        in_schema: true,
    },
    Slip {
        change: |file| add_pulley(file, "notes", json!("é".repeat(400))),
        said: &[],
        in_schema: false,
    },
    Slip {
        change: |file| file["maker"] = json!("m".repeat(401)),
        said: &["/maker: has more than 400 characters"],
        in_schema: true,
    },
    Slip {
        change: |file| {
            let cell = json!({ "id": "added", "name": "Added", "chemistry": "nickel",
                "capacity_ah": 3, "resistance_10s_mohm": 20, "max_discharge_a": 20 });
            add(file, "cells", cell);
        },
        said: &[r#""Added": /cells/2/chemistry: "nickel" is not one of energy, power, lfp"#],
        in_schema: true,
    },
    Slip {
        change: |file| {
            let mut cell = file["cells"][0].clone();
            (cell["id"], cell["chemistry"]) = (json!("added"), json!(1));
            add(file, "cells", cell);
        },
        said: &[r#""Cockle": /cells/2/chemistry: expected one of energy, power, lfp, in quotes"#],
        in_schema: true,
    },
    Slip {
        change: |file| file["cells"] = json!({ "cockle": { "capacity_ah": 3 } }),
        said: &["/cells: expected a list in square brackets"],
        in_schema: true,
    },
    Slip {
        change: |file| file["cells"] = json!(vec![0; 2001]),
        said: &["/cells: has more than 2000 entries"],
        in_schema: true,
    },
    Slip {
        change: |file| file["weels"] = json!([]),
        said: &[r#"/weels: "weels" is not known; did you mean "wheels"?"#],
        in_schema: true,
    },
    Slip {
        change: |file| file["schema_version"] = json!(2),
        said: &["/schema_version: expected version 1; anything this page doesn't know was ignored"],
        in_schema: true,
    },
    Slip {
        change: |file| file["schema_version"] = json!("1"),
        said: &["/schema_version: expected version 1; anything this page doesn't know was ignored"],
        in_schema: true,
    },
    Slip {
        change: |file| drop(object(file, "").remove("schema_version")),
        said: &["/schema_version: expected version 1; anything this page doesn't know was ignored"],
        in_schema: true,
    },
    Slip {
        change: |file| file["kits"][0]["slots"]["motor_pulley"]["options"][1] = json!("m8-18"),
        said: &[
            r#""Kittiwake": /kits/0/slots/motor_pulley/options/1: "m8-18" is not known; did you mean "m8-13"?"#,
        ],
        in_schema: false,
    },
    Slip {
        change: |file| file["kits"][1]["slots"]["belt"]["default"] = json!("zzzzzzzzzz"),
        said: &[r#""Gannet": /kits/1/slots/belt/default: "zzzzzzzzzz" is not known"#],
        in_schema: false,
    },
    Slip {
        change: |file| rename(file, "/kits/0/slots", "motor_pulley", "motor_puley"),
        said: &[
            r#""Kittiwake": /kits/0/slots/motor_puley: "motor_puley" is not known; did you mean "motor_pulley"?"#,
        ],
        in_schema: true,
    },
    Slip {
        change: |file| rename(file, "/kits/0", "ride", "ryde"),
        said: &[r#""Kittiwake": /kits/0/ryde: "ryde" is not known; did you mean "ride"?"#],
        in_schema: true,
    },
    Slip {
        change: |file| file["kits"][1]["ride"]["grade_percent"] = json!(150),
        said: &[r#""Gannet": /kits/1/ride/grade_percent: 150 % is outside the range 0 to 60 %"#],
        in_schema: true,
    },
    Slip {
        change: |file| file["kits"][1]["place"]["surface"] = json!("mud"),
        said: &[concat!(
            r#""Gannet": /kits/1/place/surface: "mud" is not one of "#,
            "smooth_asphalt, street_asphalt, coarse_asphalt, pavers, packed_gravel"
        )],
        in_schema: true,
    },
    Slip {
        change: |file| add(file, "kits", json!({ "name": "Added", "slots": {} })),
        said: &[r#""Added": /kits/2/id: is required but missing: text in quotes"#],
        in_schema: true,
    },
    Slip {
        change: |file| add(file, "kits", json!("added")),
        said: &["/kits/2: expected an object in braces"],
        in_schema: true,
    },
];

/// Ids of every part and kit.
fn ids(catalog: &Catalog) -> BTreeSet<String> {
    let parts = |kind: &Kind| {
        let key = kind.key();
        catalog.parts(*kind).iter().map(move |part| format!("{key} {}", part.id))
    };
    let kits = catalog.kits.iter().map(|kit| format!("kit {}", kit.id));
    Kind::ALL.iter().flat_map(parts).chain(kits).collect()
}

fn read(file: &Value) -> (Catalog, Vec<String>) {
    let (catalog, faults) = Catalog::read(&file.to_string()).unwrap();
    let said = shown(&faults).iter().map(|said| brief(said)).collect();
    (catalog, said)
}

#[test]
fn each_fault_is_found_where_it_is() {
    let whole = ids(&read(&demo_value()).0);
    for slip in SLIPS {
        let mut file = demo_value();
        (slip.change)(&mut file);
        let (catalog, said) = read(&file);
        assert_eq!(said, slip.said);
        // Everything else is still there; a faulty list takes only itself away.
        let lost: Vec<_> = whole.difference(&ids(&catalog)).cloned().collect();
        let list = slip.said.iter().any(|said| said.starts_with("/cells: "));
        assert!(lost.iter().all(|id| list && id.starts_with("cell ")), "{said:?}: {lost:?}");
        assert_eq!(lost.is_empty(), !list);
    }
}

/// The editor underlines what the page would complain about.
#[test]
fn the_schema_sees_what_a_schema_can() {
    let schema = schema::catalogue();
    for slip in SLIPS {
        let mut file = demo_value();
        (slip.change)(&mut file);
        let complaints = schema::complaints(schema, &file);
        assert_eq!(!complaints.is_empty(), slip.in_schema, "{:?}: {complaints:?}", slip.said);
    }
}

/// A misspelt key keeps its part; any other fault leaves the part out.
#[test]
fn a_faulty_part_is_not_offered() {
    let mut file = demo_value();
    add_pulley(&mut file, "teeth", json!(7));
    rename(&mut file, "/motors/0", "no_load_a", "noload_a");
    let (catalog, _) = read(&file);
    assert!(catalog.part(Kind::MotorPulley, "added").is_none());
    assert_eq!(catalog.parts(Kind::MotorPulley).len(), MOTOR_PULLEYS);
    assert_eq!(catalog.parts(Kind::Motor).len(), MOTORS);
    let motor = catalog.part(Kind::Motor, "capstan-165").unwrap();
    assert_eq!(motor.value(Kind::Motor.field_index("no_load_a").unwrap()), None);
}

#[test]
fn of_two_with_one_id_the_first_stays() {
    let mut file = demo_value();
    add_pulley(&mut file, "id", json!("m8-17"));
    let (catalog, _) = read(&file);
    assert_eq!(catalog.part(Kind::MotorPulley, "m8-17").unwrap().name, "17 teeth, 8 mm");
}

/// An unknown default leaves the options; with none left, every part is offered.
#[test]
fn a_kit_with_an_unknown_part_is_still_sold() {
    let mut file = demo_value();
    file["kits"][0]["slots"]["wheel"]["default"] = json!("shingle-29");
    file["kits"][0]["slots"]["controller"]["default"] = json!("pylot-2");
    let (catalog, said) = read(&file);
    assert_eq!(
        said,
        [
            r#""Kittiwake": /kits/0/slots/controller/default: "pylot-2" is not known; did you mean "pilot-2"?"#,
            r#""Kittiwake": /kits/0/slots/wheel/default: "shingle-29" is not known; did you mean "shingle-92"?"#,
        ]
    );
    let offered = |slot| -> Vec<_> {
        catalog.offered("kittiwake", slot).iter().map(|part| part.id.clone()).collect()
    };
    assert_eq!(offered(Slot::Wheel), ["shingle-92", "shingle-110"]);
    assert_eq!(offered(Slot::Controller), ["pilot-2", "tug-2"]);
}

/// Faults of every sort in one file are all found, and the good is all there.
#[test]
fn many_faults_at_once() {
    let mut file = demo_value();
    let whole = ids(&read(&file).0);
    file["schema_version"] = json!(9);
    file["currancy"] = json!("EUR");
    rename(&mut file, "/motors/1", "inductance_uh", "inductance_mh");
    add_pulley(&mut file, "teeth", json!(7));
    add_pulley(&mut file, "teeth", json!("16"));
    add_pulley(&mut file, "id", json!("w38"));
    add(&mut file, "belts", json!({ "id": "towline-64", "name": "Again", "width_mm": 15 }));
    add(&mut file, "wheels", json!({ "id": "added", "diameter_mm": 97 }));
    file["kits"][1]["slots"]["charger"]["options"] = json!(["neap-50x", "spring-54"]);
    let (catalog, said) = read(&file);
    assert_eq!(
        said,
        [
            r#""Added": /motor_pulleys/6/teeth: 7 teeth is outside the range 8 to 60 teeth"#,
            r#""Added": /motor_pulleys/7/teeth: expected a whole number from 8 to 60 teeth, not in quotes"#,
            r#""Again": /belts/4/id: "towline-64" appears twice, first at /belts/0; give each its own id"#,
            concat!(
                r#""Capstan 135": /motors/1/inductance_mh: "inductance_mh" is not known; "#,
                r#"did you mean "inductance_uh"?"#
            ),
            concat!(
                r#""Gannet": /kits/1/slots/charger/options/0: "neap-50x" is not known; "#,
                r#"did you mean "neap-50"?"#
            ),
            r#""added": /wheels/6/name: is required but missing: text in quotes"#,
            r#""added": /wheels/6/rolling_smooth: is required but missing: a number from 0.002 to 0.1"#,
            r#"/currancy: "currancy" is not known; did you mean "currency"?"#,
            "/schema_version: expected version 1; anything this page doesn't know was ignored",
        ]
    );
    assert!(whole.is_subset(&ids(&catalog)));
}
