//! What is said of a charge.

use super::found::Found;
use crate::app::{App, Banded, Sure};
use crate::text::{Answer, Style, before_eight, duration, duration_span, percent};
use pitchline_core::{ChargeEnd, ChargeLimit, ChargeRefusal, Charging, TooStrong, Unit};

/// What is known beside the charges.
#[derive(Default)]
pub(super) struct With {
    /// How sure the time to full is.
    full: Sure,
    /// How sure the time to enough is.
    enough: Sure,
    currency: String,
}

impl With {
    /// As it is now; tracked.
    pub(super) fn now(app: App) -> Self {
        let (full, enough) = (app.sure(Banded::Charge), app.sure(Banded::Enough));
        Self { full, enough, currency: app.catalog().currency.clone() }
    }
}

/// What must not be done, each in plain words.
pub(super) fn warnings(found: &Found, style: Style) -> Vec<String> {
    match &found.charges {
        Err(refused) => vec![refusal(*refused, style)],
        Ok(charges) => {
            charges.too_strong.map(|strong| too_strong(strong, style)).into_iter().collect()
        }
    }
}

fn too_strong(strong: TooStrong, style: Style) -> String {
    format!(
        "This charger is too strong: it gives {}, and the cells are rated for {cells} together. Do not use it unless the pack itself holds the current down. The times are for {cells}.",
        amps(strong.charger_a, style),
        cells = amps(strong.cells_a, style),
    )
}

fn refusal(refused: ChargeRefusal, style: Style) -> String {
    match refused {
        ChargeRefusal::WrongVolts { charger_v, pack_v, overcharges, .. } => {
            let why = if overcharges {
                "Do not plug it in: it would overcharge the cells, and that can set a pack on fire."
            } else {
                "Do not plug it in: it is made for another pack and never fills this one."
            };
            format!(
                "Wrong charger: it ends at {}, the full pack has {}. {why}",
                style.quantity(charger_v, Unit::Volt, 3),
                style.quantity(pack_v, Unit::Volt, 3),
            )
        }
        ChargeRefusal::WrongPlug => "Wrong charger: its plug is not the one for this pack. Do not make it fit: use the charger made for the pack.".into(),
        ChargeRefusal::TooCold { cell_c, least_c } => format!(
            "Too cold to charge: the pack is at {}. Below {} charging damages lithium cells, and they may burn later. Bring the board indoors, wait until the pack is warm through, and give the temperature there below. Common practice, no source.",
            style.quantity(cell_c, Unit::Celsius, 2),
            style.quantity(least_c, Unit::Celsius, 2),
        ),
    }
}

pub(super) fn amps(current_a: f64, style: Style) -> String {
    style.quantity(current_a, Unit::Ampere, 2)
}

fn time(name: String, band_s: [f64; 2], limit: String) -> Answer {
    let (figure, unit) = duration_span(band_s);
    Answer { name, figure, unit, limit }
}

/// Time until the charger ends by itself.
pub(super) fn full(found: &Found, with: &With, style: Style) -> Answer {
    let Some(charges) = found.charges() else { return Answer::default() };
    let limit = if charges.full.time_s <= 0.0 {
        "It is full".into()
    } else {
        let current = amps(charges.full.current_a, style);
        match charges.full.limit {
            ChargeLimit::Charger => format!("Limit: charger, {current}"),
            ChargeLimit::Cells => format!("Limit: cells, {current}"),
        }
    };
    let band = with.full.about(charges.full.time_s);
    time(format!("From {} to full", percent(charges.full.start_charge)), band, limit)
}

/// Time until there is enough.
pub(super) fn enough(found: &Found, with: &With, _: Style) -> Answer {
    let Some(Charging { enough, .. }) = found.charges() else { return Answer::default() };
    let held = enough.time_s - enough.constant_current_s;
    let limit = match enough.end {
        _ if enough.time_s <= 0.0 => "It has that already".into(),
        ChargeEnd::Taper => format!("The charger ends before, at {}", percent(enough.end_charge)),
        _ if held < 60.0 => "At the full current all the way".into(),
        _ => format!("The last {} slower and slower", duration(held)),
    };
    let band = with.enough.about(enough.time_s);
    time(format!("To {}", percent(found.build.ride.charge_to)), band, limit)
}

/// Charge when the rider leaves.
pub(super) fn leaving(found: &Found, _: &With, style: Style) -> Answer {
    let Some(Charging { leaving, full, .. }) = found.charges() else { return Answer::default() };
    let wait = found.build.ride.charge_time_s;
    let limit = if full.time_s <= wait {
        format!("Full {} before you leave", duration(wait - full.time_s))
    } else {
        format!("{} short of full", duration(full.time_s - wait))
    };
    Answer {
        name: format!("When you leave, in {}", duration(wait)),
        figure: style.fixed(leaving.end_charge * 100.0, 0),
        unit: "%",
        limit,
    }
}

/// Energy from the wall and its cost.
pub(super) fn wall(found: &Found, with: &With, style: Style) -> Answer {
    let Some(Charging { full, .. }) = found.charges() else { return Answer::default() };
    Answer {
        name: "From the wall, to full".into(),
        figure: style.fixed(tens(full.wall_wh), 0),
        unit: style.units.shown(Unit::WattHour).symbol,
        limit: match full.cost {
            Some(cost) => format!("Costs {}\u{a0}{}", with.currency, style.fixed(cost, 2)),
            None => "No price given".into(),
        },
    }
}

/// Energy to ten watt-hours, where there are so many: label and charger support no more.
fn tens(wh: f64) -> f64 {
    if wh < 95.0 { wh } else { (wh / 10.0).round() * 10.0 }
}

/// When to plug in, to be done in time as nine of ten are.
pub(super) fn plug_in(found: &Found, with: &With) -> String {
    let Some(Charging { full, enough, .. }) = found.charges() else { return String::new() };
    if full.time_s <= 0.0 {
        return String::new();
    }
    let [_, full_s] = with.full.about(full.time_s);
    let mut text = format!(
        "To leave full, plug in {} before: to leave at 8:00, at {}.",
        duration(full_s),
        before_eight(full_s),
    );
    if enough.time_s > 0.0 && enough.end == ChargeEnd::Target && found.build.ride.charge_to < 1.0 {
        let [_, enough_s] = with.enough.about(enough.time_s);
        text.push_str(&format!(
            " For {}: {} before, at {}.",
            percent(found.build.ride.charge_to),
            duration(enough_s),
            before_eight(enough_s),
        ));
    }
    text
}
