//! Every combination of what a kit offers, tried one after the other.

use super::cause::Finding;
use super::report::{KitReport, Tally};
use crate::answers::fit::together;
use crate::answers::notices;
use crate::answers::{BeltOffers, BeltOnBoard, Drive, belt_fit};
use crate::build::{Build, Draft, Unfilled};
use crate::catalog::{Catalog, Kit};
use crate::parts::{Belt, Record, Slot};
use alloc::string::String;
use alloc::vec::Vec;

/// Most combinations of one kit that are tried.
pub const MOST_CHECKED: u64 = 50_000;

/// The slots that make a combination, the last changing first: a charger meets only the pack.
/// Ride modes fit every board, and a belt goes with its pulleys.
const CHOSEN: [Slot; 9] = [
    Slot::Pack,
    Slot::Controller,
    Slot::Motor,
    Slot::Truck,
    Slot::MotorPulley,
    Slot::WheelPulley,
    Slot::Wheel,
    Slot::Deck,
    Slot::Charger,
];

/// More combinations than this are as good as without number.
const MOST_COUNTED: u64 = 1 << 62;

/// A part on offer, with the cell that it brings if it is a pack.
struct Offered {
    part: Record,
    cell: Record,
    no_cell: Option<Unfilled>,
}

/// What is on offer for a slot, and which of it is in the draft.
pub(super) struct Choice {
    pub(super) slot: Slot,
    options: Vec<Offered>,
    pub(super) at: usize,
}

impl Choice {
    pub(super) fn count(&self) -> usize {
        self.options.len()
    }

    pub(super) fn name(&self, at: usize) -> &str {
        self.options.get(at).map_or("", |option| &option.part.name)
    }
}

/// Tries the combinations of a kit, one with each [`step`](Self::step), so that a page can do it
/// between two frames.
///
/// A combination is a pack, controller, motor, trucks, motor pulley, wheel pulley, wheel, deck and
/// charger on offer; a slot that the kit does not name offers every part of its kind. Each comes
/// with the kit's own belt where the mount reaches what that wants, else with the belt on offer
/// that fits best, else with the one that misses by least. Of more than [`MOST_CHECKED`] only so
/// many are tried, spread evenly over all of them.
///
/// ```
/// use pitchline_core::catalog::{Catalog, KitCheck};
///
/// // One pack, and chargers for 10 and 12 in series.
/// let text = r#"{ "schema_version": 1, "maker": "Ferry Lane Board Works",
///   "packs": [{ "id": "p", "name": "Pack", "series": 10, "parallel": 3, "protection_a": 60 }],
///   "chargers": [{ "id": "a", "name": "42 V", "full_v": 42, "current_a": 3 },
///                { "id": "b", "name": "50.4 V", "full_v": 50.4, "current_a": 3 }],
///   "kits": [{ "id": "k", "name": "Street", "slots": {} }] }"#;
/// let (catalog, _) = Catalog::read(text).unwrap();
/// let mut check = KitCheck::new(&catalog, &catalog.kits[0]);
/// while check.step() {}
/// let report = check.report();
/// assert_eq!((report.combinations, report.checked, report.misfitting), (2, 2, 1));
/// assert_eq!(report.groups[0].parts[0].1, "50.4 V");
/// ```
pub struct KitCheck {
    id: String,
    name: String,
    draft: Draft,
    choices: Vec<Choice>,
    /// Belts on offer, and the one that the kit comes with.
    belts: Vec<(Record, Belt)>,
    own_belt: Record,
    /// The belt for each motor pulley, wheel pulley and trucks, as far as it is known: its place
    /// among those on offer, or none for the kit's own. Empty where there are too many of them.
    belt_for: Vec<Option<Option<usize>>>,
    combinations: u64,
    /// The combination that is next, and how far the one after it is.
    next: u64,
    stride: u64,
    /// What was found of the board without its charger.
    misfits: Vec<Finding>,
    tally: Tally,
}

impl KitCheck {
    /// For a kit of the catalogue.
    #[must_use]
    pub fn new(catalog: &Catalog, kit: &Kit) -> Self {
        let mut draft = catalog.draft(&kit.id);
        for slot in Slot::ALL.iter().copied() {
            let unfilled = draft.unfilled().iter().any(|unfilled| unfilled.slot == slot);
            // The cell is the pack's own.
            if unfilled
                && slot != Slot::Cell
                && let Some(part) = catalog.offered(&kit.id, slot).first()
            {
                draft.set_record(slot, (*part).clone());
            }
        }
        let choices: Vec<Choice> = CHOSEN
            .iter()
            .map(|slot| Choice {
                slot: *slot,
                options: options(catalog, &kit.id, *slot, &draft),
                at: usize::MAX,
            })
            .filter(|choice| choice.count() > 0)
            .collect();
        let combinations = choices
            .iter()
            .fold(1_u64, |all, choice| all.saturating_mul(choice.count() as u64))
            .min(MOST_COUNTED);
        let belts = catalog.offered(&kit.id, Slot::Belt).into_iter();
        // Parts of a catalogue have been checked when it was read.
        let belts = belts.filter_map(|part| Some((part.clone(), Belt::from_record(part).ok()?)));
        let mut check = Self {
            id: kit.id.clone(),
            name: kit.name.clone(),
            belts: belts.collect(),
            own_belt: draft.record(Slot::Belt).clone(),
            draft,
            choices,
            belt_for: Vec::new(),
            combinations,
            next: 0,
            stride: stride(combinations),
            misfits: Vec::new(),
            tally: Tally::default(),
        };
        let pulleys = check.pulleys().0;
        if pulleys as u64 <= MOST_CHECKED {
            check.belt_for.resize(pulleys, None);
        }
        check
    }

    /// Tries the next combination; false once all have been tried that will be.
    pub fn step(&mut self) -> bool {
        if self.tally.checked >= self.planned() {
            return false;
        }
        if self.place() {
            self.misfits = self.board();
        }
        let agree = self.agree();
        let findings = self.misfits.iter().chain(&agree);
        self.tally.add(findings, &self.choices);
        self.next =
            self.next.saturating_add(self.stride).checked_rem(self.combinations).unwrap_or(0);
        self.tally.checked < self.planned()
    }

    /// How much of it is done, as a share.
    #[must_use]
    pub fn share(&self) -> f64 {
        self.tally.checked as f64 / self.planned() as f64
    }

    /// How many combinations are tried in all.
    #[must_use]
    pub fn planned(&self) -> u64 {
        self.combinations.min(MOST_CHECKED)
    }

    /// What was found so far.
    #[must_use]
    pub fn report(&self) -> KitReport {
        let name = self.name.clone();
        self.tally.report(self.id.clone(), name, self.combinations, &self.choices)
    }

    /// Puts the next combination into the draft; whether more than the charger changes.
    fn place(&mut self) -> bool {
        let mut left = self.next;
        let mut moved = self.tally.checked == 0;
        for choice in self.choices.iter_mut().rev() {
            let count = choice.count() as u64;
            let at = left.checked_rem(count).and_then(|at| usize::try_from(at).ok()).unwrap_or(0);
            left = left.checked_div(count).unwrap_or(0);
            if at == choice.at {
                continue;
            }
            choice.at = at;
            moved |= choice.slot != Slot::Charger;
            let Some(option) = choice.options.get(at) else { continue };
            self.draft.set_record(choice.slot, option.part.clone());
            if choice.slot == Slot::Pack {
                self.draft.set_record(Slot::Cell, option.cell.clone());
                if let Some(no_cell) = &option.no_cell {
                    self.draft.unfill(no_cell.clone());
                }
            }
        }
        moved
    }

    /// What does not fit by its size, whatever the charger.
    fn board(&mut self) -> Vec<Finding> {
        if !self.draft.unfilled().is_empty() {
            let missing = self.draft.unfilled().iter();
            return missing.map(|unfilled| Finding::Missing(unfilled.slot)).collect();
        }
        let at = self.pulleys().1;
        let known = self.belt_for.get(at).copied().flatten();
        let place = known.unwrap_or_else(|| self.belt_to_take());
        if let Some(known) = self.belt_for.get_mut(at) {
            *known = Some(place);
        }
        let belt = place.and_then(|place| self.belts.get(place)).map(|(belt, _)| belt);
        self.draft.set_record(Slot::Belt, belt.unwrap_or(&self.own_belt).clone());
        let Ok(build) = Build::check(&self.draft) else { return Vec::new() };
        let none = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };
        let found = together(&self.draft, &Drive::new(&build), &none);
        found.misfits.into_iter().map(Finding::Misfit).collect()
    }

    /// How many motor pulleys with wheel pulleys and trucks there are, and which is in the draft.
    fn pulleys(&self) -> (usize, usize) {
        let slots = [Slot::MotorPulley, Slot::WheelPulley, Slot::Truck];
        let by = self.choices.iter().filter(|choice| slots.contains(&choice.slot));
        by.fold((1, 0), |(count, at), choice| {
            let shifted = at.saturating_mul(choice.count());
            (count.saturating_mul(choice.count()), shifted.saturating_add(choice.at))
        })
    }

    /// The belt for the pulleys and trucks in the draft; none for the kit's own.
    fn belt_to_take(&mut self) -> Option<usize> {
        self.draft.set_record(Slot::Belt, self.own_belt.clone());
        let build = Build::check(&self.draft).ok()?;
        let belts: Vec<Belt> = self.belts.iter().map(|(_, belt)| *belt).collect();
        let offers = BeltOffers { belts: &belts, motor_pulleys: &[], wheel_pulleys: &[] };
        let fit = belt_fit(&Drive::new(&build), &offers);
        match fit.on_board {
            BeltOnBoard::NoTeeth => return None,
            BeltOnBoard::Taut(belt) if belt.in_slot => return None,
            _ => {}
        }
        let near = [fit.shorter, fit.longer].into_iter().flatten();
        let near = near.min_by(|a, b| a.miss_m.total_cmp(&b.miss_m)).map(|miss| miss.belt);
        fit.pick().copied().or(near)?.offer
    }

    /// What does not agree by tags, volts and masses.
    fn agree(&self) -> Vec<Finding> {
        let Ok(build) = Build::check(&self.draft) else { return Vec::new() };
        notices(&self.draft, &build).into_iter().map(Finding::Notice).collect()
    }
}

/// What a kit offers for a slot.
fn options(catalog: &Catalog, kit: &str, slot: Slot, draft: &Draft) -> Vec<Offered> {
    let one = |part: &Record| {
        let mut option = Offered { part: part.clone(), cell: Record::EMPTY, no_cell: None };
        if slot == Slot::Pack {
            let mut with = draft.clone();
            with.set_record(Slot::Pack, part.clone());
            catalog.follow_pack(&mut with);
            option.cell = with.record(Slot::Cell).clone();
            option.no_cell = with.unfilled().iter().find(|no| no.slot == Slot::Cell).cloned();
        }
        option
    };
    catalog.offered(kit, slot).into_iter().map(one).collect()
}

/// How far the combinations that are tried lie apart: next to each other where all of them are,
/// else by about the golden section of them, a step that meets each of them once and leaves no
/// part out for long.
fn stride(combinations: u64) -> u64 {
    if combinations <= MOST_CHECKED {
        return 1;
    }
    // 0.618 as a ratio of Fibonacci numbers.
    let near = combinations / 987 * 610 + 1;
    (near..combinations).find(|stride| no_common_divisor(*stride, combinations)).unwrap_or(1)
}

/// Whether two numbers have no common divisor but 1 (Euclid).
fn no_common_divisor(mut a: u64, mut b: u64) -> bool {
    while let Some(rest) = a.checked_rem(b) {
        (a, b) = (b, rest);
    }
    a == 1
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Any so many neighbours in the order of trying are different combinations, and every part
    /// of a slot of ten comes up in a tenth of them, to a hundredth.
    #[test]
    fn a_part_of_many_combinations_is_spread_over_all_of_them() {
        for all in
            [MOST_CHECKED + 1, 65_536, 10_u64.pow(6), 10_u64.pow(10), 720_720 * 17, MOST_COUNTED]
        {
            let step = stride(all);
            assert!(step > 1 && no_common_divisor(step, all), "{all}: {step}");
            let mut seen = std::collections::BTreeSet::new();
            let mut tens = [0_u32; 10];
            let mut next = 0_u64;
            for _ in 0..5000 {
                assert!(seen.insert(next), "{all}: twice");
                // The slot that changes last.
                tens[usize::try_from(u128::from(next) * 10 / u128::from(all)).unwrap()] += 1;
                next = (next + step) % all;
            }
            assert!(tens.iter().all(|count| (450..=550).contains(count)), "{all}: {tens:?}");
        }
        assert_eq!(stride(MOST_CHECKED), 1);
    }
}
