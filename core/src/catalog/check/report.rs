//! Misfits of many combinations, grouped by what a maker can change.

use super::cause::{Cause, Finding};
use super::kit::Choice;
use crate::answers::fit::Severity;
use crate::parts::Slot;
use alloc::string::String;
use alloc::vec::Vec;

/// Most groups of one kit that are kept; findings of further ones are counted only.
const MOST_GROUPS: usize = 500;

/// What was found of a kit's combinations.
#[derive(Clone, Debug, PartialEq)]
pub struct KitReport {
    /// The kit's id.
    pub kit: String,
    /// The kit's name.
    pub name: String,
    /// Combinations on offer, a count of 1 or more; 2^62 stands for that many or more.
    pub combinations: u64,
    /// How many of them were checked.
    pub checked: u64,
    /// How many of those do not fit.
    pub misfitting: u64,
    /// How many of those fit, but something in them only just.
    pub tight: u64,
    /// Why, by cause and by the parts that decide it: what does not fit before what is tight, and
    /// what most combinations suffer from first.
    pub groups: Vec<Group>,
    /// Findings that are in no group, since there are too many groups.
    pub ungrouped: u64,
}

/// Combinations that do not fit, or only just, for one cause and with the same parts.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Why.
    pub cause: Cause,
    /// Whether they do not fit, or are tight.
    pub severity: Severity,
    /// The parts that decide it, by slot and name, where the kit offers a choice for the slot and
    /// not every part of it fares alike; empty where it is all combinations, or no choice mends it.
    pub parts: Vec<(Slot, String)>,
    /// How many of the combinations checked, a count of 1 or more.
    pub combinations: u64,
    /// How many combinations have these parts; none where not all of the kit's were checked.
    pub with_parts: Option<u64>,
    /// The worst of them, with its sizes.
    pub worst: Finding,
}

/// Which part: the place of its slot among the choices, and its own place there.
type Part = (usize, usize);

#[derive(Clone)]
struct Counted {
    cause: Cause,
    severity: Severity,
    parts: Vec<Part>,
    combinations: u64,
    worst: Finding,
}

impl Counted {
    fn is_same(&self, cause: Cause, severity: Severity, parts: &[Part]) -> bool {
        self.cause == cause && self.severity == severity && self.parts == parts
    }

    fn named(self, choices: &[Choice], with_parts: Option<u64>) -> Group {
        let name = |slot: &Slot| {
            let has = |(place, _): &&Part| choices.get(*place).is_some_and(|c| c.slot == *slot);
            let (place, at) = self.parts.iter().find(has)?;
            Some((*slot, choices.get(*place)?.name(*at).into()))
        };
        Group {
            parts: self.cause.slots().iter().filter_map(name).collect(),
            cause: self.cause,
            severity: self.severity,
            with_parts,
            combinations: self.combinations,
            worst: self.worst,
        }
    }
}

/// The counts so far.
#[derive(Default)]
pub(super) struct Tally {
    pub(super) checked: u64,
    misfitting: u64,
    tight: u64,
    ungrouped: u64,
    groups: Vec<Counted>,
}

impl Tally {
    /// Counts what was found of one combination.
    pub(super) fn add<'f>(
        &mut self,
        findings: impl Iterator<Item = &'f Finding>,
        choices: &[Choice],
    ) {
        let (mut misfits, mut tight) = (0, 0);
        for finding in findings {
            let (cause, severity) = (finding.cause(), finding.severity());
            match severity {
                Severity::DoesNotFit => misfits = 1,
                Severity::Tight => tight = 1,
            }
            let deciding = choices
                .iter()
                .enumerate()
                .filter(|(_, choice)| choice.count() > 1 && cause.slots().contains(&choice.slot));
            let parts: Vec<Part> = deciding.map(|(place, choice)| (place, choice.at)).collect();
            let same = |group: &&mut Counted| group.is_same(cause, severity, &parts);
            if let Some(group) = self.groups.iter_mut().find(same) {
                group.combinations += 1;
                if finding.size() > group.worst.size() {
                    group.worst = finding.clone();
                }
            } else if self.groups.len() < MOST_GROUPS {
                let worst = finding.clone();
                self.groups.push(Counted { cause, severity, parts, combinations: 1, worst });
            } else {
                self.ungrouped += 1;
            }
        }
        self.checked += 1;
        self.misfitting += misfits;
        self.tight += if misfits == 0 { tight } else { 0 };
    }

    /// The report on a kit of so many combinations.
    pub(super) fn report(
        &self,
        kit: String,
        name: String,
        combinations: u64,
        choices: &[Choice],
    ) -> KitReport {
        let whole = self.checked == combinations;
        let with = |parts: &[Part]| with_parts(combinations, parts, choices);
        let mut counted = self.groups.clone();
        if whole {
            merge(&mut counted, choices, &with);
        }
        let mut groups: Vec<Group> = Vec::with_capacity(counted.len());
        let tight = |group: &Group| group.severity == Severity::Tight;
        for counted in counted {
            let with_parts = whole.then(|| with(&counted.parts));
            let group = counted.named(choices, with_parts);
            // A general sort costs the page more.
            let after = |other: &Group| {
                (tight(&group), other.combinations) < (tight(other), group.combinations)
            };
            let at = groups.iter().position(after).unwrap_or(groups.len());
            groups.insert(at, group);
        }
        KitReport {
            kit,
            name,
            combinations,
            checked: self.checked,
            misfitting: self.misfitting,
            tight: self.tight,
            groups,
            ungrouped: self.ungrouped,
        }
    }
}

/// How many combinations have these parts.
fn with_parts(combinations: u64, parts: &[Part], choices: &[Choice]) -> u64 {
    parts.iter().fold(combinations, |left, (place, _)| {
        let count = choices.get(*place).map_or(1, |choice| choice.count() as u64);
        left.checked_div(count).unwrap_or(left)
    })
}

/// Puts groups together that differ in one part alone, where every part of that slot does as
/// badly in every combination: the choice of it then decides nothing.
fn merge(groups: &mut Vec<Counted>, choices: &[Choice], with: &dyn Fn(&[Part]) -> u64) {
    for (place, choice) in choices.iter().enumerate() {
        let mut merged: Vec<Counted> = Vec::with_capacity(groups.len());
        for group in groups.iter() {
            let mut fewer = group.parts.clone();
            fewer.retain(|part| part.0 != place);
            if let Some(into) = merged.iter_mut().find(|other| {
                fewer.len() < group.parts.len()
                    && other.is_same(group.cause, group.severity, &fewer)
            }) {
                into.combinations += group.combinations;
                if group.worst.size() > into.worst.size() {
                    into.worst = group.worst.clone();
                }
                continue;
            }
            let alike = groups.iter().filter(|other| {
                other.cause == group.cause
                    && other.severity == group.severity
                    && other.combinations == with(&other.parts)
                    && other.parts.len() == group.parts.len()
                    && fewer.iter().all(|part| other.parts.contains(part))
                    && other.parts.iter().any(|part| part.0 == place)
            });
            let all = fewer.len() < group.parts.len() && alike.count() == choice.count();
            let parts = if all { fewer } else { group.parts.clone() };
            merged.push(Counted { parts, ..group.clone() });
        }
        *groups = merged;
    }
}
