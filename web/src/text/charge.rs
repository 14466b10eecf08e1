//! Words of "How long on the charger?".

use super::page::Warning;
use super::sure::CALCULATED;
use super::{Answer, Style, before_eight, duration, duration_span, percent, whole};
use pitchline_core::{
    Charge, ChargeEnd, ChargeLimit, ChargeRefusal, ChargerFit, ChargerOffer, Charging, TooStrong,
    Unit,
};

/// The fold of the inputs "stop charging at" and "time available".
pub const GOALS: &str = "To a chosen level, or by a set time";
/// The fold of the chargers.
pub const CHARGERS: &str = "Available chargers";
/// The fold of the current.
pub const CURRENT: &str = "Current over time";
/// The fold of energy and cost.
pub const COST: &str = "Energy and cost";
/// Over the working of a charge.
pub const CHARGED: &str = "These steps give the charging time, then the energy from the wall and, if you entered a price, its cost.";
/// Caution by the charger.
pub const CAUTION: Warning = Warning {
    short: "Lithium packs can burn while charging. Use only a charger made for this pack, charge on a surface that can't burn, and stay with the pack.",
    more: "Don't charge where a fire would block your way out. Never charge below freezing, and never a pack that is wet, swollen or dented, or has been in a crash: take it to qualified people. Follow local law and the maker's instructions.",
};
/// Opens the table of charge over time.
pub const CHARGE_TABLE: &str = "Table of charge over time";
/// Its caption.
pub const CHARGE_CAPTION: &str = "Charge over time, until full";
/// Opens the table of current over time.
pub const CURRENT_TABLE: &str = "Table of current over time";
/// Its caption.
pub const CURRENT_CAPTION: &str = "Current over time, until full";
/// Up the side of the first chart.
pub const CHARGE_AXIS: &str = "charge, %";
/// Up the side of the second.
pub const CURRENT_AXIS: &str = "current, A";
/// Heads of the first table.
pub const CHARGE_HEADS: [&str; 3] = ["Time", "Charge, %", "Current, A"];
/// Heads of the second.
pub const CURRENT_HEADS: [&str; 3] = ["Time", "Current, A", "Voltage, V"];
/// Along the bottom of both charts.
pub const HOURS: &str = "hours on the charger";
/// Where the voltage is held.
pub const HELD: &str = "constant voltage from here";
/// In place of a chart of no time.
pub const FULL: &str = "Already full.";
/// Of a charger that was typed in.
pub const TYPED_IN: &str = "My own charger";
/// Beside the charger on the board.
pub const ON_BOARD: &str = "in\u{a0}your\u{a0}build";
/// Puts a charger on the board.
pub const USE: &str = "Use";

/// A current.
#[must_use]
pub fn amps(current_a: f64, style: Style) -> String {
    style.quantity(current_a, Unit::Ampere, 2)
}

fn volts(v: f64, style: Style) -> String {
    style.quantity(v, Unit::Volt, 3)
}

/// A band of times, s, in one line of text.
#[must_use]
pub fn band(band_s: [f64; 2]) -> String {
    let (figure, unit) = duration_span(band_s);
    format!("{figure} {unit}").replace('–', "to")
}

/// The answer in one line.
#[must_use]
pub fn line(fit: ChargerFit, full_s: [f64; 2], style: Style) -> String {
    match (fit.refusal, fit.too_strong) {
        (Some(ChargeRefusal::WrongVolts { .. }), _) => "Wrong charger: do not plug it in".into(),
        (Some(ChargeRefusal::WrongPlug), _) => "Wrong plug: do not use this charger".into(),
        (Some(ChargeRefusal::TooCold { cell_c, .. }), _) => {
            format!("Too cold to charge: {}", style.quantity(cell_c, Unit::Celsius, 2))
        }
        (None, Some(_)) => "Charging current too high for the cells".into(),
        (None, None) if full_s[1] <= 0.0 => "Already full".into(),
        (None, None) => format!("{} to full", band(full_s)),
    }
}

/// In place of the time where the pack is not to be charged.
#[must_use]
pub fn refused(refusal: ChargeRefusal) -> Answer {
    let (name, figure) = match refusal {
        ChargeRefusal::WrongVolts { .. } => ("Wrong charger", "Do not plug it in"),
        ChargeRefusal::WrongPlug => ("Wrong plug", "Do not use this charger"),
        ChargeRefusal::TooCold { .. } => ("Too cold", "Do not charge yet"),
    };
    Answer { name: name.into(), figure: figure.into(), ..Answer::default() }
}

/// Why the pack is not to be charged, and what to do.
#[must_use]
pub fn why_refused(refusal: ChargeRefusal, style: Style) -> String {
    match refusal {
        ChargeRefusal::WrongVolts { charger_v, pack_v, overcharges, .. } => {
            let (charger, pack) = (volts(charger_v, style), volts(pack_v, style));
            let why = if overcharges {
                "It would overcharge the cells, which can set the pack on fire."
            } else {
                "It would never fill this pack."
            };
            format!("This charger's output is {charger}, but the full pack is at {pack}. {why} Use a charger with an output of {pack}.")
        }
        ChargeRefusal::WrongPlug => "This charger's plug is not the one for this pack. Don't adapt or force it: use the charger made for the pack.".into(),
        ChargeRefusal::TooCold { cell_c, least_c } => format!(
            "The pack is at {}. Charging below {} (rule of thumb) damages lithium cells, and they may catch fire later. Bring the board indoors, let it warm through, then enter the temperature there.",
            style.quantity(cell_c, Unit::Celsius, 2),
            style.quantity(least_c, Unit::Celsius, 2),
        ),
    }
}

/// Of a charger that gives more than the cells take.
#[must_use]
pub fn too_strong(strong: TooStrong, style: Style) -> String {
    format!(
        "This charger gives {}, but the cells together are rated for {cells}. Don't use it unless the pack itself limits the current. The times here are for {cells}.",
        amps(strong.charger_a, style),
        cells = amps(strong.cells_a, style),
    )
}

/// Where no charger on offer is for a pack: what to look for. `cells_a` is what its cells take.
#[must_use]
pub fn none_fits(pack_v: f64, cells_a: f64, style: Style) -> String {
    // Rounded down: more would be too strong.
    let most = amps(whole(cells_a * 10.0, false) / 10.0, style);
    format!(
        "None of the available chargers fits this pack. You need one with an output of {} (within 0.5\u{a0}%) and no more than {most}.",
        volts(pack_v, style)
    )
}

fn time(name: String, band_s: [f64; 2], limit: String) -> Answer {
    let (figure, unit) = duration_span(band_s);
    Answer { name, figure, unit, limit }
}

/// Time until the charger ends by itself.
#[must_use]
pub fn full(charge: &Charge, band_s: [f64; 2], style: Style) -> Answer {
    let current = amps(charge.current_a, style);
    let limit = match charge.limit {
        _ if charge.time_s <= 0.0 => "Already full".into(),
        ChargeLimit::Charger => format!("Limit: charger, {current}"),
        ChargeLimit::Cells => format!("Limit: cells, {current}"),
    };
    time(format!("From {} to full", percent(charge.start_charge)), band_s, limit)
}

/// Under it: how sure that is, and when to plug in, to be full in time as nine of ten are.
#[must_use]
pub fn plug_in(full_s: [f64; 2]) -> String {
    if full_s[1] <= 0.0 {
        return String::new();
    }
    let at = before_eight(full_s[1]);
    // Both ends may round to one figure, and then there is no range to be seen.
    let ranged = duration_span(full_s).0.contains('–');
    let calculated = if ranged { CALCULATED } else { "Calculated, not measured." };
    format!("{calculated} For example, to leave at 8:00 with a full pack, plug in at {at}.")
}

/// Time until there is enough. `target` is that charge, as a share.
#[must_use]
pub fn enough(charge: &Charge, target: f64, band_s: [f64; 2]) -> Answer {
    let held = charge.time_s - charge.constant_current_s;
    let limit = match charge.end {
        _ if charge.time_s <= 0.0 => "Already there".into(),
        ChargeEnd::Taper => {
            format!("The charger stops before that, at {}", percent(charge.end_charge))
        }
        _ if held < 60.0 => "At full current all the way".into(),
        _ => format!("The last {} at falling current", duration(held)),
    };
    time(format!("To {}", percent(target)), band_s, limit)
}

/// When to plug in for that; empty where there is no such time.
#[must_use]
pub fn plug_in_for(charge: &Charge, target: f64, band_s: [f64; 2]) -> String {
    if charge.time_s <= 0.0 || charge.end != ChargeEnd::Target {
        return String::new();
    }
    let at = before_eight(band_s[1]);
    format!("For example, to leave at 8:00 with {}, plug in at {at}.", percent(target))
}

/// Charge once the time is up. `wait_s` is that time, s.
#[must_use]
pub fn leaving(charging: &Charging, wait_s: f64, style: Style) -> Answer {
    let full_s = charging.full.time_s;
    let limit = if full_s <= wait_s {
        format!("Full {} before that", duration(wait_s - full_s))
    } else {
        format!("{} short of full", duration(full_s - wait_s))
    };
    Answer {
        name: format!("After {}", duration(wait_s)),
        figure: style.fixed(charging.leaving.end_charge * 100.0, 0),
        unit: "%",
        limit,
    }
}

/// Both in a few words.
#[must_use]
pub fn goals(charging: &Charging, target: f64, enough_s: [f64; 2]) -> String {
    match charging.enough.end {
        ChargeEnd::Target if charging.enough.time_s > 0.0 => {
            format!("{} in {}", percent(target), band(enough_s))
        }
        _ => format!("{} when you leave", percent(charging.leaving.end_charge)),
    }
}

/// Energy from the wall and its cost.
#[must_use]
pub fn wall(charge: &Charge, currency: &str, style: Style) -> Answer {
    Answer {
        name: "From the wall, to full".into(),
        figure: style.fixed(tens(charge.wall_wh), 0),
        unit: style.units.shown(Unit::WattHour).symbol,
        limit: match charge.cost {
            Some(cost) => format!("Costs {}", money(cost, currency, style)),
            None => "Enter your electricity price to see the cost".into(),
        },
    }
}

/// Both in a few words.
#[must_use]
pub fn cost(charge: &Charge, currency: &str, style: Style) -> String {
    let symbol = style.units.shown(Unit::WattHour).symbol;
    let energy = format!("{}\u{a0}{symbol}", style.fixed(tens(charge.wall_wh), 0));
    match charge.cost {
        Some(cost) => format!("{energy}, {}", money(cost, currency, style)),
        None => energy,
    }
}

fn money(cost: f64, currency: &str, style: Style) -> String {
    format!("{currency}\u{a0}{}", style.fixed(cost, 2))
}

/// Energy to ten watt-hours, where there are so many: label and charger support no more.
fn tens(wh: f64) -> f64 {
    if wh < 95.0 { wh } else { (wh / 10.0).round() * 10.0 }
}

/// What the charge over time shows. `until` is the charge, as a share, at which the voltage is
/// first held.
#[must_use]
pub fn filling(charge: &Charge, until: f64, style: Style) -> String {
    let (end, after) = (percent(charge.end_charge), duration(charge.time_s));
    if charge.constant_current_s < 60.0 {
        return format!(
            "The charger holds its voltage from the start. The current falls until the charger stops at {end}, after {after}."
        );
    }
    format!(
        "{} {} sets the pace up to {}. Then the current falls until the charger stops at {end}, after {after}.",
        match charge.limit {
            ChargeLimit::Charger => "The charger's",
            ChargeLimit::Cells => "The cells'",
        },
        amps(charge.current_a, style),
        percent(until),
    )
}

/// From the first to the last: current, A, and voltage, V.
#[must_use]
pub fn falling([first_a, last_a]: [f64; 2], [first_v, last_v]: [f64; 2], style: Style) -> String {
    format!(
        "{} at the start, {} at the end. The voltage rises from {} to {}.",
        amps(first_a, style),
        amps(last_a, style),
        volts(first_v, style),
        volts(last_v, style),
    )
}

/// The current in a few words.
#[must_use]
pub fn current(charge: &Charge, style: Style) -> String {
    match charge.curve.as_slice() {
        [first, .., last] => {
            format!("{} falling to {}", amps(first.current_a, style), amps(last.current_a, style))
        }
        _ => String::new(),
    }
}

/// Beside the part of a curve at full current.
#[must_use]
pub const fn pace(limit: ChargeLimit) -> &'static str {
    match limit {
        ChargeLimit::Charger => "charger's limit",
        ChargeLimit::Cells => "cells' limit",
    }
}

/// Marks the end of the time there is.
#[must_use]
pub fn leave_mark(charge: f64) -> String {
    format!("when you leave, {}", percent(charge))
}

/// At the cursor.
#[must_use]
pub fn moment(time_s: f64, charge: f64, current_a: f64, style: Style) -> String {
    format!("{}: {}, {}", duration(time_s), percent(charge), amps(current_a, style))
}

/// Over the table of chargers. `from` is a charge, as a share.
#[must_use]
pub fn chargers_caption(from: f64) -> String {
    format!("Charging times from {}", percent(from))
}

/// Its heads. `target` is the charge that is enough, as a share.
#[must_use]
pub fn chargers_heads(target: f64) -> [String; 6] {
    let enough = format!("To {}", percent(target));
    ["Charger", "To full", &enough, "Fits", "Current", "Price"].map(String::from)
}

/// How many of them fit, and what the fastest does.
#[must_use]
pub fn chargers(offers: &[ChargerOffer]) -> String {
    let fits: Vec<_> = offers.iter().filter(|offer| offer.fit.is_for_the_pack()).collect();
    let fastest = fits.iter().filter_map(|offer| offer.full_s).min_by(f64::total_cmp);
    match (fits.len(), fastest) {
        (0, _) => "none fits this pack".into(),
        (n, Some(full_s)) => format!("{}, fastest {}", fit_count(n), duration(full_s)),
        (n, None) => fit_count(n),
    }
}

fn fit_count(n: usize) -> String {
    if n == 1 { "1 fits".into() } else { format!("{n} fit") }
}

/// Whether a charger fits, or why not, in a few words.
#[must_use]
pub fn fits(fit: ChargerFit, style: Style) -> String {
    match (fit.refusal, fit.too_strong) {
        (Some(ChargeRefusal::WrongVolts { charger_v, pack_v, .. }), _) => {
            format!("no: {}, not {}", volts(charger_v, style), volts(pack_v, style))
        }
        (Some(ChargeRefusal::WrongPlug), _) => "no: different plug".into(),
        (_, Some(strong)) => format!("no: the cells only take {}", amps(strong.cells_a, style)),
        (Some(ChargeRefusal::TooCold { .. }), None) => "too cold now".into(),
        (None, None) => "yes".into(),
    }
}
