//! Boards whose answers have a closed form: the shared inputs of several subjects.

use pitchline_core::{Build, Draft, Drive, Slot, Supply};

/// The load of the closed forms: 90 kg, Crr 0.012, CdA 0.55 m², density 1.225,
/// no wind; wheels of 48 mm rolling radius; a drive without belt, iron or
/// switching loss, and no limit that binds unless a check sets one.
pub(crate) fn reference() -> Draft {
    let mut draft = Draft::typical();
    for (slot, key, value) in [
        (Slot::Wheel, "diameter_mm", 100.0),
        (Slot::Wheel, "deflection_mm", 2.0),
        (Slot::Wheel, "rolling_smooth", 0.012),
        (Slot::Rider, "drag_area_m2", 0.55),
        (Slot::Rider, "gear_mass_kg", 0.0),
        (Slot::Place, "surface", 0.0),
        (Slot::Place, "air_c", 15.0),
        (Slot::Place, "altitude_m", 0.0),
        (Slot::Place, "headwind_km_h", 0.0),
        (Slot::Place, "grip_percent", 120.0),
        (Slot::MotorPulley, "teeth", 16.0),
        (Slot::WheelPulley, "teeth", 40.0),
        (Slot::Belt, "efficiency_percent", 100.0),
        (Slot::Belt, "rating_n_per_mm", 200.0),
        (Slot::Belt, "width_mm", 50.0),
        (Slot::Motor, "kv_rpm_per_v", 170.0),
        (Slot::Motor, "resistance_ll_mohm", 80.0),
        (Slot::Motor, "inductance_uh", 0.0),
        (Slot::Motor, "no_load_a", 0.0),
        (Slot::Motor, "max_current_a", 1000.0),
        (Slot::Controller, "convention", 1.0),
        (Slot::Controller, "motor_current_a", 1000.0),
        (Slot::Controller, "battery_current_a", 500.0),
        (Slot::Controller, "erpm_limit", 1_000_000.0),
        (Slot::Controller, "max_duty_percent", 100.0),
        (Slot::Controller, "switch_mohm", 0.0),
        (Slot::Controller, "switching_percent", 0.0),
        (Slot::Controller, "idle_w", 0.1),
        (Slot::Controller, "cutback_start_v", 2.0),
        (Slot::Controller, "cutback_end_v", 2.0),
        // Three in series keep every cell-group limit far below the supplies here.
        (Slot::Pack, "series", 3.0),
        (Slot::Pack, "parallel", 40.0),
        (Slot::Pack, "cut_off_v", 2.0),
        (Slot::Pack, "protection_a", 1000.0),
        (Slot::Cell, "max_discharge_a", 1000.0),
        (Slot::Ride, "winding_c", 20.0),
    ] {
        draft.set(slot, key, value);
    }
    weigh(&mut draft, 90.0);
    draft
}

/// A reference board with some values changed.
pub(crate) fn board(changes: &[(Slot, &str, f64)]) -> Drive {
    let mut draft = reference();
    for (slot, key, value) in changes {
        assert!(slot.kind().field_index(key).is_some(), "no such input: {key}");
        draft.set(*slot, key, *value);
    }
    weigh(&mut draft, 90.0);
    drive(&draft)
}

pub(crate) fn drive(draft: &Draft) -> Drive {
    Drive::new(&Build::check(draft).expect("in range"))
}

/// Sets the rider's mass so that everything on the road weighs `total_kg`.
pub(crate) fn weigh(draft: &mut Draft, total_kg: f64) {
    draft.set(Slot::Rider, "mass_kg", 60.0);
    let mass = Build::check(draft).expect("in range").mass_kg();
    draft.set(Slot::Rider, "mass_kg", 60.0 + total_kg - mass);
}

/// A source without resistance.
pub(crate) fn stiff(open_v: f64) -> Supply {
    Supply { open_v, resistance_ohm: 0.0, lead_ohm: 0.0 }
}
