//! One part on offer in place of the one on the board, where nothing new goes wrong with it.

use super::climb::{SLOW_M_S, Steepest};
use super::drive::{Drive, Sag};
use super::fit::{BeltOffers, Misfit, MisfitKind, Severity, together, with_part};
use super::margins::{Level, Rating, margins};
use super::notice::{Notice, notices};
use super::push::FULL;
use super::settings::{settings, with_highest, with_settings};
use crate::build::{Build, Draft};
use crate::parts::{Belt, Record, Slot};
use crate::physics::road_load::Slope;
use alloc::vec::Vec;
use core::mem::discriminant;

/// Another part on the board, or other settings.
#[derive(Clone, Debug)]
pub struct Swap<'a> {
    /// The parts that it takes: the one, and a belt where the pulleys need another one. None of them
    /// where only settings change.
    pub parts: Vec<(Slot, &'a Record)>,
    /// What they cost together, in the catalogue's currency; none where a price is missing.
    pub price: Option<f64>,
    /// The ratings that are exceeded with them.
    pub over: Vec<Rating>,
    /// The steepest hill that it climbs at 10 km/h with a full pack.
    pub slow: Steepest,
    /// Top speed on the flat with a full pack, m/s.
    pub top_m_s: f64,
}

/// A board, and what is wrong with it already.
#[derive(Clone, Debug)]
pub struct Swapper {
    draft: Draft,
    notices: Vec<Notice>,
    misfits: Vec<Misfit>,
    over: Vec<Rating>,
}

fn exceeded(build: &Build) -> Vec<Rating> {
    let over = margins(build).list.into_iter().filter(|margin| margin.level == Level::Over);
    over.map(|margin| margin.rating).collect()
}

/// Whether two misfits are of the same two parts.
fn is_same(one: &MisfitKind, other: &MisfitKind) -> bool {
    match (one, other) {
        (
            MisfitKind::Clearance { between: one, .. },
            MisfitKind::Clearance { between: other, .. },
        ) => one == other,
        _ => discriminant(one) == discriminant(other),
    }
}

impl Swapper {
    /// For a draft and the build that it was checked to.
    #[must_use]
    pub fn new(draft: &Draft, build: &Build) -> Self {
        let misfits = together(draft, &Drive::new(build), &BeltOffers::default()).misfits;
        let notices = notices(draft, build);
        Self { draft: draft.clone(), notices, misfits, over: exceeded(build) }
    }

    /// The board with its recommended settings, or with the highest that its ratings allow; none where
    /// it is set like that.
    #[must_use]
    pub fn set(&self, build: &Build, highest: bool) -> Option<Swap<'static>> {
        let found = settings(&self.draft, build);
        let with = if highest { with_highest } else { with_settings };
        let draft = with(&self.draft, &found);
        if draft == self.draft {
            return None;
        }
        self.worth(draft, Vec::new())
    }

    /// The board with another part, of those that `offered` gives; none where it does not go
    /// together, or exceeds a rating that is not exceeded now.
    ///
    /// ```
    /// use pitchline_core::{Build, Draft, Rating, Record, Slot, Swapper};
    ///
    /// let mut draft = Draft::typical();
    /// draft.set(Slot::Deck, "max_load_kg", 60.0);
    /// let deck = |max_load_kg: f64| -> Record {
    ///     let mut other = draft.clone();
    ///     other.set(Slot::Deck, "max_load_kg", max_load_kg);
    ///     other.record(Slot::Deck).clone()
    /// };
    /// let build = Build::check(&draft).unwrap();
    /// let swapper = Swapper::new(&draft, &build);
    /// let (weak, strong) = (deck(70.0), deck(120.0));
    /// let none = |_| Vec::new();
    /// assert!(swapper.swap(Slot::Deck, &weak, &none).unwrap().over.contains(&Rating::DeckLoad));
    /// assert!(!swapper.swap(Slot::Deck, &strong, &none).unwrap().over.contains(&Rating::DeckLoad));
    /// ```
    #[must_use]
    pub fn swap<'a>(
        &self,
        slot: Slot,
        part: &'a Record,
        offered: &dyn Fn(Slot) -> Vec<&'a Record>,
    ) -> Option<Swap<'a>> {
        let mut draft = with_part(&self.draft, slot, part, offered);
        let mut parts = Vec::from([(slot, part)]);
        if matches!(slot, Slot::MotorPulley | Slot::WheelPulley) {
            let (records, belts) = offered_belts(offered);
            let offers = BeltOffers { belts: &belts, ..BeltOffers::default() };
            let build = Build::check(&draft).ok()?;
            let found = together(&draft, &Drive::new(&build), &offers);
            let place = found.belt.pick().and_then(|choice| choice.offer);
            let own = draft.record(Slot::Belt).clone();
            if let Some(belt) =
                place.and_then(|place| records.get(place)).filter(|belt| ***belt != own)
            {
                draft.set_record(Slot::Belt, (*belt).clone());
                parts.push((Slot::Belt, *belt));
            }
        }
        self.worth(draft, parts)
    }

    /// The same, unless something new is wrong with it.
    fn worth<'a>(&self, draft: Draft, parts: Vec<(Slot, &'a Record)>) -> Option<Swap<'a>> {
        let build = Build::check(&draft).ok()?;
        let is_new = |said: &Notice| {
            !self.notices.iter().any(|known| {
                discriminant(known) == discriminant(said) && known.slots() == said.slots()
            })
        };
        if notices(&draft, &build).iter().any(is_new) {
            return None;
        }
        let over = exceeded(&build);
        if over.iter().any(|rating| !self.over.contains(rating)) {
            return None;
        }
        let fit = together(&draft, &Drive::new(&build), &BeltOffers::default());
        let is_new = |misfit: &Misfit| {
            misfit.severity == Severity::DoesNotFit
                && !self.misfits.iter().any(|known| {
                    known.severity == Severity::DoesNotFit && is_same(&known.kind, &misfit.kind)
                })
        };
        if fit.misfits.iter().any(is_new) {
            return None;
        }
        let cost = |(slot, part): &(Slot, &Record)| {
            let price = slot.kind().field_index("price").and_then(|index| part.value(index))?;
            Some(price * build.count(*slot))
        };
        let price = parts.iter().map(cost).sum();
        let drive = Drive::new(&build);
        let full = drive.supply(1.0, Sag::Burst);
        let slow = drive.steepest(&full, SLOW_M_S);
        let top_m_s = drive.top_speed(&full, &FULL, Slope::FLAT).speed_m_s;
        Some(Swap { parts, price, over, slow, top_m_s })
    }
}

/// The belts on offer that can be read, as they are written and as they are.
fn offered_belts<'a>(offered: &dyn Fn(Slot) -> Vec<&'a Record>) -> (Vec<&'a Record>, Vec<Belt>) {
    let readable = |record: &'a Record| Some((record, Belt::from_record(record).ok()?));
    offered(Slot::Belt).into_iter().filter_map(readable).unzip()
}
