//! What goes together and what does not, worked out once for each change of the build.

use super::found::Found;
use super::store::Loaded;
use leptos::prelude::*;
use pitchline_core::fit::{Between, Together, together};
use pitchline_core::{
    Belt, BeltOffers, Build, Draft, Drive, MotorPulley, Record, Slot, WheelPulley,
};
use std::sync::Arc;

/// What goes together, and the parts that were tried.
pub struct Fit {
    /// The draft that it was checked from.
    pub draft: Draft,
    /// The build as checked.
    pub build: Build,
    /// The answer.
    pub together: Together,
    /// Belts on offer, in the order of the answer's places.
    pub belts: Vec<Record>,
    /// Motor pulleys on offer, in the same order.
    pub motor_pulleys: Vec<Record>,
    /// Wheel pulleys on offer, in the same order.
    pub wheel_pulleys: Vec<Record>,
}

/// Each is worked out once: only it itself is the same.
impl PartialEq for Fit {
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self, other)
    }
}

impl Fit {
    /// For a build, and what is on offer: belts, motor pulleys, wheel pulleys.
    #[must_use]
    pub fn of(draft: Draft, build: Build, offers: [Vec<Record>; 3]) -> Self {
        let together = tried(&draft, &build, &offers);
        let [belts, motor_pulleys, wheel_pulleys] = offers;
        Self { together, draft, build, belts, motor_pulleys, wheel_pulleys }
    }

    /// The same question of another board, with the same belts on offer.
    #[must_use]
    pub fn with(&self, draft: &Draft, build: &Build) -> Together {
        tried(draft, build, &[self.belts.clone(), Vec::new(), Vec::new()])
    }

    /// A belt on offer, by its place in the answer.
    #[must_use]
    pub fn belt_on_offer(&self, place: usize) -> Option<&Record> {
        self.belts.get(place)
    }

    /// The room between two parts, m; none where there are no two.
    #[must_use]
    pub fn room(&self, between: Between) -> Option<f64> {
        self.together.clearances.iter().find(|c| c.between == between).map(|c| c.room_m)
    }

    /// Whether a value was entered.
    #[must_use]
    pub fn given(&self, slot: Slot, key: &str) -> bool {
        self.draft.value(slot, key).is_some()
    }
}

fn tried(draft: &Draft, build: &Build, offers: &[Vec<Record>; 3]) -> Together {
    let [belts, motor_pulleys, wheel_pulleys] = offers;
    // Parts of the catalogue have been checked when it was read.
    let belts: Vec<_> = belts.iter().filter_map(|r| Belt::from_record(r).ok()).collect();
    let small: Vec<_> =
        motor_pulleys.iter().filter_map(|r| MotorPulley::from_record(r).ok()).collect();
    let large: Vec<_> =
        wheel_pulleys.iter().filter_map(|r| WheelPulley::from_record(r).ok()).collect();
    let offers = BeltOffers { belts: &belts, motor_pulleys: &small, wheel_pulleys: &large };
    together(draft, &Drive::new(build), &offers)
}

/// None where a part is missing.
pub(super) fn memo(
    loaded: RwSignal<Loaded>,
    found: Memo<Option<Arc<Found>>>,
) -> Memo<Option<Arc<Fit>>> {
    Memo::new(move |_| {
        let found = found.get()?;
        let offered = |slot: Slot| -> Vec<Record> {
            loaded.with(|loaded| {
                let offered = loaded.catalog.offered(&found.draft.kit, slot);
                offered.into_iter().cloned().collect()
            })
        };
        let offers = [Slot::Belt, Slot::MotorPulley, Slot::WheelPulley].map(offered);
        Some(Arc::new(Fit::of(found.draft.clone(), found.build, offers)))
    })
}
