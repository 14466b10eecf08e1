//! Words of "What gives first?".

use super::page::Warning;
use super::{Answer, Style, percent};
use pitchline_core::{HOT_DAY_C, Level, Margin, Margins, Occasion, Rating, Unit};

/// The fold of every rating.
pub const ALL: &str = "Every rating";
/// The fold of the ratings that nobody gave.
pub const MISSING: &str = "Ratings to fill in";
/// Within it.
pub const MISSING_WHY: &str = "Nothing is said about these parts until you enter what their makers rate them for. Look on the part or its data sheet, or ask.";
/// The fold of what is asked when.
pub const COUNTED: &str = "How it's judged";
/// Behind it, in a few words.
pub const COUNTED_HINT: &str = "what is asked, and when";
/// What is asked when, a sentence or two each.
pub const COUNTED_LINES: [&str; 4] = [
    "Full throttle is all that the controller's limits let through, at any speed, with a full or nearly empty pack. It lasts seconds.",
    "Fuses, wires, plugs and continuous ratings are judged by your hill at your cruising speed, for as long as it lasts. A fuse carries 75 % of its rated current for long.",
    "Heat is judged on the same hill at 35 °C. The four wheels share the load equally.",
    "Less than 10 % to spare is close. The 75 %, 35 °C and 10 % are rules of thumb.",
];
/// Name of the mark that all bars are measured against.
pub const MARK: &str = "rating";
/// What the table of the picture opens with.
pub const TABLE: &str = "Table of ratings";
/// Caption of the picture and its table.
pub const CAPTION: &str = "What is asked of each rating, the least to spare first";
/// Heads of the table.
pub const HEADS: [&str; 5] = ["Part", "When", "Asked", "Rated", "To spare"];
/// Where nothing is known.
pub const NOTHING: &str = "No ratings are known.";
/// Caution by the picture.
pub const CAUTION: Warning = Warning {
    short: "Wires, plugs and fuses that are too small get hot enough to start a fire. If anything is over its rating, change it before you ride.",
    more: "Have packs, fuses and wiring chosen and fitted by qualified people. A rating that was entered wrongly protects nothing: check it on the part itself.",
};

/// What a rating is of.
#[must_use]
pub const fn name(rating: Rating) -> &'static str {
    match rating {
        Rating::CellDischarge => "Cells, discharging",
        Rating::CellCharge => "Cells, charging",
        Rating::CellRegen => "Cells, while braking",
        Rating::FullPackRegen => "Full pack, while braking",
        Rating::Protection => "Protection circuit",
        Rating::Fuse => "Main fuse",
        Rating::FuseVoltage => "Main fuse, voltage",
        Rating::Leads => "Leads to the controller",
        Rating::InnerWires => "Wiring inside the pack",
        Rating::PackConnector => "Pack connector",
        Rating::ChargePort => "Charging port",
        Rating::ControllerVoltage => "Controller voltage",
        Rating::ControllerMotorCurrent => "Controller, motor current",
        Rating::ControllerBatteryCurrent => "Controller, battery current",
        Rating::ControllerSpeed => "Controller ERPM",
        Rating::ControllerHeat => "Controller heat",
        Rating::MotorCurrent => "Motor, peak current",
        Rating::MotorContinuous => "Motor, continuous current",
        Rating::WindingHeat => "Motor heat",
        Rating::MotorConnector => "Motor connectors",
        Rating::Belt => "Belt pull",
        Rating::Bearings => "Wheel bearings",
        Rating::WheelLoad => "Load on a wheel",
        Rating::TyrePressure => "Tyre pressure",
        Rating::DeckLoad => "Deck load",
    }
}

/// When it is asked for the most.
#[must_use]
pub fn when(occasion: Occasion, style: Style) -> String {
    match occasion {
        Occasion::FullThrottle => "at full throttle".into(),
        Occasion::Hill => "on your hill".into(),
        Occasion::HotDay => {
            format!("on your hill at {}", style.si(HOT_DAY_C, Unit::Celsius, 2))
        }
        Occasion::TopSpeed => "at top speed".into(),
        Occasion::Braking => "when braking".into(),
        Occasion::FullPack => "with a full pack".into(),
        Occasion::Charging => "on the charger".into(),
        Occasion::Standing => "standing on it".into(),
    }
}

/// The unit that it is shown in.
const fn unit(rating: Rating) -> Unit {
    match rating {
        Rating::FullPackRegen | Rating::FuseVoltage | Rating::ControllerVoltage => Unit::Volt,
        Rating::ControllerSpeed | Rating::Bearings => Unit::Rpm,
        Rating::Belt => Unit::Newton,
        Rating::WheelLoad | Rating::DeckLoad => Unit::Kilogram,
        Rating::TyrePressure => Unit::Bar,
        _ => Unit::Ampere,
    }
}

/// A value of a rating, with its unit.
fn value(rating: Rating, si: f64, style: Style) -> String {
    style.si(si, unit(rating), 3)
}

/// A level in a word, behind its sign.
#[must_use]
pub const fn level(level: Level) -> &'static str {
    match level {
        Level::Over => "✕ over",
        Level::Close => "! close",
        Level::Fine => "✓ fine",
    }
}

/// What is left, in words: "20 % to spare".
fn left(margin: &Margin) -> String {
    match margin.level {
        Level::Over => format!("{} over", percent(-margin.left)),
        _ => format!("{} to spare", percent(margin.left)),
    }
}

/// The answer: what gives first.
#[must_use]
pub fn first(margin: &Margin, style: Style) -> Answer {
    Answer {
        name: "Least to spare".into(),
        figure: name(margin.rating).into(),
        unit: "",
        limit: format!("{}. {}", capital_left(margin), asked(margin, style)),
    }
}

fn capital_left(margin: &Margin) -> String {
    super::words::capital(&left(margin))
}

/// What is asked of it and when, and what it bears.
#[must_use]
pub fn asked(margin: &Margin, style: Style) -> String {
    let Margin { rating, asked, bears, occasion, .. } = *margin;
    let briefly = margin.briefly.map_or_else(String::new, |most| {
        format!(" For seconds at full throttle it's {}.", value(rating, most, style))
    });
    let rated = if rating == Rating::Fuse { "carries for long" } else { "is rated for" };
    format!(
        "Asked for {} {}, it {rated} {}.{briefly}",
        value(rating, asked, style),
        when(occasion, style),
        value(rating, bears, style),
    )
}

/// The same for a line of the overview.
#[must_use]
pub fn line(margin: &Margin) -> String {
    format!("{}: {}", name(margin.rating), left(margin))
}

/// How many are over, close and unknown, in a sentence.
#[must_use]
pub fn finding(found: &Margins) -> String {
    let count = |level| found.list.iter().filter(|margin| margin.level == level).count();
    let all = found.list.len();
    match (count(Level::Over), count(Level::Close)) {
        (0, 0) => format!("All {all} known ratings have at least 10\u{a0}% to spare."),
        (0, close) => {
            format!("None of {all} known ratings is exceeded. {close} of them come close.")
        }
        (over, 0) => format!("{over} of {all} known ratings are exceeded."),
        (over, close) => {
            format!("{over} of {all} known ratings are exceeded, and {close} come close.")
        }
    }
}

/// How many are missing, in a few words.
#[must_use]
pub fn missing(count: usize) -> String {
    if count == 0 { "none".into() } else { format!("{count} not given") }
}

/// What stands at the right above a bar.
#[must_use]
pub fn amount(margin: &Margin, assumed: bool, style: Style) -> String {
    let Margin { rating, asked, bears, .. } = *margin;
    let shown = style.units.shown(unit(rating));
    let figure = |si: f64| style.significant(style.shown_si(si, unit(rating)), 3);
    let note = if assumed { " assumed" } else { "" };
    let sign = level(margin.level).chars().next().unwrap_or(' ');
    format!("{} of {}\u{a0}{}{note} {sign}", figure(asked), figure(bears), shown.symbol)
}

/// What the cursor says at a bar.
#[must_use]
pub fn readout(margin: &Margin, style: Style) -> String {
    format!("{}: {}. {}", name(margin.rating), left(margin), asked(margin, style))
}

/// A row of the table.
#[must_use]
pub fn row(margin: &Margin, assumed: bool, style: Style) -> Vec<String> {
    let Margin { rating, asked, bears, occasion, .. } = *margin;
    let rated = value(rating, bears, style);
    vec![
        name(rating).into(),
        when(occasion, style),
        value(rating, asked, style),
        if assumed { format!("{rated}, assumed") } else { rated },
        format!("{} {}", percent(margin.left), level(margin.level)),
    ]
}
