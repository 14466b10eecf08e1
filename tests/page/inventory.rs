//! Everything on the page, by name: what several builds bring out together is what
//! `fixture/inventory.json` has. `fixture/inventory-before.json` is the same of the page before it was
//! parted into views: each name of it is still there, or `fixture/renamed.json` says what became of it.

mod bring;
mod entries;
mod renames;
mod tour;

use pitchline_tests::browser::{Outcome, Size};

use crate::visit::{Visit, assert_none};
use bring::everything;
use entries::{Entries, NOW, compare};
use renames::{Group, Rename, lost};
use tour::{glance, look};

#[test]
fn inventory_of_the_page() -> Outcome {
    let found = everything()?;
    if std::env::var_os("PITCHLINE_WRITE").is_some_and(|value| value == "1") {
        return found.write();
    }
    compare(&Entries::read(NOW)?, &found)
}

#[test]
fn inventory_lost_nothing_to_the_views() -> Outcome {
    let before = Entries::read("inventory-before.json")?;
    assert_none(&lost(&before, &Entries::read(NOW)?, &renames::read()?))
}

/// The view, what is taken away there, and the kind and the beginning of the name that is missed for it.
const TAKEN: [(&str, &str, &str, &str); 12] = [
    ("How far?", "the('caption', 'Through the year').remove()", "tables", "Through the year | Air"),
    (
        "How far?",
        "the('svg text', 'your air temperature').remove()",
        "words in pictures",
        "Through the year: your air temperature",
    ),
    (
        "How far?",
        "the('.steps p', 'Gear ratio: ').closest('li')?.remove()",
        "steps",
        "Gear ratio: i",
    ),
    ("How steep?", "the('th', 'If lower, %').remove()", "tables", "The result"),
    (
        "How steep?",
        "the('span', 'Your board may climb').remove()",
        "cautions",
        "Your board may climb",
    ),
    ("How steep?", "the('[role=img]', '').removeAttribute('aria-label')", "pictures", ""),
    (
        "Does it go together?",
        "the('th[scope=row]', 'Belt to road').remove()",
        "rows",
        "Clearances with you",
    ),
    (
        "Does it go together?",
        "the('.fold-title', 'Riser, lean and wheel bite').remove()",
        "folds",
        "Riser, lean and wheel bite",
    ),
    ("Build", "the('label', 'Pole pairs').remove()", "inputs", "Motor: Pole pairs"),
    ("Build", "the('.unit', 'rpm/V').remove()", "inputs", "Motor: Kv | rpm/V"),
    ("Build", "the('option', 'Crouched').remove()", "options", "Posture: Crouched"),
    ("Share", "the('button', 'Copy link').ariaLabel = 'Link'", "buttons", "Copy link"),
];

/// Else the inventory would be kept by a page that lost half of it.
#[test]
fn inventory_misses_what_is_taken_away() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let mut views: Vec<&str> = TAKEN.iter().map(|taken| taken.0).collect();
    views.dedup();
    for view in views {
        let before = look(page, view)?;
        if view == "Build" {
            crate::visit::open_build(page)?;
        }
        let taken = || TAKEN.iter().filter(|taken| taken.0 == view);
        for (_, script, ..) in taken() {
            // All of that name, since one of them left is one that is there.
            let take = script.replace("the(", "one(");
            let script = format!(
                "for (let found = true; found;) {{
                   found = false;
                   const one = (look, text) => {{
                     const e = [...document.querySelectorAll(look)]
                       .find((e) => !e.dataset.taken && e.textContent.trim().startsWith(text));
                     found = !!e;
                     if (e) e.dataset.taken = 'yes';
                     return e ?? document.createElement('p').appendChild(document.createElement('p'));
                   }};
                   {take};
                 }}"
            );
            page.eval(&script, &[])?;
        }
        let after = glance(page, view)?;
        let missing = before.without(&after);
        for (_, script, kind, name) in taken() {
            let missed = missing.iter().any(|entry| {
                let mut parts = entry.splitn(3, " | ");
                let found = (parts.next(), parts.nth(1));
                found.0 == Some(kind) && found.1.is_some_and(|found| found.starts_with(name))
            });
            assert!(missed, "{script} was not missed: {missing:#?}");
        }
        assert!(compare(&before, &after).is_err());
        assert_eq!(before.without(&before), Vec::<String>::new());
    }
    visit.end()
}

/// A name may change for a reason, wherever it stands; nothing else may.
#[test]
fn inventory_follows_what_is_renamed() {
    let mut old = Entries::default();
    old.put("tables", "Hill > Heat", "Through the year | Air");
    old.put("rows", "Hill > Heat", "Through the year: May");
    old.put("inputs", "Hill", "Slope");
    old.put("inputs", "Hill", "Speed");
    old.put("texts", "Hill", "Gone");
    let mut new = Entries::default();
    new.put("tables", "How steep?", "Each month | Air");
    new.put("rows", "How steep?", "Each month: May");
    new.put("options", "How steep?", "Grade");
    new.put("inputs", "How steep?", "Speed");
    let change = |kind: &str, old: &str, new: &str, now: Option<&str>| Group {
        reason: "plainer".into(),
        renames: vec![Rename {
            kind: kind.into(),
            old: old.into(),
            new: new.into(),
            now: now.map(str::to_owned),
        }],
    };
    let all = || {
        vec![
            change("inputs", "Slope", "Grade", Some("options")),
            change("captions", "Through the year", "Each month", None),
            change("texts", "Gone", "", None),
        ]
    };
    assert_eq!(lost(&old, &new, &all()), Vec::<String>::new());
    // Without any of them something is lost, and the caption stands over two.
    for (place, count) in [(0, 1), (1, 2), (2, 1)] {
        let mut some = all();
        some.remove(place);
        assert_eq!(lost(&old, &new, &some).len(), count);
    }
    // A rename that does not hold is a slip.
    for slip in [
        change("inputs", "Grade", "Slope", None),
        change("inputs", "Speed", "Grade", Some("options")),
        change("texts", "Gone", "Nowhere", None),
        change("captions", "Through", "Each", None),
        change("captions", "Through the year", "Nowhere", None),
    ] {
        let all: Vec<Group> = all().into_iter().chain([slip]).collect();
        assert_ne!(lost(&old, &new, &all), Vec::<String>::new());
    }
    let unsaid = Group { reason: String::new(), ..change("texts", "Gone", "", None) };
    assert_ne!(lost(&old, &new, &[unsaid]), Vec::<String>::new());
}
