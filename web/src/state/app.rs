//! The model of the page, in one signal: the build, and the answers to it.

use super::first::FIRST;
use super::sure::{Banded, OF_STRIP, Sure, begin};
use super::typed::Typed;
use crate::text::{self, Style, Units};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Answers, Build, Draft, Error, Notice, Record, Slot, answers, notices};
use reactive_graph::prelude::*;
use reactive_graph::signal::RwSignal;
use std::sync::Arc;

/// A catalogue and how it was come by.
#[derive(Clone, Debug, Default)]
pub struct Loaded {
    /// The catalogue that is in use.
    pub catalog: Arc<Catalog>,
    /// Entries of it that were left out.
    pub faults: Vec<Error>,
    /// Why the maker's file could not be used at all, so that the demo stands in.
    pub refused: Option<String>,
}

/// Something to say once, at the foot of the page.
#[derive(Clone, Debug)]
pub struct Message {
    /// The sentence.
    pub text: String,
    /// Whether "Undo" is offered with it.
    pub undo: bool,
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

/// Everything that the page remembers.
#[derive(Debug)]
pub struct Model {
    /// The catalogue.
    pub loaded: Loaded,
    /// The build; valid in all that is filled.
    pub draft: Draft,
    /// What is being typed.
    pub typed: Typed,
    /// Units and decimal mark.
    pub style: Style,
    /// Named builds.
    pub saved: Vec<Draft>,
    /// What could not be read of a link or file.
    pub unread: Vec<Error>,
    /// What was said last.
    pub message: Option<Message>,
    /// How the offline copy stands, in the word of the page's script.
    pub offline: String,
    /// How sure answers are, as far as it is known, by [`Banded`].
    pub sure: [Sure; 6],
    /// How many things do not fit by their size.
    pub amiss: usize,
    /// Whether a newer version waits and has not been put off.
    pub update: bool,
    /// The answers as last read out; empty until they change.
    pub heard: String,
    /// What the gear map shows.
    pub map_view: MapView,
    /// Whether a link to copy by hand is shown, where the browser does not let us.
    pub by_hand: bool,
    /// Builds to go back to.
    pub(super) past: Vec<Draft>,
    /// The saved build that was forgotten last.
    pub(super) lost: Option<Draft>,
    found: Option<Arc<Found>>,
    /// How many builds have been answered.
    answered: u32,
}

impl Model {
    /// The record in a slot.
    #[must_use]
    pub fn record(&self, slot: Slot) -> &Record {
        self.draft.record(slot)
    }

    /// Whether a slot's part is not there and none was picked.
    #[must_use]
    pub fn is_unfilled(&self, slot: Slot) -> bool {
        self.draft.unfilled().iter().any(|unfilled| unfilled.slot == slot)
    }

    /// What is missing of the build, in sentences.
    #[must_use]
    pub fn missing(&self) -> Vec<String> {
        let kit = self.loaded.catalog.kit(&self.draft.kit).map_or("", |kit| &kit.name);
        let say = |unfilled| text::unfilled(kit, unfilled, self.style);
        self.draft.unfilled().iter().map(say).collect()
    }

    /// Whether some field holds text that is not in the answers.
    #[must_use]
    pub fn waits(&self) -> bool {
        self.typed.fault().is_some()
    }

    /// Whether the bands of the strip are still to come.
    #[must_use]
    pub fn unsure(&self) -> bool {
        let count = self.found.as_ref().map(|found| found.count);
        self.sure.iter().take(OF_STRIP).any(|sure| sure.of != count)
    }

    #[inline(never)]
    fn answer(&mut self) {
        if !self.draft.unfilled().is_empty() {
            // The last answers are another board's.
            (self.found, self.amiss) = (None, 0);
        } else if self.found.as_ref().is_none_or(|before| before.draft != self.draft) {
            self.answered += 1;
            // A build that did not check would leave the last answers standing.
            self.found = Found::new(&self.draft, self.answered).or(self.found.take());
        }
    }

    /// Whether a slot's part differs from the catalogue's part of its id.
    #[must_use]
    pub fn altered(&self, slot: Slot) -> bool {
        let record = self.record(slot);
        let part = self.loaded.catalog.part(slot.kind(), &record.id);
        !self.is_unfilled(slot) && part.is_none_or(|part| !part.same_part(record))
    }
}

/// The answers to a build.
#[derive(Clone, Debug)]
pub struct Found {
    /// The build as checked.
    pub build: Build,
    /// The answers to it.
    pub answers: Answers,
    /// What a person would want to be told about it.
    pub notices: Vec<Notice>,
    /// Counts builds, so that views know when to draw anew.
    pub count: u32,
    draft: Draft,
}

impl Found {
    fn new(draft: &Draft, count: u32) -> Option<Arc<Self>> {
        let build = Build::check(draft).ok()?;
        let (answers, notices) = (answers(&build), notices(draft, &build));
        Some(Arc::new(Self { build, answers, notices, count, draft: draft.clone() }))
    }
}

/// The page's state. Copies share the same signal.
#[derive(Clone, Copy)]
pub struct App(RwSignal<Model>);

impl App {
    /// The page's state at the start.
    #[must_use]
    pub fn new(loaded: Loaded, draft: Draft, style: Style) -> Self {
        Self(RwSignal::new(Model {
            loaded,
            found: Found::new(&draft, 1),
            answered: 1,
            draft,
            typed: Typed::default(),
            style,
            saved: Vec::new(),
            unread: Vec::new(),
            message: None,
            offline: String::new(),
            sure: begin(FIRST),
            amiss: 0,
            update: false,
            heard: String::new(),
            map_view: MapView::default(),
            by_hand: false,
            past: Vec::new(),
            lost: None,
        }))
    }

    /// Reads the model; what calls this is called again when it changes.
    pub fn read<T>(self, read: impl FnOnce(&Model) -> T) -> T {
        self.0.with(read)
    }

    /// Reads the model once.
    pub fn peek<T>(self, read: impl FnOnce(&Model) -> T) -> T {
        self.0.with_untracked(read)
    }

    /// Changes the model, and answers anew if the build is another.
    pub fn change(self, change: impl FnOnce(&mut Model)) {
        self.0.update(|model| {
            change(model);
            model.answer();
        });
    }

    /// The answers; what calls this is called again when they change. `None`
    /// where a part is missing.
    #[must_use]
    #[inline(never)]
    pub fn found(self) -> Option<Arc<Found>> {
        self.read(|model| model.found.clone())
    }

    /// How sure an answer is; tracked.
    #[must_use]
    #[inline(never)]
    pub fn sure(self, of: Banded) -> Sure {
        self.read(|model| model.sure[of as usize])
    }

    /// Units and decimal mark; tracked.
    #[must_use]
    #[inline(never)]
    pub fn style(self) -> Style {
        self.read(|model| model.style)
    }

    /// Metric or imperial; tracked.
    #[must_use]
    pub fn units(self) -> Units {
        self.style().units
    }

    /// The catalogue; tracked.
    #[must_use]
    #[inline(never)]
    pub fn catalog(self) -> Arc<Catalog> {
        self.read(|model| model.loaded.catalog.clone())
    }

    /// A key for what depends on the answers and on how numbers are written.
    #[must_use]
    #[inline(never)]
    pub fn key(self) -> String {
        let count = self.found().map_or(0, |found| found.count);
        let style = self.style();
        let comma = if style.comma { "," } else { "." };
        format!("{count}{comma}{}", style.units.key())
    }
}
