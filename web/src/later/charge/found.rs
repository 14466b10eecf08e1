//! The charges of this question.

use crate::state::App;
use pitchline_core::{
    Build, ChargeRefusal, ChargerOffer, Charging, Draft, Record, Slot, charger_offer, charging,
};

/// A charger on offer, or the one on the board.
pub(super) struct Offer {
    pub(super) part: Record,
    /// Whether it is on the board.
    pub(super) here: bool,
    pub(super) does: ChargerOffer,
}

/// All of it.
pub(super) struct Found {
    pub(super) build: Build,
    /// With the charger on the board.
    pub(super) charges: Result<Charging, ChargeRefusal>,
    pub(super) offers: Vec<Offer>,
}

impl Found {
    pub(super) fn new(app: App) -> Option<Self> {
        let build = app.found()?.build;
        let (draft, offered) = app.read(|model| {
            let offered = model.loaded.catalog.offered(&model.draft.kit, Slot::Charger);
            (model.draft.clone(), offered.into_iter().cloned().collect())
        });
        Some(Self::of(&draft, build, offered))
    }

    pub(super) fn of(draft: &Draft, build: Build, mut offered: Vec<Record>) -> Self {
        // The one on the board may be altered, or not on offer.
        let own = draft.record(Slot::Charger);
        match offered.iter_mut().find(|part| part.id == own.id) {
            Some(part) => *part = own.clone(),
            None => offered.insert(0, own.clone()),
        }
        let offer = |part: Record| {
            let does = charger_offer(draft, &build, &part).ok()?;
            Some(Offer { here: part.id == own.id, does, part })
        };
        Self {
            charges: charging(draft, &build),
            offers: offered.into_iter().filter_map(offer).collect(),
            build,
        }
    }

    /// The charges, where there are any.
    pub(super) fn charges(&self) -> Option<&Charging> {
        self.charges.as_ref().ok()
    }
}
