//! Whatever the board, its drawings stay in their frames and its words are numbers.

use super::{belt, bench, concern, deck, frame, lean};
use crate::app::any_fit;
use crate::chart::Mark;
use crate::drawing::reach;
use crate::text::{Style, Units, fit as words};
use proptest::prelude::*;

fn inside(mark: &Mark, width: f64, height: f64) -> bool {
    reach(mark)
        .iter()
        .all(|(x, y)| (-0.06..=width + 0.06).contains(x) && (-0.06..=height + 0.06).contains(y))
}

proptest! {
    // A failure is told by its smallest case; no file is left in the tree.
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn every_board_is_drawn_within_its_frames(
        shares in prop::collection::vec(-0.2..1.0_f64, 97),
        imperial in any::<bool>(),
        width in 200.0..1200.0_f64,
    ) {
        let found = any_fit(&shares);
        let units = if imperial { Units::Imperial } else { Units::Metric };
        let style = Style { units, comma: false };
        for view in [&belt::SIDE, &frame::REAR, &deck::SIDE, &deck::PLAN] {
            let plan = (view.plan)(&found, style);
            for place in plan.shapes.iter().flat_map(|shape| &shape.points) {
                prop_assert!(place.0.is_finite() && place.1.is_finite());
            }
            let drawing = plan.draw(width);
            prop_assert!(!drawing.marks.is_empty());
            for mark in &drawing.marks {
                prop_assert!(inside(mark, drawing.width, drawing.height), "{mark:?}");
            }
            let told = [(view.finding)(&found, style), format!("{:?}", plan.rows())].concat();
            prop_assert!(!told.contains("NaN") && !told.contains("inf"), "{told}");
        }
        let hints = [
            belt::belts_hint,
            belt::tight_hint,
            bench::hint,
            frame::hint,
            deck::hint,
            lean::hint,
        ];
        let mut said: Vec<String> = hints.iter().map(|hint| hint(&found, style)).collect();
        prop_assert!(said.iter().all(|hint| !hint.is_empty()), "{said:?}");
        for misfit in &found.together.misfits {
            said.push(concern::said(&found, misfit, style));
            said.push(words::misfit_short(misfit, style));
        }
        prop_assert!(!said.iter().any(|t| t.contains("NaN") || t.contains("inf")), "{said:?}");
    }
}
