//! The demo against what the trade sees. Every bound here is common practice,
//! no source, unless it says otherwise. What boards of common practice themselves
//! do is checked in `tests/physics/practice.rs`.

use crate::gearing::top_km_h;
use crate::{build, demo};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Distance, Draft, Slot, answers, totals};
use std::f64::consts::PI;

/// The answer to "How far?" at a cruising speed.
fn ride(draft: &Draft, km_h: f64) -> Distance {
    let mut draft = draft.clone();
    draft.set(Slot::Ride, "cruise_km_h", km_h);
    answers(&build(&draft)).distance
}

/// Road travelled for each turn of the motor.
fn road_per_turn(draft: &Draft) -> f64 {
    let b = build(draft);
    2.0 * PI * b.wheel.radius_m() * b.motor_pulley.teeth / b.wheel_pulley.teeth
}

/// The street kit on the small air-filled tyre: rolling figures and diameter
/// changed, and geared for that diameter; nothing else, its masses included.
fn on_air(catalog: &Catalog) -> Draft {
    let street = catalog.draft("kittiwake");
    let swap = |draft: &mut Draft, slot: Slot, part: &pitchline_core::Record| {
        let mass = draft.value(slot, "mass_kg");
        let at = slot.kind().field_index("mass_kg").unwrap();
        draft.set_record(slot, part.clone());
        draft.set_value(slot, at, mass);
    };
    let fitted = catalog.offered("gannet", Slot::WheelPulley).into_iter().map(|pulley| {
        let mut draft = street.clone();
        swap(&mut draft, Slot::Wheel, catalog.offered("gannet", Slot::Wheel)[0]);
        swap(&mut draft, Slot::WheelPulley, pulley);
        draft
    });
    let off = |draft: &Draft| (road_per_turn(draft) / road_per_turn(&street)).ln().abs();
    fitted.min_by(|a, b| off(a).total_cmp(&off(b))).unwrap()
}

/// The same board, rider and surface at the same speed. The tyre's share of the
/// whole falls as air resistance grows, so the extra is the largest at 20 km/h.
#[test]
fn air_filled_tyres_cost_35_to_45_percent_more() {
    let demo = demo();
    let (street, air) = (demo.draft("kittiwake"), on_air(&demo));
    assert!((road_per_turn(&air) / road_per_turn(&street) - 1.0).abs() < 0.05);
    let more = |km_h: f64| ride(&air, km_h).wh_per_km / ride(&street, km_h).wh_per_km - 1.0;
    let found = [20.0, 25.0, 30.0].map(more);
    println!("air against urethane at 20, 25, 30 km/h: {found:.3?}");
    let [at_20, at_25, at_30] = found;
    let mean = (at_20 + at_25 + at_30) / 3.0;
    for (what, more) in [("20 km/h", at_20), ("25 km/h", at_25), ("mean of 20 to 30 km/h", mean)] {
        assert!((0.35..=0.45).contains(&more), "{what}: {more}");
    }
}

#[test]
fn street_wheels_take_8_to_13_wh_per_km_at_20_to_30_km_h() {
    let street = demo().draft("kittiwake");
    for km_h in [20.0, 25.0, 30.0] {
        let used = ride(&street, km_h).wh_per_km;
        println!("Kittiwake at {km_h} km/h: {used:.2} Wh/km");
        assert!((8.0..=13.0).contains(&used), "{km_h} km/h: {used}");
    }
}

#[test]
fn air_filled_tyres_take_15_to_25_wh_per_km_at_25_to_30_km_h() {
    let rough = demo().draft("gannet");
    assert!((0.150..=0.200).contains(&build(&rough).wheel.diameter_m));
    for km_h in [25.0, 30.0] {
        let used = ride(&rough, km_h).wh_per_km;
        println!("Gannet at {km_h} km/h: {used:.2} Wh/km");
        assert!((15.0..=25.0).contains(&used), "{km_h} km/h: {used}");
    }
}

#[test]
fn three_quarters_or_more_of_the_pack_reaches_the_road() {
    for kit in ["kittiwake", "gannet"] {
        let energy = ride(&demo().draft(kit), 22.0).ledger;
        let share = (energy.rolling_wh + energy.air_wh) / (energy.stored_wh - energy.pack_wh);
        println!("{kit}: {share:.3} of the pack's energy reaches the road");
        assert!((0.75..=0.85).contains(&share), "{kit}: {share}");
    }
}

/// No load: all the volts of a full pack, by the usual product of kV, volts and
/// circumference.
#[test]
fn loaded_top_speed_is_75_to_90_percent_of_no_load() {
    for kit in ["kittiwake", "gannet"] {
        let draft = demo().draft(kit);
        let b = build(&draft);
        let full_v = b.pack.series * b.cell.full_v;
        let no_load = b.motor.kv_rpm_per_v * full_v * 60.0 / 1000.0 * road_per_turn(&draft);
        let top = top_km_h(&draft);
        println!("{kit}: {top:.1} km/h of {no_load:.1} km/h without load");
        assert!((0.75..=0.90).contains(&(top / no_load)), "{kit}: {top} of {no_load}");
    }
}

#[test]
fn tyres_give_as_tyres_do() {
    let demo = demo();
    for wheel in demo.offered("kittiwake", Slot::Wheel) {
        let mut draft = demo.draft("kittiwake");
        draft.set_record(Slot::Wheel, wheel.clone());
        let wheel = build(&draft).wheel;
        assert!((0.0005..=0.002).contains(&wheel.deflection_m));
        assert!((0.083..=0.110).contains(&wheel.diameter_m));
        // From memory: good asphalt, and worn streets.
        assert!((0.010..=0.020).contains(&wheel.rolling(pitchline_core::Surface::Street)));
        assert!((0.020..=0.030).contains(&wheel.rolling(pitchline_core::Surface::Gravel)));
    }
    for wheel in demo.offered("gannet", Slot::Wheel) {
        let mut draft = demo.draft("gannet");
        draft.set_record(Slot::Wheel, wheel.clone());
        let wheel = build(&draft).wheel;
        let share = wheel.deflection_m / (wheel.diameter_m / 2.0);
        assert!((0.03..=0.06).contains(&share), "{share}");
    }
}

#[test]
fn rider_and_board_weigh_80_to_110_kg() {
    for kit in ["kittiwake", "gannet"] {
        let found = totals(&build(&demo().draft(kit)));
        assert!((80.0..=110.0).contains(&found.total_mass_kg), "{}", found.total_mass_kg);
    }
}
