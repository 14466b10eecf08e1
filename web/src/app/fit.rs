//! What goes together and what does not, worked out once for each change of the build.

use super::found::{Found, differ};
use super::store::Loaded;
use leptos::prelude::*;
use pitchline_core::fit::{Between, BoxPlan, Clearance, DeckFit, Layout, Lean, Misfit, together};
use pitchline_core::{
    Belt, BeltFit, BeltOffers, Build, Draft, Drive, MotorPulley, Record, Slot, WheelPulley,
};
use std::sync::Arc;

/// What goes together, and the parts that were tried.
pub struct Fit {
    /// The draft that it was checked from.
    pub draft: Draft,
    /// The build as checked.
    pub build: Build,
    /// From the motor's shaft to the wheel's axle, m.
    pub centre_m: f64,
    /// Where everything is.
    pub layout: Layout,
    /// The room between two parts.
    pub clearances: Vec<Clearance>,
    /// Deck and box under the rider.
    pub deck: DeckFit,
    /// How it turns, and what stops it.
    pub lean: Lean,
    /// Cells and controller in the box.
    pub cells: BoxPlan,
    /// Which belts fit, and what they must pull.
    pub belt: BeltFit,
    /// What does not fit, or only just.
    pub misfits: Vec<Misfit>,
    /// Belts on offer, in the order of the answer's places.
    pub belts: Vec<Record>,
    /// Motor pulleys on offer, in the same order.
    pub motor_pulleys: Vec<Record>,
    /// Wheel pulleys on offer, in the same order.
    pub wheel_pulleys: Vec<Record>,
}

impl Fit {
    /// For a build, and what is on offer: belts, motor pulleys, wheel pulleys.
    #[must_use]
    pub fn of(draft: Draft, build: Build, offers: [Vec<Record>; 3]) -> Self {
        let [belts, motor_pulleys, wheel_pulleys] = offers;
        // Parts of the catalogue have been checked when it was read.
        let found = {
            let belts: Vec<_> = belts.iter().filter_map(|r| Belt::from_record(r).ok()).collect();
            let small: Vec<_> =
                motor_pulleys.iter().filter_map(|r| MotorPulley::from_record(r).ok()).collect();
            let large: Vec<_> =
                wheel_pulleys.iter().filter_map(|r| WheelPulley::from_record(r).ok()).collect();
            let offers = BeltOffers { belts: &belts, motor_pulleys: &small, wheel_pulleys: &large };
            together(&draft, &Drive::new(&build), &offers)
        };
        Self {
            centre_m: found.centre_m,
            layout: found.layout,
            clearances: found.clearances,
            deck: found.deck,
            lean: found.lean,
            cells: found.cells,
            belt: found.belt,
            misfits: found.misfits,
            draft,
            build,
            belts,
            motor_pulleys,
            wheel_pulleys,
        }
    }

    /// A belt on offer, by its place in the answer.
    #[must_use]
    pub fn belt_on_offer(&self, place: usize) -> Option<&Record> {
        self.belts.get(place)
    }

    /// The room between two parts, m; none where there are no two.
    #[must_use]
    pub fn room(&self, between: Between) -> Option<f64> {
        self.clearances.iter().find(|c| c.between == between).map(|c| c.room_m)
    }

    /// Whether a value was entered.
    #[must_use]
    pub fn given(&self, slot: Slot, key: &str) -> bool {
        self.draft.value(slot, key).is_some()
    }
}

/// None where a part is missing.
pub(super) fn memo(
    loaded: RwSignal<Loaded>,
    found: Memo<Option<Arc<Found>>>,
) -> Memo<Option<Arc<Fit>>> {
    Memo::new_with_compare(
        move |_| {
            let found = found.get()?;
            let offered = |slot: Slot| -> Vec<Record> {
                loaded.with(|loaded| {
                    let offered = loaded.catalog.offered(&found.draft.kit, slot);
                    offered.into_iter().cloned().collect()
                })
            };
            let offers = [Slot::Belt, Slot::MotorPulley, Slot::WheelPulley].map(offered);
            Some(Arc::new(Fit::of(found.draft.clone(), found.build, offers)))
        },
        differ,
    )
}
