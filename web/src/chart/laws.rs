//! What holds for every drawing, whatever the numbers.

use super::*;
use proptest::prelude::*;

/// Any number at all, with the everyday ones and the awkward ones more often.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => -100.0..100.0_f64,
        2 => any::<f64>(),
        1 => prop::sample::select(vec![
            0.0, -0.0, 1e-300, 1e300, f64::MAX, f64::MIN, f64::NAN, f64::INFINITY, f64::NEG_INFINITY,
        ]),
    ]
}

fn word() -> impl Strategy<Value = String> {
    prop_oneof!["[a-zA-Z0-9 ,.%/&<]{0,24}", "\\PC{0,12}"]
}

fn axis() -> impl Strategy<Value = Axis<'static>> {
    let range = prop::option::of((number(), number()));
    (word(), range, any::<bool>()).prop_map(|(title, range, zero)| Axis {
        title,
        range,
        zero,
        ..Axis::default()
    })
}

fn series() -> impl Strategy<Value = Series> {
    let point = (number(), prop::option::weighted(0.9, number()));
    let region = (number(), number(), 0_usize..9, word())
        .prop_map(|(from, to, kind, name)| Region { from, to, kind, name });
    let span = (number(), number(), number());
    (
        word(),
        prop::collection::vec(point, 0..8),
        prop::collection::vec(span, 0..5),
        prop::collection::vec(region, 0..4),
    )
        .prop_map(|(name, points, band, regions)| Series { name, points, band, regions })
}

fn curves() -> impl Strategy<Value = Curves<'static>> {
    let note =
        (number(), prop::option::of(number()), word()).prop_map(|(x, y, text)| Note { x, y, text });
    (
        (axis(), axis()),
        prop::collection::vec(series(), 0..6),
        prop::collection::vec(note, 0..3),
        prop::collection::vec((number(), word()), 0..4),
        word(),
        number(),
    )
        .prop_map(|((x, y), series, notes, readout, nothing, height)| Curves {
            x,
            y,
            series,
            notes,
            readout,
            nothing,
            height,
        })
}

fn map() -> impl Strategy<Value = Map> {
    let cell = (prop::option::of(number()), word(), word())
        .prop_map(|(value, text, readout)| Cell { value, text, readout });
    (
        (word(), word(), word(), word(), word()),
        prop::collection::vec(word(), 0..6),
        prop::collection::vec(word(), 0..30),
        prop::collection::vec(prop::collection::vec(cell, 0..8), 0..7),
        prop::option::of((0_usize..7, 0_usize..31)),
    )
        .prop_map(|(words, rows, cols, cells, selected)| Map {
            row_title: words.0,
            col_title: words.1,
            rows,
            cols,
            cells,
            selected,
            key: words.2,
            not_possible: words.3,
            nothing: words.4,
        })
}

fn bars() -> impl Strategy<Value = Bars> {
    let bar = (word(), prop::collection::vec(number(), 0..7), word(), word())
        .prop_map(|(name, values, text, readout)| Bar { name, values, text, readout });
    (
        prop::collection::vec(bar, 0..5),
        prop::collection::vec(word(), 0..7),
        prop::option::of((number(), word()).prop_map(|(at, name)| Limit { at, name })),
        prop::option::of(number()),
        word(),
    )
        .prop_map(|(bars, parts, limit, most, nothing)| Bars {
            bars,
            parts,
            signs: vec!["↓"],
            limit,
            most,
            nothing,
        })
}

/// The places a path goes to. Arcs are left to the circle's own centre and
/// radius.
fn places(d: &str) -> Vec<(f64, f64)> {
    let numbers: Vec<f64> = d
        .split(|c: char| c.is_ascii_alphabetic() || c == ' ')
        .filter(|part| !part.is_empty())
        .map(|part| part.parse().expect("a number in a path"))
        .collect();
    assert_eq!(numbers.len() % 2, 0, "{d}");
    numbers.chunks(2).map(|pair| (pair[0], pair[1])).collect()
}

/// No mark leaves the drawing by more than the rounding of its coordinates,
/// and every number is one.
fn check(drawing: &Drawing) -> Result<(), TestCaseError> {
    let Drawing { width, height, .. } = *drawing;
    prop_assert!(width.is_finite() && height.is_finite());
    prop_assert!((200.0..=2000.0).contains(&width) && height > 0.0);
    let inside = |x: f64, y: f64| {
        let slack = 0.051;
        x >= -slack && x <= width + slack && y >= -slack && y <= height + slack
    };
    let all = drawing.points.iter().enumerate();
    let cursors = all.flat_map(|(n, _)| shown(drawing, n));
    for mark in drawing.marks.iter().cloned().chain(cursors) {
        let held = match &mark {
            Mark::Text { x, y, anchor, text, .. } => {
                let size = text_width(text);
                let left = match anchor {
                    Anchor::Start => *x,
                    Anchor::Middle => x - size / 2.0,
                    Anchor::End => x - size,
                };
                inside(left, y - 9.0) && inside(left + size, y + 3.0)
            }
            Mark::Circle { x, y, r, .. } => {
                // A point on the edge of its plot may reach out of the plot,
                // not out of the drawing.
                inside(x - r, y - r) && inside(x + r, y + r)
            }
            shape => places(&shape.outline()).iter().all(|(x, y)| inside(*x, *y)),
        };
        prop_assert!(held, "{mark:?} outside {width} by {height}");
    }
    prop_assert!(drawing.points.is_empty() || drawing.home < drawing.points.len());
    for key in ["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown", "Home", "End"] {
        for at in [None, Some(0), Some(drawing.points.len())] {
            let to = moved(drawing, at, key);
            prop_assert_eq!(to.is_some(), !drawing.points.is_empty());
            prop_assert!(to.is_none_or(|to| to < drawing.points.len()));
        }
    }
    Ok(())
}

proptest! {
    // A failure is told by its smallest case; no file is left in the tree.
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn curves_stay_in_their_frame(chart in curves(), width in number()) {
        check(&chart.draw(width))?;
    }

    #[test]
    fn maps_stay_in_their_frame(chart in map(), width in number()) {
        check(&chart.draw(width))?;
    }

    #[test]
    fn bars_stay_in_their_frame(chart in bars(), width in number()) {
        check(&chart.draw(width))?;
    }
}

/// All the words of a drawing, one after the other.
fn words(drawing: &Drawing) -> String {
    let text = |mark: &Mark| match mark {
        Mark::Text { text, .. } => Some(text.clone()),
        _ => None,
    };
    drawing.marks.iter().filter_map(text).collect::<Vec<_>>().join(" ")
}

#[test]
fn nothing_to_draw_is_said_in_words() {
    let why = "Nothing to draw until the pack is known";
    let unknown = Series {
        name: "Gannet".into(),
        points: vec![(1.0, None), (2.0, Some(f64::NAN))],
        band: vec![(1.0, 2.0, 3.0)],
        ..Series::default()
    };
    let drawings = [
        Curves { series: vec![unknown], nothing: why.into(), ..Curves::default() }.draw(240.0),
        Map { nothing: why.into(), ..Map::default() }.draw(240.0),
        Bars { nothing: why.into(), ..Bars::default() }.draw(240.0),
    ];
    for drawing in drawings {
        assert_eq!(words(&drawing), why);
        assert!(drawing.points.is_empty());
    }
}

#[test]
fn a_single_point_is_drawn_with_its_name() {
    let chart = Curves {
        series: vec![Series {
            name: "Kittiwake".into(),
            points: vec![(25.0, Some(20.0))],
            ..Series::default()
        }],
        readout: vec![(25.0, "20 km".into())],
        ..Curves::default()
    };
    let drawing = chart.draw(360.0);
    assert!(words(&drawing).contains("Kittiwake"));
    assert!(drawing.marks.iter().any(|m| m.class() == "c-line s1"));
    assert_eq!(drawing.points.len(), 1);
    assert_eq!(drawing.points[0].ys.len(), 1);
}

#[test]
fn only_four_series_are_drawn() {
    let one = |n: i32| Series {
        name: format!("build {n}"),
        points: vec![(0.0, Some(f64::from(n))), (9.0, Some(f64::from(n)))],
        ..Series::default()
    };
    let chart = Curves { series: (1..=6).map(one).collect(), ..Curves::default() };
    let words = words(&chart.draw(600.0));
    assert!(words.contains("build 4") && !words.contains("build 5"));
}
