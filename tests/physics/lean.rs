//! Lean and steer, and where deck and tyre meet.

use crate::check::{Check, check, halve, holds};
use pitchline_core::fit::{FrameHeadline, WheelAt, frame_working, lean, turn};
use pitchline_core::physics::lean::{ClearCorner, ClearTread, SteerFront, SteerRear};
use pitchline_core::{Build, Draft, Slot};
use std::collections::BTreeSet;

const HUBBARD: &str = "Hubbard 1979-80: tan(steer) = tan(pivot angle) sin(lean)";
const LIMIT: &str = "Hubbard 1979-80 at 45°: the steer is the arc tangent of the lean's sine";
const TURNED: &str = "rotation of the axle about its pivot until it is level again, by halving";
const AXLES: &str = "where the lines of both axles cross, from their directions";
const HALF: &str = "by hand: half the wheelbase over the tangent of the steer";
const SCAN: &str = "the deck turned in steps of a thousandth of a degree until it touches";
const REASON: &str = "by reason: no lean no steer, and a level pivot never steers";
const PRACTICE: &str =
    "common practice, no source: 70 and a quarter of the mass in kg, 100 at most";

/// Steer by turning the axle about the pivot in the leaning deck until it is level.
fn by_turning(pivot: f64, lean: f64) -> f64 {
    let (pivot, lean) = (f64::to_radians(pivot), f64::to_radians(lean));
    let axle = |turn: f64| {
        // In the deck: across, turned about an axis that rises by the pivot's angle.
        let [x, y, z] = [-pivot.sin() * turn.sin(), turn.cos(), pivot.cos() * turn.sin()];
        // The deck leans about the road's length.
        [x, lean.cos() * y - lean.sin() * z, lean.sin() * y + lean.cos() * z]
    };
    let turn = halve(-1.57, 1.57, |turn| axle(turn)[2]);
    (axle(turn)[0] / axle(turn)[1]).atan().to_degrees()
}

fn steers() -> Vec<Check> {
    let mut list = vec![
        check("no lean", SteerFront { pivot: 50.0, lean: 0.0 }.value(), 0.0, 0.0, REASON),
        check("level pivot", SteerFront { pivot: 0.0, lean: 20.0 }.value(), 0.0, 0.0, REASON),
        // Half is the sine of 30°, and the arc tangent of a half is printed.
        check(
            "45° at 30°",
            SteerFront { pivot: 45.0, lean: 30.0 }.value(),
            26.565_051_177,
            1e-9,
            LIMIT,
        ),
    ];
    for (pivot, lean) in [(45.0, 10.0), (50.0, 18.0), (35.0, 25.0), (62.0, 7.0), (25.0, -15.0)] {
        let want = f64::to_radians(pivot).tan() * f64::to_radians(lean).sin();
        let got = SteerRear { pivot, lean }.value();
        let name = format!("pivot of {pivot}° at {lean}°");
        list.push(check(name.clone(), got, want.atan().to_degrees(), 1e-12, HUBBARD));
        let turned = by_turning(pivot, lean);
        list.push(check(name + ", turned", got, turned, 1e-9, TURNED));
    }
    list
}

fn board(changes: &[(Slot, &str, f64)]) -> (Draft, Build) {
    let mut draft = Draft::typical();
    for (slot, key, value) in changes {
        draft.set(*slot, key, *value);
    }
    let build = Build::check(&draft).expect("in range");
    (draft, build)
}

/// Distance from the line between the axles to where the axles' lines cross.
fn by_crossing(base: f64, front: f64, rear: f64) -> f64 {
    let (front, rear) = (f64::to_radians(front), f64::to_radians(rear));
    // From (0, 0) along (sin rear, cos rear) and from (base, 0) along (-sin front, cos front).
    let along = base * front.cos() / (rear.sin() * front.cos() + rear.cos() * front.sin());
    along * rear.cos()
}

fn turns() -> Vec<Check> {
    let mut list = Vec::new();
    for (front, rear, lean) in [(45.0, 45.0, 30.0), (60.0, 30.0, 30.0), (50.0, 25.0, 12.0)] {
        let (_, build) = board(&[
            (Slot::Deck, "wheelbase_mm", 720.0),
            (Slot::Truck, "pivot_front_deg", front),
            (Slot::Truck, "pivot_rear_deg", rear),
        ]);
        let found = turn(&build, lean);
        let want = by_crossing(0.72, found.steer_front_deg, found.steer_rear_deg);
        let got = found.radius_m.expect("it steers");
        list.push(check(format!("turn of {front}° and {rear}°"), got, want, 1e-12, AXLES));
        if front == 45.0 {
            list.push(check("turn of two alike", got, 0.36 / 0.5, 1e-12, HALF));
        }
        assert_eq!(turn(&build, 0.0).radius_m, None, "no lean, no turn");
    }
    list
}

/// The first lean, degrees, at which deck and either tyre touch, or none up to
/// 60°: a corner of the one within the other. `tyre` is inner and outer flank and radius.
fn by_scanning(half: f64, height: f64, thickness: f64, tyre: [f64; 3]) -> Option<f64> {
    let [inner, outer, radius] = tyre;
    (0..60_000).map(|step| f64::from(step) * 1e-3).find(|degrees| {
        let (sine, cosine) = degrees.to_radians().sin_cos();
        let deck_in = |x: f64, z: f64| {
            // On the road's axes.
            let (across, up) = (x * cosine + z * sine, z * cosine - x * sine);
            (inner..=outer).contains(&across.abs()) && up.abs() <= radius
        };
        let tyre_in = |y: f64, z: f64| {
            // On the deck's axes.
            let (across, up) = (y * cosine - z * sine, y * sine + z * cosine);
            across.abs() <= half && (height..=height + thickness).contains(&up)
        };
        [half, -half].iter().any(|x| deck_in(*x, height) || deck_in(*x, height + thickness))
            || [inner, outer, -inner, -outer]
                .iter()
                .any(|y| tyre_in(*y, radius) || tyre_in(*y, -radius))
    })
}

fn bites() -> Vec<Check> {
    let mut list = Vec::new();
    let (mut laws, mut nearer) = (BTreeSet::new(), BTreeSet::new());
    // Deck's width, truck, riser, wheel's diameter and width; hanger 184, belt 15.
    for (deck, truck, riser, wheel, width) in [
        (150.0, 66.0, 15.0, 97.0, 52.0),
        (150.0, 66.0, 15.0, 107.0, 52.0),
        (230.0, 60.0, 6.0, 97.0, 52.0),
        (230.0, 60.0, 20.0, 97.0, 52.0),
        (400.0, 66.0, 20.0, 90.0, 40.0),
        (380.0, 50.0, 10.0, 80.0, 30.0),
        (150.0, 66.0, 15.0, 200.0, 56.0),
        (120.0, 60.0, 0.0, 150.0, 50.0),
        (120.0, 20.0, -40.0, 150.0, 50.0),
        (60.0, 20.0, 0.0, 97.0, 52.0),
        (140.0, 66.0, 15.0, 120.0, 52.0),
        (156.0, 66.0, 15.0, 97.0, 52.0),
        (180.0, 10.0, -60.0, 88.0, 52.0),
    ] {
        let (draft, build) = board(&[
            (Slot::Deck, "width_mm", deck),
            (Slot::Deck, "riser_mm", riser),
            (Slot::Deck, "thickness_mm", 13.0),
            (Slot::Truck, "height_mm", truck),
            (Slot::Truck, "hanger_width_mm", 184.0),
            (Slot::Wheel, "diameter_mm", wheel),
            (Slot::Wheel, "width_mm", width),
            (Slot::Belt, "width_mm", 15.0),
        ]);
        let found = lean(&draft, &build);
        let mut first = 60.0_f64;
        for (at, inner, got) in [
            (WheelAt::Front, 93.0, found.bite_front_deg),
            // A pulley of 15 mm and two flanges of 1.5 mm is beside it.
            (WheelAt::Rear, 111.0, found.bite_rear_deg),
        ] {
            let (half, height, radius) = (deck / 2.0, truck + riser, wheel / 2.0);
            let want = by_scanning(half, height, 13.0, [inner, inner + width, radius]);
            let name = format!("{at:?} bite of {deck} on {truck} and {riser} with {wheel}");
            let at_most = |lean: Option<f64>| lean.filter(|lean| *lean < 60.0).unwrap_or(60.0);
            list.push(check(name, at_most(got), at_most(want), 2e-3, SCAN));
            first = first.min(at_most(want));
            let steps = frame_working(&draft, &build, 0.07, FrameHeadline::Bite(at));
            laws.extend(steps.last().map(|step| step.formula.name));
        }
        // The working of the wheel that is met first ends at that lean.
        if first < 60.0 {
            let steps = frame_working(&draft, &build, 0.07, FrameHeadline::FirstBite);
            let got = steps.last().map_or(f64::NAN, |step| step.result);
            let name = format!("first bite of {deck} on {truck} and {riser} with {wheel}");
            list.push(check(name, got, first, 2e-3, SCAN));
            nearer.extend(found.first_bite().map(|(at, _)| at == WheelAt::Front));
        }
    }
    // On the tread, the flank, the inner corner and the outer; and never at all.
    assert_eq!(laws.len(), 5, "{laws:?}");
    assert_eq!(nearer.len(), 2, "front and rear come first somewhere");
    list
}

fn risers() -> Vec<Check> {
    // At 30° the sine is a half: (100 + 160 / 2) / √3 mm over 160 mm; and the
    // corner of a tyre 150 mm out: 150 / 2 + 50 √3 / 2.
    let root = 3.0_f64.sqrt();
    let mut list = vec![
        check(
            "clear of the tread",
            ClearTread { wheel: 100.0, deck: 160.0, lean: 30.0 }.value(),
            180.0 / root,
            1e-9,
            SCAN,
        ),
        check(
            "clear of the corner",
            ClearCorner { outer: 150.0, wheel: 100.0, lean: 30.0 }.value(),
            75.0 + 25.0 * root,
            1e-9,
            SCAN,
        ),
        // 3, 4, 5: beyond the angle of the corner the height stays.
        check(
            "clear of any lean",
            ClearCorner { outer: 30.0, wheel: 80.0, lean: 60.0 }.value(),
            50.0,
            1e-12,
            SCAN,
        ),
    ];
    // What is left of the riser, up to 18°: 150 mm over 107 mm tread comes down on
    // it, 80.622 mm up; a deck of 120 mm between tyres of 150 mm swings out to their
    // flanks, where its edge is higher.
    let (sine, cosine) = f64::to_radians(18.0).sin_cos();
    let left = |deck: f64, wheel: f64, riser: f64| {
        let (draft, build) = board(&[
            (Slot::Deck, "width_mm", deck),
            (Slot::Deck, "riser_mm", riser),
            (Slot::Deck, "thickness_mm", 13.0),
            (Slot::Truck, "height_mm", 66.0),
            (Slot::Truck, "max_lean_deg", 18.0),
            (Slot::Truck, "hanger_width_mm", 184.0),
            (Slot::Wheel, "diameter_mm", wheel),
            (Slot::Wheel, "width_mm", 52.0),
            (Slot::Belt, "width_mm", 15.0),
        ]);
        let found = lean(&draft, &build);
        assert!(found.left_m.is_none() || !found.bites, "{found:?}");
        found.left_m.map(|left| 1000.0 * left)
    };
    let spare = 81.0 - (53.5 + 75.0 * sine) / cosine;
    let got = left(150.0, 107.0, 15.0).unwrap_or(f64::NAN);
    list.push(check("left of a riser over the tread", got, spare, 5e-6, SCAN));
    // The front flank is 93 mm out: 60 cos + reach sin; the reach is riser, 66 and 13 mm.
    let meets = (93.0 - 60.0 * cosine) / sine - 79.0;
    let got = left(120.0, 300.0, meets - 1.25).unwrap_or(f64::NAN);
    list.push(check("left of a riser by the flank", got, 1.25, 5e-6, SCAN));
    for (deck, wheel, riser) in [
        (150.0, 107.0, 15.0 - spare + 2.01),
        (150.0, 107.0, 15.0 - spare - 0.01),
        (120.0, 300.0, meets - 2.01),
        (120.0, 300.0, meets + 0.01),
    ] {
        let none = left(deck, wheel, riser).is_none();
        list.push(holds(format!("nothing told of {riser} mm under {deck} mm"), none, SCAN));
    }
    for (mass, shore) in [(78.0, 90.5), (20.0, 76.0), (180.0, 100.0)] {
        let (draft, build) =
            board(&[(Slot::Rider, "mass_kg", mass), (Slot::Rider, "gear_mass_kg", 4.0)]);
        let got = lean(&draft, &build).bushing_shore_a;
        list.push(check(format!("bushings for {mass} kg"), got, shore, 1e-12, PRACTICE));
    }
    list
}

pub(crate) fn checks() -> Vec<Check> {
    [steers(), turns(), bites(), risers()].concat()
}
