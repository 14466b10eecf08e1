//! What differs between two builds, part by part.

use super::rest::Whole;
use super::typed::Place;
use crate::text::difference::{self, Said};
use crate::text::{Style, words};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, Record, Slot};

/// What differs between two builds: what the first has, and what the second.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Difference {
    /// Ids of their kits.
    pub kit: Option<[String; 2]>,
    /// Their own names.
    pub name: Option<[String; 2]>,
    /// Slot by slot.
    pub slots: Vec<InSlot>,
    /// Whether something differs that this page does not understand.
    pub rest: bool,
}

/// What differs in a slot.
#[derive(Clone, Debug, PartialEq)]
pub struct InSlot {
    /// The slot.
    pub slot: Slot,
    /// How.
    pub what: What,
}

/// How a slot differs.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// It has another part: their names.
    Part([String; 2]),
    /// The same part or the same settings, with other values.
    Values(Vec<Value>),
    /// Only texts of the part: its name, tags, source or notes.
    Texts,
}

/// A value that differs, in the file's unit; none where it is left out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Value {
    /// Its place in the kind's table.
    pub index: usize,
    /// What the first build has.
    pub from: Option<f64>,
    /// What the second has.
    pub to: Option<f64>,
}

fn pair<T: Clone + PartialEq>(from: &T, to: &T) -> Option<[T; 2]> {
    (from != to).then(|| [from.clone(), to.clone()])
}

impl Difference {
    /// What differs between two builds.
    #[must_use]
    pub fn between(from: &Whole, to: &Whole) -> Self {
        Self { rest: from.rest != to.rest, ..Self::of_drafts(&from.draft, &to.draft) }
    }

    /// What differs in the parts of a build from its kit as it is sold; none where the catalogue has
    /// no such kit. Rider, place and wishes belong to no kit.
    #[must_use]
    pub fn from_kit(build: &Draft, catalog: &Catalog) -> Option<Self> {
        catalog.kit(&build.kit)?;
        let mut all = Self::of_drafts(&catalog.draft(&build.kit), build);
        all.slots.retain(|differs| differs.slot.holds_part());
        Some(Self { name: None, ..all })
    }

    fn of_drafts(from: &Draft, to: &Draft) -> Self {
        let in_slot = |slot: &Slot| {
            let unfilled =
                |draft: &Draft| draft.unfilled().iter().any(|unfilled| unfilled.slot == *slot);
            let (before, after) = (from.record(*slot), to.record(*slot));
            let other = before.id != after.id || unfilled(from) != unfilled(to);
            let what = if other {
                What::Part([before.name.clone(), after.name.clone()])
            } else {
                in_records(before, after)?
            };
            Some(InSlot { slot: *slot, what })
        };
        Self {
            kit: pair(&from.kit, &to.kit),
            name: pair(&from.name, &to.name),
            slots: Slot::ALL.iter().filter_map(in_slot).collect(),
            rest: false,
        }
    }

    /// Whether nothing differs.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// Whether something differs that answers follow from: a name is none.
    #[must_use]
    pub fn moves_answers(&self) -> bool {
        self.slots.iter().any(|differs| differs.what != What::Texts)
    }

    /// Whether it sets that input.
    #[must_use]
    pub fn sets(&self, (slot, index): Place) -> bool {
        self.slots.iter().filter(|differs| differs.slot == slot).any(|differs| {
            match &differs.what {
                What::Part(_) => true,
                What::Values(values) => values.iter().any(|value| value.index == index),
                What::Texts => false,
            }
        })
    }

    /// In words, one for each. Parts go with their kit: of another one it alone is named.
    #[must_use]
    pub fn said(&self, catalog: &Catalog, style: Style) -> Vec<Said> {
        let kit = |id: &String| catalog.kit(id).map_or_else(|| id.clone(), |kit| kit.name.clone());
        let mut said: Vec<Said> = Vec::new();
        said.extend(self.kit.as_ref().map(|ids| difference::kit(ids.each_ref().map(kit))));
        let other_kit = self.kit.is_some();
        let told = self.slots.iter().filter(|differs| !(other_kit && differs.slot.holds_part()));
        for InSlot { slot, what } in told {
            match what {
                What::Part(names) => said.push(difference::part(*slot, names)),
                What::Texts => said.push(difference::texts(words::slot(*slot))),
                What::Values(values) => said.extend(values.iter().filter_map(|value| {
                    let field = slot.kind().fields().get(value.index)?;
                    let values = [value.from, value.to];
                    Some(difference::value(*slot, field, values, &catalog.currency, style))
                })),
            }
        }
        said.extend(self.name.as_ref().map(difference::name));
        if self.rest && said.is_empty() {
            said.push(difference::rest());
        }
        said
    }

    /// In a few words, as the name of an edit.
    #[must_use]
    pub fn named(&self, catalog: &Catalog, style: Style) -> String {
        difference::named(&self.said(catalog, style))
    }
}

fn in_records(from: &Record, to: &Record) -> Option<What> {
    let value = |index: usize| {
        let (from, to) = (from.value(index), to.value(index));
        (from != to).then_some(Value { index, from, to })
    };
    let values: Vec<Value> =
        (0..from.values.len().max(to.values.len())).filter_map(value).collect();
    if !values.is_empty() {
        return Some(What::Values(values));
    }
    let texts = |record: &Record| [&record.name, &record.source, &record.notes].map(String::clone);
    let same = texts(from) == texts(to) && from.same_part(to);
    (!same).then_some(What::Texts)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn demo() -> Catalog {
        Catalog::read(include_str!("../../catalog/catalogue.json")).unwrap().0
    }

    fn kit(catalog: &Catalog) -> Whole {
        catalog.draft("kittiwake").into()
    }

    fn said(from: &Whole, to: &Whole) -> Vec<String> {
        let said = Difference::between(from, to).said(&demo(), Style::default());
        said.iter().map(Said::line).collect()
    }

    #[test]
    fn a_build_does_not_differ_from_itself() {
        let build = kit(&demo());
        assert!(Difference::between(&build, &build).is_empty());
        assert_eq!(Difference::from_kit(&build.draft, &demo()), Some(Difference::default()));
    }

    #[test]
    fn parts_and_values_are_told_apart() {
        let catalog = demo();
        let (from, mut to) = (kit(&catalog), kit(&catalog));
        to.draft.set(Slot::Rider, "mass_kg", 95.0);
        to.draft.set(Slot::Rider, "posture", 2.0);
        to.draft.set(Slot::MotorPulley, "teeth", 13.0);
        catalog.fill(&mut to.draft, Slot::Wheel, "shingle-110");
        to.draft.name = "Pier".into();
        let before = from.draft.value(Slot::Rider, "mass_kg").unwrap();
        let teeth = from.draft.value(Slot::MotorPulley, "teeth").unwrap();
        assert_eq!(
            said(&from, &to),
            [
                &format!("Motor pulley: 13 instead of {teeth}\u{a0}teeth"),
                &format!("Wheel: Shingle 110 instead of {}", from.draft.record(Slot::Wheel).name),
                &format!(
                    "{}: 95 instead of {before}\u{a0}kg",
                    crate::text::label(Slot::Rider.kind(), "mass_kg")
                ),
                "Posture: Crouched instead of Relaxed, side on",
                "Name: Pier",
            ]
        );
        // The kit has no say in rider and name.
        let from_kit = Difference::from_kit(&to.draft, &catalog).unwrap();
        let slots: Vec<Slot> = from_kit.slots.iter().map(|differs| differs.slot).collect();
        assert_eq!((slots, from_kit.name), (vec![Slot::MotorPulley, Slot::Wheel], None));
    }

    /// The way back says the same, the other way round.
    #[test]
    fn both_ways_name_the_same() {
        let catalog = demo();
        let (from, mut to) = (kit(&catalog), Whole::from(catalog.draft("gannet")));
        // A kit may come with a ride of its own.
        for slot in Slot::ALL.iter().copied().filter(|slot| !slot.holds_part()) {
            to.draft.set_record(slot, from.draft.record(slot).clone());
        }
        let (there, back) = (Difference::between(&from, &to), Difference::between(&to, &from));
        assert_eq!(there.slots.len(), back.slots.len());
        for (there, back) in there.slots.iter().zip(&back.slots) {
            let turned = match &back.what {
                What::Part([from, to]) => What::Part([to.clone(), from.clone()]),
                What::Values(values) => What::Values(
                    values.iter().map(|v| Value { from: v.to, to: v.from, ..*v }).collect(),
                ),
                What::Texts => What::Texts,
            };
            assert_eq!((there.slot, &there.what), (back.slot, &turned));
        }
        assert_eq!(there.named(&catalog, Style::default()), "kit: Gannet instead of Kittiwake");
        assert!(there.moves_answers());
    }

    #[test]
    fn what_is_left_out_is_said_so() {
        let catalog = demo();
        let (mut from, mut to) = (kit(&catalog), kit(&catalog));
        from.draft.set(Slot::ModeLow, "speed_cap_km_h", 20.0);
        let index = Slot::ModeLow.kind().field_index("speed_cap_km_h").unwrap();
        to.draft.set_value(Slot::ModeLow, index, None);
        let mode = "Ride mode, gentle, speed cap";
        assert_eq!(said(&from, &to), [format!("{mode}: none instead of 20\u{a0}km/h")]);
        assert_eq!(said(&to, &from), [format!("{mode}: 20\u{a0}km/h instead of none")]);
        // What is assumed was never none.
        let index = Slot::Motor.kind().field_index("winding_limit_c").unwrap();
        let heat = "Motor, maximum winding temperature";
        to = from.clone();
        from.draft.set_value(Slot::Motor, index, Some(130.0));
        to.draft.set_value(Slot::Motor, index, None);
        assert_eq!(said(&from, &to), [format!("{heat}: the assumed value instead of 130\u{a0}°C")]);
        assert_eq!(said(&to, &from), [format!("{heat}: 130\u{a0}°C instead of the assumed value")]);
        let rest = Difference { rest: true, ..Difference::default() };
        assert_eq!(rest.named(&catalog, Style::default()), "other details: changed");
        to = from.clone();
        to.draft.name = "Pier".into();
        assert!(!Difference::between(&from, &to).moves_answers());
    }
}
