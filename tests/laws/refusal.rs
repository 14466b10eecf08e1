//! What is not within its limits is refused by name, with range and unit.

use crate::board::any_board;
use crate::cases;
use pitchline_core::{Build, Draft, Error, Field, Need, Reason, Slot};
use proptest::prelude::*;
use proptest::sample::Index;

/// Every input of every slot.
fn inputs() -> Vec<(Slot, usize, &'static Field)> {
    let of = |slot: &Slot| {
        let slot = *slot;
        slot.kind().fields().iter().enumerate().map(move |(index, field)| (slot, index, field))
    };
    Slot::ALL.iter().flat_map(of).collect()
}

fn errors_with(draft: &Draft, slot: Slot, index: usize, value: Option<f64>) -> Vec<Error> {
    let mut draft = draft.clone();
    draft.set_value(slot, index, value);
    Build::check(&draft).err().unwrap_or_default()
}

/// The one error that a value should give, judged from the table alone.
fn expected(slot: Slot, field: &Field, value: f64) -> Error {
    let Field { min, max, unit, .. } = *field;
    let reason = if value.is_finite() {
        if value < min || value > max {
            Reason::OutOfRange { value, min, max, unit }
        } else {
            Reason::NotWhole { value, min, max, unit }
        }
    } else {
        Reason::NotANumber { min, max, unit }
    };
    Error::new(format!("{}.{}", slot.key(), field.key), reason)
}

#[test]
fn every_input_is_refused_beyond_either_end_and_by_nothing_else() {
    let draft = Draft::typical();
    for (slot, index, field) in inputs() {
        for end in [field.min, field.max] {
            assert_eq!(errors_with(&draft, slot, index, Some(end)), []);
        }
        for value in [
            field.min.next_down(),
            field.max.next_up(),
            -f64::MAX,
            f64::MAX,
            f64::NAN,
            f64::INFINITY,
            f64::NEG_INFINITY,
        ] {
            let found = errors_with(&draft, slot, index, Some(value));
            assert_eq!(found, [expected(slot, field, value)]);
        }
        // What a person reads: the field, the value, both ends and the unit.
        for value in [field.min - 1.0, field.max + 1.0] {
            // As somebody would type it: 2.8 less 1 is 1.8.
            let value = (value * 1e6).round() / 1e6;
            let said = errors_with(&draft, slot, index, Some(value))[0].to_string();
            assert!(said.starts_with(&format!("{}.{}: ", slot.key(), field.key)), "{said}");
            for part in [value, field.min, field.max] {
                assert!(said.contains(&part.to_string()), "{said}");
            }
            assert!(said.contains(field.unit.symbol()), "{said}");
        }
        let missing = errors_with(&draft, slot, index, None);
        if field.need == Need::Required {
            let path = format!("{}.{}", slot.key(), field.key);
            let said: Vec<_> = missing.iter().map(ToString::to_string).collect();
            let [said] = said.as_slice() else { panic!("{missing:?}") };
            assert!(said.starts_with(&format!("{path}: is required but missing")), "{said}");
            // And what would be right.
            let right = [field.min.to_string(), field.max.to_string()];
            let right = if field.choices.is_empty() { &right[..] } else { &[] };
            let choices = field.choices.iter().all(|choice| said.contains(choice));
            assert!(choices && right.iter().all(|end| said.contains(end)), "{said}");
        } else {
            assert_eq!(missing, []);
        }
        if field.must_be_whole() {
            let between = field.min + 0.5;
            let found = errors_with(&draft, slot, index, Some(between));
            assert_eq!(found, [expected(slot, field, between)]);
        }
    }
}

/// Any number, the more often the nearer to the range.
fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![any::<f64>(), -1000.0..1000.0_f64, 0.0..100.0_f64]
}

proptest! {
    #![proptest_config(cases(500))]

    #[test]
    fn a_wrong_value_on_any_board_is_the_only_thing_refused(
        board in any_board(),
        which in any::<Index>(),
        value in any_number(),
    ) {
        let all = inputs();
        let (slot, index, field) = all[which.index(all.len())];
        let within = (field.min..=field.max).contains(&value);
        let allowed = within && (!field.must_be_whole() || value.fract() == 0.0);
        let found = errors_with(&board.0, slot, index, Some(value));
        let want = if allowed { vec![] } else { vec![expected(slot, field, value)] };
        prop_assert_eq!(found, want);
    }

    #[test]
    fn several_wrong_values_are_all_named(
        board in any_board(),
        which in prop::collection::btree_set(any::<usize>(), 2..6),
    ) {
        let all = inputs();
        let which: std::collections::BTreeSet<_> = which.iter().map(|i| i % all.len()).collect();
        let mut draft = board.0;
        let mut want = Vec::new();
        for at in which {
            let (slot, index, field) = all[at];
            let value = field.max.next_up();
            draft.set_value(slot, index, Some(value));
            want.push(expected(slot, field, value));
        }
        prop_assert_eq!(Build::check(&draft).err().unwrap_or_default(), want);
    }
}
