//! Words of rides in time: how one is ridden, how it ended, what was met on the way.

use super::{Style, duration, percent, span, words};
use pitchline_core::ride::{END_SHARE, Met, Moment, Ridden, RideEnd, URBAN_M_S, UrbanFit};
use pitchline_core::{Build, Drive, Limit, Outing, Unit};

/// The fold.
pub const RIDE: &str = "With stops and hills";
/// What is counted.
pub const WHY: &str = "A simulated ride, with motors, controller and cells heating up. It ends when the board can't hold 80\u{a0}% of its intended speed on the flat.";
/// Over the table of all ways to ride.
pub const ALL: &str = "Every riding style, ridden until the board can't hold 80\u{a0}% of its intended speed on the flat";
/// Over its first column.
pub const HOW: &str = "How you ride";
/// Under the rows of the rider's own way: what leads to the cruising speed, and to the charge.
pub const OWN: [&str; 4] =
    ["This style uses your ", "cruising speed", " and ", "charge at the start"];
/// What the buttons over the charts choose, and their words.
pub const TRACED: &str = "How much of the ride is shown";
/// On those buttons.
pub const STRETCHES: [&str; 2] = ["The whole ride", "The first ten minutes"];
/// What the keys do on the charts.
pub const ALONG_TIME: &str = "Arrow keys move along the ride";
/// What the keys do on the bars.
pub const ALONG_BARS: &str = "Arrow keys move between the ride's bars";
/// What the table of the charts opens with.
pub const TRACE_TABLE: &str = "Table of the ride over time";
/// What the table of its energy opens with.
pub const SPENT_TABLE: &str = "Table of this ride's energy";
/// Its caption.
pub const SPENT_CAPTION: &str = "Where the energy of this ride went";
/// Where there are no charts.
pub const NO_RIDE: &str = "There is no ride to show.";
/// The charts, from above: each an axis, its unit follows.
pub const PANELS: [&str; 5] = ["speed", "charge", "pack voltage", "current", "temperature"];
/// Lines of the current.
pub const CURRENTS: [&str; 2] = ["pack", "each motor"];
/// Lines of the temperature.
pub const WARMTHS: [&str; 4] = ["windings", "motor cases", "controller", "cells"];
/// Along the bottom.
pub const MINUTES: &str = "minutes";

fn warmth(style: Style, celsius: f64) -> String {
    style.quantity(celsius.round(), Unit::Celsius, 2)
}

/// ", on the 18 % climb".
fn slope(style: Style, grade: f64) -> String {
    let steep = style.entered_percent(grade.abs());
    match grade {
        up if up > 0.0099 => format!(", on the {steep} climb"),
        down if down < -0.0099 => format!(", on the {steep} descent"),
        _ => String::new(),
    }
}

/// "after 1.2 km and 4 min 30 s, on the 18 % climb".
fn place(style: Style, met: &Met) -> String {
    if met.distance_m < 1.0 {
        return format!("right at the start{}", slope(style, met.grade));
    }
    let (far, time) = (style.way(met.distance_m), span(met.time_s));
    format!("after {far} and {time}{}", slope(style, met.grade))
}

/// How an outing is ridden.
#[must_use]
pub fn course(build: &Build, outing: Outing, style: Style) -> String {
    let drive = Drive::new(build);
    let speed = style.speed_unit(drive.outing_m_s(outing));
    let ridden = match outing.style() {
        Ok(ridden) => ridden.figures(build),
        Err(fit) => return cycle(&drive, fit, style),
    };
    let [up, down] = ridden.legs();
    let steep = style.entered_percent(up.grade);
    let hills = if up.grade < 5e-4 {
        "on the flat".into()
    } else {
        format!("half the distance up {steep}, half down")
    };
    let rate = style.quantity(ridden.acceleration_m_s2, Unit::MetrePerSecondSquared, 2);
    let stops = match down.rest_s {
        Some(rest_s) => {
            let every = style.way(up.length_m + down.length_m);
            format!("a stop of {} every {every}, speeding up and braking at {rate}", span(rest_s))
        }
        None => "no stops".into(),
    };
    let speed = match outing {
        Outing::Flatout => format!("As fast as it goes, up to {speed}"),
        _ => speed,
    };
    let from = match outing {
        Outing::Own | Outing::Steady => "",
        _ => " Rule of thumb.",
    };
    format!("{speed}, {stops}, {hills}.{from}")
}

/// What the official cycle asks, and what of it is left out.
fn cycle(drive: &Drive, fit: UrbanFit, style: Style) -> String {
    let (most, asked) = (style.speed_unit(URBAN_M_S), drive.urban_m_s());
    let first = format!(
        "The urban cycle of UN Regulation 83, over and over: up to {most}, with stops, on the flat. It was made for cars."
    );
    let speed = style.speed_unit(asked);
    if asked >= URBAN_M_S {
        return format!("{first} Your board can follow all of it.");
    }
    match fit {
        UrbanFit::Clipped => {
            format!("{first} Your board is slower: everything above {speed} is cut off.")
        }
        UrbanFit::Scaled => format!(
            "{first} Your board is slower: every speed is scaled to {}, {speed} at most.",
            percent(asked / URBAN_M_S)
        ),
    }
}

/// What ended a ride, in a few words for a table.
#[must_use]
pub fn ended(ride: &Ridden) -> String {
    match (ride.end, ride.stopped) {
        (RideEnd::Stalled, Some(met)) => format!("stopped: {}", words::met(met.limit, met.sag)),
        (_, Some(met)) => words::met(met.limit, met.sag).into(),
        _ => words::DAY.into(),
    }
}

/// Under the distance of a ride: what ends it, or worse.
#[must_use]
pub fn ended_by(ride: &Ridden, style: Style) -> String {
    match ride.winding_hot {
        Some(met) => format!("But the windings overheat after {}", style.way(met.distance_m)),
        None if stalls(ride) => ended(ride),
        None => format!("Ended by: {}", ended(ride)),
    }
}

/// What ended it, and where.
#[must_use]
pub fn end(ride: &Ridden, style: Style) -> String {
    let Some(met) = ride.stopped else {
        return format!("Still going after {}.", span(ride.time_s));
    };
    let (limit, why) = (words::met(met.limit, met.sag), words::met_why(&met));
    if ride.end == RideEnd::Stalled {
        return if !ride.gets_going() {
            let hill = slope(style, met.grade);
            format!("It can't get moving{}: {limit}. {why}", hill.trim_start_matches(','))
        } else {
            format!("Stopped {}: {limit}. {why}", place(style, &met))
        };
    }
    if met.limit == Limit::Empty {
        return format!("Runs until the pack is empty, {}.", place(style, &met));
    }
    let left = percent(ride.end_charge);
    let last = style.speed_unit(END_SHARE * ride.wish_m_s);
    let limp = match ride.limp_m {
        some if some > 0.0 => {
            format!(" After that it limps another {}, slowing to walking pace.", style.way(some))
        }
        _ => String::new(),
    };
    format!(
        "Ends {}, with {left} charge left. From there it can't hold {last} (80\u{a0}% of the intended speed), even on the flat. {why}{limp}",
        place(style, &met)
    )
}

/// Whether the push did not move it.
#[must_use]
pub fn stalls(ride: &Ridden) -> bool {
    ride.end == RideEnd::Stalled
}

/// What was met on the way, one sentence each.
#[must_use]
pub fn met(build: &Build, ride: &Ridden, outing: Outing, style: Style) -> Vec<String> {
    let mut told = Vec::new();
    let at = |met: &Met| place(style, met);
    if let Some(met) = ride.lost_early() {
        let (speed, limit) = (style.speed_unit(met.speed_m_s), words::met(met.limit, met.sag));
        told.push(if outing == Outing::Flatout {
            format!("It reaches {} at most: {limit}.", style.speed_unit(ride.top_m_s))
        } else {
            let wish = style.speed_unit(Drive::new(build).outing_m_s(outing));
            format!("It can't hold {wish}: down to {speed} {} ({limit}).", at(&met))
        });
    }
    // Not what is said of its end already.
    if let Some(met) = ride.held_back.filter(|_| !stalls(ride)) {
        let (limit, why) = (words::met(met.limit, met.sag), words::met_why(&met));
        let lead = if words::is_rating(met.limit) { "In these figures, power" } else { "Power" };
        told.push(format!("{lead} is first limited {} ({limit}). {why}", at(&met)));
    }
    let c = &build.controller;
    let held = [
        ("The controller", ride.hottest.controller_c, Some(c.cutback_start_c)),
        ("The windings", ride.hottest.winding_c, c.motor_cutback_start_c),
    ];
    for (what, hot, from) in held {
        let Some(from) = from.filter(|from| hot > *from) else {
            continue;
        };
        let (hot, from) = (warmth(style, hot), warmth(style, from));
        told.push(format!("{what} reached {hot}: power is limited from {from}."));
    }
    if let Some(met) = ride.brake_held_back {
        told.push(format!(
            "The motors can't brake as hard as this ride needs (first {}: {}). Use your foot or another brake for the rest.",
            at(&met),
            words::met(met.limit, met.sag)
        ));
    }
    told
}

/// That the motors do not survive it, if so.
#[must_use]
pub fn burnt(build: &Build, ride: &Ridden, style: Style) -> Option<String> {
    let at = place(style, &ride.winding_hot?);
    let most = warmth(style, build.motor.winding_limit_c);
    let hot = warmth(style, ride.hottest.winding_c);
    Some(format!(
        "The windings pass their limit of {most} {at}, and reach {hot}. That burns motors out: ride more gently or gear lower."
    ))
}

/// What came nearest to the heat that it bears: "windings 71 of 120 °C".
#[must_use]
pub fn hottest(build: &Build, ride: &Ridden, style: Style) -> String {
    let (air, hot) = (build.place.air_c, &ride.hottest);
    let parts = [
        ("motor windings", hot.winding_c, build.motor.winding_limit_c),
        ("controller", hot.controller_c, build.controller.cutback_end_c),
    ];
    let share = |(_, hot, limit): &(&str, f64, f64)| (hot - air) / (limit - air).max(1.0);
    let most = parts.into_iter().max_by(|a, b| share(a).total_cmp(&share(b)));
    most.map_or_else(String::new, |(name, hot, limit)| {
        let hot = style.value(hot.round(), Unit::Celsius, 2);
        format!("{name} {hot} of {}", warmth(style, limit))
    })
}

/// Time, speed, energy and heat of a ride.
#[must_use]
pub fn facts(build: &Build, ride: &Ridden, style: Style) -> String {
    format!(
        "{} in all, {} on average, {} from the cells. Closest to its heat limit: {}.",
        span(ride.time_s),
        style.speed_unit(ride.mean_m_s()),
        style.quantity(ride.wh_per_km, Unit::WattHourPerKilometre, 2),
        hottest(build, ride, style),
    )
}

/// Heads of the table of all ways to ride.
#[must_use]
pub fn all_heads(style: Style) -> Vec<String> {
    let symbol = |unit: Unit| style.units.shown(unit).symbol;
    vec![
        HOW.into(),
        format!("Distance, {}", symbol(Unit::Kilometre)),
        "Ended by".into(),
        format!("Average, {}", symbol(Unit::KilometrePerHour)),
        symbol(Unit::WattHourPerKilometre).into(),
        "Closest to its heat limit".into(),
    ]
}

/// What the charts show: each line an average over so many seconds, where it is one.
#[must_use]
pub fn traced(ride: &Ridden, averaged_s: Option<f64>, style: Style) -> String {
    let (windings, cells) = (ride.hottest.winding_c, ride.hottest.cell_c);
    let lines = match averaged_s {
        Some(time_s) => format!("Lines are averages over {}; the shading", duration(time_s)),
        None => "The shading".into(),
    };
    format!(
        "{} in {}: windings up to {}, cells up to {}. {lines} runs from lowest to highest.",
        style.distance_unit(ride.distance_m),
        span(ride.time_s),
        warmth(style, windings),
        warmth(style, cells)
    )
}

/// What stands at the cursor of the charts; `mean` where it is an average since the one before.
#[must_use]
pub fn moment(m: &Moment, mean: bool, style: Style) -> String {
    let amps = |a: f64| style.quantity(a.round(), Unit::Ampere, 2);
    format!(
        "{}, {}: {}{}, {}, pack {}, each motor {}; charge {}, windings {}, cases {}, controller {}, cells {}",
        span(m.time_s),
        style.way(m.distance_m),
        // At the start there is nothing before.
        if mean && m.time_s > 0.0 { "average " } else { "" },
        style.speed_unit(m.speed_m_s),
        style.quantity(m.bus_v, Unit::Volt, 3),
        amps(m.pack_a),
        amps(m.motor_a),
        percent(m.charge),
        warmth(style, m.winding_c),
        warmth(style, m.case_c),
        warmth(style, m.controller_c),
        warmth(style, m.cell_c),
    )
}

/// Heads of the table of the charts.
#[must_use]
pub fn trace_heads(style: Style) -> Vec<String> {
    let symbol = |unit: Unit| style.units.shown(unit).symbol;
    let warm = symbol(Unit::Celsius);
    vec![
        "Time".into(),
        format!("Distance, {}", symbol(Unit::Kilometre)),
        format!("Speed, {}", symbol(Unit::KilometrePerHour)),
        "Charge, %".into(),
        "Voltage, V".into(),
        "Pack, A".into(),
        "Each motor, A".into(),
        format!("Windings, {warm}"),
        format!("Motor cases, {warm}"),
        format!("Controller, {warm}"),
        format!("Cells, {warm}"),
    ]
}

/// Where most of a ride's energy went: all of it and what braking brought back, Wh, and the two
/// largest by name and share.
#[must_use]
pub fn spent(stored_wh: f64, back_wh: Option<f64>, most: [(&str, f64); 2], style: Style) -> String {
    let wh = |wh: f64| style.quantity(wh, Unit::WattHour, 2);
    let back = back_wh.map_or_else(String::new, |back| format!(" Braking returned {}.", wh(back)));
    let [(one, first), (two, second)] = most;
    format!(
        "This ride took {} from the cells. Most went into {} ({}) and {} ({}).{back}",
        wh(stored_wh),
        one.to_ascii_lowercase(),
        percent(first),
        two.to_ascii_lowercase(),
        percent(second),
    )
}
