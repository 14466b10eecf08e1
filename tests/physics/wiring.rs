//! Currents, leads and fuse of a pack against figures from elsewhere.

use pitchline_core::physics::wire::{WireDiameter, area_mm2};
use pitchline_core::{Build, Draft, Rating, Slot, Wiring, gauge, wiring};

fn of(set: &[(Slot, &str, f64)]) -> Wiring {
    let mut draft = Draft::typical();
    for (slot, key, value) in set {
        draft.set(*slot, key, *value);
    }
    wiring(&draft, &Build::check(&draft).expect("in range"))
}

/// Worked out outside of the core from ASTM B258 diameters and IEC 60028 resistivity at 60 °C, both
/// leads together: gauge 10, 0.8 m, 40 A.
#[test]
fn leads_lose_what_the_standards_say() {
    let found = of(&[
        (Slot::Pack, "wire_awg", 10.0),
        (Slot::Pack, "wire_m", 0.8),
        (Slot::Controller, "battery_current_a", 20.0),
    ]);
    assert!((found.peak_a - 40.0).abs() < 1e-6, "{}", found.peak_a);
    assert!((found.leads.ohm / 3.033_817e-3 - 1.0).abs() < 1e-6, "{:?}", found.leads);
    assert!((found.leads.drop_v / 0.121_353 - 1.0).abs() < 1e-5, "{:?}", found.leads);
}

/// Areas by the diameters, in, of a published solid-wire table (citing Floyd), which has four or five
/// digits of them: half of the last is up to 0.25 % of the area.
#[test]
fn areas_are_those_of_the_published_diameters() {
    for (gauge, inches) in [
        (8.0, 0.128_49),
        (10.0, 0.101_89),
        (12.0, 0.0808),
        (14.0, 0.064_08),
        (16.0, 0.050_82),
        (18.0, 0.0403),
    ] {
        let found = area_mm2(WireDiameter { gauge }.value());
        let published = 0.25 * std::f64::consts::PI * (inches * 25.4_f64).powi(2);
        assert!((found / published - 1.0).abs() < 2.5e-3, "{gauge}: {found}, {published}");
    }
}

/// The rule of 75 %: common practice, no source. By hand: 50 A at full throttle; the leads bear 70 A,
/// the plug 60 A, the cells 3 times 30 A.
#[test]
fn the_fuse_lies_between_what_flows_and_what_the_weakest_bears() {
    let rated = [
        (Slot::Pack, "wire_a", 70.0),
        (Slot::Pack, "connector_a", 60.0),
        (Slot::Cell, "max_discharge_a", 30.0),
    ];
    let fuse = of(&rated).fuse;
    assert_eq!((fuse.fuse_a, fuse.most_a), (Some(50.0), Some(60.0)));
    assert_eq!(fuse.protects, Some(Rating::PackConnector));
    assert_eq!(fuse.least_v, 42.0);
    // 55 A flow, and the leads bear no more than 58 A: nothing on sale lies between.
    let narrow = [(Slot::Controller, "battery_current_a", 27.5), (Slot::Pack, "wire_a", 58.0)];
    let fuse = of(&[&rated[..], &narrow].concat()).fuse;
    assert_eq!((fuse.fuse_a, fuse.most_a), (None, Some(58.0)));
    // Without the rating of the leads there is no fuse.
    let fuse = of(&rated[1..]).fuse;
    assert_eq!((fuse.fuse_a, fuse.most_a, &fuse.missing[..]), (None, None, &[Rating::Leads][..]));
}

/// A group of three cells of which one fails: two thirds of the charge, half as much again in each.
#[test]
fn a_weak_group_ends_the_pack() {
    let found = of(&[]);
    assert!((found.weak_share - 2.0 / 3.0).abs() < 1e-12);
    assert!((found.weak_cell_a / found.cell_a - 1.5).abs() < 1e-12);
    assert_eq!(of(&[(Slot::Pack, "parallel", 1.0)]).weak_share, 0.0);
}

/// Open-circuit voltages of Chen et al., J. Electrochem. Soc. 167:080534 (2020), which the class of
/// energy cells is made from; ten in series.
#[test]
fn the_gauge_reads_resting_volts() {
    let found = gauge(&Build::check(&Draft::typical()).expect("in range"));
    for (charge, volts) in
        [(1.0, 4.2), (0.9, 4.096_656), (0.75, 3.994_304), (0.5, 3.750_874), (0.25, 3.528_563)]
    {
        let (_, found_v) = found.points.iter().find(|(at, _)| *at == charge).expect("on the card");
        assert!((found_v / (10.0 * volts) - 1.0).abs() < 5e-4, "{charge}: {found_v}");
    }
    assert!(found.lights_v.windows(2).all(|pair| pair[0] < pair[1]));
    assert!(found.sag_v.is_some_and(|sag| sag > 0.0));
}
