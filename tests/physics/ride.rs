//! A ride in time: closed forms of motion and heat by the integrators
//! themselves, and an hour of stop and go beside SciPy.

use crate::board::{drive, reference};
use crate::check::{Check, check, holds};
use pitchline_core::physics::heat::{MotorHeat, Node, Settled, settled};
use pitchline_core::physics::motion::moved;
use pitchline_core::ride::{
    Course, Leg, Manner, Ridden, Steps, TracePoint, URBAN, Until, UrbanFit, urban,
};
use pitchline_core::{Draft, Limit, Slot};
use std::collections::HashMap;

const TANH: &str = "closed form: v = vt tanh(t / tau), x = (m / c2) ln cosh(t / tau)";
const TAN: &str = "closed form: coast-down with constant and quadratic load";
const POWER: &str = "closed form: constant power, v = sqrt(2 P t / m), x = m v^3 / 3P";
const DRAG: &str = "closed form: constant power and quadratic drag over the way";
const TERMINAL: &str = "closed form: m g sin a = m g Crr cos a + c2 v^2";
const FIRST_ORDER: &str = "closed form: T = Ta + P Rth (1 - exp(-t / Rth C))";
const FEEDBACK: &str = "closed form: the same with resistance growing by 0.00393 / K";
const SCIPY: &str = "SciPy 1.17.1 solve_ivp at rtol 1e-9, tests/fit/ride.py";

/// The load of the closed forms: 90 kg, Crr 0.012, CdA 0.55, density 1.225.
const MASS: f64 = 90.0;
const C0: f64 = 10.591_182;
const C2: f64 = 0.336_875;

fn load(v: f64) -> f64 {
    C0 + C2 * v * v
}

/// Speed and way after a time in steps; it stays where it comes to rest.
fn run(from: f64, seconds: f64, step: f64, net: impl Fn(f64) -> f64) -> (f64, f64, f64) {
    let (mut v, mut x, mut t) = (from, 0.0, 0.0);
    while t < seconds - 1e-9 {
        let next = moved(MASS, v, step.min(seconds - t), &net);
        x += next.way_m(v);
        t += next.time_s;
        v = next.speed_m_s;
        if v == 0.0 {
            break;
        }
    }
    (v, x, t)
}

fn motion() -> Vec<Check> {
    let mut checks = Vec::new();
    let mut both = |name: String, got: (f64, f64, f64), v: f64, x: f64, source| {
        checks.push(check(format!("{name}: speed"), got.0, v, 1e-3 * v, source));
        checks.push(check(format!("{name}: way"), got.1, x, 1e-3 * x, source));
    };
    for (t, v, x) in [
        (5.0, 3.765_887_43, 9.526_347_62),
        (10.0, 7.046_735_72, 36.836_622_62),
        (20.0, 11.356_477_95, 131.359_630_79),
        (40.0, 13.969_014_65, 392.584_784_91),
    ] {
        both(format!("80 N for {t} s"), run(0.0, t, 0.5, |v| 80.0 - load(v)), v, x, TANH);
    }
    for (t, v, x) in [(10.0, 7.422_049_65, 94.420_932_16), (30.0, 3.092_749_67, 194.174_243_48)] {
        both(format!("coasting {t} s"), run(12.0, t, 0.5, |v| -load(v)), v, x, TAN);
    }
    for (t, v, x) in [(5.0, 9.428_090_42, 31.426_968_05), (10.0, 13.333_333_33, 88.888_888_89)] {
        // From rest the force has no end: the first step is half a second of the whole power.
        let got = run(0.0, t, 0.05, |v| 800.0 / v.max(1e-6));
        both(format!("800 W for {t} s"), got, v, x, POWER);
    }
    let (v, x, t) = run(12.0, 100.0, 0.5, |v| -load(v));
    checks.push(check("coasting to rest: time", t, 54.016_676_42, 0.054, TAN));
    checks.push(check("coasting to rest: way", x, 229.655_842_74, 0.23, TAN));
    checks.push(check("coasting to rest: speed", v, 0.0, 0.0, TAN));
    for (way, speed) in [(50.0, 10.067_068_52), (200.0, 12.853_229_44)] {
        let (mut v, mut x) = (0.0, 0.0);
        while x < way {
            let next = moved(MASS, v, 0.02, |v| 800.0 / v.max(1e-6) - C2 * v * v);
            let made = next.way_m(v);
            let part = ((way - x) / made).min(1.0);
            v += part * (next.speed_m_s - v);
            x += made;
        }
        let name = format!("800 W over {way} m");
        checks.push(check(name, v, speed, 1e-3 * speed, DRAG));
    }
    for (grade, sine, cosine, speed) in [
        (3, 0.029_986_509, 0.999_550_303, 6.865_715_16),
        (6, 0.059_892_292, 0.998_204_847, 11.204_117_55),
        (10, 0.099_503_719, 0.995_037_190, 15.146_357_17),
    ] {
        let weight = MASS * 9.806_65;
        let net = |v: f64| weight * (sine - 0.012 * cosine) - C2 * v * v;
        let (v, _, _) = run(1.0, 600.0, 5.0, net);
        checks.push(check(format!("rolling down {grade} %"), v, speed, 1e-3 * speed, TERMINAL));
    }
    checks
}

fn heat() -> Vec<Check> {
    let mut checks = Vec::new();
    for (t, celsius) in [
        (60.0, 31.540_736_11),
        (300.0, 52.277_548_65),
        (630.0, 70.512_680_24),
        (1800.0, 92.864_851_41),
    ] {
        let node = Node { capacity_j_k: 350.0, to_air_w_k: 1.0 / 1.8 };
        let got = (0..60).fold(25.0, |now, _| node.after(now, t / 60.0, 40.0, 25.0));
        checks.push(check(format!("40 W for {t} s"), got, celsius, 1e-3 * celsius, FIRST_ORDER));
    }
    // A case that nothing warms leaves one body with copper's feedback.
    let winding = MotorHeat { winding_j_k: 350.0, case_j_k: 1e15, inner_w_k: 1.0 / 1.8 };
    for (t, celsius) in [
        (60.0, 31.758_492_31),
        (300.0, 54.616_079_94),
        (630.0, 77.401_607_60),
        (1800.0, 114.187_943_85),
    ] {
        let step = t / 60.0;
        let mut now = (25.0, 25.0);
        for _ in 0..60 {
            let amid = winding.amid(now, step, 40.0, 0.0, 1.0, 25.0);
            now = winding.after(now, amid, step);
        }
        let name = format!("40 W of cold copper for {t} s");
        checks.push(check(name, now.0, celsius, 1e-3 * celsius, FEEDBACK));
    }
    let end = match settled(40.0, 1.8, 25.0) {
        Settled::At(celsius) => celsius,
        Settled::Never => f64::NAN,
    };
    checks.push(check("40 W of cold copper for ever", end, 127.385_920, 1e-5, FEEDBACK));
    // 1 / (1.8 · 0.00393) = 141.36 W.
    checks.push(holds(
        "142 W settle nowhere",
        settled(142.0, 1.8, 25.0) == Settled::Never,
        FEEDBACK,
    ));
    checks.push(holds("141 W settle", settled(141.0, 1.8, 25.0) != Settled::Never, FEEDBACK));
    checks
}

fn rows(text: &str) -> impl Iterator<Item = Vec<&str>> {
    text.lines().filter(|l| !l.starts_with('#')).skip(1).map(|l| l.split(',').collect())
}

fn number(text: &str) -> f64 {
    text.parse().expect("the fixture holds numbers")
}

/// The board of the fixture.
pub(crate) fn fixture_board() -> Draft {
    let mut draft = Draft::typical();
    for row in rows(include_str!("../fixture/ride/board.csv")) {
        let slot = Slot::from_key(row[0]).expect("a slot");
        assert!(slot.kind().field_index(row[1]).is_some(), "no such input: {row:?}");
        draft.set(slot, row[1], number(row[2]));
    }
    draft
}

/// The hour of `tests/fit/ride.py`.
fn hour(steps: Steps) -> Ridden {
    let leg = |grade, rest_s| Leg { length_m: 200.0, grade, cruise_m_s: 5.0, rest_s };
    let legs = [leg(0.02, None), leg(-0.02, Some(12.0))];
    let manner = Manner { acceleration_m_s2: 3.0, braking_m_s2: 3.0 };
    drive(&fixture_board()).ride(Course::Legs(&legs), manner, Until::time(3600.0), 0.97, steps)
}

fn beside_scipy() -> Vec<Check> {
    let want: HashMap<&str, f64> = rows(include_str!("../fixture/ride/stop_and_go.csv"))
        .map(|row| (row[0], number(row[1])))
        .collect();
    let got = hour(Steps::USUAL);
    let last = *got.moments.last().expect("there are moments");
    let ledger = got.ledger;
    let spent = 0.97 - want["charge"];
    let mut checks = vec![
        holds(
            "the motor current limit holds it back",
            got.held_back.is_some_and(|met| met.limit == Limit::ControllerMotorCurrent),
            SCIPY,
        ),
        check(
            "hour: distance",
            got.distance_m,
            want["distance_m"],
            1e-3 * want["distance_m"],
            SCIPY,
        ),
        check("hour: charge spent", 0.97 - got.end_charge, spent, 2e-3 * spent, SCIPY),
        check(
            "hour: hottest winding",
            got.hottest.winding_c,
            want["hottest_winding_c"],
            0.5,
            SCIPY,
        ),
        check("hour: winding", last.winding_c, want["winding_c"], 0.5, SCIPY),
        check("hour: case", last.case_c, want["case_c"], 0.5, SCIPY),
        check("hour: controller", last.controller_c, want["controller_c"], 0.5, SCIPY),
        check("hour: cell", last.cell_c, want["cell_c"], 0.2, SCIPY),
    ];
    // Each share of the energy to a two-thousandth of all that passed, and 3 % of its own.
    let passed = want["stored_wh"] + 2.0 * want["returned_wh"];
    for (name, wh) in [
        ("stored_wh", ledger.stored_wh),
        ("pack_wh", ledger.pack_wh),
        ("wires_wh", ledger.wires_wh),
        ("controller_wh", ledger.controller_wh),
        ("winding_wh", ledger.winding_wh),
        ("iron_wh", ledger.iron_wh),
        ("belt_wh", ledger.belt_wh),
        ("rolling_wh", ledger.rolling_wh),
        ("air_wh", ledger.air_wh),
        ("climb_wh", ledger.climb_wh),
        ("brake_wh", ledger.brake_wh),
        ("returned_wh", ledger.returned_wh),
    ] {
        let within = (5e-4 * passed).min(0.03 * want[name]);
        checks.push(check(format!("hour: {name}"), wh, want[name], within, SCIPY));
    }
    checks
}

/// The reference board has no belt, iron or switching loss: its ledger is known.
fn by_hand() -> Vec<Check> {
    let mut draft = reference();
    draft.set(Slot::Place, "altitude_m", 0.0);
    let legs = [Leg { length_m: 1e6, grade: 0.0, cruise_m_s: 3.0, rest_s: None }];
    let manner = Manner { acceleration_m_s2: 1.0, braking_m_s2: 1.0 };
    let until = Until::distance(3004.5);
    let got = drive(&draft).ride(Course::Legs(&legs), manner, until, 1.0, Steps::USUAL);
    let hand = "by hand: 4.5 m in 3 s of speeding up, then 3000 m at 3 m/s";
    vec![
        check("3004.5 m: time", got.time_s, 1003.0, 1e-6, hand),
        check("3004.5 m: distance", got.distance_m, 3004.5, 1e-6, hand),
        check("3004.5 m: rolling", got.ledger.rolling_wh * 3600.0, C0 * 3004.5, 0.5, hand),
        check(
            "3004.5 m: air",
            got.ledger.air_wh * 3600.0,
            // The integral of c2 v^2 over the way: c2 v^4 / 4a while speeding up.
            C2 * (9.0 * 3000.0 + 3.0_f64.powi(4) / 4.0),
            1.0,
            hand,
        ),
        check("3004.5 m: belt", got.ledger.belt_wh, 0.0, 1e-9, hand),
        check("3004.5 m: iron", got.ledger.iron_wh, 0.0, 1e-9, hand),
    ]
}

const R83: &str = "UN Regulation 83: 195 s, 1.013 km, 50 km/h at most, from memory";

fn cycle() -> Vec<Check> {
    let mut checks = Vec::new();
    let end = URBAN[URBAN.len() - 1].time_s;
    checks.push(check("urban cycle: time", end, 195.0, 0.0, R83));
    let way = |points: &[TracePoint]| -> f64 {
        points
            .windows(2)
            .map(|p| 0.5 * (p[0].speed_m_s + p[1].speed_m_s) * (p[1].time_s - p[0].time_s))
            .sum()
    };
    checks.push(check("urban cycle: way", way(&URBAN), 1013.0, 10.0, R83));
    // A board fast enough follows every metre.
    let mut draft = fixture_board();
    for (slot, key, value) in [
        (Slot::Pack, "series", 14.0),
        (Slot::Controller, "max_bus_v", 75.0),
        (Slot::Controller, "battery_current_a", 60.0),
        (Slot::Pack, "parallel", 8.0),
        (Slot::Ride, "start_charge_percent", 90.0),
    ] {
        draft.set(slot, key, value);
    }
    let strong = drive(&draft).ride_urban(UrbanFit::Scaled, 1.0);
    checks.push(check("urban cycle followed: time", strong.time_s, 195.0, 1e-9, R83));
    checks.push(check("urban cycle followed: way", strong.distance_m, way(&URBAN), 0.01, R83));
    checks.push(check("urban cycle followed: top", strong.top_m_s * 3.6, 50.0, 1e-9, R83));
    let hand = "by hand: every speed is 0.6 of the cycle's, so the way is too";
    let scaled = urban(30.0 / 3.6, UrbanFit::Scaled);
    checks.push(check("urban cycle at 0.6", way(&scaled), 0.6 * way(&URBAN), 1e-9, hand));
    // Clipped at 32 km/h, the speed of the second hump: only the third loses, between
    // 131.65 s and 178.84 s.
    let clipped = urban(32.0 / 3.6, UrbanFit::Clipped);
    let over = |km_h: f64, s: f64| km_h / 3.6 * s;
    let lost = over(1.5, 1.35)
        + over(3.0, 2.0)
        + over(10.5, 8.0)
        + over(18.0, 12.0)
        + over(10.5, 8.0)
        + over(3.0, 15.0)
        + over(1.5, 0.84);
    let hand = "by hand: what of the third hump lies above 32 km/h, as trapezoids";
    checks.push(check("urban cycle clipped", way(&clipped), way(&URBAN) - lost, 1e-6, hand));
    checks
}

pub(crate) fn checks() -> Vec<Check> {
    [motion(), heat(), beside_scipy(), by_hand(), cycle()].concat()
}

#[test]
fn halving_the_step_moves_nothing_by_a_thousandth() {
    let (usual, half) = (hour(Steps::USUAL), hour(Steps::USUAL.halved()));
    assert!((half.distance_m / usual.distance_m - 1.0).abs() < 1e-3);
    let spent = |r: &Ridden| r.start_charge - r.end_charge;
    assert!((spent(&half) / spent(&usual) - 1.0).abs() < 1e-3);
    for (one, two) in usual.ledger.sinks_wh().iter().zip(half.ledger.sinks_wh()) {
        assert!((one - two).abs() < 1e-3 * usual.ledger.passed_wh, "{one} {two}");
    }
}
