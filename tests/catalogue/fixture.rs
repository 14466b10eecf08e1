//! Catalogues for the tests of the page.

use crate::{brief, build, demo_text, schema, shown, text, written};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Kind, answers, notices};

/// What three slips make of the demo.
fn three_faults() -> String {
    let mut text = demo_text();
    for (right, wrong) in [
        (r#""no_load_a": 0.8"#, r#""noload_a": 0.8"#),
        (
            "\"motor_pulleys\": [\n",
            concat!(
                "\"motor_pulleys\": [\n",
                r#"    { "id": "m8-7", "name": "7 teeth, 8 mm", "source": "Invented for the demo", "#,
                r#""bore": "8 mm round, 3 mm key", "teeth": 7 },"#,
                "\n"
            ),
        ),
        (r#""options": ["shingle-92", "#, r#""options": ["shingle-9Z", "#),
    ] {
        assert_eq!(text.matches(right).count(), 1, "{right}");
        text = text.replace(right, wrong);
    }
    text
}

#[test]
fn three_faults_are_three() {
    let path = "tests/fixture/three-faults.json";
    written::keep(path, &three_faults(), |kept, fresh| kept == fresh);
    let (catalog, faults) = Catalog::read(&text(path)).unwrap();
    assert_eq!(
        shown(&faults).iter().map(|said| brief(said)).collect::<Vec<_>>(),
        [
            r#""7 teeth, 8 mm": /motor_pulleys/0/teeth: 7 teeth is outside the range 8 to 60 teeth"#,
            r#""Capstan 165": /motors/0/noload_a: "noload_a" is not known; did you mean "no_load_a"?"#,
            r#""Kittiwake": /kits/0/slots/wheel/options/0: "shingle-9Z" is not known; did you mean "shingle-92"?"#,
        ]
    );
    assert_eq!(catalog.kits.len(), 2);
    assert_eq!(catalog.parts(Kind::MotorPulley).len(), 6);
}

/// Nothing of the demo is built in: another maker's file stands alone.
#[test]
fn another_maker_is_whole() {
    let text = text("tests/fixture/other-maker.json");
    let value = serde_json::from_str(&text).unwrap();
    assert_eq!(schema::complaints(schema::catalogue(), &value), Vec::<String>::new());
    let (catalog, faults) = Catalog::read(&text).unwrap();
    assert_eq!(faults, []);
    let (demo, _) = Catalog::read(&demo_text()).unwrap();
    assert_ne!(catalog.maker, demo.maker);
    assert_ne!(catalog.currency, demo.currency);
    assert_eq!(catalog.kits.len(), 1);
    for kind in Kind::ALL {
        for part in catalog.parts(*kind) {
            assert!(demo.parts(*kind).iter().all(|p| p.id != part.id && p.name != part.name));
        }
    }
    for draft in crate::combinations(&catalog, &catalog.kits[0].id) {
        let build = build(&draft);
        assert_eq!(notices(&draft, &build), []);
        assert!(answers(&build).distance.cruise.distance_m > 5000.0);
    }
}
