//! The three headline answers as they were before the last edit.

use super::difference::Difference;
use super::document::Document;
use super::rest::Whole;
use super::store::App;
use super::sure::Banded;
use super::task::{Job, Task};
use leptos::prelude::*;
use pitchline_core::{Answers, Build, answers};
use std::sync::Arc;

/// The answers before an edit.
#[derive(Clone, Default)]
pub(super) struct Compared {
    /// The build that they are of.
    before: Option<Arc<Whole>>,
    /// Top speed in m/s, hill as a share, distance in m; none where a part is missing.
    was: Option<[f64; 3]>,
    /// The answers that they stand before, by [`Found::count`](super::Found).
    count: Option<u32>,
}

/// The last edit's builds are others once it is another edit.
#[derive(Clone)]
struct Before(Option<Arc<Whole>>);

impl PartialEq for Before {
    fn eq(&self, other: &Self) -> bool {
        self.0.as_ref().map(Arc::as_ptr) == other.0.as_ref().map(Arc::as_ptr)
    }
}

/// The headline of that band, for exactly what was entered; none of the others.
fn headline(answers: &Answers, of: Banded) -> Option<f64> {
    match of {
        Banded::Speed => Some(answers.speed.flat_full.speed_m_s),
        Banded::Hill => Some(answers.climb.slow.grade),
        Banded::Distance => Some(answers.distance.cruise.distance_m),
        Banded::Outing | Banded::Charge | Banded::Enough => None,
    }
}

const HEADLINES: [Banded; 3] = [Banded::Speed, Banded::Hill, Banded::Distance];

impl App {
    /// Begins to compare, and goes on for as long as the page lives. The edit is drawn first.
    pub fn begin_comparing(self) {
        let before =
            Memo::new(move |_| Before(self.document.with(|document| document.before().cloned())));
        let follow = move || {
            before.track();
            _ = self.found();
        };
        Task::new(follow, move || Some(self.compare(before.get().0)));
    }

    fn compare(self, before: Option<Arc<Whole>>) -> Job {
        let count = self.found().map(|found| found.count);
        let known = self.compared.with_untracked(|known| {
            Before(known.before.clone()) == Before(before.clone()) && known.before.is_some()
        });
        let was = if known {
            self.compared.with_untracked(|known| known.was)
        } else {
            before.as_ref().and_then(|before| self.answered(before))
        };
        self.compared.set(Compared { before, was, count });
        Box::new(|| 1.0)
    }

    /// The headlines of the build before, if what was edited since has a part in them.
    fn answered(self, before: &Whole) -> Option<[f64; 3]> {
        let moves = |now: &Document| Difference::between(before, &now.build).moves_answers();
        if !self.document.with_untracked(moves) {
            return None;
        }
        let answers = answers(&Build::check(&before.draft).ok()?);
        Some(HEADLINES.map(|of| headline(&answers, of).unwrap_or_default()))
    }

    /// A headline before the last edit and now, in SI; none where there was no edit, or it is not
    /// worked out yet. Tracked.
    #[must_use]
    pub fn was_and_is(self, of: Banded) -> Option<[f64; 2]> {
        let found = self.found()?;
        let at = HEADLINES.iter().position(|headline| *headline == of)?;
        self.compared.with(|compared| {
            let was = compared.was.filter(|_| compared.count == Some(found.count))?;
            Some([*was.get(at)?, headline(&found.answers, of)?])
        })
    }
}
