//! The answers of this question, kept until something changes.

use crate::state::{App, Kept};
use pitchline_core::fit::{Between, BoxPlan, Clearance, DeckFit, Layout, Lean, Misfit, together};
use pitchline_core::{
    Belt, BeltFit, BeltOffers, Build, Draft, Drive, MotorPulley, Record, Slot, WheelPulley,
};

/// What goes together, and the parts that were tried.
pub(super) struct Found {
    pub(super) draft: Draft,
    pub(super) build: Build,
    /// From the motor's shaft to the wheel's axle, m.
    pub(super) centre_m: f64,
    pub(super) layout: Layout,
    pub(super) clearances: Vec<Clearance>,
    pub(super) deck: DeckFit,
    pub(super) lean: Lean,
    pub(super) cells: BoxPlan,
    pub(super) belt: BeltFit,
    pub(super) misfits: Vec<Misfit>,
    /// Belts on offer, in the order of the answer's places.
    pub(super) belts: Vec<Record>,
    pub(super) motor_pulleys: Vec<Record>,
    pub(super) wheel_pulleys: Vec<Record>,
}

impl Found {
    pub(super) fn now(app: App) -> Option<Self> {
        let build = app.found()?.build;
        let offered = |slot: Slot| -> Vec<Record> {
            app.read(|model| {
                let offered = model.loaded.catalog.offered(&model.draft.kit, slot);
                offered.into_iter().cloned().collect()
            })
        };
        let offers = [Slot::Belt, Slot::MotorPulley, Slot::WheelPulley].map(offered);
        Some(Self::of(app.read(|model| model.draft.clone()), build, offers))
    }

    /// For a build, and what is on offer: belts, motor pulleys, wheel pulleys.
    pub(super) fn of(draft: Draft, build: Build, offers: [Vec<Record>; 3]) -> Self {
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
    pub(super) fn belt_on_offer(&self, place: usize) -> Option<&Record> {
        self.belts.get(place)
    }

    /// The room between two parts, m; none where there are no two.
    pub(super) fn room(&self, between: Between) -> Option<f64> {
        self.clearances.iter().find(|c| c.between == between).map(|c| c.room_m)
    }

    /// Whether a value was entered.
    pub(super) fn given(&self, slot: Slot, key: &str) -> bool {
        self.draft.value(slot, key).is_some()
    }
}

/// Asks the core once for each change of the page.
pub(super) type Asked = Kept<Found>;
