//! Whatever the board, its drawing stays in its frame, to scale, and every part can be tapped.

use super::board::Shown;
use crate::app::{Fit, any_fit, fit_of, kits};
use crate::chart::{Mark, text_width};
use crate::drawing::{Area, BoardDrawing, PARTS, reach};
use crate::text::{Style, Units};
use pitchline_core::{Draft, Slot};
use proptest::prelude::*;

type Place = (f64, f64);

/// Half of what rounding to tenths may move a place, and a hair.
const HAIR: f64 = 0.08;

fn style(imperial: bool) -> Style {
    let units = if imperial { Units::Imperial } else { Units::Metric };
    Style { units, comma: false }
}

fn draw(fit: &Fit, width: f64) -> BoardDrawing {
    Shown::of(fit, Style::default()).side.draw(width)
}

fn part(drawing: &BoardDrawing, slot: Slot) -> &[Mark] {
    let found = drawing.parts.iter().find(|(of, _)| *of == slot);
    &found.expect("every part is drawn").1
}

fn area(drawing: &BoardDrawing, slot: Slot) -> Area {
    drawing.areas[PARTS.iter().position(|of| *of == slot).expect("every part can be tapped")]
}

/// Middle and radius of the circles among marks.
fn circles(marks: &[Mark], class: &str) -> Vec<(Place, f64)> {
    let circle = |mark: &Mark| match mark {
        Mark::Circle { class: of, x, y, r } if *of == class => Some(((*x, *y), *r)),
        _ => None,
    };
    marks.iter().filter_map(circle).collect()
}

/// Left, right, top and bottom of what marks reach.
fn bounds(marks: &[Mark]) -> [f64; 4] {
    let far = |[left, right, top, bottom]: [f64; 4], (x, y): Place| {
        [left.min(x), right.max(x), top.min(y), bottom.max(y)]
    };
    let none = [f64::MAX, f64::MIN, f64::MAX, f64::MIN];
    marks.iter().flat_map(corners).fold(none, far)
}

/// Where a mark reaches: of a circle its edges.
fn corners(mark: &Mark) -> Vec<Place> {
    match mark {
        Mark::Circle { x, y, r, .. } => vec![(x - r, y - r), (x + r, y + r)],
        Mark::Path { class: "b-cell", .. } => Vec::new(),
        other => reach(other),
    }
}

fn words(drawing: &BoardDrawing) -> Vec<(f64, f64, String)> {
    let text = |mark: &Mark| match mark {
        Mark::Text { x, text, .. } => Some((*x, x + text_width(text), text.clone())),
        _ => None,
    };
    drawing.rest.iter().filter_map(text).collect()
}

fn apart(a: Area, b: Area) -> bool {
    a.x + a.width <= b.x + 1e-9
        || b.x + b.width <= a.x + 1e-9
        || a.y + a.height <= b.y + 1e-9
        || b.y + b.height <= a.y + 1e-9
}

fn has(area: Area, (x, y): Place) -> bool {
    (area.x..=area.x + area.width).contains(&x) && (area.y..=area.y + area.height).contains(&y)
}

/// Distance of a place from the straight line through two others.
fn off((x, y): Place, (a, b): (Place, Place)) -> f64 {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    ((x - a.0) * dy - (y - a.1) * dx).abs() / dx.hypot(dy)
}

proptest! {
    // A failure is told by its smallest case; no file is left in the tree.
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn every_board_is_drawn_whole(
        shares in prop::collection::vec(-0.2..1.0_f64, 97),
        width in 200.0..1400.0_f64,
        imperial in any::<bool>(),
    ) {
        let fit = any_fit(&shares);
        let shown = Shown::of(&fit, style(imperial));
        let drawing = shown.side.draw(width);
        prop_assert!((240.0..=1200.0).contains(&drawing.width) && drawing.height <= 380.0);
        let all = drawing.parts.iter().flat_map(|(_, marks)| marks).chain(&drawing.rest);
        for mark in all {
            for (x, y) in corners(mark) {
                let inside = (-HAIR..=drawing.width + HAIR).contains(&x)
                    && (-HAIR..=drawing.height + HAIR).contains(&y);
                prop_assert!(inside, "{mark:?} leaves {} by {}", drawing.width, drawing.height);
            }
        }
        // Words stand side by side; the gearing is always there.
        let words = words(&drawing);
        prop_assert!(words.windows(2).all(|two| two[0].1 < two[1].0), "{words:?}");
        prop_assert!(words.first().is_some_and(|(_, _, text)| text.contains('/')), "{words:?}");
        let said = [shown.finding, shown.names.concat(), format!("{words:?}")].concat();
        prop_assert!(!said.contains("NaN") && !said.contains("inf"), "{said}");
    }

    #[test]
    fn every_part_has_room_of_its_own(
        shares in prop::collection::vec(-0.2..1.0_f64, 97),
        width in 200.0..1400.0_f64,
    ) {
        let drawing = draw(&any_fit(&shares), width);
        for (n, (slot, area)) in PARTS.iter().zip(&drawing.areas).enumerate() {
            prop_assert!(area.width >= 44.0 - 1e-9 && area.height >= 44.0 - 1e-9, "{slot:?} {area:?}");
            prop_assert!(area.x >= 0.0 && area.x + area.width <= drawing.width + 1e-9);
            prop_assert!(area.y >= 0.0 && area.y + area.height <= drawing.height + 1e-9);
            for (other, over) in PARTS.iter().zip(&drawing.areas).skip(n + 1) {
                prop_assert!(apart(*area, *over), "{slot:?} {area:?} and {other:?} {over:?}");
            }
        }
    }

    #[test]
    fn the_board_is_to_scale(
        shares in prop::collection::vec(-0.2..1.0_f64, 97),
        width in 300.0..1200.0_f64,
    ) {
        let fit = any_fit(&shares);
        let drawing = draw(&fit, width);
        let axles = circles(part(&drawing, Slot::Wheel), "b-axle");
        let cores = circles(part(&drawing, Slot::Wheel), "b-core");
        let [(rear, bore), (front, _)] = axles[..] else { panic!("two axles") };
        let base = front.0 - rear.0;
        let size = |m: f64| m * base / fit.build.deck.wheelbase_m;
        // A bore of 8 mm, as ISO 15 has it for a bearing 608.
        prop_assert!((bore - size(0.004)).abs() < 1e-6);
        prop_assert!((cores[0].1 * 2.0 - size(fit.together.layout.core_m)).abs() < 1e-6);
        let wheels = part(&drawing, Slot::Wheel);
        let [left, right, _, bottom] = bounds(wheels);
        let wheel = size(fit.build.wheel.diameter_m);
        // Drawn in chords of five degrees.
        prop_assert!((right - left - base - wheel).abs() < 2.0 * HAIR + 0.001 * wheel);
        // They stand on the road, and no wheel stands lower.
        prop_assert!((bottom - drawing.ground).abs() < HAIR, "{bottom} {}", drawing.ground);
        let up = drawing.ground - rear.1;
        prop_assert!((up - size(fit.build.wheel.radius_m())).abs() < 1e-6);
        let can = circles(part(&drawing, Slot::Motor), "b-can");
        prop_assert!((can[0].1 * 2.0 - size(fit.build.motor.can_diameter_m)).abs() < 1e-6);
        // From shaft to axle as the core has it.
        let shaft = can[0].0;
        let centre = (shaft.0 - rear.0).hypot(shaft.1 - rear.1);
        prop_assert!((centre - size(fit.together.centre_m)).abs() < 1e-6);
    }

    /// Its two straight spans touch both pitch circles, and nothing of it is within one.
    #[test]
    fn the_belt_is_tangent_to_both_pulleys(
        shares in prop::collection::vec(-0.2..1.0_f64, 97),
        width in 300.0..1200.0_f64,
    ) {
        let fit = any_fit(&shares);
        let drawing = draw(&fit, width);
        let rear = circles(part(&drawing, Slot::Wheel), "b-axle")[0].0;
        let shaft = circles(part(&drawing, Slot::Motor), "b-can")[0].0;
        let centre = (shaft.0 - rear.0).hypot(shaft.1 - rear.1);
        let scale = centre / fit.together.centre_m;
        let [small, large] = fit.together.belt.pulleys.map(|p| p.pitch_diameter_m * scale / 2.0);
        let belt = reach(&part(&drawing, Slot::Belt)[0]);
        // Where one pulley stands within the other there is none.
        prop_assert_eq!(belt.is_empty(), centre <= (large - small).abs());
        for place in &belt {
            let from = |at: Place, r: f64| (place.0 - at.0).hypot(place.1 - at.1) - r;
            let (a, b) = (from(rear, large), from(shaft, small));
            prop_assert!(a > -2.0 * HAIR && b > -2.0 * HAIR, "{place:?} {a} {b}");
            prop_assert!(a.min(b) < 2.0 * HAIR, "{place:?} {a} {b}");
        }
        let ends = belt.iter().zip(belt.iter().cycle().skip(1));
        let on = |place: &Place, at: Place, r: f64| {
            ((place.0 - at.0).hypot(place.1 - at.1) - r).abs() < 2.0 * HAIR
        };
        let far = |a: &Place, b: &Place| (a.0 - b.0).hypot(a.1 - b.1) > 12.0;
        // Short spans are lost in the rounding.
        for (a, b) in ends.filter(|(a, b)| far(a, b) && (on(a, rear, large) != on(b, rear, large))) {
            let tangent = |at: Place, r: f64| (off(at, (*a, *b)) - r).abs() < 0.4;
            prop_assert!(tangent(rear, large) && tangent(shaft, small), "{a:?} {b:?}");
        }
    }
}

/// A finger that meets a part's middle meets the part.
#[test]
fn each_part_is_tapped_where_it_is_drawn() {
    for (fit, width) in kits().iter().flat_map(|fit| [340.0, 358.0, 700.0].map(|w| (fit, w))) {
        let drawing = draw(fit, width);
        let middle = |slot: Slot| {
            let [left, right, top, bottom] = bounds(part(&drawing, slot));
            ((left + right) / 2.0, (top + bottom) / 2.0)
        };
        for slot in [Slot::WheelPulley, Slot::MotorPulley, Slot::Controller] {
            assert!(has(area(&drawing, slot), middle(slot)), "{slot:?} at {width}");
        }
        let front = circles(part(&drawing, Slot::Wheel), "b-axle")[1].0;
        assert!(has(area(&drawing, Slot::Wheel), front), "wheel at {width}");
        let ((x, y), r) = circles(part(&drawing, Slot::Motor), "b-can")[0];
        assert!(has(area(&drawing, Slot::Motor), (x, y - 0.9 * r)), "motor at {width}");
        let (x, y) = middle(Slot::Pack);
        assert!(has(area(&drawing, Slot::Cell), (x, y)), "cells at {width}");
    }
}

/// A tooth for each tooth, a bar for each group in series.
#[test]
fn what_can_be_told_apart_is_drawn_one_by_one() {
    for fit in kits() {
        let drawing = draw(&fit, 900.0);
        for (slot, teeth) in [
            (Slot::MotorPulley, fit.build.motor_pulley.teeth),
            (Slot::WheelPulley, fit.build.wheel_pulley.teeth),
        ] {
            let corners = reach(&part(&drawing, slot)[0]).len();
            assert_eq!(corners as f64, 4.0 * teeth, "{slot:?}");
        }
        for width in [350.0, 900.0] {
            let drawing = draw(&fit, width);
            let cells = part(&drawing, Slot::Cell)[0].outline();
            assert_eq!(cells.matches('M').count() as f64, fit.build.pack.series);
        }
    }
}

/// Sizes that nobody entered are drawn as usual, and said to be assumed.
#[test]
fn what_is_assumed_is_said() {
    let shown = |draft: Draft| Shown::of(&fit_of(draft), Style::default());
    let mut bare = Draft::typical();
    for key in ["box_length_mm", "box_height_mm", "box_wall_mm"] {
        let index = Slot::Deck.kind().field_index(key).expect("a row of the deck");
        bare.set_value(Slot::Deck, index, None);
    }
    let (bare, whole) = (shown(bare), shown(Draft::typical()));
    assert_eq!(bare.side, whole.side);
    assert!(bare.finding.contains("Some sizes are assumed: deck"), "{}", bare.finding);
    assert!(bare.names[0].ends_with("sizes assumed"), "{}", bare.names[0]);
    assert!(!whole.names[0].contains("assumed"), "{}", whole.names[0]);
}

#[test]
fn parts_are_named_by_what_they_are() {
    let kittiwake = kits().remove(0);
    let shown = Shown::of(&kittiwake, Style::default());
    assert_eq!(shown.names[4], "Motor pulley: 17\u{a0}teeth");
    assert!(shown.names[2].starts_with("Wheel: Shingle 100, 100\u{a0}mm"), "{}", shown.names[2]);
    let drawing = shown.side.draw(358.0);
    let words: Vec<_> = words(&drawing).into_iter().map(|(_, _, text)| text).collect();
    // 12 · 3 · 4 Ah · 3.6 V = 518.4 Wh.
    assert_eq!(words, ["17/46, 12\u{a0}mm belt", "12S3P, 518\u{a0}Wh", "100\u{a0}mm"]);
}
