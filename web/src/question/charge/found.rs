//! The charges of this question.

use crate::app::App;
use pitchline_core::{
    Build, ChargeRefusal, ChargerOffer, Charging, Draft, Record, Slot, charger_offer, charging,
};
use std::sync::Arc;

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
    pub(super) charges: Result<Arc<Charging>, ChargeRefusal>,
    pub(super) offers: Vec<Offer>,
}

impl Found {
    /// As it is now; tracked. None where a part is missing.
    pub(super) fn now(app: App) -> Option<Self> {
        let (now, catalog) = (app.found()?, app.catalog());
        let offered = catalog.offered(&now.draft.kit, Slot::Charger);
        Some(Self::of(&now.draft, now.build, offered.into_iter().cloned().collect()))
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
            charges: charging(draft, &build).map(Arc::new),
            offers: offered.into_iter().filter_map(offer).collect(),
            build,
        }
    }

    /// The charges, where there are any.
    pub(super) fn charges(&self) -> Option<&Charging> {
        self.charges.as_deref().ok()
    }
}
