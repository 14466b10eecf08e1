//! What holds for every drawing to scale, whatever the numbers.

use super::*;
use crate::chart::Mark;
use proptest::prelude::*;

fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        6 => -1500.0..1500.0_f64,
        1 => any::<f64>(),
        1 => prop::sample::select(vec![0.0, f64::NAN, f64::INFINITY, f64::MIN, 1e-300]),
    ]
}

fn place() -> impl Strategy<Value = Place> {
    (number(), number())
}

fn shape() -> impl Strategy<Value = Shape> {
    let stroke = prop::collection::vec(place(), 0..6).prop_map(|p| Shape::stroke("d-part", p));
    let circle = (place(), number()).prop_map(|(at, r)| Shape::circle("d-part", at, r));
    let belt = (place(), number(), place(), number())
        .prop_map(|(a, ra, b, rb)| Shape::belt("d-belt", (a, ra), (b, rb)));
    prop_oneof![stroke, circle, belt]
}

fn dim() -> impl Strategy<Value = Dim> {
    ("[a-z ]{0,20}", "[0-9.]{0,8}", place(), place(), -60.0..60.0_f64, any::<bool>()).prop_map(
        |(name, value, from, to, aside, bad)| Dim {
            name,
            value,
            word: "here",
            from,
            to,
            aside,
            bad,
            assumed: bad,
        },
    )
}

fn plan() -> impl Strategy<Value = Plan> {
    let note = (place(), "[a-z ]{0,30}").prop_map(|(at, text)| Note { at, text });
    (
        prop::collection::vec(shape(), 0..5),
        prop::collection::vec(dim(), 0..6),
        prop::collection::vec(note, 0..4),
        prop::sample::select(vec![1.0, 25.4]),
        number(),
    )
        .prop_map(|(shapes, dims, notes, mm, height)| Plan {
            shapes,
            dims,
            notes,
            ruler: Ruler { mm, symbol: "mm" },
            height,
            nothing: "nothing here".into(),
        })
}

proptest! {
    // A failure is told by its smallest case; no file is left in the tree.
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn nothing_leaves_the_frame(plan in plan(), width in number()) {
        let drawing = plan.draw(width);
        prop_assert!(drawing.height > 0.0 && drawing.height <= 901.0);
        for mark in &drawing.marks {
            for (x, y) in reach(mark) {
                let inside = (-0.06..=drawing.width + 0.06).contains(&x)
                    && (-0.06..=drawing.height + 0.06).contains(&y);
                prop_assert!(inside, "{mark:?} outside {} by {}", drawing.width, drawing.height);
            }
        }
        prop_assert!(drawing.points.len() == plan.dims.len() || drawing.points.is_empty());
    }

    /// Twice the size is drawn the same, on another scale.
    #[test]
    fn a_drawing_is_to_scale(r in 10.0..100.0_f64, apart in 150.0..500.0_f64) {
        let at = |k: f64| Plan {
            shapes: vec![
                Shape::circle("d-part", (0.0, 0.0), k * r),
                Shape::circle("d-part", (k * apart, 0.0), k * r),
            ],
            dims: Vec::new(),
            notes: Vec::new(),
            ruler: Ruler { mm: 1.0, symbol: "mm" },
            height: 400.0,
            nothing: String::new(),
        };
        let paths = |k: f64| {
            let marks = at(k).draw(360.0).marks;
            marks.iter().filter(|m| m.class() == "d-part").map(Mark::outline).collect::<Vec<_>>()
        };
        prop_assert_eq!(paths(1.0), paths(2.0));
    }
}
