//! The signals. All are made once, at the root, and live as long as the page.

use super::typed::Typed;
use crate::text::{Style, Units};
use leptos::prelude::*;
use pitchline_core::catalog::Catalog;
use pitchline_core::{Answers, Build, Draft, Error, Notice, Slot, answers, notices};
use std::sync::Arc;

/// A catalogue and how it was come by.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Loaded {
    /// The catalogue that is in use.
    pub catalog: Arc<Catalog>,
    /// Entries of it that were left out.
    pub faults: Vec<Error>,
    /// Why the maker's file could not be used at all, so that the demo stands in.
    pub refused: Option<String>,
}

/// Something to say once, at the foot of the page.
#[derive(Clone, Debug, PartialEq)]
pub struct Message {
    /// The sentence.
    pub text: String,
    /// Whether "Undo" is offered with it.
    pub undo: bool,
}

/// The page's state. Copies share the same signals.
#[derive(Clone, Copy)]
pub struct App {
    /// The catalogue.
    pub loaded: RwSignal<Loaded>,
    /// The build; always valid.
    pub draft: RwSignal<Draft>,
    /// What is being typed.
    pub typed: RwSignal<Typed>,
    /// Units and decimal mark.
    pub style: RwSignal<Style>,
    /// Named builds.
    pub saved: RwSignal<Vec<Draft>>,
    /// What could not be read of a link or file.
    pub unread: RwSignal<Vec<Error>>,
    /// What was said last.
    pub message: RwSignal<Option<Message>>,
    /// How the offline copy stands, in the word of the page's script.
    pub offline: RwSignal<String>,
    /// Whether a newer version waits and has not been put off.
    pub update: RwSignal<bool>,
    /// Whether the browser refused to keep the named builds.
    pub unkept: RwSignal<bool>,
    /// Builds to go back to.
    pub(super) past: RwSignal<Vec<Draft>>,
    /// The checked build.
    pub build: Memo<Option<Build>>,
    /// The answers to it.
    pub answers: Memo<Option<Arc<Answers>>>,
    /// What a person would want to be told about it.
    pub notices: Memo<Vec<Notice>>,
}

impl App {
    /// The page's state at the start.
    #[must_use]
    pub fn new(loaded: Loaded, draft: Draft, style: Style) -> Self {
        let draft = RwSignal::new(draft);
        let build = Memo::new(move |_| draft.with(|draft| Build::check(draft).ok()));
        let found = Memo::new(move |_| build.get().map(|build| Arc::new(answers(&build))));
        let told = Memo::new(move |_| {
            let build = build.get();
            draft.with(|draft| build.map_or_else(Vec::new, |build| notices(draft, &build)))
        });
        Self {
            loaded: RwSignal::new(loaded),
            draft,
            typed: RwSignal::new(Typed::new()),
            style: RwSignal::new(style),
            saved: RwSignal::new(Vec::new()),
            unread: RwSignal::new(Vec::new()),
            message: RwSignal::new(None),
            offline: RwSignal::new(String::new()),
            update: RwSignal::new(false),
            unkept: RwSignal::new(false),
            past: RwSignal::new(Vec::new()),
            build,
            answers: found,
            notices: told,
        }
    }

    /// The state of the page around a component.
    ///
    /// # Panics
    /// Outside the page, where there is none.
    #[must_use]
    pub fn here() -> Self {
        expect_context::<Self>()
    }

    /// The catalogue, tracked.
    #[must_use]
    pub fn catalog(self) -> Arc<Catalog> {
        self.loaded.with(|loaded| loaded.catalog.clone())
    }

    /// Metric or imperial, tracked.
    #[must_use]
    pub fn units(self) -> Units {
        self.style.get().units
    }

    /// Whether some field holds text that is not in the answers, tracked.
    #[must_use]
    pub fn waits(self) -> bool {
        self.typed.with(|typed| typed.values().any(|entry| entry.fault.is_some()))
    }

    /// Whether a slot's part differs from the catalogue's part of its id, tracked.
    #[must_use]
    pub fn altered(self, slot: Slot) -> bool {
        let catalog = self.catalog();
        self.draft.with(|draft| {
            let record = draft.record(slot);
            catalog.part(slot.kind(), &record.id).is_none_or(|part| !part.same_part(record))
        })
    }
}
