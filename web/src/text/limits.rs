//! Words of "What gives first?".

use super::page::Warning;
use super::{Answer, Style, percent, words};
use pitchline_core::{FUSE_SHARE, HOT_DAY_C, Level, Margin, Margins, Occasion, Rating, Unit};

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
    "Heat is judged as if that hill never ended, at 35 °C. The four wheels share the load equally.",
    "Less than 10 % to spare is close. The 75 %, 35 °C and 10 % are rules of thumb.",
];
/// The same in a sentence.
const FULL_PACK: &str = "A full pack brakes less than you have set: don't start downhill with one.";
/// Of a full pack that takes less than the brakes give back.
const LETS_GO: &str = "brakes less !";
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
        Rating::Fuse => "Main fuse, current",
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
        Rating::MotorCurrent => "Motor, current for seconds",
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
            format!("on an endless hill like yours at {}", style.si(HOT_DAY_C, Unit::Celsius, 2))
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
        _ if lets_go(margin) => "brakes less".into(),
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
        limit: format!("{}. {}", words::capital(&left(margin)), asked(margin, style)),
    }
}

/// What is asked of it and when, and what it bears.
#[must_use]
pub fn asked(margin: &Margin, style: Style) -> String {
    let Margin { rating, asked, bears, occasion, .. } = *margin;
    let briefly = margin.briefly.map_or_else(String::new, |most| {
        format!(" For seconds at full throttle it's {}.", value(rating, most, style))
    });
    let rated = match rating {
        Rating::Fuse => "carries for long",
        Rating::WindingHeat | Rating::ControllerHeat => "stays cool enough up to",
        _ => "is rated for",
    };
    format!(
        "{} it's asked for {}. It {rated} {}.{briefly}",
        words::capital(&when(occasion, style)),
        value(rating, asked, style),
        value(rating, bears, style),
    )
}

/// The exceeded rating with the least to spare, and how many others there are.
#[must_use]
pub fn overloaded(count: usize, worst: &Margin) -> String {
    match count {
        1 => format!("{}.", line(worst)),
        _ => format!("{}, and {} more over {}.", line(worst), count - 1, MARK),
    }
}

/// The same for a line of the overview.
#[must_use]
pub fn line(margin: &Margin) -> String {
    format!("{}: {}", name(margin.rating), left(margin))
}

/// The rating with the least to spare, but for the brakes that let go by themselves.
#[must_use]
pub fn worst(found: &Margins) -> Option<&Margin> {
    found.list.iter().find(|margin| !lets_go(margin))
}

/// How many are over and close, in a sentence, and what a full pack does to the brakes.
#[must_use]
pub fn finding(found: &Margins) -> String {
    let kept = || found.list.iter().filter(|margin| !lets_go(margin));
    let count = |level| kept().filter(|margin| margin.level == level).count();
    let all = found.list.len();
    let is = |count| if count == 1 { "is" } else { "are" };
    let said = match (count(Level::Over), count(Level::Close)) {
        (0, 0) => format!("All {all} known ratings have at least 10\u{a0}% to spare."),
        (0, close) => {
            format!("None of {all} known ratings is exceeded. {close} {} close.", is(close))
        }
        (over, 0) => format!("{over} of {all} known ratings {} exceeded.", is(over)),
        (over, close) => {
            let (are, is) = (is(close), is(over));
            format!("{over} of {all} known ratings {is} exceeded, and {close} {are} close.")
        }
    };
    if kept().count() == all { said } else { format!("{said} {FULL_PACK}") }
}

/// How many are missing, in a few words.
#[must_use]
pub fn missing(count: usize) -> String {
    if count == 0 { "none".into() } else { format!("{count} not given") }
}

/// Whether it is only a full pack that takes no more, so that the controller brakes less.
fn lets_go(margin: &Margin) -> bool {
    margin.level == Level::Close && margin.left < 0.0
}

/// Length of a bar, in percent of the rating.
#[must_use]
pub fn bar(margin: &Margin) -> f64 {
    if lets_go(margin) { 100.0 } else { 100.0 * (1.0 - margin.left) }
}

/// What stands at the right above a bar.
#[must_use]
pub fn amount(margin: &Margin, assumed: bool, style: Style) -> String {
    if lets_go(margin) {
        return LETS_GO.into();
    }
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
    let rated = if rating == Rating::Fuse {
        let whole = value(rating, bears / FUSE_SHARE, style);
        format!("{rated} ({} of {whole})", percent(FUSE_SHARE))
    } else {
        rated
    };
    let spare = if lets_go(margin) {
        LETS_GO.into()
    } else {
        format!("{} {}", percent(margin.left), level(margin.level))
    };
    vec![
        name(rating).into(),
        when(occasion, style),
        value(rating, asked, style),
        if assumed { format!("{rated}, assumed") } else { rated },
        spare,
    ]
}

/// Some ratings, by name.
#[must_use]
pub fn named(ratings: &[Rating]) -> String {
    ratings.iter().map(|rating| name(*rating)).collect::<Vec<_>>().join("; ")
}
