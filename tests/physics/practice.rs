//! A street board as the trade knows it, and what it does. Every figure here,
//! of the parts as of what they do, is common practice, no source.

use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Build, Draft, Drive, Mode, Sag, Slot, answers, totals};

/// Ten in series, three in parallel, 3 Ah cells, 324 Wh; motors of 190 rpm/V; wheels of
/// 97 mm; 16 teeth on 40.
const BOARD: &[(Slot, &str, f64)] = &[
    (Slot::Cell, "chemistry", 1.0),
    (Slot::Cell, "mass_kg", 0.048),
    (Slot::Cell, "capacity_ah", 3.0),
    (Slot::Cell, "resistance_10s_mohm", 22.0),
    (Slot::Cell, "max_discharge_a", 20.0),
    (Slot::Pack, "series", 10.0),
    (Slot::Pack, "parallel", 3.0),
    (Slot::Pack, "protection_a", 60.0),
    (Slot::Pack, "mass_kg", 1.9),
    (Slot::Motor, "kv_rpm_per_v", 190.0),
    (Slot::Motor, "resistance_ll_mohm", 62.0),
    (Slot::Motor, "no_load_a", 0.9),
    (Slot::Motor, "max_current_a", 75.0),
    (Slot::Motor, "mass_kg", 0.72),
    (Slot::Controller, "motor_current_a", 60.0),
    (Slot::Controller, "battery_current_a", 30.0),
    (Slot::Controller, "mass_kg", 0.32),
    (Slot::MotorPulley, "teeth", 16.0),
    (Slot::WheelPulley, "teeth", 40.0),
    (Slot::Belt, "width_mm", 15.0),
    (Slot::Wheel, "diameter_mm", 97.0),
    (Slot::Wheel, "rolling_smooth", 0.0114),
    (Slot::Wheel, "roughness_percent", 30.0),
    (Slot::Truck, "mass_kg", 1.7),
    (Slot::Deck, "mass_kg", 2.3),
];

fn board(changes: &[(Slot, &str, f64)]) -> Build {
    let mut draft = Draft::typical();
    for (slot, key, value) in BOARD.iter().chain(changes) {
        assert!(slot.kind().field_index(key).is_some(), "no such input: {key}");
        draft.set(*slot, key, *value);
    }
    Build::check(&draft).expect("in range")
}

/// 22 km/h is the relaxed pace meant here.
#[test]
fn the_street_pack_carries_about_32_km() {
    let board = board(&[(Slot::Ride, "cruise_km_h", 22.0)]);
    assert!((totals(&board).nameplate_wh - 324.0).abs() < 1e-9);
    let km = answers(&board).distance.cruise.distance_m / 1000.0;
    println!("324 Wh at 22 km/h: {km:.1} km");
    assert!((km / 32.0 - 1.0).abs() < 0.20, "{km} km");
}

/// Up to about 64 km/h with 20 motor teeth, by the wheel pulleys of 36 to 44
/// teeth and the wheels of 90 to 107 mm on it.
#[test]
fn twenty_motor_teeth_reach_about_64_km_h() {
    let open = Mode { current_share: 1.0, speed_cap_m_s: None };
    let mut fastest = 0.0_f64;
    for teeth in [36.0, 40.0, 44.0] {
        for diameter_mm in [90.0, 97.0, 107.0] {
            let drive = Drive::new(&board(&[
                (Slot::MotorPulley, "teeth", 20.0),
                (Slot::WheelPulley, "teeth", teeth),
                (Slot::Wheel, "diameter_mm", diameter_mm),
            ]));
            let full = drive.supply(1.0, Sag::Burst);
            fastest = fastest.max(drive.top_speed(&full, &open, Slope::FLAT).speed_m_s * 3.6);
        }
    }
    println!("20 motor teeth: up to {fastest:.1} km/h");
    assert!((fastest / 64.0 - 1.0).abs() < 0.20, "{fastest} km/h");
}
