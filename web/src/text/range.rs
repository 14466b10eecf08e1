//! Words of "How far?".

use super::page::Warning;
use super::{Style, percent, span, words};
use pitchline_core::ride::{END_SHARE, RideEnd};
use pitchline_core::{Answers, Unit};

/// The cruising speed, as an input of this view.
pub const CRUISE: &str = "Cruising speed";
/// The fold of how the distance is counted.
pub const COUNTED: &str = "How it's counted";
/// The fold of where the energy goes.
pub const ENERGY: &str = "Where the energy goes";
/// What its table opens with.
pub const ENERGY_TABLE: &str = "Table of where the energy goes";
/// Its heads.
pub const ENERGY_HEADS: [&str; 3] = ["Into", "Wh", "%"];
/// Of a board that does not get going.
pub const NO_ENERGY: &str = "The board doesn't move, so it uses no energy.";
/// The fold of seasons and age.
pub const SEASONS: &str = "In the cold, and with age";
/// Under the curve by temperature.
pub const COLD: &str = "At your cruising speed, no stops, pack at air temperature. A pack kept indoors does better while it stays warm. Don't charge below freezing.";
/// Under the curve by age.
pub const OLD: &str = "A pack ages faster with heat, hard use and storage at full charge. It may be older than its cycles suggest. Rule of thumb.";
/// What the cold table opens with, and its caption.
pub const COLD_TABLE: [&str; 2] = ["Table of distance by temperature", "Through the year"];
/// Its first head, before the unit.
pub const COLD_HEAD: &str = "Air and pack";
/// Marks the rider's own air on that curve.
pub const YOUR_AIR: &str = "your air temperature";
/// What the table of age opens with, and its caption.
pub const OLD_TABLE: [&str; 2] = ["Table of distance by age", "As the pack ages"];
/// Its first head, before the unit.
pub const OLD_HEAD: &str = "Age";
/// Marks the rider's own pack on that curve.
pub const YOUR_PACK: &str = "your pack";
/// Caution, by the answer.
pub const CAUTION: Warning = Warning {
    short: "Leave a reserve: when the pack runs empty, the motors can stop pushing and braking without warning.",
    more: "Lithium packs can burn. Charge on something that can't burn, stay with the pack, and have packs built and repaired by qualified people.",
};

/// The answer: at a speed in m/s, and from which charge, with its comma.
#[must_use]
pub fn at_speed(speed_m_s: f64, from: &str, style: Style) -> String {
    format!("At {}, no stops{from}", style.speed_unit(speed_m_s))
}

/// What ends the distance, for who reads the large figure. Nothing of it where it does not get going.
#[must_use]
pub fn explained(answers: &Answers, style: Style) -> String {
    let reach = &answers.distance.cruise;
    let why = words::why(reach.limit, reach.sag);
    if reach.distance_m <= 0.0 {
        return format!("It can't get moving. {why}");
    }
    let left = percent(reach.end_charge);
    match reach.end {
        RideEnd::Time => {
            return format!("Still going after {}, with {left} charge left.", span(reach.time_s));
        }
        RideEnd::Empty => return "Counted until the pack is empty.".into(),
        _ => {}
    }
    let last = style.speed_unit(END_SHARE * reach.wish_m_s);
    let of = if reach.wish_m_s < reach.speed_m_s {
        format!("of the {} it can reach", style.speed_unit(reach.wish_m_s))
    } else {
        "of the speed you asked for".into()
    };
    format!("Counted until the board drops below {last} (80\u{a0}% {of}), at {left} charge. {why}")
}

/// How it is counted, at length; nothing where it does not get going.
#[must_use]
pub fn counted(answers: &Answers, style: Style) -> Option<String> {
    let distance = &answers.distance;
    let reach = &distance.cruise;
    if reach.distance_m <= 0.0 {
        return None;
    }
    let spent = style.quantity(distance.wh_per_km, Unit::WattHourPerKilometre, 2);
    let first = if reach.full_wish_m > 0.0 {
        format!(
            "It holds your cruising speed for the first {}.",
            style.distance_unit(reach.full_wish_m)
        )
    } else {
        format!("It never reaches {}.", style.speed_unit(reach.speed_m_s))
    };
    let limps = if reach.limp_m > 0.0 {
        format!(
            " Beyond the counted distance it limps another {}, slowing to walking pace.",
            style.distance_unit(reach.limp_m)
        )
    } else {
        String::new()
    };
    Some(format!(
        "On the flat without stops, it uses {spent} from the cells. {first}{limps} Stops and hills use more."
    ))
}

/// The same in a few words; nothing where it does not get going.
#[must_use]
pub fn counted_hint(answers: &Answers, style: Style) -> String {
    if answers.distance.cruise.distance_m <= 0.0 {
        return String::new();
    }
    style.quantity(answers.distance.wh_per_km, Unit::WattHourPerKilometre, 2)
}

/// Where most of the energy goes: all of it, Wh, and the two largest by name and share.
#[must_use]
pub fn energy(stored_wh: f64, most: [(&str, f64); 2], style: Style) -> String {
    let [first, second] = most;
    format!(
        "Most of the {} goes into {} ({}) and {} ({}). Rated energy differs: it's nominal voltage times capacity.",
        style.quantity(stored_wh, Unit::WattHour, 3),
        first.0.to_ascii_lowercase(),
        percent(first.1),
        second.0.to_ascii_lowercase(),
        percent(second.1)
    )
}

/// The same in a few words.
#[must_use]
pub fn energy_hint(most: [(&str, f64); 2]) -> String {
    most.map(|(name, share)| format!("{} {}", percent(share), name.to_ascii_lowercase())).join(", ")
}

/// How much of something went where: Wh and share.
#[must_use]
pub fn energy_amount(wh: f64, share: f64, style: Style) -> String {
    format!("{}, {}", style.quantity(wh, Unit::WattHour, 2), percent(share))
}

/// A distance at a temperature in °C, in a few words; nothing where it does not get going.
#[must_use]
pub fn cold_hint(distance_m: f64, air_c: f64, style: Style) -> String {
    let cold = style.quantity(air_c, Unit::Celsius, 3);
    if distance_m <= 0.0 {
        return String::new();
    }
    format!("{} at {cold}", style.distance_unit(distance_m))
}

/// A distance, m; none where the speed, m/s, is not reached.
#[must_use]
pub fn goes(distance_m: Option<f64>, cruise_m_s: f64, style: Style) -> String {
    match distance_m {
        Some(far) => format!("it goes {}", style.distance_unit(far)),
        None => format!("it doesn't reach {}", style.speed_unit(cruise_m_s)),
    }
}

/// Both ends of the curve by temperature, with what it does there.
#[must_use]
pub fn by_temperature([cold, warm]: [String; 2], [less, more]: [String; 2]) -> String {
    format!("At {cold} {less}. At {warm} {more}.")
}

/// Both ends of the curve by age.
#[must_use]
pub fn by_age([old, _]: [String; 2], [less, more]: [String; 2]) -> String {
    format!("With a new pack {more}. After {old} {less}.")
}

/// What stands at the cursor of both: where it is on the curve, distance, m, and top speed, m/s.
#[must_use]
pub fn season_at(place: &str, distance_m: f64, top_m_s: f64, style: Style) -> String {
    format!("{place}: {}, top speed {}", style.distance_unit(distance_m), style.speed_unit(top_m_s))
}

/// Heads of their tables, the first with its unit; the hill is at a speed in m/s.
#[must_use]
pub fn season_heads(first: String, hill_m_s: f64, style: Style) -> Vec<String> {
    let symbol = |unit: Unit| style.units.shown(unit).symbol;
    vec![
        first,
        format!("Distance, {}", symbol(Unit::Kilometre)),
        "Energy, Wh".into(),
        format!("Top speed, {}", symbol(Unit::KilometrePerHour)),
        format!("Hill at {}, %", style.speed_unit(hill_m_s)),
    ]
}

/// The axis of a distance.
#[must_use]
pub fn distance_axis(symbol: &str) -> String {
    format!("distance, {symbol}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use pitchline_core::{Build, Draft, Slot, answers};

    /// A ride is given up after a day, and then the pack is not called empty.
    #[test]
    fn a_distance_that_outlasts_the_day_says_so() {
        let mut draft = Draft::typical();
        draft.set(Slot::Pack, "parallel", 40.0);
        draft.set(Slot::Ride, "cruise_km_h", 5.0);
        let answers = answers(&Build::check(&draft).expect("in range"));
        // 24 h at 5 km/h.
        assert!((answers.distance.cruise.distance_m / 120e3 - 1.0).abs() < 1e-3);
        let said = explained(&answers, Style::default()).replace('\u{a0}', " ");
        assert!(said.starts_with("Still going after 24 h, with "), "{said}");
        assert!(!counted(&answers, Style::default()).expect("it moves").contains("limps"));
        let tile =
            crate::text::answer::distance(String::new(), &answers, [1.2e5; 2], Style::default());
        assert!(
            tile.limit.replace('\u{a0}', " ").starts_with("Still going after 24 h"),
            "{tile:?}"
        );
    }
}
