//! The page's own words.

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

/// Under the name at the top.
pub const TAGLINE: &str = "What your board can do, and what holds it back";

/// In the strip.
pub const TOP_SPEED: &str = "Top speed, flat";
/// In the strip.
pub const HILL: &str = "Hill at";
/// In the strip.
pub const DISTANCE: &str = "Distance at";
/// In the head, once everything is kept.
pub const OFFLINE: &str = "Ready offline";
/// Where a speed cannot be held on the flat.
pub const NOT_FLAT: &str = "not even flat";

/// Of a board that moves at no speed.
pub const STILL: &str = "This build does not move on the flat.";

/// Over the working of a speed.
pub const SEARCHED: &str = "Speeds are tried until the push left over, the last step, is nothing. All steps are at the speed found.";
/// Over any other working.
pub const STEPPED: &str =
    "Step by step, each from what stands before it. The last gives the answer.";
/// Over the working of a charge.
pub const CHARGED: &str = "Step by step: the time first, then the energy from the wall, and its cost where a price is given.";
/// Under the curve over temperature.
pub const COLD: &str = "At your cruising speed without stops. The pack is taken to start as cold as the air. Kept indoors until you leave, it does better for as long as it stays warm. Do not charge it below freezing.";
/// Under the curve over age.
pub const OLD: &str = "A pack ages faster in heat, when it is kept full, and when it is pushed hard: one may be twice as old as its cycles say. Common practice, no source.";
/// Over the rides in time.
pub const RIDE: &str = "With stops, hills and heat";
/// The way to every question.
pub const CONTENTS: &str = "Questions";
/// Why a ride may come farther than the steady distance.
pub const RIDE_WHY: &str = "Counted as above: until the board can no longer hold 80\u{a0}% of its speed on the flat. The cells warm up on the way, as they do above.";
/// Over the table of all ways to ride.
pub const RIDES: &str =
    "However you ride, until it can no longer hold 80\u{a0}% of the speed on the flat";
/// Over its first column.
pub const HOW: &str = "How you ride";
/// Under the rows of the rider's own way.
pub const OWN_RIDE: &str = "Your cruising speed stands under \"You and your ride\", the charge at the start under \"How far?\".";
/// What the buttons over the ride's charts choose.
pub const TRACED: &str = "How much of the ride is shown";
/// Over the table of ride modes and grades.
pub const MODES: &str = "Top speed with a full pack, by ride mode and by grade";
/// Over speeding up.
pub const RUNS: &str = "Speeding up";
/// Over braking.
pub const BRAKING: &str = "Braking with the motors alone";
/// Under it.
pub const BRAKED: &str = "From your cruising speed on the flat, your second to react with it, until the motors let go. The last of it is for your foot: motors do not hold at walking pace. Common practice for your second and for a wet road, no source.";
/// Over the table of all cases.
pub const STOPS: &str = "Until the motors let go; with fewer motors when a belt is gone, with none when the controller or the pack cuts out";
/// By braking.
pub const CAUTION_BRAKING: &str = "Braking by the motors can vanish: a full pack takes little back or nothing, a pack or controller can cut out, a belt can break or jump. Try it at low speed first, and always be able to stop without it.";
/// Over a long climb.
pub const LONG_CLIMB: &str = "On a long hill";
/// Over the working of the hill that is held for ever.
pub const FOR_EVER: &str = "For the windings, step by step, each from what stands before it. Where a hot controller or another limit holds less, that is the answer.";
/// What the arrow keys do there.
pub const ALONG_TIME: &str = "Arrow keys move along the ride";
/// While an answer is worked out in small pieces; a share in percent follows.
pub const WORKING: &str = "Working it out…";

/// Of a link without the model's version, or with a lower one.
pub const OLDER_MODEL: &str =
    "whoever made this link saw figures from an older model; yours may differ";
/// Of a link with a higher one.
pub const NEWER_MODEL: &str =
    "whoever made this link saw figures from a newer model; yours may differ";
/// Over what could not be read.
pub const UNREAD: &str = "Part of the link or file could not be used.";
/// In its place where all of it could.
pub const READ: &str = "All of the link was used.";

/// Over the strip while text waits to be mended.
pub const WAITS: &str = "Answers are for the value before.";

/// Over how sure an answer is.
pub const SURE: &str = "How sure is this?";
/// Over what may differ from what was entered.
pub const SPREADS: &str = "What may differ, and by how much";
/// What is done with it.
pub const SPREADS_WHY: &str = "Boards like this one are drawn at random and worked out, 500 for each band. In each of them all of this differs from what is entered: most often by little, never by more than stands here. The figures are common practice and have no source. What is built or ridden otherwise lies beyond any band.";

/// Caution about speed, by the speeds.
pub const CAUTION_SPEED: &str = "What the board can do is not what you should ride. Stay where you can stop, wear a helmet and protection, and keep to local law: many places cap or forbid powered boards on roads and paths.";
/// Caution about hills, by the hills.
pub const CAUTION_HILL: &str = "Climbing is not stopping. A full pack takes little braking energy or none, and a belt can break or slip: try your brakes at low speed, and do not ride down what you cannot stop on.";
/// Caution about packs, by the distance.
pub const CAUTION_PACK: &str = "Leave a reserve: an empty pack can stop pushing and braking without warning. Lithium packs can burn. Charge on something that cannot burn, stay with it, and have packs built and repaired by qualified people.";
/// Caution about belts, by the drive parts.
pub const CAUTION_BELT: &str = "Keep fingers, hair and laces out of belts and pulleys, and disconnect the pack before you work on them.";

/// Caution about charging, by the charger.
pub const CAUTION_CHARGE: &str = "Lithium packs can burn while they charge. Use only the charger made for this pack, on something that cannot burn, away from your way out, and stay with it. Never below freezing, and never a pack that is wet, swollen, dented or has been in a crash: take that to qualified people. Keep to local law and the maker's word.";

/// Caution about packs in boxes, by the box.
pub const CAUTION_BOX: &str = "Never press cells in. A crushed or chafed cell can burn, days later. Insulate, pad, and have packs built by qualified people.";

/// How far to trust it.
pub const TRUST: &str = "These figures come from published physics and the values entered. A band says how far parts, rider and weather may differ from what was entered. Roads, tyres and the model itself differ too: expect 10 to 20 % either way, more on rough ground and in the cold. Check before you rely on it.";
/// Where the data stay.
pub const PRIVATE: &str = "Everything runs and stays on this device. Nothing is sent anywhere. In a private window, in a frame, or after some weeks unused, browsers may forget what is saved: keep a link or a file.";
/// Where the browser's store is closed or full.
pub const NOT_KEPT: &str =
    "This browser keeps nothing here: its store is closed or full. Keep a link or a file instead.";
/// In a frame of another page.
pub const FRAMED: &str =
    "Inside another page, saved builds are kept apart from those of the calculator itself.";
/// Of a catalogue without one.
pub const NO_KIT: &str = "catalogue.json has no kit that can be used.";

/// Over why the maker's file on the host is not the one in use. `date` is that of the copy.
#[must_use]
pub fn kept_parts(date: &str) -> String {
    let date = long_date(date).unwrap_or_else(|| date.into());
    format!("Showing the maker's parts as of {date}, the last good copy on this device.")
}

/// `2026-11-02` as it is said; none of what is no date.
fn long_date(date: &str) -> Option<String> {
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
        "ready" => return "Ready offline: it works without a signal from now on.".into(),
        "installing" => return "Getting ready for offline use…".into(),
        "slow" => "Not ready offline yet.",
        "incomplete" => "Not complete offline: open it once more with a signal.",
        "failed" => "Not ready offline.",
        _ => "Not kept for offline use in this browser or frame.",
    };
    [said, why].join(" ").trim_end().into()
}

/// Of a build that is too long for a link.
pub const LINK_TOO_LONG: &str = "This build is too long for a link. Save it as a file instead.";
/// Behind the name of a saved build of which some is not understood.
pub const IN_PART: &str = "(only part of it can be read here)";
/// Behind the key of one that is no build to this page.
pub const UNREADABLE: &str = "(can't be read here; kept as it is)";

#[cfg(test)]
mod tests {
    use super::kept_parts;

    #[test]
    fn a_date_is_written_out() {
        assert!(kept_parts("2026-11-02").contains("as of 2\u{a0}November 2026,"));
        assert!(kept_parts("2026-13-02").contains("as of 2026-13-02,"));
    }
}
