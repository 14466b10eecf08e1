//! Which belt: for this mount, for what was measured, how tight, and how hard it works.

use super::found::{Asked, Found};
use super::view::{Drawn, Shows, drawn, faults, headlines, line, mm};
use crate::ask::input_of;
use crate::chart::{Table, plain, table};
use crate::component::Headline;
use crate::dom::{Node, el, live};
use crate::drawing::BeltSide;
use crate::text::{Style, words};
use pitchline_core::physics::frame::FLANGE_HEIGHT_M;
use pitchline_core::{
    BeltChoice, BeltList, BeltOnBoard, Headline as Which, MeasuredCentre, PulleySize, Slot, Unit,
};

pub(super) fn belt(asked: &Asked) -> Node {
    let app = asked.app;
    let now = asked.clone();
    let fitting = move || {
        let rows = |found: std::rc::Rc<Found>| fits(&found, app.style(), &app.catalog().currency);
        // Nothing that fits has been said already.
        let some = now.found().filter(|found| !found.belt.fitting.is_empty());
        some.map(|found| el("div").class("chart").with(table(rows(found)))).into()
    };
    let bench = el("div")
        .class("fields")
        .with(input_of(app, Slot::Bench, "measured_centre_mm"))
        .with(input_of(app, Slot::Bench, "belt_in_hand_teeth"));
    Node::from(vec![
        el("h3").with("Belt").into(),
        faults(asked, amiss),
        headlines(
            asked,
            &[
                (Shows::Drive(Which::BeltCentre), centre),
                (Shows::Drive(Which::BeltPull), pull),
                (Shows::Drive(Which::BeltTension), tension),
            ],
        ),
        drawn(asked, SIDE),
        line(asked, which),
        live(move || app.key(), fitting),
        el("h4").with("At the workbench").into(),
        bench.into(),
        line(asked, measured),
        line(asked, in_hand),
        el("h4").with("How tight").into(),
        line(asked, tight),
    ])
}

fn teeth(count: f64) -> String {
    format!("{}\u{a0}teeth", plain(count, 0))
}

fn centre(found: &Found, style: Style) -> Headline {
    let name = "Between the axles".into();
    let unit = style.units.shown(Unit::Millimetre).symbol;
    let limit = match found.belt.on_board {
        BeltOnBoard::Taut(belt) => {
            format!("Belt of {}, {}", teeth(belt.teeth), mm(style, belt.length_m))
        }
        BeltOnBoard::NoTeeth => "Middle of the mount: the belt's teeth are not given".into(),
        BeltOnBoard::TooShort => "The belt is too short for these pulleys".into(),
    };
    let figure = match (found.belt.on_board, found.belt.run) {
        (BeltOnBoard::Taut(belt), _) => style.millimetres(belt.mesh.centre_m),
        (BeltOnBoard::NoTeeth, Some(run)) => style.millimetres(run.centre_m),
        _ => "–".into(),
    };
    Headline { name, figure, unit, limit }
}

fn pull(found: &Found, style: Style) -> Headline {
    let load = &found.belt.load;
    let (why, limit) = if load.brake_n > load.drive_n {
        ("braking", load.brake_limit)
    } else {
        ("pushing", load.drive_limit)
    };
    Headline {
        name: "Hardest pull, of the belt's rating".into(),
        figure: style.fixed(load.used * 100.0, 0),
        unit: "%",
        limit: format!("When {why}: {}", words::limit(limit)),
    }
}

fn tension(found: &Found, style: Style) -> Headline {
    let [_, aimed, _] = found.belt.load.tensions;
    let shown = style.units.shown(Unit::Newton);
    let limit = aimed.check.map_or_else(String::new, |check| {
        format!("The span sounds at {}\u{a0}Hz", style.significant(check.frequency_hz, 2))
    });
    Headline {
        name: "Tension at rest".into(),
        figure: style.value(aimed.force_n, Unit::Newton, 2),
        unit: shown.symbol,
        limit,
    }
}

/// What cannot be so.
fn amiss(found: &Found, style: Style) -> Vec<String> {
    let fit = &found.belt;
    let [near, far] = fit.slot_m;
    let mut said = Vec::new();
    match fit.on_board {
        BeltOnBoard::TooShort => said.push(format!(
            "The belt on the board is too short: these pulleys touch at {}.",
            mm(style, fit.touching_m)
        )),
        BeltOnBoard::Taut(belt) if !belt.in_slot => {
            let by = (near - belt.mesh.centre_m).max(belt.mesh.centre_m - far);
            said.push(format!(
                "The belt on the board wants {} between the axles; the mount slides from {} to {}, {} short of it.",
                mm(style, belt.mesh.centre_m),
                mm(style, near),
                mm(style, far),
                mm(style, by),
            ));
        }
        _ => {}
    }
    if fit.load.used > 1.0 {
        said.push(format!(
            "The belt is asked for {} of what it is rated for and may skip or tear.",
            percent(fit.load.used, style)
        ));
    }
    said
}

fn percent(share: f64, style: Style) -> String {
    format!("{}\u{a0}%", style.fixed(share * 100.0, 0))
}

/// Which belts fit the mount, in a sentence.
fn which(found: &Found, style: Style) -> String {
    let fit = &found.belt;
    let [near, far] = fit.slot_m;
    let from = match fit.list {
        BeltList::Offered => "of the belts on offer",
        BeltList::Usual => "of the usual lengths of 5\u{a0}mm pitch (makers differ)",
        BeltList::Unknown => return "No belt lengths are known for this pitch.".into(),
    };
    let slides = format!("The mount slides from {} to {}", mm(style, near), mm(style, far));
    match fit.fitting.as_slice() {
        [] => {
            let miss = |name: &str, miss: Option<pitchline_core::BeltMiss>| {
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

/// The belts that fit, as rows.
fn fits(found: &Found, style: Style, currency: &str) -> Table {
    let length = style.units.shown(Unit::Millimetre).symbol;
    let force = style.units.shown(Unit::Newton).symbol;
    let heads = vec![
        "Belt".into(),
        "Teeth".into(),
        format!("Length, {length}"),
        format!("Between axles, {length}"),
        "In the slot".into(),
        format!("Left to tighten, {length}"),
        "Teeth in mesh".into(),
        format!("Rating left, {force}"),
        "Used".into(),
        "Mass of a spare".into(),
        "Its price".into(),
    ];
    let row = |belt: &BeltChoice| {
        let part = belt.offer.and_then(|place| found.belts.get(place));
        let price = |price| format!("{currency}\u{a0}{}", style.significant(price, 3));
        vec![
            part.map_or_else(|| "usual length".into(), |part| part.name.clone()),
            plain(belt.teeth, 0),
            style.millimetres(belt.length_m),
            style.millimetres(belt.mesh.centre_m),
            percent(belt.place, style),
            style.millimetres(belt.travel_left_m),
            format!(
                "{} ({} whole)",
                style.fixed(belt.mesh.teeth, 1),
                plain(belt.mesh.whole_teeth, 0)
            ),
            style.value(belt.rated_n, Unit::Newton, 2),
            percent(belt.used, style),
            style.quantity(belt.mass_kg, Unit::Kilogram, 2),
            belt.price.map_or_else(|| "–".into(), price),
        ]
    };
    let rows = found.belt.fitting.iter().map(row).collect();
    Table { label: String::new(), caption: "Belts that fit this mount".into(), heads, rows }
}

/// What the measured centre distance asks for.
fn measured(found: &Found, style: Style) -> String {
    let bench = &found.belt.bench;
    match bench.measured {
        MeasuredCentre::NotGiven => {
            "Measure between the centres of motor shaft and axle to find the belt for it.".into()
        }
        MeasuredCentre::Overlap => {
            "At that distance the pulleys overlap: measure again, between the centres.".into()
        }
        MeasuredCentre::Length(length) => {
            let wanted = format!("That takes a belt {} long.", mm(style, length));
            let belt = bench.nearest.iter().find(|belt| belt.in_slot).or(bench.nearest.first());
            let Some(belt) = belt else { return wanted };
            let off = belt.off_measured_m.unwrap_or(0.0);
            let way = if off < 0.0 { "closer" } else { "farther apart" };
            let slide = if belt.in_slot { "" } else { ", beyond the mount's travel" };
            format!(
                "{wanted} The nearest has {}, {}: the axles stand {} {way} with it, at {}{slide}.",
                teeth(belt.teeth),
                mm(style, belt.length_m),
                mm(style, off.abs()),
                mm(style, belt.mesh.centre_m),
            )
        }
    }
}

/// What the belt in hand goes with.
fn in_hand(found: &Found, style: Style) -> String {
    let bench = &found.belt.bench;
    let here = match bench.in_hand {
        BeltOnBoard::NoTeeth => return String::new(),
        BeltOnBoard::TooShort => "The belt in hand is too short for these pulleys.".into(),
        BeltOnBoard::Taut(belt) => format!(
            "The belt in hand wants {} between the axles: {}.",
            mm(style, belt.mesh.centre_m),
            if belt.in_slot { "it fits" } else { "the mount does not slide there" },
        ),
    };
    let size = |list: &[pitchline_core::Record], place: usize, slot: Slot| {
        let index = slot.kind().field_index("teeth");
        let record = list.get(place);
        plain(record.zip(index).and_then(|(r, i)| r.value(i)).unwrap_or(0.0), 0)
    };
    let pairs: Vec<String> = bench
        .pairs
        .iter()
        .take(6)
        .map(|pair| {
            format!(
                "{} with {} ({})",
                size(&found.motor_pulleys, pair.motor_pulley, Slot::MotorPulley),
                size(&found.wheel_pulleys, pair.wheel_pulley, Slot::WheelPulley),
                mm(style, pair.centre_m),
            )
        })
        .collect();
    if pairs.is_empty() {
        format!("{here} No pair of pulleys on offer fits it.")
    } else {
        format!("{here} Motor and wheel pulleys on offer that fit it: {}.", pairs.join(", "))
    }
}

/// How tight, and how to check it.
fn tight(found: &Found, style: Style) -> String {
    let load = &found.belt.load;
    let [least, _, most] = load.tensions;
    let force = |n: f64| style.quantity(n, Unit::Newton, 2);
    let Some((low, high)) = least.check.zip(most.check) else { return String::new() };
    format!(
        "Disconnect the pack first. Tension at rest {} to {}: pressed with {} at the middle of a free span the belt gives {} to {}; plucked, it sounds at {} to {}\u{a0}Hz. Looser, teeth may jump from {} on the motor shaft; tighter wears the bearings. Common practice, no source.",
        style.value(least.force_n, Unit::Newton, 2),
        force(most.force_n),
        force(load.test_force_n),
        style.millimetres(high.deflection_m),
        mm(style, low.deflection_m),
        style.significant(low.frequency_hz, 2),
        style.significant(high.frequency_hz, 2),
        style.quantity(least.jump_n_m, Unit::NewtonMetre, 2),
    )
}

/// The drive from the side.
pub(super) const SIDE: Drawn = Drawn {
    finding: |found, style| {
        let side = side(found);
        let clear = side.axle_m - side.over_belt_m / 2.0;
        format!(
            "Belt drive from the side: the lowest point of pulley and belt is {} above the road.",
            mm(style, clear)
        )
    },
    plan: |found, style| side(found).plan(style),
    more: |found, style| side(found).more(style),
};

fn side(found: &Found) -> BeltSide {
    let (build, fit, draft) = (&found.build, &found.belt, &found.draft);
    let [motor, wheel] = fit.pulleys;
    let given = |slot: Slot, key: &str| draft.value(slot, key).is_some();
    let outside = |size: PulleySize| size.outside_diameter_m.unwrap_or(size.pitch_diameter_m);
    BeltSide {
        wheel_m: build.wheel.diameter_m,
        axle_m: build.wheel.radius_m(),
        centre_m: found.centre_m,
        angle: build.truck.mount_angle_deg.to_radians(),
        wheel_pitch_m: wheel.pitch_diameter_m,
        wheel_pulley_m: outside(wheel),
        motor_pitch_m: motor.pitch_diameter_m,
        motor_pulley_m: outside(motor),
        over_belt_m: outside(wheel) + 2.0 * FLANGE_HEIGHT_M,
        can_m: build.motor.can_diameter_m,
        assumed: [
            build.belt.teeth.is_none() && build.bench.measured_centre_m.is_none(),
            !given(Slot::Motor, "can_diameter_mm") || !given(Slot::Truck, "mount_angle_deg"),
        ],
    }
}
