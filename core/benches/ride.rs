//! How long a ride in time, a charge and a band take: `cargo bench -p pitchline-core --bench ride`.

#![allow(missing_docs, reason = "a bench has no reader but its own output")]

use divan::{Bencher, black_box};
use pitchline_core::band::{Band, Quantity, Sampler};
use pitchline_core::ride::{Course, Goal, Steps, Style, Until, UrbanFit};
use pitchline_core::{Build, Draft, Drive, Outing, Slot, by_age, by_temperature};

fn main() {
    divan::main();
}

/// The typical board with twice the pack, which an hour of any style does not empty.
fn build() -> Build {
    let mut draft = Draft::typical();
    draft.set(Slot::Pack, "parallel", 6.0);
    Build::check(&draft).expect("within limits")
}

/// Flat out with windings that warm quickly, and a controller that holds back for it.
#[divan::bench]
fn an_hour_held_back_by_windings(bencher: Bencher) {
    let mut draft = Draft::typical();
    draft.set(Slot::Pack, "parallel", 6.0);
    draft.set(Slot::Motor, "winding_k_per_w", 2.0);
    draft.set(Slot::Controller, "motor_cutback_start_c", 45.0);
    draft.set(Slot::Controller, "motor_cutback_end_c", 65.0);
    let drive = Drive::new(&Build::check(&draft).expect("within limits"));
    bencher.bench(|| black_box(&drive).ride_style(Style::Flatout, Until::time(3600.0)));
}

#[divan::bench(args = Style::ALL)]
fn an_hour_in_a_style(bencher: Bencher, style: Style) {
    let drive = Drive::new(&build());
    let figures = style.figures(&drive.build);
    let legs = figures.legs();
    bencher.bench(|| {
        let (course, until) = (Course::Legs(&legs), Until::time(3600.0));
        black_box(&drive).ride(course, figures.manner(), until, 1.0, Steps::USUAL)
    });
}

/// A steady ride until the speed is lost, as every distance on the page is one.
#[divan::bench]
fn a_steady_ride_to_empty(bencher: Bencher) {
    let build = Build::check(&Draft::typical()).expect("within limits");
    let drive = Drive::new(&build);
    bencher.bench(|| black_box(&drive).reach(build.ride.cruise_m_s));
}

#[divan::bench]
fn an_urban_cycle(bencher: Bencher) {
    let drive = Drive::new(&build());
    bencher.bench(|| black_box(&drive).ride_urban(UrbanFit::Scaled, 1.0));
}

#[divan::bench]
fn a_sprint_to_30_km_h(bencher: Bencher) {
    let drive = Drive::new(&build());
    bencher.bench(|| black_box(&drive).sprint(Goal::Speed(30.0 / 3.6), 0.0, 1.0));
}

#[divan::bench]
fn braking_in_every_case(bencher: Bencher) {
    let drive = Drive::new(&build());
    bencher.bench(|| black_box(&drive).braking_cases(25.0 / 3.6));
}

#[divan::bench]
fn a_long_climb(bencher: Bencher) {
    let drive = Drive::new(&build());
    bencher.bench(|| black_box(&drive).long_climb(0.15, 15.0 / 3.6));
}

#[divan::bench]
fn a_charge(bencher: Bencher) {
    let drive = Drive::new(&build());
    bencher.bench(|| black_box(&drive).charge(0.0, 1.0));
}

const QUICK: [Quantity; 4] =
    [Quantity::TopSpeed, Quantity::Hill, Quantity::SteadyDistance, Quantity::ChargeTime];

#[divan::bench(args = QUICK, sample_count = 20)]
fn a_band_of_500_samples(bencher: Bencher, quantity: Quantity) {
    let build = build();
    bencher.bench(|| Band::of(black_box(&build), quantity));
}

#[divan::bench(sample_count = 20)]
fn a_town_band_of_64_samples(bencher: Bencher) {
    let mut build = Build::check(&Draft::typical()).expect("within limits");
    build.ride.outing = Outing::Town;
    bencher.bench(|| {
        let mut sampler = Sampler::new(black_box(&build), Quantity::OutingDistance);
        sampler.take(82);
        sampler.band()
    });
}

#[divan::bench]
fn winter_and_age(bencher: Bencher) {
    let build = build();
    bencher.bench(|| (by_temperature(black_box(&build)), by_age(&build)));
}
