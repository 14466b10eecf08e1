//! Every pairing on offer with its answers, and the one to suggest.

use crate::app::{Fit, Found, Job};
use crate::text::Style;
use crate::text::speed as said;
use pitchline_core::catalog::Catalog;
use pitchline_core::fit::{Cure, Misfit, MisfitKind, Severity};
use pitchline_core::{
    Build, Draft, GearCell, MotorPulley, Record, Ride, Slot, Wheel, WheelPulley, fits, gear_map,
};
use std::mem::discriminant;
use std::sync::Arc;

/// Most parts of a kind in the map; a catalogue without kits may offer hundreds.
const MOST: usize = 20;
/// Pairings that are tried for whether they go together, at most.
const TRIES: usize = 120;
/// Share of the greatest distance that is told apart: no band supports more.
const ALIKE: f64 = 0.97;

/// Parts to put on the board, by id.
pub(super) type Parts = Vec<(Slot, String)>;

/// Parts of a kind, by size, with the one on the board among them.
#[derive(Default)]
pub(super) struct Kind {
    pub(super) list: Vec<Record>,
    /// The place of the one on the board.
    pub(super) here: usize,
    /// How many there are on offer with it.
    pub(super) all: usize,
}

/// What is on offer, and the answers for all of it.
pub(super) struct Offer {
    pub(super) motor_pulleys: Kind,
    pub(super) wheel_pulleys: Kind,
    pub(super) wheels: Kind,
    motor: Record,
    /// The wishes.
    pub(super) ride: Ride,
    pub(super) cells: Vec<GearCell>,
    /// The best, once it has been looked for.
    pub(super) best: Option<Suggestion>,
}

/// A pairing to put on the board, and what comes of that.
pub(super) struct Suggestion {
    pub(super) cell: GearCell,
    /// How many go about as far as the farthest; none where this one is not among them.
    pub(super) alike: Option<usize>,
    /// The belt that it needs in place of the one on the board.
    pub(super) belt: Option<Record>,
    /// What it breaks or makes tight that was not so before.
    pub(super) breaks: Vec<Misfit>,
}

impl Suggestion {
    /// How many misfits it makes, the worse ones first.
    fn harm(&self) -> (usize, usize) {
        let of = |severity| self.breaks.iter().filter(|m| m.severity == severity).count();
        (of(Severity::DoesNotFit), of(Severity::Tight))
    }
}

impl Offer {
    /// What is on offer, without its answers.
    fn begin(found: &Found, catalog: &Catalog) -> Self {
        let with_own = |slot| with_own(&found.draft, catalog, slot);
        Self {
            motor_pulleys: with_own(Slot::MotorPulley),
            wheel_pulleys: with_own(Slot::WheelPulley),
            wheels: with_own(Slot::Wheel),
            motor: found.draft.record(Slot::Motor).clone(),
            ride: found.build.ride,
            cells: Vec::new(),
            best: None,
        }
    }

    pub(super) fn cell(
        &self,
        wheel: usize,
        wheel_pulley: usize,
        motor: usize,
    ) -> Option<&GearCell> {
        let row = wheel * self.wheel_pulleys.list.len() + wheel_pulley;
        self.cells.get(row * self.motor_pulleys.list.len() + motor)
    }

    /// Whether wheel, pulleys and motor go together by their fittings.
    pub(super) fn goes(&self, cell: &GearCell) -> bool {
        let wheel = self.wheels.list.get(cell.wheel);
        let wheels = wheel.zip(self.wheel_pulleys.list.get(cell.wheel_pulley));
        let shaft = self.motor_pulleys.list.get(cell.motor_pulley);
        wheels.is_some_and(|(w, p)| fits(Slot::Wheel, w, Slot::WheelPulley, p))
            && shaft.is_some_and(|p| fits(Slot::Motor, &self.motor, Slot::MotorPulley, p))
    }

    /// Whether it is on the board.
    pub(super) fn is_here(&self, cell: &GearCell) -> bool {
        (cell.motor_pulley, cell.wheel_pulley, cell.wheel)
            == (self.motor_pulleys.here, self.wheel_pulleys.here, self.wheels.here)
    }

    /// Those that go together and hold the rider's speed up the rider's hill.
    pub(super) fn met(&self) -> impl Iterator<Item = &GearCell> {
        self.cells.iter().filter(|cell| self.meets(cell))
    }

    /// Whether a pairing holds the rider's speed up the rider's hill.
    pub(super) fn meets(&self, cell: &GearCell) -> bool {
        cell.hill_speed_m_s >= self.ride.cruise_m_s && cell.distance_m > 0.0 && self.goes(cell)
    }

    /// The pulleys of a cell of the map; cells count row by row.
    pub(super) fn pairing(&self, stop: usize) -> Option<Parts> {
        let count = self.motor_pulleys.list.len().max(1);
        let wheel = self.wheel_pulleys.list.get(stop / count)?;
        let motor = self.motor_pulleys.list.get(stop % count)?;
        Some(vec![(Slot::WheelPulley, wheel.id.clone()), (Slot::MotorPulley, motor.id.clone())])
    }

    /// The records of a pairing.
    fn records(&self, cell: &GearCell) -> Vec<(Slot, Record)> {
        let at = |slot, parts: &Kind, place: usize| {
            parts.list.get(place).map(|record| (slot, record.clone()))
        };
        [
            at(Slot::Wheel, &self.wheels, cell.wheel),
            at(Slot::WheelPulley, &self.wheel_pulleys, cell.wheel_pulley),
            at(Slot::MotorPulley, &self.motor_pulleys, cell.motor_pulley),
        ]
        .into_iter()
        .flatten()
        .collect()
    }

    /// The suggestion as parts, where it is not on the board yet.
    pub(super) fn better(&self) -> Option<Parts> {
        let best = self.best.as_ref().filter(|best| !self.is_here(&best.cell))?;
        let mut parts = self.records(&best.cell);
        parts.extend(best.belt.iter().map(|belt| (Slot::Belt, belt.clone())));
        Some(parts.into_iter().map(|(slot, record)| (slot, record.id)).collect())
    }
}

/// The answers of every pairing, some at a time, and then which of them to suggest.
pub(super) fn job(
    found: Arc<Found>,
    fit: Arc<Fit>,
    catalog: &Catalog,
    done: impl Fn(Offer) + 'static,
) -> Job {
    let mut offer = Some(Offer::begin(&found, catalog));
    // Every record here has been checked: by the catalogue, or as part of the build.
    let (motors, pulleys, wheels): (Vec<_>, Vec<_>, Vec<_>) = {
        let Some(Offer { motor_pulleys, wheel_pulleys, wheels, .. }) = &offer else {
            return Box::new(|| 1.0);
        };
        (
            motor_pulleys.list.iter().filter_map(|r| MotorPulley::from_record(r).ok()).collect(),
            wheel_pulleys.list.iter().filter_map(|r| WheelPulley::from_record(r).ok()).collect(),
            wheels.list.iter().filter_map(|r| Wheel::from_record(r).ok()).collect(),
        )
    };
    let rows = wheels.len() * pulleys.len();
    let (mut row, mut due, mut best) = (0, None::<Vec<(GearCell, Option<usize>)>>, None);
    Box::new(move || {
        let Some(now) = &mut offer else { return 1.0 };
        if row < rows {
            let (wheel, wheel_pulley) = (row / pulleys.len(), row % pulleys.len());
            let cells = gear_map(&found.build, &motors, &[pulleys[wheel_pulley]], &[wheels[wheel]]);
            now.cells.extend(cells.iter().map(|cell| GearCell { wheel, wheel_pulley, ..*cell }));
            row += 1;
            return 0.9 * row as f64 / (rows as f64 + 1.0);
        }
        let due = due.get_or_insert_with(|| candidates(now));
        if let Some((cell, alike)) = due.pop() {
            let tried = tried(&fit, now, cell, alike);
            if best.as_ref().is_none_or(|best: &Suggestion| tried.harm() < best.harm()) {
                best = Some(tried);
            }
            // The order is by what is wished for: the first that breaks nothing is the best.
            if best.as_ref().is_some_and(|best| best.harm() > (0, 0)) && !due.is_empty() {
                return 0.95;
            }
        }
        if let Some(mut offer) = offer.take() {
            offer.best = best.take();
            done(offer);
        }
        1.0
    })
}

/// Those to try, the likeliest last: the one that climbs best among those that go about as far as
/// the farthest, then the others by how far they go.
fn candidates(offer: &Offer) -> Vec<(GearCell, Option<usize>)> {
    let farthest = offer.met().map(|cell| cell.distance_m).fold(0.0, f64::max);
    let alike = |cell: &GearCell| cell.distance_m >= ALIKE * farthest;
    let count = offer.met().filter(|cell| alike(cell)).count();
    let mut list: Vec<GearCell> = Vec::new();
    // Better than the other. The standard library's sort would cost the page more bytes.
    let before = |one: &GearCell, other: &GearCell| match (alike(one), alike(other)) {
        (true, true) => one.grade > other.grade,
        (false, false) => one.distance_m > other.distance_m,
        (one, _) => one,
    };
    for cell in offer.met() {
        let place = list.iter().position(|other| before(cell, other)).unwrap_or(list.len());
        list.insert(place, *cell);
        list.truncate(TRIES);
    }
    list.iter().rev().map(|cell| (*cell, alike(cell).then_some(count))).collect()
}

/// What comes of putting a pairing on the board, with another belt where that mends it.
fn tried(fit: &Fit, offer: &Offer, cell: GearCell, alike: Option<usize>) -> Suggestion {
    let mut draft = fit.draft.clone();
    for (slot, record) in offer.records(&cell) {
        draft.set_record(slot, record);
    }
    let (mut belt, mut found) = (None, put(fit, &draft));
    let offers = found.iter().flatten().flat_map(|misfit| &misfit.cures);
    let other = offers.into_iter().find_map(|cure| match cure {
        Cure::Belt(place) => fit.belt_on_offer(*place),
        _ => None,
    });
    if let Some(other) = other {
        draft.set_record(Slot::Belt, other.clone());
        belt = Some(other.clone());
        found = put(fit, &draft);
    }
    let known = &fit.together.misfits;
    let breaks = found.unwrap_or_default().into_iter().filter(|misfit| {
        let same = known.iter().find(|other| alike_kind(&other.kind, &misfit.kind));
        same.is_none_or(|other| {
            (other.severity, misfit.severity) == (Severity::Tight, Severity::DoesNotFit)
        })
    });
    Suggestion { cell, alike, belt, breaks: breaks.collect() }
}

/// What does not fit on a board.
fn put(fit: &Fit, draft: &Draft) -> Option<Vec<Misfit>> {
    let build = Build::check(draft).ok()?;
    Some(fit.with(draft, &build).misfits)
}

/// Whether both are about the same two parts.
fn alike_kind(one: &MisfitKind, other: &MisfitKind) -> bool {
    use MisfitKind::Clearance;
    match (one, other) {
        (Clearance { between: one, .. }, Clearance { between: other, .. }) => one == other,
        _ => discriminant(one) == discriminant(other),
    }
}

/// The parts on offer with the one on the board among them, by size: the nearest to it where there
/// are too many.
fn with_own(draft: &Draft, catalog: &Catalog, slot: Slot) -> Kind {
    let own = draft.record(slot);
    let far = |record: &Record| (size(record, slot) - size(own, slot)).abs();
    let mut near: Vec<&Record> = Vec::new();
    let offered = catalog.offered(&draft.kit, slot);
    let others = offered.into_iter().filter(|part| part.id != own.id);
    let mut all = 1;
    for part in others {
        let place = near.iter().position(|other| far(other) > far(part)).unwrap_or(near.len());
        near.insert(place, part);
        near.truncate(MOST - 1);
        all += 1;
    }
    // What was altered is shown as altered.
    let (mut list, mut here) = (vec![own.clone()], 0);
    for part in near {
        let larger = |other: &Record| size(other, slot) > size(part, slot);
        let place = list.iter().position(larger).unwrap_or(list.len());
        here += usize::from(place <= here);
        list.insert(place, part.clone());
    }
    Kind { list, here, all }
}

/// Teeth of a pulley, diameter of a wheel.
fn size(record: &Record, slot: Slot) -> f64 {
    let key = if slot == Slot::Wheel { "diameter_mm" } else { "teeth" };
    slot.kind().field_index(key).and_then(|index| record.value(index)).unwrap_or(0.0)
}

/// Teeth of a pulley, in words.
pub(super) fn teeth(record: &Record, slot: Slot) -> String {
    Style::default().fixed(size(record, slot), 0)
}

/// The name of a wheel, or its size.
pub(super) fn wheel(record: &Record, style: Style) -> String {
    if record.name.is_empty() {
        said::unnamed_wheel(size(record, Slot::Wheel), style)
    } else {
        record.name.clone()
    }
}

/// What is on the board, in a few words.
pub(super) fn hint(found: &Found, _: Style) -> String {
    let [motor, wheel] =
        [Slot::MotorPulley, Slot::WheelPulley].map(|slot| teeth(found.draft.record(slot), slot));
    said::pairing_hint(&motor, &wheel)
}
