//! Room around pulleys, belt and motors, and the deck under its rider.

use crate::check::{Check, check, halve};
use pitchline_core::fit::{Between, SagFrom, clearances, deck_fit, layout};
use pitchline_core::physics::air::G;
use pitchline_core::physics::deck::{BreakOver, BumpSag, DeckSag};
use pitchline_core::physics::frame::{BEARING_608_M, HubWidth, MotorWheel};
use pitchline_core::{Build, Draft, Slot};

const BEARING: &str = "ISO 15 and bearing makers' tables: 608 is 8 x 22 x 7 mm";
const BEAM: &str = "beam tables: 23 P L^3 / 648 EI at third points, 11 P L^3 / 384 EI at quarters";
const VIRTUAL: &str = "virtual work: the integral of M m / EI by the trapezoidal rule";
const SWING: &str = "equation of motion m x'' = m g - k x, in small steps from the fall's speed";
const CREST: &str = "wheels set on two ramps: their middles lie r from both planes";
const TANGENT: &str = "tangents from the crest to both wheels, found by halving";
const BY_HAND: &str = "added up by hand from the sizes and the allowances named in frame.rs";

/// Deflection in the middle by virtual work: M of the two loads, m of a unit load there.
fn by_virtual_work(mass: f64, foot: f64, base: f64, stiffness: f64) -> f64 {
    let load = 0.5 * mass * G;
    let moment = |x: f64| load * x.min(foot).min(base - x);
    let unit = |x: f64| 0.5 * x.min(base - x);
    let steps = 200_000;
    let step = base / f64::from(steps);
    let inside: f64 = (1..steps).map(|i| f64::from(i) * step).map(|x| moment(x) * unit(x)).sum();
    // Both moments are nothing at the ends.
    inside * step / stiffness
}

/// Greatest deflection of a mass that meets its spring's standing sag at the
/// speed of a fall, by the midpoint rule.
fn by_swing(sag: f64, fall: f64) -> f64 {
    let (mut x, mut v, step) = (sag, (2.0 * G * fall).sqrt(), 1e-6);
    let pull = |x: f64| G - G / sag * x;
    let mut most = x;
    while v > 0.0 {
        let (half_x, half_v) = (x + 0.5 * step * v, v + 0.5 * step * pull(x));
        (x, v) = (x + step * half_v, v + step * pull(half_x));
        most = most.max(x);
    }
    most
}

fn beams() -> Vec<Check> {
    let (mass, base, stiffness) = (80.0, 0.72, 400.0);
    let load = 0.5 * mass * G;
    let cube = load * base * base * base / stiffness;
    let thirds = DeckSag { mass, foot: base / 3.0, base, stiffness }.value();
    let quarters = DeckSag { mass, foot: base / 4.0, base, stiffness }.value();
    let mut list = vec![
        check("sag, feet at the thirds", thirds, 23.0 / 648.0 * cube, 1e-15, BEAM),
        check("sag, feet at the quarters", quarters, 11.0 / 384.0 * cube, 1e-15, BEAM),
        check(
            "sag, feet over the axles",
            DeckSag { mass, foot: 0.0, base, stiffness }.value(),
            0.0,
            0.0,
            BEAM,
        ),
    ];
    for (mass, foot, base, stiffness) in
        [(82.0, 0.135, 0.72, 400.0), (110.0, 0.05, 0.9, 1500.0), (60.0, 0.3, 0.65, 250.0)]
    {
        let want = by_virtual_work(mass, foot, base, stiffness);
        let got = DeckSag { mass, foot, base, stiffness }.value();
        list.push(check(format!("sag of {mass} kg on {base} m"), got, want, 1e-9, VIRTUAL));
    }
    for (sag, fall) in [(0.008, 0.015), (0.012, 0.0), (0.004, 0.05)] {
        let got = BumpSag { sag, bump: fall }.value();
        let name = format!("sag of {sag} m after a fall of {fall} m");
        list.push(check(name, got, by_swing(sag, fall), 1e-8, SWING));
    }
    list
}

fn crests() -> Vec<Check> {
    let mut list = Vec::new();
    // Half the break, wheel radius, wheelbase: how high the middle then is.
    for (half_deg, radius, base) in [(5.0, 0.048, 0.72), (12.0, 0.075, 0.78), (25.0, 0.1, 0.6)] {
        let half = f64::to_radians(half_deg);
        let axle = (radius - base / 2.0 * half.sin()) / half.cos();
        let height = radius - axle;
        let got = BreakOver { radius, base, height, crest: 0.0 }.value();
        list.push(check(format!("crest of {half_deg}°"), got, 2.0 * half_deg, 1e-9, CREST));
    }
    for (radius, base, height, crest) in [(0.048, 0.72, 0.04, 0.1), (0.075, 0.78, 0.07, -0.2)] {
        let up = radius - height;
        let one = |x: f64| halve(0.0, 1.2, |a| x * a.sin() + up * a.cos() - radius).to_degrees();
        let want = one(base / 2.0 + crest) + one(base / 2.0 - crest);
        let got = BreakOver { radius, base, height, crest }.value();
        list.push(check(format!("crest {crest} m off the middle"), got, want, 1e-9, TANGENT));
    }
    let level = BreakOver { radius: 0.048, base: 0.72, height: 0.0, crest: 0.0 }.value();
    list.push(check("break-over with no height", level, 0.0, 1e-9, CREST));
    list
}

/// Wheels of 97 mm giving 1 mm, 36 teeth, cans of 63 x 74 mm, a hanger of
/// 184 mm, axle ends of 70 mm, trucks of 66 mm with 15 mm risers: written out
/// here, so that no other typical value is meant.
fn board() -> Draft {
    let mut draft = Draft::typical();
    for (slot, key, value) in [
        (Slot::Wheel, "diameter_mm", 97.0),
        (Slot::Wheel, "deflection_mm", 1.0),
        (Slot::Wheel, "width_mm", 52.0),
        (Slot::Wheel, "spacer_mm", 10.0),
        (Slot::WheelPulley, "teeth", 36.0),
        (Slot::Belt, "pitch_mm", 5.0),
        (Slot::Belt, "width_mm", 15.0),
        (Slot::Motor, "can_diameter_mm", 63.0),
        (Slot::Motor, "can_length_mm", 74.0),
        (Slot::Truck, "motor_count", 2.0),
        (Slot::Truck, "hanger_width_mm", 184.0),
        (Slot::Truck, "axle_mm", 70.0),
        (Slot::Truck, "height_mm", 66.0),
        (Slot::Truck, "mount_angle_deg", 30.0),
        (Slot::Deck, "riser_mm", 15.0),
        (Slot::Deck, "wheelbase_mm", 720.0),
        (Slot::Deck, "box_length_mm", 340.0),
        (Slot::Deck, "box_height_mm", 52.0),
        (Slot::Deck, "box_wall_mm", 3.0),
        (Slot::Deck, "box_ahead_mm", 10.0),
        (Slot::Deck, "sag_mm", 10.0),
        (Slot::Deck, "sag_mass_kg", 80.0),
        (Slot::Rider, "mass_kg", 90.0),
        (Slot::Rider, "gear_mass_kg", 6.0),
        (Slot::Place, "bump_mm", 6.0),
    ] {
        draft.set(slot, key, value);
    }
    draft
}

fn rooms() -> Vec<Check> {
    // Half of 80 mm is how far a mount of 30° rises.
    let mm = [
        (Between::PulleyRoad, 47.5 - 56.1528 / 2.0 - 2.5),
        (Between::BeltRoad, 47.5 - 56.1528 / 2.0 - 1.7),
        (Between::MotorRoad, 47.5 + 40.0 - 31.5),
        // 80 less both radii overlap; mount, washer and pulley of 15 and two flanges do not.
        (Between::MotorWheel, 8.0 + 1.0 + 18.0),
        (Between::MotorDeck, 66.0 + 15.0 - 40.0 - 31.5),
        (Between::MotorBox, 190.0 + 10.0 - 3.0 - 69.2820 - 31.5),
        (Between::MotorMotor, 184.0 - 2.0 * 82.0),
        (Between::Hanger, 184.0 - 2.0 * 82.0 - 5.0),
        (Between::Axle, 70.0 - (1.0 + 18.0 + 26.0 + 12.0 + 1.0 + 8.0)),
    ];
    let draft = board();
    let found = clearances(&draft, &Build::check(&draft).expect("in range"), 0.080);
    let mut list: Vec<Check> = mm
        .iter()
        .zip(&found)
        .map(|((between, want), got)| {
            assert_eq!(*between, got.between);
            assert_eq!(got.assumed, [], "all of it was entered");
            check(format!("{between:?}"), got.room_m * 1000.0, *want, 1e-4, BY_HAND)
        })
        .collect();
    assert_eq!(found.len(), mm.len());
    // One motor: no second can, no gap.
    let mut single = draft.clone();
    single.set(Slot::Truck, "motor_count", 1.0);
    let found = clearances(&single, &Build::check(&single).expect("in range"), 0.080);
    assert!(found.iter().all(|c| c.between != Between::MotorMotor));
    let hanger = found.iter().find(|c| c.between == Between::Hanger).expect("is there");
    let got = hanger.room_m * 1000.0;
    list.push(check("hanger of one motor", got, 184.0 - 82.0, 1e-9, BY_HAND));
    // What was left to assumption is named, and nothing else.
    let mut plain = draft;
    let place = Slot::Truck.kind().field_index("axle_mm").expect("is there");
    plain.set_value(Slot::Truck, place, None);
    let found = clearances(&plain, &Build::check(&plain).expect("in range"), 0.080);
    for clearance in found {
        let named: Vec<_> = clearance.assumed.iter().map(|row| row.key).collect();
        let want: &[&str] = if clearance.between == Between::Axle { &["axle_mm"] } else { &[] };
        assert_eq!(named, want, "{:?}", clearance.between);
    }
    list
}

fn decks() -> Vec<Check> {
    let draft = board();
    let found = deck_fit(&draft, &Build::check(&draft).expect("in range"));
    assert_eq!(found.sag_from, SagFrom::Measured);
    // 96 kg where 80 kg sagged 10 mm; and the root of 2 x 12 x 6 is 12.
    let free = 47.5 + 66.0 + 15.0 - 52.0 - 3.0;
    vec![
        check("sag scaled", found.sag_m * 1000.0, 12.0, 1e-12, BY_HAND),
        check("box to the road", found.road_m * 1000.0, free - 12.0, 1e-9, BY_HAND),
        check("the same after a bump", found.bump_road_m * 1000.0, free - 24.0, 1e-9, BY_HAND),
        // The box covers the middle.
        check("crest under the middle", found.crest_m, 0.0, 0.0, BY_HAND),
    ]
}

/// Where the drawings put the same parts.
fn places() -> Vec<Check> {
    let mut draft = board();
    draft.set(Slot::Deck, "box_width_mm", 160.0);
    draft.set(Slot::Deck, "width_mm", 150.0);
    let found = layout(&Build::check(&draft).expect("in range"), 0.080);
    let want = [
        ("axle", found.axle_up_m, 47.5),
        ("motor's shaft", found.motor_up_m, 87.5),
        ("motor's shaft ahead", found.motor_ahead_m, 69.2820),
        ("wheel pulley", found.pulleys_m[1], 56.1528),
        ("its flanges", found.flanges_m, 61.1528),
        ("pulley from", found.pulley_across_m[0], 93.0),
        ("pulley to", found.pulley_across_m[1], 111.0),
        ("wheel from", found.wheel_across_m[0], 111.0),
        ("wheel to", found.wheel_across_m[1], 163.0),
        ("axle to", found.axle_across_m[1], 162.0),
        ("mount from", found.mount_across_m[0], 84.0),
        ("can from", found.can_across_m[0], 10.0),
        ("deck", found.deck_up_m, 47.5 + 66.0 + 15.0),
        // 16 % of 720 mm; half of 97 mm; a tooth of 5 mm pitch, from memory.
        ("deck beyond the axle", found.deck_end_m, 115.2),
        ("core", found.core_m, 48.5),
        ("tooth", found.tooth_m, 2.06),
        ("box, length outside", found.box_m[0], 346.0),
        ("box, width outside", found.box_m[1], 166.0),
        ("box, depth", found.box_m[2], 55.0),
        ("box beyond the deck", found.box_beyond_deck_m, 16.0),
    ];
    want.map(|(name, got, want)| check(name, got * 1000.0, want, 1e-4, BY_HAND)).to_vec()
}

pub(crate) fn checks() -> Vec<Check> {
    let list = vec![
        check("bore of 608", BEARING_608_M[0], 0.008, 0.0, BEARING),
        check("outside of 608", BEARING_608_M[1], 0.022, 0.0, BEARING),
        check("width of 608", BEARING_608_M[2], 0.007, 0.0, BEARING),
        check(
            "hub with a spacer of 10 mm",
            HubWidth { spacer: 0.010 }.value(),
            0.024,
            1e-15,
            BEARING,
        ),
        // 3, 4, 5.
        check(
            "cylinders apart both ways",
            MotorWheel { across: 0.3, along: 0.4 }.value(),
            0.5,
            1e-15,
            BY_HAND,
        ),
        check(
            "cylinders apart one way",
            MotorWheel { across: -0.3, along: 0.4 }.value(),
            0.4,
            0.0,
            BY_HAND,
        ),
        check(
            "cylinders in each other",
            MotorWheel { across: -0.3, along: -0.4 }.value(),
            -0.3,
            0.0,
            BY_HAND,
        ),
    ];
    [list, beams(), crests(), rooms(), decks(), places()].concat()
}
