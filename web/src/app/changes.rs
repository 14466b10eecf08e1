//! What one change of the build would do: the recommended settings, or one other part on offer. Worked
//! out in small pieces while a view shows it.

use super::found::Found;
use super::store::App;
use super::task::{Job, Task};
use leptos::prelude::*;
use pitchline_core::catalog::Catalog;
use pitchline_core::{Rating, Slot, Steepest, Swap, Swapper};
use std::sync::Arc;

/// A change of the build, and what it comes to.
#[derive(Debug)]
pub struct Change {
    /// The parts that it takes, by id and name; none where only the settings change.
    pub parts: Vec<(Slot, String, String)>,
    /// Whether the settings are the highest that the ratings allow, not the recommended ones.
    pub highest: bool,
    /// What they cost; none where a price is missing.
    pub price: Option<f64>,
    /// The ratings that are exceeded with it.
    pub over: Vec<Rating>,
    /// The steepest hill at 10 km/h.
    pub slow: Steepest,
    /// Top speed on the flat, m/s.
    pub top_m_s: f64,
}

impl Change {
    fn of(swap: &Swap, highest: bool) -> Self {
        let named = |(slot, part): &(Slot, &pitchline_core::Record)| {
            (*slot, part.id.clone(), part.name.clone())
        };
        let parts = swap.parts.iter().map(named).collect();
        let (slow, top_m_s) = (swap.slow, swap.top_m_s);
        Self { parts, highest, price: swap.price, over: swap.over.clone(), slow, top_m_s }
    }

    /// What to compare by price: what is not known comes last.
    fn cost(&self) -> f64 {
        self.price.unwrap_or(f64::INFINITY)
    }
}

/// All that one change can do, the cheapest first.
#[derive(Clone, Copy)]
pub struct Changes {
    list: RwSignal<Vec<Arc<Change>>>,
    task: Task,
}

impl Changes {
    /// Begins to work them out, anew after each edit, for as long as the view is there.
    #[must_use]
    pub fn begin(app: App) -> Self {
        let list = RwSignal::new(Vec::new());
        let follow = move || drop(app.found());
        let begin = move || {
            list.set(Vec::new());
            Some(job(app.found()?, app.catalog(), list))
        };
        Self { list, task: Task::new(follow, begin) }
    }

    /// How far it is, in words; nothing once it is done. Tracked.
    #[must_use]
    pub fn said(self) -> String {
        self.task.said()
    }

    /// Whether all have been tried; tracked.
    #[must_use]
    pub fn done(self) -> bool {
        !self.task.busy()
    }

    /// The cheapest change with which a rating is not exceeded; tracked.
    #[must_use]
    pub fn cure(self, rating: Rating) -> Option<Arc<Change>> {
        self.list.with(|list| list.iter().find(|one| !one.over.contains(&rating)).cloned())
    }

    /// The changes that climb more, the one that climbs the most first; tracked.
    #[must_use]
    pub fn climbing(self, now: f64) -> Vec<Arc<Change>> {
        let mut list: Vec<Arc<Change>> = Vec::new();
        for change in self.list.get() {
            if change.slow.grade > now + LEAST {
                let place = list.iter().position(|other| change.slow.grade > other.slow.grade);
                list.insert(place.unwrap_or(list.len()), change);
            }
        }
        list
    }
}

/// Less than this, as a grade, is not worth a change.
const LEAST: f64 = 0.005;

fn job(found: Arc<Found>, catalog: Arc<Catalog>, list: RwSignal<Vec<Arc<Change>>>) -> Job {
    let swapper = Swapper::new(&found.draft, &found.build);
    let offered = |slot: Slot| catalog.offered(&found.draft.kit, slot);
    let is_other = |slot: Slot, id: &str| found.draft.record(slot).id != id;
    let all = Slot::ALL.iter().filter(|slot| slot.holds_part()).flat_map(|slot| {
        let count = offered(*slot).len();
        (0..count).map(move |place| (*slot, place))
    });
    let mut waiting: Vec<(Slot, usize)> = all.collect();
    waiting.retain(|(slot, place)| {
        // Cells come with their pack, and ride modes are nobody's parts.
        let alone = *slot != Slot::Cell && slot.kind() != Slot::ModeLow.kind();
        alone && offered(*slot).get(*place).is_some_and(|part| is_other(*slot, &part.id))
    });
    waiting.reverse();
    let whole = 2.0 + waiting.len() as f64;
    let mut settings = vec![true, false];
    Box::new(move || {
        let tried = if let Some(highest) = settings.pop() {
            swapper.set(&found.build, highest).map(|swap| Change::of(&swap, highest))
        } else if let Some((slot, place)) = waiting.pop() {
            let offered = |slot: Slot| catalog.offered(&found.draft.kit, slot);
            let part = offered(slot).get(place).copied();
            part.and_then(|part| {
                swapper.swap(slot, part, &offered).map(|swap| Change::of(&swap, false))
            })
        } else {
            None
        };
        if let Some(change) = tried {
            list.update(|list| {
                let place = list.iter().position(|other| change.cost() < other.cost());
                list.insert(place.unwrap_or(list.len()), Arc::new(change));
            });
        }
        1.0 - (settings.len() + waiting.len()) as f64 / whole
    })
}
