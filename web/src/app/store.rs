//! What the page knows, as signals of one root.

use super::address::Landing;
use super::bands::Bands;
use super::compared::Compared;
use super::difference::Difference;
use super::document::Document;
use super::edits::Edits;
use super::found::Found;
use super::keeping::Keeper;
use super::rest::Whole;
use super::shelf::Entry;
use super::task::Task;
use super::theme::Theme;
use super::typed::Typed;
use crate::text::{self, Style, Units};
use leptos::prelude::*;
use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, Error, Margins, Record, Slot, margins};
use std::sync::Arc;

/// A catalogue and how it was come by.
#[derive(Clone, Debug, Default)]
pub struct Loaded {
    /// The catalogue that is in use.
    pub catalog: Arc<Catalog>,
    /// Entries of it that were left out.
    pub faults: Vec<Error>,
    /// Why the maker's file could not be used, so that a kept copy or the demo stands in.
    pub refused: Option<String>,
    /// Date of the kept copy, as `2026-11-25`, where that stands in.
    pub kept: Option<String>,
}

/// Something to say once, at the foot of the page.
#[derive(Clone, Debug, PartialEq)]
pub struct Message {
    /// The sentence.
    pub text: String,
    /// What "Undo" beside it undoes; none where it is not offered.
    pub undo: Option<Undo>,
}

/// What a message offers to undo: what it names and nothing more.
#[derive(Clone, Debug, PartialEq)]
pub enum Undo {
    /// The edit that led to this state of the build, while it is the last one.
    Edit(u64),
    /// That a saved build was forgotten: its entry and its text.
    Forget(Entry, String),
}

/// What the gear map can show of each pairing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MapView {
    /// Top speed on the flat.
    #[default]
    Speed,
    /// Top speed on the rider's hill.
    HillSpeed,
    /// Distance at the rider's cruising speed.
    Distance,
    /// Steepest hill at 10 km/h.
    Hill,
}

/// The page's state: every signal that more than one view reads, owned by the page's root. Copies
/// share the same signals. Views read it and call its actions; they write nothing else.
#[derive(Clone, Copy)]
pub struct App {
    pub(super) document: RwSignal<Document>,
    pub(super) typed: RwSignal<Typed>,
    pub(super) loaded: RwSignal<Loaded>,
    pub(super) style: RwSignal<Style>,
    pub(super) theme: RwSignal<Theme>,
    /// Saved builds, the newest first.
    pub(super) saved: RwSignal<Vec<Entry>>,
    /// None until keeping begins.
    pub(super) keeper: StoredValue<Option<Keeper>>,
    pub(super) unread: RwSignal<Vec<Error>>,
    pub(super) message: RwSignal<Option<Message>>,
    pub(super) offline: RwSignal<String>,
    pub(super) update: RwSignal<bool>,
    pub(super) bands: Bands,
    pub(super) compared: RwSignal<Compared>,
    pub(super) heard: RwSignal<String>,
    /// Whether nobody has said yet which kit it is.
    pub(super) asks_kit: RwSignal<bool>,
    /// Key of the view in sight.
    pub(super) see: RwSignal<String>,
    pub(super) landing: RwSignal<Landing>,
    /// Counts the places that the tab has come to.
    pub(super) places: RwSignal<u32>,
    pub(super) map_view: RwSignal<MapView>,
    pub(super) by_hand: RwSignal<bool>,
    pub(super) found: Memo<Option<Arc<Found>>>,
    pub(super) fit: Memo<Option<Arc<super::Fit>>>,
    pub(super) margins: RwSignal<Option<Arc<Margins>>>,
}

/// The page's state, from anywhere in it.
#[must_use]
pub fn use_app() -> App {
    expect_context()
}

impl App {
    /// The page's state at the start, as a context of the owner that it is made in.
    #[must_use]
    pub fn new(loaded: Loaded, build: Whole, edits: Edits, style: Style) -> Self {
        let document = RwSignal::new(Document::kept(build, edits, &loaded.catalog));
        let loaded = RwSignal::new(loaded);
        let found = super::found::memo(document);
        let app = Self {
            document,
            typed: RwSignal::default(),
            loaded,
            style: RwSignal::new(style),
            theme: RwSignal::default(),
            saved: RwSignal::default(),
            keeper: StoredValue::new(None),
            unread: RwSignal::default(),
            message: RwSignal::default(),
            offline: RwSignal::default(),
            update: RwSignal::default(),
            bands: Bands::default(),
            compared: RwSignal::default(),
            heard: RwSignal::default(),
            asks_kit: RwSignal::default(),
            see: RwSignal::default(),
            landing: RwSignal::default(),
            places: RwSignal::default(),
            map_view: RwSignal::default(),
            by_hand: RwSignal::default(),
            found,
            fit: super::fit::memo(loaded, found),
            margins: RwSignal::default(),
        };
        provide_context(app);
        app
    }

    /// Reads the build; tracked.
    pub fn draft<T>(self, read: impl FnOnce(&Draft) -> T) -> T {
        self.document.with(|document| read(&document.build.draft))
    }

    /// Reads the build once.
    pub fn peek<T>(self, read: impl FnOnce(&Draft) -> T) -> T {
        self.document.with_untracked(|document| read(&document.build.draft))
    }

    /// The record in a slot; tracked.
    #[must_use]
    pub fn record(self, slot: Slot) -> Record {
        self.draft(|draft| draft.record(slot).clone())
    }

    /// The answers; tracked. `None` where a part is missing.
    #[must_use]
    pub fn found(self) -> Option<Arc<Found>> {
        self.found.get()
    }

    /// What goes together and what does not; tracked. `None` where a part is missing.
    #[must_use]
    pub fn fit(self) -> Option<Arc<super::Fit>> {
        self.fit.get()
    }

    /// Works out the ratings after each edit, once that is painted.
    pub fn begin_margins(self) {
        let follow = move || drop(self.found());
        Task::new(follow, move || {
            let found = self.found();
            let once = move || {
                let found = found.as_ref().map(|found| Arc::new(margins(&found.build)));
                self.margins.set(found);
                1.0
            };
            Some(Box::new(once))
        });
    }

    /// Every rating against what is asked of it, of the build before until it is worked out anew;
    /// tracked. `None` where a part is missing.
    #[must_use]
    pub fn margins(self) -> Option<Arc<Margins>> {
        self.margins.get()
    }

    /// Units and decimal mark; tracked.
    #[must_use]
    pub fn style(self) -> Style {
        self.style.get()
    }

    /// Metric or imperial; tracked.
    #[must_use]
    pub fn units(self) -> Units {
        self.style().units
    }

    /// Whether nobody has said yet which kit it is; tracked.
    #[must_use]
    pub fn asks_kit(self) -> bool {
        self.asks_kit.get()
    }

    /// The catalogue and how it was come by; tracked.
    #[must_use]
    pub fn loaded(self) -> Loaded {
        self.loaded.get()
    }

    /// The catalogue; tracked.
    #[must_use]
    pub fn catalog(self) -> Arc<Catalog> {
        self.loaded.with(|loaded| loaded.catalog.clone())
    }

    /// What the build's kit offers for a slot; tracked.
    #[must_use]
    pub fn offered(self, slot: Slot) -> Vec<Record> {
        let catalog = self.catalog();
        self.draft(|draft| catalog.offered(&draft.kit, slot).into_iter().cloned().collect())
    }

    /// Whether a slot's part is not there and none was picked; tracked.
    #[must_use]
    pub fn is_unfilled(self, slot: Slot) -> bool {
        self.draft(|draft| draft.unfilled().iter().any(|unfilled| unfilled.slot == slot))
    }

    /// Whether a slot's part is one of the reader's own; tracked.
    #[must_use]
    pub fn is_own(self, slot: Slot) -> bool {
        let catalog = self.catalog();
        !self.is_unfilled(slot)
            && self.draft(|draft| catalog.part(slot.kind(), &draft.record(slot).id).is_none())
    }

    /// Whether a slot's part differs from the catalogue's part of its id; tracked.
    #[must_use]
    pub fn altered(self, slot: Slot) -> bool {
        let catalog = self.catalog();
        !self.is_unfilled(slot)
            && self.draft(|draft| {
                let record = draft.record(slot);
                catalog.part(slot.kind(), &record.id).is_none_or(|part| !part.same_part(record))
            })
    }

    /// What is missing of the build, in sentences; tracked.
    #[must_use]
    pub fn missing(self) -> Vec<String> {
        let (catalog, style) = (self.catalog(), self.style());
        self.draft(|draft| {
            let kit = catalog.kit(&draft.kit).map_or("", |kit| &kit.name);
            let say = |unfilled| text::unfilled(kit, unfilled, style);
            draft.unfilled().iter().map(say).collect()
        })
    }

    /// What the last edit changed; none where nothing can be undone. Tracked.
    #[must_use]
    pub fn done(self) -> Option<Difference> {
        let between = |now: &Document| Some(Difference::between(now.before()?, &now.build));
        self.document.with(between)
    }

    /// What undoing the last edit changes; none where nothing can be undone. Tracked.
    #[must_use]
    pub fn undoing(self) -> Option<Difference> {
        let between = |now: &Document| Some(Difference::between(&now.build, now.before()?));
        self.document.with(between)
    }

    /// What was undone last would change; none where nothing can be done again. Tracked.
    #[must_use]
    pub fn undone(self) -> Option<Difference> {
        let between = |now: &Document| Some(Difference::between(&now.build, now.after()?));
        self.document.with(between)
    }

    /// Reads what is being typed; tracked.
    pub fn typed<T>(self, read: impl FnOnce(&Typed) -> T) -> T {
        self.typed.with(read)
    }

    /// Whether some field holds text that is not in the answers; tracked.
    #[must_use]
    pub fn waits(self) -> bool {
        self.typed(|typed| typed.fault().is_some())
    }

    /// Saved builds, the newest first; tracked.
    #[must_use]
    pub fn saved(self) -> Vec<Entry> {
        self.saved.get()
    }

    /// What could not be read of a link or file; tracked.
    #[must_use]
    pub fn unread(self) -> Vec<Error> {
        self.unread.get()
    }

    /// What was said last; tracked.
    #[must_use]
    pub fn message(self) -> Option<Message> {
        self.message.get()
    }

    /// Whether what a message names can still be undone, and nothing else with it; tracked.
    #[must_use]
    pub fn can_undo(self, undo: &Undo) -> bool {
        match undo {
            Undo::Edit(state) => self.state() == *state,
            Undo::Forget(..) => true,
        }
    }

    /// The state that the edits have led to; tracked.
    pub(super) fn state(self) -> u64 {
        self.document.with(|document| document.edits().state())
    }

    /// How the offline copy stands, in the word of the page's script; tracked.
    #[must_use]
    pub fn offline(self) -> String {
        self.offline.get()
    }

    /// Whether a newer version waits and has not been put off; tracked.
    #[must_use]
    pub fn update(self) -> bool {
        self.update.get()
    }

    /// The answers as last read out; empty until they change; tracked.
    #[must_use]
    pub fn heard(self) -> String {
        self.heard.get()
    }

    /// What the gear map shows; tracked.
    #[must_use]
    pub fn map_view(self) -> MapView {
        self.map_view.get()
    }

    /// Whether a link to copy by hand is shown, where the browser does not let us; tracked.
    #[must_use]
    pub fn by_hand(self) -> bool {
        self.by_hand.get()
    }
}
