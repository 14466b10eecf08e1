//! The version of the model: raised when the figures of the demo's kits move.

use crate::written::keep;
use crate::{build, demo, text};
use pitchline_core::catalog::{read_build, write_build};
use pitchline_core::{Draft, MODEL, answers};
use serde_json::{Value, json};

/// What was answered to the demo's kits, with the version of the model that answered.
const RECORD: &str = "tests/fixture/headlines.json";

/// A figure that moves by more than this share is of another model.
const MOVED: f64 = 0.01;

/// The headlines of a build, by name with unit.
fn headlines(draft: &Draft) -> [(&'static str, f64); 3] {
    let found = answers(&build(draft));
    [
        ("top_speed_m_s", found.speed.flat_full.speed_m_s),
        ("hill_10_km_h", found.climb.slow.grade),
        ("distance_m", found.distance.cruise.distance_m),
    ]
}

/// The boards of a record, as they were then: a later change of the demo is none of the model.
fn boards(record: &Value) -> Vec<(&Value, Draft)> {
    let kits = record["kits"].as_array().map_or(&[][..], Vec::as_slice);
    let read = |kit: &Value| match read_build(&kit["build"]) {
        Ok((draft, ignored)) if ignored.is_empty() => draft,
        other => panic!("{RECORD}: {other:?}"),
    };
    kits.iter().map(|kit| (kit, read(kit))).collect()
}

/// What today's model answers to the boards of a record by more than 1 % otherwise.
fn moved(record: &Value) -> Vec<String> {
    let mut moved = Vec::new();
    for (kit, draft) in boards(record) {
        for (name, now) in headlines(&draft) {
            let then = kit[name].as_f64().unwrap_or(f64::NAN);
            let near = (now - then).abs() <= MOVED * then.abs();
            if !near {
                moved.push(format!("{} {name}: {then} then, {now} now", kit["build"]["kit"]));
            }
        }
    }
    moved
}

/// The record of today's kits and model.
fn today() -> Value {
    let demo = demo();
    let kit = |kit: &pitchline_core::catalog::Kit| {
        let draft = demo.draft(&kit.id);
        let mut kept = json!({ "build": write_build(&draft) });
        for (name, value) in headlines(&draft) {
            kept[name] = value.into();
        }
        kept
    };
    json!({ "model": MODEL, "kits": demo.kits.iter().map(kit).collect::<Vec<_>>() })
}

/// Whether a record is of today's model and of today's kits. Figures that moved by less than 1 %
/// stay as they are, so that many small changes cannot creep past.
fn holds(record: &Value, today: &Value) -> bool {
    let builds = |record: &Value| -> Vec<Value> {
        boards(record).into_iter().map(|(kit, _)| kit["build"].clone()).collect()
    };
    record["model"] == today["model"] && builds(record) == builds(today)
}

#[test]
fn the_figures_are_of_this_version_of_the_model() {
    let kept: Value = serde_json::from_str(&text(RECORD)).unwrap();
    let version = kept["model"].as_u64().unwrap();
    assert!(version <= u64::from(MODEL), "MODEL only goes up: it was {version}");
    if version == u64::from(MODEL) {
        // Written or not: these figures are known by this version.
        let moved = moved(&kept);
        assert!(
            moved.is_empty(),
            "raise MODEL in core/src/model.rs and list old and new in CHANGELOG.md:\n  {}",
            moved.join("\n  ")
        );
    }
    let today = today();
    let fresh = serde_json::to_string_pretty(&today).unwrap() + "\n";
    keep(RECORD, &fresh, |_, _| holds(&kept, &today));
}

#[test]
fn a_figure_that_moves_is_found() {
    let fresh = today();
    assert_eq!(moved(&fresh), Vec::<String>::new());
    for name in ["top_speed_m_s", "hill_10_km_h", "distance_m"] {
        for (share, count) in [(0.98, 1), (0.995, 0), (1.005, 0), (1.02, 1)] {
            let mut record = fresh.clone();
            let then = record["kits"][1][name].as_f64().unwrap();
            record["kits"][1][name] = (then * share).into();
            assert_eq!(moved(&record).len(), count, "{name} {share}: {:?}", moved(&record));
        }
        let mut record = fresh.clone();
        record["kits"][0][name] = Value::Null;
        assert_eq!(moved(&record).len(), 1, "{name} is not there");
    }
    // Another rider in the demo is another record, of the same model.
    let mut record = fresh.clone();
    record["kits"][0]["build"]["rider"]["mass_kg"] = 60.into();
    assert!(!holds(&record, &fresh) && holds(&fresh, &fresh));
    record = fresh.clone();
    record["model"] = (MODEL - 1).into();
    assert!(!holds(&record, &fresh));
}

/// A reader who has an old figure looks up there why it moved.
#[test]
fn each_version_is_in_the_list_of_changes() {
    let changes = text("CHANGELOG.md");
    for version in 2..=MODEL {
        let title = format!("### Model {version}\n");
        let (_, rest) = changes.split_once(&title).unwrap_or_else(|| panic!("no {title:?}"));
        let section = rest.split("\n### ").next().unwrap_or_default();
        let head = format!("| model {} | model {version} |", version - 1);
        assert!(section.contains(&head), "{title:?} has no table of old and new");
    }
}
