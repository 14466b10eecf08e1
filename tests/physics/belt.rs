//! Where a belt lies: length, centre distance, wrap, teeth in mesh and diameters.

use crate::check::{Check, check, holds};
use pitchline_core::physics::belt_geometry::{
    BeltWedge, LargePulleyRadius, MeshShare, OpenBeltLength, PulleyOutside, RatedPullInMesh,
    SmallPulleyRadius, SpanDeflection, SpanFrequency, TeethInMesh, centre_m, length_m,
    pitch_line_m, whole,
};
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Belt, BeltLoad, BeltOffers, Build, Draft, Drive, Limit, Slot, belt_fit};
use std::f64::consts::PI;

const SHIGLEY: &str =
    "Budynas and Nisbett, Shigley's Mechanical Engineering Design, solutions to chapter 17";
const HULL: &str = "perimeter of the convex hull of two circles, shapely 2.2.0, 20 000 corners";
const HULL_AGAIN: &str = "perimeter of the convex hull of two circles, tests/fit/belt_hull.py";
const HALVED: &str = "a second program: the exact length halved for its centre distance";
const TABLE: &str = "pulley tables for 5 mm pitch: pitch diameter less 1.143 mm";
const NOTES: &str = "belt makers' notes of 2012 and 2014: 20 % less for each tooth fewer than six";
const BY_HAND: &str = "by hand, from the figures above";
const RIM: &str = "geometry: pull times pulley radius is push times rolling radius, less losses";
const PRACTICE: &str = "common practice, no source: 0.55 to 0.65 of the pull, 820 kg/m³";
const METER: &str = "worked example of a belt meter's handbook: 624 N, 0.17 m, 0.11 kg/m";
const SIXTEENTH: &str = "pulley makers' handbook: a 16th of the tension bends a span by a 64th";
const TOUCH: &str = "geometry: pitch circles that touch leave no free span";

/// Teeth, centre mm, hull mm, wrap in degrees, teeth in mesh; 5 mm pitch.
const HULLS: [[f64; 6]; 14] = [
    [15.0, 36.0, 80.0, 291.00369, 155.8853, 6.4952],
    [16.0, 36.0, 75.0, 283.39022, 155.4966, 6.9110],
    [15.0, 40.0, 80.0, 302.47331, 151.2012, 6.3001],
    [14.0, 32.0, 60.0, 238.43612, 152.3765, 5.9258],
    [16.0, 32.0, 70.0, 262.32236, 159.0401, 7.0684],
    [18.0, 36.0, 90.0, 317.28458, 161.6843, 8.0842],
    [20.0, 44.0, 95.0, 353.85263, 156.8047, 8.7114],
    [12.0, 60.0, 110.0, 413.40224, 139.3619, 4.6454],
    [16.0, 60.0, 100.0, 402.38999, 139.0081, 6.1781],
    [13.0, 44.0, 72.5, 295.97789, 140.2143, 5.0633],
    [24.0, 24.0, 57.5, 235.0, 180.0, 12.0],
    [20.0, 62.0, 120.0, 454.37051, 147.6561, 8.2031],
    [15.0, 36.0, 42.0, 218.24141, 133.1077, 5.5462],
    [36.0, 36.0, 88.9, 357.8, 180.0, 18.0],
];

/// Teeth of pulleys and belt, centre mm, wrap in degrees, teeth in mesh; 5 mm pitch.
const CENTRES: [[f64; 6]; 12] = [
    [15.0, 36.0, 51.0, 61.46389, 148.4468, 6.1853],
    [15.0, 36.0, 53.0, 66.64358, 150.9555, 6.2898],
    [15.0, 36.0, 54.0, 69.22287, 152.0602, 6.3358],
    [16.0, 36.0, 56.0, 73.26441, 154.9068, 6.8847],
    [16.0, 44.0, 60.0, 71.49916, 143.6843, 6.3860],
    [15.0, 40.0, 60.0, 78.72256, 150.7235, 6.2801],
    [14.0, 32.0, 50.0, 65.93797, 154.9068, 6.0242],
    [16.0, 32.0, 53.0, 71.36109, 159.4443, 7.0864],
    [18.0, 36.0, 60.0, 81.23383, 159.6879, 7.9844],
    [20.0, 62.0, 90.0, 117.72286, 147.0128, 8.1674],
    [12.0, 60.0, 74.0, 86.41136, 127.5319, 4.2511],
    [24.0, 24.0, 47.0, 57.5, 180.0, 12.0],
];

/// Teeth, outside diameter mm as tabulated to 0.1 µm; 12 and 72 by hand from 5 Z / π − 1.143.
const OUTSIDES: [(f64, f64); 12] = [
    (12.0, 17.9556),
    (14.0, 21.1387),
    (15.0, 22.7302),
    (16.0, 24.3218),
    (18.0, 27.5049),
    (20.0, 30.6880),
    (32.0, 49.7866),
    (36.0, 56.1528),
    (40.0, 62.5190),
    (44.0, 68.8852),
    (60.0, 94.3500),
    (72.0, 113.4486),
];

/// A board without iron loss on tyres that hold, with these figures.
fn drive_with(values: &[(Slot, &str, f64)]) -> Drive {
    let mut draft = Draft::typical();
    let plain = [(Slot::Motor, "no_load_a", 0.0), (Slot::Place, "grip_percent", 120.0)];
    for (slot, key, value) in plain.iter().chain(values) {
        draft.set(*slot, key, *value);
    }
    Drive::new(&Build::check(&draft).expect("in range"))
}

fn load_of(drive: &Drive) -> BeltLoad {
    belt_fit(drive, &BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] }).load
}

/// Pull, tension and its checks.
fn loads() -> Vec<Check> {
    // 60 A of peak phase current at 190 rpm/V, 8.269 933 N m rpm/(V A): 2.611 558 N m
    // on 16 teeth of 5 mm.
    let pull = 2.0 * PI * (8.269_933 / 190.0 * 60.0) / 0.08;
    let drive = drive_with(&[(Slot::Belt, "teeth", 60.0), (Slot::Belt, "mass_kg", 0.018)]);
    let load = load_of(&drive);
    // Braking has limits of its own: the controller's, and the motor's.
    let braked = |set: f64, rated: f64| {
        load_of(&drive_with(&[
            (Slot::Controller, "motor_current_a", 60.0),
            (Slot::Controller, "brake_current_a", set),
            (Slot::Motor, "max_current_a", rated),
        ]))
    };
    let [soft, usual, hard, hot] =
        [braked(10.0, 75.0), braked(40.0, 75.0), braked(75.0, 90.0), braked(90.0, 60.0)];
    let grip = [(Slot::Place, "grip_percent", 5.0), (Slot::Truck, "motor_count", 1.0)];
    let wet = load_of(&drive_with(&grip));
    // Rated for 30 N: the motors do not know.
    let weak = load_of(&drive_with(&[(Slot::Belt, "rating_n_per_mm", 2.0)]));
    // One motor, half of it on the rear axle: 0.5 · 0.05 · m g / (2 − 0.05 h / L).
    let build = drive_with(&grip).build;
    let force = 0.5 * 0.05 * build.mass_kg() * 9.806_65 / (2.0 - 0.05 * 0.95 / 0.72);
    let rim = |force: f64, drive: &Drive| {
        let b = &drive.build;
        let wheel_pulley = b.wheel_pulley.teeth * 0.005 / (2.0 * PI);
        force * b.wheel.radius_m() / (wheel_pulley * b.truck.motor_count * b.belt.efficiency)
    };
    let cruise = drive.load_n(drive.build.ride.cruise_m_s, Slope::FLAT);
    let hill = drive.load_n(10.0 / 3.6, Slope::of_grade(drive.build.ride.grade));
    let weighed = drive.build.belt;
    let bare = Belt { mass_kg: None, ..weighed };
    let [low, _, high] = load.tensions;
    vec![
        check("pull of 60 A", load.drive_n, pull, 1e-4, BY_HAND),
        check("pull of 10 A when braking", soft.brake_n, pull / 6.0, 1e-4, BY_HAND),
        check("pull of 40 A when braking", usual.brake_n, pull / 1.5, 1e-4, BY_HAND),
        check("pull of 75 A when braking", hard.brake_n, pull * 1.25, 1e-4, BY_HAND),
        check("pull of a motor for 60 A when braking", hot.brake_n, pull, 1e-4, BY_HAND),
        check("the push is harder than 40 A", usual.peak_n, pull, 1e-4, BY_HAND),
        check("75 A of braking are harder than the push", hard.peak_n, pull * 1.25, 1e-4, BY_HAND),
        holds(
            "the controller sets both",
            [load.drive_limit, usual.brake_limit]
                == [Limit::ControllerMotorCurrent, Limit::BrakeCurrent],
            BY_HAND,
        ),
        holds("the motor sets it", hot.brake_limit == Limit::MotorCurrent, BY_HAND),
        check("pull of 60 A in a belt too weak", weak.drive_n, pull, 1e-4, BY_HAND),
        check("what such a belt is asked", weak.used, pull / 30.0, 1e-5, BY_HAND),
        check("greatest pull", load.peak_n, pull, 1e-4, BY_HAND),
        check("braking that tyres hold", wet.brake_n, rim(force, &drive_with(&grip)), 1e-9, RIM),
        holds("grip is what holds it", wet.brake_limit == Limit::Grip, RIM),
        check("pull at cruising speed", load.steady_n, rim(cruise, &drive), 1e-9, RIM),
        check("pull on the hill", load.hill_n, rim(hill, &drive), 1e-9, RIM),
        check("least tension", low.force_n, 0.55 * pull, 1e-4, PRACTICE),
        check("most tension", high.force_n, 0.65 * pull, 1e-4, PRACTICE),
        check("torque that jumps", low.jump_n_m, 1.1 * pull * 0.04 / PI, 1e-4, PRACTICE),
        check("belt weighed, for each metre", weighed.mass_per_m(), 0.06, 1e-12, BY_HAND),
        check("belt not weighed", bare.mass_per_m(), 0.0615, 1e-12, PRACTICE),
        check("mass of one not weighed", bare.usual_mass_kg(), 0.018_45, 1e-12, PRACTICE),
        check(
            "note of a span, squared",
            SpanFrequency { tension: 624.0, mass: 0.11, span: 0.17 }.value().powi(2),
            49_072.0,
            0.5,
            METER,
        ),
        check(
            "a 64th of the span",
            SpanDeflection { force: 16.0, span: 0.64, tension: 256.0 }.value(),
            0.01,
            1e-15,
            SIXTEENTH,
        ),
    ]
}

fn radii(one: f64, other: f64, pitch_m: f64) -> [f64; 2] {
    [
        SmallPulleyRadius { teeth: one.min(other), pitch: pitch_m }.value(),
        LargePulleyRadius { teeth: one.max(other), pitch: pitch_m }.value(),
    ]
}

/// Length in mm; a number that fails every check where it is refused.
fn length_mm(centre_mm: f64, [small, large]: [f64; 2]) -> f64 {
    1e3 * length_m(1e-3 * centre_mm, small, large).unwrap_or(f64::NAN)
}

fn lies(list: &mut Vec<Check>, name: &str, row: [f64; 5], source: &'static str) {
    let [one, other, centre_mm, wrap, mesh] = row;
    let [small, large] = radii(one, other, 0.005);
    let wedge = BeltWedge { small, large, centre: 1e-3 * centre_mm }.value();
    let degrees = 180.0 - wedge * 360.0 / PI;
    // Printed to 0.0001; the centre distance that goes in to 0.00001 mm.
    list.push(check(format!("wrap of {name}"), degrees, wrap, 1.5e-4, source));
    let got = TeethInMesh { teeth: one.min(other), wedge }.value();
    list.push(check(format!("teeth in mesh of {name}"), got, mesh, 6e-5, source));
    let whole_teeth = whole(got);
    list.push(check(format!("whole teeth of {name}"), whole_teeth, mesh.floor(), 0.0, source));
}

fn shigley() -> Vec<Check> {
    // D 18, d 6, C 96, all in inches.
    let (small, large, centre) = (3.0, 9.0, 96.0);
    let wedge = BeltWedge { small, large, centre }.value();
    let length = OpenBeltLength { centre, wedge, small, large }.value();
    vec![
        check("wrap of 6 in", PI - 2.0 * wedge, 3.0165, 5e-5, SHIGLEY),
        check("wrap of 18 in", PI + 2.0 * wedge, 3.2667, 5e-5, SHIGLEY),
        check("belt over 6 and 18 in", length, 230.074, 5e-4, SHIGLEY),
        // The same, worked out to more places by a second program.
        check("wrap of 6 in, finer", PI - 2.0 * wedge, 3.016_511_13, 1e-8, HALVED),
        check("wrap of 18 in, finer", PI + 2.0 * wedge, 3.266_674_18, 1e-8, HALVED),
        check("belt over 6 and 18 in, finer", length, 230.074_234_06, 1e-8, HALVED),
    ]
}

fn rows() -> Vec<Check> {
    let mut list = Vec::new();
    for [one, other, centre, hull, wrap, mesh] in HULLS {
        let name = format!("{one}/{other} at {centre} mm");
        let got = length_mm(centre, radii(one, other, 0.005));
        list.push(check(format!("belt of {name}"), got, hull, 1e-6 * hull, HULL));
        lies(&mut list, &name, [one, other, centre, wrap, mesh], HULL);
    }
    for [one, other, belt, centre, wrap, mesh] in CENTRES {
        let name = format!("{one}/{other} with {belt} teeth");
        let [small, large] = radii(one, other, 0.005);
        let got = 1e3 * centre_m(belt * 0.005, small, large).unwrap_or(f64::NAN);
        list.push(check(format!("centre of {name}"), got, centre, 1e-5, HALVED));
        lies(&mut list, &name, [one, other, centre, wrap, mesh], HALVED);
    }
    let fixture = include_str!("../fixture/belts/hull.csv");
    for line in fixture.lines().filter(|line| !line.starts_with(['#', 'm'])) {
        let numbers: Vec<f64> = line.split(',').map(|n| n.parse().expect("a number")).collect();
        let [one, other, pitch, centre, hull] = numbers[..] else { panic!("{line}") };
        let got = length_mm(centre, radii(one, other, 1e-3 * pitch));
        let name = format!("belt of {one}/{other}, {pitch} mm pitch, at {centre} mm");
        list.push(check(name, got, hull, 1e-6 * hull, HULL_AGAIN));
    }
    list
}

pub(crate) fn checks() -> Vec<Check> {
    let mut list = shigley();
    list.extend(loads());
    list.extend(rows());
    for (teeth, diameter) in OUTSIDES {
        let above = pitch_line_m(0.005).unwrap_or(f64::NAN);
        let got = 1e3 * PulleyOutside { teeth, pitch: 0.005, above }.value();
        list.push(check(format!("outside of {teeth} teeth"), got, diameter, 6e-5, TABLE));
    }
    for (mesh, share) in
        [(12.0, 1.0), (6.0, 1.0), (5.99, 0.8), (5.0, 0.8), (4.25, 0.6), (3.0, 0.4), (2.0, 0.2)]
    {
        let got = MeshShare { mesh }.value();
        list.push(check(format!("rating left by {mesh} teeth"), got, share, 1e-12, NOTES));
        // 30 N for each of 15 mm.
        let got = RatedPullInMesh { rating: 30.0, width: 15.0, share: got }.value();
        list.push(check(format!("pull left by {mesh} teeth"), got, 450.0 * share, 1e-9, NOTES));
    }
    // 16 and 44 teeth touch at 30 teeth of 5 mm over π: 47.746 mm.
    let [small, large] = radii(16.0, 44.0, 0.005);
    let touching = 0.15 / PI;
    let around = length_mm(1e3 * touching + 1e-9, [small, large]) * 1e-3;
    for (name, refused) in [
        ("touching pulleys", length_m(touching, small, large).is_err()),
        ("overlapping pulleys", length_m(0.047, small, large).is_err()),
        ("no centre distance", length_m(0.0, small, large).is_err()),
        ("a centre distance below nothing", length_m(-0.1, small, large).is_err()),
        ("a centre distance that is no number", length_m(f64::NAN, small, large).is_err()),
        ("a belt too short", centre_m(around - 1e-6, small, large).is_err()),
        ("a belt without length", centre_m(0.0, small, large).is_err()),
        ("a length that is no number", centre_m(f64::NAN, small, large).is_err()),
    ] {
        list.push(holds(format!("refused: {name}"), refused, TOUCH));
    }
    let taken = centre_m(around + 1e-6, small, large).is_ok();
    list.push(holds("a belt just long enough is taken", taken, TOUCH));
    list
}
