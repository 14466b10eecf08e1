//! What to take instead, where two parts do not go together.

use crate::answers::charger::charger_fit;
use crate::answers::notice::{Notice, notices};
use crate::bounds::Need;
use crate::build::{Build, Draft};
use crate::math::abs;
use crate::parts::{Charger, Record, Slot};
use alloc::vec::Vec;

/// A part to take instead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Remedy<'a> {
    /// Where it goes.
    pub slot: Slot,
    /// The part.
    pub part: &'a Record,
}

/// Place of the tag by which a pack names its cell.
const PACK_CELL: usize = 2;

impl Notice {
    /// The two slots that do not go together.
    #[must_use]
    pub const fn slots(&self) -> [Slot; 2] {
        match self {
            Self::PackAboveController { .. } => [Slot::Controller, Slot::Pack],
            Self::ChargerVoltage { .. } => [Slot::Charger, Slot::Pack],
            Self::FullVoltage { .. } => [Slot::Cell, Slot::Pack],
            Self::PackTooLight { .. } => [Slot::Pack, Slot::Cell],
            Self::TagMismatch { one, other, .. } => [*other, *one],
        }
    }
}

/// The nearest part on offer that mends a notice: of the parts offered for
/// either slot, with which nothing is said about that slot any more, the one
/// that differs least from what is there; none if there is no such part.
/// Where the charger is wrong it is another charger, see [`right_charger`], never another pack.
///
/// How much two parts differ is the sum, over the inputs that every such part
/// must give, of their difference as a share of the range; another choice counts as 1.
///
/// ```
/// use pitchline_core::fit::remedy;
/// use pitchline_core::{Build, Draft, Record, Slot, notices};
///
/// // A controller for less than the 42 V of 10 in series.
/// let controller = |max_bus_v: f64, motor_current_a: f64| -> Record {
///     let mut draft = Draft::typical();
///     draft.set(Slot::Controller, "max_bus_v", max_bus_v);
///     draft.set(Slot::Controller, "motor_current_a", motor_current_a);
///     draft.record(Slot::Controller).clone()
/// };
/// let mut draft = Draft::typical();
/// draft.set_record(Slot::Controller, controller(40.0, 60.0));
/// let notice = notices(&draft, &Build::check(&draft).unwrap()).remove(0);
/// // Of those that bear 42 V the one most like it, not the one alike that does not.
/// let offered = [controller(41.0, 60.0), controller(60.0, 120.0), controller(60.0, 70.0)];
/// let on_offer = |slot| if slot == Slot::Controller { offered.iter().collect() } else { vec![] };
/// let found = remedy(&draft, &notice, &on_offer).unwrap();
/// assert_eq!((found.slot, found.part), (Slot::Controller, &offered[2]));
/// ```
#[must_use]
pub fn remedy<'a>(
    draft: &Draft,
    notice: &Notice,
    offered: &dyn Fn(Slot) -> Vec<&'a Record>,
) -> Option<Remedy<'a>> {
    if notice.slots().contains(&Slot::Charger) {
        let build = Build::check(draft).ok()?;
        let part = right_charger(draft, &build, &offered(Slot::Charger))?;
        return Some(Remedy { slot: Slot::Charger, part });
    }
    let mut best = None;
    let mut least = f64::INFINITY;
    for slot in notice.slots() {
        for part in offered(slot) {
            let off = difference(slot, draft.record(slot), part);
            if off < least && mends(draft, slot, part, offered) {
                least = off;
                best = Some(Remedy { slot, part });
            }
        }
    }
    best
}

/// The charger for the pack of a draft: of those on offer that are for it by volts, by plug and by
/// what the cells take, the one that differs least from the one on the board; none if there is no
/// such charger. `build` is the draft checked.
///
/// ```
/// use pitchline_core::fit::right_charger;
/// use pitchline_core::{Build, Draft, Record, Slot};
///
/// let charger = |full_v: f64, current_a: f64| -> Record {
///     let mut draft = Draft::typical();
///     draft.set(Slot::Charger, "full_v", full_v);
///     draft.set(Slot::Charger, "current_a", current_a);
///     draft.record(Slot::Charger).clone()
/// };
/// // 10 in series are full at 42 V; 3 in parallel, rated for 3 A each, take 9 A.
/// let mut draft = Draft::typical();
/// draft.set(Slot::Charger, "full_v", 54.6);
/// draft.set(Slot::Charger, "current_a", 10.0);
/// let build = Build::check(&draft).unwrap();
/// let [wrong, strong, right] = [charger(50.4, 10.0), charger(42.0, 10.0), charger(42.0, 4.0)];
/// assert_eq!(right_charger(&draft, &build, &[&wrong, &strong, &right]), Some(&right));
/// assert_eq!(right_charger(&draft, &build, &[&wrong, &strong]), None);
/// ```
#[must_use]
pub fn right_charger<'a>(
    draft: &Draft,
    build: &Build,
    offered: &[&'a Record],
) -> Option<&'a Record> {
    let own = draft.record(Slot::Charger);
    let right = |part: &Record| {
        let Ok(charger) = Charger::from_record(part) else { return false };
        charger_fit(draft, &Build { charger, ..*build }, part).is_for_the_pack()
    };
    let mut best: Option<(f64, &'a Record)> = None;
    for part in offered.iter().copied().filter(|part| right(part)) {
        let off = difference(Slot::Charger, own, part);
        if best.is_none_or(|(least, _)| off < least) {
            best = Some((off, part));
        }
    }
    best.map(|(_, part)| part)
}

/// The draft with another part, and with a pack its cells.
pub(crate) fn with_part<'a>(
    draft: &Draft,
    slot: Slot,
    part: &Record,
    offered: &dyn Fn(Slot) -> Vec<&'a Record>,
) -> Draft {
    let mut with = draft.clone();
    with.set_record(slot, part.clone());
    if slot == Slot::Pack {
        let named = part.tag(PACK_CELL);
        if let Some(cell) = offered(Slot::Cell).into_iter().find(|cell| cell.id == named) {
            with.set_record(Slot::Cell, cell.clone());
        }
    }
    with
}

/// Whether nothing is said about a slot with that part in it.
fn mends<'a>(
    draft: &Draft,
    slot: Slot,
    part: &Record,
    offered: &dyn Fn(Slot) -> Vec<&'a Record>,
) -> bool {
    let tried = with_part(draft, slot, part, offered);
    let Ok(build) = Build::check(&tried) else { return false };
    notices(&tried, &build).iter().all(|said| !said.slots().contains(&slot))
}

fn difference(slot: Slot, one: &Record, other: &Record) -> f64 {
    let mut sum = 0.0;
    for (index, field) in slot.kind().fields().iter().enumerate() {
        let (Some(a), Some(b)) = (one.value(index), other.value(index)) else { continue };
        if field.need != Need::Required {
            continue;
        }
        sum += if field.choices.is_empty() {
            abs(a - b) / (field.max - field.min)
        } else {
            f64::from(u8::from(a != b))
        };
    }
    sum
}
