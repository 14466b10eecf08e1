//! The settings as text and as a table, to take elsewhere.

use super::{Board, convention, name, per, unit, why};
use crate::text::{Style, number};
use pitchline_core::{Recommended, Setting, Unit};

/// Its unit in a file, beside the number.
const fn symbol(setting: Setting) -> &'static str {
    match unit(setting) {
        Unit::Ampere => "A",
        Unit::Volt => "V",
        Unit::Celsius => "°C",
        Unit::Percent => "%",
        Unit::Millimetre => "mm",
        _ if matches!(setting, Setting::Erpm) => "ERPM",
        _ => "",
    }
}

/// All lines as text, one a line.
#[must_use]
pub fn as_text(rows: &[Vec<String>], stamp: &[String]) -> String {
    let line = |row: &Vec<String>| match row.as_slice() {
        [name, value, why, ..] if why.is_empty() => format!("{name}: {value}"),
        [name, value, why, ..] => format!("{name}: {value}. {why}."),
        _ => String::new(),
    };
    rows.iter().map(line).chain(stamp.iter().cloned()).collect::<Vec<_>>().join("\n")
}

/// A cell of a table in a file, quoted (RFC 4180).
fn cell(text: &str) -> String {
    format!("\"{}\"", text.replace('"', "\"\""))
}

/// All lines as comma-separated values: name, number, unit, whom it is for, current convention,
/// reason. Numbers have a decimal point whatever the reader's are.
#[must_use]
pub fn as_csv(found: &[Recommended], board: Board, stamp: &[String], style: Style) -> String {
    let mut text = "setting,value,unit,per,current convention,reason\r\n".to_owned();
    for one in found {
        let number = |si: f64| number::exact(rounded(si / unit(one.setting).si()));
        let motor = matches!(one.setting, Setting::MotorDrive | Setting::MotorBrake);
        let cells = [
            name(one.setting).to_owned(),
            one.value.map_or_else(String::new, number),
            symbol(one.setting).into(),
            per(one.setting).into(),
            if motor { convention(board.convention).into() } else { String::new() },
            why(one, style),
        ];
        text += &cells.map(|text| cell(&text)).join(",");
        text += "\r\n";
    }
    for line in stamp {
        text += &cell(line);
        text += ",,,,,\r\n";
    }
    text
}

/// Without the last bits of a change of units.
fn rounded(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}
