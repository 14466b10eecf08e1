//! Whatever the charger, the words are numbers, and a refusal has no time in it.

use super::found::{Found, With};
use super::{answers, curve};
use crate::text::{Style, Units};
use pitchline_core::{Build, ChargeRefusal, Draft, Slot};
use proptest::prelude::*;

/// A board from shares of the ranges of what a charge depends on; a share below zero leaves an
/// input as it is.
fn board(shares: &[f64]) -> Draft {
    let mut draft = Draft::typical();
    let mut shares = shares.iter().cycle();
    for slot in [Slot::Cell, Slot::Pack, Slot::Charger, Slot::Place, Slot::Ride] {
        for (index, field) in slot.kind().fields().iter().enumerate() {
            let share = shares.next().copied().unwrap_or(0.5);
            let value = field.min + share * (field.max - field.min);
            let value = if field.must_be_whole() { value.round() } else { value };
            if share >= 0.0 {
                draft.set_value(slot, index, Some(value));
            }
        }
    }
    draft
}

proptest! {
    // A failure is told by its smallest case; no file is left in the tree.
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn every_charge_is_told_in_numbers(
        shares in prop::collection::vec(-0.2..1.0_f64, 53),
        own in any::<bool>(),
        warm in any::<bool>(),
        imperial in any::<bool>(),
        width in 200.0..1200.0_f64,
    ) {
        let mut draft = board(&shares);
        if own {
            let full = Build::check(&draft).map(|build| build.full_pack_v());
            draft.set(Slot::Charger, "full_v", full.unwrap_or_default());
        }
        if warm {
            draft.set(Slot::Place, "charge_air_c", 15.0);
        }
        let build = Build::check(&draft).map_err(|e| TestCaseError::fail(format!("{e:?}")))?;
        let found = Found::of(&draft, build, Vec::new());
        prop_assert_eq!(found.offers.len(), 1);
        let units = if imperial { Units::Imperial } else { Units::Metric };
        let style = Style { units, comma: false };
        let with = With::default();
        let mut words = [answers::warning, answers::none_fits].map(|say| say(&found, &with, style)).concat();
        match &found.charges {
            Err(refused) => {
                let does = &found.offers[0].does;
                prop_assert_eq!((does.enough_s, does.full_s), (None, None));
                prop_assert_eq!(does.fit.refusal, Some(*refused));
                words.push_str(&format!("{:?}", answers::lead(&found, &with, style)));
                prop_assert!(!words.contains("min"), "{words}");
                match refused {
                    ChargeRefusal::WrongVolts { charger_v, pack_v, .. } => {
                        prop_assert!(!own && (charger_v - pack_v).abs() > 0.004 * pack_v);
                    }
                    ChargeRefusal::TooCold { cell_c, .. } => prop_assert!(!warm && *cell_c < 0.0),
                    ChargeRefusal::WrongPlug => prop_assert!(false, "no plug is given"),
                }
            }
            Ok(charges) => {
                prop_assert!(warm || build.charge_air_c() >= 0.0);
                let does = &found.offers[0].does;
                let own = (Some(charges.enough.time_s), Some(charges.full.time_s));
                prop_assert_eq!((does.enough_s, does.full_s), own);
                for say in [answers::lead, answers::enough, answers::leaving, answers::wall] {
                    words.push_str(&format!("{:?}", say(&found, &with, style)));
                }
                use answers::hint;
                for say in [
                    answers::plug_in,
                    answers::plug_in_for,
                    hint::goals,
                    hint::chargers,
                    hint::current,
                    hint::sure,
                    hint::cost,
                ] {
                    words.push_str(&say(&found, &with, style));
                }
                for curve in [&curve::CHARGE, &curve::CURRENT] {
                    words.push_str(&(curve.finding)(charges, style));
                    let drawing = (curve.draw)(charges, style, width);
                    prop_assert!(!drawing.marks.is_empty());
                    words.push_str(&format!("{drawing:?}"));
                    words.push_str(&format!("{:?}", (curve.table)(charges, style)));
                }
            }
        }
        prop_assert!(!words.contains("NaN") && !words.contains("inf"), "{words}");
    }
}
