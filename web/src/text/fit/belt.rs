//! Belts: which fit, how tight, and how hard they work.

use super::{band, entered, mm, rough};
use crate::chart::plain;
use crate::text::answer::bound;
use crate::text::{Answer, Style, percent};
use pitchline_core::{
    Belt, BeltChoice, BeltFit, BeltList, BeltLoad, BeltMiss, BeltOnBoard, BeltTension, Unit,
};

/// So many teeth.
#[must_use]
pub fn teeth(count: f64) -> String {
    format!("{}\u{a0}teeth", plain(count, 0))
}

/// Motor shaft to wheel axle.
#[must_use]
pub fn centre(fit: &BeltFit, style: Style) -> Answer {
    let limit = match fit.on_board {
        BeltOnBoard::Taut(belt) => {
            format!("Belt: {}, {}", teeth(belt.teeth), entered(style, belt.length_m))
        }
        BeltOnBoard::NoTeeth => "Middle of the mount, as the belt's tooth count isn't given".into(),
        BeltOnBoard::TooShort => "The belt is too short for these pulleys".into(),
    };
    let figure = match (fit.on_board, fit.run) {
        (BeltOnBoard::Taut(belt), _) => style.millimetres(belt.mesh.centre_m),
        (BeltOnBoard::NoTeeth, Some(run)) => style.millimetres(run.centre_m),
        _ => "–".into(),
    };
    let unit = style.units.shown(Unit::Millimetre).symbol;
    Answer { name: "Motor shaft to wheel axle".into(), figure, unit, limit }
}

/// How hard the belt is pulled.
#[must_use]
pub fn pull(load: &BeltLoad, style: Style) -> Answer {
    let (why, limit) = if load.brake_n > load.drive_n {
        ("braking", load.brake_limit)
    } else {
        ("accelerating", load.drive_limit)
    };
    Answer {
        name: "Peak belt load, % of rating".into(),
        figure: style.fixed(load.used * 100.0, 0),
        unit: "%",
        limit: format!("When {why}. {}", bound(limit)),
    }
}

fn force(load: &BeltLoad, style: Style) -> String {
    let [least, _, most] = load.tensions;
    band(style, [least.force_n, most.force_n], Unit::Newton, 10.0)
}

/// Tension at rest.
#[must_use]
pub fn tension(load: &BeltLoad, style: Style) -> Answer {
    let [_, aimed, _] = load.tensions;
    Answer {
        name: "Belt tension at rest".into(),
        // To ten newtons: no way to check it is more exact.
        figure: style.value((aimed.force_n / 10.0).round() * 10.0, Unit::Newton, 2),
        unit: style.units.shown(Unit::Newton).symbol,
        limit: format!("{} is fine", force(load, style)),
    }
}

/// The same in a few words.
#[must_use]
pub fn tension_short(load: &BeltLoad, style: Style) -> String {
    force(load, style)
}

/// How tight, and how to check it.
#[must_use]
pub fn tight(load: &BeltLoad, style: Style) -> String {
    let [least, _, most] = load.tensions;
    let check = |tension: BeltTension| tension.check;
    let Some((low, high)) = check(least).zip(check(most)) else { return String::new() };
    format!(
        "Disconnect the pack first. Press the middle of a free span with {}: the belt should give {}. Or pluck it: the note should be {}. Any looser, and the belt can skip teeth once the motor shaft carries {}. Any tighter, and the bearings wear faster. Rule of thumb.",
        style.quantity(load.test_force_n, Unit::Newton, 2),
        band(style, [1e3 * high.deflection_m, 1e3 * low.deflection_m], Unit::Millimetre, 1.0),
        band(style, [low.frequency_hz, high.frequency_hz], Unit::Hertz, 10.0),
        style.quantity(least.jump_n_m, Unit::NewtonMetre, 2),
    )
}

/// Which belts fit, in a few words. `pick` is the name of the one to order.
#[must_use]
pub fn belts(fit: &BeltFit, pick: Option<&str>) -> String {
    match (fit.fitting.as_slice(), pick.filter(|name| !name.is_empty())) {
        ([], _) => "none fits".into(),
        ([_], Some(name)) => name.into(),
        ([_, rest @ ..], Some(name)) => format!("{name} and {} more", rest.len()),
        ([one], None) => teeth(one.teeth),
        ([first, .., last], None) => range(first, last),
    }
}

/// From the shortest to the longest.
fn range(first: &BeltChoice, last: &BeltChoice) -> String {
    if first.teeth == last.teeth {
        teeth(first.teeth)
    } else {
        format!("{} to {}", plain(first.teeth, 0), teeth(last.teeth))
    }
}

/// Which belts fit the mount, in a sentence.
#[must_use]
pub fn which(fit: &BeltFit, style: Style) -> String {
    let [near, far] = fit.slot_m;
    let (of, from) = match fit.list {
        BeltList::Offered => ("available ", ""),
        BeltList::Usual => ("", " in the usual lengths at 5\u{a0}mm pitch (makers differ)"),
        BeltList::Unknown => return "No belt lengths are known for this pitch.".into(),
    };
    let mount =
        format!("The mount adjusts from {} to {}.", entered(style, near), entered(style, far));
    match fit.fitting.as_slice() {
        [] => {
            let miss = |name: &str, miss: Option<BeltMiss>| {
                miss.map_or_else(String::new, |m| {
                    let (teeth, by) = (teeth(m.belt.teeth), mm(style, m.miss_m));
                    format!(" The next {name} one, {teeth}, misses by {by}.")
                })
            };
            format!(
                "{mount} No {of}belt{from} fits.{}{}",
                miss("shorter", fit.shorter),
                miss("longer", fit.longer)
            )
        }
        [one] => format!("{mount} One {of}belt{from} fits, with {}.", teeth(one.teeth)),
        [first, .., last] if first.teeth == last.teeth => format!(
            "{mount} {} {of}belts{from} fit, all with {}.",
            fit.fitting.len(),
            teeth(first.teeth)
        ),
        [first, .., last] => {
            format!(
                "{mount} {} {of}belts{from} fit, with {}.",
                fit.fitting.len(),
                range(first, last)
            )
        }
    }
}

/// Over the belts that fit.
pub const BELTS_CAPTION: &str = "Belts that fit this mount and these pulleys";
/// Over their other figures.
pub const BELTS_MORE_CAPTION: &str = "More about the belts that fit";
/// Of a belt that is not on offer.
const USUAL: &str = "Usual length";

/// A belt's name.
#[must_use]
pub fn belt_name(name: Option<&str>) -> String {
    name.filter(|name| !name.is_empty()).unwrap_or(USUAL).into()
}

/// Heads of what a belt is ordered by.
#[must_use]
pub fn belts_heads(style: Style) -> Vec<String> {
    let length = style.units.shown(Unit::Millimetre).symbol;
    let centre = format!("Shaft to axle, {length}");
    ["Belt", "Pitch, profile and width", "Teeth", &centre, "Load"].map(String::from).into()
}

/// What a belt is ordered by: `part` is its figures, `profile` its teeth as its maker calls them.
#[must_use]
pub fn belts_row(
    belt: &BeltChoice,
    name: Option<&str>,
    profile: &str,
    part: &Belt,
    style: Style,
) -> Vec<String> {
    let pitch = entered(style, part.pitch_m);
    let kind = match profile {
        "" => pitch,
        // A profile is mostly named by its pitch.
        named if named.starts_with(|c: char| c.is_ascii_digit()) => named.into(),
        shape => format!("{pitch} {shape}"),
    };
    vec![
        belt_name(name),
        format!("{kind}, {} wide", entered(style, part.width_m)),
        plain(belt.teeth, 0),
        style.millimetres(belt.mesh.centre_m),
        percent(belt.used),
    ]
}

/// Heads of their other figures.
#[must_use]
pub fn belts_more_heads(style: Style) -> Vec<String> {
    let length = style.units.shown(Unit::Millimetre).symbol;
    let force = style.units.shown(Unit::Newton).symbol;
    vec![
        "Belt".into(),
        format!("Left to tighten, {length}"),
        "Position in mount, % of travel".into(),
        "Teeth in mesh".into(),
        format!("Rated pull, {force}"),
        format!("Length, {length}"),
        "Weight".into(),
        "Price".into(),
    ]
}

/// A belt's other figures.
#[must_use]
pub fn belts_more_row(
    belt: &BeltChoice,
    name: Option<&str>,
    currency: &str,
    style: Style,
) -> Vec<String> {
    let price = |price| format!("{currency}\u{a0}{}", style.significant(price, 3));
    vec![
        belt_name(name),
        style.millimetres(belt.travel_left_m),
        style.fixed(belt.place * 100.0, 0),
        format!("{} ({} whole)", style.fixed(belt.mesh.teeth, 1), plain(belt.mesh.whole_teeth, 0)),
        style.value(belt.rated_n, Unit::Newton, 2),
        style.entered_millimetres(belt.length_m),
        style.quantity(belt.mass_kg, Unit::Kilogram, 2),
        belt.price.map_or_else(|| "–".into(), price),
    ]
}

/// What the belt drive from the side shows. `clear_m` is the wheel pulley over the road, m.
#[must_use]
pub fn drive_finding(clear_m: f64, style: Style) -> String {
    let by = rough(style, clear_m.abs());
    if clear_m < 0.0 {
        format!("Belt drive from the side: the wheel pulley reaches {by} below the road.")
    } else {
        format!("Belt drive from the side: the wheel pulley clears the road by {by}.")
    }
}
