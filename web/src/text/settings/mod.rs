//! Words of "What do I set?".

mod copied;

use super::page::Warning;
use super::{Answer, Style, limits, words};
pub use copied::{as_csv, as_text};
use pitchline_core::{
    Convention, Gauge, Grounds, LEVERS, ModeSettings, Rating, Recommended, Setting, Slot, Unit,
};

/// The button that sets the controller as recommended.
pub const USE: &str = "Use the recommended settings";
/// The button that sets it to the highest that the ratings allow.
const RAISE: &str = "Raise the limits to the highest allowed";

/// The button that sets the controller.
#[must_use]
pub const fn take(highest: bool) -> &'static str {
    if highest { RAISE } else { USE }
}

/// After that.
#[must_use]
pub const fn set(highest: bool) -> &'static str {
    if highest {
        "The limits are the highest that the ratings allow."
    } else {
        "The controller is set as recommended."
    }
}

/// Leads to an input that is missing.
pub const ENTER: &str = "Enter it";
/// Copies all lines as text.
pub const COPY: &str = "Copy as text";
/// Copies all lines as a table.
pub const COPY_CSV: &str = "Copy as CSV";
/// Over the table of ride modes.
pub const MODES: &str = "Ride modes";
/// The first column of it.
pub const MODES_OF: &str = "Per motor";
/// Below the ride modes.
pub const MODES_HELP: &str = "Modes keep full brakes. First ride: rule of thumb.";
/// The fold of throttle and brake.
pub const FEEL: &str = "How it feels";
/// Within it.
pub const FEEL_HELP: &str = "Acceleration in m/s² at 10 km/h on the flat, with you on it and the pack half full. 1 is gentle, 2.5 takes practice. Rule of thumb.";
/// The fold of the charge gauge.
pub const GAUGE: &str = "Charge gauge card";
/// Heads of its table.
pub const GAUGE_HEADS: [&str; 2] = ["Charge", "Pack voltage at rest"];
/// Below it.
pub const GAUGE_HELP: &str = "Read it after ten minutes at rest. The lights are a rule of thumb.";
/// Caution by the settings.
pub const CAUTION: Warning = Warning {
    short: "Test new settings with the wheels off the ground, then on an empty, level place, in a helmet and pads. Start with the first ride.",
    more: "Weak brakes don't stop you, and strong ones throw you. Check them at walking pace before you trust them. A full pack may hardly brake. Local law may limit speed and power.",
};
/// Where a value needs ratings.
const MISSING: &str = "Missing: ";

/// What is set.
#[must_use]
pub const fn name(setting: Setting) -> &'static str {
    match setting {
        Setting::MotorDrive => "Motor current, drive",
        Setting::MotorBrake => "Motor current, brake",
        Setting::BatteryDraw => "Battery current, drive",
        Setting::BatteryRegen => "Battery current, regen",
        Setting::Erpm => "ERPM limit",
        Setting::VoltageStart => "Battery cutback starts",
        Setting::VoltageEnd => "Battery cutback ends",
        Setting::ControllerHotStart => "Controller starts limiting",
        Setting::ControllerHotEnd => "Controller cuts out",
        Setting::MotorHotStart => "Motor starts limiting",
        Setting::MotorHotEnd => "Motor cuts out",
        Setting::MaxDuty => "Maximum duty cycle",
        Setting::PolePairs => "Motor pole pairs",
        Setting::GearRatio => "Gear ratio",
        Setting::WheelDiameter => "Wheel diameter",
        Setting::Series => "Cells in series",
    }
}

/// Its unit on the page, with the factor from SI.
const fn unit(setting: Setting) -> Unit {
    match setting {
        Setting::MotorDrive
        | Setting::MotorBrake
        | Setting::BatteryDraw
        | Setting::BatteryRegen => Unit::Ampere,
        Setting::Erpm => Unit::Rpm,
        Setting::VoltageStart | Setting::VoltageEnd => Unit::Volt,
        Setting::ControllerHotStart
        | Setting::ControllerHotEnd
        | Setting::MotorHotStart
        | Setting::MotorHotEnd => Unit::Celsius,
        Setting::MaxDuty => Unit::Percent,
        Setting::WheelDiameter => Unit::Millimetre,
        Setting::PolePairs | Setting::GearRatio | Setting::Series => Unit::None,
    }
}

/// Whose current it is counted as.
const fn convention(convention: Convention) -> &'static str {
    match convention {
        Convention::PeakPhase => "peak phase",
        Convention::Direct => "direct",
    }
}

/// Per motor, in total, per cell group, or of the board.
const fn per(setting: Setting) -> &'static str {
    match setting {
        Setting::MotorDrive
        | Setting::MotorBrake
        | Setting::BatteryDraw
        | Setting::BatteryRegen
        | Setting::Erpm => "per motor",
        Setting::VoltageStart | Setting::VoltageEnd => "per cell group",
        _ => "",
    }
}

/// What a board is: motors, groups and current convention.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Board {
    /// Motors, a count.
    pub motors: f64,
    /// Cell groups in series.
    pub series: f64,
    /// How its controller counts motor current.
    pub convention: Convention,
}

/// A name with whom it is for: "Battery current limit, drive, per motor".
#[must_use]
pub fn full_name(setting: Setting) -> String {
    match per(setting) {
        "" => name(setting).into(),
        per => format!("{}, {per}", name(setting)),
    }
}

/// The value of a setting, alone.
fn alone(setting: Setting, si: f64, style: Style) -> String {
    match setting {
        Setting::PolePairs | Setting::GearRatio | Setting::Series => style.significant(si, 3),
        Setting::Erpm => style.significant(si, 6),
        Setting::VoltageStart | Setting::VoltageEnd => style.si(si, unit(setting), 3),
        _ => style.si(si, unit(setting), 4),
    }
}

/// The value of a setting, with what it comes to in total.
#[must_use]
pub fn value(setting: Setting, si: f64, board: Board, style: Style) -> String {
    let one = alone(setting, si, style);
    let unit = unit(setting);
    let whole = |total: f64| style.si(total, unit, 4);
    match setting {
        Setting::MotorDrive | Setting::MotorBrake => {
            format!("{one} ({})", convention(board.convention))
        }
        Setting::BatteryDraw | Setting::BatteryRegen if board.motors > 1.0 => {
            format!("{one} ({} in total)", whole(board.motors * si))
        }
        Setting::VoltageStart | Setting::VoltageEnd => {
            format!("{one} ({} for the pack)", whole(board.series * si))
        }
        _ => one,
    }
}

/// Why it is that, or what is missing.
#[must_use]
pub fn why(found: &Recommended, style: Style) -> String {
    if !found.missing.is_empty() {
        let names = found.missing.iter().map(|(slot, key)| input(*slot, key));
        return format!("{MISSING}{}", names.collect::<Vec<_>>().join(", "));
    }
    let why = match (found.basis, found.value) {
        (Some(Grounds::Rating(rating)), Some(_)) => {
            let below = found.most.filter(|most| found.value < Some(*most));
            let most = below.map(|most| format!("At most {}. ", alone(found.setting, most, style)));
            format!("{}Protects: {}", most.unwrap_or_default(), protects(rating))
        }
        (Some(Grounds::Rating(rating)), None) => {
            format!("No setting is low enough for: {}", protects(rating))
        }
        (Some(Grounds::CutOff), _) if found.setting == Setting::VoltageStart => {
            "Slows you before the pack switches off".into()
        }
        (Some(Grounds::WindingLimit), _) if found.setting == Setting::MotorHotStart => {
            "Needs a motor sensor".into()
        }
        (Some(Grounds::WindingLimit), _) => "Protects: windings".into(),
        (Some(Grounds::Usual), _) => "Rule of thumb".into(),
        (Some(Grounds::Part | Grounds::CutOff), _) | (None, _) => String::new(),
    };
    if found.uncounted.is_empty() {
        return why;
    }
    format!("{why}. Not counted: {}", words::small(&limits::named(&found.uncounted)))
}

/// The part that a rating is of: "controller".
fn protects(rating: Rating) -> String {
    let name = limits::name(rating);
    words::small(name.split(',').next().unwrap_or(name))
}

/// An input by its label: "rated motor current, per motor".
fn input(slot: Slot, key: &str) -> String {
    words::small(super::label(slot.kind(), key))
}

/// A row of the card.
#[must_use]
pub fn row(found: &Recommended, board: Board, style: Style) -> Vec<String> {
    let shown = found.value.map_or_else(|| "–".into(), |si| value(found.setting, si, board, style));
    vec![full_name(found.setting), shown, why(found, style)]
}

/// What most of it comes to: motor and battery current limits, where both are there.
fn currents(found: &[Recommended], style: Style) -> Option<[String; 2]> {
    let of = |setting| found.iter().find(|one| one.setting == setting).and_then(|one| one.value);
    let amps = |si| style.si(si, Unit::Ampere, 3);
    Some([amps(of(Setting::MotorDrive)?), amps(of(Setting::BatteryDraw)?)])
}

/// The answer: the currents, and how much of the rest is there.
#[must_use]
pub fn lead(found: &[Recommended], style: Style) -> Answer {
    let ready = found.iter().filter(|one| one.value.is_some()).count();
    let missing = found.len() - ready;
    let counted = format!("{ready} of {}", found.len());
    let rest = match missing {
        0 => "No rating forbids them.",
        _ => "The rest wait for ratings.",
    };
    match currents(found, style) {
        Some([motor, battery]) => Answer {
            name: "Motor and battery current, per motor".into(),
            figure: format!("{motor} and {battery}"),
            unit: "",
            limit: format!("{counted} values ready. {rest}"),
        },
        None => Answer {
            name: "Values ready to set".into(),
            figure: counted,
            unit: "",
            limit: rest.into(),
        },
    }
}

/// The answer in one line.
#[must_use]
pub fn line(found: &[Recommended], style: Style) -> String {
    match currents(found, style) {
        Some([motor, battery]) => format!("Motor {motor}, battery {battery} per motor"),
        None => format!("{} values ready", lead(found, style).figure),
    }
}

/// The name of a mode: as its record says, or by its place; the first ride last.
#[must_use]
pub fn mode_name(slot: Option<Slot>, name: &str) -> String {
    let place = match slot {
        None => return "First ride".into(),
        Some(Slot::ModeLow) => "gentle",
        Some(Slot::ModeMid) => "everyday",
        Some(_) => "strong",
    };
    if name.is_empty() {
        words::capital(place)
    } else {
        format!("{} ({place})", words::capital(name))
    }
}

/// Rows of the ride modes: each setting, and its value in every mode.
#[must_use]
pub fn mode_rows(modes: &[ModeSettings], style: Style) -> Vec<Vec<String>> {
    let number =
        |value: Option<f64>| value.map_or_else(|| "–".into(), |si| style.significant(si, 6));
    let row = |name: String, of: &dyn Fn(&ModeSettings) -> String| {
        std::iter::once(name).chain(modes.iter().map(of)).collect::<Vec<_>>()
    };
    let cap = |mode: &ModeSettings| {
        mode.mode.speed_cap_m_s.map_or_else(|| "none".into(), |cap| style.speed(cap))
    };
    let speed = style.units.shown(Unit::KilometrePerHour).symbol;
    vec![
        row("Motor, A".into(), &|mode| number(mode.motor_a)),
        row("Brake, A".into(), &|mode| number(mode.brake_a)),
        row("Battery, A".into(), &|mode| number(mode.battery_a)),
        row("ERPM".into(), &|mode| number(mode.erpm)),
        row(format!("Cap, {speed}"), &cap),
    ]
}

/// Heads of the table of what is felt.
#[must_use]
pub fn feel_heads() -> Vec<String> {
    std::iter::once("Throttle or brake".to_owned()).chain(LEVERS.map(super::percent)).collect()
}

/// A row of it.
#[must_use]
pub fn feel_row(name: String, felt: [f64; 4], style: Style) -> Vec<String> {
    let one = felt.map(|felt| if felt < 0.05 { "slows".into() } else { style.fixed(felt, 1) });
    std::iter::once(name).chain(one).collect()
}

/// The name of the brakes in a mode.
#[must_use]
pub fn brakes(name: &str) -> String {
    format!("{name}, brakes")
}

/// Full throttle and brake in a few words.
#[must_use]
pub fn feel_hint(strong: &ModeSettings, style: Style) -> String {
    let [.., push] = strong.push_m_s2;
    let [.., brake] = strong.brake_m_s2;
    format!("{}\u{a0}m/s² away, {} braking", style.fixed(push, 1), style.fixed(brake, 1))
}

/// Rows of the gauge's card.
#[must_use]
pub fn gauge_rows(gauge: &Gauge, style: Style) -> Vec<Vec<String>> {
    let volts = |v: f64| style.si(v, Unit::Volt, 3);
    let point = |(charge, v): &(f64, f64)| vec![super::percent(*charge), volts(*v)];
    let light =
        |(place, v): (usize, &f64)| vec![format!("Light {} on above", place + 1), volts(*v)];
    let sag = gauge.sag_v.map(|sag| vec!["At cruising speed it reads lower by".into(), volts(sag)]);
    let lights = gauge.lights_v.iter().enumerate().map(light);
    gauge.points.iter().map(point).chain(lights).chain(sag).collect()
}

/// Half charge in a few words.
#[must_use]
pub fn gauge_hint(gauge: &Gauge, style: Style) -> String {
    let half = gauge.points.iter().find(|(charge, _)| *charge == 0.5);
    half.map_or_else(String::new, |(_, v)| format!("half full at {}", style.si(*v, Unit::Volt, 3)))
}
