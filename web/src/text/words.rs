//! Names of things: questions, kinds, slots, choices, limits.

use pitchline_core::band::Uncertain;
use pitchline_core::ride::{Met, SagCause};
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
        "peak_phase" => "Peak phase current",
        "direct" => "Direct current",
        "steady_cruise" => "Steady cruise",
        "relaxed_loop" => "Relaxed loop",
        "stop_and_go_town" => "Stop-and-go town",
        "hill_session" => "Hill session",
        "full_send" => "Full send (full speed)",
        "my_own" => "My own",
        "city_cycle_cut" => "City cycle, cut off",
        "city_cycle_slowed" => "City cycle, slowed down",
        _ => "",
    }
}

/// What takes energy on a ride, in the order of the core's `Ledger::sinks_wh`.
pub const SINKS: [&str; 11] = [
    "Cells, as heat",
    "Joints and wires",
    "Controller",
    "Windings",
    "Motor iron and bearings",
    "Belts",
    "Rolling",
    "Air",
    "Climbing",
    "Brakes",
    "Speed at the end",
];

/// What is not known exactly.
#[must_use]
pub fn uncertain(input: Uncertain) -> &'static str {
    match input {
        Uncertain::Mass => "mass of rider and load",
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

/// What holds the board back, in a few words.
#[must_use]
pub fn limit(limit: Limit) -> &'static str {
    match limit {
        Limit::ControllerMotorCurrent => "motor current limit",
        Limit::MotorCurrent => "motor rating",
        Limit::ControllerBatteryCurrent => "battery current limit",
        Limit::PackProtection => "pack protection",
        Limit::CellRating => "cell rating",
        Limit::PackPower => "pack power",
        Limit::Cutback => "sagging pack",
        Limit::CutOff => "pack cut-off",
        Limit::Voltage => "voltage",
        Limit::ElectricalSpeed => "electrical speed limit",
        Limit::Belt => "belt rating",
        Limit::Grip => "grip",
        Limit::ModeSpeed => "speed cap",
        Limit::Empty => "empty pack",
        Limit::ControllerHot => "hot controller",
        Limit::WindingHot => "hot windings",
        Limit::BrakeCurrent => "brake current limit",
        Limit::RegenCurrent => "regen current limit",
        Limit::OverVoltage => "full pack",
        Limit::Crawl => "crawling",
    }
}

/// A limit that a ride met, in a few words.
#[must_use]
pub fn met(what: Limit, sag: Option<SagCause>) -> &'static str {
    match sag {
        Some(SagCause::LowCharge) => "low pack",
        Some(SagCause::ColdCells) => "cold cells",
        Some(SagCause::WeakCells) => "weak cells",
        None => limit(what),
    }
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
        Some(SagCause::LowCharge) => "The pack is low, so the controller limits power.",
        Some(SagCause::ColdCells) => {
            "Cold cells sag below the voltage from which the controller limits power."
        }
        Some(SagCause::WeakCells) => {
            "The cells are too weak for this current: even full and warm they sag."
        }
        None => limit_why(limit),
    }
}

/// What binds, and why, in sentences.
#[must_use]
pub fn limit_sentence(what: Limit) -> String {
    format!("The limit is the {}. {}", limit(what), limit_why(what))
}

/// Why it holds the board back, in a sentence.
#[must_use]
pub fn limit_why(limit: Limit) -> &'static str {
    match limit {
        Limit::ControllerMotorCurrent => {
            "The controller gives each motor no more current than this."
        }
        Limit::MotorCurrent => "The motor is rated for no more current.",
        Limit::ControllerBatteryCurrent => "The controller draws no more from the pack.",
        Limit::PackProtection => "The pack's protection circuit allows no more.",
        Limit::CellRating => "The cells are rated for no more current.",
        Limit::PackPower => "More current would only sag the voltage further.",
        Limit::Cutback => "The pack sags below the voltage from which the controller limits power.",
        Limit::CutOff => "The pack would disconnect.",
        Limit::Voltage => "The motors spin so fast that they need all the voltage there is.",
        Limit::ElectricalSpeed => "The controller is set to stop pushing at this motor speed.",
        Limit::Belt => "More would overload the belt.",
        Limit::Grip => "More would spin the driven wheels.",
        Limit::ModeSpeed => "The ride mode stops pushing here.",
        Limit::Empty => "The charge is used up.",
        Limit::ControllerHot => "The controller holds back because it is hot.",
        Limit::WindingHot => "The windings are as hot as they, or the controller, allow.",
        Limit::BrakeCurrent => "The controller is set to brake no harder.",
        Limit::RegenCurrent => "The controller feeds no more back into the pack.",
        Limit::OverVoltage => "A full pack takes no charge, so the motors cannot brake.",
        Limit::Crawl => "Motors do not brake at a crawl.",
    }
}
