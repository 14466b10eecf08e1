//! Names of things: questions, kinds, slots, choices, limits.

use pitchline_core::band::Uncertain;
use pitchline_core::ride::{Met, RideEnd, SagCause};
use pitchline_core::{Kind, Limit, Slot};

/// What a kind of part is called.
#[must_use]
pub fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Cell => "Cell",
        Kind::Pack => "Battery pack",
        Kind::Motor => "Motor",
        Kind::Controller => "Controller",
        Kind::MotorPulley => "Motor pulley",
        Kind::WheelPulley => "Wheel pulley",
        Kind::Belt => "Belt",
        Kind::Wheel => "Wheel",
        Kind::Charger => "Charger",
        Kind::Deck => "Deck",
        Kind::Truck => "Trucks",
        Kind::Mode => "Ride mode",
        Kind::Rider => "Rider",
        Kind::Place => "Place and weather",
        Kind::Ride => "Ride",
        Kind::Bench => "Workbench",
    }
}

/// What a slot is called.
#[must_use]
pub fn slot(slot: Slot) -> &'static str {
    match slot {
        Slot::ModeLow => "Ride mode, gentle",
        Slot::ModeMid => "Ride mode, everyday",
        Slot::ModeHigh => "Ride mode, strong",
        other => kind(other.kind()),
    }
}

/// What a choice is called, by its name in files.
#[must_use]
pub fn choice(name: &str) -> &'static str {
    match name {
        "energy" => "Energy cell (NMC or NCA)",
        "power" => "Power cell (NMC or NCA)",
        "lfp" => "LFP",
        "upright" => "Upright",
        "relaxed" => "Relaxed, side on",
        "crouched" => "Crouched",
        "smooth_asphalt" => "Smooth asphalt",
        "street_asphalt" => "Street asphalt",
        "coarse_asphalt" => "Coarse asphalt",
        "pavers" => "Pavers",
        "packed_gravel" => "Packed gravel",
        "peak_phase" => "Peak phase (field-oriented)",
        "direct" => "Direct current (six-step)",
        "steady_cruise" => "Steady cruise",
        "relaxed_loop" => "Relaxed loop",
        "stop_and_go_town" => "Stop-and-go town",
        "hill_session" => "Hill session",
        "full_send" => "Full send (full speed)",
        "my_own" => "My own",
        "city_cycle_cut" => "Urban cycle, speeds capped",
        "city_cycle_slowed" => "Urban cycle, scaled down",
        _ => "",
    }
}

/// What takes energy on a ride, in the order of the core's `Ledger::sinks_wh`.
pub const SINKS: [&str; 11] = [
    "Heat in the cells",
    "Heat in joints and wires",
    "Heat in the controller",
    "Heat in the windings",
    "Motor iron and bearing losses",
    "Belt losses",
    "Rolling resistance",
    "Air resistance",
    "Climbing",
    "Foot or other brakes",
    "Motion left at the end",
];

/// What is not known exactly.
#[must_use]
pub fn uncertain(input: Uncertain) -> &'static str {
    match input {
        Uncertain::Mass => "weight of rider and bag",
        Uncertain::Rolling => "rolling resistance",
        Uncertain::DragArea => "drag area",
        Uncertain::Wind => "headwind",
        Uncertain::Temperature => "air temperature",
        Uncertain::Capacity => "cell capacity",
        Uncertain::Resistance => "cell resistance",
        Uncertain::Belt => "belt efficiency",
        Uncertain::Kv => "motor Kv",
    }
}

/// The limit that binds, in a few words.
#[must_use]
pub fn limit(limit: Limit) -> &'static str {
    match limit {
        Limit::ControllerMotorCurrent => "motor current limit",
        Limit::MotorCurrent => "motor current rating",
        Limit::ControllerBatteryCurrent => "battery current limit",
        Limit::PackProtection => "protection circuit limit",
        Limit::CellRating => "cell rating",
        Limit::PackPower => "pack power",
        Limit::Cutback => "voltage sag",
        Limit::CutOff => "pack cut-off",
        Limit::Voltage => "pack voltage",
        Limit::ElectricalSpeed => "ERPM limit",
        Limit::Belt => "belt rating",
        Limit::Grip => "grip",
        Limit::ModeSpeed => "speed cap",
        Limit::Empty => "empty pack",
        Limit::ControllerHot => "controller temperature",
        Limit::WindingHot => "winding temperature",
        Limit::BrakeCurrent => "brake current limit",
        Limit::RegenCurrent => "regen current limit",
        Limit::OverVoltage => "pack can't take more",
        Limit::Crawl => "low speed",
    }
}

/// The same where a curve leaves little room.
#[must_use]
pub fn limit_short(what: Limit) -> &'static str {
    let name = limit(what);
    name.strip_suffix(" limit").unwrap_or(name)
}

/// A limit that a ride met, in a few words.
#[must_use]
pub fn met(what: Limit, sag: Option<SagCause>) -> &'static str {
    match sag {
        Some(SagCause::LowCharge) => "low charge",
        Some(SagCause::ColdCells) => "cold cells",
        Some(SagCause::WeakCells) => "weak cells",
        None => limit(what),
    }
}

/// Where a ride ends because a whole day has passed.
pub const DAY: &str = "24\u{a0}h limit";

/// What ended a ride, in a few words.
#[must_use]
pub fn ended(end: RideEnd, limit: Limit, sag: Option<SagCause>) -> &'static str {
    if end == RideEnd::Time { DAY } else { met(limit, sag) }
}

/// Why a limit that a ride met holds the board back, in a sentence.
#[must_use]
pub fn met_why(met: &Met) -> &'static str {
    why(met.limit, met.sag)
}

/// The same of a limit, and what makes the pack sag where it is the pack's voltage.
#[must_use]
pub fn why(limit: Limit, sag: Option<SagCause>) -> &'static str {
    match sag {
        Some(SagCause::LowCharge) => "The pack's charge is low, so the controller limits power.",
        Some(SagCause::ColdCells) => {
            "Cold cells sag below the voltage at which the controller starts limiting power."
        }
        Some(SagCause::WeakCells) => {
            "The cells are too weak for this current. They sag even when full and warm."
        }
        None => limit_why(limit),
    }
}

/// What binds, and why, in sentences.
#[must_use]
pub fn limit_sentence(what: Limit) -> String {
    format!("Limit: {}. {}", limit_short(what), limit_why(what))
}

/// With a small letter in front.
#[must_use]
pub fn small(text: &str) -> String {
    let mut small = String::from(text);
    if let Some(first) = small.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    small
}

/// With a capital in front.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut capital = String::from(text);
    if let Some(first) = capital.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    capital
}

/// Whether it is a rating that nothing on the board keeps to by itself.
#[must_use]
pub const fn is_rating(limit: Limit) -> bool {
    matches!(limit, Limit::MotorCurrent | Limit::CellRating | Limit::Belt)
}

/// Why it is a limit, in a sentence.
#[must_use]
pub fn limit_why(limit: Limit) -> &'static str {
    match limit {
        Limit::ControllerMotorCurrent => "The controller won't give the motors any more current.",
        Limit::MotorCurrent => {
            "More current would exceed the motor's rating. Only the controller's settings can prevent that."
        }
        Limit::ControllerBatteryCurrent => {
            "The controller won't draw any more current from the pack."
        }
        Limit::PackProtection => {
            "Any more current would make the protection circuit disconnect the pack."
        }
        Limit::CellRating => {
            "More current would exceed the cells' rating. Only the controller's settings can prevent that."
        }
        Limit::PackPower => "More current would only make the voltage sag further.",
        Limit::Cutback => {
            "The pack sags below the voltage at which the controller starts limiting power."
        }
        Limit::CutOff => {
            "If the voltage dropped any lower, the protection circuit would disconnect the pack."
        }
        Limit::Voltage => "At this speed the motors need all of the pack's voltage.",
        Limit::ElectricalSpeed => "The controller cuts power above this motor speed.",
        Limit::Belt => {
            "More push would overload the belt. Only the controller's settings can prevent that."
        }
        Limit::Grip => "More push would spin the driven wheels.",
        Limit::ModeSpeed => "The ride mode caps the speed here.",
        Limit::Empty => "The charge is used up.",
        Limit::ControllerHot => "The controller is hot, so it limits power.",
        Limit::WindingHot => "The motor windings are so hot that power must be limited.",
        Limit::BrakeCurrent => "The controller isn't set to brake any harder.",
        Limit::RegenCurrent => "The controller won't feed any more current back into the pack.",
        Limit::OverVoltage => {
            "The pack can't take any more charge, so the motors can't brake any harder."
        }
        Limit::Crawl => "Motors can't brake at a crawl.",
    }
}
