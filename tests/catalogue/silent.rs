//! Slips that a reader could easily pass over or place wrongly, and what a maker
//! is told of each.

use crate::fault::demo_value;
use crate::{brief, schema, shown};
use pitchline_core::catalog::Catalog;
use serde_json::{Value, json};

/// Something put into the demo at a pointer, and what must be said.
type Silent = (&'static str, &'static str, fn() -> Value, &'static str);

const SILENT: &[Silent] = &[
    (
        "",
        "kits",
        || {
            let kits = demo_value()["kits"].clone();
            json!([kits[0], kits[1], kits[0]])
        },
        r#""Kittiwake": /kits/2/id: "kittiwake" appears twice, first at /kits/0; give each its own id"#,
    ),
    (
        "/kits/0",
        "slots",
        || json!([]),
        r#""Kittiwake": /kits/0/slots: expected an object in braces"#,
    ),
    (
        "/kits/0/slots",
        "belt",
        || json!("towline-64"),
        r#""Kittiwake": /kits/0/slots/belt: expected an object in braces"#,
    ),
    (
        "/kits/0/slots/belt",
        "optons",
        || json!(["towline-59"]),
        concat!(
            r#""Kittiwake": /kits/0/slots/belt/optons: "optons" is not known; "#,
            r#"did you mean "options"?"#
        ),
    ),
    (
        "/kits/0/slots/belt",
        "default",
        || json!(15),
        r#""Kittiwake": /kits/0/slots/belt/default: expected text in quotes"#,
    ),
    (
        "/kits/0/slots/belt",
        "options",
        || json!("towline-59"),
        r#""Kittiwake": /kits/0/slots/belt/options: expected a list in square brackets"#,
    ),
    (
        "/kits/0/slots/belt/options",
        "0",
        || json!(12),
        r#""Kittiwake": /kits/0/slots/belt/options/0: expected text in quotes"#,
    ),
    (
        "/packs/0",
        "cell",
        || json!("cokle"),
        r#""Slipway 518": /packs/0/cell: "cokle" is not known; did you mean "cockle"?"#,
    ),
    ("", "updated", || json!(2026), "/updated: expected text in quotes"),
    (
        "",
        "schema_version",
        || json!(0),
        "/schema_version: expected version 1; anything this page doesn't know was ignored",
    ),
    // No slash at the end: that would name an empty key inside.
    ("/kits/0", "ride", || json!(5), r#""Kittiwake": /kits/0/ride: expected an object in braces"#),
    // A pointer writes a slash in a key as ~1 (RFC 6901).
    ("", "weels/", || json!([]), r#"/weels~1: "weels/" is not known; did you mean "wheels"?"#),
];

#[test]
fn what_the_reader_should_say_too() {
    let mut missed = Vec::new();
    for (pointer, key, value, said) in SILENT {
        let mut file = demo_value();
        match file.pointer_mut(pointer).unwrap() {
            Value::Array(list) => list[key.parse::<usize>().unwrap()] = value(),
            map => map[*key] = value(),
        }
        let (_, faults) = Catalog::read(&file.to_string()).unwrap();
        let found: Vec<_> = shown(&faults).iter().map(|said| brief(said)).collect();
        if found != [*said] {
            missed.push(format!("{said} (was {found:?})"));
        }
    }
    assert!(missed.is_empty(), "{missed:#?}");
}

/// What is wrong with a part is said of the part alone: a kit or a pack that
/// names it is right.
#[test]
fn a_part_left_out_is_not_missed_as_well() {
    for (pointer, value, said) in [
        (
            "/motor_pulleys/0/teeth",
            json!(7),
            r#""13 teeth, 8 mm": /motor_pulleys/0/teeth: 7 teeth is outside the range 8 to 60 teeth"#,
        ),
        (
            "/cells/0/capacity_ah",
            json!("3"),
            r#""Cockle": /cells/0/capacity_ah: expected a number from 0.1 to 200 Ah, not in quotes"#,
        ),
        ("/wheels", json!({}), "/wheels: expected a list in square brackets"),
        ("/cells", json!(vec![0; 2001]), "/cells: has more than 2000 entries"),
    ] {
        let mut file = demo_value();
        *file.pointer_mut(pointer).unwrap() = value;
        let (_, faults) = Catalog::read(&file.to_string()).unwrap();
        assert_eq!(shown(&faults), [said]);
    }
}

/// Some editors begin a file with a byte order mark.
#[test]
fn a_byte_order_mark_is_passed_over() {
    let text = format!("\u{feff}{}", demo_value());
    assert_eq!(Catalog::read(&text).map(|(_, faults)| faults), Ok(Vec::new()));
}

/// The reader takes an id of no letters for none.
#[test]
fn the_schema_wants_letters_in_an_id() {
    let mut file = demo_value();
    file["belts"][1]["id"] = json!("");
    assert!(!schema::catalogue().is_valid(&file));
}
