//! The charges of this question.

use crate::app::{App, Banded, Sure};
use pitchline_core::fit::right_charger;
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
    /// What to use instead, where the one on the board is not for the pack.
    pub(super) instead: Option<Record>,
}

impl Found {
    /// As it is now; tracked. None where a part is missing.
    pub(super) fn now(app: App) -> Option<Self> {
        let (now, catalog) = (app.found()?, app.catalog());
        let offered = catalog.offered(&now.draft.kit, Slot::Charger);
        Some(Self::of(&now.draft, now.build, offered.into_iter().cloned().collect()))
    }

    pub(super) fn of(draft: &Draft, build: Build, mut offered: Vec<Record>) -> Self {
        let own = draft.record(Slot::Charger);
        let instead = {
            let offered: Vec<&Record> = offered.iter().collect();
            right_charger(draft, &build, &offered).cloned()
        };
        // The one on the board may be altered, or not on offer.
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
            instead,
        }
    }

    /// The charges, where there are any.
    pub(super) fn charges(&self) -> Option<&Charging> {
        self.charges.as_deref().ok()
    }

    /// Whether the charger on the board is not for the pack, however warm that is.
    pub(super) fn is_wrong(&self) -> bool {
        match &self.charges {
            Ok(charges) => charges.too_strong.is_some(),
            Err(refusal) => !matches!(refusal, ChargeRefusal::TooCold { .. }),
        }
    }
}

/// What is known beside the charges.
#[derive(Default)]
pub(super) struct With {
    /// How sure the time to full is.
    pub(super) full: Sure,
    /// How sure the time to enough is.
    pub(super) enough: Sure,
    pub(super) currency: String,
}

impl With {
    /// As it is now; tracked.
    pub(super) fn now(app: App) -> Self {
        let (full, enough) = (app.sure(Banded::Charge), app.sure(Banded::Enough));
        Self { full, enough, currency: app.catalog().currency.clone() }
    }
}
