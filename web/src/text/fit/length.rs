//! How lengths, angles and room are written.

use crate::text::{self, Answer, Style, whole, words};
use pitchline_core::fit::Row;
use pitchline_core::physics::frame::TIGHT_M;
use pitchline_core::{Slot, Unit};

/// With the unit of a length.
#[must_use]
pub fn unit(style: Style, figure: &str) -> String {
    format!("{figure}\u{a0}{}", style.units.shown(Unit::Millimetre).symbol)
}

/// A length with its unit, to a tenth of a millimetre.
#[must_use]
pub fn mm(style: Style, length_m: f64) -> String {
    unit(style, &style.millimetres(length_m))
}

/// The same to a millimetre.
#[must_use]
pub fn rough(style: Style, length_m: f64) -> String {
    unit(style, &style.rough_millimetres(length_m))
}

/// A length as it was entered.
#[must_use]
pub fn entered(style: Style, length_m: f64) -> String {
    unit(style, &style.entered_millimetres(length_m))
}

/// What is needed, bare.
#[must_use]
pub fn least(style: Style, length_m: f64) -> String {
    style.bounded_millimetres(length_m, true)
}

/// A length with its unit, rounded up or down.
fn bound(style: Style, length_m: f64, up: bool) -> String {
    unit(style, &style.bounded_millimetres(length_m, up))
}

/// What is needed, with its unit.
#[must_use]
pub fn at_least(style: Style, length_m: f64) -> String {
    bound(style, length_m, true)
}

/// What there is, with its unit.
#[must_use]
pub fn at_most(style: Style, length_m: f64) -> String {
    bound(style, length_m, false)
}

/// An angle to a tenth of a degree, bare, rounded in the same way.
#[must_use]
pub fn tenth(style: Style, angle: f64, up: bool) -> String {
    style.significant(whole(angle * 10.0, up) / 10.0, 3)
}

/// An angle in whole degrees.
#[must_use]
pub fn degrees(style: Style, angle: f64) -> String {
    format!("{}°", style.fixed(angle, 0))
}

/// Room between two parts, or how much there is too little, bare: to a tenth
/// where it is tight or none.
#[must_use]
pub fn room(style: Style, room_m: f64) -> String {
    if room_m < 0.0 {
        least(style, -room_m)
    } else if room_m < TIGHT_M {
        style.bounded_millimetres(room_m, false)
    } else {
        style.rough_millimetres(room_m)
    }
}

/// A length as a headline, or how much room there is too little.
pub(super) fn length(name: &str, length_m: f64, limit: String, style: Style) -> Answer {
    Answer {
        name: name.into(),
        figure: room(style, length_m),
        unit: style.units.shown(Unit::Millimetre).symbol,
        limit,
    }
}

/// From one to the other, in the file's unit, rounded outward to whole steps:
/// what rests on such inputs is known no better.
pub(super) fn band(style: Style, [low, high]: [f64; 2], unit: Unit, step: f64) -> String {
    let low = (low / step).floor() * step;
    let most = style.quantity((high / step).ceil() * step, unit, 2);
    if low > 0.0 {
        format!("{} to {most}", style.value(low, unit, 2))
    } else {
        format!("up to {most}")
    }
}

/// Which sizes were assumed, by their names; empty where none was.
#[must_use]
pub fn sizes(rows: &[Row]) -> String {
    let name = |row: &Row| {
        let label = text::label(row.slot.kind(), row.key).to_ascii_lowercase();
        // The part is said where the label alone does not tell.
        match row.key {
            "width_mm" | "length_mm" | "height_mm" | "thickness_mm" | "pitch_mm"
                if row.slot != Slot::Truck =>
            {
                format!("{} {label}", words::slot(row.slot).to_ascii_lowercase())
            }
            _ => label,
        }
    };
    rows.iter().map(name).collect::<Vec<_>>().join("; ")
}
