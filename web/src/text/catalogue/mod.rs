//! The maker's check of the catalogue in words. Numbers are metric, as in the file.

mod combination;
mod fault;

use super::{Style, Units, shell, words};
use pitchline_core::Kind;

pub use combination::*;
pub use fault::*;

/// Its heading.
pub const TITLE: &str = "Catalogue check";
/// What riders read where something could not be used, after how many.
pub const SEE: &str = "See which";
/// Under the heading.
pub const WHY: &str = "For the maker: what to correct in catalogue.json, what is assumed because the file leaves it out, and which combinations don't fit.";
/// Over the faults.
pub const FAULTS: &str = "Faults in the file";
/// Where there are none.
pub const NO_FAULTS: &str = "Every entry in the file was read and is in use.";
/// Caption of their table.
pub const FAULTS_CAPTION: &str = "Each fault, and what to write instead";
/// Its heads.
pub const FAULTS_HEADS: [&str; 3] = ["Entry", "What's wrong", "How to fix it"];
/// Over what parts leave out.
pub const GAPS: &str = "Missing from the file";
/// Under that.
pub const GAPS_WHY: &str = "None of this is a fault. The page marks an assumed value as \"assumed\", and a total leaves out parts without a price.";
/// Where parts leave nothing out.
pub const NO_GAPS: &str = "Every part has a price, a weight and all its values.";
/// Caption of the parts without a price or a weight.
pub const UNPRICED_CAPTION: &str = "Parts without a price or a weight";
/// Its heads.
pub const UNPRICED_HEADS: [&str; 2] = ["Part", "Missing"];
/// Caption of the values that are assumed.
pub const ASSUMED_CAPTION: &str = "Keys that parts leave out, and the value assumed for each";
/// Its heads.
pub const ASSUMED_HEADS: [&str; 2] = ["Part", "Key and value"];
/// Over the kits.
pub const KITS: &str = "Combinations of parts";
/// Under that.
pub const KITS_WHY: &str = "We try every combination of pack, controller, motor, trucks, pulleys, wheel, deck and charger that a kit offers, with the kit's own rider and place. If there are too many, we try an evenly spread sample. Each combination uses the kit's own belt if it fits, otherwise the best-fitting belt the kit offers.";
/// Where the catalogue has none.
pub const NO_KITS: &str = "This catalogue has no kit, so there is nothing to combine.";
/// Behind the source of a catalogue that was kept, where the host's is none.
pub const LAST_COPY: &str = " This is the last good copy on this device.";
/// Behind that of the demo, where nothing was kept.
pub const DEMO: &str = " This is the demo: your own file couldn't be read.";

/// `1 fault`, `2 faults`.
#[must_use]
pub fn count(number: u64, one: &str, more: &str) -> String {
    format!("{} {}", big(number), if number == 1 { one } else { more })
}

/// A count with a space between the thousands; of very many only how many at least.
#[must_use]
pub fn big(number: u64) -> String {
    if number >= 1_000_000_000 {
        return "over a billion".into();
    }
    let digits = number.to_string();
    let mut text = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) && digits.len() > 4 {
            text.push('\u{202f}');
        }
        text.push(digit);
    }
    text
}

/// What riders read where something could not be used.
#[must_use]
pub fn unusable(faults: usize) -> String {
    let entries = count(faults as u64, "entry", "entries");
    format!("{entries} in this catalogue couldn't be used.")
}

/// Whose catalogue it is and what it holds; `instead` says why that one.
#[must_use]
pub fn source(maker: &str, version: &str, parts: u64, kits: u64, instead: &str) -> String {
    let version = match version {
        "" => shell::NO_VERSION.into(),
        version => format!("version {version}"),
    };
    let (parts, kits) = (count(parts, "part", "parts"), count(kits, "kit", "kits"));
    format!("{maker}, {version}: {parts} and {kits}.{instead}")
}

/// How many faults there are, and how many entries they cost.
#[must_use]
pub fn faults(faults: u64, left_out: u64) -> String {
    match faults {
        0 => "No faults.".into(),
        n => {
            let faults = count(n, "fault", "faults");
            format!("{faults}, {} not used.", count(left_out, "entry", "entries"))
        }
    }
}

/// How many parts have no price, and how many values are assumed.
#[must_use]
pub fn gaps(unpriced: u64, assumed: u64) -> String {
    let price = match unpriced {
        0 => "Every part has a price.".into(),
        n => format!("{} without a price.", count(n, "part", "parts")),
    };
    let assumed = match assumed {
        0 => "Nothing is assumed.".into(),
        n => format!("{} assumed.", count(n, "value", "values")),
    };
    [price, assumed].join(" ")
}

/// The fold of parts without a price or a weight.
#[must_use]
pub fn unpriced_fold(parts: u64) -> String {
    format!("Prices and weights: {}", count(parts, "part", "parts"))
}

/// The fold of parts with values that are assumed.
#[must_use]
pub fn assumed_fold(parts: u64) -> String {
    format!("Assumed values: {}", count(parts, "part", "parts"))
}

/// A part and what it is.
#[must_use]
pub fn part(name: &str, kind: Kind) -> String {
    format!("{name} ({})", words::kind(kind).to_ascii_lowercase())
}

/// Which of price and weight a part leaves out; none where it has both.
#[must_use]
pub fn left_out(no_price: bool, no_mass: bool) -> Option<&'static str> {
    match (no_price, no_mass) {
        (true, true) => Some("price, weight"),
        (true, false) => Some("price"),
        (false, true) => Some("weight"),
        (false, false) => None,
    }
}

fn file(style: Style) -> Style {
    Style { units: Units::Metric, ..style }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn large_counts_are_grouped_and_the_largest_are_not_spelt_out() {
        assert_eq!(count(1, "part", "parts"), "1 part");
        assert_eq!(count(0, "part", "parts"), "0 parts");
        assert_eq!((big(9999), big(50_000)), ("9999".into(), "50\u{202f}000".into()));
        assert_eq!(big(1_200_000), "1\u{202f}200\u{202f}000");
        assert_eq!(big(1 << 62), "over a billion");
        assert_eq!(unusable(1), "1 entry in this catalogue couldn't be used.");
    }
}
