//! Which belt: for this mount, for what was measured, how tight, and how hard it works.

use super::bench::Bench;
use super::view::{Answered, Drawn, Headlines, Line, Shows, ToScale, band, entered, mm, rough};
use crate::app::{Fit, use_app};
use crate::chart::{Grid, Table, plain};
use crate::drawing::BeltSide;
use crate::text::{Answer, Style, percent, words};
use leptos::prelude::*;
use pitchline_core::fit::Between;
use pitchline_core::{
    Belt, BeltChoice, BeltList, BeltMiss, BeltOnBoard, BeltTension, Headline as Which, Slot, Unit,
};

const HEADLINES: [Answered; 3] = [
    (Shows::Drive(Which::BeltCentre), centre),
    (Shows::Drive(Which::BeltPull), pull),
    (Shows::Drive(Which::BeltTension), tension),
];

/// All about the belt.
#[component]
pub(super) fn Belts() -> impl IntoView {
    let app = use_app();
    let fitting = move || {
        let (style, catalog) = (app.style(), app.catalog());
        // Nothing that fits has been said already.
        let some = app.fit().filter(|found| !found.together.belt.fitting.is_empty());
        some.map(|found| {
            let table = fits(&found, style, &catalog.currency);
            view! { <div class="chart belts"><Grid table /></div> }
        })
    };
    view! {
        <h3>"Belt"</h3>
        <Headlines list=&HEADLINES />
        <ToScale of=&SIDE />
        <Line say=which />
        {fitting}
        <Bench />
        <h4>"How tight"</h4>
        <Line say=tight />
    }
}

pub(super) fn teeth(count: f64) -> String {
    format!("{}\u{a0}teeth", plain(count, 0))
}

fn centre(found: &Fit, style: Style) -> Answer {
    let name = "Motor shaft to wheel axle".into();
    let unit = style.units.shown(Unit::Millimetre).symbol;
    let limit = match found.together.belt.on_board {
        BeltOnBoard::Taut(belt) => {
            format!("Belt of {}, {}", teeth(belt.teeth), entered(style, belt.length_m))
        }
        BeltOnBoard::NoTeeth => "Middle of the mount: the belt's teeth are not given".into(),
        BeltOnBoard::TooShort => "The belt is too short for these pulleys".into(),
    };
    let figure = match (found.together.belt.on_board, found.together.belt.run) {
        (BeltOnBoard::Taut(belt), _) => style.millimetres(belt.mesh.centre_m),
        (BeltOnBoard::NoTeeth, Some(run)) => style.millimetres(run.centre_m),
        _ => "–".into(),
    };
    Answer { name, figure, unit, limit }
}

fn pull(found: &Fit, style: Style) -> Answer {
    let load = &found.together.belt.load;
    let (why, limit) = if load.brake_n > load.drive_n {
        ("braking", load.brake_limit)
    } else {
        ("pushing", load.drive_limit)
    };
    Answer {
        name: "Hardest pull, of the belt's rating".into(),
        figure: style.fixed(load.used * 100.0, 0),
        unit: "%",
        limit: format!("When {why}: {}", words::limit(limit)),
    }
}

fn tension(found: &Fit, style: Style) -> Answer {
    let [least, aimed, most] = found.together.belt.load.tensions;
    let note = |tension: BeltTension| tension.check.map(|check| check.frequency_hz);
    let sounds = note(least).zip(note(most)).map_or_else(String::new, |(low, high)| {
        format!("; the span sounds at {}", band(style, [low, high], Unit::Hertz, 10.0))
    });
    let range = band(style, [least.force_n, most.force_n], Unit::Newton, 10.0);
    Answer {
        name: "Tension at rest".into(),
        // To ten newtons: no way to check it is surer.
        figure: style.value((aimed.force_n / 10.0).round() * 10.0, Unit::Newton, 2),
        unit: style.units.shown(Unit::Newton).symbol,
        limit: format!("{range} will do{sounds}"),
    }
}

/// Which belts fit the mount, in a sentence.
fn which(found: &Fit, style: Style) -> String {
    let fit = &found.together.belt;
    let [near, far] = fit.slot_m;
    let from = match fit.list {
        BeltList::Offered => "of the belts on offer",
        BeltList::Usual => "of the usual lengths of 5\u{a0}mm pitch (makers differ)",
        BeltList::Unknown => return "No belt lengths are known for this pitch.".into(),
    };
    let slides =
        format!("The mount slides from {} to {}", entered(style, near), entered(style, far));
    match fit.fitting.as_slice() {
        [] => {
            let miss = |name: &str, miss: Option<BeltMiss>| {
                miss.map_or_else(String::new, |m| {
                    format!(
                        " The nearest {name}, {}, misses by {}.",
                        teeth(m.belt.teeth),
                        mm(style, m.miss_m)
                    )
                })
            };
            format!(
                "{slides}: none {from} fits.{}{}",
                miss("shorter", fit.shorter),
                miss("longer", fit.longer)
            )
        }
        [one] => format!("{slides}: one {from} fits, {}.", teeth(one.teeth)),
        [first, .., last] => format!(
            "{slides}: {} {from} fit, {} to {}.",
            fit.fitting.len(),
            plain(first.teeth, 0),
            teeth(last.teeth)
        ),
    }
}

/// The belts that fit, as rows: what tells them apart first, then what decides.
fn fits(found: &Fit, style: Style, currency: &str) -> Table {
    let length = style.units.shown(Unit::Millimetre).symbol;
    let force = style.units.shown(Unit::Newton).symbol;
    let heads = vec![
        "Belt".into(),
        format!("Shaft to axle, {length}"),
        format!("Left to tighten, {length}"),
        "Used".into(),
        "In the slot".into(),
        "Teeth in mesh".into(),
        format!("Rating left, {force}"),
        format!("Length, {length}"),
        "Spare weighs".into(),
        "Its price".into(),
        "Name".into(),
    ];
    let row = |belt: &BeltChoice| {
        let part = belt.offer.and_then(|place| found.belts.get(place));
        let price = |price| format!("{currency}\u{a0}{}", style.significant(price, 3));
        let one = part.and_then(|part| Belt::from_record(part).ok()).unwrap_or(found.build.belt);
        vec![
            format!("{}\u{a0}×\u{a0}{}", plain(belt.teeth, 0), entered(style, one.width_m)),
            style.millimetres(belt.mesh.centre_m),
            style.millimetres(belt.travel_left_m),
            percent(belt.used),
            percent(belt.place),
            format!(
                "{} ({} whole)",
                style.fixed(belt.mesh.teeth, 1),
                plain(belt.mesh.whole_teeth, 0)
            ),
            style.value(belt.rated_n, Unit::Newton, 2),
            style.entered_millimetres(belt.length_m),
            style.quantity(belt.mass_kg, Unit::Kilogram, 2),
            belt.price.map_or_else(|| "–".into(), price),
            part.map_or_else(|| "usual length".into(), |part| part.name.clone()),
        ]
    };
    let rows = found.together.belt.fitting.iter().map(row).collect();
    let caption = "Belts that fit: teeth × width".into();
    Table { label: String::new(), caption, heads, rows }
}

/// How tight, and how to check it.
fn tight(found: &Fit, style: Style) -> String {
    let load = &found.together.belt.load;
    let [least, _, most] = load.tensions;
    let Some((low, high)) = least.check.zip(most.check) else { return String::new() };
    format!(
        "Disconnect the pack first. Tension at rest {}: pressed with {} at the middle of a free span the belt gives {}; plucked, it sounds at {}. Looser, teeth may jump from {} on the motor shaft; tighter wears the bearings. Common practice, no source.",
        band(style, [least.force_n, most.force_n], Unit::Newton, 10.0),
        style.quantity(load.test_force_n, Unit::Newton, 2),
        band(style, [1e3 * high.deflection_m, 1e3 * low.deflection_m], Unit::Millimetre, 1.0),
        band(style, [low.frequency_hz, high.frequency_hz], Unit::Hertz, 10.0),
        style.quantity(least.jump_n_m, Unit::NewtonMetre, 2),
    )
}

/// The drive from the side.
pub(super) static SIDE: Drawn = Drawn {
    finding: |found, style| {
        let clear = found.room(Between::PulleyRoad).unwrap_or(0.0);
        let way = if clear < 0.0 { "below" } else { "above" };
        format!(
            "Belt drive from the side: the lowest point of pulley and belt is {} {way} the road.",
            rough(style, clear.abs())
        )
    },
    plan: |found, style| side(found).plan(style),
    more: |found, style| side(found).more(style),
};

fn side(found: &Fit) -> BeltSide {
    let (build, at) = (&found.build, &found.together.layout);
    let room = |between| found.room(between).unwrap_or(0.0);
    BeltSide {
        wheel_m: build.wheel.diameter_m,
        axle_m: at.axle_up_m,
        centre_m: found.together.centre_m,
        motor_m: (at.motor_ahead_m, at.motor_up_m),
        pitches_m: found.together.belt.pulleys.map(|size| size.pitch_diameter_m),
        pulleys_m: at.pulleys_m,
        pulley_clear_m: room(Between::PulleyRoad),
        motor_clear_m: room(Between::MotorRoad),
        can_m: build.motor.can_diameter_m,
        centre_known: build.belt.teeth.is_some() || build.bench.measured_centre_m.is_some(),
        can_assumed: !found.given(Slot::Motor, "can_diameter_mm")
            || !found.given(Slot::Truck, "mount_angle_deg"),
    }
}
