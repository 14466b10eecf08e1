//! Any board within the limits, for laws.

use super::Fit;
use pitchline_core::catalog::Catalog;
use pitchline_core::{Build, Draft, Need, Record, Slot};

/// A board from shares of every range; a share below zero leaves an input out.
fn draft(shares: &[f64]) -> Draft {
    let mut draft = Draft::typical();
    let mut shares = shares.iter().cycle();
    for slot in Slot::ALL {
        for (index, field) in slot.kind().fields().iter().enumerate() {
            let share = shares.next().copied().unwrap_or(0.5);
            let value = field.min + share * (field.max - field.min);
            let value = if field.must_be_whole() { value.round() } else { value };
            let given = share >= 0.0 || field.need == Need::Required;
            draft.set_value(*slot, index, given.then_some(value.max(field.min)));
        }
    }
    draft
}

/// What goes together on such a board; on offer is what it has.
pub(crate) fn any_fit(shares: &[f64]) -> Fit {
    fit_of(draft(shares))
}

/// What goes together on a board; on offer is what it has.
pub(crate) fn fit_of(draft: Draft) -> Fit {
    let build = Build::check(&draft).expect("within the limits");
    let own = |slot: Slot| -> Vec<Record> { vec![draft.record(slot).clone()] };
    let offers = [Slot::Belt, Slot::MotorPulley, Slot::WheelPulley].map(own);
    Fit::of(draft, build, offers)
}

/// The demo's kits.
pub(crate) fn kits() -> Vec<Fit> {
    let (catalog, _) =
        Catalog::read(include_str!("../../catalog/catalogue.json")).expect("the demo");
    catalog.kits.iter().map(|kit| fit_of(catalog.draft(&kit.id))).collect()
}
