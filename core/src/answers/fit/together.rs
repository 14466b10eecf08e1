//! Does it go together? All of that question at once.

use super::misfit::misfits;
use super::{
    BeltFit, BeltOffers, BeltOnBoard, BoxPlan, Clearance, DeckFit, Layout, Lean, Misfit, Severity,
    belt_fit, box_plan, clearances, deck_fit, layout, lean,
};
use crate::answers::drive::Drive;
use crate::build::Draft;
use alloc::vec::Vec;
use serde::Serialize;

/// Does it go together? All of that question.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Together {
    /// From the motor's shaft to the wheel's axle, m: as the belt on the board wants it, else as
    /// the board runs, else the middle of the mount's slot.
    pub centre_m: f64,
    /// Which belts fit, and what they must pull.
    pub belt: BeltFit,
    /// Where everything is.
    pub layout: Layout,
    /// The room between two parts.
    pub clearances: Vec<Clearance>,
    /// Deck and enclosure under the rider.
    pub deck: DeckFit,
    /// How it turns, and what stops it.
    pub lean: Lean,
    /// Cells and controller in the enclosure.
    pub cells: BoxPlan,
    /// What does not fit, or only just: of the belt, then of the clearances in their order, of
    /// the enclosure over the road, of the pack in the enclosure, of the deck over the tyres.
    pub misfits: Vec<Misfit>,
}

impl Together {
    /// How many misfits are so bad.
    #[must_use]
    pub fn count(&self, severity: Severity) -> usize {
        self.misfits.iter().filter(|misfit| misfit.severity == severity).count()
    }
}

/// Does it go together? For a build, the draft it was checked from, and what is on offer.
///
/// Never fails: whatever a checked build holds, each size is finite.
///
/// ```
/// use pitchline_core::fit::{Cure, MisfitKind, Severity, together};
/// use pitchline_core::{BeltOffers, Build, Draft, Drive, Slot};
///
/// let none = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };
/// let mut draft = Draft::typical();
/// draft.set(Slot::Truck, "axle_mm", 50.0);
/// let drive = Drive::new(&Build::check(&draft).unwrap());
/// let found = together(&draft, &drive, &none);
/// let axle = found.misfits.iter().find(|misfit| {
///     misfit.cures.contains(&Cure::Change(Slot::Truck, "axle_mm"))
/// });
/// let axle = axle.unwrap();
/// assert_eq!(axle.severity, Severity::DoesNotFit);
/// assert!(matches!(axle.kind, MisfitKind::Clearance { room_m, .. } if room_m < 0.0));
/// ```
#[must_use]
pub fn together(draft: &Draft, drive: &Drive, offers: &BeltOffers) -> Together {
    let build = &drive.build;
    let belt = belt_fit(drive, offers);
    let [near, far] = belt.slot_m;
    let centre_m = match belt.on_board {
        BeltOnBoard::Taut(taut) => taut.mesh.centre_m,
        _ => belt.run.map_or((near + far) / 2.0, |run| run.centre_m),
    };
    let mut found = Together {
        centre_m,
        layout: layout(build, centre_m),
        clearances: clearances(draft, build, centre_m),
        deck: deck_fit(draft, build),
        lean: lean(draft, build),
        cells: box_plan(draft, build),
        belt,
        misfits: Vec::new(),
    };
    found.misfits = misfits(build, &found);
    found
}
