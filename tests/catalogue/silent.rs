//! Slips that reader or schema pass over or place wrongly. Each line is what a
//! maker should be told; take `ignore` away once it is.

use crate::fault::demo_value;
use crate::{schema, shown};
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
        r#"/kits/2/id: "kittiwake" is there twice"#,
    ),
    ("/kits/0", "slots", || json!([]), "/kits/0/slots: expected an object in braces"),
    (
        "/kits/0/slots",
        "belt",
        || json!("towline-15"),
        "/kits/0/slots/belt: expected an object in braces",
    ),
    (
        "/kits/0/slots/belt",
        "optons",
        || json!(["towline-12"]),
        concat!(
            r#"/kits/0/slots/belt/optons: "optons" is not known; "#,
            r#"did you mean "options"?"#
        ),
    ),
    (
        "/kits/0/slots/belt",
        "default",
        || json!(15),
        "/kits/0/slots/belt/default: expected text in quotes",
    ),
    (
        "/kits/0/slots/belt",
        "options",
        || json!("towline-12"),
        "/kits/0/slots/belt/options: expected a list in square brackets",
    ),
    (
        "/kits/0/slots/belt/options",
        "0",
        || json!(12),
        "/kits/0/slots/belt/options/0: expected text in quotes",
    ),
    (
        "/packs/0",
        "cell",
        || json!("cockle-3O"),
        r#"/packs/0/cell: "cockle-3O" is not known; did you mean "cockle-30"?"#,
    ),
    ("", "updated", || json!(2026), "/updated: expected text in quotes"),
    (
        "",
        "schema_version",
        || json!(0),
        "/schema_version: expected version 1; what is known of it was read",
    ),
    // No slash at the end: that would name an empty key inside.
    ("/kits/0", "ride", || json!(5), "/kits/0/ride: expected an object in braces"),
    // A pointer writes a slash in a key as ~1 (RFC 6901).
    ("", "weels/", || json!([]), r#"/weels~1: "weels/" is not known; did you mean "wheels"?"#),
];

#[test]
#[ignore = "the reader does not say these yet"]
fn what_the_reader_should_say_too() {
    let mut missed = Vec::new();
    for (pointer, key, value, said) in SILENT {
        let mut file = demo_value();
        match file.pointer_mut(pointer).unwrap() {
            Value::Array(list) => list[key.parse::<usize>().unwrap()] = value(),
            map => map[*key] = value(),
        }
        let (_, faults) = Catalog::read(&file.to_string()).unwrap();
        let found = shown(&faults);
        if found != [*said] {
            missed.push(format!("{said} (was {found:?})"));
        }
    }
    assert!(missed.is_empty(), "{missed:#?}");
}

/// Some editors begin a file with a byte order mark.
#[test]
#[ignore = "the reader does not pass over it yet"]
fn a_byte_order_mark_is_passed_over() {
    let text = format!("\u{feff}{}", demo_value());
    assert_eq!(Catalog::read(&text).map(|(_, faults)| faults), Ok(Vec::new()));
}

/// The reader takes an id of no letters for none.
#[test]
#[ignore = "the schema allows it yet"]
fn the_schema_wants_letters_in_an_id() {
    let mut file = demo_value();
    file["belts"][1]["id"] = json!("");
    assert!(!schema::catalogue().is_valid(&file));
}
