//! Random boards.

use pitchline_core::{Build, Draft, Drive, Field, Kind, Need, Sag, Slot};
use proptest::prelude::*;
use std::fmt;

/// A draft in which every value is within its limits.
#[derive(Clone)]
pub(crate) struct Board(pub(crate) Draft);

impl Board {
    pub(crate) fn build(&self) -> Build {
        Build::check(&self.0).expect("every value is within its limits")
    }

    pub(crate) fn drive(&self) -> Drive {
        Drive::new(&self.build())
    }

    /// The same board with one value changed.
    pub(crate) fn with(&self, slot: Slot, key: &str, value: f64) -> Self {
        let mut changed = self.clone();
        let field = field(slot, key);
        changed.0.set(slot, key, value.clamp(field.min, field.max));
        changed
    }

    /// A value as the core takes it: as given, or as assumed.
    pub(crate) fn value(&self, slot: Slot, key: &str) -> f64 {
        let index = slot.kind().field_index(key);
        let assumed = || index.and_then(|index| self.0.assumed(slot, index));
        self.0.value(slot, key).or_else(assumed).unwrap_or(field(slot, key).typical)
    }

    /// The same board with one value moved a share of the way to an end of its range.
    pub(crate) fn toward(&self, slot: Slot, key: &str, end: End, share: f64) -> Self {
        let field = field(slot, key);
        let end = if end == End::Least { field.min } else { field.max };
        let now = self.value(slot, key);
        self.with(slot, key, now + share * (end - now))
    }
}

/// An end of a range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum End {
    Least,
    Most,
}

/// Lists what differs from the typical board, so that a failure can be read.
impl fmt::Debug for Board {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let typical = Draft::typical();
        for slot in Slot::ALL {
            let (record, plain) = (self.0.record(*slot), typical.record(*slot));
            for (index, field) in slot.kind().fields().iter().enumerate() {
                let value = record.value(index);
                if value != plain.value(index) {
                    write!(f, "{}.{} = {value:?}; ", slot.key(), field.key)?;
                }
            }
        }
        Ok(())
    }
}

pub(crate) fn field(slot: Slot, key: &str) -> &'static Field {
    let kind: Kind = slot.kind();
    let index = kind.field_index(key).unwrap_or_else(|| panic!("{} has no {key}", slot.key()));
    &kind.fields()[index]
}

/// The whole range, its ends, and nothing at all where that is allowed.
fn wide(field: &'static Field) -> BoxedStrategy<Option<f64>> {
    let absent = u32::from(field.need != Need::Required);
    let inside = if field.must_be_whole() {
        (field.min as i64..=field.max as i64).prop_map(|n| n as f64).boxed()
    } else {
        (field.min..=field.max).boxed()
    };
    prop_oneof![
        3 => Just(Some(field.typical)),
        4 => inside.prop_map(Some),
        1 => Just(Some(field.min)),
        1 => Just(Some(field.max)),
        absent => Just(None),
    ]
    .boxed()
}

/// About the typical value: boards that somebody might build.
fn near(field: &'static Field) -> BoxedStrategy<Option<f64>> {
    let absent = u32::from(field.need == Need::Optional);
    let inside = if !field.choices.is_empty() {
        (0..field.choices.len()).prop_map(|n| n as f64).boxed()
    } else if field.typical == 0.0 {
        let span = 0.15 * (field.max - field.min);
        (field.min.max(-span)..=field.max.min(span)).boxed()
    } else {
        (field.min.max(0.6 * field.typical)..=field.max.min(1.6 * field.typical)).boxed()
    };
    let whole = field.must_be_whole();
    let inside = inside.prop_map(move |value| if whole { value.round() } else { value });
    prop_oneof![
        1 => Just(Some(field.typical)),
        4 => inside.prop_map(Some),
        2 * absent => Just(None),
    ]
    .boxed()
}

fn drawn(draw: fn(&'static Field) -> BoxedStrategy<Option<f64>>) -> BoxedStrategy<Board> {
    let fields = || Slot::ALL.iter().flat_map(|slot| slot.kind().fields());
    let values: Vec<_> = fields().map(draw).collect();
    values
        .prop_map(|values| {
            let mut draft = Draft::typical();
            let mut values = values.into_iter();
            for slot in Slot::ALL {
                for index in 0..slot.kind().fields().len() {
                    draft.set_value(*slot, index, values.next().flatten());
                }
            }
            Board(draft)
        })
        .boxed()
}

/// Any board within the limits, however odd.
pub(crate) fn any_board() -> BoxedStrategy<Board> {
    prop_oneof![drawn(wide), drawn(near)].boxed()
}

/// A board that somebody might build.
pub(crate) fn likely_board() -> BoxedStrategy<Board> {
    drawn(near)
}

pub(crate) fn any_sag() -> impl Strategy<Value = Sag> {
    prop_oneof![Just(Sag::Burst), Just(Sag::Sustained)]
}

/// Speeds from walking to beyond every board's top, m/s.
pub(crate) fn any_speed() -> impl Strategy<Value = f64> {
    prop_oneof![0.05..=12.0, 0.05..=60.0]
}
