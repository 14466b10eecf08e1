//! What must hold of the state, on the host: signals and memos need no browser.

use super::edits::Edits;
use super::store::{App, Loaded};
use super::{Found, Place};
use crate::text::Style;
use leptos::prelude::*;
use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, Slot};
use std::sync::Arc;

fn with_app<T>(test: impl FnOnce(App) -> T) -> T {
    let catalog = Catalog::read(include_str!("../../catalog/catalogue.json")).expect("the demo").0;
    let draft = catalog.draft(&catalog.kits[0].id);
    let loaded = Loaded { catalog: Arc::new(catalog), ..Loaded::default() };
    Owner::new().with(|| test(App::new(loaded, draft.into(), Edits::default(), Style::default())))
}

fn found(app: App) -> Arc<Found> {
    untrack(|| app.found()).expect("the kit is whole")
}

fn fit(app: App) -> Arc<super::Fit> {
    untrack(|| app.fit()).expect("the kit is whole")
}

fn mass() -> Place {
    (Slot::Rider, Slot::Rider.kind().field_index("mass_kg").expect("a rider has mass"))
}

#[test]
fn a_name_works_nothing_out_anew() {
    with_app(|app| {
        let (before, fitted) = (found(app), fit(app));
        app.name("To the pier");
        assert_eq!(app.peek(|draft| draft.name.clone()), "To the pier");
        assert!(Arc::ptr_eq(&before, &found(app)));
        assert!(Arc::ptr_eq(&fitted, &fit(app)));
        app.type_in(mass(), "101".into());
        assert!(!Arc::ptr_eq(&before, &found(app)));
        assert!(!Arc::ptr_eq(&fitted, &fit(app)));
    });
}

#[test]
fn a_build_is_worked_out_once() {
    with_app(|app| {
        let first = found(app);
        assert!(Arc::ptr_eq(&first, &found(app)));
        // What is set to what it was is no change.
        app.type_in(mass(), "101".into());
        let heavy = found(app);
        app.type_in(mass(), "101.0".into());
        assert!(Arc::ptr_eq(&heavy, &found(app)));
        assert_eq!(heavy.count, first.count + 1);
    });
}

/// The last good answers stay, half a number is not meant.
#[test]
fn faulty_text_leaves_the_build_as_it_was() {
    with_app(|app| {
        let before = app.peek(Draft::clone);
        app.type_in(mass(), "9".into());
        assert!(untrack(|| app.waits()), "9 kg is out of range");
        app.type_in(mass(), "99".into());
        assert!(!untrack(|| app.waits()));
        app.type_in(mass(), "999".into());
        assert!(untrack(|| app.waits()));
        assert_eq!(app.peek(Draft::clone), before);
        app.leave(mass());
        let text = untrack(|| app.typed(|typed| typed.get(mass()).map(|entry| entry.text.clone())));
        assert_eq!(text.as_deref(), Some("999"), "faulty text stays");
    });
}

#[test]
fn undo_goes_back_through_picks() {
    with_app(|app| {
        let mut builds = vec![app.peek(Draft::clone)];
        let kits: Vec<String> =
            untrack(|| app.catalog()).kits.iter().map(|kit| kit.id.clone()).collect();
        for kit in kits.iter().rev() {
            app.start_from(kit);
            builds.push(app.peek(Draft::clone));
        }
        for wanted in builds.iter().rev().skip(1) {
            app.undo();
            assert_eq!(app.peek(Draft::clone), *wanted);
        }
        app.undo();
        assert_eq!(app.peek(Draft::clone), builds[0], "there is nothing before it");
    });
}

/// What is undone last is done again first, and an edit ends what could be done again.
#[test]
fn redo_leads_where_undo_came_from() {
    with_app(|app| {
        let type_in = |text: &str| {
            app.type_in(mass(), text.into());
            app.leave(mass());
        };
        let mass = || app.peek(|draft| draft.value(Slot::Rider, "mass_kg")).expect("it has one");
        let first = mass();
        type_in("81");
        type_in("82");
        app.undo();
        app.undo();
        assert_eq!(mass(), first);
        app.redo();
        assert_eq!(mass(), 81.0);
        type_in("90");
        app.redo();
        assert_eq!(mass(), 90.0, "there is nothing to do again");
        app.undo();
        assert_eq!(mass(), 81.0);
    });
}

#[test]
fn typing_in_a_field_is_one_edit_until_it_is_left() {
    with_app(|app| {
        let before = app.peek(Draft::clone);
        for text in ["8", "81", "815", "81"] {
            app.type_in(mass(), text.into());
        }
        app.leave(mass());
        app.type_in(mass(), "82".into());
        app.undo();
        assert_eq!(app.peek(|draft| draft.value(Slot::Rider, "mass_kg")), Some(81.0));
        assert!(untrack(|| app.typed(|typed| typed.get(mass()).is_none())), "it shows the build");
        app.undo();
        assert_eq!(app.peek(Draft::clone), before);
        assert!(untrack(|| app.done().is_none()));
    });
}

/// A message names one edit. Once there was another, undoing that one would take both.
#[test]
fn a_message_undoes_what_it_names_and_nothing_else() {
    with_app(|app| {
        let before = app.peek(Draft::clone);
        let undo = || untrack(|| app.message()).and_then(|message| message.undo);
        app.start_from("gannet");
        let named = undo().expect("it is offered");
        assert!(untrack(|| app.can_undo(&named)));
        app.name("To the pier");
        assert!(!untrack(|| app.can_undo(&named)));
        app.undo_this(&named);
        assert_eq!(app.peek(|draft| draft.name.clone()), "To the pier");
        app.undo();
        assert!(untrack(|| app.can_undo(&named)), "it is the last one again");
        app.undo_this(&named);
        assert_eq!(app.peek(Draft::clone), before);
        assert_eq!(undo(), None, "what was undone offers no more");
    });
}

#[test]
fn a_missing_part_leaves_nothing_answered() {
    with_app(|app| {
        let kit = app.peek(|draft| draft.kit.clone());
        app.open_link(&format!("v=1&kit={kit}&wheel=w-none"));
        assert!(untrack(|| app.found().is_none() && app.fit().is_none()));
        assert_eq!(untrack(|| app.missing()).len(), 1);
        let wheel = untrack(|| app.offered(Slot::Wheel))[0].id.clone();
        app.pick(Slot::Wheel, &wheel);
        assert_eq!(found(app).draft.record(Slot::Wheel).id, wheel);
    });
}
