//! What the parts add up to, and how a value in a file's unit becomes SI.

use crate::check::{Check, check};
use pitchline_core::{Build, Draft, Posture, Slot, Surface, totals};

const BY_HAND: &str = "added up by hand from the typical values of each part";
const SCALE: &str = "by hand: the unit's definition";
const SKIER: &str = "Drag area of a cross-country skier, 1988, coast-down tests: 0.65 and 0.27 m²";

fn typical_with(changes: &[(Slot, &str, f64)]) -> Build {
    let mut draft = Draft::typical();
    for (slot, key, value) in changes {
        draft.set(*slot, key, *value);
    }
    Build::check(&draft).expect("in range")
}

fn sums() -> Vec<Check> {
    let plain = typical_with(&[]);
    let single = typical_with(&[(Slot::Truck, "motor_count", 1.0)]);
    let weighed = typical_with(&[(Slot::Pack, "mass_kg", 3.1), (Slot::Wheel, "mass_kg", 0.9)]);
    let priced = typical_with(&[
        (Slot::Pack, "price", 400.0),
        (Slot::Cell, "price", 5.0),
        (Slot::Motor, "price", 90.0),
        (Slot::Wheel, "price", 20.0),
        (Slot::Belt, "price", 10.0),
        (Slot::Deck, "price", 120.0),
    ]);
    vec![
        // Thirty cells of 70 g and a quarter more.
        check("mass of a pack from its cells", plain.pack_mass_kg(), 2.625, 1e-12, BY_HAND),
        // Pack 2.625, controller 0.35, deck 2.6, trucks 1.5, four wheels 1.12,
        // and twice 0.75 + 0.04 + 0.12 + 0.025.
        check("mass of a board", plain.board_mass_kg(), 10.065, 1e-12, BY_HAND),
        check("mass of a board with one motor", single.board_mass_kg(), 9.13, 1e-12, BY_HAND),
        // 0.475 more of pack and four times 0.62 more of wheel.
        check("mass of a board weighed", weighed.board_mass_kg(), 13.02, 1e-12, BY_HAND),
        check("mass on the road", plain.mass_kg(), 92.065, 1e-12, BY_HAND),
        check("mass in the totals", totals(&plain).total_mass_kg, 92.065, 1e-12, BY_HAND),
        // The pack's price has its cells': 400 + 2 × 90 + 4 × 20 + 2 × 10 + 120.
        check("price", priced.price().0, 800.0, 1e-9, BY_HAND),
        check("slots without a price", priced.price().1 as f64, 5.0, 0.0, BY_HAND),
        check("nameplate of a board", totals(&plain).nameplate_wh, 324.0, 1e-9, BY_HAND),
        check("ratio of a board", totals(&plain).gear_ratio, 2.25, 0.0, BY_HAND),
    ]
}

fn values() -> Vec<Check> {
    let b = typical_with(&[(Slot::Place, "headwind_km_h", 18.0)]);
    let mut list = vec![
        check("rolling radius", b.wheel.radius_m(), 0.0475, 1e-15, SCALE),
        check("milliohm", b.motor.resistance_ll_ohm, 0.06, 1e-15, SCALE),
        check("microhenry", b.motor.inductance_h, 22e-6, 1e-18, SCALE),
        check("percent", b.controller.max_duty, 0.95, 1e-15, SCALE),
        check("kilometres an hour", b.place.headwind_m_s, 5.0, 1e-15, SCALE),
        check("newton for each millimetre", b.belt.rating_n_per_m, 30_000.0, 1e-9, SCALE),
        check("millimetre", b.belt.pitch_m, 0.005, 1e-15, SCALE),
        check("degrees Celsius", b.ride.winding_c, 60.0, 0.0, SCALE),
        check("revolutions a minute", b.motor.no_load_rpm, 5000.0, 0.0, SCALE),
        check("upright", Posture::Upright.drag_area_m2(), 0.65, 0.0, SKIER),
        check("crouched", Posture::Crouched.drag_area_m2(), 0.27, 0.0, SKIER),
    ];
    // 0.012 and 15 % of it for each step of roughness: none on smooth asphalt,
    // one on the street, five on gravel.
    for (surface, rolling) in
        [(Surface::Smooth, 0.012), (Surface::Street, 0.0138), (Surface::Gravel, 0.021)]
    {
        let got = b.wheel.rolling(surface);
        list.push(check(format!("rolling on {surface:?}"), got, rolling, 1e-15, BY_HAND));
    }
    list
}

pub(crate) fn checks() -> Vec<Check> {
    [sums(), values()].concat()
}
