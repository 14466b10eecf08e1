//! What is said of a ride: how it is ridden, how it ended, what was met on the way.

use crate::text::{Style, percent, span, words};
use pitchline_core::ride::{END_SHARE, Met, Ridden, RideEnd, URBAN_M_S, UrbanFit};
use pitchline_core::{Build, Drive, Limit, Outing, Unit};

pub(super) fn warmth(style: Style, celsius: f64) -> String {
    style.quantity(celsius.round(), Unit::Celsius, 2)
}

/// " on the 18 % climb".
fn slope(style: Style, grade: f64) -> String {
    let steep = style.entered_percent(grade.abs());
    match grade {
        up if up > 0.0099 => format!(", on the {steep} climb"),
        down if down < -0.0099 => format!(", down the {steep} slope"),
        _ => String::new(),
    }
}

/// "after 1.2 km, 4 min 30 s, on the 18 % climb".
fn place(style: Style, met: &Met) -> String {
    if met.distance_m < 1.0 {
        return format!("right at the start{}", slope(style, met.grade));
    }
    let (way, time) = (style.way(met.distance_m), span(met.time_s));
    format!("after {way}, {time}{}", slope(style, met.grade))
}

/// How an outing is ridden.
pub(super) fn course(build: &Build, outing: Outing, style: Style) -> String {
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
        format!("half of the way up {steep}, half down")
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
        Outing::Flatout => format!("As fast as it goes, to {speed} at most"),
        _ => speed,
    };
    let from = match outing {
        Outing::Own | Outing::Steady => "",
        _ => " Common practice, no source.",
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
        return format!("{first} Your board reaches all of its speeds.");
    }
    match fit {
        UrbanFit::Clipped => {
            format!("{first} Your board is slower: what is above {speed} is cut off.")
        }
        UrbanFit::Scaled => format!(
            "{first} Your board is slower: every speed is taken down to {} of it, {speed} at most.",
            percent(asked / URBAN_M_S)
        ),
    }
}

/// What ended a ride, in a few words for a table.
pub(super) fn ended(ride: &Ridden) -> String {
    match (ride.end, ride.stopped) {
        (RideEnd::Stalled, Some(met)) => format!("stopped: {}", words::met(met.limit, met.sag)),
        (_, Some(met)) => words::met(met.limit, met.sag).into(),
        _ => "a whole day".into(),
    }
}

/// What ended it, and where.
pub(super) fn end(ride: &Ridden, style: Style) -> String {
    let Some(met) = ride.stopped else {
        return format!("Still going after {}.", span(ride.time_s));
    };
    let (limit, why) = (words::met(met.limit, met.sag), words::met_why(&met));
    if ride.end == RideEnd::Stalled {
        return if !ride.gets_going() {
            format!("It does not get going{}: {limit}. {why}", slope(style, met.grade))
        } else {
            format!("Stopped {}: {limit}. {why}", place(style, &met))
        };
    }
    if met.limit == Limit::Empty {
        return format!("Goes on until the pack is empty, {}.", place(style, &met));
    }
    let left = percent(ride.end_charge);
    let last = style.speed_unit(END_SHARE * ride.wish_m_s);
    let limp = match ride.limp_m {
        some if some > 0.0 => {
            format!(" After that it limps another {} down to walking pace.", style.way(some))
        }
        _ => String::new(),
    };
    format!(
        "Ends {}, with {left} charge left, where it can no longer hold {last} on the flat (80\u{a0}% of the speed). {why}{limp}",
        place(style, &met)
    )
}

/// Whether the push did not move it.
pub(super) fn stalls(ride: &Ridden) -> bool {
    ride.end == RideEnd::Stalled
}

/// What was met on the way, one sentence each.
pub(super) fn met(build: &Build, ride: &Ridden, outing: Outing, style: Style) -> Vec<String> {
    let mut told = Vec::new();
    let at = |met: &Met| place(style, met);
    if let Some(met) = ride.lost_early() {
        let (speed, limit) = (style.speed_unit(met.speed_m_s), words::met(met.limit, met.sag));
        told.push(if outing == Outing::Flatout {
            format!("At most {}: {limit}.", style.speed_unit(ride.top_m_s))
        } else {
            let wish = style.speed_unit(Drive::new(build).outing_m_s(outing));
            format!("The {wish} wished for cannot be held: {speed} is left {}: {limit}.", at(&met))
        });
    }
    // Not what is said of its end already.
    if let Some(met) = ride.held_back.filter(|_| !stalls(ride)) {
        let (limit, why) = (words::met(met.limit, met.sag), words::met_why(&met));
        told.push(format!("First held back {}: {limit}. {why}", at(&met)));
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
        told.push(format!("{what} got to {hot}: held back from {from} on."));
    }
    if let Some(met) = ride.brake_held_back {
        told.push(format!(
            "Braking asks for more than the motors do, first {}: {}. The rest is left to your foot or another brake.",
            at(&met),
            words::met(met.limit, met.sag)
        ));
    }
    told
}

/// That the motors do not survive it, if so.
pub(super) fn burnt(build: &Build, ride: &Ridden, style: Style) -> Option<String> {
    let at = place(style, &ride.winding_hot?);
    let most = warmth(style, build.motor.winding_limit_c);
    let hot = warmth(style, ride.hottest.winding_c);
    Some(format!(
        "The windings pass their {most} {at} and get to {hot}: motors burn out like that. Ride gentler, or gear lower."
    ))
}

/// What got hottest, with its temperature.
pub(super) fn hottest(ride: &Ridden, style: Style) -> String {
    let h = &ride.hottest;
    let parts = [
        ("windings", h.winding_c),
        ("motor cases", h.case_c),
        ("controller", h.controller_c),
        ("cells", h.cell_c),
    ];
    let most = parts.into_iter().max_by(|a, b| a.1.total_cmp(&b.1));
    most.map_or_else(String::new, |(name, hot)| format!("{name} {}", warmth(style, hot)))
}
