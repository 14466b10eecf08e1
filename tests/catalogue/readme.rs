//! The examples of the README do what it says of them.

use crate::demo::has_figures_of_its_own;
use crate::{build, combinations, schema, shown, text};
use pitchline_core::catalog::{Catalog, read_build};
use pitchline_core::{Belt, BeltOffers, BeltOnBoard, Drive, Slot, answers, belt_fit, notices};
use serde_json::Value;

/// What stands between two marks, the first time.
fn between<'a>(text: &'a str, start: &str, end: &str) -> &'a str {
    let rest = text.split_once(start).unwrap_or_else(|| panic!("no {start:?}")).1;
    rest.split_once(end).unwrap_or_else(|| panic!("no {end:?}")).0
}

#[test]
fn its_catalogue_is_whole() {
    let readme = text("README.md");
    let example = between(&readme, "```json\n", "```");
    let value: Value = serde_json::from_str(example).unwrap();
    assert_eq!(schema::complaints(schema::catalogue(), &value), Vec::<String>::new());
    let (catalog, faults) = Catalog::read(example).unwrap();
    assert_eq!(shown(&faults), Vec::<String>::new());
    has_figures_of_its_own(&catalog);
    for draft in combinations(&catalog, &catalog.kits[0].id) {
        let build = build(&draft);
        assert_eq!(notices(&draft, &build), []);
        let belts = [Belt::from_record(draft.record(Slot::Belt)).unwrap()];
        let offers = BeltOffers { belts: &belts, motor_pulleys: &[], wheel_pulleys: &[] };
        let fit = belt_fit(&Drive::new(&build), &offers);
        assert!(matches!(fit.on_board, BeltOnBoard::Taut(belt) if belt.in_slot), "{fit:?}");
    }
}

/// JSON of an object of JavaScript that has plain keys, and commas at the ends of lines.
fn json(script: &str) -> Value {
    let mut text = String::new();
    let mut word = String::new();
    for letter in script.chars() {
        if letter.is_ascii_alphanumeric() || letter == '_' || letter == '.' {
            word.push(letter);
            continue;
        }
        if letter == ':' {
            text.push_str(&format!("\"{word}\""));
        } else {
            text.push_str(&word);
        }
        word.clear();
        if letter == '}' && text.trim_end().ends_with(',') {
            text.truncate(text.trim_end().len() - 1);
        }
        text.push(letter);
    }
    serde_json::from_str(&text).unwrap_or_else(|e| panic!("{e}: {text}"))
}

/// The page's test of the module shows that `answers` answers as the core does.
#[test]
fn its_module_writes_what_it_quotes() {
    let readme = text("README.md");
    let asked = json(between(&readme, "= answers(", ");\n"));
    let (draft, ignored) = read_build(&asked).unwrap();
    assert_eq!(ignored, []);
    let top = answers(&build(&draft)).speed.flat_full;
    let limit = serde_json::to_value(top.limit).unwrap();
    let said = format!("{:.0} km/h, limit: {}", top.speed_m_s * 3.6, limit.as_str().unwrap());
    assert_eq!(between(&readme, "This writes \"", " (Pitchline"), said);
}
