//! Words of "How certain is this?".

use super::{Style, words};
use pitchline_core::band::{Band, Mover, Uncertain};

/// Over how sure an answer is.
pub const SURE: &str = "How certain is this?";
/// The same of a ride with stops.
pub const SURE_RIDE: &str = "How certain is this ride's distance?";
/// Under an answer that is a range.
pub const CALCULATED: &str =
    "Calculated, not measured: 8 in 10 simulated boards like yours fall within this range.";
/// The same where the range begins at nothing.
pub const CALCULATED_UP_TO: &str =
    "Calculated, not measured: 9 in 10 simulated boards like yours stay below the upper figure.";
/// Over what may differ from what was entered.
pub const SPREADS: &str = "Assumed spread of each value";
/// What is done with it, for so many samples.
#[must_use]
pub fn spreads_why(samples: usize) -> String {
    format!(
        "We simulate {samples} boards that differ from yours at random. All of these values vary at once: usually a little, never by more than shown here. The spreads are rules of thumb. A board built or ridden differently can fall outside the range."
    )
}
/// Heads of that table.
pub const SPREADS_HEADS: [&str; 3] = ["Value", "8 in 10 within", "At most"];
/// What the table of movers opens with.
pub const MOVERS_TABLE: &str = "Table of what changes it most";
/// What the arrow keys do on its bars.
pub const ALONG_MOVERS: &str = "Arrow keys move between the bars";
/// The two parts of each bar.
pub const ENDS: [&str; 2] = ["lower than entered", "higher than entered"];
/// What the table of distance by speed opens with.
pub const CURVE_TABLE: &str = "Table of distance by speed";
/// Of an answer that nothing moves.
pub const NOTHING_MOVES: &str = "None of the uncertain values changes it.";

/// Behind a top speed.
pub const OF_SPEED: &str = "top speed";
/// Behind a hill.
pub const OF_HILL: &str = "the hill";
/// Behind a distance.
pub const OF_DISTANCE: &str = "the distance";
/// Behind a ride with stops.
pub const OF_RIDE: &str = "the ride";
/// Behind a charge.
pub const OF_CHARGE: &str = "charging time";

/// Caption of the spreads behind an answer, such as "top speed".
#[must_use]
pub fn spreads(behind: &str) -> String {
    format!("How far off each value may be, for {behind}")
}

/// What boards do that are fast.
pub const FAST: [&str; 4] = ["reach", "is slower", "is faster", "hardly moves"];
/// That climb.
pub const CLIMBS: [&str; 4] =
    ["climb", "climbs less", "climbs more", "can't hold that speed uphill"];
/// That go far.
pub const GOES: [&str; 4] = ["go", "goes less far", "goes farther", "hardly gets anywhere"];
/// That charge.
pub const CHARGES: [&str; 4] = ["take", "is quicker", "is slower", "is charged already"];
/// How far they charge.
pub const TO_FULL: &str = " to full";

/// At which speed, m/s, they climb.
#[must_use]
pub fn at(speed_m_s: f64, style: Style) -> String {
    format!(" at {}", style.speed_unit(speed_m_s))
}

/// At which speed, m/s, they go.
#[must_use]
pub fn at_without_stops(speed_m_s: f64, style: Style) -> String {
    format!(" at {} without stops", style.speed_unit(speed_m_s))
}

/// An answer's range in words.
pub struct Range<'a> {
    /// From.
    pub from: &'a str,
    /// To.
    pub to: &'a str,
    /// The middle.
    pub middle: &'a str,
    /// The unit behind all of them, with its space.
    pub unit: &'a str,
    /// What it is for, such as " at 22 km/h", with its space.
    pub place: &'a str,
    /// What boards do: "go", "goes less far", "goes farther"; "hardly gets anywhere" where that is
    /// nothing.
    pub verb: [&'a str; 4],
}

impl Range<'_> {
    /// What 8 in 10 boards do, the other two, and the middle.
    #[must_use]
    pub fn said(&self) -> String {
        let Self { from, to, middle, unit, place, verb: [verb, less, more, hardly] } = self;
        if from == to {
            return format!(
                "Calculated, not measured: {from}{unit}{place} for nearly all simulated boards like yours."
            );
        }
        let is_nothing = |figure: &str| figure.chars().all(|c| matches!(c, '0' | '.' | ','));
        let half = if is_nothing(middle) {
            String::new()
        } else {
            format!(" Half {verb} at least {middle}{unit}.")
        };
        if is_nothing(from) {
            return format!(
                "Calculated, not measured: up to {to}{unit}{place} for 9 in 10 simulated boards like yours. At least 1 in 10 {hardly}.{half}"
            );
        }
        format!(
            "Calculated, not measured: {from} to {to}{unit}{place} for 8 in 10 simulated boards like yours. 1 in 10 {less}, and 1 in 10 {more}.{half}"
        )
    }
}

/// What moves an answer most, the strongest first.
#[must_use]
pub fn movers<'a>(strong: impl Iterator<Item = &'a Mover>) -> String {
    let names: Vec<_> = strong.take(3).map(|mover| words::uncertain(mover.input)).collect();
    let most = match names[..] {
        [] => return NOTHING_MOVES.into(),
        [first] => first.to_string(),
        [first, second] => format!("{first}, then {second}"),
        [first, second, third, ..] => format!("{first}, {second}, then {third}"),
    };
    format!("What changes it most: {most}. Each bar changes one value and leaves the rest alone.")
}

/// The same in a few words.
#[must_use]
pub fn mostly(band: &Band) -> String {
    let mut names = band.movers.iter().filter(|mover| mover.swing() != 0.0);
    match (names.next(), names.next()) {
        (Some(one), Some(two)) => {
            format!("{}, {}", words::uncertain(one.input), words::uncertain(two.input))
        }
        (Some(one), None) => words::uncertain(one.input).into(),
        _ => String::new(),
    }
}

/// The line that bars are drawn about. `value` has its unit.
#[must_use]
pub fn as_entered(value: &str) -> String {
    format!("your values: {value}")
}

/// What one bar says: its name, and what its two ends give, with their unit.
#[must_use]
pub fn bar(name: &str, low: &str, high: &str, symbol: &str) -> String {
    format!("{name}: lower gives {low}, higher {high}\u{a0}{symbol}")
}

/// What stands beside it: how far it goes to either side.
#[must_use]
pub fn from_to(least: &str, most: &str, symbol: &str) -> String {
    format!("{least} to {most}\u{a0}{symbol}")
}

/// Caption of the table of movers. `value` has its unit.
#[must_use]
pub fn movers_caption(value: &str) -> String {
    format!(
        "The result ({value} with your values) when one value alone goes to either end of its usual range"
    )
}

/// Heads of that table.
#[must_use]
pub fn movers_heads(symbol: &str) -> Vec<String> {
    vec!["Value".into(), format!("If lower, {symbol}"), format!("If higher, {symbol}")]
}

/// A name as a heading.
#[must_use]
pub fn name(input: Uncertain) -> String {
    let mut name = words::uncertain(input).to_string();
    // All of them begin with a plain letter.
    name[..1].make_ascii_uppercase();
    name
}

/// A range with its unit, for a sentence: "30 to 43 km".
#[must_use]
pub fn in_a_sentence(range: &str, symbol: &str) -> String {
    format!("{}\u{a0}{symbol}", range.replace('–', " to "))
}

/// The distance at the rider's speed, and the speed that goes farthest: speeds in m/s, distances
/// with their unit.
#[must_use]
pub fn over_speed(style: Style, cruise: (f64, &str), best: (f64, &str)) -> String {
    let here = format!("{} at {}.", cruise.1, style.speed_unit(cruise.0));
    let [own, other] = [cruise.0, best.0].map(|speed| style.speed_unit(speed));
    if own == other {
        return format!("{here} No other speed goes farther.");
    }
    let way = if best.0 < cruise.0 { "Slower" } else { "Faster" };
    format!("{here} {way} goes farther: {} at {other}.", best.1)
}

/// What stands at its cursor: at a speed, from and to, and what ends the ride, where that is known.
#[must_use]
pub fn over_speed_at(speed: &str, [from, to]: [&str; 2], symbol: &str, end: &str) -> String {
    let ended = if end.is_empty() { String::new() } else { format!(", ended by {end}") };
    format!("{speed}: {from} to {to}\u{a0}{symbol}{ended}")
}

/// Caption of the table of distance by speed.
#[must_use]
pub fn over_speed_caption(samples: usize) -> String {
    format!("Distance by speed as a range, from {samples} simulated boards")
}

/// Heads of that table.
#[must_use]
pub fn over_speed_heads(speed: &str, far: &str) -> Vec<String> {
    vec![
        format!("Speed, {speed}"),
        format!("1 in 10 below, {far}"),
        format!("With your values, {far}"),
        format!("1 in 10 above, {far}"),
        "Ended by".into(),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Nobody is slower than 0 km/h.
    #[test]
    fn a_range_from_nothing_says_so() {
        let range = |from, middle| {
            let place = String::new();
            Range { from, to: "49", middle, unit: "\u{a0}km/h", place: &place, verb: FAST }.said()
        };
        let some = range("31", "40");
        assert!(
            some.contains("31 to 49\u{a0}km/h for 8 in 10") && some.contains("1 in 10 is slower")
        );
        assert!(some.ends_with("Half reach at least 40\u{a0}km/h."), "{some}");
        let none = range("0", "34");
        assert!(
            none.contains("up to 49\u{a0}km/h for 9 in 10") && !none.contains("slower"),
            "{none}"
        );
        assert!(none.contains("At least 1 in 10 hardly moves."), "{none}");
        assert!(!range("0", "0").contains("Half"));
    }
}
