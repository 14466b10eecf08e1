//! The rides, taken some steps at a time, and kept until the board is another.

use crate::app::{App, Job, Task, use_app};
use leptos::prelude::*;
use pitchline_core::ride::{Ridden, Steps, Trip, Until};
use pitchline_core::{Build, Drive, Outing};
use std::sync::Arc;

/// Steps of a ride in a piece of work: about half a millisecond.
const STEPS: u32 = 100;
/// How long the start is that may be looked at closely, s.
pub(super) const START_S: f64 = 600.0;

/// The rides of one build.
pub(super) struct Ridings {
    /// The build, with the outing that is chosen.
    pub(super) build: Build,
    /// To an empty pack, in the order of [`Outing::ALL`].
    pub(super) whole: Vec<Arc<Ridden>>,
    /// The first ten minutes of the chosen one.
    pub(super) start: Arc<Ridden>,
}

impl Ridings {
    /// The chosen one.
    pub(super) fn chosen(&self) -> &Ridden {
        &self.whole[self.place()]
    }

    /// Its place among all.
    pub(super) fn place(&self) -> usize {
        Outing::ALL.iter().position(|one| *one == self.build.ride.outing).unwrap_or(0)
    }
}

/// The rides that were worked out last; none until then.
pub(super) type Rides = RwSignal<Option<Arc<Ridings>>>;

/// The rides as they are worked out, and the work on them.
pub(super) fn rides() -> (Rides, Task) {
    let (app, rides) = (use_app(), Rides::default());
    let task = Task::new(move || _ = app.found(), move || job(app, rides));
    (rides, task)
}

/// A ride that is still to be taken.
struct Due {
    outing: Outing,
    /// Place among all; none for the start of the chosen one.
    place: Option<usize>,
}

/// What is to be done for the build as it is now.
fn job(app: App, rides: Rides) -> Option<Job> {
    let found = app.found()?;
    let build = found.build;
    let alike = |mut other: Build| {
        // However it is ridden, the other ways stay as they are.
        other.ride.outing = build.ride.outing;
        other == build
    };
    let known = rides.get().filter(|last| alike(last.build));
    let mut whole: Vec<Option<Arc<Ridden>>> = match &known {
        Some(last) => last.whole.iter().cloned().map(Some).collect(),
        None => vec![None; Outing::ALL.len()],
    };
    let places = Outing::ALL.into_iter().enumerate();
    let missing = places.filter(|(place, _)| whole[*place].is_none());
    let mut due: Vec<Due> =
        missing.map(|(place, outing)| Due { outing, place: Some(place) }).collect();
    due.push(Due { outing: build.ride.outing, place: None });
    // The next one stands last.
    due.reverse();
    let (all, drive) = (due.len() as f64, Drive::new(&build));
    let mut trip: Option<Trip> = None;
    Some(Box::new(move || {
        let done = all - due.len() as f64;
        let Some(next) = due.last() else { return 1.0 };
        let until = match next.place {
            Some(_) => Until::EMPTY,
            None => Until::time(START_S),
        };
        let mut now =
            trip.take().unwrap_or_else(|| Trip::out(&drive, next.outing, until, Steps::USUAL));
        if now.advance(STEPS) {
            let share = (done + now.share()) / all;
            trip = Some(now);
            return share;
        }
        let ridden = Arc::new(now.finish());
        if let Some(place) = next.place {
            whole[place] = Some(ridden);
            due.pop();
            return (done + 1.0) / all;
        }
        let whole = whole.iter().flatten().cloned().collect();
        rides.set(Some(Arc::new(Ridings { build, whole, start: ridden })));
        1.0
    }))
}
