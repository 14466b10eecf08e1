//! The page's own words.

use pitchline_core::source::Standing;

/// A caution: what everyone must read, and the rest.
#[derive(Clone, Copy, Debug)]
pub struct Warning {
    /// At most 30 words.
    pub short: &'static str,
    /// Behind "More".
    pub more: &'static str,
}

/// In place of answers where a part is missing.
pub const NO_FIGURES: &str = "No figures yet";
/// In place of a part that is missing.
pub const PICK_ONE: &str = "Pick one";

/// Questions, in the order in which they are asked.
pub const ON_IT: &str = "What's on it?";
/// Second question.
pub const FAST: &str = "How fast?";
/// Third question.
pub const STEEP: &str = "How steep?";
/// Fourth question.
pub const FAR: &str = "How far?";

/// Fifth question.
pub const CHARGE: &str = "How long on the charger?";
/// Sixth question.
pub const FIT: &str = "Does it go together?";
/// The question of ratings.
pub const LIMITS: &str = "What gives first?";

/// The question of settings.
pub const SETTINGS: &str = "What do I set?";

/// Over facts on carrying and selling packs.
pub const CARRYING: &str = "Carrying and selling packs";
/// Facts on carrying and selling packs; that of IEC 62133-2 is from memory. The law where you live has the last word.
pub const TRANSPORT: [&str; 4] = [
    "On passenger aircraft: up to 100 Wh in the cabin. From 100 to 160 Wh only if the airline agrees. More than 160 Wh not at all (rules of ICAO and IATA, read in 2026).",
    "Lithium packs are sent only if their type has passed the tests of UN 38.3.",
    "Standards that sellers are asked for: EN 17128:2020 for light electric vehicles in Europe, UL 2272 (second edition, 2024) in North America.",
    "IEC 62133-2:2017 is the safety standard for portable lithium packs.",
];

/// Over the questions of riders.
pub const RIDE_GROUP: &str = "Ride";
/// Over those of whoever builds the board.
pub const WORKSHOP_GROUP: &str = "Workshop";
/// The three answers that everyone asks for first.
pub const ANSWERS: &str = "Answers";
/// The ways from view to view.
pub const VIEWS: &str = "Views";
/// The first view.
pub const OVERVIEW: &str = "Overview";
/// The view of what is on the board.
pub const BUILD: &str = "Build";
/// The view of links, saved builds and files.
pub const SHARE: &str = "Share";
/// The view of all else.
pub const MORE: &str = "More";

/// In the strip.
pub const TOP_SPEED: &str = "Top speed, flat";
/// The fold of fuse and wires, and what leads there.
pub const WIRES: &str = "Fuse and wires";
/// Leads to the map of all pairings.
pub const GEARS: &str = "Compare all pulleys and wheels";
/// In the strip, before the speed of a hill.
pub const HILL: &str = "Hill at";
/// In the strip.
pub const DISTANCE: &str = "Distance at";
/// In the head, once everything is kept.
pub const OFFLINE: &str = "Ready offline";
/// Where a speed cannot be held on the flat.
pub const NOT_FLAT: &str = "can't hold this speed on the flat";

/// Of a board that moves at no speed.
pub const STILL: &str = "This build can't move on the flat.";

/// The fold of workings.
pub const WORKING_FOLD: &str = "Working";
/// What it holds.
pub const WORKING_HINT: &str = "each step, with its source";
/// Over the working of a speed.
pub const SEARCHED: &str = "We solve for the speed at which push equals road load. Every step is calculated at that speed. The last step, the push left over, is zero.";
/// Over any other working.
pub const STEPPED: &str = "Step by step. The last step is the answer.";
/// Beside a value that nobody entered.
pub const ASSUMED: &str = "assumed";
/// The button before a number, after the number's name.
pub const LESS: &str = "less";
/// The one behind it.
pub const GREATER: &str = "more";
/// What the arrow keys do on a curve.
pub const ALONG_CURVE: &str = "Arrow keys move along the curve";
/// What the arrow keys do on bars.
pub const ALONG_BARS: &str = "Arrow keys move between the bars";
/// The list of all questions.
pub const QUESTIONS: &str = "Questions";
/// While an answer is worked out in small pieces; a share in percent follows.
pub const WORKING: &str = "Working it out…";

/// Over the strip while text waits to be mended.
pub const WAITS: &str = "Showing results for your last valid value.";

/// Under a step of a working: where its formula is from.
#[must_use]
pub fn source(title: &str, standing: Standing) -> String {
    let standing = match standing {
        Standing::Published | Standing::CommonPractice => "",
        Standing::Derived => " (derived)",
        Standing::Entered => " (as entered)",
    };
    format!("{title}{standing}")
}

/// Which rows of a long table are shown, counted from 1.
#[must_use]
pub fn rows(from: usize, to: usize, count: usize) -> String {
    format!("{from} to {to} of {count}")
}

/// Shows the rows before them.
#[must_use]
pub fn previous_rows(shown: usize) -> String {
    format!("Show the previous {shown}")
}

/// Shows those behind them.
#[must_use]
pub fn next_rows(shown: usize) -> String {
    format!("Show the next {shown}")
}

/// Caution about belts, by the drive parts.
pub const CAUTION_BELT: Warning = Warning {
    short: "Keep fingers, hair and laces out of belts and pulleys. Disconnect the pack before you work on them.",
    more: "Turning a wheel by hand moves the belt, and a controller that still has power can start the motor.",
};

/// How far to trust it.
pub const TRUST: &str = "These figures are calculated from published physics and the values entered. Each range allows for the usual variation in parts, rider and weather. Roads, tyres and the model itself add more: in all, expect 10 to 20\u{a0}% either way, more on rough ground and in the cold. Check before you rely on them.";
/// Where the data stay.
pub const PRIVATE: &str = "Everything runs and stays on this device. Nothing is sent anywhere. In a private window, in a frame or after a few weeks without a visit, browsers may delete what you saved. Keep a link or a file as well.";
/// In a frame of another page.
pub const FRAMED: &str = "In some browsers, builds saved inside another page are separate from those saved in the calculator itself.";
/// Of a catalogue without one.
pub const NO_KIT: &str = "catalogue.json has no usable kit.";

/// Over why the maker's file on the host is not the one in use. `date` is that of the copy.
#[must_use]
pub fn kept_parts(date: &str) -> String {
    let date = long_date(date).unwrap_or_else(|| date.into());
    format!("Showing the maker's parts as of {date}, the last good copy on this device.")
}

/// Over that where there is no copy either.
pub const DEMO_PARTS: &str =
    "The maker's parts couldn't be read. Showing the demo's parts instead.";

/// Of a file that the host did not send within so many seconds.
#[must_use]
pub fn late(file: &str, seconds: u32) -> String {
    format!("{file} didn't arrive within {seconds}\u{a0}s.")
}

/// Of one that could not be had at all.
#[must_use]
pub fn unfetched(file: &str) -> String {
    format!("{file} couldn't be fetched.")
}

/// Of one that the host does not have, by the number of its answer.
#[must_use]
pub fn refused(file: &str, status: u16) -> String {
    format!("{file}: the host responded with {status}.")
}

/// Of one that is no text.
#[must_use]
pub fn not_text(file: &str) -> String {
    format!("{file} isn't text.")
}

/// `2026-11-02` as it is said; none of what is no date.
pub(super) fn long_date(date: &str) -> Option<String> {
    const MONTHS: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    let mut parts = date.splitn(3, '-');
    let year = parts.next()?;
    let month: usize = parts.next()?.parse().ok()?;
    let day: u8 = parts.next()?.parse().ok()?;
    Some(format!("{day}\u{a0}{} {year}", MONTHS.get(month.checked_sub(1)?)?))
}

/// How offline use stands, by the word of the page's script, and why.
#[must_use]
pub fn offline(state: &str, why: &str) -> String {
    let said = match state {
        "ready" => return "Ready offline: the page now works without a signal.".into(),
        "installing" => return "Getting ready for offline use…".into(),
        "slow" => "Not ready for offline use yet.",
        "incomplete" => "Not fully saved for offline use: open the page once more with a signal.",
        "failed" => "Not ready for offline use.",
        _ if why.is_empty() => "Not available offline in this browser or frame.",
        _ => "Not available offline.",
    };
    [said, why].join(" ").trim_end().into()
}

#[cfg(test)]
mod tests {
    use super::kept_parts;

    #[test]
    fn a_date_is_written_out() {
        assert!(kept_parts("2026-11-02").contains("as of 2\u{a0}November 2026,"));
        assert!(kept_parts("2026-13-02").contains("as of 2026-13-02,"));
    }
}
