//! The maker's file from outside: the demo, the schemas, and what a maker can
//! get wrong.
//!
//! `PITCHLINE_WRITE=1` writes the files that are made from others here; without
//! it a stale one fails.

mod belts;
mod check;
mod check_brute;
mod declared;
mod declared_type;
mod demo;
mod fault;
mod fixture;
mod frame;
mod gearing;
mod known;
mod model;
mod mutation;
mod practice;
mod readme;
mod schema;
mod silent;
mod unreadable;
mod usual;
mod written;

use pitchline_core::catalog::Catalog;
use pitchline_core::{Build, Draft, Error, Slot};
use std::fs;

/// A file of the repository.
fn text(path: &str) -> String {
    fs::read_to_string(pitchline_tests::root().join(path)).unwrap_or_else(|e| panic!("{path}: {e}"))
}

/// The demo's text.
fn demo_text() -> String {
    text("web/catalog/catalogue.json")
}

/// The demo, which has no fault.
fn demo() -> Catalog {
    let (catalog, faults) = Catalog::read(&demo_text()).expect("the demo can be read");
    assert_eq!(shown(&faults), Vec::<String>::new());
    catalog
}

/// Errors as a person sees them, in an order that does not depend on the reader's.
fn shown(errors: &[Error]) -> Vec<String> {
    let mut shown: Vec<_> = errors.iter().map(ToString::to_string).collect();
    shown.sort();
    shown
}

/// A message without the words that are known, which change with the demo; `known.rs` has them.
fn brief(said: &str) -> String {
    let ends = ["? Other names: ", "; known names: "].map(|words| said.find(words));
    let [also, plainly] = ends;
    let end = also.map(|at| at + 1).or(plainly).unwrap_or(said.len());
    said[..end].into()
}

/// The checked build of a draft that has no fault.
fn build(draft: &Draft) -> Build {
    Build::check(draft).unwrap_or_else(|errors| panic!("{:?}", shown(&errors)))
}

/// The slots in which a kit offers more than one part.
fn choices(catalog: &Catalog, kit: &str) -> Vec<Slot> {
    let parts = Slot::ALL.iter().copied().filter(|slot| slot.holds_part());
    parts.filter(|slot| *slot != Slot::Cell && catalog.offered(kit, *slot).len() > 1).collect()
}

/// Every combination of what a kit offers.
fn combinations(catalog: &Catalog, kit: &str) -> Vec<Draft> {
    let mut drafts = vec![catalog.draft(kit)];
    for slot in choices(catalog, kit) {
        let offered = catalog.offered(kit, slot);
        drafts = drafts
            .iter()
            .flat_map(|draft| {
                offered.iter().map(|part| {
                    let mut draft = draft.clone();
                    draft.set_record(slot, (*part).clone());
                    if slot == Slot::Pack {
                        catalog.follow_pack(&mut draft);
                    }
                    draft
                })
            })
            .collect();
    }
    drafts
}
