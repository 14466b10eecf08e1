//! Everything on the page, by name: what several builds bring out together is what
//! `fixture/inventory.json` has, so that a page made anew can be held to it.

mod bring;
mod entries;

use pitchline_tests::browser::{Outcome, Size};

use crate::visit::Visit;
use bring::{everything, glance, look};
use entries::{Entries, Renamed, compare, renamed};

/// Names that the page has changed since the file was written, each with the reason. A `kind` of
/// "places" renames a question or a heading for all that stands under it, "captions" a table's
/// caption for its rows too; an empty `new` says that the thing is gone.
const RENAMED: &[Renamed] = &[
    Renamed {
        kind: "texts",
        old: "Your cruising speed and the charge at the start stand under \"You and your ride\".",
        new: "Your cruising speed stands under \"You and your ride\", the charge at the start under \"How far?\".",
        reason: "it led to where the charge is not",
    },
    Renamed {
        kind: "texts",
        old: "It needs the network once; after that it works without.",
        new: "The page needs the network once; after that it works without.",
        reason: "a sentence before it speaks of a file",
    },
    Renamed {
        kind: "texts",
        old: "Your set-up is saved.",
        new: "Nothing you saved has changed.",
        reason: "a page that did not load cannot know that anything is saved",
    },
    Renamed {
        kind: "captions",
        old: "(no caption)",
        new: "Top speed with a full pack, by ride mode and by grade",
        reason: "every table says what it holds",
    },
    Renamed {
        kind: "tables",
        old: "Top speed with a full pack, by ride mode and by grade | With a full pack | Top speed | Limit",
        new: "Top speed with a full pack, by ride mode and by grade | Mode or grade | Top speed | Limit",
        reason: "the caption says with which pack, the head what the rows are",
    },
    Renamed {
        kind: "notices",
        old: "# fault in catalogue.json. The rest works.",
        new: "# entry of this catalogue could not be used. See which",
        reason: "riders read one line; what is wrong is for the maker",
    },
    Renamed {
        kind: "notices",
        old: "# faults in catalogue.json. The rest works.",
        new: "# entries of this catalogue could not be used. See which",
        reason: "riders read one line; what is wrong is for the maker",
    },
    // In the maker's check they stand in a table, of which the inventory has the first column.
    Renamed {
        kind: "texts",
        old: "\"# teeth, # mm\": /motor_pulleys/#/teeth: # teeth is outside # to # teeth",
        new: "",
        reason: "moved to the table of the maker's check",
    },
    Renamed {
        kind: "texts",
        old: "\"Capstan #\": /motors/#/noload_a: \"noload_a\" is not known; did you mean \"no_load_a\"?",
        new: "",
        reason: "moved to the table of the maker's check",
    },
    Renamed {
        kind: "texts",
        old: "\"Kittiwake\": /kits/#/slots/pack/default: \"unknown-#\" is not known (named in # other place too); known: drydock-#, drydock-#, slipway-#, slipway-#",
        new: "",
        reason: "moved to the table of the maker's check",
    },
    Renamed {
        kind: "texts",
        old: "\"Kittiwake\": /kits/#/slots/wheel/options/#: \"shingle-#Z\" is not known; did you mean \"shingle-#\"?",
        new: "",
        reason: "moved to the table of the maker's check",
    },
];

#[test]
fn inventory_of_the_page() -> Outcome {
    let found = everything()?;
    if std::env::var_os("PITCHLINE_WRITE").is_some_and(|value| value == "1") {
        return found.write();
    }
    compare(&renamed(&Entries::read()?, RENAMED), &found)
}

/// What is taken away, and the kind and the beginning of the name that is missed for it.
const TAKEN: [(&str, &str, &str); 12] = [
    ("the('caption', 'Through the year').remove()", "tables", "Through the year | Air and pack"),
    ("the('th', 'Lower gives, km/h').remove()", "tables", "What each alone makes of # km/h"),
    ("the('th[scope=row]', 'Belt to road').remove()", "rows", "Room left"),
    ("the('label', 'Pole pairs').remove()", "inputs", "Motor: Pole pairs"),
    ("the('.unit', 'rpm/V').remove()", "inputs", "Motor: Kv | rpm/V"),
    ("the('option', 'Hill session').remove()", "options", "How you ride: Hill session"),
    ("the('h3', 'Lean and turn').remove()", "headings", "3: Lean and turn"),
    ("the('svg text', 'flat').remove()", "words in pictures", "Push against road load: flat"),
    ("the('button', 'Copy link').ariaLabel = 'Link'", "buttons", "Copy link"),
    ("the('.steps p', 'Gear ratio: ').closest('li')?.remove()", "steps", "Gear ratio: i"),
    ("the('p', 'Climbing is not stopping.').remove()", "cautions", "Climbing is not stopping."),
    ("the('[role=img]', '').removeAttribute('aria-label')", "pictures", ""),
];

/// Else the inventory would be kept by a page that lost half of it.
#[test]
fn inventory_misses_what_is_taken_away() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let before = look(page)?;
    for (script, ..) in TAKEN {
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
    let after = glance(page)?;
    let missing = before.without(&after);
    for (script, kind, name) in TAKEN {
        let missed = missing.iter().any(|entry| {
            let mut parts = entry.splitn(3, " | ");
            parts.next() == Some(kind) && parts.nth(1).is_some_and(|found| found.starts_with(name))
        });
        assert!(missed, "{script} was not missed: {missing:#?}");
    }
    assert!(compare(&before, &after).is_err());
    assert_eq!(before.without(&before), Vec::<String>::new());
    visit.end()
}

/// A name may change for a reason, and what stands under a heading goes along with it.
#[test]
fn inventory_follows_what_is_renamed() {
    let mut old = Entries::default();
    old.put("tables", "Hill > Heat", "Through the year");
    old.put("rows", "Hill > Heat", "Through the year: May");
    old.put("inputs", "Hill", "Slope");
    old.put("texts", "Hill", "Gone");
    let change = |kind, old, new| Renamed { kind, old, new, reason: "plainer" };
    let changes = [
        change("inputs", "Slope", "Grade"),
        change("places", "Hill", "How steep?"),
        change("captions", "Through the year", "Each month"),
        change("texts", "Gone", ""),
    ];
    let mut new = Entries::default();
    new.put("tables", "How steep? > Heat", "Each month");
    new.put("rows", "How steep? > Heat", "Each month: May");
    new.put("inputs", "How steep?", "Grade");
    assert_eq!(renamed(&old, &changes), new);
    // A name that is not in the file is a slip.
    let slip = std::panic::catch_unwind(|| renamed(&old, &[change("inputs", "Grade", "Slope")]));
    assert!(slip.is_err());
}
