//! How long the answers take: `cargo bench -p pitchline-core`.

#![allow(missing_docs, reason = "a bench has no reader but its own output")]

use divan::{Bencher, black_box};
use pitchline_core::{
    BeltOffers, Build, Draft, Drive, Headline, MotorPulley, Slot, Wheel, WheelPulley, answers,
    explain, fit, gear_map, summary,
};

fn main() {
    divan::main();
}

fn typical() -> Build {
    Build::check(&Draft::typical()).expect("typical values are within their limits")
}

/// Ten of a kind: the typical one with a value counted up.
fn ten<T>(slot: Slot, key: &str, from: f64, step: f64, part: impl Fn(&Build) -> T) -> Vec<T> {
    let with = |n: usize| {
        let mut draft = Draft::typical();
        draft.set(slot, key, from + step * n as f64);
        part(&Build::check(&draft).expect("within limits"))
    };
    (0..10).map(with).collect()
}

/// What the page does at each change: check, then answer everything.
#[divan::bench]
fn a_full_set_of_answers(bencher: Bencher) {
    let draft = Draft::typical();
    bencher.bench(|| Build::check(black_box(&draft)).map(|build| answers(&build)));
}

/// What a list of builds shows of each; at most 100 microseconds.
#[divan::bench]
fn a_build_at_a_glance(bencher: Bencher) {
    let (draft, build) = (Draft::typical(), typical());
    bencher.bench(|| summary(black_box(&draft), black_box(&build)));
}

#[divan::bench(args = [(10.0, 4.0), (12.0, 10.0)])]
fn what_goes_together(bencher: Bencher, (series, parallel): (f64, f64)) {
    let mut draft = Draft::typical();
    draft.set(Slot::Pack, "series", series);
    draft.set(Slot::Pack, "parallel", parallel);
    let drive = Drive::new(&Build::check(&draft).expect("within limits"));
    let none = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };
    bencher.bench(|| fit::together(black_box(&draft), black_box(&drive), &none));
}

#[divan::bench(sample_count = 20)]
fn a_gear_map_of_10_by_10_by_10(bencher: Bencher) {
    let build = typical();
    let small: Vec<MotorPulley> =
        ten(Slot::MotorPulley, "teeth", 12.0, 1.0, |build| build.motor_pulley);
    let large: Vec<WheelPulley> =
        ten(Slot::WheelPulley, "teeth", 30.0, 3.0, |build| build.wheel_pulley);
    let wheels: Vec<Wheel> = ten(Slot::Wheel, "diameter_mm", 80.0, 8.0, |build| build.wheel);
    bencher.bench(|| gear_map(black_box(&build), &small, &large, &wheels));
}

#[divan::bench]
fn a_distance_curve_of_60_speeds(bencher: Bencher) {
    let drive = Drive::new(&typical());
    bencher.bench(|| {
        let at = |n: u8| black_box(&drive).reach(1.5 + 0.2 * f64::from(n));
        (0..60).map(at).collect::<Vec<_>>()
    });
}

#[divan::bench(args = [Headline::TopSpeed, Headline::ClimbSlow, Headline::Distance])]
fn a_working(bencher: Bencher, headline: Headline) {
    let build = typical();
    bencher.bench(|| explain(black_box(&build), headline));
}
