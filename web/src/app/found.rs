//! The answers to the build, worked out once for each change of it.

use super::document::Document;
use leptos::prelude::*;
use pitchline_core::{Answers, Build, Draft, Notice, answers, notices};
use std::sync::Arc;

/// The answers to a build.
#[derive(Clone, Debug)]
pub struct Found {
    /// The draft that it was checked from, without its name.
    pub draft: Draft,
    /// The build as checked.
    pub build: Build,
    /// The answers to it.
    pub answers: Answers,
    /// What a person would want to be told about it.
    pub notices: Vec<Notice>,
    /// Counts builds, so that what takes its time knows which one it belongs to.
    pub count: u32,
}

/// Each is worked out once: only it itself is the same.
impl PartialEq for Found {
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self, other)
    }
}

impl Found {
    /// The answers to a draft; none where it is not a whole board within the limits.
    #[must_use]
    pub fn new(draft: Draft, count: u32) -> Option<Self> {
        let build = Build::check(&draft).ok()?;
        let (answers, notices) = (answers(&build), notices(&draft, &build));
        Some(Self { draft, build, answers, notices, count })
    }
}

/// None where a part is missing: the last answers are another board's. A name moves no answer.
pub(super) fn memo(document: RwSignal<Document>) -> Memo<Option<Arc<Found>>> {
    let board = Memo::new(move |_| {
        let mut draft = document.with(|document| document.build.draft.clone());
        draft.name = String::new();
        draft
    });
    let count = StoredValue::new(0);
    Memo::new(move |before: Option<&Option<Arc<Found>>>| {
        let draft = board.get();
        if !draft.unfilled().is_empty() {
            return None;
        }
        count.update_value(|count| *count += 1);
        // A build that did not check would leave the last answers standing.
        let found = Found::new(draft, count.get_value()).map(Arc::new);
        found.or_else(|| before.cloned().flatten())
    })
}
